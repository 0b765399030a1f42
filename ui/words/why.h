// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <utility>
#include <vector>

namespace wm::ui {

/// One step of a derivation: "what" and "how much", and what that is made of.
struct WhyNode {
    QString what;
    QString much;
    bool open = false;  ///< what it is made of is seen at once
    std::vector<WhyNode> children{};
};

/// Where a figure comes from, for F1: a headline, the derivation, and pairs of "what" and "how much".
struct Why {
    QString title;
    std::vector<WhyNode> tree{};
    std::vector<std::pair<QString, QString>> lines;
    QString footnote{};
};

}  // namespace wm::ui

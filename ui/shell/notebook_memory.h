// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/notebook/layout.h"
#include "core/notebook/matching.h"

class QSettings;

namespace wm::ui {

/// What was set by hand about notebooks with one header; what is not set is found out anew each time.
struct NotebookWays {
    std::vector<notebook::Column> columns{};
    std::optional<char> decimal{};
    std::optional<notebook::DateForm> dates{};
    notebook::MeantNames names{};

    [[nodiscard]] bool isEmpty() const { return columns.empty() && !decimal && !dates && names.empty(); }
};

/// `headerKey` as notebook::headerKey gives it; nothing is kept for a notebook without a header. What can't
/// be understood in the settings counts as not set.
NotebookWays recallNotebook(const QSettings& settings, const std::string& headerKey);
void rememberNotebook(QSettings& settings, const std::string& headerKey, const NotebookWays& ways);

}  // namespace wm::ui

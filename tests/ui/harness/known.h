// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QStringList>
#include <map>
#include <set>

#include "tests/ui/harness/findings.h"

namespace wm::ui {

/// The failures of today: a line each, sorted, "check | surface | where | settings in which it occurs", and
/// behind these why it stays, if there is a reason. It may only shrink.
class Known {
  public:
    static Known read(const QStringList& lines);
    /// That of tests/data/window/known.txt.
    static Known ofToday();
    [[nodiscard]] QStringList lines() const;
    /// The keys of those of a check that stay without a reason.
    [[nodiscard]] QStringList withoutReason(const QString& check) const;

    /// What differs in one setting, in words: a finding that is not in the list, a line whose finding is
    /// gone.
    [[nodiscard]] QStringList against(const QString& setting, const Findings& found) const;
    /// Takes out what no longer occurs in a setting; with `grow` puts in what does.
    void follow(const QString& setting, const Findings& found, bool grow);

  private:
    struct Line {
        std::set<QString> in{};  ///< names of settings
        QString reason{};
    };
    std::map<Finding, Line> known_;
};

/// Compares with tests/data/window/known.txt. WITNESSMARK_WINDOW_LIST=shrink writes the list without what is
/// gone; "grow" also puts in what is new, for the day on which that was decided.
QStringList againstTheList(const QString& setting, const Findings& found);

}  // namespace wm::ui

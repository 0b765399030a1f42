// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <cstdint>
#include <optional>
#include <utility>
#include <vector>

#include "core/base/ids.h"

class QWidget;

namespace wm::ui {

enum class PageId : std::uint8_t { Bench, Machine, Weekend, Shelf, Torque, Measurements, Tasks, Sheets };

enum class EntryKind : std::uint8_t { Outing, Job, Snag, Wash, Reading, Crash };

/// A demand to open the quick-entry strip, prefilled.
struct EntryRequest {
    EntryKind kind = EntryKind::Job;
    std::optional<MachineId> machine{};
    std::optional<TaskId> task{};
    std::optional<SnagId> snag{};
    /// The fact that this entry puts right: it is struck, with a reason, and the strip begins with its
    /// values.
    std::optional<std::int64_t> corrects{};
};

/// Where a figure comes from, for F1: a headline and pairs of "what" and "how much".
struct Why {
    QString title;
    std::vector<std::pair<QString, QString>> lines;
    QString footnote{};
};

/// What a page may ask of the window around it.
class Guide {
  public:
    virtual ~Guide() = default;
    virtual void goTo(PageId page) = 0;
    virtual void enter(const EntryRequest& request) = 0;
    /// Shows why beside `at`, until the next key or click.
    virtual void explain(QWidget* at, const Why& why) = 0;
    /// A word in the bottom line, for what needs no answer.
    virtual void say(const QString& words) = 0;
};

}  // namespace wm::ui

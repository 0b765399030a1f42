// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <cstdint>
#include <optional>

#include "core/base/ids.h"
#include "core/upkeep/rows.h"
#include "ui/words/why.h"

class QWidget;

namespace wm::ui {

class EntryForm;

enum class PageId : std::uint8_t { Bench, Machine, Weekend, Shelf, Torque, Measurements, Tasks, Sheets };

/// What can be entered in the strip at the bottom. The first six have a key of their own.
enum class EntryKind : std::uint8_t {
    Outing,
    Job,
    Snag,
    Wash,
    Reading,
    Crash,
    PutOff,  ///< of `task` or `snag`
    EndSnag,
    Strike,  ///< of `fact`
    Fit,     ///< `item`, or a new one if there is none, on `machine`
    TakeOff,
    Swap,
    Event,
    Person,
    Machine
};

/// A demand to open the quick-entry strip, prefilled. What is left out, the strip finds for itself.
struct EntryRequest {
    EntryKind kind = EntryKind::Job;
    std::optional<MachineId> machine{};
    std::optional<TaskId> task{};
    std::optional<SnagId> snag{};
    std::optional<ItemId> item{};
    std::optional<EventId> event{};      ///< Event: the one to change
    QString position{};                  ///< Fit: where
    std::optional<std::int64_t> fact{};  ///< Strike: which
    /// The fact that this entry puts right: it is struck, with a reason, and the strip begins with its
    /// values.
    std::optional<std::int64_t> corrects{};
    std::optional<upkeep::RecordKind> how{};  ///< Job: begin with this, and at the day
    QString note{};                           ///< Job: begin with these words

    friend bool operator==(const EntryRequest&, const EntryRequest&) = default;
};

/// What a page is to show when it is gone to; what is left out stays as it was left.
struct Aim {
    enum class View : std::uint8_t { AsLeft, Baseline, UsedMachine, HandTight, Steps };
    View view = View::AsLeft;
    std::optional<MachineId> machine{};
    std::optional<JointId> joint{};
    std::optional<StepId> step{};

    friend bool operator==(const Aim&, const Aim&) = default;
};

/// What a page may ask of the window around it.
class Guide {
  public:
    virtual ~Guide() = default;
    virtual void goTo(PageId page, const Aim& aim) = 0;
    void goTo(PageId page) { goTo(page, Aim{}); }
    virtual void enter(const EntryRequest& request) = 0;
    /// Opens a form of the page's own in the strip; the strip takes it over. A form of the same title that
    /// holds typed text comes back instead.
    virtual void enter(EntryForm* form) = 0;
    /// Shows why beside `at`, until the next key or click.
    virtual void explain(QWidget* at, const Why& why) = 0;
    /// Shows a message in the status line, for what needs no answer.
    virtual void say(const QString& words) = 0;
};

}  // namespace wm::ui

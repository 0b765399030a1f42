// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/ids.h"
#include "core/base/row.h"
#include "core/calendar/date.h"
#include "core/units/quantity.h"
#include "core/upkeep/task.h"

namespace wm::weekend {

/// An access step that has to be off first. `onlySomeModels`: whether it is needed differs between models;
/// `applies` says if it does on this machine.
struct Need {
    std::string code{};
    bool onlySomeModels = false;
    bool applies = true;

    template <class Self, class Visit>
    static void fields(Self& self, Visit&& visit) {
        visit("code", self.code);
        visit("only_some_models", self.onlySomeModels);
        visit("applies", self.applies);
    }
    friend bool operator==(const Need&, const Need&) = default;
};

/// One version of an access step: what comes off and goes back on to reach a job.
struct StepVersion {
    static constexpr std::string_view kTable = "step_version";
    static constexpr base::RowKind kKind = base::RowKind::Version;
    StepVersionId id{};
    base::Entered entered = 0;
    StepId step{};
    MachineId machine{};
    calendar::Date validFrom{};
    std::string code{};
    std::string name{};
    units::Minutes off{};
    units::Minutes on{};
    std::vector<Need> needs{};
    std::string breakLoose{};               ///< what to crack loose before: "axle nut, wheel on the ground"
    std::vector<base::Code> looseBefore{};  ///< steps that must still be on while `breakLoose` is done
    std::string refit{};                    ///< what to mind when it goes back
    std::vector<base::Code> joints{};       ///< joints that refitting it opens
    std::vector<upkeep::FollowUpRule> followUps{};  ///< verify at once, re-check later
    std::vector<upkeep::Caution> cautions{};
    bool leavesUnrideable = false;  ///< open overnight, the machine is out of use for longer
    std::string source{};
    bool confirmed = false;
    bool active = true;
    /// Positions that it frees, as paths ("rear wheel", "rear wheel/tyre"): to take something off one of
    /// them, or to put it on, the step must be off.
    std::vector<base::Code> frees{};
    std::vector<upkeep::Doing> doings{};
    std::vector<upkeep::Edge> edges{};
    upkeep::BodyState bodyState = upkeep::BodyState::Any;  ///< of the engine while it comes off
    bool fromStarter = false;                              ///< word for word what a starter schedule says

    template <class Self, class Visit>
    static void fields(Self& self, Visit&& visit) {
        visit("id", self.id);
        visit("entered", self.entered);
        visit("step", self.step);
        visit("machine", self.machine);
        visit("valid_from", self.validFrom);
        visit("code", self.code);
        visit("name", self.name);
        visit("off_minutes", self.off);
        visit("on_minutes", self.on);
        visit("needs", self.needs);
        visit("break_loose", self.breakLoose);
        visit("loose_before", self.looseBefore);
        visit("refit", self.refit);
        visit("joints", self.joints);
        visit("follow_ups", self.followUps);
        visit("cautions", self.cautions);
        visit("leaves_unrideable", self.leavesUnrideable);
        visit("source", self.source);
        visit("confirmed", self.confirmed);
        visit("active", self.active);
        visit("frees", self.frees);
        visit("doings", self.doings);
        visit("edges", self.edges);
        visit("body_state", self.bodyState);
        visit("from_starter", self.fromStarter);
    }
    friend bool operator==(const StepVersion&, const StepVersion&) = default;
};

/// Time at the bench: minutes after midnight of `date`, and how many pairs of hands.
struct WorkWindow {
    static constexpr std::string_view kTable = "work_window";
    static constexpr base::RowKind kKind = base::RowKind::Editable;
    WindowId id{};
    calendar::Date date{};
    units::Minutes startsAt{};
    units::Minutes endsAt{};
    std::int64_t hands = 1;
    bool active = true;

    template <class Self, class Visit>
    static void fields(Self& self, Visit&& visit) {
        visit("id", self.id);
        visit("date", self.date);
        visit("starts_at", self.startsAt);
        visit("ends_at", self.endsAt);
        visit("hands", self.hands);
        visit("active", self.active);
    }
    friend bool operator==(const WorkWindow&, const WorkWindow&) = default;
};

/// A job that the mechanic has put into the weekend (or taken out again).
struct Pick {
    static constexpr std::string_view kTable = "pick";
    static constexpr base::RowKind kKind = base::RowKind::Editable;
    PickId id{};
    MachineId machine{};
    std::optional<TaskId> task{};  ///< exactly one of task and snag
    std::optional<SnagId> snag{};
    bool picked = true;

    template <class Self, class Visit>
    static void fields(Self& self, Visit&& visit) {
        visit("id", self.id);
        visit("machine", self.machine);
        visit("task", self.task);
        visit("snag", self.snag);
        visit("picked", self.picked);
    }
    friend bool operator==(const Pick&, const Pick&) = default;
};

/// A line of a job sheet.
struct SheetJob {
    std::optional<TaskId> task{};  ///< exactly one of task and snag
    std::optional<SnagId> snag{};

    template <class Self, class Visit>
    static void fields(Self& self, Visit&& visit) {
        visit("task", self.task);
        visit("snag", self.snag);
    }
    friend bool operator==(const SheetJob&, const SheetJob&) = default;
};

/// A job sheet that left the program on paper, by its number.
struct IssuedSheet {
    static constexpr std::string_view kTable = "issued_sheet";
    static constexpr base::RowKind kKind = base::RowKind::Fact;
    SheetId id{};
    base::Entered entered = 0;
    std::int64_t number = 0;
    MachineId machine{};
    calendar::Date date{};  ///< of issue
    std::string target{};   ///< what it is for, in words: the event
    std::vector<SheetJob> jobs{};
    std::string note{};

    template <class Self, class Visit>
    static void fields(Self& self, Visit&& visit) {
        visit("id", self.id);
        visit("entered", self.entered);
        visit("number", self.number);
        visit("machine", self.machine);
        visit("date", self.date);
        visit("target", self.target);
        visit("jobs", self.jobs);
        visit("note", self.note);
    }
    friend bool operator==(const IssuedSheet&, const IssuedSheet&) = default;
};

}  // namespace wm::weekend

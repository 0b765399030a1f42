// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/ids.h"
#include "core/base/names.h"
#include "core/base/row.h"
#include "core/calendar/date.h"
#include "core/units/decimal.h"
#include "core/units/quantity.h"
#include "core/upkeep/counters.h"
#include "core/upkeep/deeds.h"
#include "core/usage/rows.h"

namespace wm::upkeep {

/// What follows if the job is left out (the sense of SAE JA1011). Hidden = the rider cannot feel it.
enum class Consequence : std::uint8_t { SafetyEvident, SafetyHidden, EndsRace, CostsMoney, HiddenWear };

constexpr bool isSafety(Consequence c) {
    return c == Consequence::SafetyEvident || c == Consequence::SafetyHidden;
}
constexpr bool isHidden(Consequence c) {
    return c == Consequence::SafetyHidden || c == Consequence::HiddenWear;
}

/// One limit of an interval. `first` holds until the first completion (run-in), then `every`. A soft limit
/// may be overrun by `allowance`; a hard one (a life limit) may not.
struct Limit {
    Counter counter = Counter::Hours;
    std::int64_t every = 0;
    std::optional<std::int64_t> first{};
    std::int64_t allowance = 0;
    bool hard = false;

    template <class Self, class Visit>
    static void fields(Self& self, Visit&& visit) {
        visit("counter", self.counter);
        visit("every", self.every);
        visit("first", self.first);
        visit("allowance", self.allowance);
        visit("hard", self.hard);
    }
    friend bool operator==(const Limit&, const Limit&) = default;
};

enum class Combine : std::uint8_t { First, Last };  ///< of several limits
/// Due n after the last completion, or at n, 2n, 3n ... of the life (core/README.md, Upkeep).
enum class CountFrom : std::uint8_t { Completion, FixedMarks };
enum class Happening : std::uint8_t { Wash, PressureWash, MudDay, Crash, BeforeRace, Job };

/// The task falls due when this happens. For Job, `code` names the other task.
struct Trigger {
    Happening happening = Happening::Wash;
    std::string code{};

    template <class Self, class Visit>
    static void fields(Self& self, Visit&& visit) {
        visit("happening", self.happening);
        visit("code", self.code);
    }
    friend bool operator==(const Trigger&, const Trigger&) = default;
};

enum class Unit : std::uint8_t { Piece, Millilitre, Gram };

/// What one go of the task uses. `line` ties it to a line of the shelf once the mechanic has said which. How
/// much it is stands elsewhere in a manual than how often: it has a source of its own (none = the task's).
struct KitLine {
    std::string what{};
    std::optional<StockLineId> line{};
    std::int64_t amount = 1;
    Unit unit = Unit::Piece;
    bool onlyIfNeeded = false;
    std::string source{};
    std::string page{};
    bool confirmed = false;  ///< amount checked against the service manual

    template <class Self, class Visit>
    static void fields(Self& self, Visit&& visit) {
        visit("what", self.what);
        visit("line", self.line);
        visit("amount", self.amount);
        visit("unit", self.unit);
        visit("only_if_needed", self.onlyIfNeeded);
        visit("source", self.source);
        visit("page", self.page);
        visit("confirmed", self.confirmed);
    }
    friend bool operator==(const KitLine&, const KitLine&) = default;
};

/// What is measured at the job; a limit that nobody has typed from the manual is blank. A value that reaches
/// a limit makes the job `job` due (a code; blank: the measuring task itself), until that job is recorded or
/// a later value is good. A value at a limit reaches it, unless the limit itself is still good.
struct MeasurePoint {
    std::string name{};
    std::string unit{};
    std::optional<units::Decimal> least{};
    std::optional<units::Decimal> most{};
    std::string source{};
    bool confirmed = false;
    std::string page{};
    std::string job{};
    bool leastGood = false;  ///< a value of exactly `least` is still good
    bool mostGood = false;

    template <class Self, class Visit>
    static void fields(Self& self, Visit&& visit) {
        visit("name", self.name);
        visit("unit", self.unit);
        visit("least", self.least);
        visit("most", self.most);
        visit("source", self.source);
        visit("confirmed", self.confirmed);
        visit("page", self.page);
        visit("job", self.job);
        visit("least_good", self.leastGood);
        visit("most_good", self.mostGood);
    }
    friend bool operator==(const MeasurePoint&, const MeasurePoint&) = default;
};

/// The kinds of harm; their words are in ui/words/caution_words.h, one place for screen and paper.
enum class Hazard : std::uint8_t {
    GasCharged,
    Spring,
    Fuel,
    Solvent,
    BrakeFluid,
    HotParts,
    Fibre,
    Lifting,
    Pinch,
    Exhaust,
    Electrical,
    CompressedAir,
    UsedFluids,
    FirstRide,
    Brakes,
    Steering,
    Wheels
};

struct Caution {
    Hazard hazard = Hazard::Lifting;

    template <class Self, class Visit>
    static void fields(Self& self, Visit&& visit) {
        visit("hazard", self.hazard);
    }
    friend bool operator==(const Caution&, const Caution&) = default;
};

/// When a follow-up comes: at once (before the machine is ridden), after the next outing, or after `amount`
/// hundredths of an hour, or days.
enum class When : std::uint8_t { AtOnce, NextOuting, AfterHours, AfterDays };

/// What one job brings: "re-check spokes after the next outing". `code` names the task to be done, if it is
/// one.
struct FollowUpRule {
    std::string what{};
    std::string code{};
    When when = When::AtOnce;
    std::int64_t amount = 0;

    template <class Self, class Visit>
    static void fields(Self& self, Visit&& visit) {
        visit("what", self.what);
        visit("code", self.code);
        visit("due", self.when);
        visit("amount", self.amount);
    }
    friend bool operator==(const FollowUpRule&, const FollowUpRule&) = default;
};

enum class BodyState : std::uint8_t { Any, Cold, Warm };  ///< what the engine must be for the job

/// A short name stands beside a figure in a column of the smallest window.
inline constexpr std::size_t kLongestShortName = 18;

/// One version of the standing definition of a job on one machine.
struct TaskVersion {
    static constexpr std::string_view kTable = "task_version";
    static constexpr base::RowKind kKind = base::RowKind::Version;
    TaskVersionId id{};
    base::Entered entered = 0;
    TaskId task{};
    MachineId machine{};
    calendar::Date validFrom{};
    std::string code{};  ///< the same on every machine that has this job: an item's clock moves with it
    std::string name{};
    std::string position{};  ///< the item it is about, as a path "engine/piston"; empty = the machine itself
    Consequence consequence = Consequence::CostsMoney;
    std::vector<Limit> limits{};
    std::vector<usage::HourWeight> weights{};  ///< of the hours that its limits count; the first that fits
    Combine combine = Combine::First;
    CountFrom countFrom = CountFrom::Completion;
    std::int64_t everyNth = 0;  ///< every n-th completion `extra` is done as well; 0 = never
    std::string extra{};
    std::string nthOf{};  ///< instead of limits: due at every `nth`-th completion of the task of this code
    std::int64_t nth = 0;
    std::vector<Trigger> triggers{};
    std::vector<KitLine> kit{};
    std::vector<MeasurePoint> measures{};
    std::vector<Caution> cautions{};
    std::vector<base::Code> steps{};   ///< access steps that must be off
    std::vector<base::Code> joints{};  ///< joints that the job itself opens
    std::vector<FollowUpRule> followUps{};
    units::Minutes minutes{};  ///< the job alone, access not counted
    std::string tools{};
    std::string howTo{};
    BodyState bodyState = BodyState::Any;
    bool renews = false;   ///< the item in the position is as new afterwards
    bool felt = true;      ///< the rider can feel it when it is left undone
    std::string source{};  ///< "service manual", "common practice" ...
    std::string page{};
    bool confirmed = false;  ///< interval checked against the service manual
    bool active = true;
    bool sendsOut = false;  ///< what sits in the position goes to a workshop for it
    std::vector<Doing> doings{};
    std::vector<Edge> edges{};
    bool comesLast = false;    ///< after all that is opened and done besides: a brake is bled
    std::string shortName{};   ///< for narrow places, at most kLongestShortName characters; may be empty
    bool fromStarter = false;  ///< word for word what a starter schedule says

    template <class Self, class Visit>
    static void fields(Self& self, Visit&& visit) {
        visit("id", self.id);
        visit("entered", self.entered);
        visit("task", self.task);
        visit("machine", self.machine);
        visit("valid_from", self.validFrom);
        visit("code", self.code);
        visit("name", self.name);
        visit("position", self.position);
        visit("consequence", self.consequence);
        visit("limits", self.limits);
        visit("weights", self.weights);
        visit("combine", self.combine);
        visit("count_from", self.countFrom);
        visit("every_nth", self.everyNth);
        visit("extra", self.extra);
        visit("nth_of", self.nthOf);
        visit("nth", self.nth);
        visit("triggers", self.triggers);
        visit("kit", self.kit);
        visit("measures", self.measures);
        visit("cautions", self.cautions);
        visit("steps", self.steps);
        visit("joints", self.joints);
        visit("follow_ups", self.followUps);
        visit("minutes", self.minutes);
        visit("tools", self.tools);
        visit("how_to", self.howTo);
        visit("body_state", self.bodyState);
        visit("renews", self.renews);
        visit("felt", self.felt);
        visit("source", self.source);
        visit("page", self.page);
        visit("confirmed", self.confirmed);
        visit("active", self.active);
        visit("sends_out", self.sendsOut);
        visit("doings", self.doings);
        visit("edges", self.edges);
        visit("comes_last", self.comesLast);
        visit("short_name", self.shortName);
        visit("from_starter", self.fromStarter);
    }
    friend bool operator==(const TaskVersion&, const TaskVersion&) = default;
};

}  // namespace wm::upkeep

namespace wm::base {
template <>
struct Names<upkeep::Consequence> {
    static constexpr std::array<std::string_view, 5> names{"safety evident", "safety hidden", "ends a race",
                                                           "costs money", "hidden wear"};
};
template <>
struct Names<upkeep::Combine> {
    static constexpr std::array<std::string_view, 2> names{"first", "last"};
};
template <>
struct Names<upkeep::CountFrom> {
    static constexpr std::array<std::string_view, 2> names{"completion", "fixed marks"};
};
template <>
struct Names<upkeep::Happening> {
    static constexpr std::array<std::string_view, 6> names{"wash",  "pressure wash", "mud day",
                                                           "crash", "before race",   "job"};
};
template <>
struct Names<upkeep::Unit> {
    static constexpr std::array<std::string_view, 3> names{"piece", "ml", "g"};
};
template <>
struct Names<upkeep::Hazard> {
    static constexpr std::array<std::string_view, 17> names{
        "gas-charged", "spring",     "fuel",   "solvent",  "brake fluid", "hot parts",
        "fibre",       "lifting",    "pinch",  "exhaust",  "electrical",  "compressed air",
        "used fluids", "first ride", "brakes", "steering", "wheels"};
};
template <>
struct Names<upkeep::When> {
    static constexpr std::array<std::string_view, 4> names{"at once", "next outing", "after hours",
                                                           "after days"};
};
template <>
struct Names<upkeep::BodyState> {
    static constexpr std::array<std::string_view, 3> names{"any", "cold", "warm"};
};
}  // namespace wm::base

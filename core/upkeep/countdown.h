// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <functional>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/names.h"
#include "core/base/result.h"
#include "core/calendar/date.h"
#include "core/upkeep/measures.h"
#include "core/usage/exposure.h"

namespace wm::upkeep {

/// The side of a bracket that a figure is reckoned from: safety tasks from the high end of what is behind
/// them, the others from the best.
enum class From : std::uint8_t { Best, High };

/// A count with a bracket: what is behind, or left of, one limit. Nobody may know a likely figure, nor how
/// much more it can be.
struct CountBracket {
    std::int64_t low = 0;
    std::optional<std::int64_t> best = 0;
    std::optional<std::int64_t> high = 0;
    friend bool operator==(const CountBracket&, const CountBracket&) = default;
};

/// The end of a bracket that a figure is reckoned from: of those that anybody knows the one that suits the
/// side best, and the higher one before the lower.
constexpr std::int64_t reckonedFrom(const CountBracket& behind, From side) {
    const auto& first = side == From::High ? behind.high : behind.best;
    const auto& second = side == From::High ? behind.best : behind.high;
    return first ? *first : second.value_or(behind.low);
}

/// Is a limit reached? Yes: the likely figure is there, or the low end alone. MayBe: the high end alone, or
/// the likely figure is below and nobody knows the high end. NobodyKnows: neither likely nor high is known.
enum class Reached : std::uint8_t { No, NobodyKnows, MayBe, Yes };

/// `isThere` says of a count whether it is at the limit.
template <class IsThere>
Reached reached(const CountBracket& behind, IsThere&& isThere) {
    if ((behind.best && isThere(*behind.best)) || isThere(behind.low))
        return Reached::Yes;
    if (behind.high ? isThere(*behind.high) : behind.best.has_value())
        return Reached::MayBe;
    return behind.best || behind.high ? Reached::No : Reached::NobodyKnows;
}

/// What is stated of a counter since a job, and up to the evening of which day.
struct StatedSince {
    CountBracket bracket{};
    calendar::Date upTo{};
};

/// How one limit stands. For Days and Months `behind` is in days and `dueOn` is the very date.
/// Fixed marks stand at every, 2 x every ... of the subject's life (for Days and Months: from its first day);
/// a job done in the last tenth of the way to a mark was done for that mark.
struct LimitState {
    Limit limit{};
    bool isFirst = false;     ///< the run-in figure governs
    std::int64_t amount = 0;  ///< what governs: first or every, or the way to the next fixed mark from the
                              ///< last completion; for Months and Days the number of days of this round
    CountBracket behind{};    ///< since the last completion (or the known start)
    std::optional<CountBracket> raw{};    ///< the same as ridden, where the task weights its hours
    std::optional<StatedSince> stated{};  ///< what of it was told, and not counted
    bool isOpen = false;                  ///< some of it is from before anybody counted, and nobody told
    std::optional<std::int64_t>
        stoodAt{};          ///< on the scale of fixed marks at the last completion; not of days
    std::int64_t left = 0;  ///< amount - behind, reckoned from the side that suits the task; < 0 = over
    std::int64_t leftWithAllowance = 0;
    std::optional<calendar::Date> dueOn{};  ///< Days and Months only
    bool unbounded = false;                 ///< reckoned from a high end that nobody knows
    double used = 0;  ///< share of `amount` behind, from the same side; 1 = at the limit
    Reached reached = Reached::No;
    Reached beyond = Reached::No;  ///< the same of the limit with its allowance
};

/// Where the count begins.
enum class Origin : std::uint8_t { Record, Baseline, KnownStart, Nothing };

/// How one task stands on one day, before anybody looks ahead.
struct Countdown {
    Origin origin = Origin::Nothing;
    std::optional<RecordId> last{};  ///< the completion that it counts from
    std::int64_t completions = 0;    ///< so far
    std::int64_t extraIn = 0;  ///< the extra work comes with the n-th completion from now; 0 = there is none
    std::int64_t othersDone = 0;       ///< with nthOf: completions of the other task since `last`
    std::vector<LimitState> limits{};  ///< empty without a record or known start: nobody knows, not "0 h"
    /// The limit that is reached most surely, of equal ones the most used (with Combine::Last the other way).
    std::optional<std::size_t> governing{};
    Reached reached = Reached::No;  ///< of all limits together
    Reached beyond = Reached::No;   ///< the same of what their allowances leave
    bool over = false;  ///< due now: at or past the limit; with a soft limit, still within `allowance` or not
    bool withinAllowance = false;          ///< over, but a soft limit still allows it
    std::optional<Happening> triggered{};  ///< a happening since the last completion made it due
    std::optional<calendar::Date> triggeredOn{};
    std::optional<RecordId> triggeredBy{};  ///< the other job, if it was one
    std::optional<ReachedValue> value{};    ///< a measured value that made it due
    double used = 0;                        ///< share of the governing limit behind it; 1 = at the limit
    bool nothingFitted = false;             ///< its position is empty: no clock at all
    bool noRecord = false;                  ///< no record and no known start
    bool beforeNextRace = false;  ///< has the trigger BeforeRace and was ridden since `last` (or has none)

    [[nodiscard]] bool extraDue() const { return extraIn == 1; }
};

/// All that one task's countdown needs. `versions` are all versions of the task, in order; `records` those of
/// its code on its subject (struck left out), in any order; `atoms` everything that its subject has behind
/// it, in order of `to`; `others` the completions of other tasks that a trigger or "every n-th of" may name.
struct TaskFacts {
    std::span<const TaskVersion* const> versions;
    std::span<const Record* const> records;
    std::span<const Record* const> others;
    std::span<const usage::Atom> atoms;
    bool startedNew = false;                  ///< the subject's life is known from its first day
    calendar::Date since{};                   ///< that first day
    bool nothingFitted = false;               ///< the subject is a position with nothing in it
    std::span<const Record* const> told{};    ///< what is stated of the machine, whichever job
    std::span<const MeasuredValue> values{};  ///< of the subject, whose limits make this task due
    /// Before this nobody noted washes, outings and the like (nothing: at no time).
    std::optional<calendar::Moment> notedFrom{};
};

/// On the evening of `on`. Records in any order; later ones and their use do not count.
/// A Done or a Baseline is a completion, a LookedFine too if looking settles the version that it followed.
/// The version in force on `on` says the intervals; none in force: an empty countdown with noRecord. A
/// Baseline has behind it what it states. Where it says nothing and is older than the stated past: of the
/// hours anything from 0 to the whole past, with no likely figure (the rest of the past if it states the
/// total time of then); of what is counted in pieces what was noted here at least, and no more is known. One
/// that was never done has the whole past behind it, and the first interval holds. Kilometres of an odometer
/// that nobody read are left out if there is another limit.
Countdown countdown(const TaskFacts& facts, calendar::Date on);

/// A demand that an earlier job or a happening made: re-check after the first outing ...
struct FollowUp {
    MachineId machine{};
    std::int64_t origin = 0;  ///< id of the record (or crash)
    calendar::Date since{};
    FollowUpRule rule{};
    std::string because{};  ///< name of the job or access step
    bool due = false;       ///< its time has come
    std::string joint{};    ///< code, if it is about one joint
};

/// A stretch of time in which a demand stands.
struct Stretch {
    calendar::Moment from{};
    std::optional<calendar::Moment> to{};  ///< nothing: it still does
};
/// What one record asks for, and of whom.
struct Demand {
    const Record* origin = nullptr;
    std::string because{};
    FollowUpRule rule{};
    MachineId machine{};                    ///< on which it shows
    std::optional<ItemId> item{};           ///< with which it goes; nothing: it stays with the machine
    std::vector<Stretch> stands{};          ///< in order; each begins it anew, unless it was settled before
    std::span<const usage::Atom> atoms{};   ///< what its subject ran
    std::vector<const Record*> settling{};  ///< records of the task that the rule names, on its subject
};

/// The demands that nobody has answered and that stand on the evening of `on`, in order of their records.
/// Answered: by a FollowUpAnswer with the origin and words, or, if the rule names a task, by a record of that
/// task made once the demand was due. A later record with the same demand of the same subject (because, words
/// and code) takes the place of the earlier one.
std::vector<FollowUp> openFollowUps(std::vector<Demand> demands,
                                    std::span<const FollowUpAnswer* const> answers, calendar::Date on);

/// A Done or a Baseline is one, a LookedFine where looking settles the version that it followed (of
/// `versions`, all of its task; the one in force on `on` where none is known).
bool isCompletion(const Record& record, std::span<const TaskVersion* const> versions, calendar::Date on);

/// The deferral that holds for a task or snag on a date, or nullptr: the newest one made up to that date,
/// unless its time is over (its day has come, its hours are reached), it names no end, or the job was done
/// since.
const Deferral* deferralInForce(std::span<const Deferral* const> deferrals, calendar::Date on,
                                units::Hours machineBest, std::optional<calendar::Date> lastDone = {});

}  // namespace wm::upkeep

namespace wm::base {
template <>
struct Names<upkeep::Reached> {
    static constexpr std::array<std::string_view, 4> names{"no", "nobody knows", "may be", "yes"};
};
}  // namespace wm::base

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <tuple>

#include "core/upkeep/stated_row.h"
#include "core/upkeep/task.h"

namespace wm::upkeep {

struct Use {
    StockLineId line{};
    std::optional<LotId> lot{};
    std::int64_t amount = 0;

    template <class Self, class Visit>
    static void fields(Self& self, Visit&& visit) {
        visit("line", self.line);
        visit("lot", self.lot);
        visit("amount", self.amount);
    }
    friend bool operator==(const Use&, const Use&) = default;
};

struct Measured {
    std::string name{};
    std::string unit{};
    units::Decimal value{};

    template <class Self, class Visit>
    static void fields(Self& self, Visit&& visit) {
        visit("name", self.name);
        visit("unit", self.unit);
        visit("value", self.value);
    }
    friend bool operator==(const Measured&, const Measured&) = default;
};

/// Done: the work was carried out. LookedFine: inspected, nothing to do; counts as done for a check, and
/// starts no new interval of a renewal. Baseline: done before this file knew the machine, by somebody's word.
enum class RecordKind : std::uint8_t { Done, LookedFine, Baseline };

/// One job done: what, when, at which meter and total time (as stated then), by what data, by whom, with
/// what. The content that 14 CFR 43.9 and 43.11 ask of a maintenance entry.
struct Record {
    static constexpr std::string_view kTable = "record";
    static constexpr base::RowKind kKind = base::RowKind::Fact;
    RecordId id{};
    base::Entered entered = 0;
    MachineId machine{};
    std::optional<ItemId> item{};  ///< the item that sat in the task's position, if one was known
    std::optional<TaskId> task{};
    std::optional<TaskVersionId> version{};
    std::string code{};  ///< of the task; empty for a one-off job
    std::optional<SnagId> snag{};
    RecordKind kind = RecordKind::Done;
    calendar::Date date{};
    calendar::DayPart part = calendar::DayPart::AfterRiding;
    std::optional<units::Hours> meter{};      ///< what the hour meter showed
    std::optional<units::Hours> statedLow{};  ///< total time of machine or item as the program stated it then
    std::optional<units::Hours> statedBest{};
    std::optional<units::Hours> statedHigh{};
    std::optional<PersonId> by{};
    std::string what{};
    std::string data{};  ///< "service manual p. 2-31"
    std::optional<units::Minutes> minutes{};
    std::optional<SheetId> sheet{};
    std::vector<Use> uses{};
    std::vector<Measured> measured{};
    std::vector<base::Code> steps{};  ///< access steps that were off and refitted
    bool extraDone = false;           ///< the every-n-th extra work was done
    std::string note{};
    std::vector<Stated> stated{};  ///< of a Baseline: what is remembered, in place of what was counted

    template <class Self, class Visit>
    static void fields(Self& self, Visit&& visit) {
        visit("id", self.id);
        visit("entered", self.entered);
        visit("machine", self.machine);
        visit("item", self.item);
        visit("task", self.task);
        visit("version", self.version);
        visit("code", self.code);
        visit("snag", self.snag);
        visit("kind", self.kind);
        visit("date", self.date);
        visit("part", self.part);
        visit("meter", self.meter);
        visit("stated_low", self.statedLow);
        visit("stated_best", self.statedBest);
        visit("stated_high", self.statedHigh);
        visit("by_person", self.by);
        visit("what", self.what);
        visit("data", self.data);
        visit("minutes", self.minutes);
        visit("sheet", self.sheet);
        visit("uses", self.uses);
        visit("measured", self.measured);
        visit("steps", self.steps);
        visit("extra_done", self.extraDone);
        visit("note", self.note);
        visit("stated", self.stated);
    }
    friend bool operator==(const Record&, const Record&) = default;
};

inline calendar::Moment momentOf(const Record& record) {
    return {record.date, record.part};
}

/// Later in time, or told later of the same part of a day. What is known of the time before the file has no
/// place within a part of a day: it came with what else was told of it.
inline bool cameAfter(const Record& later, const Record& earlier) {
    if (later.kind == RecordKind::Baseline || earlier.kind == RecordKind::Baseline)
        return momentOf(earlier) < momentOf(later);
    return std::tuple(momentOf(earlier), earlier.entered) < std::tuple(momentOf(later), later.entered);
}

/// A Baseline of what is as old as its subject: no time had run when it was "done".
inline bool wasNeverDone(const Record& record) {
    return record.kind == RecordKind::Baseline && record.statedHigh == units::Hours{0};
}

enum class SnagWish : std::uint8_t { DoIt, Watch };

struct Snag {
    static constexpr std::string_view kTable = "snag";
    static constexpr base::RowKind kKind = base::RowKind::Fact;
    SnagId id{};
    base::Entered entered = 0;
    MachineId machine{};
    std::optional<ItemId> item{};
    std::optional<TaskId> task{};
    calendar::Date date{};
    std::string what{};
    SnagWish wish = SnagWish::DoIt;
    Consequence consequence = Consequence::CostsMoney;

    template <class Self, class Visit>
    static void fields(Self& self, Visit&& visit) {
        visit("id", self.id);
        visit("entered", self.entered);
        visit("machine", self.machine);
        visit("item", self.item);
        visit("task", self.task);
        visit("date", self.date);
        visit("what", self.what);
        visit("wish", self.wish);
        visit("consequence", self.consequence);
    }
    friend bool operator==(const Snag&, const Snag&) = default;
};

/// A snag put right (by a record), or found to be nothing.
struct SnagEnd {
    static constexpr std::string_view kTable = "snag_end";
    static constexpr base::RowKind kKind = base::RowKind::Fact;
    SnagEndId id{};
    base::Entered entered = 0;
    SnagId snag{};
    calendar::Date date{};
    std::optional<RecordId> record{};
    std::string how{};

    template <class Self, class Visit>
    static void fields(Self& self, Visit&& visit) {
        visit("id", self.id);
        visit("entered", self.entered);
        visit("snag", self.snag);
        visit("date", self.date);
        visit("record", self.record);
        visit("how", self.how);
    }
    friend bool operator==(const SnagEnd&, const SnagEnd&) = default;
};

/// A job put off on purpose; it comes back by itself on `untilDate` or at `untilHours` of machine time.
struct Deferral {
    static constexpr std::string_view kTable = "deferral";
    static constexpr base::RowKind kKind = base::RowKind::Fact;
    DeferralId id{};
    base::Entered entered = 0;
    MachineId machine{};
    std::optional<TaskId> task{};  ///< exactly one of task and snag
    std::optional<SnagId> snag{};
    calendar::Date date{};
    std::optional<calendar::Date> untilDate{};
    std::optional<units::Hours> untilHours{};
    std::string reason{};
    std::optional<PersonId> by{};

    template <class Self, class Visit>
    static void fields(Self& self, Visit&& visit) {
        visit("id", self.id);
        visit("entered", self.entered);
        visit("machine", self.machine);
        visit("task", self.task);
        visit("snag", self.snag);
        visit("date", self.date);
        visit("until_date", self.untilDate);
        visit("until_hours", self.untilHours);
        visit("reason", self.reason);
        visit("by_person", self.by);
    }
    friend bool operator==(const Deferral&, const Deferral&) = default;
};

/// The answer to a follow-up: `origin` is the id of the record or crash that brought it, `what` its words.
struct FollowUpAnswer {
    static constexpr std::string_view kTable = "follow_up_answer";
    static constexpr base::RowKind kKind = base::RowKind::Fact;
    AnswerId id{};
    base::Entered entered = 0;
    MachineId machine{};
    std::int64_t origin = 0;
    std::string what{};
    calendar::Date date{};
    bool fine = true;
    std::optional<RecordId> record{};  ///< the job that settled it, if one did; struck with it
    std::string note{};

    template <class Self, class Visit>
    static void fields(Self& self, Visit&& visit) {
        visit("id", self.id);
        visit("entered", self.entered);
        visit("machine", self.machine);
        visit("origin", self.origin);
        visit("what", self.what);
        visit("date", self.date);
        visit("fine", self.fine);
        visit("record", self.record);
        visit("note", self.note);
    }
    friend bool operator==(const FollowUpAnswer&, const FollowUpAnswer&) = default;
};

}  // namespace wm::upkeep

namespace wm::base {
template <>
struct Names<upkeep::RecordKind> {
    static constexpr std::array<std::string_view, 3> names{"done", "looked fine", "baseline"};
};
template <>
struct Names<upkeep::SnagWish> {
    static constexpr std::array<std::string_view, 2> names{"do it", "watch"};
};
}  // namespace wm::base

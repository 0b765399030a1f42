// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <set>

#include "core/picture/shape.h"

// Jobs done, snags, deferrals, marks on joints.

namespace wm::picture {

using base::Fault;

namespace {

void checkDone(Checks& check, upkeep::Record& row) {
    for (std::size_t at = 0; at < row.uses.size(); ++at)
        check.fromOne(placeIn("uses", at, "amount"), row.uses[at].amount, kMostAmount);
    for (std::size_t at = 0; at < row.measured.size(); ++at) {
        check.name(placeIn("measured", at, "name"), row.measured[at].name);
        check.word(placeIn("measured", at, "unit"), row.measured[at].unit);
        check.decimal(placeIn("measured", at, "value"), row.measured[at].value);
    }
    for (std::size_t at = 0; at < row.steps.size(); ++at)
        check.code(placeIn("steps", at, "code"), row.steps[at].code);
}

// What is remembered stands on a baseline alone, once a counter, its ends in order.
void checkStated(Checks& check, const upkeep::Record& row) {
    if (!row.stated.empty())
        check.that(row.kind == upkeep::RecordKind::Baseline, Fault::Inconsistent, "stated");
    std::set<upkeep::Counter> counters;
    for (std::size_t at = 0; at < row.stated.size(); ++at) {
        const upkeep::Stated& stated = row.stated[at];
        const auto place = [&](const char* field) { return placeIn("stated", at, field); };
        const std::int64_t likely = stated.best.value_or(stated.low);
        check.that(stated.counter != upkeep::Counter::Months && counters.insert(stated.counter).second,
                   Fault::Inconsistent, place("counter"));
        check.that(stated.low >= 0, Fault::Negative, place("low"), std::to_string(stated.low));
        check.that(stated.low <= likely, Fault::OutOfOrder, place("best"), std::to_string(likely),
                   std::to_string(stated.low));
        const std::int64_t most = stated.high.value_or(likely);
        check.that(likely <= most, Fault::OutOfOrder, place("high"), std::to_string(most),
                   std::to_string(likely));
        check.that(most <= kMostAmount, Fault::TooLarge, place("high"), std::to_string(most),
                   std::to_string(kMostAmount));
        check.date(place("up_to"), stated.upTo);
    }
}

}  // namespace

void checkShape(Checks& check, upkeep::Record& row) {
    check.date("date", row.date);
    if (row.task)
        check.code("code", row.code);
    else
        check.that(row.code.empty() && !row.version, Fault::Inconsistent, "code", row.code);
    check.hours("meter", row.meter);
    check.hours("stated_low", row.statedLow);
    check.hours("stated_best", row.statedBest);
    check.hours("stated_high", row.statedHigh);
    check.words("what", row.what);
    check.note("data", row.data);
    check.minutes("minutes", row.minutes);
    checkDone(check, row);
    checkStated(check, row);
    check.note("note", row.note);
}

void checkShape(Checks& check, upkeep::Snag& row) {
    check.date("date", row.date);
    check.words("what", row.what);
}

void checkShape(Checks& check, upkeep::SnagEnd& row) {
    check.date("date", row.date);
    check.note("how", row.how);
}

void checkShape(Checks& check, upkeep::Deferral& row) {
    oneOf(check, "task", row.task, row.snag);
    check.date("date", row.date);
    if (row.untilDate)
        check.ordered("until_date", row.date, *row.untilDate);
    check.hours("until_hours", row.untilHours);
    check.note("reason", row.reason);
}

void checkShape(Checks& check, upkeep::FollowUpAnswer& row) {
    check.date("date", row.date);
    check.words("what", row.what);
    check.note("note", row.note);
}

namespace {

// How much moved is said of what was found moved, or of a broken mark; a tool of what was done with one.
void checkFound(Checks& check, const fastening::JointMark& row) {
    using fastening::MarkKind;
    const bool moved = row.kind == MarkKind::FoundMoved || row.kind == MarkKind::MarkBroken;
    if (row.movedCount) {
        check.that(moved, Fault::Inconsistent, "moved_count", std::to_string(*row.movedCount));
        check.fromOne("moved_count", *row.movedCount, kMostOfADay);
    }
    if (row.movedDegrees) {
        check.that(moved, Fault::Inconsistent, "moved_degrees", std::to_string(*row.movedDegrees));
        check.fromOne("moved_degrees", *row.movedDegrees, 3600);
    }
    const bool untooled = row.kind == MarkKind::Loosened || row.kind == MarkKind::RiddenOpen;
    check.that(!(row.tool && untooled), Fault::Inconsistent, "tool");
}

}  // namespace

void checkShape(Checks& check, fastening::JointMark& row) {
    check.date("date", row.date);
    check.decimal("torque", row.torque);
    if (row.torque)
        check.that(*row.torque > units::Decimal{}, Fault::NotPositive, "torque", row.torque->text());
    check.note("note", row.note);
    checkFound(check, row);
}

}  // namespace wm::picture

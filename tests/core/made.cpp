// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/made.h"

namespace wm::made {

using calendar::DayPart;
using calendar::Moment;

namespace {

template <class T>
std::vector<const T*> pointers(const std::vector<T>& values) {
    std::vector<const T*> result;
    for (const T& value : values)
        result.push_back(&value);
    return result;
}

template <class Card>
Card used(std::string_view since, std::string_view low, std::string_view best, std::string_view high) {
    Card card;
    card.since = day(since);
    card.pastLow = hours(low);
    card.pastBest = hours(best);
    if (!high.empty())
        card.pastHigh = hours(high);
    return card;
}

}  // namespace

calendar::Date day(std::string_view iso) {
    return calendar::parseDate("date", iso).value();
}
Moment before(std::string_view iso) {
    return {day(iso), DayPart::BeforeRiding};
}
Moment evening(std::string_view iso) {
    return {day(iso), DayPart::AfterRiding};
}
units::Hours hours(std::string_view text) {
    return units::parseHours("hours", text).value();
}
units::Metres km(std::string_view text) {
    return units::parseKilometres("distance", text).value();
}

template <class Fact>
Fact Made::fact() {
    Fact made;
    made.id = decltype(made.id){++last_};
    made.entered = last_;
    return made;
}

usage::HourReading Made::reading(std::string_view date, std::string_view shown, usage::MeterEvent event) {
    auto made = fact<usage::HourReading>();
    made.date = day(date);
    made.shown = hours(shown);
    made.event = event;
    return made;
}

usage::HourReading Made::replaced(std::string_view date, std::string_view old, std::string_view shown) {
    auto made = reading(date, shown, usage::MeterEvent::Replaced);
    if (!old.empty())
        made.before = hours(old);
    return made;
}

usage::HourReading Made::rolled(std::string_view date, std::string_view shown, std::string_view rollsAt) {
    auto made = reading(date, shown, usage::MeterEvent::RolledOver);
    if (!rollsAt.empty())
        made.rollsAt = hours(rollsAt);
    return made;
}

usage::DistanceReading Made::odometer(std::string_view date, std::string_view shown) {
    auto made = fact<usage::DistanceReading>();
    made.date = day(date);
    made.shown = km(shown);
    return made;
}

usage::Outing Made::outing(std::string_view date, std::string_view noted, usage::Ground ground) {
    auto made = fact<usage::Outing>();
    made.date = day(date);
    if (!noted.empty())
        made.hours = hours(noted);
    made.ground = ground;
    return made;
}

usage::Outing Made::race(std::string_view date, std::string_view noted, std::int64_t starts) {
    auto made = outing(date, noted);
    made.kind = usage::OutingKind::Race;
    made.starts = starts;
    return made;
}

usage::Wash Made::wash(std::string_view date, bool pressure) {
    auto made = fact<usage::Wash>();
    made.date = day(date);
    made.pressure = pressure;
    return made;
}

usage::Crash Made::crash(std::string_view date) {
    auto made = fact<usage::Crash>();
    made.date = day(date);
    return made;
}

items::Move Made::move(ItemId item, items::MoveKind kind, Moment when) {
    auto made = fact<items::Move>();
    made.item = item;
    made.kind = kind;
    made.date = when.date;
    made.part = when.part;
    return made;
}

items::Move Made::fit(ItemId item, MachineId machine, std::string position, Moment when) {
    auto made = move(item, items::MoveKind::Fitted, when);
    made.machine = machine;
    made.position = std::move(position);
    return made;
}

items::Move Made::fit(ItemId item, ItemId parent, std::string position, Moment when) {
    auto made = move(item, items::MoveKind::Fitted, when);
    made.parent = parent;
    made.position = std::move(position);
    return made;
}

upkeep::Record Made::record(std::string_view date, upkeep::RecordKind kind, std::string code) {
    auto made = fact<upkeep::Record>();
    made.date = day(date);
    made.kind = kind;
    made.code = std::move(code);
    return made;
}

upkeep::TaskVersion task(std::vector<upkeep::Limit> limits, upkeep::Consequence consequence) {
    upkeep::TaskVersion made;
    made.id = TaskVersionId{900};
    made.task = TaskId{901};
    made.validFrom = day("2020-01-01");
    made.code = "job";
    made.consequence = consequence;
    made.limits = std::move(limits);
    return made;
}

upkeep::Limit every(std::string_view hoursText) {
    return {.counter = upkeep::Counter::Hours, .every = hours(hoursText).count()};
}

upkeep::Limit every(std::int64_t amount, upkeep::Counter counter) {
    return {.counter = counter, .every = amount};
}

items::Item newItem(ItemId id, std::string_view since) {
    items::Item item;
    item.id = id;
    item.since = day(since);
    item.startedNew = true;
    return item;
}

items::Item usedItem(ItemId id, std::string_view since, std::string_view low, std::string_view best,
                     std::string_view high) {
    auto item = used<items::Item>(since, low, best, high);
    item.id = id;
    return item;
}

items::Machine usedMachine(std::string_view since, std::string_view low, std::string_view best,
                           std::string_view high) {
    auto machine = used<items::Machine>(since, low, best, high);
    machine.id = MachineId{800};
    return machine;
}

std::string text(const usage::HoursBracket& bracket) {
    if (bracket.isExact())
        return units::hoursText(bracket.low);
    return units::hoursText(bracket.low) + ".." + units::hoursText(bracket.best) + ".." +
           (bracket.high ? units::hoursText(*bracket.high) : "");
}

upkeep::Countdown Case::on(std::string_view date) const {
    const auto pointed = pointers(versions);
    const auto own = pointers(records);
    const auto other = pointers(others);
    return upkeep::countdown({.versions = pointed,
                              .records = own,
                              .others = other,
                              .atoms = atoms,
                              .startedNew = startedNew,
                              .since = since,
                              .values = values},
                             day(date));
}

}  // namespace wm::made

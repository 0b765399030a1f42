// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/items/fittings.h"
#include "core/upkeep/countdown.h"
#include "core/usage/exposure.h"

// Facts for tests in few words. Ids and the order of entry are counted up by one `Made` a test, hours and
// distances are texts as a mechanic would write them ("2.5"), dates ISO.
namespace wm::made {

calendar::Date day(std::string_view iso);
calendar::Moment before(std::string_view iso);   ///< before that day's riding
calendar::Moment evening(std::string_view iso);  ///< after it
units::Hours hours(std::string_view text);
units::Metres km(std::string_view text);

class Made {
  public:
    usage::HourReading reading(std::string_view date, std::string_view shown,
                               usage::MeterEvent event = usage::MeterEvent::Plain);
    usage::HourReading replaced(std::string_view date, std::string_view old, std::string_view shown);
    usage::HourReading rolled(std::string_view date, std::string_view shown, std::string_view rollsAt);
    usage::DistanceReading odometer(std::string_view date, std::string_view shown);
    usage::Outing outing(std::string_view date, std::string_view noted = {},
                         usage::Ground ground = usage::Ground::Unstated);
    usage::Outing race(std::string_view date, std::string_view noted, std::int64_t starts);
    usage::Wash wash(std::string_view date, bool pressure = false);
    usage::Crash crash(std::string_view date);

    items::Move fit(ItemId item, MachineId machine, std::string position, calendar::Moment when);
    items::Move fit(ItemId item, ItemId parent, std::string position, calendar::Moment when);
    items::Move move(ItemId item, items::MoveKind kind, calendar::Moment when);

    upkeep::Record record(std::string_view date, upkeep::RecordKind kind = upkeep::RecordKind::Done,
                          std::string code = "job");

  private:
    std::int64_t last_ = 0;
    template <class Fact>
    Fact fact();
};

/// A task that is in force from 2020 on, with one limit.
upkeep::TaskVersion task(std::vector<upkeep::Limit> limits,
                         upkeep::Consequence consequence = upkeep::Consequence::CostsMoney);
upkeep::Limit every(std::string_view hoursText);
upkeep::Limit every(std::int64_t amount, upkeep::Counter counter);

/// An item or machine that was new on a day, or had a stated past by then.
items::Item newItem(ItemId id, std::string_view since);
items::Item usedItem(ItemId id, std::string_view since, std::string_view low, std::string_view best,
                     std::string_view high);
items::Machine usedMachine(std::string_view since, std::string_view low, std::string_view best,
                           std::string_view high);

/// "2.0" if exact, "0.0..1.5..3.0" if not, "0.0..1.5.." without a high end.
std::string text(const usage::HoursBracket& bracket);

/// One task with its facts, for asking how it stands.
struct Case {
    std::vector<upkeep::TaskVersion> versions;
    std::vector<upkeep::Record> records;
    std::vector<upkeep::Record> others;
    std::vector<usage::Atom> atoms;
    std::vector<upkeep::MeasuredValue> values{};
    bool startedNew = true;
    calendar::Date since = day("2026-01-01");

    [[nodiscard]] upkeep::Countdown on(std::string_view date) const;
};

}  // namespace wm::made

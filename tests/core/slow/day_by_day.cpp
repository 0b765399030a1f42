// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/slow/day_by_day.h"

#include <algorithm>
#include <functional>

namespace wm::slow {

using calendar::Date;
using calendar::DayPart;
using calendar::Moment;
using usage::Ground;
using usage::HourReading;
using usage::MeterEvent;
using usage::Outing;
using usage::Pace;
using usage::UseFacts;

namespace {

struct Range {
    std::int64_t low = 0;
    std::int64_t best = 0;
    std::optional<std::int64_t> high = 0;
};

// One day's share of an unlogged stretch.
struct Grain {
    std::int64_t stretch = 0;  // id of the reading that closed it
    std::int64_t amount = 0;
    std::int64_t whole = 0;
    std::int64_t days = 0;  // of the whole stretch
    bool maybe = false;     // riding or the van
};

struct Machine {
    std::map<OutingId, Range> outings;
    std::map<Date, std::vector<Grain>> grains;
    std::map<Moment, std::int64_t> atOnce;  // run with no day to be ridden on: stands at its reading
    bool countsVan = false;
};

bool isBefore(const HourReading& a, const HourReading& b) {
    if (a.date != b.date || a.part != b.part)
        return Moment{a.date, a.part} < Moment{b.date, b.part};
    const bool plainA = a.part == DayPart::Riding && a.event == MeterEvent::Plain;
    const bool plainB = b.part == DayPart::Riding && b.event == MeterEvent::Plain;
    if (plainA != plainB)
        return plainA;
    if (plainA && a.shown != b.shown)
        return a.shown < b.shown;
    return a.entered < b.entered;
}

// The reading that comes next, or nullptr.
const HourReading* next(const UseFacts& facts, const HourReading* after) {
    const HourReading* found = nullptr;
    for (const HourReading& reading : facts.hourReadings)
        if ((after == nullptr || isBefore(*after, reading)) &&
            (found == nullptr || isBefore(reading, *found)))
            found = &reading;
    return found;
}

std::vector<const Outing*> outingsBetween(const UseFacts& facts, Moment after, Moment upTo) {
    std::vector<const Outing*> found;
    for (const Outing& outing : facts.outings) {
        const Moment ridden{outing.date, DayPart::Riding};
        if (after < ridden && ridden <= upTo)
            found.push_back(&outing);
    }
    std::sort(found.begin(), found.end(), [](const Outing* a, const Outing* b) {
        return a->date != b->date ? a->date < b->date : a->entered < b->entered;
    });
    return found;
}

// Deals `whole` out in hundredths: the whole part of every quota, then one each to whoever lost most by that.
void deal(std::int64_t whole, const std::vector<std::pair<OutingId, std::int64_t>>& parts, Machine& into) {
    std::int64_t weight = 0;
    for (const auto& part : parts)
        weight += part.second;
    std::vector<std::int64_t> lost;
    std::int64_t left = whole;
    for (const auto& [id, own] : parts) {
        const std::int64_t mine = weight == 0 ? 1 : own;
        const std::int64_t all = weight == 0 ? static_cast<std::int64_t>(parts.size()) : weight;
        const std::int64_t got = whole * mine / all;
        into.outings[id] = {got, got, got};
        lost.push_back(whole * mine - got * all);
        left -= got;
    }
    for (; left > 0 && !parts.empty(); --left) {
        const auto most = std::max_element(lost.begin(), lost.end());
        Range& range = into.outings[parts[static_cast<std::size_t>(most - lost.begin())].first];
        range = {range.low + 1, range.low + 1, range.low + 1};
        *most = -1;
    }
}

void dealAtMost(std::int64_t whole, const std::vector<std::pair<OutingId, std::int64_t>>& parts,
                Machine& into) {
    deal(whole, parts, into);
    for (const auto& part : parts)
        into.outings[part.first].low = 0;
}

void spreadOverDays(Moment from, Moment to, std::int64_t amount, std::int64_t id, Machine& into) {
    std::vector<Date> days;
    for (Date day = from.date; day <= to.date; day = day.plusDays(1))
        if (from < Moment{day, DayPart::Riding} && Moment{day, DayPart::Riding} <= to)
            days.push_back(day);
    if (days.empty())
        into.atOnce[to] += amount;
    const auto count = static_cast<std::int64_t>(days.size());
    std::int64_t given = 0;
    for (std::int64_t n = 1; n <= count; ++n) {
        // Up to and including day n: amount * n / count, halves up.
        std::int64_t upToHere = amount * n / count;
        if (2 * (amount * n % count) >= count)
            ++upToHere;
        into.grains[days[static_cast<std::size_t>(n - 1)]].push_back(
            {id, into.countsVan ? 0 : upToHere - given, amount, count, into.countsVan});
        given = upToHere;
    }
}

// Between two readings of which the difference is known.
void settle(const UseFacts& facts, const HourReading& from, const HourReading& to, std::int64_t ran,
            Machine& into) {
    const Moment start{from.date, from.part};
    const Moment end{to.date, to.part};
    std::vector<std::pair<OutingId, std::int64_t>> noted;
    std::vector<std::pair<OutingId, std::int64_t>> blank;
    std::int64_t sum = 0;
    for (const Outing* outing : outingsBetween(facts, start, end)) {
        if (outing->hours)
            noted.emplace_back(outing->id, outing->hours->count());
        else
            blank.emplace_back(outing->id, 1);
        sum += outing->hours ? outing->hours->count() : 0;
    }
    if (sum >= ran) {
        deal(ran, noted, into);
        deal(0, blank, into);
        return;
    }
    if (into.countsVan) {  // notes stand; of the rest any part was riding, and it may have been none
        deal(sum, noted, into);
        if (blank.empty())
            spreadOverDays(start, end, ran - sum, to.id.value(), into);
        else
            dealAtMost(ran - sum, blank, into);
        return;
    }
    if (!blank.empty()) {
        deal(sum, noted, into);
        deal(ran - sum, blank, into);
        return;
    }
    const double tolerance = 10.0 * static_cast<double>(noted.size()) + 0.05 * static_cast<double>(sum);
    const bool within = static_cast<double>(ran - sum) <= tolerance + 1e-9 && !noted.empty();
    deal(within ? ran : sum, noted, into);
    if (!within)
        spreadOverDays(start, end, ran - sum, to.id.value(), into);
}

std::int64_t ranBetween(const HourReading& last, const HourReading& reading) {
    switch (reading.event) {
        case MeterEvent::Plain:
        case MeterEvent::Stopped:
            return reading.shown.count() - last.shown.count();
        case MeterEvent::RolledOver:
            return reading.rollsAt ? reading.rollsAt->count() - last.shown.count() + reading.shown.count()
                                   : -1;
        case MeterEvent::Replaced:
        case MeterEvent::Reset:
            return reading.before ? reading.before->count() - last.shown.count() : -1;
        case MeterEvent::Resumed:
            break;
    }
    return -1;
}

// A blank outing of which no reading says anything.
Range unknownOuting(const Machine& machine) {
    std::vector<std::int64_t> known;
    for (const auto& [id, range] : machine.outings)
        if (range.best > 0)
            known.push_back(range.best);
    if (known.empty())
        return {0, 0, std::nullopt};
    std::int64_t sum = 0;
    for (const std::int64_t amount : known)
        sum += amount;
    const auto count = static_cast<std::int64_t>(known.size());
    const std::int64_t mean = sum / count + (2 * (sum % count) >= count ? 1 : 0);
    return {0, mean, std::max(2 * mean, *std::max_element(known.begin(), known.end()))};
}

Machine reckon(const UseFacts& facts, bool countsVan) {
    Machine machine;
    machine.countsVan = countsVan;
    bool dead = false;
    const HourReading* last = nullptr;
    while (const HourReading* reading = next(facts, last)) {
        const std::int64_t ran = last == nullptr || dead ? -1 : ranBetween(*last, *reading);
        if (ran >= 0)
            settle(facts, *last, *reading, ran, machine);
        if (reading->event == MeterEvent::Stopped)
            dead = true;
        if (reading->event == MeterEvent::Replaced || reading->event == MeterEvent::Reset ||
            reading->event == MeterEvent::Resumed)
            dead = false;
        last = reading;
    }
    for (const Outing& outing : facts.outings)
        if (!machine.outings.contains(outing.id) && outing.hours)
            machine.outings[outing.id] = {outing.hours->count(), outing.hours->count(),
                                          outing.hours->count()};
    const Range unknown = unknownOuting(machine);
    for (const Outing& outing : facts.outings)
        machine.outings.emplace(outing.id, unknown);
    return machine;
}

// Walks through all days; `carriedJustBefore` says, moment by moment, which machine the subject is with.
class Walk {
  public:
    Walk(const Garage& garage, Cut after, Cut upTo) : garage_(garage), after_(after), upTo_(upTo) {}

    Tally walk(const std::function<std::optional<MachineId>(Moment)>& carriedJustBefore) {
        for (Date day = garage_.first; day <= garage_.last; day = day.plusDays(1)) {
            for (const DayPart part : {DayPart::BeforeRiding, DayPart::Riding, DayPart::AfterRiding}) {
                const Moment now{day, part};
                const auto machine = carriedJustBefore(now);
                if (machine && after_.at <= now && now <= upTo_.at && garage_.use.contains(*machine))
                    live(*machine, now);
            }
        }
        for (const auto& [stretch, days] : days_) {
            const Grain& grain = grains_[stretch];
            const std::int64_t whole = days == grain.days && !grain.maybe ? grain.whole : 0;
            addRange({whole, 0, grain.whole}, Ground::Unstated, Pace::Unstated);
        }
        return tally_;
    }

  private:
    [[nodiscard]] bool isWithin(Moment now, base::Entered told) const {
        const Cut here{now, told};
        return after_ < here && here <= upTo_;
    }
    // What an hour counts: looked through from the last weight to the first, so that the first one stays.
    [[nodiscard]] std::int64_t countsFor(Ground ground, Pace pace) const {
        std::int64_t permille = 1000;
        for (std::size_t i = garage_.weights.size(); i-- > 0;) {
            const auto& weight = garage_.weights[i];
            const bool onGround = !weight.ground || *weight.ground == ground;
            const bool atPace = !weight.pace || *weight.pace == pace;
            if (onGround && atPace)
                permille = weight.permille;
        }
        return permille;
    }
    void addRange(const Range& range, Ground ground, Pace pace) {
        const auto sum = [](std::optional<std::int64_t> a, std::optional<std::int64_t> b, std::int64_t by) {
            return a && b ? std::optional(*a + *b * by) : std::nullopt;
        };
        const std::int64_t permille = countsFor(ground, pace);
        tally_.low += range.low;
        tally_.best += range.best;
        tally_.high = sum(tally_.high, range.high, 1);
        tally_.weightedLow += range.low * permille;
        tally_.weightedBest += range.best * permille;
        tally_.weightedHigh = sum(tally_.weightedHigh, range.high, permille);
    }
    // Use goes before all that was recorded of its moment.
    void live(MachineId id, Moment now) {
        const UseFacts& facts = garage_.use.at(id);
        if (!machines_.contains(id))
            machines_[id] = reckon(facts, garage_.countVan.contains(id));
        const Machine& machine = machines_[id];
        if (const auto at = machine.atOnce.find(now); at != machine.atOnce.end() && isWithin(now, 0))
            addRange(machine.countsVan ? Range{0, 0, at->second} : Range{at->second, at->second, at->second},
                     Ground::Unstated, Pace::Unstated);
        if (now.part == DayPart::Riding)
            ride(facts, machine, now);
        if (now.part != DayPart::AfterRiding)
            return;
        for (const auto& wash : facts.washes) {
            if (wash.date != now.date || !isWithin(now, 0))
                continue;
            ++tally_.washes;
            tally_.pressureWashes += wash.pressure ? 1 : 0;
        }
    }
    void ride(const UseFacts& facts, const Machine& machine, Moment now) {
        bool mud = false;
        for (const Outing& outing : facts.outings) {
            if (outing.date != now.date || !isWithin(now, 0))
                continue;
            addRange(machine.outings.at(outing.id), outing.ground, outing.pace);
            ++tally_.outings;
            tally_.starts += outing.starts;
            mud = mud || outing.ground == usage::Ground::Mud || outing.ground == usage::Ground::Water;
        }
        tally_.mudDays += mud ? 1 : 0;
        for (const auto& crash : facts.crashes)
            tally_.crashes += crash.date == now.date && isWithin(now, 0) ? 1 : 0;
        if (const auto at = machine.grains.find(now.date); at != machine.grains.end() && isWithin(now, 0))
            for (const Grain& grain : at->second) {
                addRange({0, grain.amount, 0}, Ground::Unstated, Pace::Unstated);
                ++days_[grain.stretch];
                grains_[grain.stretch] = grain;
            }
    }

    const Garage& garage_;
    Cut after_;
    Cut upTo_;
    Tally tally_;
    std::map<MachineId, Machine> machines_;
    std::map<std::int64_t, std::int64_t> days_;
    std::map<std::int64_t, Grain> grains_;
};

// Where an item was when all moves before `now` had been made, and none of `now` itself.
const items::Move* lastMove(const Garage& garage, ItemId item, Moment now) {
    const items::Move* last = nullptr;
    for (const items::Move& move : garage.moves) {
        const Moment when{move.date, move.part};
        if (move.item != item || when >= now)
            continue;
        const Moment lastWhen = last == nullptr ? Moment{} : Moment{last->date, last->part};
        if (last == nullptr || lastWhen < when || (lastWhen == when && last->entered < move.entered))
            last = &move;
    }
    return last;
}

std::optional<MachineId> machineOf(const Garage& garage, ItemId item, Moment now) {
    const items::Move* move = lastMove(garage, item, now);
    if (move == nullptr || move->kind != items::MoveKind::Fitted)
        return std::nullopt;
    return move->machine ? move->machine : machineOf(garage, *move->parent, now);
}

}  // namespace

Tally ofMachine(const Garage& garage, MachineId machine, Cut after, Cut upTo) {
    return Walk(garage, after, upTo).walk([&](Moment) { return std::optional(machine); });
}

Tally ofItem(const Garage& garage, ItemId item, Cut after, Cut upTo) {
    return Walk(garage, after, upTo).walk([&](Moment now) { return machineOf(garage, item, now); });
}

}  // namespace wm::slow

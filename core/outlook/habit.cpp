// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>
#include <tuple>

#include "core/outlook/ahead.h"
#include "core/outlook/days.h"

namespace wm::outlook {

using calendar::Date;
using calendar::Moment;
using usage::Atom;
using usage::AtomKind;
using usage::Comes;
using usage::Piece;

namespace {

constexpr std::int32_t kYear = 52;       // weeks of history that count
constexpr std::size_t kHabitWeeks = 26;  // of those without an event
constexpr std::size_t kPause = 8;        // idle weeks in a row that are no habit
constexpr double kHoursOfUnknown = 2;    // an outing's length where only the meter was ever read
constexpr double kUsualSpread = 0.35;    // of hours: what a rider has who was never seen,
constexpr double kUsualWeight = 4;       // and as how many outings that counts
constexpr std::size_t kLately = 5;       // weeks that are held against those before
constexpr double kOddsOfChange = 0.1;    // so rare by chance: the habit has changed
constexpr double kFewestOutings = 3;     // fewer are no habit

Moment sundayEvening(std::int32_t week) {
    return {mondayOf(week).plusDays(6), calendar::DayPart::AfterRiding};
}

double hoursOf(const Atom& atom) {
    return static_cast<double>(atom.hours.best.count()) / 100;
}

std::vector<Event> enteredBy(MachineId machine, std::span<const Event> events) {
    std::vector<Event> entered;
    for (const Event& event : events)
        if (!event.calledOff && std::any_of(event.entries.begin(), event.entries.end(),
                                            [&](const Entry& entry) { return entry.machine == machine; }))
            entered.push_back(event);
    std::sort(entered.begin(), entered.end(), [](const Event& a, const Event& b) {
        return std::tie(a.first, a.last, a.id) < std::tie(b.first, b.last, b.id);
    });
    return entered;
}

bool isRaceDay(std::span<const Event> entered, Date day) {
    return std::any_of(entered.begin(), entered.end(), [&](const Event& event) {
        return event.kind == EventKind::Race && event.first <= day && day <= event.last;
    });
}

double mean(double sum, double count, double otherwise = 0) {
    return count > 0 ? sum / count : otherwise;
}

double sumOf(const std::vector<double>& values) {
    return std::accumulate(values.begin(), values.end(), 0.0);
}

// The spread about the mean, drawn towards the usual one.
AmountLaw amountLaw(const std::vector<double>& values, double otherwise) {
    const auto seen = static_cast<double>(values.size());
    const double average = mean(sumOf(values), seen);
    if (average <= 0)
        return {otherwise, kUsualSpread, otherwise > 0 ? 1.0 : 0.0};
    double squares = kUsualWeight * kUsualSpread * kUsualSpread;
    for (const double value : values)
        squares += (value - average) * (value - average) / (average * average);
    return {average, std::sqrt(squares / (kUsualWeight + seen - 1)), seen};
}

// How far washes go with mud: 0 by chance alone, 1 as often together as either allows.
double togetherness(double mud, double washed, double both) {
    const double most = std::min(mud, washed);
    const double byChance = mud * washed;
    return most > byChance ? std::clamp((both - byChance) / (most - byChance), 0.0, 1.0) : 0;
}

// What the outings of the last year were, and what came with them.
struct Outings {
    std::vector<double> practice;  // hours
    std::vector<double> races;
    std::vector<double> metres;
    std::array<double, usage::kPieces.size()> pieces{};
    double washedMud = 0;
    GroundMix practiceGround;
    GroundMix raceGround;
};

Outings outingsOf(std::span<const Atom> lastYear, std::span<const Event> entered) {
    Outings seen;
    Date mudDay;
    bool isMuddy = false;  // on `mudDay`, and not washed since
    double distance = 0;
    for (const Atom& atom : lastYear) {
        distance += static_cast<double>(atom.distance.best.count());
        const bool isOuting = atom.kind == AtomKind::Outing;
        const bool isRace = isOuting && (atom.starts > 0 || isRaceDay(entered, atom.to.date));
        for (std::size_t at = 0; at < seen.pieces.size(); ++at)
            if (isRace || usage::kPieces[at].comes != Comes::AtRaces)
                seen.pieces[at] += static_cast<double>(atom.*usage::kPieces[at].inAtom);
        if (atom.mud > 0) {
            mudDay = atom.to.date;
            isMuddy = true;
        }
        if (atom.washes > 0 && isMuddy && mudDay == atom.to.date) {
            seen.washedMud += 1;
            isMuddy = false;
        }
        if (!isOuting)
            continue;
        (isRace ? seen.races : seen.practice).push_back(hoursOf(atom));
        seen.metres.push_back(static_cast<double>(atom.distance.best.count()));
        (isRace ? seen.raceGround : seen.practiceGround).add(atom.ground, atom.pace, hoursOf(atom));
    }
    // What only the odometer knows was ridden too, in the outings that are known.
    const double noted = sumOf(seen.metres);
    if (noted > 0)
        for (double& metres : seen.metres)
            metres *= distance / noted;
    else if (!seen.metres.empty())
        seen.metres.assign(seen.metres.size(), distance / static_cast<double>(seen.metres.size()));
    return seen;
}

// Of one kind that nobody has seen the other speaks; a race is ridden at race pace.
void learnGround(Ahead& ahead, const Outings& seen) {
    ahead.practiceGround = seen.practiceGround;
    ahead.practiceGround.seen = static_cast<double>(seen.practice.size());
    ahead.raceGround = seen.raceGround;
    ahead.raceGround.seen = static_cast<double>(seen.races.size());
    if (seen.races.empty()) {
        ahead.raceGround.seen = ahead.practiceGround.seen;
        for (const GroundMix::Part& part : ahead.practiceGround.parts)
            ahead.raceGround.add(part.ground, usage::Pace::Race, part.share);
    } else if (seen.practice.empty()) {
        ahead.practiceGround = ahead.raceGround;
    }
    ahead.practiceGround.settle();
    ahead.raceGround.settle();
}

// Means an outing, from the last year.
void learnOutings(Ahead& ahead, const Outings& seen) {
    const auto races = static_cast<double>(seen.races.size());
    const double outings = static_cast<double>(seen.practice.size()) + races;
    const double race = mean(sumOf(seen.races), races);
    ahead.practiceHours = amountLaw(seen.practice, race > 0 ? race : kHoursOfUnknown);
    ahead.raceHours = amountLaw(seen.races, ahead.practiceHours.mean);
    ahead.metres = amountLaw(seen.metres, 0);
    for (std::size_t at = 0; at < seen.pieces.size(); ++at) {
        const double ofThese = usage::kPieces[at].comes == Comes::AtRaces ? races : outings;
        ahead.pieces[at] = {mean(seen.pieces[at], ofThese), ofThese};
    }
    ahead.washWithMud =
        togetherness(ahead.of(Piece::MudDays).chance(), std::min(ahead.of(Piece::Washes).mean, 1.0),
                     mean(seen.washedMud, outings));
    learnGround(ahead, seen);
}

struct Week {
    double outings = 0;
    bool hasEvent = false;
    [[nodiscard]] bool isIdle() const { return outings == 0 && !hasEvent; }
};

// The whole weeks from the first riding (at most a year ago) up to last Sunday.
std::vector<Week> weeksOf(const Ahead& ahead, std::span<const Atom> atoms, std::span<const Event> entered) {
    const std::int32_t end = weekOf(ahead.today);
    std::int32_t first = end;
    for (const Atom& atom : atoms)
        if (atom.kind == AtomKind::Outing || atom.kind == AtomKind::Unlogged)
            first = std::min(first, weekOf(atom.from.date));
    first = std::max(first, end - kYear);
    std::vector<Week> weeks(static_cast<std::size_t>(end - first));
    const auto weekAt = [&](std::int32_t week) -> Week& {
        return weeks[static_cast<std::size_t>(week - first)];
    };
    for (const Atom& atom : atoms) {
        const std::int32_t last = std::min(weekOf(atom.to.date), end - 1);
        for (std::int32_t week = std::max(weekOf(atom.from.date), first); week <= last; ++week) {
            if (atom.kind == AtomKind::Outing)
                weekAt(week).outings += 1;
            else if (atom.kind == AtomKind::Unlogged)
                if (const auto part = usage::partOf(atom, sundayEvening(week - 1), sundayEvening(week)))
                    weekAt(week).outings += hoursOf(*part) / ahead.practiceHours.mean;
        }
    }
    for (const Event& event : entered)
        for (std::int32_t week = std::max(weekOf(event.first), first);
             week <= std::min(weekOf(event.last), end - 1); ++week)
            weekAt(week).hasEvent = true;
    return weeks;
}

// Chance of `some` or fewer of `all` outings in a part `share` of the weeks.
double chanceOfSoFew(int some, int all, double share) {
    double each = std::pow(1 - share, all);
    double sum = 0;
    for (int n = 0; n <= some; ++n) {
        sum += each;
        each *= static_cast<double>(all - n) / (n + 1) * share / (1 - share);
    }
    return sum;
}

// Given how many outings there were in all, those of the last weeks are binomial if nothing has changed.
bool hasChanged(const std::vector<double>& weeks) {
    if (weeks.size() < 2 * kLately)
        return false;
    const auto lately = weeks.end() - static_cast<std::ptrdiff_t>(kLately);
    const int all = static_cast<int>(std::lround(sumOf(weeks)));
    const int late = std::min(static_cast<int>(std::lround(std::accumulate(lately, weeks.end(), 0.0))), all);
    const double share = static_cast<double>(kLately) / static_cast<double>(weeks.size());
    return chanceOfSoFew(late, all, share) < kOddsOfChange / 2 ||
           1 - chanceOfSoFew(late - 1, all, share) < kOddsOfChange / 2;
}

// Leaves out weeks with an event and pauses, keeps the newest of the rest.
void learnHabit(Ahead& ahead, const std::vector<Week>& weeks) {
    std::vector<double> kept;
    bool rests = false;
    for (std::size_t i = 0; i < weeks.size();) {
        std::size_t idle = i;
        while (idle < weeks.size() && weeks[idle].isIdle())
            ++idle;
        rests = idle - i >= kPause && idle == weeks.size();
        if (idle - i < kPause)
            kept.insert(kept.end(), idle - i, 0.0);
        if (idle < weeks.size() && !weeks[idle].hasEvent)
            kept.push_back(weeks[idle].outings);
        i = idle + 1;
    }
    if (kept.size() > kHabitWeeks)
        kept.erase(kept.begin(), kept.end() - static_cast<std::ptrdiff_t>(kHabitWeeks));
    ahead.weeksSeen = static_cast<std::int64_t>(kept.size());
    ahead.habitOutingsPerWeek = mean(sumOf(kept), static_cast<double>(kept.size()));
    ahead.trust = rests ? Trust::Resting : hasChanged(kept) ? Trust::Changed : Trust::Steady;
}

// All the riding that is known of, races and unlogged hours too.
double outingsIn(const std::vector<Week>& weeks) {
    return std::accumulate(weeks.begin(), weeks.end(), 0.0,
                           [](double sum, const Week& week) { return sum + week.outings; });
}

}  // namespace

Ahead aheadOf(MachineId machine, std::span<const Atom> atoms, std::span<const Event> events, Date today) {
    Ahead ahead;
    ahead.today = today;
    const std::vector<Event> entered = enteredBy(machine, events);
    for (const Event& event : entered)
        if (event.last >= today)
            ahead.events.push_back({event.id, event.name, event.kind, event.first, event.last});
    const auto upTo = [&](Moment when) {
        return std::partition_point(atoms.begin(), atoms.end(),
                                    [&](const Atom& atom) { return atom.to <= when; });
    };
    const auto end = upTo({today, calendar::DayPart::AfterRiding});
    const Outings seen = outingsOf({upTo(sundayEvening(weekOf(today) - kYear - 1)), end}, entered);
    learnOutings(ahead, seen);
    const std::vector<Week> weeks = weeksOf(ahead, {atoms.begin(), end}, entered);
    learnHabit(ahead, weeks);
    if (seen.practice.empty() && seen.races.empty() && outingsIn(weeks) > 0)
        ahead.practiceHours.seen = 0;  // the meter alone speaks: its hours are known, however they are cut
    if (ahead.weeksSeen == 0 || outingsIn(weeks) < kFewestOutings - 0.01)
        ahead.trust = Trust::Unknown;
    return ahead;
}

}  // namespace wm::outlook

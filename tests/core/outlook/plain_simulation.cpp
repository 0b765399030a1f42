// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/outlook/plain_simulation.h"

#include <algorithm>

#include "core/usage/exposure.h"

namespace wm::outlook::plain {

using upkeep::Combine;
using upkeep::Counter;

double Future::used(const DuePoint& point, const Need& need, std::size_t day) const {
    const Day& upTo = days[day];
    if (need.counter == Counter::Metres)
        return upTo.metres;
    if (const auto piece = pieceOf(need))
        return static_cast<double>(upTo.pieces.at(static_cast<std::size_t>(*piece)));
    for (std::size_t i = 0; i < weightings.size(); ++i)
        if (weightings[i] == point.weights)
            return upTo.weighted[i];
    return upTo.hours;
}

std::int32_t Future::dayOf(const DuePoint& point, calendar::Date today) const {
    for (std::size_t day = 0; day < days.size(); ++day) {
        const calendar::Date date = today.plusDays(static_cast<std::int32_t>(day));
        const auto met = [&](const Need& need) {
            return used(point, need, day) >= static_cast<double>(need.left);
        };
        const bool dated = point.day && *point.day <= date;
        const bool one = std::any_of(point.needs.begin(), point.needs.end(), met) || dated;
        const bool all = std::all_of(point.needs.begin(), point.needs.end(), met) && (!point.day || dated) &&
                         (!point.needs.empty() || point.day);
        if (point.isNow || (point.combine == Combine::First ? one : all) ||
            std::any_of(point.atOnce.begin(), point.atOnce.end(), met) ||
            (point.onDay && *point.onDay <= date))
            return static_cast<std::int32_t>(day);
    }
    return static_cast<std::int32_t>(days.size());
}

double Simulation::gamma(double shape) {
    return std::gamma_distribution<double>(shape, 1)(random_);
}

double Simulation::meanOf(const AmountLaw& law) {
    return law.seen > 0 ? law.mean * law.sure() / gamma(law.sure()) : law.mean;
}

double Simulation::chanceOf(const PieceLaw& law) {
    if (law.seen <= 0)
        return law.chance();
    const double yes = gamma(law.yes());
    return yes / (yes + gamma(law.no()));
}

std::vector<double> Simulation::sharesOf(const GroundMix& mix) {
    std::vector<double> shares;
    for (const GroundMix::Part& part : mix.parts)
        shares.push_back(mix.seen > 0 ? gamma(part.share * mix.seen) : part.share);
    return shares;
}

Simulation::Truth Simulation::truth() {
    const CountLaw habit = ahead_.habit();
    Truth truth;
    truth.perWeek =
        (habit.isLearned() ? gamma(habit.shape()) / habit.weeks : habit.rate) * ahead_.timesAsOften;
    truth.practice = meanOf(ahead_.practiceHours);
    truth.race = meanOf(ahead_.raceHours);
    truth.metres = meanOf(ahead_.metres);
    for (std::size_t at = 0; at < truth.chances.size(); ++at)
        truth.chances[at] = chanceOf(ahead_.pieces[at]);
    if (!weightings_.empty()) {
        truth.practiceShares = sharesOf(ahead_.practiceGround);
        truth.raceShares = sharesOf(ahead_.raceGround);
    }
    return truth;
}

void Simulation::bring(Future::Day& day, const Truth& truth, bool isRace) {
    const auto uniform = [&] { return std::uniform_real_distribution<double>(0, 1)(random_); };
    const double mud = uniform();
    const bool together = uniform() < ahead_.washWithMud;
    for (std::size_t at = 0; at < day.pieces.size(); ++at) {
        const auto comes = usage::kPieces[at].comes;
        if (comes == usage::Comes::AtRaces && !isRace)
            continue;
        const bool isMuddy = comes == usage::Comes::AsMud || (comes == usage::Comes::AsWash && together);
        const double lot = isMuddy ? mud : uniform();
        day.pieces[at] += comes == usage::Comes::EachOuting
                              ? 1
                              : ahead_.pieces[at].certain() + (lot < truth.chances[at] ? 1 : 0);
    }
}

void Simulation::ride(Future::Day& day, const Truth& truth, bool isRace) {
    const AmountLaw& hours = isRace ? ahead_.raceHours : ahead_.practiceHours;
    const double ridden = 100 * (isRace ? truth.race : truth.practice) * gamma(hours.shape()) / hours.shape();
    day.hours += ridden;
    if (!weightings_
             .empty()) {  // the ground by a lot of its own: mud days are not asked together with it here
        const auto& shares = isRace ? truth.raceShares : truth.practiceShares;
        const auto part = std::discrete_distribution<std::size_t>(shares.begin(), shares.end())(random_);
        const auto& rode = (isRace ? ahead_.raceGround : ahead_.practiceGround).parts[part];
        for (std::size_t i = 0; i < weightings_.size(); ++i)
            day.weighted[i] +=
                ridden * static_cast<double>(usage::permilleOf(weightings_[i], rode.ground, rode.pace)) /
                1000;
    }
    day.metres += truth.metres * gamma(ahead_.metres.shape()) / ahead_.metres.shape();
    bring(day, truth, isRace);
}

Future Simulation::future(std::int32_t days) {
    const Truth drawn = truth();
    Future future;
    future.weightings = weightings_;
    future.days.resize(static_cast<std::size_t>(days) + 1);
    future.days[0].weighted.resize(weightings_.size());
    for (std::int32_t ahead = 1; ahead <= days; ++ahead) {
        const calendar::Date date = ahead_.today.plusDays(ahead);
        auto& day = future.days[static_cast<std::size_t>(ahead)];
        day = future.days[static_cast<std::size_t>(ahead) - 1];
        bool isFree = true;
        for (const EventAhead& event : ahead_.events) {
            const calendar::Date monday = date.plusDays(-((date.daysSinceEpoch() + 3) % 7));
            isFree = isFree && (event.last < monday || event.first > monday.plusDays(6));
            if (event.first <= date && date <= event.last)
                ride(day, drawn, event.kind == EventKind::Race);
        }
        if (isFree)
            for (int n = std::poisson_distribution<int>(drawn.perWeek / 7)(random_); n > 0; --n)
                ride(day, drawn, false);
    }
    return future;
}

}  // namespace wm::outlook::plain

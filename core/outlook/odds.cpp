// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/outlook/odds.h"

#include <algorithm>
#include <utility>

namespace wm::outlook {

using calendar::Date;
using upkeep::Combine;
using upkeep::Counter;
using upkeep::Happening;

namespace {

constexpr double kEarly = 0.1;
constexpr double kLikely = 0.5;
constexpr double kLate = 0.9;

bool isCalendar(const upkeep::LimitState& state) {
    return state.dueOn.has_value() || state.limit.counter == Counter::Days ||
           state.limit.counter == Counter::Months;
}

void add(DuePoint& point, const upkeep::LimitState& state, Date today) {
    const bool isFirst = point.combine == Combine::First;
    if (isCalendar(state)) {
        const Date day = state.dueOn.value_or(today.plusDays(static_cast<std::int32_t>(state.left)));
        point.day = !point.day ? day : isFirst ? std::min(*point.day, day) : std::max(*point.day, day);
        return;
    }
    for (Need& need : point.needs)
        if (need.counter == state.limit.counter) {
            need.left = isFirst ? std::min(need.left, state.left) : std::max(need.left, state.left);
            return;
        }
    point.needs.push_back({state.limit.counter, state.left});
}

}  // namespace

DuePoint duePointOf(const upkeep::TaskVersion& task, const upkeep::Countdown& countdown, const Ahead& ahead) {
    DuePoint point;
    point.combine = task.combine;
    bool anyOver = false;
    for (const upkeep::LimitState& state : countdown.limits) {
        if (state.left > 0)
            add(point, state, ahead.today);
        else
            anyOver = true;
    }
    const bool anyLeft = !point.needs.empty() || point.day.has_value();
    point.isNow =
        countdown.triggered || countdown.over || (anyOver && (task.combine == Combine::First || !anyLeft));
    for (const upkeep::Trigger& trigger : task.triggers) {
        if (trigger.happening == Happening::Wash || trigger.happening == Happening::PressureWash)
            point.atOnce.push_back({Counter::Washes, 1, trigger.happening == Happening::PressureWash});
        else if (trigger.happening == Happening::MudDay)
            point.atOnce.push_back({Counter::MudDays, 1});
    }
    if (countdown.beforeNextRace)
        for (const EventAhead& event : ahead.events)
            if (event.kind == EventKind::Race && !point.onDay)
                point.onDay = std::max(event.first, ahead.today);
    return point;
}

/// How one need is met, the more surely the more outings there are; worked out as far as it is asked for.
class Odds::Curve {
  public:
    Curve(const Ahead& ahead, const Need& need, int most) : ahead_(ahead), need_(need), most_(most) {
        if (const PieceLaw* law = pieces())
            whole_ = chancesOfPieces(*law, need.left, most);
    }

    double met(int practice, int races) {
        switch (need_.counter) {
            case Counter::Hours:
                return amount(practice, races);
            case Counter::Metres:
                return amount(practice + races, 0);
            case Counter::Outings:
                return practice + races >= need_.left ? 1 : 0;
            case Counter::Starts:
                return whole_[static_cast<std::size_t>(std::min(races, most_))];
            default:
                return whole_[static_cast<std::size_t>(std::min(practice + races, most_))];
        }
    }

  private:
    [[nodiscard]] const PieceLaw* pieces() const {
        switch (need_.counter) {
            case Counter::Starts:
                return &ahead_.starts;
            case Counter::Washes:
                return need_.pressure ? &ahead_.pressureWashes : &ahead_.washes;
            case Counter::MudDays:
                return &ahead_.mud;
            case Counter::Crashes:
                return &ahead_.crashes;
            default:
                return nullptr;
        }
    }

    double amount(int outings, int races) {
        const auto row = static_cast<std::size_t>(races);
        const auto place = static_cast<std::size_t>(outings);
        if (amounts_.size() <= row)
            amounts_.resize(row + 1);
        if (amounts_[row].size() <= place)
            amounts_[row].resize(std::max(place + 1, static_cast<std::size_t>(most_) + 1), kUnknown);
        double& known = amounts_[row][place];
        if (known == kUnknown) {
            const auto left = static_cast<double>(need_.left);
            known = 1 - (need_.counter == Counter::Hours ? chanceOfLess(ahead_.practiceHours, outings,
                                                                        ahead_.raceHours, races, left / 100)
                                                         : chanceOfLess(ahead_.metres, outings, {}, 0, left));
        }
        return known;
    }

    static constexpr double kUnknown = -1;
    const Ahead& ahead_;
    Need need_;
    int most_;
    std::vector<double> whole_;                 // by outings, or by races for starts
    std::vector<std::vector<double>> amounts_;  // by races, then by outings
};

/// One due point, asked about several days.
class Odds::Task {
  public:
    Task(const Odds& odds, const DuePoint& point) : odds_(odds), point_(point) {
        for (const Need& need : point.needs)
            curves_.emplace_back(odds.ahead_, need, odds.mostOutings_);
        for (const Need& need : point.atOnce)
            atOnce_.emplace_back(odds.ahead_, need, odds.mostOutings_);
    }

    // By the evening of the day so far ahead; without its dates, if asked so.
    double chanceBy(std::int32_t day, bool datesCome) {
        const auto isBy = [&](const std::optional<Date>& date) {
            return date && (datesCome || *date - odds_.ahead_.today <= day);
        };
        if (point_.isNow || (point_.onDay && *point_.onDay - odds_.ahead_.today <= day))
            return 1;
        const bool isFirst = point_.combine == Combine::First;
        if (isFirst && point_.day && *point_.day - odds_.ahead_.today <= day)
            return 1;
        const bool canComeLast =
            !isFirst && (!point_.day || isBy(point_.day)) && (!point_.needs.empty() || point_.day);
        if (atOnce_.empty() && (isFirst ? curves_.empty() : !canComeLast))
            return 0;
        const DaysAhead& upTo = odds_.days_[static_cast<std::size_t>(day)];
        const Counts& counts = odds_.counts(upTo.habit);
        double chance = 0;
        for (std::size_t i = 0; i < counts.chance.size(); ++i) {
            const int practice = counts.least + static_cast<int>(i) + upTo.practice;
            chance += counts.chance[i] * given(practice, upTo.races, canComeLast);
        }
        return std::min(chance, 1.0);
    }

    // The first day by whose evening the chance is so high, after `after`.
    std::optional<Date> dayOf(double chance, std::int32_t after) {
        const Date today = odds_.ahead_.today;
        const auto has = [&](std::int32_t day) { return chanceBy(day, false) >= chance; };
        const std::int32_t far = static_cast<std::int32_t>(odds_.days_.size()) - 1;
        if (!has(far))
            return farDay(chance);
        std::int32_t low = after - 1;  // not yet
        std::int32_t high = far;       // by then
        while (high - low > 1) {
            const std::int32_t middle = (low + high) / 2;
            (has(middle) ? high : low) = middle;
        }
        return today.plusDays(high);
    }

  private:
    // With so many outings.
    double given(int practice, int races, bool canComeLast) {
        double not_ = 1;
        if (point_.combine == Combine::First) {
            for (Curve& curve : curves_)
                not_ *= 1 - curve.met(practice, races);
        } else if (canComeLast) {
            double all = 1;
            for (Curve& curve : curves_)
                all *= curve.met(practice, races);
            not_ = 1 - all;
        }
        for (Curve& curve : atOnce_)
            not_ *= 1 - curve.met(practice, races);
        return 1 - not_;
    }

    // Dates are known however far off they are.
    std::optional<Date> farDay(double chance) {
        const auto far = static_cast<std::int32_t>(odds_.days_.size()) - 1;
        std::optional<Date> day = point_.onDay;
        if (point_.day && (point_.combine == Combine::First || chanceBy(far, true) >= chance))
            day = day ? std::min(*day, *point_.day) : point_.day;
        return day;
    }

    const Odds& odds_;
    const DuePoint& point_;
    std::vector<Curve> curves_;
    std::vector<Curve> atOnce_;
};

Odds::Odds(Ahead ahead) : ahead_(std::move(ahead)), days_(daysAhead(ahead_, kFarthest)) {
    counts_.resize(days_.size());
    const DaysAhead& all = days_.back();
    const Counts& most = counts(all.habit);
    mostOutings_ = most.least + static_cast<int>(most.chance.size()) + all.practice + all.races;
}

const Counts& Odds::counts(int habitDays) const {
    auto& known = counts_[static_cast<std::size_t>(habitDays)];
    if (!known)
        known = countsIn(ahead_.habit(), habitDays * ahead_.timesAsOften / 7);
    return *known;
}

double Odds::chanceBy(const DuePoint& point, Date day) const {
    const auto most = static_cast<std::int32_t>(days_.size()) - 1;
    return Task(*this, point).chanceBy(std::clamp(day - ahead_.today, 0, most), false);
}

Window Odds::windowOf(const DuePoint& point) const {
    if (point.isNow)
        return {ahead_.today, ahead_.today, ahead_.today};
    Task task(*this, point);
    Window window;
    window.likely = task.dayOf(kLikely, 0);
    window.early = task.dayOf(kEarly, 0);
    window.late =
        window.likely ? task.dayOf(kLate, std::max(*window.likely - ahead_.today, 0)) : std::nullopt;
    return window;
}

}  // namespace wm::outlook

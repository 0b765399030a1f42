// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/outlook/odds.h"

#include <algorithm>
#include <numeric>
#include <utility>

#include "core/upkeep/counters.h"

namespace wm::outlook {

using calendar::Date;
using upkeep::Combine;
using upkeep::Counter;
using upkeep::CounterKind;
using upkeep::Happening;
using usage::Comes;

namespace {

constexpr double kEarly = 0.1;
constexpr double kLikely = 0.5;
constexpr double kLate = 0.9;
constexpr double kSure = 1e-9;

bool isCalendar(const upkeep::LimitState& state) {
    return state.dueOn.has_value() || upkeep::isCalendar(state.limit.counter);
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

std::optional<usage::Piece> pieceOf(const Need& need) {
    return need.pressure ? usage::Piece::PressureWashes : upkeep::traitsOf(need.counter).piece;
}

DuePoint duePointOf(const upkeep::TaskVersion& task, const upkeep::Countdown& countdown, const Ahead& ahead) {
    DuePoint point;
    point.combine = task.combine;
    point.weights = task.weights;
    bool anyOver = false;
    for (const upkeep::LimitState& state : countdown.limits) {
        if (state.left > 0)
            add(point, state, ahead.today);
        else
            anyOver = true;
    }
    const bool anyLeft = !point.needs.empty() || point.day.has_value();
    point.isNow = countdown.triggered || countdown.value || countdown.over ||
                  (anyOver && (task.combine == Combine::First || !anyLeft));
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

/// How one need is met, the more surely the more outings there are.
class Odds::Curve {
  public:
    Curve(const Ahead& ahead, const Need& need, std::span<const usage::HourWeight> weights, int most)
        : need_(need), most_(most) {
        if (need.counter == Counter::Hours) {
            practice_ = weightedLaw(ahead.practiceHours, ahead.practiceGround, weights);
            race_ = weightedLaw(ahead.raceHours, ahead.raceGround, weights);
        } else if (need.counter == Counter::Metres) {
            practice_ = ahead.metres;
        }
        if (const auto piece = pieceOf(need)) {
            comes_ = usage::traitsOf(*piece).comes;
            whole_ = chancesOfPieces(ahead.of(*piece), need.left, most);
        }
    }

    [[nodiscard]] double met(int practice, int races) const {
        switch (upkeep::traitsOf(need_.counter).kind) {
            case CounterKind::Hours:
                return amount(practice, races);
            case CounterKind::Metres:
                return amount(practice + races, 0);
            case CounterKind::Pieces:
                return pieces(practice, races);
            case CounterKind::Days:
            case CounterKind::Months:
                break;  // these make a day, not a need
        }
        return 0;
    }

  private:
    [[nodiscard]] double pieces(int practice, int races) const {
        switch (comes_) {
            case Comes::EachOuting:
                return practice + races >= need_.left ? 1 : 0;
            case Comes::AtRaces:
                return whole_[static_cast<std::size_t>(std::min(races, most_))];
            case Comes::AnyOuting:
            case Comes::AsMud:
            case Comes::AsWash:
                break;
        }
        return whole_[static_cast<std::size_t>(std::min(practice + races, most_))];
    }

    [[nodiscard]] double amount(int outings, int races) const {
        const auto left = static_cast<double>(need_.left);
        return 1 - chanceOfLess(practice_, outings, race_, races,
                                need_.counter == Counter::Hours ? left / 100 : left);
    }

    Need need_;
    int most_;
    AmountLaw practice_;
    AmountLaw race_;
    Comes comes_ = Comes::EachOuting;
    std::vector<double> whole_;  // by outings, or by races for what only they have
};

/// One due point, asked about several days.
class Odds::Task {
  public:
    Task(const Odds& odds, const DuePoint& point) : odds_(odds), point_(point) {
        for (const Need& need : point.needs)
            curves_.emplace_back(odds.ahead_, need, point.weights, odds.mostOutings_);
        for (const Need& need : point.atOnce)
            atOnce_.emplace_back(odds.ahead_, need, point.weights, odds.mostOutings_);
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
        const double* holds =
            holding(upTo.races, canComeLast, counts.least + upTo.practice, counts.chance.size());
        const double sum = std::inner_product(counts.chance.begin(), counts.chance.end(), holds, 0.0);
        return std::clamp(1 - sum, 0.0, 1.0);
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
    // The chance that the point has not come, by outings of practice from `least` on.
    struct Row {
        int least = 0;
        std::vector<double> holds;
    };

    // `count` of them from `least` on; each is worked out once, and those that are 0 or 1 anyhow never.
    const double* holding(int races, bool canComeLast, int least, std::size_t count) {
        const auto place = 2 * static_cast<std::size_t>(races) + (canComeLast ? 1 : 0);
        if (rows_.size() <= place)
            rows_.resize(place + 1);
        Row& row = rows_[place];
        if (row.holds.empty())
            row = {least, {holdsWith(least, races, canComeLast)}};
        if (least < row.least) {
            std::vector<double> front(static_cast<std::size_t>(row.least - least), 1.0);
            double next = row.holds.front();
            for (auto at = front.size(); at > 0 && next < 1 - kSure; --at)
                next = front[at - 1] = holdsWith(least + static_cast<int>(at) - 1, races, canComeLast);
            row.holds.insert(row.holds.begin(), front.begin(), front.end());
            row.least = least;
        }
        const std::size_t end = static_cast<std::size_t>(least - row.least) + count;
        while (row.holds.size() < end && row.holds.back() > kSure)
            row.holds.push_back(
                holdsWith(row.least + static_cast<int>(row.holds.size()), races, canComeLast));
        row.holds.resize(std::max(end, row.holds.size()), 0.0);
        return row.holds.data() + (least - row.least);
    }

    [[nodiscard]] double holdsWith(int practice, int races, bool canComeLast) const {
        double holds = 1;
        if (point_.combine == Combine::First) {
            for (const Curve& curve : curves_)
                holds *= 1 - curve.met(practice, races);
        } else if (canComeLast) {
            double all = 1;
            for (const Curve& curve : curves_)
                all *= curve.met(practice, races);
            holds = 1 - all;
        }
        for (const Curve& curve : atOnce_)
            holds *= 1 - curve.met(practice, races);
        return holds;
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
    std::vector<Row> rows_;  // by races, and whether what comes last can come
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

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/outlook/chances.h"

#include <algorithm>
#include <array>
#include <limits>
#include <tuple>

#include "core/outlook/every_outing.h"
#include "core/usage/exposure.h"

namespace wm::outlook {

using calendar::Date;
using upkeep::Combine;
using upkeep::Counter;
using usage::Comes;

namespace {

constexpr double kNever = std::numeric_limits<double>::infinity();
// What outings use up, each in its slot: hours, metres, then the pieces.
constexpr std::size_t kHours = 0;
constexpr std::size_t kMetres = 1;
constexpr std::size_t kFirstPiece = 2;
constexpr std::size_t kSlots = kFirstPiece + usage::kPieces.size();

std::size_t slotOf(const Need& need) {
    if (const auto piece = pieceOf(need))
        return kFirstPiece + static_cast<std::size_t>(*piece);
    return need.counter == Counter::Metres ? kMetres : kHours;
}

// Within a day: dates come before riding, what an outing uses up during it, what it counts at its end, a wash
// afterwards.
constexpr double kRides = 0.3;
constexpr double kRidden = 0.7;
constexpr double kWashed = 0.9;

// A task, and when it fell due in days from today.
struct Fall {
    double moment = kNever;
    std::size_t task = 0;  // in order of consequence
    friend bool operator<(const Fall& a, const Fall& b) {
        return std::tie(a.moment, a.task) < std::tie(b.moment, b.task);
    }
};

// The least left on one counter, and whose it is: nothing else on this counter can be first.
struct Trip {
    double left = kNever;
    std::size_t task = 0;
};

// A task whose last limit counts.
struct LastOf {
    std::size_t task = 0;
    std::vector<Trip> needs;
    std::vector<std::size_t> slots;
    double date = 0;
};

// What a weighting makes of an hour, by the parts of a mix.
using PartWeights = std::vector<double>;

// Behind the slots of the counters each way to weight hours has one of its own.
struct Field {
    std::vector<Trip> trips{kSlots};
    std::array<bool, kSlots> watched{};
    Fall date;
    std::vector<LastOf> lasts;
    std::vector<std::vector<usage::HourWeight>> weightings;
    std::vector<PartWeights> practice;  // of each weighting
    std::vector<PartWeights> race;

    std::size_t slotOf(const Need& need, const std::vector<usage::HourWeight>& weights) {
        const std::size_t plain = outlook::slotOf(need);
        watched[plain] = true;
        if (plain != kHours || weights.empty())
            return plain;
        const auto known = std::find(weightings.begin(), weightings.end(), weights);
        if (known != weightings.end())
            return kSlots + static_cast<std::size_t>(known - weightings.begin());
        weightings.push_back(weights);
        trips.emplace_back();
        return trips.size() - 1;
    }
};

PartWeights partWeights(const std::vector<usage::HourWeight>& weights, const GroundMix& mix) {
    PartWeights each;
    for (const GroundMix::Part& part : mix.parts)
        each.push_back(static_cast<double>(usage::permilleOf(weights, part.ground, part.pace)) / 1000);
    if (each.empty())
        each.push_back(meanWeight(mix, weights));
    return each;
}

Field fieldOf(const std::vector<const Watched*>& tasks, const Ahead& ahead) {
    Field field;
    const Date today = ahead.today;
    const auto trip = [&](const Need& need, std::size_t task) {
        Trip& known = field.trips[field.slotOf(need, tasks[task]->point.weights)];
        if (static_cast<double>(need.left) < known.left)
            known = {static_cast<double>(need.left), task};
    };
    const auto date = [&](const std::optional<Date>& day, std::size_t task) {
        if (day)
            field.date = std::min(field.date, Fall{static_cast<double>(*day - today), task});
    };
    for (std::size_t task = 0; task < tasks.size(); ++task) {
        const DuePoint& point = tasks[task]->point;
        for (const Need& need : point.atOnce)
            trip(need, task);
        date(point.onDay, task);
        if (point.combine == Combine::First) {
            for (const Need& need : point.needs)
                trip(need, task);
            date(point.day, task);
        } else if (!point.needs.empty()) {
            LastOf last{task, {}, {}, point.day ? static_cast<double>(*point.day - today) : 0};
            for (const Need& need : point.needs) {
                last.needs.push_back({static_cast<double>(need.left), task});
                last.slots.push_back(field.slotOf(need, point.weights));
            }
            field.lasts.push_back(std::move(last));
        } else {
            date(point.day, task);
        }
    }
    for (const auto& weights : field.weightings) {
        field.practice.push_back(partWeights(weights, ahead.practiceGround));
        field.race.push_back(partWeights(weights, ahead.raceGround));
    }
    return field;
}

struct Outing {
    double day = 0;
    bool isRace = false;
};

// What is known of the days to the flag.
struct Road {
    std::vector<double> habitDays;
    std::vector<Outing> events;
};

Road roadOf(const Ahead& ahead, Date until) {
    const auto days = daysAhead(ahead, until - ahead.today);
    Road road;
    for (std::size_t day = 1; day < days.size(); ++day) {
        if (days[day].habit > days[day - 1].habit)
            road.habitDays.push_back(static_cast<double>(day));
        for (int n = days[day - 1].practice; n < days[day].practice; ++n)
            road.events.push_back({static_cast<double>(day), false});
        for (int n = days[day - 1].races; n < days[day].races; ++n)
            road.events.push_back({static_cast<double>(day), true});
    }
    return road;
}

// One future: the laws drawn from what is known of them, then outing after outing.
class Future {
  public:
    Future(const Ahead& ahead, const Road& road, const Field& field, Stream stream)
        : ahead_(ahead), road_(road), field_(field), stream_(stream) {
        const CountLaw habit = ahead.habit();
        perDay_ = (habit.isLearned() ? stream_.gamma(habit.shape()) / habit.weeks : habit.rate) *
                  ahead.timesAsOften / 7;
        practice_ = meanOf(ahead.practiceHours, kHours);
        race_ = meanOf(ahead.raceHours, kHours);
        metres_ = meanOf(ahead.metres, kMetres);
        for (const usage::PieceTraits& piece : usage::kPieces) {
            const std::size_t slot = slotOf(piece);
            const PieceLaw& law = ahead.of(piece.of);
            if (piece.comes != Comes::EachOuting && field.watched[slot])
                chance_[slot] = law.seen > 0 ? stream_.beta(law.yes(), law.no()) : law.chance();
        }
        if (!field.weightings.empty()) {
            practiceShares_ = shares(ahead.practiceGround);
            raceShares_ = shares(ahead.raceGround);
        }
        used_.resize(field.trips.size());
        before_.resize(field.trips.size());
        added_.resize(field.trips.size());
        habit_ = nextHabit();
    }

    // What falls due first.
    Fall first(double until) {
        while (const auto outing = next()) {
            if (field_.date.moment <= outing->day)
                return field_.date;
            if (const Fall fall = ride(*outing); fall.moment < kNever)
                return std::min(fall, field_.date);
        }
        Fall fall = field_.date;
        for (const LastOf& last : field_.lasts)  // all used up, and then its date comes
            if (isUsedUp(last))
                fall = std::min(fall, Fall{last.date, last.task});
        return fall.moment <= until ? fall : Fall{};
    }

  private:
    static std::size_t slotOf(const usage::PieceTraits& piece) {
        return kFirstPiece + static_cast<std::size_t>(piece.of);
    }

    double meanOf(const AmountLaw& law, std::size_t slot) {
        return law.seen > 0 && field_.watched[slot] ? law.mean * law.sure() / stream_.gamma(law.sure())
                                                    : law.mean;
    }

    // Up to and including each part of the mix, in this future.
    std::vector<double> shares(const GroundMix& mix) {
        std::vector<double> upTo;
        double sum = 0;
        for (const GroundMix::Part& part : mix.parts) {
            const double weight = part.share * mix.seen;
            sum += mix.seen <= 0 ? part.share : weight > 0 ? stream_.gamma(weight) : 0;
            upTo.push_back(sum);
        }
        for (double& share : upTo)
            share /= sum;  // one part at least has a share that no draw of a gamma loses
        return upTo;
    }

    // Mud is in front, so that a muddy ground and a mud day come together as far as they can.
    static std::size_t partAt(const std::vector<double>& upTo, double lot) {
        const auto at =
            static_cast<std::size_t>(std::upper_bound(upTo.begin(), upTo.end(), lot) - upTo.begin());
        return upTo.empty() ? 0 : std::min(at, upTo.size() - 1);
    }

    std::optional<Outing> nextHabit() {
        if (perDay_ <= 0)
            return std::nullopt;
        clock_ += stream_.exponential() / perDay_;
        if (clock_ >= static_cast<double>(road_.habitDays.size()))
            return std::nullopt;
        return Outing{road_.habitDays[static_cast<std::size_t>(clock_)], false};
    }

    std::optional<Outing> next() {
        const bool hasEvent = event_ < road_.events.size();
        if (habit_ && (!hasEvent || habit_->day < road_.events[event_].day)) {
            const auto outing = habit_;
            habit_ = nextHabit();
            return outing;
        }
        return hasEvent ? std::optional(road_.events[event_++]) : std::nullopt;
    }

    // What the outing adds to each counter that anybody watches.
    void use(bool isRace) {
        std::fill(added_.begin(), added_.end(), 0.0);
        if (field_.watched[kHours]) {
            const double shape = (isRace ? ahead_.raceHours : ahead_.practiceHours).shape();
            added_[kHours] = 100 * (isRace ? race_ : practice_) * stream_.gamma(shape) / shape;
        }
        if (field_.watched[kMetres])
            added_[kMetres] = metres_ * stream_.gamma(ahead_.metres.shape()) / ahead_.metres.shape();
        const double mud = stream_.uniform();
        const std::size_t part = partAt(isRace ? raceShares_ : practiceShares_, mud);
        for (std::size_t i = 0; i < field_.weightings.size(); ++i)
            added_[kSlots + i] = added_[kHours] * (isRace ? field_.race : field_.practice)[i][part];
        const bool together = stream_.uniform() < ahead_.washWithMud;
        for (const usage::PieceTraits& piece : usage::kPieces)
            if (field_.watched[slotOf(piece)])
                added_[slotOf(piece)] = broughtOf(piece, isRace, together, mud);
    }

    // How many of a piece come with an outing; by the lot of its mud, if the two go together.
    double broughtOf(const usage::PieceTraits& piece, bool isRace, bool together, double mud) {
        const auto by = [&](double lot) {
            const auto certain = static_cast<double>(ahead_.of(piece.of).certain());
            return certain + (lot < chance_[slotOf(piece)] ? 1 : 0);
        };
        switch (piece.comes) {
            case Comes::EachOuting:
                return 1;
            case Comes::AtRaces:
                return isRace ? by(stream_.uniform()) : 0;
            case Comes::AnyOuting:
                return by(stream_.uniform());
            case Comes::AsMud:
                return by(mud);
            case Comes::AsWash:
                break;
        }
        return by(together ? mud : stream_.uniform());
    }

    // When within the outing's day the counter reached `left`.
    static double momentOf(const Outing& outing, std::size_t slot, double part) {
        if (slot < kFirstPiece || slot >= kSlots)
            return outing.day + kRides + (kRidden - kRides) * part;
        return outing.day + (usage::kPieces[slot - kFirstPiece].comes == Comes::AsWash ? kWashed : kRidden);
    }

    [[nodiscard]] bool isUsedUp(const LastOf& last) const {
        for (std::size_t i = 0; i < last.needs.size(); ++i)
            if (used_[last.slots[i]] < last.needs[i].left)
                return false;
        return true;
    }

    Fall ride(const Outing& outing) {
        Fall fall;
        // What was used up before and only waited for its date.
        for (const LastOf& last : field_.lasts)
            if (last.date <= outing.day && isUsedUp(last))
                fall = std::min(fall, Fall{last.date, last.task});
        if (fall.moment < kNever)
            return fall;
        before_ = used_;
        use(outing.isRace);
        for (std::size_t slot = 0; slot < used_.size(); ++slot)
            used_[slot] += added_[slot];
        const auto moment = [&](std::size_t slot, double left) {
            return momentOf(outing, slot, std::max(left - before_[slot], 0.0) / added_[slot]);
        };
        for (std::size_t slot = 0; slot < used_.size(); ++slot)
            if (const Trip& trip = field_.trips[slot]; used_[slot] >= trip.left)
                fall = std::min(fall, Fall{moment(slot, trip.left), trip.task});
        for (const LastOf& last : field_.lasts) {
            if (last.date > outing.day || !isUsedUp(last))
                continue;
            double at = last.date;
            for (std::size_t i = 0; i < last.needs.size(); ++i)
                if (before_[last.slots[i]] < last.needs[i].left)
                    at = std::max(at, moment(last.slots[i], last.needs[i].left));
            fall = std::min(fall, Fall{at, last.task});
        }
        return fall;
    }

    const Ahead& ahead_;
    const Road& road_;
    const Field& field_;
    Stream stream_;
    double perDay_ = 0;
    double practice_ = 0;
    double race_ = 0;
    double metres_ = 0;
    std::array<double, kSlots> chance_{};
    std::vector<double> practiceShares_;
    std::vector<double> raceShares_;
    std::vector<double> used_;
    std::vector<double> before_;
    std::vector<double> added_;
    double clock_ = 0;  // days of habit gone by
    std::optional<Outing> habit_;
    std::size_t event_ = 0;
};

}  // namespace

bool isOfTheRound(const upkeep::TaskVersion& task) {
    const auto isBeforeRace = [](const upkeep::Trigger& trigger) {
        return trigger.happening == upkeep::Happening::BeforeRace;
    };
    return std::any_of(task.limits.begin(), task.limits.end(), isEveryOuting) ||
           std::any_of(task.triggers.begin(), task.triggers.end(), isBeforeRace);
}

Chances chancesOf(std::span<const Watched> tasks, const Odds& odds, Date until, const Draws& draws) {
    const Ahead& ahead = odds.ahead();
    Chances chances;
    if (!ahead.events.empty())
        chances.event = ahead.events.front();
    chances.until = until;
    chances.trust = ahead.trust;
    chances.inHand = static_cast<std::int64_t>(tasks.size());
    if (ahead.trust == Trust::Unknown || draws.count <= 0)
        return chances;
    std::vector<const Watched*> byConsequence;
    double most = 0;
    double all = 0;
    for (const Watched& task : tasks) {
        byConsequence.push_back(&task);
        const double own = odds.chanceBy(task.point, until);
        most = std::max(most, own);
        all += own;
    }
    std::stable_sort(byConsequence.begin(), byConsequence.end(),
                     [](const Watched* a, const Watched* b) { return a->consequence < b->consequence; });
    const Field field = fieldOf(byConsequence, ahead);
    const Road road = roadOf(ahead, until);
    std::vector<std::int64_t> firsts(tasks.size(), 0);
    std::int64_t falls = 0;
    for (std::int32_t draw = 0; draw < draws.count; ++draw) {
        Future future(ahead, road, field, Stream(draws.seed, static_cast<std::uint64_t>(draw)));
        const Fall fall = future.first(static_cast<double>(until - ahead.today));
        if (fall.moment == kNever)
            continue;
        ++firsts[fall.task];
        ++falls;
    }
    const double clear = 1 - static_cast<double>(falls) / draws.count;
    chances.clear = std::clamp(clear, std::max(1 - all, 0.0), 1 - most);
    if (falls > 0) {
        const auto first = std::max_element(firsts.begin(), firsts.end());
        chances.first = byConsequence[static_cast<std::size_t>(first - firsts.begin())]->task;
        chances.firstShare = static_cast<double>(*first) / static_cast<double>(falls);
    }
    return chances;
}

}  // namespace wm::outlook

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/usage/metering.h"

#include <algorithm>
#include <map>
#include <numeric>
#include <tuple>

namespace wm::usage {

namespace {

using Amount = units::Quantity<Figure>;

bool startsAfresh(MeterEvent event) {
    return event == MeterEvent::Replaced || event == MeterEvent::Reset || event == MeterEvent::Resumed;
}

void setExact(Use& use, std::int64_t amount, Known known) {
    use = {Bracket<Amount>::exactly(Amount{amount}), known};
}

// The outings of one metered stretch.
class Between {
  public:
    Between(std::span<const Note> notes, std::span<Use> uses) : notes_(notes), uses_(uses) {
        for (std::size_t i = 0; i < notes.size(); ++i) {
            (notes[i].amount ? noted_ : blank_).push_back(i);
            weights_.push_back(notes[i].amount.value_or(0));
        }
        sum_ = std::accumulate(weights_.begin(), weights_.end(), std::int64_t{0});
    }

    // Gives every outing its part of what the meter `ran`; the result is what nobody noted.
    std::int64_t share(std::int64_t ran, Tolerance tolerance) {
        const std::int64_t missing = ran - sum_;
        if (missing > 0 && tolerance.mayCountMore)
            return atMost(missing);
        if (missing > 0 && !blank_.empty()) {
            keepNotes(Known::Metered);
            const std::vector<std::int64_t> even(blank_.size(), 1);
            const auto shares = sharesOf(missing, even);
            for (std::size_t i = 0; i < blank_.size(); ++i)
                setExact(uses_[blank_[i]], shares[i], Known::Metered);
            return 0;
        }
        if (missing > 0 && (noted_.empty() || !within(missing, tolerance))) {
            keepNotes(Known::Noted);
            return missing;
        }
        for (const std::size_t i : blank_)
            setExact(uses_[i], 0, Known::Metered);
        spread(ran, missing == 0 ? Known::Metered : missing > 0 ? Known::ScaledUp : Known::ScaledDown);
        return 0;
    }

  private:
    // 0.1 h + 5 % an outing: missing <= n * base + sum / 20, in whole numbers.
    [[nodiscard]] bool within(std::int64_t missing, Tolerance tolerance) const {
        return 20 * missing <= 20 * static_cast<std::int64_t>(noted_.size()) * tolerance.base + sum_;
    }
    // The notes stand; of what the meter has more, nobody knows how much was riding.
    std::int64_t atMost(std::int64_t missing) {
        keepNotes(Known::Noted);
        const std::vector<std::int64_t> even(blank_.size(), 1);
        const auto shares = sharesOf(missing, even);
        for (std::size_t i = 0; i < blank_.size(); ++i)
            uses_[blank_[i]] = {{Amount{0}, Amount{shares[i]}, Amount{shares[i]}}, Known::AtMost};
        return blank_.empty() ? missing : 0;
    }
    void keepNotes(Known known) {
        for (const std::size_t i : noted_)
            setExact(uses_[i], weights_[i], known);
    }
    void spread(std::int64_t ran, Known known) {
        std::vector<std::int64_t> weights;
        for (const std::size_t i : noted_)
            weights.push_back(weights_[i]);
        const auto shares = sharesOf(ran, weights);
        for (std::size_t i = 0; i < noted_.size(); ++i)
            setExact(uses_[noted_[i]], shares[i], known);
    }

    std::span<const Note> notes_;
    std::span<Use> uses_;
    std::vector<std::size_t> noted_;
    std::vector<std::size_t> blank_;
    std::vector<std::int64_t> weights_;
    std::int64_t sum_ = 0;
};

// Outings that are neither noted nor metered, from those that are known and ran at all.
void assume(std::span<Use> uses, const std::vector<std::size_t>& unknown) {
    std::int64_t sum = 0;
    std::int64_t count = 0;
    std::int64_t longest = 0;
    std::vector<bool> isUnknown(uses.size(), false);
    for (const std::size_t i : unknown)
        isUnknown[i] = true;
    for (std::size_t i = 0; i < uses.size(); ++i) {
        const std::int64_t amount = uses[i].amount.best.count();
        if (isUnknown[i] || amount == 0)
            continue;
        sum += amount;
        ++count;
        longest = std::max(longest, amount);
    }
    Use assumed{{Amount{0}, Amount{0}, std::nullopt}, Known::Assumed};
    if (count > 0) {
        const std::int64_t mean = (2 * sum + count) / (2 * count);
        assumed.amount.best = Amount{mean};
        assumed.amount.high = Amount{std::max(longest, 2 * mean)};
    }
    for (const std::size_t i : unknown)
        uses[i] = assumed;
}

}  // namespace

bool comesBefore(const Figure& a, const Figure& b) {
    const auto key = [](const Figure& figure) {
        const bool byFigure =
            figure.at.part == calendar::DayPart::Riding && figure.event == MeterEvent::Plain;
        return std::tuple(figure.at, !byFigure, byFigure ? figure.shown : 0, figure.entered, figure.id);
    };
    return key(a) < key(b);
}

bool comesBefore(const HourReading& a, const HourReading& b) {
    return comesBefore(figureOf(a), figureOf(b));
}

template <class Unit>
std::vector<Figure> figuresOf(const std::vector<ReadingOf<Unit>>& readings) {
    std::vector<Figure> figures;
    figures.reserve(readings.size());
    for (const auto& reading : readings)
        figures.push_back(figureOf(reading));
    std::sort(figures.begin(), figures.end(),
              [](const Figure& a, const Figure& b) { return comesBefore(a, b); });
    return figures;
}
template std::vector<Figure> figuresOf(const std::vector<HourReading>& readings);
template std::vector<Figure> figuresOf(const std::vector<DistanceReading>& readings);

std::optional<std::int64_t> ranBetween(const Figure& earlier, const Figure& later) {
    std::optional<std::int64_t> ran;
    switch (later.event) {
        case MeterEvent::Plain:
        case MeterEvent::Stopped:
            ran = later.shown - earlier.shown;
            break;
        case MeterEvent::Replaced:
        case MeterEvent::Reset:
            if (later.before)
                ran = *later.before - earlier.shown;
            break;
        case MeterEvent::RolledOver:
            if (later.rollsAt)
                ran = *later.rollsAt - earlier.shown + later.shown;
            break;
        case MeterEvent::Resumed:
            break;
    }
    return ran && *ran >= 0 ? ran : std::nullopt;
}

bool standsAfter(bool stoodBefore, const Figure& figure) {
    return figure.event == MeterEvent::Stopped || (stoodBefore && !startsAfresh(figure.event));
}

std::vector<std::int64_t> sharesOf(std::int64_t whole, std::span<const std::int64_t> weights) {
    if (weights.empty())
        return {};
    const std::int64_t sum = std::accumulate(weights.begin(), weights.end(), std::int64_t{0});
    if (sum == 0)
        return sharesOf(whole, std::vector<std::int64_t>(weights.size(), 1));
    std::vector<std::int64_t> shares;
    std::vector<std::pair<std::int64_t, std::size_t>>
        remainders;  // negative, so that the largest comes first
    std::int64_t given = 0;
    for (std::size_t i = 0; i < weights.size(); ++i) {
        // At most 10^9 x 10^9 by the bounds of the parsers: fits.
        const std::int64_t product = whole * weights[i];
        shares.push_back(product / sum);
        remainders.emplace_back(-(product % sum), i);
        given += shares.back();
    }
    std::sort(remainders.begin(), remainders.end());
    for (std::size_t i = 0; given < whole && i < remainders.size(); ++i, ++given)
        ++shares[remainders[i].second];
    return shares;
}

namespace {

// Where a note goes among the readings that were taken at the end of outings of its day; nothing if there is
// none.
std::optional<std::size_t> amongItsDay(const std::vector<std::pair<std::size_t, base::Entered>>& taken,
                                       std::span<const Figure> figures, const Note& note) {
    std::optional<std::size_t> next;
    std::optional<std::size_t> last;
    for (const auto& [figure, entered] : taken) {
        if (figures[figure].at.date != note.at.date)
            continue;
        last = std::max(last.value_or(figure), figure);
        if (entered > note.entered)
            next = std::min(next.value_or(figure), figure);
    }
    if (next || !last)
        return next;
    const bool isReadLater = *last + 1 < figures.size() && figures[*last + 1].at.date == note.at.date;
    return isReadLater ? *last + 1 : *last;
}

}  // namespace

std::vector<std::size_t> closedBy(std::span<const Figure> figures, std::span<const Note> notes) {
    std::vector<std::size_t> closed;
    std::map<std::int64_t, std::size_t> ofOuting;
    for (std::size_t i = 0; i < figures.size(); ++i)
        if (figures[i].outing)
            ofOuting.emplace(*figures[i].outing, i);
    std::vector<std::pair<std::size_t, base::Entered>> taken;
    const auto own = [&](const Note& note) {
        const auto found = ofOuting.find(note.outing);
        const bool isOwn = found != ofOuting.end() && figures[found->second].at.date == note.at.date;
        return isOwn ? std::optional(found->second) : std::nullopt;
    };
    for (const Note& note : notes)
        if (const auto figure = own(note))
            taken.emplace_back(*figure, note.entered);
    for (const Note& note : notes) {
        const auto first =
            std::lower_bound(figures.begin(), figures.end(), note.at,
                             [](const Figure& figure, calendar::Moment at) { return figure.at < at; });
        auto figure = own(note);
        if (!figure)
            figure = amongItsDay(taken, figures, note);
        closed.push_back(figure.value_or(static_cast<std::size_t>(first - figures.begin())));
    }
    return closed;
}

namespace {

Metered meterInOrder(std::span<const Figure> figures, std::span<const Note> notes,
                     std::span<const std::size_t> closed, Tolerance tolerance) {
    Metered result;
    result.uses.resize(notes.size());
    std::vector<std::size_t> unknown;
    std::size_t next = 0;  // the first note that is not dealt with
    const auto endOf = [&](std::size_t figure) {
        std::size_t end = next;
        while (end < notes.size() && closed[end] <= figure)
            ++end;
        return end;
    };
    const auto leaveAlone = [&](std::size_t end) {
        for (; next < end; ++next) {
            if (notes[next].amount)
                setExact(result.uses[next], *notes[next].amount, Known::Noted);
            else
                unknown.push_back(next);
        }
    };
    bool stands = false;
    for (std::size_t i = 0; i < figures.size(); ++i) {
        const std::size_t end = endOf(i);
        const auto ran = i == 0 || stands ? std::nullopt : ranBetween(figures[i - 1], figures[i]);
        if (ran) {
            Between between(notes.subspan(next, end - next),
                            std::span(result.uses).subspan(next, end - next));
            const std::int64_t rest = between.share(*ran, tolerance);
            if (rest > 0)
                result.rests.push_back({figures[i - 1].at, figures[i].at, rest, figures[i].id});
            next = end;
        }
        leaveAlone(end);
        stands = standsAfter(stands, figures[i]);
    }
    leaveAlone(notes.size());
    assume(result.uses, unknown);
    return result;
}

}  // namespace

Metered meter(std::span<const Figure> figures, std::span<const Note> notes, Tolerance tolerance) {
    const auto closed = closedBy(figures, notes);
    std::vector<std::size_t> order(notes.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(),
                     [&](std::size_t a, std::size_t b) { return closed[a] < closed[b]; });
    std::vector<Note> inOrder;
    std::vector<std::size_t> closedInOrder;
    for (const std::size_t at : order) {
        inOrder.push_back(notes[at]);
        closedInOrder.push_back(closed[at]);
    }
    Metered metered = meterInOrder(figures, inOrder, closedInOrder, tolerance);
    std::vector<Use> uses(notes.size());
    for (std::size_t i = 0; i < order.size(); ++i)
        uses[order[i]] = metered.uses[i];
    metered.uses = std::move(uses);
    return metered;
}

}  // namespace wm::usage

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/upkeep/typed_interval.h"

#include <algorithm>
#include <array>
#include <optional>

#include "core/base/text.h"
#include "core/units/decimal.h"
#include "core/units/quantity.h"

namespace wm::upkeep {

using base::Fault;
using base::refuse;

namespace {

constexpr std::int64_t kMostTyped = 100'000;  // pieces; more of anything is a typing error
constexpr std::string_view kLike = "15 h, 1000 km, 12 months, 3 outings, 10 washes";

struct CountingWord {
    std::string_view word;
    Counter counter;
    std::int64_t times = 1;
};
// Beside the counters' own words.
constexpr std::array kOtherWords{
    CountingWord{"hr", Counter::Hours},        CountingWord{"hrs", Counter::Hours},
    CountingWord{"hour", Counter::Hours},      CountingWord{"hours", Counter::Hours},
    CountingWord{"ride", Counter::Outings},    CountingWord{"rides", Counter::Outings},
    CountingWord{"week", Counter::Days, 7},    CountingWord{"weeks", Counter::Days, 7},
    CountingWord{"year", Counter::Months, 12}, CountingWord{"years", Counter::Months, 12},
};

std::optional<CountingWord> countingWord(std::string_view word) {
    for (const CounterTraits& counter : kCounters)
        if (word == counter.one || word == counter.many)
            return CountingWord{word, counter.of};
    for (const CountingWord& other : kOtherWords)
        if (word == other.word)
            return other;
    return std::nullopt;
}

struct Counted {
    Counter counter = Counter::Hours;
    std::int64_t amount = 0;
};

base::Result<std::int64_t> countIn(std::string_view field, std::string_view number,
                                   const CountingWord& word) {
    switch (traitsOf(word.counter).kind) {
        case CounterKind::Hours:
            return units::parseHours(field, number).map([](units::Hours h) { return h.count(); });
        case CounterKind::Metres:
            return units::parseKilometres(field, number).map([](units::Metres m) { return m.count(); });
        case CounterKind::Pieces:
        case CounterKind::Days:
        case CounterKind::Months:
            break;
    }
    return units::parseCount(field, number, kMostTyped).map([&](std::int64_t n) { return n * word.times; });
}

base::Result<Counted> parseCounted(std::string_view field, std::string_view text) {
    const std::string_view all = base::trimmed(text);
    const auto end = std::min(all.find_first_not_of("0123456789.,"), all.size());
    if (end == 0)
        return refuse(all.empty() ? Fault::Empty : Fault::NotANumber, std::string(field), std::string(all));
    const std::string word = base::lowered(base::trimmed(all.substr(end)));
    const auto known = countingWord(word);
    if (!known)
        return refuse(Fault::WrongUnit, std::string(field), word.empty() ? std::string(all) : word,
                      std::string(kLike));
    const auto amount = countIn(field, all.substr(0, end), *known);
    if (!amount)
        return tl::unexpected(amount.error());
    if (*amount <= 0)
        return refuse(Fault::NotPositive, std::string(field), std::string(all));
    return Counted{known->counter, *amount};
}

// "15 h", or "first 3 h, then 15 h".
base::Result<Limit> parseLimit(std::string_view field, std::string_view text) {
    std::string_view every = base::trimmed(text);
    std::optional<Counted> first;
    if (base::lowered(every).starts_with("first ")) {
        const std::string words = base::lowered(every);
        const auto then = words.find("then");
        if (then == std::string::npos)
            return refuse(Fault::Malformed, std::string(field), std::string(every), "first 3 h, then 15 h");
        std::string_view before = base::trimmed(every.substr(6, then - 6));
        if (before.ends_with(','))
            before.remove_suffix(1);
        const auto read = parseCounted(field, before);
        if (!read)
            return tl::unexpected(read.error());
        first = *read;
        every = every.substr(then + 4);
    }
    const auto counted = parseCounted(field, every);
    if (!counted)
        return tl::unexpected(counted.error());
    if (first && first->counter != counted->counter)
        return refuse(Fault::Inconsistent, std::string(field), std::string(base::trimmed(text)));
    Limit limit;
    limit.counter = counted->counter;
    limit.every = counted->amount;
    if (first)
        limit.first = first->amount;
    return limit;
}

struct Between {
    std::size_t at;
    std::size_t length;
    Combine combine;
};

std::optional<Between> nextBetween(std::string_view text, std::size_t from) {
    constexpr std::array<std::pair<std::string_view, Combine>, 5> kMarks{{{"/", Combine::First},
                                                                          {";", Combine::First},
                                                                          {" or ", Combine::First},
                                                                          {"+", Combine::Last},
                                                                          {" and ", Combine::Last}}};
    std::optional<Between> found;
    for (const auto& [mark, combine] : kMarks) {
        const auto at = text.find(mark, from);
        if (at != std::string_view::npos && (!found || at < found->at))
            found = Between{at, mark.size(), combine};
    }
    return found;
}

bool hasCounter(const std::vector<Limit>& limits, Counter counter) {
    return std::any_of(limits.begin(), limits.end(), [&](const Limit& l) { return l.counter == counter; });
}

// To the metre, so that it can be read back.
std::string exactKilometres(std::int64_t metres, char mark) {
    int places = 3;
    while (places > 0 && metres % 10 == 0) {
        metres /= 10;
        --places;
    }
    return units::Decimal{metres, places}.text(mark);
}

}  // namespace

base::Result<TypedInterval> parseInterval(std::string_view field, std::string_view text) {
    TypedInterval typed;
    std::optional<Combine> combine;
    const std::string words = base::lowered(text);
    for (std::size_t from = 0;;) {
        const auto between = nextBetween(words, from);
        const auto limit = parseLimit(field, text.substr(from, between ? between->at - from : text.npos));
        if (!limit)
            return tl::unexpected(limit.error());
        if (hasCounter(typed.limits, limit->counter))
            return refuse(Fault::Duplicate, std::string(field), std::string(base::nameOf(limit->counter)));
        typed.limits.push_back(*limit);
        if (!between)
            break;
        if (combine.value_or(between->combine) != between->combine)
            return refuse(Fault::Inconsistent, std::string(field), std::string(base::trimmed(text)));
        combine = between->combine;
        from = between->at + between->length;
    }
    typed.combine = combine.value_or(Combine::First);
    return typed;
}

std::string countText(std::int64_t amount, Counter counter, char mark) {
    if (counter == Counter::Hours)
        return units::hoursText(units::Hours{amount}, mark) + " h";
    if (counter == Counter::Metres)
        return exactKilometres(amount, mark) + " km";
    const CounterTraits& counted = traitsOf(counter);
    return std::to_string(amount) + ' ' + std::string(amount == 1 ? counted.one : counted.many);
}

std::string intervalText(const std::vector<Limit>& limits, Combine combine, char mark) {
    std::string text;
    for (const Limit& limit : limits) {
        if (!text.empty())
            text += combine == Combine::First ? " or " : " and ";
        if (limit.first)
            text += "first " + countText(*limit.first, limit.counter, mark) + ", then ";
        text += countText(limit.every, limit.counter, mark);
    }
    return text;
}

}  // namespace wm::upkeep

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/exchange/amount.h"

#include <fmt/format.h>

#include <string>

#include "core/exchange/json_text.h"
#include "core/units/quantity.h"

namespace wm::exchange {

using base::Fault;
using base::refuse;
using upkeep::Counter;

namespace {

base::Result<std::int64_t> countIn(std::string_view number, Counter counter) {
    switch (upkeep::traitsOf(counter).kind) {
        case upkeep::CounterKind::Hours:
            return units::parseHours({}, number).map([](units::Hours h) { return h.count(); });
        case upkeep::CounterKind::Metres:
            return units::parseKilometres({}, number).map([](units::Metres m) { return m.count(); });
        case upkeep::CounterKind::Pieces:
        case upkeep::CounterKind::Days:
        case upkeep::CounterKind::Months:
            break;
    }
    return units::parseCount({}, number, kMostPieces);
}

// "15 h, 250 km ... 30 days or 12 months"
std::string examples() {
    std::string text;
    for (const upkeep::CounterTraits& counter : upkeep::kCounters) {
        if (!text.empty())
            text += &counter == &upkeep::kCounters.back() ? " or " : ", ";
        text += fmt::format("{} {}", counter.example, counter.example == 1 ? counter.one : counter.many);
    }
    return text;
}

}  // namespace

base::Result<Amount> parseAmount(std::string_view text) {
    const std::size_t blank = text.find(' ');
    const std::string_view number = text.substr(0, blank);
    const std::string_view word = blank == std::string_view::npos ? "" : text.substr(blank + 1);
    for (const upkeep::CounterTraits& counter : upkeep::kCounters)
        if (word == counter.one || word == counter.many)
            return countIn(number, counter.of).map([&](std::int64_t n) { return Amount{counter.of, n}; });
    return refuse(Fault::WrongUnit, {}, excerpt(text), examples());
}

}  // namespace wm::exchange

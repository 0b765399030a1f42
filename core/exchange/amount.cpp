// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/exchange/amount.h"

#include <array>
#include <string>

#include "core/exchange/json_text.h"
#include "core/units/quantity.h"

namespace wm::exchange {

using base::Fault;
using base::refuse;
using upkeep::Counter;

namespace {

struct CounterWord {
    std::string_view word;
    Counter counter;
};
constexpr std::array<CounterWord, 16> kCounterWords{{{"h", Counter::Hours},
                                                     {"km", Counter::Metres},
                                                     {"outing", Counter::Outings},
                                                     {"outings", Counter::Outings},
                                                     {"start", Counter::Starts},
                                                     {"starts", Counter::Starts},
                                                     {"wash", Counter::Washes},
                                                     {"washes", Counter::Washes},
                                                     {"mud day", Counter::MudDays},
                                                     {"mud days", Counter::MudDays},
                                                     {"crash", Counter::Crashes},
                                                     {"crashes", Counter::Crashes},
                                                     {"day", Counter::Days},
                                                     {"days", Counter::Days},
                                                     {"month", Counter::Months},
                                                     {"months", Counter::Months}}};

}  // namespace

base::Result<Amount> parseAmount(std::string_view text) {
    const std::size_t blank = text.find(' ');
    const std::string_view number = text.substr(0, blank);
    const std::string_view word = blank == std::string_view::npos ? "" : text.substr(blank + 1);
    for (const CounterWord& known : kCounterWords) {
        if (known.word != word)
            continue;
        const auto count = [&]() -> base::Result<std::int64_t> {
            if (known.counter == Counter::Hours)
                return units::parseHours({}, number).map([](units::Hours h) { return h.count(); });
            if (known.counter == Counter::Metres)
                return units::parseKilometres({}, number).map([](units::Metres m) { return m.count(); });
            return units::parseCount({}, number, kMostPieces);
        }();
        return count.map([&](std::int64_t n) { return Amount{known.counter, n}; });
    }
    return refuse(Fault::WrongUnit, {}, excerpt(text),
                  "15 h, 250 km, 3 outings, 10 starts, 10 washes, 2 mud days, 1 crash, 30 days or 12 months");
}

}  // namespace wm::exchange

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/upkeep/typed_bracket.h"

#include <string>
#include <vector>

#include "core/base/text.h"

namespace wm::upkeep {

using base::Fault;
using base::refuse;
using base::Result;

namespace {

constexpr std::int64_t kMost = 100'000'000;

using End = std::optional<std::int64_t>;

Result<End> parseEnd(std::string_view field, const std::string& text, Counter counter) {
    if (text.empty() || text == "?")
        return End{};
    if (text == "none" || text == "no")
        return End{0};
    switch (traitsOf(counter).kind) {
        case CounterKind::Hours:
            return units::parseHours(field, text).map([](units::Hours hours) { return End{hours.count()}; });
        case CounterKind::Metres:
            return units::parseKilometres(field, text).map([](units::Metres metres) {
                return End{metres.count()};
            });
        case CounterKind::Pieces:
        case CounterKind::Days:
        case CounterKind::Months:
            break;
    }
    return units::parseCount(field, text, kMost).map([](std::int64_t count) { return End{count}; });
}

// Whatever stands between two figures.
std::vector<std::string> partsOf(std::string text) {
    for (const std::string_view between : {"\u2013", "\u2026", " to ", "-"})
        for (auto at = text.find(between); at != std::string::npos; at = text.find(between, at + 2))
            text.replace(at, between.size(), "..");
    std::vector<std::string> parts;
    std::string::size_type from = 0;
    for (;;) {
        const auto dots = text.find("..", from);
        parts.emplace_back(base::trimmed(text.substr(from, dots - from)));
        if (dots == std::string::npos)
            return parts;
        from = dots + 2;
    }
}

}  // namespace

Result<CountBracket> parseBracket(std::string_view field, std::string_view text, Counter counter) {
    const std::string typed = base::lowered(base::trimmed(text));
    if (typed.empty())
        return refuse(Fault::Empty, field);
    if (typed.starts_with('-'))
        return refuse(Fault::Negative, field, std::string(text));
    std::vector<End> ends;
    for (const std::string& part : partsOf(typed)) {
        const auto end = parseEnd(field, part, counter);
        if (!end)
            return tl::unexpected(end.error());
        ends.push_back(*end);
    }
    if (ends.size() == 1)
        ends = {ends[0], ends[0], ends[0]};
    else if (ends.size() == 2)
        ends = {ends[0], std::nullopt, ends[1]};
    if (ends.size() != 3 || (!ends[0] && !ends[1] && !ends[2]))
        return refuse(Fault::Malformed, field, std::string(text));
    const CountBracket bracket{ends[0].value_or(0), ends[1], ends[2]};
    const std::int64_t likely = bracket.best.value_or(bracket.low);
    if (likely < bracket.low || bracket.high.value_or(likely) < likely)
        return refuse(Fault::OutOfOrder, field, std::string(text));
    return bracket;
}

}  // namespace wm::upkeep

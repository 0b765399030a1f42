// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/exchange/demo_line.h"

#include <algorithm>

namespace wm::exchange {

using base::Error;
using base::Fault;

namespace {

constexpr std::int64_t kMost = 1'000'000'000;

}  // namespace

void DemoLine::fail(Error error) {
    if (!fault_)
        fault_ = std::move(error);
}

std::string DemoLine::text(std::string_view column) {
    const auto at = std::find(columns_.begin(), columns_.end(), column);
    if (at == columns_.end()) {
        fail({Fault::Inconsistent, std::string(column), {}, "this column"});
        return {};
    }
    return row_.cells[static_cast<std::size_t>(at - columns_.begin())];
}

std::optional<std::int64_t> DemoLine::countIf(std::string_view column) {
    const std::string given = text(column);
    if (given.empty())
        return std::nullopt;
    return taken(units::parseCount(column, given, kMost));
}

std::int64_t DemoLine::count(std::string_view column) {
    return countIf(column).value_or(0);
}

std::optional<calendar::Date> DemoLine::dayIf(std::string_view column) {
    constexpr std::int64_t kFarthest = 20'000;
    const std::string given = text(column);
    if (given.empty())
        return std::nullopt;
    const bool before = given.front() == '-';
    const auto days = taken(units::parseCount(column, before ? given.substr(1) : given, kFarthest));
    if (!days)
        return std::nullopt;
    return pinned_.plusDays(static_cast<std::int32_t>(before ? -*days : *days));
}

calendar::Date DemoLine::day(std::string_view column) {
    const auto day = dayIf(column);
    if (!day)
        fail({Fault::Empty, std::string(column), {}, {}});
    return day.value_or(pinned_);
}

std::optional<units::Hours> DemoLine::hoursIf(std::string_view column) {
    const std::string given = text(column);
    return given.empty() ? std::nullopt : taken(units::parseHours(column, given));
}

units::Hours DemoLine::hours(std::string_view column) {
    return hoursIf(column).value_or(units::Hours{});
}

std::optional<units::Decimal> DemoLine::decimalIf(std::string_view column) {
    const std::string given = text(column);
    return given.empty() ? std::nullopt : taken(units::parseDecimal(column, given));
}

std::optional<units::Money> DemoLine::moneyIf(std::string_view column) {
    const auto amount = decimalIf(column);
    return amount ? std::optional(units::Money{amount->scaledTo(2)}) : std::nullopt;
}

std::optional<units::Minutes> DemoLine::minutesIf(std::string_view column) {
    const auto minutes = countIf(column);
    return minutes ? std::optional(units::Minutes{*minutes}) : std::nullopt;
}

units::Minutes DemoLine::timeOfDay(std::string_view column) {
    return taken(units::parseTimeOfDay(column, text(column))).value_or(units::Minutes{});
}

bool DemoLine::yes(std::string_view column) {
    const std::string given = text(column);
    if (given != "yes" && given != "no" && !given.empty())
        fail({Fault::Unknown, std::string(column), given, "yes or no"});
    return given == "yes";
}

std::vector<std::string> DemoLine::words(std::string_view column) {
    std::vector<std::string> words = base::split(text(column), ' ');
    std::erase(words, "");
    return words;
}

std::vector<std::string> DemoLine::parts(std::string_view column) {
    std::vector<std::string> parts;
    for (const std::string& part : base::split(text(column), ';'))
        if (const auto words = base::trimmed(part); !words.empty())
            parts.emplace_back(words);
    return parts;
}

std::vector<std::pair<std::string, std::string>> DemoLine::pairs(std::string_view column) {
    std::vector<std::pair<std::string, std::string>> pairs;
    for (const std::string& part : parts(column)) {
        const std::size_t sign = part.find('=');
        if (sign == std::string::npos) {
            fail({Fault::Malformed, std::string(column), part, "name=value"});
            continue;
        }
        pairs.emplace_back(base::trimmed(std::string_view(part).substr(0, sign)),
                           base::trimmed(std::string_view(part).substr(sign + 1)));
    }
    return pairs;
}

}  // namespace wm::exchange

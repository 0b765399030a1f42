// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later

#include "core/definitions/printed_words.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include "core/base/text.h"
#include "core/fastening/stages.h"
#include "core/picture/checks.h"
#include "core/units/convert.h"
#include "core/units/unit_words.h"
#include "core/upkeep/typed_interval.h"

namespace wm::definitions {

using base::Fault;
using base::refuse;
using base::Result;
using picture::kMostAmount;
using picture::kMostOfADay;
using units::Decimal;

namespace {

constexpr std::string_view kFigure = "figure";

std::string withUnit(std::string text, std::string_view unit) {
    if (!text.empty() && !unit.empty())
        text += ' ' + std::string(unit);
    return text;
}

// Of a word in any alphabet.
bool isOfAWord(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || static_cast<unsigned char>(c) >= 0x80;
}

// Takes `word` off the end of `text` if it stands there by itself: "kg" does not end with the word "g".
bool cutBehind(std::string_view& text, std::string_view word) {
    const std::string low = base::lowered(text);
    if (word.empty() || !low.ends_with(base::lowered(word)))
        return false;
    const std::string_view front = text.substr(0, text.size() - word.size());
    if (!front.empty() && isOfAWord(front.back()) && isOfAWord(word.front()))
        return false;
    text = base::trimmed(front);
    return true;
}

bool cutBefore(std::string_view& text, std::string_view word) {
    if (!base::lowered(text).starts_with(word))
        return false;
    text = base::trimmed(text.substr(word.size()));
    return true;
}

Result<std::int64_t> wholeAmount(const Decimal& value, std::string_view given) {
    if (value.digits() <= 0)
        return refuse(Fault::NotPositive, std::string(kFigure), std::string(given));
    const double amount = value.toDouble();
    if (amount > static_cast<double>(kMostAmount))
        return refuse(Fault::TooLarge, std::string(kFigure), std::string(given), std::to_string(kMostAmount));
    return std::llround(amount);
}

bool isWhole(const Decimal& value) {
    return Decimal{value.scaledTo(0), 0} == value;
}

// Millilitres and grams from what was typed, rounded to whole ones.
Result<std::int64_t> convertedAmount(const units::Measured& typed, std::string_view to,
                                     std::string_view given) {
    const auto amount = units::convert(typed.value.toDouble(), typed.unit, to);
    if (!amount)
        return refuse(Fault::WrongUnit, std::string(kFigure), std::string(typed.unit));
    const double most = static_cast<double>(kMostAmount);
    if (*amount < 0.5 || *amount > most)
        return refuse(*amount < 0.5 ? Fault::NotPositive : Fault::TooLarge, std::string(kFigure),
                      std::string(given));
    return std::llround(*amount);
}

enum class End : std::uint8_t { Least, Most };

// "max", "at most", "up to" and the like in front of a limit.
std::optional<End> cutEnd(std::string_view& text) {
    constexpr std::array<std::pair<std::string_view, End>, 10> kEnds{{{"at least", End::Least},
                                                                      {"minimum", End::Least},
                                                                      {"min.", End::Least},
                                                                      {"min", End::Least},
                                                                      {">=", End::Least},
                                                                      {"at most", End::Most},
                                                                      {"maximum", End::Most},
                                                                      {"max.", End::Most},
                                                                      {"max", End::Most},
                                                                      {"<=", End::Most}}};
    for (const auto& [word, end] : kEnds)
        if (cutBefore(text, word))
            return end;
    return std::nullopt;
}

// One figure of a limit, with or without the unit of the measurement.
Result<Decimal> parseEnd(std::string_view text, const std::string& unit) {
    std::string_view number = base::trimmed(text);
    if (cutBehind(number, unit))
        return units::parseDecimal(kFigure, number);
    const auto measured = units::parseMeasured(kFigure, number);
    if (!measured)
        return tl::unexpected(measured.error());
    if (!measured->unit.empty() && units::unitNamed(unit) != measured->unit)
        return refuse(Fault::WrongUnit, std::string(kFigure), std::string(measured->unit), unit);
    return measured->value;
}

// Limits may lie below zero: behind the word "to" a sign may stand.
std::optional<std::pair<std::size_t, std::size_t>> rangeIn(std::string_view text) {
    constexpr std::string_view kTo = " to ";
    if (const auto at = base::lowered(text).find(kTo, 1); at != std::string::npos)
        return std::pair(at, kTo.size());
    return units::rangeMark(text);
}

}  // namespace

std::string printedInterval(const upkeep::TaskVersion& task, char mark) {
    if (task.limits.empty())
        return task.nth > 0 ? std::to_string(task.nth) : std::string{};
    return upkeep::intervalText(task.limits, task.combine, mark);
}

std::string printedAmount(const upkeep::KitLine& line) {
    const std::string amount = std::to_string(line.amount);
    return line.unit == upkeep::Unit::Piece ? amount : withUnit(amount, base::nameOf(line.unit));
}

std::string printedLimit(const upkeep::MeasurePoint& point, char mark) {
    if (point.least && point.most)
        return withUnit(point.least->text(mark) + " to " + point.most->text(mark), point.unit);
    if (point.least)
        return withUnit("min " + point.least->text(mark), point.unit);
    return point.most ? withUnit("max " + point.most->text(mark), point.unit) : std::string{};
}

std::string printedTorque(const fastening::JointVersion& joint, char mark) {
    if (!joint.torque)
        return {};
    std::string text = joint.torque->text(mark);
    if (joint.torqueHigh)
        text += " to " + joint.torqueHigh->text(mark);
    return withUnit(std::move(text), base::nameOf(joint.unit));
}

Result<void> putInterval(upkeep::TaskVersion& task, std::string_view typed) {
    if (task.limits.empty() && task.nth > 0) {
        const auto nth = units::parseCount(kFigure, base::trimmed(typed), kMostOfADay);
        if (!nth)
            return tl::unexpected(nth.error());
        if (*nth == 0)
            return refuse(Fault::NotPositive, std::string(kFigure), "0");
        task.nth = *nth;
        return {};
    }
    auto interval = upkeep::parseInterval(kFigure, typed);
    if (!interval)
        return tl::unexpected(interval.error());
    for (upkeep::Limit& limit : interval->limits)
        for (const upkeep::Limit& stood : task.limits)
            if (stood.counter == limit.counter) {
                limit.hard = stood.hard;
                // More than a whole interval, and not of this one: it was meant for a longer one.
                const bool fits = stood.allowance <= limit.every || stood.every == limit.every;
                limit.allowance = fits ? stood.allowance : 0;
            }
    // Of one limit there is no first and last; what was said of several stays.
    if (interval->limits.size() > 1)
        task.combine = interval->combine;
    task.limits = std::move(interval->limits);
    return {};
}

Result<void> putAmount(upkeep::KitLine& line, std::string_view typed) {
    std::string_view text = base::trimmed(typed);
    const bool isPieces = line.unit == upkeep::Unit::Piece;
    if (isPieces)
        for (const std::string_view word : {"pieces", "piece", "pcs", "pc", "x"})
            if (cutBehind(text, word))
                break;
    const auto measured = units::parseMeasured(kFigure, text);
    if (!measured)
        return tl::unexpected(measured.error());
    const std::string_view own = line.unit == upkeep::Unit::Gram ? "g" : "ml";
    const bool isOwn = measured->unit == own;
    const bool isBare = measured->unit.empty();
    if ((isPieces && !isBare) || ((isBare || isOwn) && !isWhole(measured->value)))
        return refuse(Fault::WrongUnit, std::string(kFigure), std::string(text),
                      isPieces                          ? "2"
                      : line.unit == upkeep::Unit::Gram ? "20 g, 0.02 kg"
                                                        : "850 ml, 0.85 l");
    const auto amount =
        isBare || isOwn ? wholeAmount(measured->value, text) : convertedAmount(*measured, own, text);
    return amount.map([&](std::int64_t whole) { line.amount = whole; });
}

Result<void> putLimit(upkeep::MeasurePoint& point, std::string_view typed) {
    std::string_view text = base::trimmed(typed);
    const auto said = cutEnd(text);
    const auto range = rangeIn(text);
    if (range && !said) {
        const auto least = parseEnd(text.substr(0, range->first), point.unit);
        const auto most = parseEnd(text.substr(range->first + range->second), point.unit);
        if (!least || !most)
            return tl::unexpected(least ? most.error() : least.error());
        if (*most < *least)
            return refuse(Fault::OutOfOrder, std::string(kFigure), most->text(), least->text());
        // Between two printed limits the limits themselves are good, unless it was said otherwise; a single
        // one is a wear limit.
        if (!point.least || !point.most)
            point.leastGood = point.mostGood = true;
        point.least = *least;
        point.most = *most;
        return {};
    }
    const auto value = parseEnd(text, point.unit);
    if (!value)
        return tl::unexpected(value.error());
    if (!said && point.least.has_value() == point.most.has_value())
        return refuse(Fault::Malformed, std::string(kFigure), std::string(text),
                      "max 0.80, min 1.0 or 0.10 to 0.15");
    const bool isMost = said ? *said == End::Most : point.most.has_value();
    if (point.least.has_value() == isMost || point.most.has_value() != isMost)
        point.leastGood = point.mostGood = false;
    point.most = isMost ? std::optional(*value) : std::nullopt;
    point.least = isMost ? std::nullopt : std::optional(*value);
    return {};
}

Result<void> putTorque(fastening::JointVersion& joint, std::string_view typed) {
    const auto range = units::parseTorqueRange(kFigure, typed);
    if (!range)
        return tl::unexpected(range.error());
    const fastening::JointVersion stood = joint;
    joint.torque = range->low;
    joint.torqueHigh = range->high;
    joint.unit = range->unit.value_or(joint.unit);
    auto stages = fastening::stagesAfter(stood, joint);
    if (!stages)
        return tl::unexpected(stages.error());
    joint.stages = std::move(*stages);
    return {};
}

}  // namespace wm::definitions

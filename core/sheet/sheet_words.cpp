// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sheet/sheet_words.h"

#include <fmt/format.h>

#include <array>

#include "core/base/text.h"

namespace wm::sheet {

using base::phrase;

namespace {

constexpr std::array<std::string_view, 12> kMonths{"Jan", "Feb", "Mar", "Apr", "May", "Jun",
                                                   "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"};
constexpr std::array<std::string_view, 7> kDays{"Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"};

// Each ending is a text of its own: a language without them translates all four alike.
std::string ordinal(std::int64_t n, const Speech& speech) {
    const std::int64_t teens = n % 100;
    const bool plain = teens >= 11 && teens <= 13;
    const std::string number = std::to_string(n);
    if (plain || n % 10 > 3 || n % 10 == 0)
        return speech(phrase("Sheet", "%1th").arg(number));
    if (n % 10 == 1)
        return speech(phrase("Sheet", "%1st").arg(number));
    return speech(n % 10 == 2 ? phrase("Sheet", "%1nd").arg(number) : phrase("Sheet", "%1rd").arg(number));
}

std::string_view unitText(upkeep::Unit unit) {
    return unit == upkeep::Unit::Millilitre ? " ml" : unit == upkeep::Unit::Gram ? " g" : "";
}

}  // namespace

std::string dateText(calendar::Date date, const Speech& speech) {
    if (speech.day)
        return speech.day(date, false);
    return fmt::format("{} {} {}", date.day(), kMonths.at(static_cast<std::size_t>(date.month() - 1)),
                       date.year());
}

std::string dayText(calendar::Date date, const Speech& speech) {
    if (speech.day)
        return speech.day(date, true);
    return fmt::format("{} {}", kDays.at(static_cast<std::size_t>(date.isoWeekday() - 1)), dateText(date));
}

std::string amountText(std::int64_t amount, upkeep::Unit unit) {
    return fmt::format("{}{}", amount, unitText(unit));
}

std::string hoursWithUnit(units::Hours hours, char mark) {
    return units::hoursText(hours, mark) + " h";
}

std::string bracketText(const usage::HoursBracket& hours, const Speech& speech) {
    const std::string best = hoursWithUnit(hours.best, speech.mark);
    if (hours.isExact())
        return best;
    if (!hours.high && hours.low == hours.best)
        return speech(phrase("Sheet", "at least %1").arg(best));
    if (!hours.high)
        return speech(
            phrase("Sheet", "at least %1, likely %2").arg(hoursWithUnit(hours.low, speech.mark)).arg(best));
    return speech(phrase("Sheet", "%1 to %2, likely %3")
                      .arg(units::hoursText(hours.low, speech.mark))
                      .arg(hoursWithUnit(*hours.high, speech.mark))
                      .arg(best));
}

std::string torqueText(const fastening::JointVersion& joint, const Speech& speech) {
    if (!joint.torque)
        return {};
    const std::string unit(base::nameOf(joint.unit));
    if (!joint.torqueHigh)
        return joint.torque->text(speech.mark) + " " + unit;
    return speech(phrase("Sheet", "%1 to %2 %3")
                      .arg(joint.torque->text(speech.mark))
                      .arg(joint.torqueHigh->text(speech.mark))
                      .arg(unit));
}

std::string limitText(const upkeep::MeasurePoint& point, const Speech& speech) {
    const auto withUnit = [&](const units::Decimal& value) {
        return value.text(speech.mark) + (point.unit.empty() ? "" : " " + point.unit);
    };
    if (point.least && point.most)
        return speech(
            phrase("Sheet", "%1 to %2").arg(point.least->text(speech.mark)).arg(withUnit(*point.most)));
    if (point.least)
        return speech(phrase("Sheet", "at least %1").arg(withUnit(*point.least)));
    if (point.most)
        return speech(phrase("Sheet", "at most %1").arg(withUnit(*point.most)));
    return {};
}

std::string orderText(const fastening::JointVersion& joint, const Speech& speech) {
    std::string order;
    switch (joint.sequence) {
        case fastening::Sequence::Any:
        case fastening::Sequence::Listed:
            break;
        case fastening::Sequence::CrissCross:
            order = speech(phrase("Sheet", "criss-cross, from the middle out"));
            break;
        case fastening::Sequence::Spiral:
            order = speech(phrase("Sheet", "spiral, from the middle out"));
            break;
        case fastening::Sequence::EveryNth:
            order = joint.sequenceStep > 1
                        ? speech(phrase("Sheet", "every %1 one, lap after lap, small turns")
                                     .arg(ordinal(joint.sequenceStep, speech)))
                        : speech(phrase("Sheet", "lap after lap, small turns"));
            break;
    }
    if (!joint.sequenceNote.empty())
        order += (order.empty() ? "" : ". ") + joint.sequenceNote;
    return order;
}

std::string renewText(std::string_view renew, const Speech& speech) {
    if (renew.empty())
        return {};
    const std::string typed = base::lowered(renew);
    // "gasket if torn" is not renewed each time.
    const bool hasTerms =
        typed.find(" if ") != std::string::npos || typed.find(" where ") != std::string::npos;
    const bool saysSo = hasTerms || typed.starts_with("new ") || typed.ends_with("each time");
    return saysSo ? std::string(renew) : speech(phrase("Sheet", "new each time: %1").arg(std::string(renew)));
}

std::string whenText(const upkeep::FollowUpRule& rule, const Speech& speech) {
    switch (rule.when) {
        case upkeep::When::AtOnce:
            return speech(phrase("Sheet", "before it is ridden"));
        case upkeep::When::NextOuting:
            return speech(phrase("Sheet", "after the next outing"));
        case upkeep::When::AfterHours:
            return speech(
                phrase("Sheet", "after %1").arg(hoursWithUnit(units::Hours{rule.amount}, speech.mark)));
        case upkeep::When::AfterDays:
            return speech(phrase("Sheet", "after %n day(s)", nullptr, rule.amount));
    }
    return {};
}

std::string sourceText(const std::string& source, const std::string& page, const Speech& speech) {
    if (page.empty())
        return source;
    return source.empty() ? speech(phrase("Sheet", "p. %1").arg(page))
                          : speech(phrase("Sheet", "%1 p. %2").arg(source).arg(page));
}

std::string inNewtonMetresText(const fastening::JointVersion& joint, const Speech& speech) {
    constexpr auto kNewtonMetre = units::TorqueUnit::NewtonMetre;
    if (!joint.torque || joint.unit == kNewtonMetre)
        return {};
    const std::string low = units::convertedTorqueText(*joint.torque, joint.unit, kNewtonMetre, speech.mark);
    if (!joint.torqueHigh)
        return low + " N·m";
    return speech(
        phrase("Sheet", "%1 to %2 %3")
            .arg(low)
            .arg(units::convertedTorqueText(*joint.torqueHigh, joint.unit, kNewtonMetre, speech.mark))
            .arg("N·m"));
}

}  // namespace wm::sheet

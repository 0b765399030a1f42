// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sheet/sheet_words.h"

#include <fmt/format.h>

#include <array>

#include "core/base/text.h"

namespace wm::sheet {

namespace {

constexpr std::array<std::string_view, 12> kMonths{"Jan", "Feb", "Mar", "Apr", "May", "Jun",
                                                   "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"};
constexpr std::array<std::string_view, 7> kDays{"Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"};

std::string ordinal(std::int64_t n) {
    const std::int64_t teens = n % 100;
    const bool plain = teens >= 11 && teens <= 13;
    const char* ending = plain || n % 10 > 3 || n % 10 == 0 ? "th"
                         : n % 10 == 1                      ? "st"
                         : n % 10 == 2                      ? "nd"
                                                            : "rd";
    return std::to_string(n) + ending;
}

std::string_view unitText(upkeep::Unit unit) {
    return unit == upkeep::Unit::Millilitre ? " ml" : unit == upkeep::Unit::Gram ? " g" : "";
}

}  // namespace

std::string dateText(calendar::Date date) {
    return fmt::format("{} {} {}", date.day(), kMonths.at(static_cast<std::size_t>(date.month() - 1)),
                       date.year());
}

std::string dayText(calendar::Date date) {
    return fmt::format("{} {}", kDays.at(static_cast<std::size_t>(date.isoWeekday() - 1)), dateText(date));
}

std::string amountText(std::int64_t amount, upkeep::Unit unit) {
    return fmt::format("{}{}", amount, unitText(unit));
}

std::string hoursWithUnit(units::Hours hours, char mark) {
    return units::hoursText(hours, mark) + " h";
}

std::string bracketText(const usage::HoursBracket& hours, char mark) {
    if (hours.isExact())
        return hoursWithUnit(hours.best, mark);
    const std::string likely = "likely " + hoursWithUnit(hours.best, mark);
    if (!hours.high)
        return fmt::format("at least {}, {}", hoursWithUnit(hours.low, mark), likely);
    return fmt::format("{} to {}, {}", units::hoursText(hours.low, mark), hoursWithUnit(*hours.high, mark),
                       likely);
}

std::string torqueText(const fastening::JointVersion& joint, char mark) {
    if (!joint.torque)
        return {};
    const std::string_view unit = base::nameOf(joint.unit);
    if (joint.torqueHigh)
        return fmt::format("{} to {} {}", joint.torque->text(mark), joint.torqueHigh->text(mark), unit);
    return fmt::format("{} {}", joint.torque->text(mark), unit);
}

std::string limitText(const upkeep::MeasurePoint& point, char mark) {
    const std::string unit = point.unit.empty() ? "" : " " + point.unit;
    if (point.least && point.most)
        return fmt::format("{} to {}{}", point.least->text(mark), point.most->text(mark), unit);
    if (point.least)
        return fmt::format("at least {}{}", point.least->text(mark), unit);
    if (point.most)
        return fmt::format("at most {}{}", point.most->text(mark), unit);
    return {};
}

std::string orderText(const fastening::JointVersion& joint) {
    std::string order;
    switch (joint.sequence) {
        case fastening::Sequence::Any:
        case fastening::Sequence::Listed:
            break;
        case fastening::Sequence::CrissCross:
            order = "criss-cross, from the middle out";
            break;
        case fastening::Sequence::Spiral:
            order = "spiral, from the middle out";
            break;
        case fastening::Sequence::EveryNth:
            order = joint.sequenceStep > 1
                        ? fmt::format("every {} one, lap after lap, small turns", ordinal(joint.sequenceStep))
                        : "lap after lap, small turns";
            break;
    }
    if (!joint.sequenceNote.empty())
        order += (order.empty() ? "" : ". ") + joint.sequenceNote;
    return order;
}

std::string renewText(std::string_view renew) {
    if (renew.empty())
        return {};
    const std::string typed = base::lowered(renew);
    // "gasket if torn" is not renewed each time.
    const bool hasTerms =
        typed.find(" if ") != std::string::npos || typed.find(" where ") != std::string::npos;
    const bool saysSo = hasTerms || typed.starts_with("new ") || typed.ends_with("each time");
    return (saysSo ? "" : "new each time: ") + std::string(renew);
}

std::string whenText(const upkeep::FollowUpRule& rule, char mark) {
    switch (rule.when) {
        case upkeep::When::AtOnce:
            return "before it is ridden";
        case upkeep::When::NextOuting:
            return "after the next outing";
        case upkeep::When::AfterHours:
            return "after " + hoursWithUnit(units::Hours{rule.amount}, mark);
        case upkeep::When::AfterDays:
            return rule.amount == 1 ? "after 1 day" : fmt::format("after {} days", rule.amount);
    }
    return {};
}

std::string sourceText(const std::string& source, const std::string& page) {
    if (page.empty())
        return source;
    return source.empty() ? "p. " + page : source + " p. " + page;
}

std::string inNewtonMetresText(const fastening::JointVersion& joint, char mark) {
    constexpr auto kNewtonMetre = units::TorqueUnit::NewtonMetre;
    if (!joint.torque || joint.unit == kNewtonMetre)
        return {};
    const std::string low = units::convertedTorqueText(*joint.torque, joint.unit, kNewtonMetre, mark);
    if (!joint.torqueHigh)
        return low + " N·m";
    return fmt::format("{} to {} N·m", low,
                       units::convertedTorqueText(*joint.torqueHigh, joint.unit, kNewtonMetre, mark));
}

}  // namespace wm::sheet

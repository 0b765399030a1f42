// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/fastening/drawer.h"

#include <algorithm>
#include <cmath>
#include <tuple>

#include "core/units/convert.h"

namespace wm::fastening {

namespace {

constexpr double kBottomFifth = 0.2;
constexpr double kBestShare = 0.6;  // the middle of the three points at which ISO 6789 checks: 20, 60, 100 %
constexpr double kRounding = 1e-9;  // of a conversion there and back

bool isClose(ToolType type) {
    switch (type) {
        case ToolType::IB:
        case ToolType::IC:
        case ToolType::IE:
        case ToolType::IIA:
        case ToolType::IIB:
        case ToolType::IIC:
            return true;
        case ToolType::Unstated:
        case ToolType::IA:
        case ToolType::ID:
        case ToolType::IID:
        case ToolType::IIE:
        case ToolType::IIF:
        case ToolType::IIG:
            break;
    }
    return false;
}

auto momentOf(const auto& fact) {
    return std::pair(fact.date, fact.entered);
}

const Calibration* lastOf(const Tool& tool, std::span<const Calibration> calibrations, calendar::Date on) {
    const Calibration* last = nullptr;
    for (const Calibration& each : calibrations)
        if (each.tool == tool.id && each.date <= on && (last == nullptr || momentOf(*last) < momentOf(each)))
            last = &each;
    return last;
}

// The certificate's own word, else the tool's, else that of the standard; halved after a failure.
std::int64_t intervalOf(const std::optional<std::int64_t>& certified, const std::optional<std::int64_t>& own,
                        std::int64_t standard, bool failed) {
    if (certified)
        return *certified;
    const std::int64_t usual = own.value_or(standard);
    return failed ? std::max<std::int64_t>(1, usual / 2) : usual;
}

bool isBetweenSteps(const Tool& tool, double aim) {
    if (!tool.resolution)
        return false;
    const double step = inNewtonMetres(*tool.resolution, tool.unit);
    const double low = inNewtonMetres(tool.low, tool.unit);
    const double steps = (aim - low) / step;
    return std::abs(steps - std::round(steps)) * step > 0.01 * aim;  // a hundredth is no matter
}

// A tool that is due for its check was right once; of one that never was checked nobody knows.
int trustOf(ToolState state) {
    switch (state) {
        case ToolState::InHand:
            return 0;
        case ToolState::DueByDate:
        case ToolState::DueByCycles:
            return 1;
        case ToolState::Unknown:
        case ToolState::Out:
            break;
    }
    return 2;
}

}  // namespace

std::optional<double> permittedPercent(const Tool& tool) {
    if (tool.type == ToolType::Unstated)
        return std::nullopt;
    const bool big = inNewtonMetres(tool.high, tool.unit) > 10 * (1 + kRounding);
    return isClose(tool.type) && big ? 4.0 : 6.0;
}

bool permittedFromMemory(const Tool& tool) {
    return tool.type != ToolType::Unstated && tool.type != ToolType::IIA;
}

double inNewtonMetres(const units::Decimal& value, units::TorqueUnit unit) {
    return units::convert(value.toDouble(), base::nameOf(unit), "N·m").value();
}

ToolStanding standingOf(const Tool& tool, std::span<const Calibration> calibrations,
                        std::span<const JointMark> marks, const CyclesOf& cyclesOf, calendar::Date on) {
    ToolStanding standing;
    standing.last = lastOf(tool, calibrations, on);
    const Calibration* last = standing.last;
    for (const JointMark& mark : marks)
        if (mark.tool == tool.id && mark.date <= on && (last == nullptr || momentOf(*last) < momentOf(mark)))
            standing.cycles += cyclesOf(mark);
    const bool failed = last != nullptr && !last->foundWithin;
    standing.cyclesAllowed =
        intervalOf(last == nullptr ? std::nullopt : last->cycles, tool.cycles, kCyclesBetween, failed);
    if (last == nullptr)
        return standing;
    standing.nextOn = last->date.plusMonths(
        static_cast<int>(intervalOf(last->months, tool.months, kMonthsBetween, failed)));
    if (!last->leftWithin)
        standing.state = ToolState::Out;
    else if (on >= *standing.nextOn)
        standing.state = ToolState::DueByDate;
    else if (standing.cycles >= standing.cyclesAllowed)
        standing.state = ToolState::DueByCycles;
    else
        standing.state = ToolState::InHand;
    return standing;
}

Fit fitOf(const Tool& tool, const units::Decimal& aim, units::TorqueUnit unit) {
    const double wanted = inNewtonMetres(aim, unit);
    const double high = inNewtonMetres(tool.high, tool.unit);
    const double low = inNewtonMetres(tool.low, tool.unit);
    Fit fit;
    fit.share = wanted / high;
    if (wanted < low * (1 - kRounding) || wanted > high * (1 + kRounding))
        return fit;
    fit.bottomFifth = fit.share < kBottomFifth * (1 - kRounding);
    fit.betweenSteps = isBetweenSteps(tool, wanted);
    fit.reach = fit.bottomFifth || fit.betweenSteps ? Reach::Edge : Reach::Serves;
    return fit;
}

std::vector<Choice> toolsFor(const units::Decimal& aim, units::TorqueUnit unit,
                             std::span<const Choice> drawer) {
    std::vector<Choice> choices;
    for (Choice choice : drawer) {
        if (!choice.tool->active || choice.standing.state == ToolState::Out)
            continue;
        choice.fit = fitOf(*choice.tool, aim, unit);
        choices.push_back(choice);
    }
    const auto key = [](const Choice& choice) {
        return std::tuple(choice.fit.reach, trustOf(choice.standing.state),
                          permittedPercent(*choice.tool).value_or(100.0),
                          std::abs(choice.fit.share - kBestShare), choice.tool->id);
    };
    std::sort(choices.begin(), choices.end(), [&](const auto& a, const auto& b) { return key(a) < key(b); });
    return choices;
}

units::Decimal aimOf(const units::Decimal& low, const std::optional<units::Decimal>& high) {
    if (!high)
        return low;
    const int places = std::max(low.places(), high->places());
    const std::int64_t sum = low.scaledTo(places) + high->scaledTo(places);
    if (sum % 2 == 0)
        return {sum / 2, places};
    return {sum * 5, places + 1};
}

}  // namespace wm::fastening

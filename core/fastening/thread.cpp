// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/fastening/thread.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <optional>

#include <fmt/format.h>

#include "core/base/text.h"
#include "core/units/decimal.h"

namespace wm::fastening {

using base::Fault;
using base::refuse;

namespace {

struct Size {
    double diameter;
    double coarse;  ///< 0: this diameter has fine pitches alone
};

// ISO 261, table 2, with the in-between diameters that steering stems and bearing nuts have; from memory, the
// coarse pitches agree with the reference cases.
constexpr std::array kSizes{
    Size{1.6, 0.35}, Size{2, 0.4},   Size{2.5, 0.45}, Size{3, 0.5},  Size{3.5, 0.6}, Size{4, 0.7},
    Size{5, 0.8},    Size{6, 1},     Size{7, 1},      Size{8, 1.25}, Size{9, 1.25},  Size{10, 1.5},
    Size{11, 1.5},   Size{12, 1.75}, Size{14, 2},     Size{15, 0},   Size{16, 2},    Size{17, 0},
    Size{18, 2.5},   Size{20, 2.5},  Size{22, 2.5},   Size{24, 3},   Size{25, 0},    Size{26, 0},
    Size{27, 3},     Size{28, 0},    Size{30, 3.5},   Size{32, 0},   Size{33, 3.5},  Size{35, 0},
    Size{36, 4},     Size{38, 0},    Size{39, 4},     Size{40, 0},   Size{42, 4.5},  Size{45, 4.5},
    Size{48, 5},     Size{50, 0},    Size{52, 5},     Size{55, 0},   Size{56, 5.5},  Size{58, 0},
    Size{60, 5.5},   Size{62, 0},    Size{64, 6},
};
constexpr std::array kPitches{0.2,  0.25, 0.3,  0.35, 0.4, 0.45, 0.5, 0.6, 0.7, 0.75, 0.8, 1.0,
                              1.25, 1.5,  1.75, 2.0,  2.5, 3.0,  3.5, 4.0, 4.5, 5.0,  5.5, 6.0};
constexpr double kMostFine = 3;  // of a diameter without a coarse pitch

struct Class {
    std::string_view name;
    double stress;
};

// Sp,nom of ISO 898-1:2013 table 3, as in tests/reference/torque.json F19.
constexpr std::array kClasses{Class{"4.6", 225}, Class{"4.8", 310},  Class{"5.6", 280},
                              Class{"5.8", 380}, Class{"6.8", 440},  Class{"8.8", 580},
                              Class{"9.8", 650}, Class{"10.9", 830}, Class{"12.9", 970}};
constexpr double kThick = 16;  // mm; above it an 8.8 is tempered to 600
constexpr double kThickStress = 600;

double triangleHeight(double pitch) {
    return std::numbers::sqrt3 / 2 * pitch;
}

const Size* sizeOf(double diameter) {
    const auto found = std::find_if(kSizes.begin(), kSizes.end(), [&](const Size& size) {
        return std::abs(size.diameter - diameter) < 1e-9;
    });
    return found == kSizes.end() ? nullptr : &*found;
}

bool isMade(const Size& size, double pitch) {
    const bool standard = std::any_of(kPitches.begin(), kPitches.end(),
                                      [&](double each) { return std::abs(each - pitch) < 1e-9; });
    return standard && pitch <= (size.coarse > 0 ? size.coarse : kMostFine);
}

// The decimals on both sides of the x; nothing for any other text.
struct Written {
    units::Decimal diameter{};
    std::optional<units::Decimal> pitch{};
};
std::optional<Written> readWritten(std::string_view text) {
    std::string plain = base::lowered(base::trimmed(text));
    for (auto at = plain.find("\xC3\x97"); at != std::string::npos; at = plain.find("\xC3\x97"))
        plain.replace(at, 2, "x");
    const bool named = !plain.empty() && plain.front() == 'm';
    const auto parts = base::split(std::string_view(plain).substr(named ? 1 : 0), 'x');
    if (parts.empty() || parts.size() > 2 || (!named && parts.size() < 2))
        return std::nullopt;
    const auto diameter = units::parseDecimal("thread", parts.front());
    if (!diameter)
        return std::nullopt;
    if (parts.size() == 1)
        return Written{*diameter, std::nullopt};
    const auto pitch = units::parseDecimal("thread", parts.back());
    if (!pitch)
        return std::nullopt;
    return Written{*diameter, *pitch};
}

}  // namespace

double Thread::pitchDiameter() const {
    return diameter - 0.75 * triangleHeight(pitch);
}

double Thread::minorDiameter() const {
    return diameter - 17.0 / 12.0 * triangleHeight(pitch);
}

double Thread::stressArea() const {
    const double mean = (pitchDiameter() + minorDiameter()) / 2;
    return std::numbers::pi / 4 * mean * mean;
}

double Thread::nominalStressArea() const {
    const double area = stressArea();
    if (!(area > 0))
        return 0;
    const double step = std::pow(10.0, std::floor(std::log10(area)) - 2);
    return std::round(area / step) * step;
}

base::Result<Thread> parseThread(std::string_view field, std::string_view text) {
    if (base::trimmed(text).empty())
        return refuse(Fault::Empty, std::string(field));
    const auto written = readWritten(text);
    if (!written)
        return refuse(Fault::Malformed, std::string(field), std::string(text), "M8x1.25");
    const Size* size = sizeOf(written->diameter.toDouble());
    if (size == nullptr)
        return refuse(Fault::Implausible, std::string(field), std::string(text));
    const double pitch = written->pitch ? written->pitch->toDouble() : size->coarse;
    if (!isMade(*size, pitch))
        return refuse(Fault::Implausible, std::string(field), std::string(text),
                      size->coarse > 0 ? threadText({size->diameter, size->coarse}) : std::string());
    return Thread{size->diameter, pitch};
}

std::string threadText(const Thread& thread) {
    return fmt::format("M{:g}x{:g}", thread.diameter, thread.pitch);
}

std::string propertyClasses() {
    std::string all;
    for (const Class& each : kClasses)
        all += (all.empty() ? "" : ", ") + std::string(each.name);
    return all;
}

base::Result<double> proofStress(std::string_view propertyClass, const Thread& thread) {
    const auto found = std::find_if(kClasses.begin(), kClasses.end(), [&](const Class& each) {
        return each.name == base::trimmed(propertyClass);
    });
    if (found == kClasses.end())
        return refuse(Fault::Unknown, "class", std::string(propertyClass), propertyClasses());
    return found->name == "8.8" && thread.diameter > kThick ? kThickStress : found->stress;
}

base::Result<double> proofLoad(std::string_view propertyClass, const Thread& thread) {
    return proofStress(propertyClass, thread).map([&](double stress) {
        return stress * thread.nominalStressArea();
    });
}

}  // namespace wm::fastening

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>

#include "core/base/ids.h"
#include "core/base/names.h"
#include "core/base/row.h"
#include "core/calendar/date.h"
#include "core/units/decimal.h"
#include "core/units/torque.h"

namespace wm::fastening {

/// Type and class of a hand torque tool as ISO 6789-1:2017 names them. Type I indicates: A bar, B dial or
/// scale in a rigid housing, C electronic, D screwdriver with scale, E electronic screwdriver. Type II is set
/// beforehand: A adjustable with scale or display, B of one fixed value, C adjustable without scale, D to F
/// the same as screwdrivers, G adjustable bar.
enum class ToolType : std::uint8_t { Unstated, IA, IB, IC, ID, IE, IIA, IIB, IIC, IID, IIE, IIF, IIG };

/// A torque tool of the drawer. Range and resolution as printed on it, in its own unit.
struct Tool {
    static constexpr std::string_view kTable = "tool";
    static constexpr base::RowKind kKind = base::RowKind::Editable;
    ToolId id{};
    std::string name{};
    std::string drive{};  ///< "1/4", "3/8", "1/2", "9 x 12"
    ToolType type = ToolType::Unstated;
    units::Decimal low{};
    units::Decimal high{};
    units::TorqueUnit unit = units::TorqueUnit::NewtonMetre;
    std::optional<units::Decimal> resolution{};  ///< the step of its scale or display
    std::optional<std::int64_t> length{};        ///< mm from the middle of the grip to the drive
    std::optional<std::int64_t> months{};        ///< an interval of one's own; nothing: that of ISO 6789
    std::optional<std::int64_t> cycles{};
    bool active = true;  ///< false: sold, broken, out of the drawer
    std::string note{};

    template <class Self, class Visit>
    static void fields(Self& self, Visit&& visit) {
        visit("id", self.id);
        visit("name", self.name);
        visit("drive", self.drive);
        visit("type", self.type);
        visit("low", self.low);
        visit("high", self.high);
        visit("unit", self.unit);
        visit("resolution", self.resolution);
        visit("length", self.length);
        visit("months", self.months);
        visit("cycles", self.cycles);
        visit("active", self.active);
        visit("note", self.note);
    }
    friend bool operator==(const Tool&, const Tool&) = default;
};

/// A tool held against a reference: how it was found, and how it was left (put right, or still out).
struct Calibration {
    static constexpr std::string_view kTable = "calibration";
    static constexpr base::RowKind kKind = base::RowKind::Fact;
    CalibrationId id{};
    base::Entered entered = 0;
    ToolId tool{};
    calendar::Date date{};
    bool foundWithin = true;                ///< within its tolerance as it came
    bool leftWithin = true;                 ///< within it as it left, adjusted if need be
    std::optional<units::Decimal> worst{};  ///< the largest deviation found, in percent, as certified
    std::string byWhom{};                   ///< laboratory, shop, own rig
    std::optional<std::int64_t> months{};   ///< until the next one, if the certificate names it
    std::optional<std::int64_t> cycles{};
    std::string note{};

    template <class Self, class Visit>
    static void fields(Self& self, Visit&& visit) {
        visit("id", self.id);
        visit("entered", self.entered);
        visit("tool", self.tool);
        visit("date", self.date);
        visit("found_within", self.foundWithin);
        visit("left_within", self.leftWithin);
        visit("worst", self.worst);
        visit("by_whom", self.byWhom);
        visit("months", self.months);
        visit("cycles", self.cycles);
        visit("note", self.note);
    }
    friend bool operator==(const Calibration&, const Calibration&) = default;
};

}  // namespace wm::fastening

namespace wm::base {
template <>
struct Names<fastening::ToolType> {
    static constexpr std::array<std::string_view, 13> names{"unstated", "I A",  "I B",  "I C",  "I D",
                                                            "I E",      "II A", "II B", "II C", "II D",
                                                            "II E",     "II F", "II G"};
};
}  // namespace wm::base

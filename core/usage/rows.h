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
#include "core/units/quantity.h"

namespace wm::usage {

/// What happened to the meter at this reading. Plain: it counted on since the last one. Replaced, Reset: the
/// old count ended at `before` (if known), the new one starts at `shown`. RolledOver: it passed `rolls_at`,
/// the figure that is its zero (1000.0 for a meter whose last figure is 999.9).
/// Stopped: it stands still from here on. Resumed: it counts again from `shown`; what was ridden between
/// Stopped and Resumed is known from notes alone.
enum class MeterEvent : std::uint8_t { Plain, Replaced, Reset, RolledOver, Stopped, Resumed };

/// What a meter showed. Unit is Hours (hour meter) or Metres (odometer). `outing` or `record` is the entry
/// that it was noted with, if any: when that is struck, the reading goes with it.
template <class Unit>
struct ReadingOf {
    static constexpr std::string_view kTable = std::is_same_v<Unit, units::Hours>
                                                   ? std::string_view("hour_reading")
                                                   : std::string_view("distance_reading");
    static constexpr base::RowKind kKind = base::RowKind::Fact;
    ReadingId id{};
    base::Entered entered = 0;
    MachineId machine{};
    calendar::Date date{};
    calendar::DayPart part = calendar::DayPart::AfterRiding;
    Unit shown{};
    MeterEvent event = MeterEvent::Plain;
    std::optional<Unit> before{};
    std::optional<Unit> rollsAt{};
    std::optional<OutingId> outing{};
    std::optional<RecordId> record{};
    std::string note{};

    template <class Self, class Visit>
    static void fields(Self& self, Visit&& visit) {
        visit("id", self.id);
        visit("entered", self.entered);
        visit("machine", self.machine);
        visit("date", self.date);
        visit("part", self.part);
        visit("shown", self.shown);
        visit("event", self.event);
        visit("before", self.before);
        visit("rolls_at", self.rollsAt);
        visit("outing", self.outing);
        visit("record", self.record);
        visit("note", self.note);
    }
    friend bool operator==(const ReadingOf&, const ReadingOf&) = default;
};
using HourReading = ReadingOf<units::Hours>;
using DistanceReading = ReadingOf<units::Metres>;

enum class OutingKind : std::uint8_t { Practice, Race, Other };
enum class Ground : std::uint8_t { Unstated, Hard, Dust, Sand, Mud, Water };
enum class Pace : std::uint8_t { Unstated, Race, Hard, Easy };

/// What riding adds up to in whole pieces; core/usage/atom.h says of each how.
enum class Piece : std::uint8_t { Outings, Starts, Washes, MudDays, Crashes, PressureWashes };

/// What an hour counts for a task on this ground at this pace; nothing = on any, at any. 1000 = as it is.
struct HourWeight {
    std::optional<Ground> ground{};
    std::optional<Pace> pace{};
    std::int64_t permille = 1000;

    template <class Self, class Visit>
    static void fields(Self& self, Visit&& visit) {
        visit("ground", self.ground);
        visit("pace", self.pace);
        visit("permille", self.permille);
    }
    friend bool operator==(const HourWeight&, const HourWeight&) = default;
};

/// One day's riding of one machine.
struct Outing {
    static constexpr std::string_view kTable = "outing";
    static constexpr base::RowKind kKind = base::RowKind::Fact;
    OutingId id{};
    base::Entered entered = 0;
    MachineId machine{};
    calendar::Date date{};
    std::optional<PersonId> rider{};
    std::optional<EventId> event{};
    OutingKind kind = OutingKind::Practice;
    std::optional<units::Hours> hours{};  ///< as noted; nothing if nobody noted it
    std::optional<units::Metres> distance{};
    std::int64_t starts = 0;
    Ground ground = Ground::Unstated;
    Pace pace = Pace::Unstated;
    std::string note{};

    template <class Self, class Visit>
    static void fields(Self& self, Visit&& visit) {
        visit("id", self.id);
        visit("entered", self.entered);
        visit("machine", self.machine);
        visit("date", self.date);
        visit("rider", self.rider);
        visit("event", self.event);
        visit("kind", self.kind);
        visit("hours", self.hours);
        visit("distance", self.distance);
        visit("starts", self.starts);
        visit("ground", self.ground);
        visit("pace", self.pace);
        visit("note", self.note);
    }
    friend bool operator==(const Outing&, const Outing&) = default;
};

struct Wash {
    static constexpr std::string_view kTable = "wash";
    static constexpr base::RowKind kKind = base::RowKind::Fact;
    WashId id{};
    base::Entered entered = 0;
    MachineId machine{};
    calendar::Date date{};
    bool pressure = false;             ///< with a pressure washer
    std::optional<OutingId> outing{};  ///< noted with it, and struck with it
    std::string note{};

    template <class Self, class Visit>
    static void fields(Self& self, Visit&& visit) {
        visit("id", self.id);
        visit("entered", self.entered);
        visit("machine", self.machine);
        visit("date", self.date);
        visit("pressure", self.pressure);
        visit("outing", self.outing);
        visit("note", self.note);
    }
    friend bool operator==(const Wash&, const Wash&) = default;
};

struct Crash {
    static constexpr std::string_view kTable = "crash";
    static constexpr base::RowKind kKind = base::RowKind::Fact;
    CrashId id{};
    base::Entered entered = 0;
    MachineId machine{};
    calendar::Date date{};
    std::optional<OutingId> outing{};  ///< noted with it, and struck with it
    std::string note{};

    template <class Self, class Visit>
    static void fields(Self& self, Visit&& visit) {
        visit("id", self.id);
        visit("entered", self.entered);
        visit("machine", self.machine);
        visit("date", self.date);
        visit("outing", self.outing);
        visit("note", self.note);
    }
    friend bool operator==(const Crash&, const Crash&) = default;
};

}  // namespace wm::usage

namespace wm::base {
template <>
struct Names<calendar::DayPart> {
    static constexpr std::array<std::string_view, 3> names{"before riding", "riding", "after riding"};
};
template <>
struct Names<usage::MeterEvent> {
    static constexpr std::array<std::string_view, 6> names{"plain",       "replaced", "reset",
                                                           "rolled over", "stopped",  "resumed"};
};
template <>
struct Names<usage::OutingKind> {
    static constexpr std::array<std::string_view, 3> names{"practice", "race", "other"};
};
template <>
struct Names<usage::Ground> {
    static constexpr std::array<std::string_view, 6> names{"unstated", "hard", "dust",
                                                           "sand",     "mud",  "water"};
};
template <>
struct Names<usage::Pace> {
    static constexpr std::array<std::string_view, 4> names{"unstated", "race", "hard", "easy"};
};
}  // namespace wm::base

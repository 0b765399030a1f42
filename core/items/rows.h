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

namespace wm::items {

struct Person {
    static constexpr std::string_view kTable = "person";
    static constexpr base::RowKind kKind = base::RowKind::Editable;
    PersonId id{};
    std::string name{};

    template <class Self, class Visit>
    static void fields(Self& self, Visit&& visit) {
        visit("id", self.id);
        visit("name", self.name);
    }
    friend bool operator==(const Person&, const Person&) = default;
};

/// A bike as a whole. What it had behind it on the day `since` is nothing if `startedNew`, else a bracket:
/// at least `pastLow`, likely `pastBest`, at most `pastHigh` hours (no high end: nobody knows).
struct Machine {
    static constexpr std::string_view kTable = "machine";
    static constexpr base::RowKind kKind = base::RowKind::Editable;
    MachineId id{};
    std::string name{};
    std::string maker{};
    std::string model{};
    std::optional<std::int64_t> year{};
    std::string starter{};  ///< name of the starter schedule that it was set up with, or empty
    calendar::Date since{};
    bool startedNew = false;
    units::Hours pastLow{};
    units::Hours pastBest{};
    std::optional<units::Hours> pastHigh{};
    bool meterCountsTransport = false;  ///< a vibration meter that also counts the trip in the van
    std::optional<calendar::Date> goneOn{};
    std::string note{};

    template <class Self, class Visit>
    static void fields(Self& self, Visit&& visit) {
        visit("id", self.id);
        visit("name", self.name);
        visit("maker", self.maker);
        visit("model", self.model);
        visit("year", self.year);
        visit("starter", self.starter);
        visit("since", self.since);
        visit("started_new", self.startedNew);
        visit("past_low", self.pastLow);
        visit("past_best", self.pastBest);
        visit("past_high", self.pastHigh);
        visit("meter_counts_transport", self.meterCountsTransport);
        visit("gone_on", self.goneOn);
        visit("note", self.note);
    }
    friend bool operator==(const Machine&, const Machine&) = default;
};

/// Anything tracked through its life. Its past before `since` as with Machine.
struct Item {
    static constexpr std::string_view kTable = "item";
    static constexpr base::RowKind kKind = base::RowKind::Editable;
    ItemId id{};
    std::string name{};
    std::string kind{};  ///< "engine", "wheel", "shock" ...: free words
    std::string maker{};
    std::string partNumber{};
    calendar::Date since{};
    bool startedNew = false;
    units::Hours pastLow{};
    units::Hours pastBest{};
    std::optional<units::Hours> pastHigh{};
    std::string note{};

    template <class Self, class Visit>
    static void fields(Self& self, Visit&& visit) {
        visit("id", self.id);
        visit("name", self.name);
        visit("kind", self.kind);
        visit("maker", self.maker);
        visit("part_number", self.partNumber);
        visit("since", self.since);
        visit("started_new", self.startedNew);
        visit("past_low", self.pastLow);
        visit("past_best", self.pastBest);
        visit("past_high", self.pastHigh);
        visit("note", self.note);
    }
    friend bool operator==(const Item&, const Item&) = default;
};

/// Fitted: to a position of a machine or of another item (exactly one of the two). Removed: on the shelf.
/// Away: at a workshop. Retired: scrapped or sold, for good.
enum class MoveKind : std::uint8_t { Fitted, Removed, Away, Retired };

/// How a move was told. Unasked: by an older file, from elsewhere, or of a day that was ridden since. Work:
/// it was taken off or put on then, so what holds it is loose. AsItWas: no work, it sat there or was off
/// already.
enum class Told : std::uint8_t { Unasked, Work, AsItWas };

/// Where an item went. From this moment on it is there, until its next move.
struct Move {
    static constexpr std::string_view kTable = "move";
    static constexpr base::RowKind kKind = base::RowKind::Fact;
    MoveId id{};
    base::Entered entered = 0;
    ItemId item{};
    calendar::Date date{};
    calendar::DayPart part = calendar::DayPart::AfterRiding;
    MoveKind kind = MoveKind::Fitted;
    std::optional<MachineId> machine{};
    std::optional<ItemId> parent{};
    std::string position{};  ///< "rear wheel", "engine", "piston"; empty unless Fitted
    std::string note{};      ///< of Away: at which workshop
    Told told = Told::Unasked;
    std::optional<calendar::Date> backOn{};  ///< of Away: the day that was promised
    std::optional<RecordId> record{};        ///< the job that sent it away; struck with it

    template <class Self, class Visit>
    static void fields(Self& self, Visit&& visit) {
        visit("id", self.id);
        visit("entered", self.entered);
        visit("item", self.item);
        visit("date", self.date);
        visit("part", self.part);
        visit("kind", self.kind);
        visit("machine", self.machine);
        visit("parent", self.parent);
        visit("position", self.position);
        visit("note", self.note);
        visit("told", self.told);
        visit("back_on", self.backOn);
        visit("record", self.record);
    }
    friend bool operator==(const Move&, const Move&) = default;
};

/// A setting as it was found or left: clickers, preload length, tyre pressure, gearing, jetting.
struct Setting {
    static constexpr std::string_view kTable = "setting";
    static constexpr base::RowKind kKind = base::RowKind::Fact;
    SettingId id{};
    base::Entered entered = 0;
    MachineId machine{};
    std::optional<ItemId> item{};
    calendar::Date date{};
    std::string name{};
    std::string value{};
    std::string note{};

    template <class Self, class Visit>
    static void fields(Self& self, Visit&& visit) {
        visit("id", self.id);
        visit("entered", self.entered);
        visit("machine", self.machine);
        visit("item", self.item);
        visit("date", self.date);
        visit("name", self.name);
        visit("value", self.value);
        visit("note", self.note);
    }
    friend bool operator==(const Setting&, const Setting&) = default;
};

}  // namespace wm::items

namespace wm::base {
template <>
struct Names<items::MoveKind> {
    static constexpr std::array<std::string_view, 4> names{"fitted", "removed", "away", "retired"};
};
template <>
struct Names<items::Told> {
    static constexpr std::array<std::string_view, 3> names{"unasked", "work", "as it was"};
};
}  // namespace wm::base

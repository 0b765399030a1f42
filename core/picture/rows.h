// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <tuple>
#include <variant>

#include "core/base/ids.h"
#include "core/base/row.h"
#include "core/calendar/date.h"
#include "core/fastening/rows.h"
#include "core/fastening/tool_rows.h"
#include "core/items/rows.h"
#include "core/outlook/rows.h"
#include "core/stock/rows.h"
#include "core/upkeep/rows.h"
#include "core/usage/rows.h"
#include "core/weekend/rows.h"

namespace wm::picture {

/// The one card about the file itself.
struct Garage {
    static constexpr std::string_view kTable = "garage";
    static constexpr base::RowKind kKind = base::RowKind::Editable;
    GarageId id{1};  ///< always 1
    std::string name{};
    std::optional<calendar::Date> pinnedToday{};  ///< a demo file stays on its day; the window shows it
    /// From a run until the engine is at room temperature again. From memory of the trade, no source.
    units::Minutes cool{240};

    template <class Self, class Visit>
    static void fields(Self& self, Visit&& visit) {
        visit("id", self.id);
        visit("name", self.name);
        visit("pinned_today", self.pinnedToday);
        visit("cool_minutes", self.cool);
    }
    friend bool operator==(const Garage&, const Garage&) = default;
};

/// A fact taken back, with the reason; the fact stays readable.
struct Strike {
    static constexpr std::string_view kTable = "strike";
    static constexpr base::RowKind kKind = base::RowKind::Fact;
    StrikeId id{};
    base::Entered entered = 0;
    std::int64_t fact = 0;  ///< the id of the fact; ids are unique over all tables
    calendar::Date date{};
    std::string reason{};

    template <class Self, class Visit>
    static void fields(Self& self, Visit&& visit) {
        visit("id", self.id);
        visit("entered", self.entered);
        visit("fact", self.fact);
        visit("date", self.date);
        visit("reason", self.reason);
    }
    friend bool operator==(const Strike&, const Strike&) = default;
};

/// Every row type, parents before children: the store creates and writes tables in this order.
template <template <class...> class Into>
using ForEachRow =
    Into<Garage, items::Person, items::Machine, items::Item, outlook::Event, items::Move, items::Setting,
         usage::Outing, usage::Wash, usage::Crash, stock::StockLine, stock::Lot, fastening::Tool,
         upkeep::TaskVersion, weekend::StepVersion, fastening::JointVersion, upkeep::Snag,
         weekend::IssuedSheet, upkeep::Record, usage::HourReading, usage::DistanceReading, upkeep::SnagEnd,
         upkeep::Deferral, upkeep::FollowUpAnswer, fastening::Calibration, fastening::JointMark,
         stock::StockOrder, stock::StockMove, weekend::WorkWindow, weekend::Pick, Strike>;

namespace detail {
template <class R, class... Rows>
constexpr std::size_t placeOf() {
    std::size_t place = 0;
    (void)((std::is_same_v<R, Rows> ? true : (++place, false)) || ...);
    return place;
}
template <class R>
struct PlaceIn {
    template <class... Rows>
    struct Table {
        static constexpr std::size_t value = placeOf<R, Rows...>();
        static constexpr std::size_t count = sizeof...(Rows);
    };
};
}  // namespace detail

/// The number of a row type in ForEachRow, from 0.
template <class R>
inline constexpr std::size_t kTableOf = ForEachRow<detail::PlaceIn<R>::template Table>::value;
inline constexpr std::size_t kTables = ForEachRow<detail::PlaceIn<Garage>::template Table>::count;

/// Any row; what a verb puts into the file.
using Row = ForEachRow<std::variant>;

}  // namespace wm::picture

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
#include "core/upkeep/task.h"

namespace wm::stock {

using upkeep::Unit;

/// A line of the shelf: one part or fluid, how it is counted and how it is sold.
struct StockLine {
    static constexpr std::string_view kTable = "stock_line";
    static constexpr base::RowKind kKind = base::RowKind::Editable;
    StockLineId id{};
    std::string name{};
    std::string partNumber{};
    std::string supersedes{};  ///< the part number that this one replaces
    std::string fits{};        ///< machines and years, in words
    Unit unit = Unit::Piece;
    std::int64_t packAmount = 1;  ///< pieces, millilitres or grams in one pack
    std::optional<units::Money> packPrice{};
    std::optional<std::int64_t> leadDays{};
    std::string place{};                       ///< where on the shelf
    std::int64_t keep = 0;                     ///< re-order when fewer than this are left
    std::optional<std::int64_t> openedDays{};  ///< how long an opened container is good
    bool active = true;
    std::string note{};

    template <class Self, class Visit>
    static void fields(Self& self, Visit&& visit) {
        visit("id", self.id);
        visit("name", self.name);
        visit("part_number", self.partNumber);
        visit("supersedes", self.supersedes);
        visit("fits", self.fits);
        visit("unit", self.unit);
        visit("pack_amount", self.packAmount);
        visit("pack_price", self.packPrice);
        visit("lead_days", self.leadDays);
        visit("place", self.place);
        visit("keep", self.keep);
        visit("opened_days", self.openedDays);
        visit("active", self.active);
        visit("note", self.note);
    }
    friend bool operator==(const StockLine&, const StockLine&) = default;
};

/// A batch or container of a line: a bottle with the day it was opened and its best-before date.
struct Lot {
    static constexpr std::string_view kTable = "lot";
    static constexpr base::RowKind kKind = base::RowKind::Editable;
    LotId id{};
    StockLineId line{};
    std::string label{};
    calendar::Date received{};
    std::optional<calendar::Date> opened{};
    std::optional<calendar::Date> bestBefore{};

    template <class Self, class Visit>
    static void fields(Self& self, Visit&& visit) {
        visit("id", self.id);
        visit("line", self.line);
        visit("label", self.label);
        visit("received", self.received);
        visit("opened", self.opened);
        visit("best_before", self.bestBefore);
    }
    friend bool operator==(const Lot&, const Lot&) = default;
};

/// Counted: the difference that a stock-take found.
enum class StockWhy : std::uint8_t { Bought, Used, Counted, Lost };

struct StockMove {
    static constexpr std::string_view kTable = "stock_move";
    static constexpr base::RowKind kKind = base::RowKind::Fact;
    StockMoveId id{};
    base::Entered entered = 0;
    StockLineId line{};
    std::optional<LotId> lot{};
    calendar::Date date{};
    std::int64_t amount = 0;  ///< into the shelf is positive, out is negative
    StockWhy why = StockWhy::Used;
    std::optional<RecordId> record{};
    std::optional<StockOrderId> order{};
    std::optional<units::Money> price{};
    std::string note{};

    template <class Self, class Visit>
    static void fields(Self& self, Visit&& visit) {
        visit("id", self.id);
        visit("entered", self.entered);
        visit("line", self.line);
        visit("lot", self.lot);
        visit("date", self.date);
        visit("amount", self.amount);
        visit("why", self.why);
        visit("record", self.record);
        visit("stock_order", self.order);
        visit("price", self.price);
        visit("note", self.note);
    }
    friend bool operator==(const StockMove&, const StockMove&) = default;
};

/// Ordered, not yet here. Moves that name the order bring it in.
struct StockOrder {
    static constexpr std::string_view kTable = "stock_order";
    static constexpr base::RowKind kKind = base::RowKind::Fact;
    StockOrderId id{};
    base::Entered entered = 0;
    StockLineId line{};
    calendar::Date date{};
    std::int64_t amount = 0;
    std::optional<calendar::Date> expected{};
    std::string note{};

    template <class Self, class Visit>
    static void fields(Self& self, Visit&& visit) {
        visit("id", self.id);
        visit("entered", self.entered);
        visit("line", self.line);
        visit("date", self.date);
        visit("amount", self.amount);
        visit("expected", self.expected);
        visit("note", self.note);
    }
    friend bool operator==(const StockOrder&, const StockOrder&) = default;
};

}  // namespace wm::stock

namespace wm::base {
template <>
struct Names<stock::StockWhy> {
    static constexpr std::array<std::string_view, 4> names{"bought", "used", "counted", "lost"};
};
}  // namespace wm::base

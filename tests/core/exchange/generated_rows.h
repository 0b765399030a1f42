// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <rapidcheck.h>

#include <limits>
#include <string>
#include <vector>

#include "core/exchange/row_json.h"
#include "core/picture/rows.h"

// Rows whose every field is drawn at random within what the exchange text takes. They fit together in no
// other way: references point anywhere.
namespace wm::test {

class RowDrawer {
  public:
    template <class R>
    R draw() {
        R row{};
        fill(row);
        if constexpr (requires { row.entered; })
            row.entered = entered_++;
        if constexpr (std::is_same_v<R, picture::Garage>)
            row.id = GarageId{1};
        else
            row.id = decltype(row.id){nextId_ += *rc::gen::inRange<std::int64_t>(1, 1'000'000'000'000)};
        return row;
    }

  private:
    template <exchange::HasFields T>
    static void fill(T& row) {
        T::fields(row, [](std::string_view /*name*/, auto& member) { put(member); });
    }

    static void put(bool& value) { value = *rc::gen::arbitrary<bool>(); }
    static void put(std::int64_t& value) {
        value = *rc::gen::inRange<std::int64_t>(1, exchange::kMostCount + 1);
    }
    static void put(std::string& value) {
        static const std::vector<std::string> kPieces{"chain",
                                                      " ",
                                                      "\"",
                                                      "\\",
                                                      "<b>",
                                                      "&amp;",
                                                      "'; --",
                                                      "\n",
                                                      "\xC3\xA9",
                                                      "=1+1",
                                                      "{\"a\":1}",
                                                      "\xE2\x80\x9C",
                                                      "\x7E",
                                                      "../",
                                                      "%s",
                                                      "\xEF\xBB\xBF",
                                                      "\xF0\x9F\x94\xA7",
                                                      "0"};
        value.clear();
        for (const std::string& piece :
             *rc::gen::resize(6, rc::gen::container<std::vector<std::string>>(rc::gen::elementOf(kPieces))))
            value += piece;
    }
    static void put(calendar::Date& value) {
        value = calendar::Date{
            *rc::gen::inRange<std::int32_t>(calendar::makeDate(1900, 1, 1)->daysSinceEpoch(),
                                            calendar::makeDate(2199, 12, 31)->daysSinceEpoch() + 1)};
    }
    static void put(units::Decimal& value) {
        const int places = *rc::gen::inRange(0, units::kMostPlaces + 1);
        value = units::Decimal{*rc::gen::inRange<std::int64_t>(-units::kMostDigits, units::kMostDigits + 1),
                               places};
    }
    template <class Tag>
    static void put(base::Id<Tag>& value) {
        value = base::Id<Tag>{*rc::gen::inRange<std::int64_t>(1, std::numeric_limits<std::int64_t>::max())};
    }
    template <class Tag>
    static void put(units::Quantity<Tag>& value) {
        value = units::Quantity<Tag>{
            *rc::gen::inRange<std::int64_t>(-exchange::kMostQuantity, exchange::kMostQuantity + 1)};
    }
    template <base::Named E>
    static void put(E& value) {
        value = static_cast<E>(*rc::gen::inRange<std::size_t>(0, base::Names<E>::names.size()));
    }
    template <class T>
    static void put(std::optional<T>& value) {
        if (*rc::gen::arbitrary<bool>())
            put(value.emplace());
    }
    template <exchange::HasFields T>
    static void put(std::vector<T>& children) {
        const auto count = *rc::gen::inRange<std::size_t>(0, 3);
        for (std::size_t i = 0; i < count; ++i)
            fill(children.emplace_back());
    }

    std::int64_t nextId_ = 1;
    base::Entered entered_ = 1;
};

template <class... Rows>
struct DrawAll {
    /// Two rows of every type (one garage), and a strike of one outing.
    static std::vector<picture::Row> rows() {
        RowDrawer drawer;
        std::vector<picture::Row> all;
        (all.emplace_back(drawer.draw<Rows>()), ...);
        (all.emplace_back(drawer.draw<Rows>()), ...);
        std::erase_if(all, [first = true](const picture::Row& row) mutable {
            return std::holds_alternative<picture::Garage>(row) && !std::exchange(first, false);
        });
        std::int64_t outing = 0;
        for (const picture::Row& row : all)
            if (const auto* found = std::get_if<usage::Outing>(&row))
                outing = found->id.value();
        std::get<picture::Strike>(all.back()).fact = outing;
        return all;
    }
};

inline std::vector<picture::Row> drawRows() {
    return picture::ForEachRow<DrawAll>::rows();
}

}  // namespace wm::test

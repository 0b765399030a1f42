// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <tuple>
#include <unordered_map>
#include <utility>
#include <variant>
#include <vector>

#include "core/base/result.h"
#include "core/ledger/rows.h"

namespace wm::ledger {

/// What one verb does to the file: rows to write, and the words under which undo offers to take it back.
/// Facts and versions are added, editable rows replace the row of the same id.
struct Change {
    std::string text;
    std::vector<Row> rows;
};

namespace detail {
template <class... Rows>
using Tables = std::tuple<std::vector<Rows>...>;
}

/// One immutable picture of a whole file. Facts that were struck stand apart, so that no figure can count
/// them by accident. Within a table, facts and versions stand in order of entry, editable rows in order of
/// id.
class Ledger {
  public:
    Ledger() = default;
    /// The picture that results from `rows` (in any order). Strikes take their facts out of `all`.
    explicit Ledger(std::vector<Row> rows);

    /// All rows of a type that count: struck facts left out.
    template <class R>
    [[nodiscard]] const std::vector<R>& all() const {
        return std::get<std::vector<R>>(live_);
    }
    /// The facts of a type that were struck; shown in histories, counted nowhere.
    template <class R>
    [[nodiscard]] const std::vector<R>& struck() const {
        return std::get<std::vector<R>>(struck_);
    }
    /// The row with this id, struck or not, or nullptr.
    template <class R, class IdType>
    [[nodiscard]] const R* find(IdType id) const {
        static_assert(std::is_same_v<IdType, decltype(R::id)>);
        const auto& where = index_[kTableOf<R>];
        const auto at = where.find(id.value());
        if (at == where.end())
            return nullptr;
        const Place place = at->second;
        return place.isStruck ? &struck<R>()[place.at] : &all<R>()[place.at];
    }
    /// Why a fact was struck, or nullptr if it stands.
    [[nodiscard]] const Strike* strikeOf(std::int64_t fact) const;
    /// True if any row has this id; ids are unique over all tables.
    [[nodiscard]] bool knows(std::int64_t id) const;

    /// The number that the next fact gets.
    [[nodiscard]] base::Entered nextEntered() const { return lastEntered_ + 1; }
    [[nodiscard]] const Garage& garage() const;

    /// This picture after `change`. The change must come from a verb on this picture. The second form gives
    /// up this picture and spares copying it.
    [[nodiscard]] Ledger with(const Change& change) const&;
    [[nodiscard]] Ledger with(const Change& change) &&;
    /// Every row, in table order: what `Ledger(rows())` would be built from.
    [[nodiscard]] std::vector<Row> rows() const;

  private:
    template <class R>
    void take(R row);
    struct Place {
        bool isStruck;
        std::size_t at;
    };
    ForEachRow<detail::Tables> live_;
    ForEachRow<detail::Tables> struck_;
    std::array<std::unordered_map<std::int64_t, Place>, kTables> index_;
    std::unordered_map<std::int64_t, std::size_t> strikeOf_;
    base::Entered lastEntered_ = 0;
};

}  // namespace wm::ledger

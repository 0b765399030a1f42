// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <tuple>
#include <unordered_map>
#include <utility>
#include <variant>
#include <vector>

#include "core/base/result.h"
#include "core/picture/rows.h"
#include "core/picture/shared_rows.h"

namespace wm::picture {

/// What one verb does to the file: rows to write, and the words under which undo offers to take it back.
/// Facts and versions are added, editable rows replace the row of the same id.
struct Change {
    std::string text;
    std::vector<Row> rows;
};

namespace detail {
template <class... Rows>
using Tables = std::tuple<Table<Rows>...>;
template <class... Rows>
using Lists = std::tuple<std::vector<Rows>...>;
}  // namespace detail

/// The rows of a whole file by type, each list in any order.
using Rows = ForEachRow<detail::Lists>;

/// One immutable picture of a whole file. Facts that were struck stand apart, so that no figure can count
/// them by accident. Within a table, facts and versions stand in order of entry, editable rows in order of
/// id.
class Ledger {
  public:
    Ledger() = default;
    /// The picture that results from `rows` (in any order). Strikes take their facts out of `all`.
    explicit Ledger(Rows rows);
    explicit Ledger(std::vector<Row> rows);

    /// All rows of a type that count: struck facts left out.
    template <class R>
    [[nodiscard]] RowsView<R> all() const {
        return table<R>().live();
    }
    /// The facts of a type that were struck; shown in histories, counted nowhere.
    template <class R>
    [[nodiscard]] RowsView<R> struck() const {
        return table<R>().struck();
    }
    /// The row with this id, struck or not, or nullptr.
    template <class R, class IdType>
    [[nodiscard]] const R* find(IdType id) const {
        static_assert(std::is_same_v<IdType, decltype(R::id)>);
        return table<R>().find(id.value());
    }
    /// Why a fact was struck, or nullptr if it stands.
    [[nodiscard]] const Strike* strikeOf(std::int64_t fact) const;
    /// True if any row has this id; ids are unique over all tables.
    [[nodiscard]] bool knows(std::int64_t id) const;

    /// The number that the next fact gets.
    [[nodiscard]] base::Entered nextEntered() const { return lastEntered_ + 1; }
    [[nodiscard]] const Garage& garage() const;

    /// This picture after `change`, which must come from a verb on this picture. It shares with this one the
    /// rows that the change did not touch: what a change costs goes with its own size, but for strikes and
    /// editable rows, which copy the tables that they are about.
    [[nodiscard]] Ledger with(const Change& change) const;
    /// Every row, in table order: what `Ledger(rows())` would be built from.
    [[nodiscard]] std::vector<Row> rows() const;

    /// True if of this type nothing but rows at the end came to those of `earlier`, which stand where they
    /// stood: what points to one of them holds.
    template <class R>
    [[nodiscard]] bool follows(const Ledger& earlier) const {
        return table<R>().follows(earlier.table<R>());
    }

  private:
    template <class R>
    [[nodiscard]] const Table<R>& table() const {
        return std::get<Table<R>>(tables_);
    }
    template <class R>
    void take(const R& row);
    void strike(const std::vector<std::int64_t>& facts);

    using StrikeOf = std::unordered_map<std::int64_t, std::size_t>;
    ForEachRow<detail::Tables> tables_;
    std::shared_ptr<const StrikeOf> strikeOf_ = std::make_shared<const StrikeOf>();
    base::Entered lastEntered_ = 0;
};

}  // namespace wm::picture

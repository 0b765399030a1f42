// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <compare>
#include <cstdint>
#include <optional>
#include <span>
#include <utility>
#include <vector>

#include "core/base/row.h"

namespace wm::picture {

// Sorting and finding rows by their keys alone: compiled once, not once for each type of row.

/// Where a row stands in its table: facts and versions by their entry, editable rows by their id.
struct RowKey {
    base::Entered entered = 0;
    std::int64_t id = 0;
    friend auto operator<=>(const RowKey&, const RowKey&) = default;
};

template <class R>
RowKey keyOf(const R& row) {
    if constexpr (requires { row.entered; })
        return {row.entered, row.id.value()};
    else
        return {0, row.id.value()};
}

template <class R>
std::vector<RowKey> keysOf(std::span<const R> rows) {
    std::vector<RowKey> keys;
    keys.reserve(rows.size());
    for (const R& row : rows)
        keys.push_back(keyOf(row));
    return keys;
}

/// The places of `keys` in their order: the first one is where the smallest key stands. Nothing if they are
/// in order already.
std::optional<std::vector<std::size_t>> newOrder(std::span<const RowKey> keys);
/// How many of `keys`, which are in order, do not come after `key`.
std::size_t placeFor(std::span<const RowKey> keys, RowKey key);

/// Finds the places of rows by their ids.
class RowIndex {
  public:
    /// `ids` in the order of their places.
    explicit RowIndex(std::span<const std::int64_t> ids);
    [[nodiscard]] std::optional<std::size_t> find(std::int64_t id) const;

  private:
    std::vector<std::pair<std::int64_t, std::size_t>> places_;  ///< in order of id
};

}  // namespace wm::picture

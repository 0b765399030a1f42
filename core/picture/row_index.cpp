// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/picture/row_index.h"

#include <algorithm>
#include <numeric>

namespace wm::picture {

std::optional<std::vector<std::size_t>> newOrder(std::span<const RowKey> keys) {
    if (std::is_sorted(keys.begin(), keys.end()))
        return std::nullopt;
    std::vector<std::size_t> places(keys.size());
    std::iota(places.begin(), places.end(), std::size_t{0});
    std::sort(places.begin(), places.end(),
              [keys](std::size_t a, std::size_t b) { return std::pair(keys[a], a) < std::pair(keys[b], b); });
    return places;
}

std::size_t placeFor(std::span<const RowKey> keys, RowKey key) {
    return static_cast<std::size_t>(std::upper_bound(keys.begin(), keys.end(), key) - keys.begin());
}

RowIndex::RowIndex(std::span<const std::int64_t> ids) {
    places_.reserve(ids.size());
    for (std::size_t at = 0; at < ids.size(); ++at)
        places_.emplace_back(ids[at], at);
    std::sort(places_.begin(), places_.end());
}

std::optional<std::size_t> RowIndex::find(std::int64_t id) const {
    const auto known =
        std::lower_bound(places_.begin(), places_.end(), id,
                         [](const auto& entry, std::int64_t wanted) { return entry.first < wanted; });
    if (known == places_.end() || known->first != id)
        return std::nullopt;
    return known->second;
}

}  // namespace wm::picture

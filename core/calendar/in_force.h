// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <iterator>
#include <tuple>
#include <type_traits>

#include "core/calendar/date.h"

namespace wm::calendar {

/// True if the version `later` takes the place of `earlier` once the days of both have come.
template <class V>
bool supersedes(const V& later, const V& earlier) {
    return std::tie(earlier.validFrom, earlier.entered) <= std::tie(later.validFrom, later.entered);
}

namespace detail {
template <class V>
const V& versionOf(const V& version) {
    return version;
}
template <class V>
const V& versionOf(const V* version) {
    return *version;
}
}  // namespace detail

/// The version that is in force on a day, of those for which `isMeant`: the last one whose day has come by
/// then; one that only comes later is nothing yet. Null if there is none. `versions` are rows or pointers to
/// them, in any order.
template <class Versions, class IsMeant>
auto inForce(const Versions& versions, Date on, const IsMeant& isMeant) {
    using V = std::remove_cvref_t<decltype(detail::versionOf(*std::begin(versions)))>;
    const V* best = nullptr;
    for (const auto& each : versions) {
        const V& version = detail::versionOf(each);
        if (version.validFrom <= on && isMeant(version) && (best == nullptr || supersedes(version, *best)))
            best = &version;
    }
    return best;
}

template <class Versions>
auto inForce(const Versions& versions, Date on) {
    return inForce(versions, on, [](const auto&) { return true; });
}

}  // namespace wm::calendar

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <iterator>
#include <tuple>
#include <type_traits>

#include "core/calendar/date.h"

namespace wm::calendar {

/// True if the wording `later` takes the place of `earlier` once the days of both have come.
template <class V>
bool supersedes(const V& later, const V& earlier) {
    return std::tie(earlier.validFrom, earlier.entered) <= std::tie(later.validFrom, later.entered);
}

namespace detail {
template <class V>
const V& wordingOf(const V& wording) {
    return wording;
}
template <class V>
const V& wordingOf(const V* wording) {
    return *wording;
}
}  // namespace detail

/// The wording that is in force on a day, of those for which `isMeant`: the last one whose day has come by
/// then; one that only comes later is nothing yet. Null if there is none. `wordings` are rows or pointers to
/// them, in any order.
template <class Wordings, class IsMeant>
auto inForce(const Wordings& wordings, Date on, const IsMeant& isMeant) {
    using V = std::remove_cvref_t<decltype(detail::wordingOf(*std::begin(wordings)))>;
    const V* best = nullptr;
    for (const auto& each : wordings) {
        const V& wording = detail::wordingOf(each);
        if (wording.validFrom <= on && isMeant(wording) && (best == nullptr || supersedes(wording, *best)))
            best = &wording;
    }
    return best;
}

template <class Wordings>
auto inForce(const Wordings& wordings, Date on) {
    return inForce(wordings, on, [](const auto&) { return true; });
}

}  // namespace wm::calendar

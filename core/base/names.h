// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <string_view>

namespace wm::base {

/// The words under which the values of an enumeration are stored and exchanged. Each enumeration that is
/// part of a row specialises this with `static constexpr std::array names`, in the order of its values.
template <class E>
struct Names;

template <class E>
concept Named = requires {
    Names<E>::names.size();
};

template <Named E>
constexpr std::string_view nameOf(E value) {
    return Names<E>::names.at(static_cast<std::size_t>(value));
}

template <Named E>
constexpr std::optional<E> fromName(std::string_view name) {
    for (std::size_t i = 0; i < Names<E>::names.size(); ++i)
        if (Names<E>::names[i] == name)
            return static_cast<E>(i);
    return std::nullopt;
}

}  // namespace wm::base

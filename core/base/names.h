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

/// Whether an enumeration that counts from 0 without gaps has this value. The language does not say; the
/// compilers spell a value that has a name as "wm::Counter::Hours" and one that has none as "(wm::Counter)9".
template <auto value>
constexpr bool isEnumerator() {
    return std::string_view(__PRETTY_FUNCTION__).find("value = (") == std::string_view::npos;
}

/// How many values an enumeration has: what each table of them is held against, so that none is forgotten.
template <class E, std::size_t from = 0>
constexpr std::size_t enumerators() {
    if constexpr (isEnumerator<static_cast<E>(from)>())
        return enumerators<E, from + 1>();
    else
        return from;
}

template <Named E>
constexpr std::string_view nameOf(E value) {
    static_assert(Names<E>::names.size() == enumerators<E>(), "each value has a name to be stored under");
    return Names<E>::names.at(static_cast<std::size_t>(value));
}

template <Named E>
constexpr std::optional<E> fromName(std::string_view name) {
    static_assert(Names<E>::names.size() == enumerators<E>(), "each value has a name to be stored under");
    for (std::size_t i = 0; i < Names<E>::names.size(); ++i)
        if (Names<E>::names[i] == name)
            return static_cast<E>(i);
    return std::nullopt;
}

/// A table with one row a value, each with a member `of` that says which: a value without a row, or a row out
/// of its place, does not compile where this is asserted.
template <class Row, std::size_t rows>
constexpr bool isWholeTable(const std::array<Row, rows>& table) {
    for (std::size_t at = 0; at < rows; ++at)
        if (static_cast<std::size_t>(table[at].of) != at)
            return false;
    return rows == enumerators<decltype(Row::of)>();
}

}  // namespace wm::base

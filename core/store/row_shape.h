// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <string_view>
#include <type_traits>
#include <vector>

#include "core/picture/rows.h"

/// What a row type's fields() says about its tables.
namespace wm::store {

template <class T>
inline constexpr bool kIsChildren = false;
template <class T>
inline constexpr bool kIsChildren<std::vector<T>> = true;

/// Columns of the row's own table (or of a child), children left out, in the order of fields().
template <class R>
std::vector<std::string> columnsOf() {
    std::vector<std::string> columns;
    R row{};
    R::fields(row, [&](std::string_view name, auto& member) {
        if constexpr (!kIsChildren<std::decay_t<decltype(member)>>)
            columns.emplace_back(name);
    });
    return columns;
}

template <class R>
std::string childTable(std::string_view field) {
    return std::string(R::kTable) + "_" + std::string(field);
}

/// Calls `visit(R{})` for each row type, in table order.
template <class Visit>
struct EachRow {
    Visit& visit;
    template <class... Rows>
    struct Caller {
        static void call(Visit& visit) { (visit(Rows{}), ...); }
    };
};

template <class Visit>
void eachRowType(Visit&& visit) {
    picture::ForEachRow<EachRow<std::remove_reference_t<Visit>>::template Caller>::call(visit);
}

/// Every table that holds facts, definitions and cards, children included: what a verb can change.
std::vector<std::string> factTables();

/// "a", "b", "c"
std::string quotedList(const std::vector<std::string>& names);

}  // namespace wm::store

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/store/row_shape.h"

namespace wm::store {

std::vector<std::string> factTables() {
    std::vector<std::string> tables;
    eachRowType([&tables](auto row) {
        using R = decltype(row);
        tables.emplace_back(R::kTable);
        R::fields(row, [&](std::string_view name, auto& member) {
            if constexpr (kIsChildren<std::decay_t<decltype(member)>>)
                tables.push_back(childTable<R>(name));
        });
    });
    return tables;
}

std::string quotedList(const std::vector<std::string>& names) {
    std::string list;
    for (const std::string& name : names) {
        if (!list.empty())
            list += ", ";
        list += '"' + name + '"';
    }
    return list;
}

}  // namespace wm::store

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/verbs/carry_over.h"

#include <algorithm>
#include <limits>
#include <unordered_map>
#include <utility>

#include "core/picture/consistency.h"
#include "core/picture/entry.h"

namespace wm::verbs {

namespace {

using picture::Row;
using Renamed = std::unordered_map<std::int64_t, std::int64_t>;

template <class T>
constexpr bool kIsId = false;
template <class Tag>
constexpr bool kIsId<base::Id<Tag>> = true;

template <class R>
bool rename(R& row, const Renamed& renamed);

// True if the member named a renamed fact. Ids are unique over all tables, so the value alone tells.
template <class T>
bool renameMember(T& member, const Renamed& renamed) {
    if constexpr (kIsId<T>) {
        const auto found = renamed.find(member.value());
        if (found == renamed.end())
            return false;
        member = T{found->second};
        return true;
    } else if constexpr (requires { member.has_value(); }) {
        return member.has_value() && renameMember(*member, renamed);
    } else if constexpr (requires { T::value_type::fields(member.front(), [](auto, auto&) {}); }) {
        bool any = false;
        for (auto& line : member)
            any = rename(line, renamed) || any;
        return any;
    } else {
        return false;
    }
}

template <class R>
bool rename(R& row, const Renamed& renamed) {
    bool any = false;
    R::fields(row, [&](std::string_view, auto& member) { any = renameMember(member, renamed) || any; });
    if constexpr (std::is_same_v<R, upkeep::FollowUpAnswer>)
        if (const auto found = renamed.find(row.origin); found != renamed.end()) {
            row.origin = found->second;
            any = true;
        }
    return any;
}

template <class R>
constexpr bool kCarried = !std::is_same_v<R, picture::Strike> && !std::is_same_v<R, weekend::IssuedSheet>;

// Facts in order of entry: one names only what was entered before it. Then the rows that can be edited.
std::vector<std::pair<base::Entered, Row>> inOrder(const picture::Ledger& ledger) {
    std::vector<std::pair<base::Entered, Row>> rows;
    eachTable(ledger, [&]<class R>(picture::RowsView<R> table) {
        if constexpr (kCarried<R>)
            for (const R& row : table) {
                if constexpr (R::kKind == base::RowKind::Fact)
                    rows.emplace_back(row.entered, row);
                if constexpr (R::kKind == base::RowKind::Editable)
                    rows.emplace_back(std::numeric_limits<base::Entered>::max(), row);
            }
    });
    std::stable_sort(rows.begin(), rows.end(),
                     [](const auto& a, const auto& b) { return a.first < b.first; });
    return rows;
}

}  // namespace

std::vector<Row> carryOver(const picture::Ledger& ledger, const base::IdSource& newId, std::int64_t oldFact,
                           std::int64_t newFact, const picture::Strike& because) {
    Renamed renamed{{oldFact, newFact}};
    picture::Entry entry(ledger, newId);
    for (auto& [entered, row] : inOrder(ledger))
        std::visit(
            [&]<class R>(R& r) {
                const std::int64_t before = r.id.value();
                if (before == newFact || !rename(r, renamed))
                    return;
                if constexpr (R::kKind == base::RowKind::Fact) {
                    picture::Strike strike = because;
                    strike.fact = before;
                    entry.add(strike);
                    renamed[before] = entry.addAgain(r).value();
                } else if constexpr (R::kKind == base::RowKind::Editable) {
                    entry.put(r);
                }
            },
            row);
    return std::move(entry).change(std::string{}).rows;
}

}  // namespace wm::verbs

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/ledger/ledger.h"

#include <algorithm>
#include <map>

namespace wm::ledger {

namespace {

template <class R>
concept Entered = requires(R row) {
    row.entered;
};

template <class R>
void sortRows(std::vector<R>& rows) {
    std::sort(rows.begin(), rows.end(), [](const R& a, const R& b) {
        if constexpr (Entered<R>)
            return std::pair(a.entered, a.id) < std::pair(b.entered, b.id);
        else
            return a.id < b.id;
    });
}

template <class Tables, class Do>
void eachTable(Tables& tables, Do&& act) {
    std::apply([&](auto&... table) { (act(table), ...); }, tables);
}

}  // namespace

Ledger::Ledger(std::vector<Row> rows) {
    for (const Row& row : rows)
        if (const auto* strike = std::get_if<Strike>(&row))
            strikeOf_.emplace(strike->fact, 0);
    for (Row& row : rows) {
        std::visit(
            [&](auto& r) {
                using R = std::decay_t<decltype(r)>;
                if constexpr (Entered<R>)
                    lastEntered_ = std::max(lastEntered_, r.entered);
                const bool isStruck = R::kKind == base::RowKind::Fact && strikeOf_.contains(r.id.value());
                auto& table = std::get<std::vector<R>>(isStruck ? struck_ : live_);
                table.push_back(std::move(r));
            },
            row);
    }
    const auto indexTable = [&](bool isStruck) {
        return [this, isStruck](auto& table) {
            using R = typename std::decay_t<decltype(table)>::value_type;
            sortRows(table);
            for (std::size_t at = 0; at < table.size(); ++at)
                index_[kTableOf<R>].insert_or_assign(table[at].id.value(), Place{isStruck, at});
        };
    };
    eachTable(live_, indexTable(false));
    eachTable(struck_, indexTable(true));
    const auto& strikes = all<Strike>();
    for (std::size_t at = 0; at < strikes.size(); ++at)
        strikeOf_.insert_or_assign(strikes[at].fact, at);
}

const Strike* Ledger::strikeOf(std::int64_t fact) const {
    const auto at = strikeOf_.find(fact);
    return at == strikeOf_.end() ? nullptr : &all<Strike>()[at->second];
}

bool Ledger::knows(std::int64_t id) const {
    return std::any_of(index_.begin(), index_.end(), [id](const auto& table) { return table.contains(id); });
}

const Garage& Ledger::garage() const {
    static const Garage none{};
    return all<Garage>().empty() ? none : all<Garage>().front();
}

std::vector<Row> Ledger::rows() const {
    std::vector<Row> rows;
    const auto& live = live_;
    const auto& struckFacts = struck_;
    const auto take = [&rows](const auto& table) { rows.insert(rows.end(), table.begin(), table.end()); };
    eachTable(live, take);
    eachTable(struckFacts, take);
    return rows;
}

Ledger Ledger::with(const Change& change) const& {
    Ledger copy = *this;
    return std::move(copy).with(change);
}

// A change from a verb has new facts and versions, which come last, and editable rows, new or in place of
// one.
template <class R>
void Ledger::take(R row) {
    auto& table = std::get<std::vector<R>>(live_);
    auto& index = index_[kTableOf<R>];
    if constexpr (Entered<R>)
        lastEntered_ = std::max(lastEntered_, row.entered);
    if (const auto known = index.find(row.id.value()); known != index.end()) {
        table[known->second.at] = std::move(row);
        return;
    }
    const auto before = [](const R& a, const R& b) {
        if constexpr (Entered<R>)
            return std::pair(a.entered, a.id) < std::pair(b.entered, b.id);
        else
            return a.id < b.id;
    };
    const auto at = table.insert(std::upper_bound(table.begin(), table.end(), row, before), std::move(row));
    for (auto place = static_cast<std::size_t>(at - table.begin()); place < table.size(); ++place)
        index.insert_or_assign(table[place].id.value(), Place{false, place});
}

Ledger Ledger::with(const Change& change) && {
    const bool strikes = std::any_of(change.rows.begin(), change.rows.end(),
                                     [](const Row& row) { return std::holds_alternative<Strike>(row); });
    if (strikes) {
        std::vector<Row> all = rows();
        all.insert(all.end(), change.rows.begin(), change.rows.end());
        std::map<std::pair<std::size_t, std::int64_t>, std::size_t> last;
        std::vector<Row> kept;
        for (Row& row : all) {
            const std::int64_t id = std::visit([](const auto& r) { return r.id.value(); }, row);
            const auto [known, isNew] = last.emplace(std::pair(row.index(), id), kept.size());
            if (isNew)
                kept.push_back(std::move(row));
            else
                kept[known->second] = std::move(row);
        }
        return Ledger(std::move(kept));
    }
    for (const Row& row : change.rows)
        std::visit([this](const auto& r) { take(r); }, row);
    return std::move(*this);
}

}  // namespace wm::ledger

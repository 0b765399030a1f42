// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/ledger/ledger.h"

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

Ledger Ledger::with(const Change& change) const {
    std::vector<Row> rows = this->rows();
    for (const Row& row : change.rows) {
        std::visit(
            [&](const auto& r) {
                using R = std::decay_t<decltype(r)>;
                if (R::kKind == base::RowKind::Editable && find<R>(r.id) != nullptr) {
                    for (Row& old : rows)
                        if (auto* same = std::get_if<R>(&old); same != nullptr && same->id == r.id)
                            *same = r;
                } else {
                    rows.push_back(row);
                }
            },
            row);
    }
    return Ledger(std::move(rows));
}

}  // namespace wm::ledger

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/picture/ledger.h"

#include <algorithm>
#include <optional>
#include <unordered_map>
#include <unordered_set>
#include <utility>

namespace wm::picture {

namespace {

template <class R>
concept Entered = requires(R row) {
    row.entered;
};

template <class R>
void putInOrder(std::vector<R>& rows) {
    const auto order = newOrder(keysOf<R>(rows));
    if (!order)
        return;
    std::vector<R> sorted;
    sorted.reserve(rows.size());
    for (const std::size_t place : *order)
        sorted.push_back(std::move(rows[place]));
    rows = std::move(sorted);
}

template <class R>
Table<R> tableOf(std::vector<R> live, std::vector<R> struck) {
    putInOrder(live);
    putInOrder(struck);
    return {std::move(live), std::move(struck)};
}

using Facts = std::unordered_set<std::int64_t>;

// Takes the rows that are among `facts` out of `live`.
template <class R>
std::vector<R> takeOut(std::vector<R>& live, const Facts& facts) {
    std::vector<R> struck;
    if (R::kKind != base::RowKind::Fact || facts.empty())
        return struck;
    std::vector<R> kept;
    kept.reserve(live.size());
    for (R& row : live)
        (facts.contains(row.id.value()) ? struck : kept).push_back(std::move(row));
    live = std::move(kept);
    return struck;
}

Rows byType(std::vector<Row> rows) {
    Rows lists;
    for (Row& row : rows)
        std::visit(
            [&lists](auto& r) {
                std::get<std::vector<std::decay_t<decltype(r)>>>(lists).push_back(std::move(r));
            },
            row);
    return lists;
}

template <class Tables, class Do>
void eachTable(Tables& tables, Do&& act) {
    std::apply([&](auto&... table) { (act(table), ...); }, tables);
}

template <class R>
std::vector<R> copyOf(RowsView<R> rows) {
    return {rows.begin(), rows.end()};
}

// From so many on a picture is put together anew: row by row, the index of a table would be sorted again with
// every sixty-fourth.
constexpr std::size_t kManyRows = 2'000;

std::optional<std::int64_t> editableId(const Row& row) {
    return std::visit(
        [](const auto& r) -> std::optional<std::int64_t> {
            if constexpr (std::decay_t<decltype(r)>::kKind == base::RowKind::Editable)
                return r.id.value();
            else
                return std::nullopt;
        },
        row);
}

// `rows` with those of the change behind them; of an editable row the last word alone.
std::vector<Row> rowsAfter(std::vector<Row> rows, const Change& change) {
    std::unordered_map<std::int64_t, const Row*> edited;
    for (const Row& row : change.rows)
        if (const auto id = editableId(row))
            edited[*id] = &row;
    std::erase_if(rows, [&edited](const Row& row) {
        const auto id = editableId(row);
        return id && edited.contains(*id);
    });
    for (const Row& row : change.rows) {
        const auto id = editableId(row);
        if (!id || edited.at(*id) == &row)
            rows.push_back(row);
    }
    return rows;
}

}  // namespace

Ledger::Ledger(std::vector<Row> rows) : Ledger(byType(std::move(rows))) {}

Ledger::Ledger(Rows rows) {
    Facts struckFacts;
    for (const Strike& strike : std::get<std::vector<Strike>>(rows))
        struckFacts.insert(strike.fact);
    eachTable(rows, [&]<class R>(std::vector<R>& own) {
        if constexpr (Entered<R>)
            for (const R& row : own)
                lastEntered_ = std::max(lastEntered_, row.entered);
        std::vector<R> struck = takeOut(own, struckFacts);
        std::get<Table<R>>(tables_) = tableOf(std::move(own), std::move(struck));
    });
    StrikeOf strikeOf;
    const auto strikes = all<Strike>();
    for (std::size_t at = 0; at < strikes.size(); ++at)
        strikeOf.insert_or_assign(strikes[at].fact, at);
    strikeOf_ = std::make_shared<const StrikeOf>(std::move(strikeOf));
}

const Strike* Ledger::strikeOf(std::int64_t fact) const {
    const auto at = strikeOf_->find(fact);
    return at == strikeOf_->end() ? nullptr : &all<Strike>()[at->second];
}

bool Ledger::knows(std::int64_t id) const {
    return std::apply([id](const auto&... table) { return ((table.find(id) != nullptr) || ...); }, tables_);
}

const Garage& Ledger::garage() const {
    static const Garage none{};
    return all<Garage>().empty() ? none : all<Garage>().front();
}

std::vector<Row> Ledger::rows() const {
    std::vector<Row> rows;
    eachTable(tables_, [&rows](const auto& table) {
        const auto live = table.live();
        const auto struck = table.struck();
        rows.insert(rows.end(), live.begin(), live.end());
        rows.insert(rows.end(), struck.begin(), struck.end());
    });
    return rows;
}

// New facts and versions come last; editable rows are new, or come in place of one.
template <class R>
void Ledger::take(const R& row) {
    auto& own = std::get<Table<R>>(tables_);
    if constexpr (Entered<R>)
        lastEntered_ = std::max(lastEntered_, row.entered);
    const RowsView<R> live = own.live();
    const R* known = own.find(row.id.value());
    if (known == nullptr && (live.empty() || keyOf(live.back()) < keyOf(row))) {
        own.append(row);
        return;
    }
    std::vector<R> rows = copyOf(live);
    if (known != nullptr)
        rows[static_cast<std::size_t>(known - live.data())] = row;
    else
        rows.insert(rows.begin() + static_cast<std::ptrdiff_t>(placeFor(keysOf<R>(rows), keyOf(row))), row);
    own = Table<R>(std::move(rows), copyOf(own.struck()));
}

void Ledger::strike(const std::vector<std::int64_t>& facts) {
    StrikeOf strikeOf = *strikeOf_;
    const auto strikes = all<Strike>();
    for (const std::int64_t fact : facts)
        for (std::size_t at = 0; at < strikes.size(); ++at)
            if (strikes[at].fact == fact)
                strikeOf.insert_or_assign(fact, at);
    strikeOf_ = std::make_shared<const StrikeOf>(std::move(strikeOf));
    const Facts struckNow(facts.begin(), facts.end());
    eachTable(tables_, [&]<class R>(Table<R>& table) {
        if (R::kKind != base::RowKind::Fact ||
            std::none_of(facts.begin(), facts.end(),
                         [&table](std::int64_t fact) { return table.find(fact) != nullptr; }))
            return;
        std::vector<R> live = copyOf(table.live());
        std::vector<R> struck = copyOf(table.struck());
        for (R& row : takeOut(live, struckNow))
            struck.push_back(std::move(row));
        table = tableOf(std::move(live), std::move(struck));
    });
}

Ledger Ledger::with(const Change& change) const {
    if (change.rows.size() >= kManyRows) {
        Ledger anew(rowsAfter(rows(), change));
        anew.lastEntered_ = std::max(anew.lastEntered_, lastEntered_);
        return anew;
    }
    Ledger next = *this;
    std::vector<std::int64_t> facts;
    for (const Row& row : change.rows) {
        std::visit([&next](const auto& r) { next.take(r); }, row);
        if (const auto* struck = std::get_if<Strike>(&row))
            facts.push_back(struck->fact);
    }
    if (!facts.empty())
        next.strike(facts);
    return next;
}

}  // namespace wm::picture

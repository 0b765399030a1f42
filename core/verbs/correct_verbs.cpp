// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/verbs/correct_verbs.h"

#include <fmt/format.h>

#include <algorithm>
#include <concepts>
#include <iterator>
#include <memory>

#include "core/book/book_checks.h"
#include "core/picture/consistency.h"
#include "core/picture/entry.h"
#include "core/picture/facts.h"
#include "core/picture/shape.h"

// Taking facts back.

namespace wm::verbs {

using base::Fault;
using base::Result;
using book::Book;
using book::BookChecks;
using picture::Change;
using picture::checkMoves;
using picture::Entry;
using picture::Ledger;
using picture::RowsView;
using picture::shortened;
using picture::Strike;

namespace {

template <class R>
constexpr bool kStrikable = R::kKind == base::RowKind::Fact && !std::is_same_v<R, Strike>;

// How a fact is called when it is taken back: "the outing of 2026-05-16 on Heron 250".
std::string_view kindName(std::string_view table) {
    static constexpr std::pair<std::string_view, std::string_view> kNames[] = {
        {"move", "move"},
        {"setting", "setting"},
        {"hour_reading", "reading"},
        {"distance_reading", "reading"},
        {"outing", "outing"},
        {"wash", "wash"},
        {"crash", "crash"},
        {"record", "job"},
        {"snag", "snag"},
        {"snag_end", "end of a snag"},
        {"deferral", "deferral"},
        {"follow_up_answer", "answer"},
        {"joint_mark", "mark on a joint"},
        {"calibration", "calibration"},
        {"stock_move", "stock move"},
        {"stock_order", "order"},
        {"issued_sheet", "job sheet"}};
    const auto* found = std::find_if(std::begin(kNames), std::end(kNames),
                                     [table](const auto& name) { return name.first == table; });
    return found == std::end(kNames) ? table : found->second;
}

template <class R>
concept OnMachine = std::same_as<decltype(R::machine), MachineId>;

template <class R>
std::string describe(const Ledger& ledger, const R& row) {
    std::string text = fmt::format("the {} of {}", kindName(R::kTable), row.date.iso());
    if constexpr (std::is_same_v<R, upkeep::Record>)
        text = fmt::format("\"{}\" of {}", shortened(row.what), row.date.iso());
    if constexpr (OnMachine<R>)
        text += fmt::format(" on {}", machineName(ledger, row.machine));
    return text;
}

// The words for the fact, if there is one of this id that can be struck.
std::optional<std::string> describe(const Ledger& ledger, std::int64_t fact) {
    std::optional<std::string> words;
    eachTable(ledger, [&]<class R>(RowsView<R>) {
        if constexpr (kStrikable<R>)
            if (const R* row = ledger.find<R>(decltype(R::id){fact}))
                words = describe(ledger, *row);
    });
    return words;
}

bool cameWith(const auto& row, std::int64_t fact) {
    bool came = false;
    if constexpr (requires { row.record->value(); })
        came = row.record == RecordId{fact};
    if constexpr (requires { row.outing->value(); })
        came = came || row.outing == OutingId{fact};
    return came;
}

// The fact itself, and what was noted in the same go.
std::vector<std::int64_t> withCompany(const Ledger& ledger, std::int64_t fact) {
    std::vector<std::int64_t> facts{fact};
    eachTable(ledger, [&]<class R>(RowsView<R> rows) {
        if constexpr (kStrikable<R>)
            for (const R& row : rows)
                if (row.id.value() != fact && cameWith(row, fact))
                    facts.push_back(row.id.value());
    });
    return facts;
}

// The strikes alone, not yet asked whether what stays can have happened.
Result<Change> strikeOnly(const Pen& pen, std::int64_t fact, std::string reason) {
    const Ledger& ledger = pen.book.ledger();
    BookChecks check(pen.book);
    const auto words = describe(ledger, fact);
    check.that(words.has_value(), Fault::Unknown, "fact", std::to_string(fact));
    if (const Strike* before = ledger.strikeOf(fact))
        check.that(false, Fault::AlreadyStruck, "fact", words.value_or(""), before->date.iso());
    check.note("reason", reason);
    check.that(!reason.empty(), Fault::ReasonNeeded, "reason");
    if (check.failed())
        return check.refusal();
    Entry entry(pen.book.ledger(), pen.newId);
    for (const std::int64_t each : withCompany(ledger, fact))
        entry.add(Strike{.fact = each, .date = pen.book.today(), .reason = reason});
    return std::move(entry).change(fmt::format("struck {}", *words));
}

// The moves that are left must still be possible, one after the other.
Result<Change> ifMovesHold(const Ledger& before, Change change) {
    const Ledger after = before.with(change);
    if (after.all<items::Move>().size() == before.all<items::Move>().size() &&
        after.follows<items::Move>(before))
        return change;
    if (const auto hold = checkMoves(after.all<items::Move>()); !hold)
        return tl::unexpected<base::Error>{hold.error()};
    return change;
}

}  // namespace

Result<Change> strike(const Pen& pen, std::int64_t fact, std::string reason) {
    auto change = strikeOnly(pen, fact, std::move(reason));
    if (!change)
        return change;
    return ifMovesHold(pen.book.ledger(), std::move(*change));
}

Result<Change> correct(const Pen& pen, std::int64_t fact, std::string reason, const Verb& again) {
    const Ledger& ledger = pen.book.ledger();
    auto change = strikeOnly(pen, fact, std::move(reason));
    if (!change)
        return change;
    const Book without(std::make_shared<const Ledger>(ledger.with(*change)), pen.book.today());
    auto entered = again(Pen{without, pen.newId});
    if (!entered)
        return entered;
    change->text = fmt::format("corrected {}", *describe(ledger, fact));
    std::move(entered->rows.begin(), entered->rows.end(), std::back_inserter(change->rows));
    return ifMovesHold(ledger, std::move(*change));
}

}  // namespace wm::verbs

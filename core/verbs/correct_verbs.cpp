// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/verbs/correct_verbs.h"

#include <algorithm>
#include <concepts>
#include <deque>
#include <iterator>
#include <map>
#include <memory>

#include "core/picture/consistency.h"
#include "core/picture/facts.h"
#include "core/verbs/carry_over.h"
#include "core/verbs/names.h"

// Taking facts back.

namespace wm::verbs {

using picture::checkMoves;
using picture::RowsView;
using picture::Strike;

namespace {

template <class R>
constexpr bool kStrikable = R::kKind == base::RowKind::Fact && !std::is_same_v<R, Strike>;

// How a fact is called when it is taken back: "the outing of 2026-05-16 on Heron 250". The texts are spelled
// out one by one: in other languages they share no word.
struct KindText {
    std::string_view table;
    base::Phrase (*text)();
};
constexpr KindText kKinds[] = {{"move", [] { return phrase("Undo", "the move of %1"); }},
                               {"setting", [] { return phrase("Undo", "the setting of %1"); }},
                               {"hour_reading", [] { return phrase("Undo", "the reading of %1"); }},
                               {"distance_reading", [] { return phrase("Undo", "the reading of %1"); }},
                               {"outing", [] { return phrase("Undo", "the outing of %1"); }},
                               {"wash", [] { return phrase("Undo", "the wash of %1"); }},
                               {"crash", [] { return phrase("Undo", "the crash of %1"); }},
                               {"record", [] { return phrase("Undo", "the job of %1"); }},
                               {"snag", [] { return phrase("Undo", "the snag of %1"); }},
                               {"snag_end", [] { return phrase("Undo", "the end of a snag of %1"); }},
                               {"deferral", [] { return phrase("Undo", "the deferral of %1"); }},
                               {"follow_up_answer", [] { return phrase("Undo", "the answer of %1"); }},
                               {"joint_mark", [] { return phrase("Undo", "the mark on a joint of %1"); }},
                               {"calibration", [] { return phrase("Undo", "the calibration of %1"); }},
                               {"stock_move", [] { return phrase("Undo", "the stock move of %1"); }},
                               {"stock_order", [] { return phrase("Undo", "the order of %1"); }},
                               {"issued_sheet", [] { return phrase("Undo", "the job sheet of %1"); }}};

base::Phrase kindText(std::string_view table) {
    const auto* found = std::find_if(std::begin(kKinds), std::end(kKinds),
                                     [table](const KindText& kind) { return kind.table == table; });
    return found == std::end(kKinds) ? phrase("Undo", "an entry of %1") : found->text();
}

template <class R>
concept OnMachine = std::same_as<decltype(R::machine), MachineId>;

template <class R>
base::Phrase describe(const Ledger& ledger, const R& row) {
    base::Phrase text = kindText(R::kTable).arg(row.date.iso());
    if constexpr (std::is_same_v<R, upkeep::Record>)
        text = phrase("Undo", "\"%1\" of %2").arg(shortened(row.what)).arg(row.date.iso());
    if constexpr (OnMachine<R>)
        text = phrase("Undo", "%1 on %2").arg(std::move(text)).arg(machineName(ledger, row.machine));
    return text;
}

// The words for the fact, if there is one of this id that can be struck.
std::optional<base::Phrase> describe(const Ledger& ledger, std::int64_t fact) {
    std::optional<base::Phrase> words;
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
Result<Change> strikeOnly(const VerbContext& context, std::int64_t fact, std::string reason) {
    const Ledger& ledger = context.book.ledger();
    BookChecks check(context.book);
    const auto words = describe(ledger, fact);
    check.that(words.has_value(), Fault::Unknown, "fact", std::to_string(fact));
    if (const Strike* before = ledger.strikeOf(fact))
        check.that(false, Fault::AlreadyStruck, "fact", words ? base::said(*words) : "", before->date.iso());
    check.note("reason", reason);
    check.that(!reason.empty(), Fault::ReasonNeeded, "reason");
    if (check.failed())
        return check.refusal();
    Entry entry(context.book.ledger(), context.newId);
    for (const std::int64_t each : withCompany(ledger, fact))
        entry.add(Strike{.fact = each, .date = context.book.today(), .reason = reason});
    return std::move(entry).change(phrase("Undo", "struck %1").arg(*words));
}

// A wash that came with an outing stays with it, if it is still one of that machine and day.
template <class R>
void keepLinks(const R& old, const Ledger& without, R& again) {
    if (again.machine != old.machine || again.date != old.date)
        return;
    if (!again.outing && old.outing && without.find<usage::Outing>(*old.outing) != nullptr)
        again.outing = old.outing;
    if constexpr (requires { old.record->value(); })
        if (!again.record && old.record && without.find<upkeep::Record>(*old.record) != nullptr)
            again.record = old.record;
}

// The total time is the one that was stated then, while the job is still on the same thing on the same day.
void keepStatedTime(const upkeep::Record& old, upkeep::Record& again) {
    if (again.machine != old.machine || again.item != old.item || again.date != old.date ||
        again.part != old.part)
        return;
    again.statedLow = old.statedLow;
    again.statedBest = old.statedBest;
    again.statedHigh = old.statedHigh;
}

template <class R>
concept CameWithAnOuting = OnMachine<R> && requires(const R& row) {
    row.outing->value();
};

// What is entered again stands where what it corrects stood: of one part of a day the order of entry decides
// what came first. What the correction adds stands with the fact itself.
void keepPlaces(const Ledger& before, std::int64_t fact, Change& entered) {
    std::map<std::string_view, std::deque<base::Entered>> places;
    base::Entered own = 0;
    const auto company = withCompany(before, fact);
    eachTable(before, [&]<class R>(RowsView<R> rows) {
        if constexpr (kStrikable<R>)
            for (const R& row : rows)
                if (std::find(company.begin(), company.end(), row.id.value()) != company.end()) {
                    places[R::kTable].push_back(row.entered);
                    own = row.id.value() == fact ? row.entered : own;
                }
    });
    const auto place = [&]<class R>(R& row) {
        if constexpr (kStrikable<R>) {
            auto& left = places[R::kTable];
            row.entered = left.empty() ? own : left.front();
            if (!left.empty())
                left.pop_front();
        }
    };
    for (auto& row : entered.rows)
        std::visit(place, row);
}

// The new fact in the place of the one that is corrected.
std::optional<std::int64_t> sameKind(const Ledger& before, std::int64_t fact, const Change& entered) {
    std::optional<std::int64_t> found;
    eachTable(before, [&]<class R>(RowsView<R>) {
        if (before.find<R>(decltype(R::id){fact}) == nullptr)
            return;
        for (const auto& row : entered.rows)
            if (const R* again = std::get_if<R>(&row); again != nullptr && !found)
                found = again->id.value();
    });
    return found;
}

void keepWhatItHad(const Ledger& before, std::int64_t fact, const Ledger& without, Change& entered) {
    eachTable(before, [&]<class R>(RowsView<R>) {
        if constexpr (CameWithAnOuting<R>)
            if (const R* old = before.find<R>(decltype(R::id){fact}))
                for (auto& row : entered.rows)
                    if (R* again = std::get_if<R>(&row))
                        keepLinks(*old, without, *again);
    });
    if (const auto* old = before.find<upkeep::Record>(RecordId{fact}))
        for (auto& row : entered.rows)
            if (auto* again = std::get_if<upkeep::Record>(&row))
                keepStatedTime(*old, *again);
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

Result<Change> strike(const VerbContext& context, std::int64_t fact, std::string reason) {
    auto change = strikeOnly(context, fact, std::move(reason));
    if (!change)
        return change;
    return ifMovesHold(context.book.ledger(), std::move(*change));
}

Result<Change> correct(const VerbContext& context, std::int64_t fact, std::string reason, const Verb& again) {
    const Ledger& ledger = context.book.ledger();
    std::string given = reason;
    auto change = strikeOnly(context, fact, std::move(reason));
    if (!change)
        return change;
    const Book without(std::make_shared<const Ledger>(ledger.with(*change)), context.book.today());
    auto entered = again(VerbContext{without, context.newId});
    if (!entered)
        return entered;
    keepWhatItHad(ledger, fact, without.ledger(), *entered);
    keepPlaces(ledger, fact, *entered);
    change->text = base::stored(phrase("Undo", "corrected %1").arg(*describe(ledger, fact)));
    const auto inItsPlace = sameKind(ledger, fact, *entered);
    std::move(entered->rows.begin(), entered->rows.end(), std::back_inserter(change->rows));
    const Strike because{.date = context.book.today(), .reason = std::move(given)};
    if (inItsPlace) {
        auto carried = carryOver(ledger.with(*change), context.newId, fact, *inItsPlace, because);
        std::move(carried.begin(), carried.end(), std::back_inserter(change->rows));
    }
    return ifMovesHold(ledger, std::move(*change));
}

}  // namespace wm::verbs

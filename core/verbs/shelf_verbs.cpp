// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/verbs/shelf_verbs.h"

#include <algorithm>
#include <iterator>
#include <memory>

#include "core/verbs/job_parts.h"
#include "core/verbs/names.h"

// The shelf: lines, containers, what comes in and goes out.

namespace wm::verbs {

using picture::kMostAmount;
using stock::StockWhy;

namespace {

// However it was typed, what leaves the shelf is negative; held a little beyond the bound, which is checked
// later.
std::int64_t outOf(std::int64_t amount) {
    const std::int64_t bounded = std::clamp(amount, -kMostAmount - 1, kMostAmount + 1);
    return std::min(bounded, -bounded);
}

// "3 × spark plug", "250 ml of fork oil"
base::Phrase amountOf(const stock::StockLine& line, std::int64_t amount) {
    if (line.unit == stock::Unit::Piece)
        return phrase("Undo", "%1 × %2").arg(std::to_string(amount)).arg(line.name);
    return phrase("Undo", "%1 %2 of %3")
        .arg(std::to_string(amount))
        .arg(std::string(base::nameOf(line.unit)))
        .arg(line.name);
}

base::Phrase moveText(const stock::StockLine& line, const stock::StockMove& move) {
    const auto what = amountOf(line, std::max(move.amount, -move.amount));
    switch (move.why) {
        case StockWhy::Bought:
            return phrase("Undo", "booked in %1").arg(what);
        case StockWhy::Used:
            return phrase("Undo", "took %1 off the shelf").arg(what);
        case StockWhy::Lost:
            return phrase("Undo", "booked %1 as lost").arg(what);
        case StockWhy::Counted:
            break;
    }
    return (move.amount < 0 ? phrase("Undo", "counted %1 too few") : phrase("Undo", "counted %1 too many"))
        .arg(what);
}

void checkLineIsOne(Checks& check, const Ledger& ledger, const stock::StockLine& line) {
    for (const auto& other : ledger.all<stock::StockLine>()) {
        if (other.id == line.id)
            continue;
        const bool samePart = sameName(other.partNumber, line.partNumber);
        check.that(line.partNumber.empty() || !samePart, Fault::Duplicate, "part_number", line.partNumber,
                   other.name);
        check.that(!samePart || !sameName(other.name, line.name), Fault::Duplicate, "name", line.name);
    }
}

// What was counted in one unit cannot be counted in another afterwards.
void checkUnit(Checks& check, const Ledger& ledger, const stock::StockLine& old, stock::Unit unit) {
    const auto& moves = ledger.all<stock::StockMove>();
    const bool counted =
        std::any_of(moves.begin(), moves.end(), [&](const auto& move) { return move.line == old.id; });
    check.that(old.unit == unit || !counted, Fault::WrongUnit, "unit", std::string(base::nameOf(unit)),
               std::string(base::nameOf(old.unit)));
}

void checkLot(BookChecks& check, const Book& book, stock::Lot& lot) {
    checkShape(check, lot);
    if (!check.failed()) {
        check.that(lot.received <= book.today(), Fault::InFuture, "received", lot.received.iso(),
                   book.today().iso());
        if (lot.opened)
            check.that(*lot.opened <= book.today(), Fault::InFuture, "opened", lot.opened->iso(),
                       book.today().iso());
    }
}

// The container that a purchase comes in.
void checkNewLot(BookChecks& check, const Book& book, const stock::StockMove& move, stock::Lot& lot) {
    check.that(move.why == StockWhy::Bought && !move.lot, Fault::Inconsistent, "lot");
    lot.line = move.line;
    if (lot.received == calendar::Date{})
        lot.received = move.date;
    checkLot(check, book, lot);
}

std::int64_t amountIn(const stock::OnHand& line, const std::optional<LotId>& lot) {
    if (!lot)
        return line.amount;
    const auto part =
        std::find_if(line.lots.begin(), line.lots.end(), [&](const auto& l) { return l.lot == lot; });
    return part == line.lots.end() ? 0 : part->amount;
}

stock::OnHand shelfOn(const Ledger& ledger, const stock::StockLine& line, calendar::Date date) {
    const std::span<const stock::StockLine> one(&line, 1);
    return stock::onHand(one, ledger.all<stock::Lot>(), ledger.all<stock::StockMove>(),
                         ledger.all<stock::StockOrder>(), date)
        .front();
}

}  // namespace

Result<Change> saveStockLine(const VerbContext& context, stock::StockLine line) {
    const bool isNew = line.id.isNothing();
    BookChecks check(context.book);
    checkShape(check, line);
    if (!isNew) {
        const auto* old = check.row<stock::StockLine>("id", line.id);
        if (!check.failed()) {
            check.that(!(*old == line), Fault::NothingToDo, "id");
            checkUnit(check, context.book.ledger(), *old, line.unit);
        }
    }
    checkLineIsOne(check, context.book.ledger(), line);
    if (check.failed())
        return check.refusal();
    Entry entry(context.book.ledger(), context.newId);
    const auto text =
        (isNew ? phrase("Undo", "added %1 on the shelf") : phrase("Undo", "changed %1 on the shelf"))
            .arg(line.name);
    entry.put(std::move(line));
    return std::move(entry).change(text);
}

Result<Change> addStockLine(const VerbContext& context, stock::StockLine line, std::int64_t counted) {
    auto change = saveStockLine(context, std::move(line));
    if (!change || counted == 0)
        return change;
    const StockLineId id = std::get<stock::StockLine>(change->rows.front()).id;
    const Book with(std::make_shared<const Ledger>(context.book.ledger().with(*change)),
                    context.book.today());
    auto count =
        countStock(VerbContext{with, context.newId}, id, std::nullopt, counted, context.book.today());
    if (!count)
        return count;
    std::move(count->rows.begin(), count->rows.end(), std::back_inserter(change->rows));
    return change;
}

Result<Change> saveLot(const VerbContext& context, stock::Lot lot) {
    const bool isNew = lot.id.isNothing();
    BookChecks check(context.book);
    const auto* line = check.row<stock::StockLine>("line", lot.line);
    checkLot(check, context.book, lot);
    if (!isNew) {
        const auto* old = check.row<stock::Lot>("id", lot.id);
        if (!check.failed()) {
            check.that(!(*old == lot), Fault::NothingToDo, "id");
            check.that(old->line == lot.line, Fault::Inconsistent, "line", line->name);
        }
    }
    if (check.failed())
        return check.refusal();
    Entry entry(context.book.ledger(), context.newId);
    entry.put(std::move(lot));
    return std::move(entry).change(
        (isNew ? phrase("Undo", "added a container of %1") : phrase("Undo", "changed a container of %1"))
            .arg(line->name));
}

Result<Change> moveStock(const VerbContext& context, stock::StockMove move,
                         std::optional<stock::Lot> newLot) {
    BookChecks check(context.book);
    const auto* line = check.row<stock::StockLine>("line", move.line);
    check.fact(move.date);
    if (move.why == StockWhy::Used || move.why == StockWhy::Lost)
        move.amount = outOf(move.amount);
    if (newLot && !check.failed())
        checkNewLot(check, context.book, move, *newLot);
    check.lotOf("lot", move.lot, move.line);
    if (const auto* order = check.row<stock::StockOrder>("stock_order", move.order))
        check.that(order->line == move.line && move.why == StockWhy::Bought, Fault::Inconsistent,
                   "stock_order");
    check.row<upkeep::Record>("record", move.record);
    checkShape(check, move);
    if (check.failed())
        return check.refusal();
    Entry entry(context.book.ledger(), context.newId);
    if (newLot) {
        newLot->id = LotId{};
        move.lot = entry.put(std::move(*newLot));
    }
    const auto text = moveText(*line, move);
    if (move.why == StockWhy::Used && move.lot)
        openLot(entry, context.book, *move.lot, move.date);
    entry.add(std::move(move));
    return std::move(entry).change(text);
}

Result<Change> countStock(const VerbContext& context, StockLineId line, std::optional<LotId> lot,
                          std::int64_t counted, calendar::Date date) {
    BookChecks check(context.book);
    const auto* card = check.row<stock::StockLine>("line", line);
    check.lotOf("lot", lot, line);
    check.fact(date);
    check.fromZero("counted", counted, kMostAmount);
    if (check.failed())
        return check.refusal();
    const stock::OnHand shelf = shelfOn(context.book.ledger(), *card, date);
    const std::int64_t found = counted - amountIn(shelf, lot);
    check.that(found != 0, Fault::NothingToDo, "counted", std::to_string(counted));
    check.that(found >= -kMostAmount && found <= kMostAmount, Fault::TooLarge, "counted",
               std::to_string(counted), std::to_string(kMostAmount));
    if (check.failed())
        return check.refusal();
    Entry entry(context.book.ledger(), context.newId);
    const auto add = [&](std::optional<LotId> from, std::int64_t amount) {
        entry.add(stock::StockMove{
            .line = line, .lot = from, .date = date, .amount = amount, .why = StockWhy::Counted});
    };
    if (lot || found > 0)
        add(lot, found);
    else
        for (const auto& [from, amount] : stock::drawFrom(shelf, -found))
            add(from, -amount);
    return std::move(entry).change(phrase("Undo", "counted %1").arg(amountOf(*card, counted)));
}

Result<Change> orderStock(const VerbContext& context, stock::StockOrder order) {
    BookChecks check(context.book);
    const auto* line = check.row<stock::StockLine>("line", order.line);
    check.fact(order.date);
    checkShape(check, order);
    if (check.failed())
        return check.refusal();
    Entry entry(context.book.ledger(), context.newId);
    const auto text = phrase("Undo", "ordered %1").arg(amountOf(*line, order.amount));
    entry.add(std::move(order));
    return std::move(entry).change(text);
}

}  // namespace wm::verbs

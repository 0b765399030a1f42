// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/shelf/shelf_rows.h"

#include <algorithm>

#include "ui/words/figures.h"
#include "ui/words/tr.h"

namespace wm::ui {

namespace {

QString whyWords(stock::StockWhy why) {
    switch (why) {
        case stock::StockWhy::Bought:
            return tr("bought");
        case stock::StockWhy::Used:
            return tr("used");
        case stock::StockWhy::Counted:
            return tr("counted");
        case stock::StockWhy::Lost:
            break;
    }
    return tr("lost");
}

QString onHandWords(const stock::OnHand& there, upkeep::Unit unit) {
    const QString all = amountWords(there.amount, unit);
    const auto old = std::max<std::int64_t>(there.amount, 0) - there.usable;
    return old > 0 ? tr("%1, %2 too old").arg(all, amountWords(old, unit)) : all;
}

TableRow moveRow(const book::Book& book, const stock::StockMove& move, upkeep::Unit unit, bool struck) {
    const auto* record = move.record ? book.ledger().find<upkeep::Record>(*move.record) : nullptr;
    const auto* machine = record == nullptr ? nullptr : book.ledger().find<items::Machine>(record->machine);
    QString why = text(move.note);
    if (record != nullptr && machine != nullptr)
        why = tr("%1, %2").arg(text(record->what), text(machine->name));
    return {.id = move.id.value(),
            .cells = {{.text = dayWords(move.date, book.today()), .sort = move.date.daysSinceEpoch()},
                      {.text = (move.amount > 0 ? QStringLiteral("+") : QString()) +
                               amountWords(move.amount, unit),
                       .sort = QVariant::fromValue<qlonglong>(move.amount),
                       .figure = true},
                      {.text = whyWords(move.why), .pencil = true},
                      {.text = why}},
            .struck = struck};
}

}  // namespace

std::vector<TableRow> shelfRows(const book::Book& book) {
    std::vector<TableRow> rows;
    for (const stock::OnHand& there : book.shelf()) {
        const auto* line = book.ledger().find<stock::StockLine>(there.line);
        if (line == nullptr || !line->active)
            continue;
        const bool low = there.usable < std::max<std::int64_t>(line->keep, 1);
        rows.push_back(
            {.id = line->id.value(),
             .cells = {{.text = text(line->name)},
                       {.text = text(line->partNumber), .pencil = true},
                       {.text = onHandWords(there, line->unit),
                        .sort = QVariant::fromValue<qlonglong>(there.amount),
                        .figure = true},
                       {.text = low ? tr("low") : QString()},
                       {.text = there.onOrder > 0 ? amountWords(there.onOrder, line->unit) : QString(),
                        .sort = QVariant::fromValue<qlonglong>(there.onOrder),
                        .figure = true},
                       {.text = line->keep > 0 ? amountWords(line->keep, line->unit) : QString(),
                        .sort = QVariant::fromValue<qlonglong>(line->keep),
                        .figure = true,
                        .pencil = true},
                       {.text = text(line->place), .pencil = true}},
             .toolTip = text(line->fits)});
    }
    std::sort(rows.begin(), rows.end(), [](const TableRow& a, const TableRow& b) {
        return a.cells[0].text.compare(b.cells[0].text, Qt::CaseInsensitive) < 0;
    });
    return rows;
}

std::vector<TableRow> lotRows(const book::Book& book, StockLineId id) {
    std::vector<TableRow> rows;
    const auto* line = book.ledger().find<stock::StockLine>(id);
    const stock::OnHand* there = book.onHand(id);
    if (line == nullptr || there == nullptr)
        return rows;
    for (const stock::LotOnHand& held : there->lots) {
        const auto* lot = held.lot ? book.ledger().find<stock::Lot>(*held.lot) : nullptr;
        const QString opened =
            lot != nullptr && lot->opened ? dayWords(*lot->opened, book.today()) : QString();
        const QString good = held.goodUntil ? dayWords(*held.goodUntil, book.today()) : QString();
        rows.push_back(
            {.id = lot == nullptr ? 0 : lot->id.value(),
             .cells = {{.text = lot == nullptr ? tr("loose") : text(lot->label)},
                       {.text = amountWords(held.amount, line->unit), .figure = true},
                       {.text = opened, .pencil = true},
                       {.text = held.tooOld ? tr("%1: too old").arg(good) : good, .pencil = !held.tooOld}}});
    }
    return rows;
}

std::vector<TableRow> moveRows(const book::Book& book, StockLineId id) {
    const auto* line = book.ledger().find<stock::StockLine>(id);
    if (line == nullptr)
        return {};
    std::vector<std::pair<const stock::StockMove*, bool>> moves;
    for (const stock::StockMove& move : book.ledger().all<stock::StockMove>())
        if (move.line == id)
            moves.emplace_back(&move, false);
    for (const stock::StockMove& move : book.ledger().struck<stock::StockMove>())
        if (move.line == id)
            moves.emplace_back(&move, true);
    std::sort(moves.begin(), moves.end(), [](const auto& a, const auto& b) {
        return std::pair(b.first->date, b.first->entered) < std::pair(a.first->date, a.first->entered);
    });
    std::vector<TableRow> rows;
    for (const auto& [move, struck] : moves)
        rows.push_back(moveRow(book, *move, line->unit, struck));
    return rows;
}

}  // namespace wm::ui

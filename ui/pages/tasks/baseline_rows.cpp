// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/tasks/baseline_rows.h"

#include "ui/pages/tasks/baseline_view.h"
#include "ui/pages/tasks/baseline_words.h"
#include "ui/pages/tasks/task_rows.h"
#include "ui/words/figures.h"
#include "ui/words/standing_words.h"

namespace wm::ui {

namespace {

constexpr std::size_t kDayColumn = 5;

// What is known so far, and what would say more.
QString askedWords(const book::DueLine& due, calendar::Date today) {
    const QString question = narrowingWords(due, today);
    return question.isEmpty() ? QString() : QStringLiteral("%1 · %2").arg(howFar(due, today), question);
}

TableRow rowOf(const book::Book& book, const book::DueLine& due, const BaselineAnswer* answer) {
    TableRow row{
        .id = due.task->task.value(),
        .cells = {{.text = text(due.task->name)},
                  {.text = text(due.task->position), .pencil = true},
                  {.text = intervalWords(book, *due.task), .unconfirmed = !due.task->confirmed},
                  {.text = consequenceWords(due.task->consequence)},
                  {.text = answer != nullptr ? saidWords(answer->said) : askedWords(due, book.today()),
                   .pencil = answer == nullptr},
                  {.text = QString()}},
        .toolTip = text(due.task->howTo)};
    if (answer == nullptr || answer->said == Said::Unknown)
        return row;
    const auto when = parseWhen(answer->when, book.today());
    const bool isMeant = answer->when.trimmed().isEmpty();
    row.cells[kDayColumn] = {.text = !when     ? answer->when
                                     : isMeant ? dayWords(dayMeant(book, due, answer->said), book.today())
                                               : whenWords(*when, book.today()),
                             .pencil = isMeant};
    return row;
}

}  // namespace

std::vector<TableRow> baselineRows(const book::Book& book, const BaselineAsking& asking) {
    const auto shown = asking.shown(book);
    std::vector<TableRow> rows;
    for (const TaskId task : shown.tasks)
        rows.push_back(rowOf(book, *book.dueLine(task), asking.answerTo(task)));
    if (shown.folded > 0) {
        const QString words = BaselineView::tr("%1 more (Space)").arg(shown.folded);
        rows.push_back({.id = kFold, .cells = {{.text = words, .pencil = true}, {}, {}, {}, {}, {}}});
    }
    return rows;
}

}  // namespace wm::ui

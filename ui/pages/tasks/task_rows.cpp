// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/tasks/task_rows.h"

#include <QCoreApplication>
#include <QStringList>

#include "ui/theme/tokens.h"
#include "ui/words/figures.h"
#include "ui/words/standing_words.h"

namespace wm::ui {

namespace {

QString tr(const char* words) {
    return QCoreApplication::translate("Tasks", words);
}

QString happeningWords(const upkeep::Trigger& trigger) {
    using upkeep::Happening;
    switch (trigger.happening) {
        case Happening::Wash:
            return tr("after each wash");
        case Happening::PressureWash:
            return tr("after each pressure wash");
        case Happening::MudDay:
            return tr("after each mud day");
        case Happening::Crash:
            return tr("after a crash");
        case Happening::BeforeRace:
            return tr("before each race");
        case Happening::Job:
            break;
    }
    return tr("after %1").arg(text(trigger.code));
}

QString lastWords(const ledger::Book& book, const ledger::DueLine& line) {
    if (line.last == nullptr)
        return line.countdown.noRecord ? tr("no record") : tr("never yet");
    return dayWords(line.last->date, book.today());
}

QString sourceWords(const upkeep::TaskVersion& task) {
    QString words = text(task.source);
    if (!task.page.empty())
        words += tr(", p. %1").arg(text(task.page));
    return words;
}

}  // namespace

QString intervalWords(const upkeep::TaskVersion& task) {
    QStringList limits;
    QStringList first;
    for (const upkeep::Limit& limit : task.limits) {
        limits += countWords(limit.every, limit.counter);
        if (limit.first)
            first += countWords(*limit.first, limit.counter);
    }
    QStringList parts;
    if (!limits.isEmpty())
        parts += tr("every %1")
                     .arg(limits.join(task.combine == upkeep::Combine::First ? tr(" or ") : tr(" and ")));
    if (!first.isEmpty())
        parts += tr("the first at %1").arg(first.join(tr(" or ")));
    if (task.nth > 0)
        parts += tr("every %1. time of %2").arg(task.nth).arg(text(task.nthOf));
    for (const upkeep::Trigger& trigger : task.triggers)
        parts += happeningWords(trigger);
    return parts.isEmpty() ? tr("when it is needed") : parts.join(tr(", "));
}

std::vector<TableRow> taskRows(const ledger::Book& book, std::optional<MachineId> machine,
                               const QPalette& palette) {
    const Tokens tokens = tokensFor(palette);
    std::vector<TableRow> rows;
    for (const items::Machine* card : book.machines()) {
        if (machine && *machine != card->id)
            continue;
        for (const ledger::DueLine& line : book.due(card->id))
            rows.push_back(
                {.id = line.task->task.value(),
                 .cells = {{.text = text(line.task->name), .icon = markIcon(markOf(line), tokens)},
                           {.text = text(card->name), .pencil = true},
                           {.text = text(line.task->position), .pencil = true},
                           {.text = intervalWords(*line.task), .unconfirmed = !line.task->confirmed},
                           {.text = consequenceWords(line.task->consequence)},
                           {.text = lastWords(book, line),
                            .sort = line.last == nullptr ? 0 : line.last->date.daysSinceEpoch()},
                           {.text = sourceWords(*line.task), .pencil = true}},
                 .toolTip = text(line.task->howTo)});
    }
    return rows;
}

}  // namespace wm::ui

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/tasks/task_rows.h"

#include <QStringList>
#include <algorithm>
#include <set>

#include "ui/drawing/mark_of.h"
#include "ui/theme/tokens.h"
#include "ui/words/figures.h"
#include "ui/words/standing_words.h"
#include "ui/words/tr.h"
#include "ui/words/weight_words.h"

namespace wm::ui {

namespace {

// What another task of the machine is called; a code that none has stays as it is.
QString jobName(const book::Book& book, MachineId machine, const std::string& code) {
    for (const auto* task : book.tasks(machine))
        if (task->code == code)
            return text(task->name);
    return text(code);
}

QString happeningWords(const book::Book& book, MachineId machine, const upkeep::Trigger& trigger) {
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
    return tr("after %1").arg(jobName(book, machine, trigger.code));
}

QString ordinalWords(std::int64_t n) {
    const std::int64_t last = n % 10;
    const bool isTeen = n % 100 / 10 == 1;
    return isTeen || last == 0 || last > 3 ? tr("%1th").arg(n)
           : last == 1                     ? tr("%1st").arg(n)
           : last == 2                     ? tr("%1nd").arg(n)
                                           : tr("%1rd").arg(n);
}

QString nthWords(std::int64_t nth, const QString& job) {
    return nth == 1 ? tr("each time with: %1").arg(job) : tr("with every %1: %2").arg(ordinalWords(nth), job);
}

QString lastWords(const book::Book& book, const book::DueLine& line) {
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

QString taskNameWords(const upkeep::TaskVersion& task, bool isBegun) {
    return isBegun ? tr("%1 (not saved)").arg(text(task.name)) : text(task.name);
}

TableRow lineRow(const book::Book& book, const QString& machine, const book::DueLine& line, int place,
                 bool isBegun, const Tokens& tokens) {
    const auto& task = *line.task;
    return {
        .id = task.task.value(),
        .cells = {{.text = taskNameWords(task, isBegun), .icon = markIcon(markOf(line), tokens)},
                  {.text = machine, .pencil = true},
                  {.text = text(task.position), .pencil = true},
                  {.text = intervalWords(book, task), .unconfirmed = !task.confirmed},
                  {.text = lastWords(book, line),
                   .sort = line.last == nullptr ? 0 : line.last->date.daysSinceEpoch()},
                  {.text = howFar(line, book.today()), .sort = place},
                  {.text = consequenceWords(task.consequence), .sort = static_cast<int>(task.consequence)},
                  {.text = sourceWords(task), .pencil = true}},
        .toolTip = text(task.howTo)};
}

// A row of a task that has no place on the due list.
TableRow plainRow(const book::Book& book, std::int64_t id, const QString& name, const QString& machine,
                  const upkeep::TaskVersion& task, const QString& due, int place) {
    return {.id = id,
            .cells = {{.text = name, .pencil = true},
                      {.text = machine, .pencil = true},
                      {.text = text(task.position), .pencil = true},
                      {.text = intervalWords(book, task), .pencil = true},
                      {.text = QString(), .sort = 0},
                      {.text = due, .sort = place, .pencil = true},
                      {.text = consequenceWords(task.consequence),
                       .sort = static_cast<int>(task.consequence),
                       .pencil = true},
                      {.text = sourceWords(task), .pencil = true}}};
}

QString typedName(const Draft& draft) {
    const QString name = draft.fields.at("name").trimmed();
    return name.isEmpty() ? tr("new task (not saved)") : tr("%1 (not saved)").arg(name);
}

}  // namespace

QString intervalWords(const book::Book& book, const upkeep::TaskVersion& task) {
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
        parts += nthWords(task.nth, jobName(book, task.machine, task.nthOf));
    for (const upkeep::Trigger& trigger : task.triggers)
        parts += happeningWords(book, task.machine, trigger);
    if (!task.weights.empty())
        parts += weightWords(task.weights);
    return parts.isEmpty() ? tr("when it is needed") : parts.join(tr(", "));
}

std::vector<QString> taskHeaders() {
    return {tr("Task"), tr("Machine"), tr("About"),          tr("Interval"),
            tr("Last"), tr("Due"),     tr("If left undone"), tr("Source")};
}

std::vector<const upkeep::TaskVersion*> switchedOff(const book::Book& book, MachineId machine) {
    std::set<TaskId> seen;
    std::vector<const upkeep::TaskVersion*> tasks;
    for (const auto& version : book.ledger().all<upkeep::TaskVersion>()) {
        if (version.machine != machine || !seen.insert(version.task).second)
            continue;
        const auto* now = book.task(version.task);
        if (now != nullptr && !now->active)
            tasks.push_back(now);
    }
    std::sort(tasks.begin(), tasks.end(), [](const auto* a, const auto* b) { return a->name < b->name; });
    return tasks;
}

std::vector<TableRow> taskRows(const book::Book& book, std::optional<MachineId> machine,
                               const TaskDrafts& drafts, const QPalette& palette) {
    const Tokens tokens = tokensFor(palette);
    std::vector<TableRow> rows;
    for (const items::Machine* card : book.machines()) {
        if (machine && *machine != card->id)
            continue;
        const QString name = text(card->name);
        for (const auto& [id, begun] : drafts.all())
            if (id < 0 && begun.base.machine == card->id)
                rows.push_back(plainRow(book, id, typedName(begun.draft), name, begun.base, QString(), -1));
        int place = 0;
        for (const book::DueLine& line : book.due(card->id))
            rows.push_back(
                lineRow(book, name, line, ++place, drafts.find(line.task->task.value()) != nullptr, tokens));
        for (const auto* task : switchedOff(book, card->id))
            rows.push_back(plainRow(book, task->task.value(),
                                    taskNameWords(*task, drafts.find(task->task.value()) != nullptr), name,
                                    *task, tr("switched off"), ++place));
    }
    return rows;
}

Confirmed confirmedOf(const book::Book& book, std::optional<MachineId> machine) {
    Confirmed count;
    for (const items::Machine* card : book.machines()) {
        if (machine && *machine != card->id)
            continue;
        for (const auto* task : book.tasks(card->id)) {
            ++count.all;
            count.confirmed += task->confirmed ? 1 : 0;
        }
    }
    return count;
}

}  // namespace wm::ui

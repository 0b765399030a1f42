// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/sheets/sheet_rows.h"

#include <QStringList>
#include <algorithm>

#include "ui/words/figures.h"
#include "ui/words/tr.h"

namespace wm::ui {

namespace {

QString jobName(const book::Book& book, const weekend::SheetJob& job) {
    if (const auto* task = job.task ? book.task(*job.task) : nullptr)
        return text(task->name);
    if (const auto* snag = job.snag ? book.ledger().find<upkeep::Snag>(*job.snag) : nullptr)
        return text(snag->what);
    return {};
}

TableRow issuedRow(const book::Book& book, const weekend::IssuedSheet& sheet) {
    const auto* machine = book.ledger().find<items::Machine>(sheet.machine);
    return {.id = sheet.id.value(),
            .cells = {{.text = tr("No. %1").arg(sheet.number),
                       .sort = QVariant::fromValue<qlonglong>(sheet.number)},
                      {.text = machine == nullptr ? QString() : text(machine->name)},
                      {.text = text(sheet.target), .pencil = true},
                      {.text = QString::number(sheet.jobs.size()), .figure = true},
                      {.text = dayWords(sheet.date, book.today()), .sort = sheet.date.daysSinceEpoch()}}};
}

}  // namespace

std::vector<TableRow> sheetRows(const book::Book& book, std::optional<MachineId> machine) {
    std::vector<TableRow> rows;
    for (const items::Machine* card : book.machines()) {
        if (machine && *machine != card->id)
            continue;
        const auto jobs = book.pickedJobs(card->id).size();
        if (jobs == 0)
            continue;
        const auto& events = book.ahead(card->id).events;
        rows.push_back(
            {.id = card->id.value(),
             .cells = {{.text = tr("Proof")},
                       {.text = text(card->name)},
                       {.text = events.empty() ? QString() : text(events.front().name), .pencil = true},
                       {.text = QString::number(jobs), .figure = true},
                       {.text = tr("not issued"), .pencil = true}}});
    }
    std::vector<const weekend::IssuedSheet*> issued;
    for (const auto& sheet : book.ledger().all<weekend::IssuedSheet>())
        if (!machine || *machine == sheet.machine)
            issued.push_back(&sheet);
    std::sort(issued.begin(), issued.end(),
              [](const auto* a, const auto* b) { return a->number > b->number; });
    for (const auto* sheet : issued)
        rows.push_back(issuedRow(book, *sheet));
    return rows;
}

QString issuedWords(const book::Book& book, const weekend::IssuedSheet& sheet) {
    QStringList lines;
    for (const weekend::SheetJob& job : sheet.jobs)
        lines += QStringLiteral("– ") + jobName(book, job);
    return tr("Sheet no. %1 went out with these jobs:").arg(sheet.number) + QLatin1Char('\n') +
           lines.join(QLatin1Char('\n'));
}

}  // namespace wm::ui

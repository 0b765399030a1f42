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
    // One that was taken back since, or put right: the paper has its words.
    for (const auto& snag : book.ledger().struck<upkeep::Snag>())
        if (snag.id == job.snag)
            return text(snag.what);
    return {};
}

TableRow issuedRow(const book::Book& book, const weekend::IssuedSheet& sheet) {
    const auto* machine = book.ledger().find<items::Machine>(sheet.machine);
    return {.id = sheet.id.value(),
            .cells = {{.text = isVoid(book, sheet) ? tr("No. %1, void").arg(sheet.number)
                                                   : tr("No. %1").arg(sheet.number),
                       .sort = QVariant::fromValue<qlonglong>(sheet.number)},
                      {.text = machine == nullptr ? QString() : text(machine->name)},
                      {.text = text(sheet.target), .pencil = true},
                      {.text = QString::number(sheet.jobs.size()), .figure = true},
                      {.text = dayWords(sheet.date, book.today()), .sort = sheet.date.daysSinceEpoch()}},
            .struck = isVoid(book, sheet)};
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
    const auto& ledger = book.ledger();
    for (const auto sheets : {ledger.all<weekend::IssuedSheet>(), ledger.struck<weekend::IssuedSheet>()})
        for (const auto& sheet : sheets)
            if (!machine || *machine == sheet.machine)
                issued.push_back(&sheet);
    std::sort(issued.begin(), issued.end(),
              [](const auto* a, const auto* b) { return a->number > b->number; });
    for (const auto* sheet : issued)
        rows.push_back(issuedRow(book, *sheet));
    return rows;
}

bool isVoid(const book::Book& book, const weekend::IssuedSheet& sheet) {
    return book.ledger().strikeOf(sheet.id.value()) != nullptr;
}

const weekend::IssuedSheet* issuedSheet(const book::Book& book, SheetId id) {
    const auto& ledger = book.ledger();
    for (const auto sheets : {ledger.all<weekend::IssuedSheet>(), ledger.struck<weekend::IssuedSheet>()})
        for (const auto& sheet : sheets)
            if (sheet.id == id)
                return &sheet;
    return nullptr;
}

QString issuedWords(const book::Book& book, const weekend::IssuedSheet& sheet) {
    QStringList lines;
    if (const auto* strike = book.ledger().strikeOf(sheet.id.value()))
        lines += tr("Void since %1: %2").arg(dayWords(strike->date, book.today()), text(strike->reason));
    for (const weekend::SheetJob& job : sheet.jobs)
        lines += QStringLiteral("– ") + jobName(book, job);
    return tr("Sheet no. %1 went out with these jobs:").arg(sheet.number) + QLatin1Char('\n') +
           lines.join(QLatin1Char('\n'));
}

}  // namespace wm::ui

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/measurements/measurement_rows.h"

#include <algorithm>

#include "core/upkeep/measures.h"
#include "ui/words/figures.h"
#include "ui/words/tr.h"

namespace wm::ui {

namespace {

constexpr std::size_t kDay = 4;

QString decimalWords(const units::Decimal& value) {
    return QString::fromStdString(value.text(decimalMark()));
}

// The limits of today's version of the task: what counts now, not what counted then.
const upkeep::MeasurePoint* pointOf(const book::Book& book, const upkeep::Record& record,
                                    const std::string& name) {
    const upkeep::TaskVersion* task = record.task ? book.task(*record.task) : nullptr;
    return task == nullptr ? nullptr : upkeep::pointNamed(*task, name);
}

QString limitWords(const upkeep::MeasurePoint* point) {
    if (point == nullptr || (!point->least && !point->most))
        return tr("no limit typed");
    if (point->least && point->most)
        return tr("%1 to %2").arg(decimalWords(*point->least), decimalWords(*point->most));
    return point->least ? tr("at least %1").arg(decimalWords(*point->least))
                        : tr("at most %1").arg(decimalWords(*point->most));
}

QString judged(const upkeep::MeasurePoint* point, const units::Decimal& value) {
    const QString limits = limitWords(point);
    if (point == nullptr || !upkeep::limitReached(*point, value))
        return limits;
    return upkeep::isOutside(*point, value) ? tr("OUTSIDE %1").arg(limits)
                                            : tr("AT THE LIMIT, %1").arg(limits);
}

TableRow rowOf(const book::Book& book, const items::Machine& machine, const upkeep::Record& record,
               const upkeep::Measured& measured) {
    const auto* point = pointOf(book, record, measured.name);
    const bool hasLimit = point != nullptr && (point->least || point->most);
    const QString value = decimalWords(measured.value) + QChar(0x00A0) + text(measured.unit);
    return {
        .id = record.id.value(),
        .cells = {{.text = text(measured.name)},
                  {.text = text(machine.name), .pencil = true},
                  {.text = value, .sort = measured.value.toDouble(), .figure = true},
                  {.text = judged(point, measured.value),
                   .pencil = true,
                   .over = point != nullptr && upkeep::limitReached(*point, measured.value).has_value(),
                   .unconfirmed = hasLimit && !point->confirmed},
                  {.text = dayWords(record.date, book.today()), .sort = record.date.daysSinceEpoch()},
                  {.text = record.statedBest ? hoursWords(*record.statedBest) : QString(), .figure = true},
                  {.text = text(record.what), .pencil = true}}};
}

}  // namespace

std::vector<TableRow> measurementRows(const book::Book& book, std::optional<MachineId> machine) {
    std::vector<TableRow> rows;
    for (const items::Machine* card : book.machines()) {
        if (machine && *machine != card->id)
            continue;
        for (const upkeep::Record* record : book.records(card->id, false))
            for (const upkeep::Measured& measured : record->measured)
                rows.push_back(rowOf(book, *card, *record, measured));
    }
    std::stable_sort(rows.begin(), rows.end(), [](const TableRow& a, const TableRow& b) {
        return a.cells[kDay].sort.toInt() > b.cells[kDay].sort.toInt();
    });
    return rows;
}

}  // namespace wm::ui

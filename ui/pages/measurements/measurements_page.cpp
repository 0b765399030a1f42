// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/measurements/measurements_page.h"

#include "ui/pages/measurements/measurement_rows.h"
#include "ui/pages/table_page.h"
#include "ui/workbench/workbench.h"

namespace wm::ui {

Page* makeMeasurementsPage(const PageTools& tools, QWidget* parent) {
    return new TablePage(
        tools,
        {.name = QStringLiteral("measurements"),
         .spoken = TablePage::tr("measurements"),
         .headers = {TablePage::tr("Measured"), TablePage::tr("Machine"), TablePage::tr("Value"),
                     TablePage::tr("Limits"), TablePage::tr("Day"), TablePage::tr("Total then"),
                     TablePage::tr("At the job")},
         .stretchedColumn = 6,
         .findWords = TablePage::tr("find a measurement"),
         .emptyWords = TablePage::tr(
             "Nothing was measured yet. Values are typed with the job: press F3, choose a task that "
             "has something to measure."),
         .rows =
             [](const TablePage& page) {
                 return measurementRows(*page.bench().book(), page.bench().chosen());
             }},
        parent);
}

}  // namespace wm::ui

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/shell/page_table.h"

#include "ui/pages/bench/bench_page.h"
#include "ui/pages/machine/machine_page.h"
#include "ui/pages/measurements/measurements_page.h"
#include "ui/pages/page.h"
#include "ui/pages/sheets/sheets_page.h"
#include "ui/pages/shelf/shelf_page.h"
#include "ui/pages/tasks/tasks_desk.h"
#include "ui/pages/torque/torque_desk.h"
#include "ui/pages/weekend/weekend_page.h"
#include "ui/words/tr.h"

namespace wm::ui {

namespace {

template <class P>
PageEntry page(PageId id, const QString& name) {
    return {id, name, [](const PageTools& tools, QWidget* parent) -> Page* { return new P(tools, parent); }};
}

}  // namespace

std::vector<PageEntry> pageTable() {
    return {
        page<BenchPage>(PageId::Bench, tr("&Bench")),
        page<MachinePage>(PageId::Machine, tr("&Machine")),
        page<WeekendPage>(PageId::Weekend, tr("&Weekend")),
        page<ShelfPage>(PageId::Shelf, tr("&Shelf")),
        page<TorqueDesk>(PageId::Torque, tr("&Torque")),
        {PageId::Measurements, tr("M&easurements"), makeMeasurementsPage},
        page<TasksDesk>(PageId::Tasks, tr("Tas&ks")),
        page<SheetsPage>(PageId::Sheets, tr("S&heets")),
    };
}

}  // namespace wm::ui

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
#include "ui/pages/weekend/weekend_desk.h"
#include "ui/words/tr.h"

namespace wm::ui {

namespace {

template <class P>
PageEntry page(PageId id, const char* code, const QString& name) {
    return {id, code, name,
            [](const PageTools& tools, QWidget* parent) -> Page* { return new P(tools, parent); }};
}

}  // namespace

std::vector<PageEntry> pageTable() {
    return {
        page<BenchPage>(PageId::Bench, "bench", tr("&Bench")),
        page<MachinePage>(PageId::Machine, "machine", tr("&Machine")),
        page<WeekendDesk>(PageId::Weekend, "weekend", tr("&Weekend")),
        page<ShelfPage>(PageId::Shelf, "shelf", tr("&Shelf")),
        page<TorqueDesk>(PageId::Torque, "torque", tr("&Torque")),
        {PageId::Measurements, "measurements", tr("M&easurements"), makeMeasurementsPage},
        page<TasksDesk>(PageId::Tasks, "tasks", tr("Tas&ks")),
        page<SheetsPage>(PageId::Sheets, "sheets", tr("S&heets")),
    };
}

}  // namespace wm::ui

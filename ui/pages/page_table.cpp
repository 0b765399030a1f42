// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/page_table.h"

#include "ui/pages/bench/bench_page.h"
#include "ui/pages/page.h"
#include "ui/pages/plain_page.h"
#include "ui/pages/sheets/sheets_page.h"
#include "ui/pages/shelf/shelf_page.h"
#include "ui/pages/table_page.h"
#include "ui/pages/torque/torque_page.h"
#include "ui/pages/weekend/weekend_page.h"

namespace wm::ui {

namespace {

PageEntry plain(PageId id, const QString& name, const QString& sentence) {
    return {id, name, [name, sentence](const PageTools& tools, QWidget* parent) -> Page* {
                return new PlainPage(tools, QString(name).remove(QLatin1Char('&')), sentence, parent);
            }};
}

template <class P>
PageEntry page(PageId id, const QString& name) {
    return {id, name, [](const PageTools& tools, QWidget* parent) -> Page* { return new P(tools, parent); }};
}

}  // namespace

std::vector<PageEntry> pageTable() {
    return {
        {PageId::Bench, QObject::tr("&Bench"),
         [](const PageTools& tools, QWidget* parent) -> Page* { return new BenchPage(tools, parent); }},
        plain(PageId::Machine, QObject::tr("&Machine"),
              QObject::tr("What is fitted and what was done will stand here.")),
        page<WeekendPage>(PageId::Weekend, QObject::tr("&Weekend")),
        page<ShelfPage>(PageId::Shelf, QObject::tr("&Shelf")),
        page<TorquePage>(PageId::Torque, QObject::tr("&Torque")),
        {PageId::Measurements, QObject::tr("M&easurements"), makeMeasurementsPage},
        {PageId::Tasks, QObject::tr("Tas&ks"), makeTasksPage},
        page<SheetsPage>(PageId::Sheets, QObject::tr("S&heets")),
    };
}

}  // namespace wm::ui

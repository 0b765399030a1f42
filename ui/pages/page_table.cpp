// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/page_table.h"

#include "ui/pages/bench/bench_page.h"
#include "ui/pages/page.h"
#include "ui/pages/plain_page.h"

namespace wm::ui {

namespace {

PageEntry plain(PageId id, const QString& name, const QString& sentence) {
    return {id, name, [name, sentence](const PageTools& tools, QWidget* parent) -> Page* {
                return new PlainPage(tools, QString(name).remove(QLatin1Char('&')), sentence, parent);
            }};
}

}  // namespace

std::vector<PageEntry> pageTable() {
    return {
        {PageId::Bench, QObject::tr("&Bench"),
         [](const PageTools& tools, QWidget* parent) -> Page* { return new BenchPage(tools, parent); }},
        plain(PageId::Machine, QObject::tr("&Machine"),
              QObject::tr("What is fitted and what was done will stand here.")),
        plain(PageId::Weekend, QObject::tr("&Weekend"),
              QObject::tr("The jobs picked for the weekend will stand here in working order.")),
        plain(PageId::Shelf, QObject::tr("&Shelf"), QObject::tr("Parts and fluids on hand will stand here.")),
        plain(PageId::Torque, QObject::tr("&Torque"),
              QObject::tr(
                  "The joints of each machine will stand here, with the torque you typed from its manual.")),
        plain(PageId::Measurements, QObject::tr("M&easurements"),
              QObject::tr("What was measured at jobs will stand here, with its limits.")),
        plain(PageId::Tasks, QObject::tr("Tas&ks"),
              QObject::tr("The tasks of each machine will stand here, with their intervals.")),
        plain(PageId::Sheets, QObject::tr("S&heets"),
              QObject::tr("Job sheets will stand here, to preview and print.")),
    };
}

}  // namespace wm::ui

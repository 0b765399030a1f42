// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/shell/notebook_totals.h"

#include <QGridLayout>
#include <QLabel>
#include <array>

#include "ui/theme/type.h"
#include "ui/words/figures.h"
#include "ui/words/notebook_words.h"

namespace wm::ui {

namespace {

using notebook::Totals;

constexpr auto kMostMachineRows = 4UL;

std::array<QString, 8> totalsHeads() {
    return {NotebookTotals::tr("goes in"),        NotebookTotals::tr("lines"),
            NotebookTotals::tr("outings"),        NotebookTotals::tr("hours as noted"),
            NotebookTotals::tr("meter readings"), NotebookTotals::tr("washes"),
            NotebookTotals::tr("jobs"),           NotebookTotals::tr("minutes of jobs")};
}

std::array<QString, 8> totalsRow(const QString& name, const Totals& totals) {
    const auto count = [](std::size_t many) { return QString::number(many); };
    return {name,
            count(totals.lines),
            count(totals.outings),
            QString::fromStdString(notebook::hoursIn(totals.hours, decimalMark())),
            count(totals.readings),
            count(totals.washes),
            count(totals.jobs),
            QString::number(totals.minutes.count())};
}

}  // namespace

NotebookTotals::NotebookTotals(QWidget* parent) : QWidget(parent), grid_(new QGridLayout(this)) {
    setObjectName(QStringLiteral("notebook-totals"));
    grid_->setContentsMargins(0, 0, 0, 0);
    grid_->setHorizontalSpacing(kSpaceSection);
    grid_->setVerticalSpacing(2);
    grid_->setColumnStretch(static_cast<int>(totalsHeads().size()), 1);
}

void NotebookTotals::show(const NotebookStanding& standing) {
    std::vector<std::array<QString, 8>> rows{totalsHeads()};
    std::map<QString, Totals> named;
    for (const auto& [name, of] : standing.byMachine())
        named[cellsInWords({name})] += of;
    for (const auto& [name, of] : named)
        if (rows.size() <= kMostMachineRows)
            rows.push_back(totalsRow(name, of));
    if (rows.size() != 2)
        rows.push_back(totalsRow(tr("all of it"), standing.goesIn()));
    const std::size_t columns = rows.front().size();
    while (figures_.size() < rows.size() * columns) {
        const auto at = figures_.size();
        const auto row = static_cast<int>(at / columns);
        const auto column = static_cast<int>(at % columns);
        auto* label = new QLabel(this);
        label->setTextFormat(Qt::PlainText);
        label->setObjectName(QStringLiteral("notebook-total-%1-%2").arg(row).arg(column));
        if (row == 0)
            label->setProperty("role", QStringLiteral("note"));
        grid_->addWidget(label, row, column, column == 0 ? Qt::AlignLeft : Qt::AlignRight);
        figures_.push_back(label);
    }
    for (std::size_t at = 0; at < figures_.size(); ++at) {
        const bool used = at / columns < rows.size();
        figures_[at]->setVisible(used);
        figures_[at]->setText(used ? rows[at / columns].at(at % columns) : QString());
    }
}

}  // namespace wm::ui

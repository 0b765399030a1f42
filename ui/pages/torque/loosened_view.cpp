// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/torque/loosened_view.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>

#include "ui/pages/columns.h"
#include "ui/pages/torque/mark_form.h"
#include "ui/tables/row_table.h"
#include "ui/words/drawer_words.h"
#include "ui/words/figures.h"
#include "ui/workbench/guide.h"
#include "ui/workbench/workbench.h"

namespace wm::ui {

namespace {

Cell figure(std::int64_t value, const QString& words) {
    return {.text = words, .sort = qlonglong{value}, .figure = true};
}

TableRow rowOf(const book::Book& book, const book::CameLoose& line) {
    const auto* machine = book.ledger().find<items::Machine>(line.joint->machine);
    const auto& figures = line.figures;
    const bool stands = line.comparison && line.comparison->stands;
    return {.id = line.joint->joint.value(),
            .cells = {{.text = text(line.joint->name)},
                      {.text = machine == nullptr ? QString() : text(machine->name)},
                      figure(figures.moved, QString::number(figures.moved)),
                      figure(figures.checks, QString::number(figures.checks)),
                      figure(figures.ridden.count(), hoursWords(figures.ridden)),
                      figure(figures.degrees,
                             figures.degrees > 0 ? QStringLiteral("%1°").arg(figures.degrees) : QString()),
                      {.text = figures.last ? dayWords(*figures.last, book.today()) : QString(),
                       .sort = figures.last ? figures.last->daysSinceEpoch() : 0},
                      {.text = stands ? LoosenedView::tr("more often than its kind") : QString()}}};
}

}  // namespace

LoosenedView::LoosenedView(const PageTools& tools, QWidget* parent)
    : TorqueView(tools, parent),
      words_(plainLabel(this, nullptr)),
      joints_(new RowTable({tr("Joint"), tr("Machine"), tr("Moved"), tr("Checks"), tr("Ridden between"),
                            tr("Furthest"), tr("Last moved"), tr("Loosens")},
                           0, this)),
      recheck_(new QPushButton(tr("Re-checked…"), this)) {
    words_->setObjectName(QStringLiteral("looseWords"));
    joints_->setObjectName(QStringLiteral("looseJoints"));
    joints_->setAccessibleName(tr("Joints that were re-checked"));
    recheck_->setObjectName(QStringLiteral("looseRecheck"));
    auto* buttons = new QHBoxLayout;
    buttons->addWidget(recheck_);
    buttons->addStretch();
    auto* lines = linesOf(this);
    lines->addWidget(words_);
    lines->addWidget(joints_, 1);
    lines->addLayout(buttons);
    connect(recheck_, &QPushButton::clicked, this, &LoosenedView::recheck);
    connect(joints_, &RowTable::activatedId, this, &LoosenedView::recheck);
}

QWidget* LoosenedView::firstFocus() {
    return joints_;
}

void LoosenedView::refresh() {
    const auto book = workbench().book();
    const auto machine = workbench().chosen();
    std::vector<TableRow> rows;
    QString words;
    for (const book::CameLoose& line : book::cameLoose(*book, machine)) {
        rows.push_back(rowOf(*book, line));
        if (const QString statement = comparisonWords(line); !statement.isEmpty())
            words += statement + QLatin1Char('\n');
    }
    if (rows.empty())
        words =
            tr("Nobody has re-checked a joint yet. Look at the paint lines after a ride, and say what moved: "
               "one that moves again and again needs more than the wrench.");
    else if (words.isEmpty())
        words = tr("No joint loosens more often than its kind, as far as the checks can tell.");
    words_->setText(words.trimmed());
    joints_->setVisible(!rows.empty());
    recheck_->setVisible(!rows.empty());
    recheck_->setEnabled(!workbench().readOnly());
    joints_->setColumnHidden(1, machine.has_value());
    joints_->show(std::move(rows));
}

void LoosenedView::recheck() {
    if (const auto id = joints_->chosenId())
        guide().enter(new MarkForm(workbench(), JointId(*id), fastening::MarkKind::FoundFine));
}

}  // namespace wm::ui

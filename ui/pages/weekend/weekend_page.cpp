// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/weekend/weekend_page.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QScrollBar>
#include <QSplitter>
#include <QVBoxLayout>
#include <algorithm>

#include "core/verbs/verbs.h"
#include "ui/pages/columns.h"
#include "ui/pages/key_row.h"
#include "ui/pages/weekend/opening_view.h"
#include "ui/pages/weekend/weekend_opening.h"
#include "ui/pages/weekend/weekend_rows.h"
#include "ui/pages/weekend/window_line.h"
#include "ui/tables/row_table.h"
#include "ui/theme/type.h"
#include "ui/workbench/guide.h"
#include "ui/workbench/workbench.h"

namespace wm::ui {

namespace {

QWidget* titled(const QString& title, QWidget* content, QWidget* parent) {
    auto* box = new QWidget(parent);
    auto* label = new QLabel(title, box);
    label->setProperty("role", QStringLiteral("section"));
    label->setBuddy(content);
    auto* lines = new QVBoxLayout(box);
    lines->setContentsMargins(0, 0, 0, 0);
    lines->setSpacing(kSpaceClose);
    lines->addWidget(label);
    lines->addWidget(content, 1);
    return box;
}

}  // namespace

WeekendPage::WeekendPage(const PageTools& tools, QWidget* parent)
    : Page(tools, parent),
      window_(new WindowLine(tools.workbench, this)),
      fit_(new QLabel(this)),
      jobs_(
          new RowTable({QString(), tr("Job"), tr("Machine"), tr("How far"), tr("Min"), tr("Kit")}, 1, this)),
      opening_(new OpeningView(this)),
      order_(new RowTable({tr("Clock"), tr("What"), tr("Min")}, 1, this)),
      also_(new QLabel(this)),
      sheet_(new QPushButton(tr("Job sheet (Ctrl+P)"), this)) {
    jobs_->setObjectName(QStringLiteral("weekendJobs"));
    jobs_->setAccessibleName(tr("What wants doing; Space puts a job in or takes it out"));
    order_->setObjectName(QStringLiteral("weekendOrder"));
    order_->setAccessibleName(tr("Working order; Enter opens the access step"));
    order_->setMostLines(RowTable::kAsManyAsItTakes);
    order_->setSortingEnabled(false);
    opening_->setAccessibleName(tr("What comes off"));
    sheet_->setObjectName(QStringLiteral("weekendSheet"));
    sheet_->setShortcut(QKeySequence(Qt::CTRL | Qt::Key_P));
    also_->setWordWrap(true);
    also_->setProperty("role", QStringLiteral("note"));
    fit_->setFont(sectionFont(font()));
    layOut();
    connect(jobs_, &RowTable::toggledId, this, &WeekendPage::toggle);
    connect(jobs_, &RowTable::activatedId, this, &WeekendPage::record);
    connect(order_, &RowTable::activatedId, this, &WeekendPage::openStep);
    connect(sheet_, &QPushButton::clicked, this, [this] { guide().goTo(PageId::Sheets); });
}

void WeekendPage::layOut() {
    auto* head = new QHBoxLayout;
    head->addWidget(window_, 1);
    head->addWidget(fit_);
    auto* columns = columnsOf(this, {{titled(tr("Wants doing"), jobs_, this), 550},
                                     {titled(tr("What comes off"), opening_, this), 320},
                                     {titled(tr("In this order"), order_, this), 380}});
    const auto onChosen = [this](void (WeekendPage::*act)(std::int64_t)) {
        return [this, act] {
            if (const auto id = jobs_->chosenId())
                (this->*act)(*id);
        };
    };
    auto* foot = new QHBoxLayout;
    foot->addWidget(also_, 1);
    foot->addLayout(
        keyRow(this, {{QStringLiteral("weekend-pick"), tr("in or out Space"), onChosen(&WeekendPage::toggle)},
                      {QStringLiteral("weekend-record"), tr("record Enter"), onChosen(&WeekendPage::record)},
                      {QStringLiteral("weekend-step"), tr("open the step Enter"), [this] {
                           if (const auto id = order_->chosenId())
                               openStep(*id);
                       }}}));
    foot->addWidget(sheet_);
    auto* lines = pageLines(this);
    lines->setSpacing(kSpaceGroup);
    lines->addLayout(head);
    lines->addWidget(columns, 1);
    lines->addLayout(foot);
}

QWidget* WeekendPage::firstFocus() {
    return jobs_;
}

void WeekendPage::refresh() {
    const auto book = workbench().book();
    const auto chosen = workbench().chosen();
    const book::Evening evening = book::eveningOf(*book, chosen);
    window_->refresh();
    fit_->setText(fitWords(evening));
    jobs_->setColumnHidden(2, chosen.has_value());
    jobs_->show(wantsDoing(*book, chosen, palette()));
    opening_->setOpening(openingOf(*book, evening));
    order_->show(workingOrder(*book, evening));
    const bool nothing = evening.machines.empty();
    also_->setText(nothing ? tr("Nothing is in yet: choose a job and press Space. Enter records it as done.")
                           : alsoOpenWords(evening));
    sheet_->setEnabled(!nothing);
}

// A job that is put in goes up to the others, out of sight; the hand stays where it was and goes on with the
// next.
void WeekendPage::toggle(std::int64_t id) {
    const auto rowOf = [this](std::int64_t job) {
        const auto ids = jobs_->shownIds();
        return std::find(ids.begin(), ids.end(), job) - ids.begin();
    };
    const auto before = jobs_->shownIds();
    const auto row = rowOf(id);
    const auto beside = static_cast<std::size_t>(row) + 1;
    const int scrolled = jobs_->verticalScrollBar()->value();
    putInOrOut(id);
    if (rowOf(id) == row || before.size() < 2)
        return;
    jobs_->verticalScrollBar()->setValue(scrolled);
    jobs_->choose(beside < before.size() ? before[beside] : before[before.size() - 2]);
}

void WeekendPage::putInOrOut(std::int64_t id) {
    const auto book = workbench().book();
    if (const auto* line = book->dueLine(TaskId(id))) {
        workbench().perform(
            [machine = line->machine, id, in = !line->picked](const verbs::VerbContext& context) {
                return verbs::pick(context, machine, TaskId(id), std::nullopt, in);
            });
        return;
    }
    const auto* snag = book->ledger().find<upkeep::Snag>(SnagId(id));
    if (snag == nullptr)
        return;
    for (const book::OpenSnag& open : book->snags(snag->machine))
        if (open.snag->id == snag->id)
            workbench().perform(
                [machine = snag->machine, id, in = !open.picked](const verbs::VerbContext& context) {
                    return verbs::pick(context, machine, std::nullopt, SnagId(id), in);
                });
}

void WeekendPage::record(std::int64_t id) {
    const auto book = workbench().book();
    if (const auto* line = book->dueLine(TaskId(id)))
        guide().enter({.kind = EntryKind::Job, .machine = line->machine, .task = TaskId(id)});
    else if (const auto* snag = book->ledger().find<upkeep::Snag>(SnagId(id)))
        guide().enter({.kind = EntryKind::Job, .machine = snag->machine, .snag = SnagId(id)});
}

// What comes off or goes on in that line, in its fields.
void WeekendPage::openStep(std::int64_t row) {
    const auto book = workbench().book();
    const auto* step = stepAt(*book, book::eveningOf(*book, workbench().chosen()), row);
    if (step != nullptr)
        guide().goTo(PageId::Weekend,
                     {.view = Aim::View::Steps, .machine = step->machine, .step = step->step});
}

}  // namespace wm::ui

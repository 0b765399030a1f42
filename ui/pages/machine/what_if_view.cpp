// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/machine/what_if_view.h"

#include <QComboBox>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QToolButton>
#include <QVBoxLayout>
#include <climits>
#include <cmath>

#include "core/book/round.h"
#include "ui/drawing/mark_of.h"
#include "ui/entry/choice.h"
#include "ui/entry/day_words.h"
#include "ui/tables/row_table.h"
#include "ui/theme/plain.h"
#include "ui/theme/tokens.h"
#include "ui/theme/type.h"
#include "ui/words/chance_words.h"
#include "ui/words/error_words.h"
#include "ui/words/figures.h"
#include "ui/words/name_words.h"
#include "ui/words/standing_words.h"
#include "ui/words/tr.h"
#include "ui/workbench/workbench.h"

namespace wm::ui {

namespace {

constexpr double kSameChance = 0.005;  // reads the same

QString outlookWords(const book::Book& book, MachineId machine) {
    const auto& chances = book.chances(machine);
    QStringList parts{onTheWayWords(chances)};
    for (const QString& more : {firstOnTheWayWords(book, chances), trustWords(chances.trust)})
        if (!more.isEmpty())
            parts << more;
    return parts.join(QStringLiteral("; "));
}

// "Sat 16 May"; how early and how late it may be is in the strip.
QString whenWords(const book::DueLine& line, calendar::Date today) {
    const auto& standing = line.standing;
    if (standing.kind == outlook::StandingKind::Overdue || standing.kind == outlook::StandingKind::MayBeOver)
        return standingWords(line);
    if (!standing.likely)
        return tr("not within two years");
    return dayWords(*standing.likely, today);
}

Cell chanceCell(const book::DueLine& line) {
    const auto& chance = line.standing.chance;
    return {.text = chance ? chanceWords(*chance) : QString(), .sort = chance.value_or(-1), .figure = true};
}

bool readsTheSame(const book::DueLine& a, const book::DueLine& b) {
    return a.standing.kind == b.standing.kind && a.standing.likely == b.standing.likely &&
           std::abs(a.standing.chance.value_or(0) - b.standing.chance.value_or(0)) < kSameChance;
}

}  // namespace

WhatIfView::WhatIfView(const PageTools& tools, QWidget* parent)
    : QWidget(parent),
      tools_(tools),
      often_(new QComboBox(this)),
      ground_(new QComboBox(this)),
      day_(new QLineEdit(this)),
      fault_(plainLabel(this, "note")),
      asItIs_(plainLabel(this, "note")),
      ifSo_(plainLabel(this, "note")),
      nothing_(plainWords(
          this, tr("Suppose something above: what would then fall due otherwise is listed here."), "note")),
      rows_(new RowTable(
          {tr("Task"), tr("As it is"), tr("chance by the flag"), tr("If so"), tr("chance by the flag")}, 0,
          this)) {
    setObjectName(QStringLiteral("what-if"));
    often_->setObjectName(QStringLiteral("what-if-ridden"));
    often_->setAccessibleName(tr("how often it is ridden"));
    const std::pair<QString, double> paces[] = {{tr("ridden as now"), 1.0},
                                                {tr("half as often"), 0.5},
                                                {tr("half as much again"), 1.5},
                                                {tr("twice as often"), 2.0},
                                                {tr("three times as often"), 3.0}};
    for (const auto& [words, times] : paces)
        often_->addItem(words, times);
    ground_->setObjectName(QStringLiteral("what-if-ground"));
    ground_->setAccessibleName(tr("the ground"));
    ground_->addItem(tr("on ground as now"));
    for (const auto name : base::Names<usage::Ground>::names)
        if (const auto ground = base::fromName<usage::Ground>(name); ground != usage::Ground::Unstated)
            ground_->addItem(tr("all on %1").arg(nameWords(name)), asData(*ground));
    day_->setObjectName(QStringLiteral("what-if-event"));
    day_->setAccessibleName(tr("one race more, on"));
    day_->setPlaceholderText(tr("one race more on …"));
    day_->setFixedWidth(fontMetrics().averageCharWidth() * 28);
    fault_->setObjectName(QStringLiteral("what-if-fault"));
    asItIs_->setObjectName(QStringLiteral("what-if-now"));
    ifSo_->setObjectName(QStringLiteral("what-if-then"));
    rows_->setObjectName(QStringLiteral("what-if-rows"));
    rows_->setAccessibleName(tr("what would fall due otherwise"));
    connect(often_, &QComboBox::activated, this, &WhatIfView::workOut);
    connect(ground_, &QComboBox::activated, this, &WhatIfView::workOut);
    connect(day_, &QLineEdit::textEdited, this, &WhatIfView::workOut);
    auto* away = new QToolButton(this);
    away->setObjectName(QStringLiteral("what-if-away"));
    away->setText(tr("back to the history Esc"));
    connect(away, &QToolButton::clicked, this, &WhatIfView::left);
    auto* fields = new QHBoxLayout;
    fields->setSpacing(kSpaceClose);
    fields->addWidget(often_);
    fields->addWidget(ground_);
    fields->addWidget(day_);
    fields->addStretch();
    fields->addWidget(away);
    auto* lines = new QVBoxLayout(this);
    lines->setContentsMargins(0, 0, 0, 0);
    lines->setSpacing(kSpaceHair);
    auto* title = new QLabel(tr("What if …"), this);
    title->setFont(sectionFont(font()));
    lines->addWidget(title);
    lines->addWidget(plainWords(
        this, tr("The strip above shows the season as it would be, not as it is. Nothing of this is kept."),
        "note"));
    lines->addLayout(fields);
    lines->addWidget(fault_);
    lines->addWidget(asItIs_);
    lines->addWidget(ifSo_);
    lines->addWidget(rows_, 1);
    lines->addWidget(nothing_, 1, Qt::AlignTop);
}

QWidget* WhatIfView::firstFocus() const {
    return often_;
}

void WhatIfView::refresh(std::optional<MachineId> machine) {
    machine_ = machine;
    workOut();
}

outlook::Supposing WhatIfView::what() {
    outlook::Supposing what;
    what.timesAsOften = often_->currentData().toDouble();
    what.ground = chosenIfAny<usage::Ground>(*ground_);
    fault_->clear();
    if (day_->text().trimmed().isEmpty())
        return what;
    const auto today = tools_.workbench.book()->today();
    const auto day = parseDay("day", day_->text(), today, Lean::Future);
    if (!day)
        fault_->setText(wordsFor(day.error()));
    else if (*day <= today)
        fault_->setText(tr("What is supposed has to lie ahead: enter a day after today."));
    else
        what.event = outlook::EventAhead{.name = tr("one race more").toStdString(),
                                         .kind = outlook::EventKind::Race,
                                         .first = *day,
                                         .last = *day};
    return what;
}

void WhatIfView::workOut() {
    const auto& now = *tools_.workbench.book();
    const auto what = this->what();
    const bool asked = what.timesAsOften != 1 || what.ground || what.event;
    supposed_.reset();
    if (machine_ && asked)
        supposed_ = std::make_unique<const book::Book>(now.supposing(*machine_, what));
    fault_->setVisible(!fault_->text().isEmpty());
    ifSo_->setVisible(supposed_ != nullptr);
    rows_->setVisible(supposed_ != nullptr);
    nothing_->setVisible(supposed_ == nullptr && machine_);
    if (!machine_) {
        asItIs_->setText(tr("Choose a machine: F5 to F8, or the arrows over the pages."));
        rows_->show({});
    } else {
        asItIs_->setText(tr("As it is: %1.").arg(outlookWords(now, *machine_)));
        showBeside(now, supposed_ ? *supposed_ : now);
    }
    emit supposedChanged();
}

void WhatIfView::showBeside(const book::Book& now, const book::Book& then) {
    const Tokens tokens = tokensFor(palette());
    std::vector<TableRow> rows;
    for (const book::DueLine& line : now.due(*machine_)) {
        const book::DueLine* other = then.dueLine(line.task->task);
        if (other == nullptr || readsTheSame(line, *other) ||
            (book::isOnlyOfTheRound(line) && book::isOnlyOfTheRound(*other)))
            continue;
        const auto today = now.today();
        const auto sortOf = [&](const book::DueLine& of) {
            return of.standing.likely ? of.standing.likely->daysSinceEpoch() : INT_MAX;
        };
        rows.push_back({.id = line.task->task.value(),
                        .cells = {{.text = text(line.task->name), .icon = markIcon(markOf(*other), tokens)},
                                  {.text = whenWords(line, today), .sort = sortOf(line), .pencil = true},
                                  chanceCell(line),
                                  {.text = whenWords(*other, today), .sort = sortOf(*other)},
                                  chanceCell(*other)}});
    }
    const QString words = outlookWords(then, *machine_);
    ifSo_->setText(words == outlookWords(now, *machine_)
                       ? tr("If so: the same for the machine as a whole; other days for %1 of its jobs.")
                             .arg(rows.size())
                       : tr("If so: %1.").arg(words));
    rows_->show(std::move(rows));
}

// Escape goes back to the history; the window would take it for "all machines".
bool WhatIfView::event(QEvent* event) {
    if (event->type() == QEvent::ShortcutOverride &&
        static_cast<QKeyEvent*>(event)->key() == Qt::Key_Escape) {
        event->accept();
        return true;
    }
    return QWidget::event(event);
}

void WhatIfView::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Escape)
        emit left();
    else
        QWidget::keyPressEvent(event);
}

}  // namespace wm::ui

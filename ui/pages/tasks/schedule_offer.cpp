// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/tasks/schedule_offer.h"

#include <QComboBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>

#include "ui/entry/starters.h"
#include "ui/pages/columns.h"
#include "ui/theme/type.h"
#include "ui/words/figures.h"
#include "ui/words/name_words.h"

namespace wm::ui {

ScheduleOffer::ScheduleOffer(QWidget* parent)
    : QWidget(parent),
      starters_(starters()),
      words_(new QLabel(this)),
      which_(new QComboBox(this)),
      begin_(new QPushButton(tr("Begin with this schedule"), this)) {
    words_->setTextFormat(Qt::PlainText);
    words_->setWordWrap(true);
    which_->setObjectName(QStringLiteral("schedule-which"));
    which_->setAccessibleName(tr("schedule"));
    for (const exchange::Starter& each : starters_)
        which_->addItem(tr("%1, %n task(s)", nullptr, static_cast<int>(each.tasks.size()))
                            .arg(nameWords(std::string_view(each.name))),
                        text(each.name));
    begin_->setObjectName(QStringLiteral("schedule-begin"));
    begin_->setDefault(true);
    setFocusProxy(which_);
    auto* row = new QHBoxLayout;
    row->setSpacing(kSpaceClose);
    row->addWidget(which_);
    row->addWidget(begin_);
    row->addStretch();
    auto* lines = linesOf(this);
    lines->setSpacing(kSpaceLine);
    lines->addWidget(words_);
    lines->addLayout(row);
    lines->addStretch();
    connect(begin_, &QPushButton::clicked, this, [this] {
        for (const exchange::Starter& each : starters_)
            if (text(each.name) == which_->currentData().toString())
                return emit beginAsked(each);
    });
}

void ScheduleOffer::offerTo(const QString& machine, bool canWrite) {
    const bool can = canWrite && !machine.isEmpty();
    words_->setText(
        machine.isEmpty()
            ? tr("No tasks yet.")
            : tr("%1 has no tasks yet. A schedule brings common-practice intervals, not confirmed, and "
                 "no torque: yours to check against the manual. Or write a task (Ins).")
                  .arg(machine));
    which_->setVisible(can);
    begin_->setVisible(can);
}

}  // namespace wm::ui

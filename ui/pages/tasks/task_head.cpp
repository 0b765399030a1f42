// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/tasks/task_head.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QMenu>
#include <QPushButton>
#include <QVBoxLayout>

#include "ui/entry/flow.h"
#include "ui/theme/plain.h"
#include "ui/theme/type.h"

namespace wm::ui {

TaskHead::TaskHead(QWidget* parent)
    : QWidget(parent),
      name_(new QLabel(this)),
      state_(new QLabel(this)),
      confirm_(key(QStringLiteral("task-confirm"), tr("Confirmed, next (F12)"),
                   tr("The interval was read in the manual, on the page that stands below"))),
      switch_(key(QStringLiteral("task-switch"), tr("Switch off (Del)"),
                  tr("It leaves the lists; its records stay"))),
      copy_(key(QStringLiteral("task-copy"), tr("Copy to…"), tr("Begin the same task on another machine"))),
      machines_(new QMenu(copy_)),
      begin_(new QWidget(this)) {
    name_->setObjectName(QStringLiteral("task-title"));
    name_->setProperty("role", QStringLiteral("section"));
    name_->setTextFormat(Qt::PlainText);
    state_->setObjectName(QStringLiteral("task-state"));
    state_->setProperty("role", QStringLiteral("note"));
    state_->setTextFormat(Qt::PlainText);
    copy_->setMenu(machines_);
    auto* begin = new Flow(kSpaceClose, kSpaceHair);
    begin->setContentsMargins(0, 0, 0, 0);
    begin_->setLayout(begin);
    auto* asks = new QLabel(tr("No record. Begin its count:"), begin_);
    auto* newOn = key(QStringLiteral("task-new-on"), tr("&New on a day…"), tr("The part was new then"));
    auto* doneOn = key(QStringLiteral("task-done-on"), tr("&Done on a day or at hours…"),
                       tr("By somebody's word, before this file knew of it"));
    lookedFine_ = key(QStringLiteral("task-looked-fine"), tr("&Looked at today: fine"),
                      tr("Recorded at once; undo takes it back"));
    asks->setFixedHeight(newOn->sizeHint().height());
    begin->addWidget(asks);
    for (QPushButton* each : {newOn, doneOn, lookedFine_})
        begin->addWidget(each);
    auto* words = new QVBoxLayout;
    words->setSpacing(2);
    words->addWidget(name_);
    words->addWidget(state_);
    auto* row = new QHBoxLayout;
    row->setSpacing(kSpaceClose);
    row->addLayout(words, 1);
    for (QPushButton* each : {confirm_, switch_, copy_})
        row->addWidget(each, 0, Qt::AlignTop);
    auto* lines = new QVBoxLayout(this);
    lines->setContentsMargins(0, 0, 0, 0);
    lines->setSpacing(kSpaceHair);
    lines->addLayout(row);
    lines->addWidget(begin_);
    connect(confirm_, &QPushButton::clicked, this, &TaskHead::confirmAsked);
    connect(switch_, &QPushButton::clicked, this, &TaskHead::switchAsked);
    connect(newOn, &QPushButton::clicked, this, &TaskHead::newOnAsked);
    connect(doneOn, &QPushButton::clicked, this, &TaskHead::doneOnAsked);
    connect(lookedFine_, &QPushButton::clicked, this, &TaskHead::lookedFineAsked);
}

QPushButton* TaskHead::key(const QString& name, const QString& words, const QString& tip) {
    auto* button = new QPushButton(words, this);
    button->setObjectName(name);
    button->setToolTip(tip);
    return button;
}

void TaskHead::show(const About& about) {
    name_->setText(about.name);
    state_->setText(about.state);
    confirm_->setEnabled(!about.isNew);
    switch_->setEnabled(!about.isNew);
    switch_->setText(about.inUse ? tr("Switch off (Del)") : tr("Switch on (Del)"));
    copy_->setEnabled(!about.isNew && !about.others.empty());
    machines_->clear();
    for (const auto& [machine, name] : about.others)
        connect(machines_->addAction(asCaption(name)), &QAction::triggered, this,
                [this, machine = machine] { emit copyAsked(machine); });
    begin_->setVisible(about.noRecord && !about.isNew);
    lookedFine_->setVisible(about.lookSettles);
}

}  // namespace wm::ui

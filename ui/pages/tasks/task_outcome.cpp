// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/tasks/task_outcome.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>

#include "ui/theme/tokens.h"
#include "ui/theme/type.h"

namespace wm::ui {

TaskOutcome::TaskOutcome(QWidget* parent)
    : QWidget(parent),
      title_(new QLabel(tr("What this changes today"), this)),
      words_(new QLabel(this)),
      save_(new QPushButton(tr("Save (Enter)"), this)),
      drop_(new QPushButton(tr("Leave as it was"), this)) {
    title_->setProperty("role", QStringLiteral("note"));
    title_->setFont(noteFont(font()));
    words_->setObjectName(QStringLiteral("task-preview"));
    words_->setAccessibleName(title_->text());
    words_->setTextFormat(Qt::PlainText);
    words_->setWordWrap(true);
    words_->setAlignment(Qt::AlignTop | Qt::AlignLeft);
    words_->setMinimumHeight(words_->fontMetrics().lineSpacing() * 2);
    save_->setObjectName(QStringLiteral("task-save"));
    save_->setToolTip(tr("Ctrl+S too, wherever the keys are"));
    drop_->setObjectName(QStringLiteral("task-drop"));
    drop_->setFlat(true);
    auto* says = new QVBoxLayout;
    says->setSpacing(2);
    says->addWidget(title_);
    says->addWidget(words_, 1);
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, kSpaceHair, 0, 0);
    row->setSpacing(kSpaceClose);
    row->addLayout(says, 1);
    row->addWidget(drop_, 0, Qt::AlignBottom);
    row->addWidget(save_, 0, Qt::AlignBottom);
    connect(save_, &QPushButton::clicked, this, &TaskOutcome::saveAsked);
    connect(drop_, &QPushButton::clicked, this, &TaskOutcome::dropAsked);
    rest();
}

void TaskOutcome::rest() {
    say(tr("Nothing was changed in this task."), false, false);
}

void TaskOutcome::foretell(const QString& words) {
    say(words, false, true);
}

void TaskOutcome::complain(const QString& words) {
    say(words, true, true);
}

void TaskOutcome::say(const QString& words, bool isTrouble, bool canSave) {
    const Tokens tokens = tokensFor(palette());
    QPalette palette = words_->palette();
    palette.setColor(QPalette::WindowText, isTrouble ? tokens.over : canSave ? tokens.ink : tokens.pencil);
    words_->setPalette(palette);
    words_->setText(words);
    save_->setEnabled(canSave);
    drop_->setEnabled(canSave);
}

void TaskOutcome::focusSave() {
    save_->setFocus(Qt::OtherFocusReason);
}

}  // namespace wm::ui

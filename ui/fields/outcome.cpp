// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/fields/outcome.h"

#include <QEvent>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>
#include <utility>

#include "ui/theme/tokens.h"
#include "ui/theme/type.h"

namespace wm::ui {

Outcome::Outcome(const QString& prefix, QString rest, QWidget* parent)
    : QWidget(parent),
      rest_(std::move(rest)),
      title_(new QLabel(tr("What this changes today"), this)),
      words_(new QLabel(this)),
      save_(new QPushButton(tr("Save (Enter)"), this)),
      drop_(new QPushButton(tr("Leave as it was"), this)) {
    title_->setProperty("role", QStringLiteral("note"));
    title_->setFont(noteFont(font()));
    words_->setObjectName(prefix + QStringLiteral("-preview"));
    words_->setAccessibleName(title_->text());
    words_->setTextFormat(Qt::PlainText);
    words_->setWordWrap(true);
    words_->setAlignment(Qt::AlignTop | Qt::AlignLeft);
    words_->setMinimumHeight(words_->fontMetrics().lineSpacing() * 2);
    save_->setObjectName(prefix + QStringLiteral("-save"));
    save_->setToolTip(tr("Ctrl+S too, wherever the keys are"));
    drop_->setObjectName(prefix + QStringLiteral("-drop"));
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
    connect(save_, &QPushButton::clicked, this, &Outcome::saveAsked);
    connect(drop_, &QPushButton::clicked, this, &Outcome::dropAsked);
    this->rest();
}

void Outcome::rest() {
    say(rest_, false, false);
}

void Outcome::foretell(const QString& words) {
    say(words, false, true);
}

void Outcome::complain(const QString& words) {
    say(words, true, true);
}

// The colours follow the theme.
void Outcome::changeEvent(QEvent* event) {
    QWidget::changeEvent(event);
    if (event->type() == QEvent::PaletteChange)
        say(words_->text(), isTrouble_, save_->isEnabled());
}

void Outcome::say(const QString& words, bool isTrouble, bool canSave) {
    isTrouble_ = isTrouble;
    const Tokens tokens = tokensFor(palette());
    QPalette palette = words_->palette();
    palette.setColor(QPalette::WindowText, isTrouble ? tokens.over : canSave ? tokens.ink : tokens.pencil);
    words_->setPalette(palette);
    words_->setText(words);
    save_->setEnabled(canSave);
    drop_->setEnabled(canSave);
}

void Outcome::focusSave() {
    save_->setFocus(Qt::OtherFocusReason);
}

}  // namespace wm::ui

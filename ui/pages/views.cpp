// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/views.h"

#include <QApplication>
#include <QHBoxLayout>
#include <QShortcut>
#include <QStackedWidget>
#include <QTabBar>
#include <QVBoxLayout>

#include "ui/theme/type.h"

namespace wm::ui {

Views::Views(const QString& name, const QString& what, QWidget* parent)
    : QWidget(parent), names_(new QTabBar(this)), stack_(new QStackedWidget(this)) {
    names_->setObjectName(name);
    names_->setAccessibleName(what);
    names_->setDrawBase(false);
    names_->setExpanding(false);
    auto* head = new QHBoxLayout;
    head->setContentsMargins(kSpaceSection, kSpaceClose, kSpaceSection, 0);
    head->addWidget(names_);
    head->addStretch();
    auto* lines = new QVBoxLayout(this);
    lines->setContentsMargins(0, 0, 0, 0);
    lines->setSpacing(0);
    lines->addLayout(head);
    lines->addWidget(stack_, 1);
    const std::pair<QKeySequence, int> keys[] = {{QKeySequence(Qt::CTRL | Qt::Key_PageUp), -1},
                                                 {QKeySequence(Qt::CTRL | Qt::Key_PageDown), 1}};
    QStringList named;
    for (const auto& [sequence, step] : keys) {
        named << sequence.toString(QKeySequence::NativeText);
        connect(new QShortcut(sequence, this), &QShortcut::activated, this,
                [this, step = step] { turnBy(step); });
    }
    names_->setToolTip(named.join(QStringLiteral(", ")));
    connect(names_, &QTabBar::currentChanged, this, [this](int at) {
        stack_->setCurrentIndex(at);
        emit changed();
    });
}

void Views::add(const QString& name, QWidget* view) {
    // The view stands in the stack before its name is there: the first name makes itself the shown one.
    stack_->addWidget(view);
    names_->addTab(name);
}

void Views::rename(int at, const QString& name) {
    names_->setTabText(at, name);
}

void Views::turnTo(int at) {
    names_->setCurrentIndex(at);
}

// From the last on to the first.
void Views::turnBy(int step) {
    const auto* focus = QApplication::focusWidget();
    const bool wasInside = focus != nullptr && stack_->isAncestorOf(focus);
    turnTo((shown() + step + names_->count()) % names_->count());
    if (wasInside)
        emit keysNeedAPlace();
}

QWidget* Views::focusOn(QWidget* wanted) const {
    const QWidget* taker = wanted;
    while (taker->focusProxy() != nullptr)
        taker = taker->focusProxy();
    const bool takes =
        taker->focusPolicy() != Qt::NoFocus && taker->isEnabledTo(this) && taker->isVisibleTo(this);
    return takes ? wanted : names_;
}

int Views::shown() const {
    return stack_->currentIndex();
}

}  // namespace wm::ui

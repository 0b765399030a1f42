// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/shell/why_popup.h"

#include <QAbstractItemView>
#include <QGridLayout>
#include <QLabel>
#include <QPainter>
#include <QScreen>
#include <algorithm>

#include "ui/theme/tokens.h"
#include "ui/theme/type.h"

namespace wm::ui {

namespace {

constexpr int kWidest = 420;

QLabel* label(const QString& words, QWidget* parent) {
    auto* made = new QLabel(words, parent);
    made->setTextFormat(Qt::PlainText);
    made->setWordWrap(true);
    return made;
}

}  // namespace

WhyPopup::WhyPopup(const Why& why, QWidget* parent) : QFrame(parent, Qt::Popup) {
    setObjectName(QStringLiteral("why"));
    setAttribute(Qt::WA_DeleteOnClose);
    setFixedWidth(kWidest);
    auto* grid = new QGridLayout(this);
    grid->setContentsMargins(kSpaceGroup, kSpaceLine, kSpaceGroup, kSpaceLine);
    grid->setHorizontalSpacing(kSpaceLine);
    grid->setVerticalSpacing(kSpaceHair);
    grid->setColumnStretch(1, 1);
    auto* title = label(why.title, this);
    title->setProperty("role", QStringLiteral("section"));
    grid->addWidget(title, 0, 0, 1, 2);
    int row = 1;
    QString spoken = why.title;
    for (const auto& [what, much] : why.lines) {
        auto* left = label(what, this);
        left->setWordWrap(false);
        left->setProperty("role", QStringLiteral("note"));
        grid->addWidget(left, row, 0, Qt::AlignTop);
        grid->addWidget(label(much, this), row, 1);
        spoken += QStringLiteral(". %1: %2").arg(what, much);
        ++row;
    }
    if (!why.footnote.isEmpty()) {
        auto* foot = label(why.footnote, this);
        foot->setProperty("role", QStringLiteral("note"));
        grid->addWidget(foot, row, 0, 1, 2);
    }
    setAccessibleName(spoken);
}

void WhyPopup::showBeside(const QWidget* at) {
    adjustSize();
    resize(kWidest, heightForWidth(kWidest) > 0 ? heightForWidth(kWidest) : sizeHint().height());
    QPoint corner = at->mapToGlobal(QPoint(at->width() / 2, at->height()));
    if (const auto* view = qobject_cast<const QAbstractItemView*>(at);
        view != nullptr && view->currentIndex().isValid())
        corner = view->viewport()->mapToGlobal(view->visualRect(view->currentIndex()).bottomLeft()) +
                 QPoint(kSpaceSection, kSpaceHair);
    const QRect room = at->screen()->availableGeometry();
    move(std::clamp(corner.x(), room.left(), std::max(room.left(), room.right() - width())),
         std::clamp(corner.y(), room.top(), std::max(room.top(), room.bottom() - height())));
    show();
    setFocus();
}

void WhyPopup::keyPressEvent(QKeyEvent*) {
    close();
}

void WhyPopup::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    const Tokens tokens = tokensFor(palette());
    painter.fillRect(rect(), tokens.sheet);
    painter.setPen(tokens.pencil);
    painter.drawRect(rect().adjusted(0, 0, -1, -1));
}

}  // namespace wm::ui

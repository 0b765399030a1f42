// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/shell/edge_bar.h"

#include <QButtonGroup>
#include <QHBoxLayout>
#include <QPainter>

#include "ui/drawing/device_space.h"
#include "ui/drawing/paint_stroke.h"
#include "ui/shell/page_key.h"
#include "ui/shell/page_table.h"
#include "ui/theme/tokens.h"
#include "ui/theme/type.h"

namespace wm::ui {

namespace {

constexpr int kPageStroke = 5;

}  // namespace

PageKey::PageKey(const QString& name, QWidget* parent) : QAbstractButton(parent) {
    setCheckable(true);
    setText(name);
    setFocusPolicy(Qt::TabFocus);
    setCursor(Qt::PointingHandCursor);
    QString plain = name;
    plain.remove(QLatin1Char('&'));
    setAccessibleName(plain);
}

QSize PageKey::sizeHint() const {
    QFont bold = font();
    bold.setBold(true);
    return {QFontMetrics(bold).size(Qt::TextShowMnemonic, text()).width() + 2 * kSpaceLine,
            fontMetrics().height() + 2 * kSpaceClose};
}

bool PageKey::event(QEvent* event) {
    // A button would show its pressed state for a while first; a page turns at once.
    if (event->type() == QEvent::Shortcut) {
        click();
        return true;
    }
    return QAbstractButton::event(event);
}

void PageKey::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    const Tokens tokens = tokensFor(palette());
    QFont face = font();
    face.setBold(isChecked());
    painter.setFont(face);
    painter.setPen(!isEnabled() || (!isChecked() && !underMouse()) ? tokens.pencil : tokens.ink);
    painter.drawText(rect(), Qt::AlignCenter | Qt::TextShowMnemonic, text());
    if (isChecked())
        paintStroke(painter, QRectF(kSpaceLine - 2, 0, width() - 2 * kSpaceLine + 4, kPageStroke),
                    tokens.ink);
    if (hasFocus()) {
        painter.setPen(tokens.ink);
        painter.drawRect(rect().adjusted(3, kPageStroke + 1, -4, -3));
    }
}

EdgeBar::EdgeBar(QWidget* parent) : QWidget(parent), group_(new QButtonGroup(this)) {
    setObjectName(QStringLiteral("edge"));
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(kSpaceClose, 0, kSpaceClose, 0);
    row->setSpacing(kSpaceHair);
    for (const auto& page : pageTable()) {
        auto* key = new PageKey(page.name, this);
        key->setObjectName(QStringLiteral("page-") + QLatin1String(page.code));
        group_->addButton(key);
        keys_.emplace(page.id, key);
        row->addWidget(key);
        connect(key, &PageKey::clicked, this, [this, id = page.id] { emit pageAsked(id); });
    }
    row->addStretch();
}

void EdgeBar::show(PageId page) {
    keys_.at(page)->setChecked(true);
}

void EdgeBar::enablePages(bool canBeOpened) {
    for (const auto& [id, key] : keys_)
        key->setEnabled(canBeOpened);
}

void EdgeBar::add(QWidget* atTheRight) {
    layout()->addWidget(atTheRight);
}

void EdgeBar::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    paintHorizontal(painter, 0, width(), 0, tokensFor(palette()).rule);
}

}  // namespace wm::ui

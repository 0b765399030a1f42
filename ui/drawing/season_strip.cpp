// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/drawing/season_strip.h"

#include <QAccessible>
#include <QHelpEvent>
#include <QKeyEvent>
#include <QPainter>
#include <QToolTip>
#include <algorithm>
#include <cmath>

#include "ui/theme/plain.h"
#include "ui/theme/spoken.h"

namespace wm::ui {

SeasonStrip::SeasonStrip(QWidget* parent) : QWidget(parent) {
    setFocusPolicy(Qt::StrongFocus);
    speakAs(this, QAccessible::Chart);
    setAccessibleName(tr("Season"));
    QSizePolicy policy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    policy.setHeightForWidth(true);
    setSizePolicy(policy);
}

void SeasonStrip::setSeason(Season season) {
    season_ = std::move(season);
    setCurrent(std::nullopt);
    updateGeometry();
    update();
}

SeasonLayout SeasonStrip::layoutNow() const {
    return layOutSeason(*season_, width(), font());
}

int SeasonStrip::heightForWidth(int width) const {
    return season_ ? static_cast<int>(std::ceil(layOutSeason(*season_, width, font()).size.height())) : 0;
}

QSize SeasonStrip::sizeHint() const {
    return {720, heightForWidth(720)};
}

void SeasonStrip::paintEvent(QPaintEvent* /*event*/) {
    if (!season_) {
        return;
    }
    QPainter painter(this);
    paintSeason(painter, QPointF(), *season_, layoutNow(), font(), tokensFor(palette()),
                hasFocus() ? current_ : std::nullopt);
}

void SeasonStrip::setCurrent(std::optional<SeasonBarId> current) {
    if (current_ == current) {
        return;
    }
    current_ = current;
    setAccessibleDescription(current ? season_->groups[current->group].bars[current->bar].words : QString());
    QAccessibleEvent changed(this, QAccessible::DescriptionChanged);
    QAccessible::updateAccessibility(&changed);
    update();
    emit currentChanged();
}

void SeasonStrip::walk(int steps) {
    if (!season_) {
        return;
    }
    std::vector<SeasonBarId> order;
    for (const SeasonLayout::Bar& bar : layoutNow().bars) {
        order.push_back(bar.id);
    }
    if (order.empty()) {
        return;
    }
    std::stable_sort(order.begin(), order.end(), [this](const SeasonBarId& a, const SeasonBarId& b) {
        return season_->groups[a.group].bars[a.bar].early < season_->groups[b.group].bars[b.bar].early;
    });
    const auto here = current_ ? std::find(order.begin(), order.end(), *current_) : order.end();
    const int last = static_cast<int>(order.size()) - 1;
    const int from =
        here == order.end() ? (steps > 0 ? -1 : last + 1) : static_cast<int>(here - order.begin());
    setCurrent(order[static_cast<std::size_t>(std::clamp(from + steps, 0, last))]);
}

void SeasonStrip::keyPressEvent(QKeyEvent* event) {
    switch (event->key()) {
        case Qt::Key_Right:
        case Qt::Key_Down:
            walk(1);
            break;
        case Qt::Key_Left:
        case Qt::Key_Up:
            walk(-1);
            break;
        case Qt::Key_Home:
            walk(-1000000);
            break;
        case Qt::Key_End:
            walk(1000000);
            break;
        default:
            QWidget::keyPressEvent(event);
    }
}

void SeasonStrip::mousePressEvent(QMouseEvent* event) {
    if (season_ && event->button() == Qt::LeftButton) {
        setCurrent(seasonBarAt(layoutNow(), event->position()));
    }
}

void SeasonStrip::focusInEvent(QFocusEvent* event) {
    QWidget::focusInEvent(event);
    if (!current_ && event->reason() != Qt::MouseFocusReason) {
        walk(1);
    }
    update();
}

bool SeasonStrip::event(QEvent* event) {
    if (event->type() == QEvent::ToolTip && season_) {
        const auto* help = static_cast<QHelpEvent*>(event);
        const auto bar = seasonBarAt(layoutNow(), help->pos());
        const QString words = bar ? season_->groups[bar->group].bars[bar->bar].words : QString();
        QToolTip::showText(help->globalPos(), asTip(words), this);
        return true;
    }
    return QWidget::event(event);
}

}  // namespace wm::ui

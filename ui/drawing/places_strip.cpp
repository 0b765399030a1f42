// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/drawing/places_strip.h"

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

PlacesStrip::PlacesStrip(QWidget* parent) : QWidget(parent) {
    setFocusPolicy(Qt::StrongFocus);
    speakAs(this, QAccessible::Chart);
    QSizePolicy policy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    policy.setHeightForWidth(true);
    setSizePolicy(policy);
}

void PlacesStrip::setPlaces(Places places) {
    places_ = std::move(places);
    setCurrent(std::nullopt);
    updateGeometry();
    update();
}

PlacesLayout PlacesStrip::layoutNow() const {
    return layOutPlaces(places_, width(), font());
}

int PlacesStrip::heightForWidth(int width) const {
    return static_cast<int>(std::ceil(layOutPlaces(places_, width, font()).size.height()));
}

QSize PlacesStrip::sizeHint() const {
    return {720, heightForWidth(720)};
}

void PlacesStrip::paintEvent(QPaintEvent* /*event*/) {
    QPainter painter(this);
    paintPlaces(painter, places_, layoutNow(), font(), tokensFor(palette()),
                hasFocus() ? current_ : std::nullopt);
}

QString PlacesStrip::wordsAt(std::optional<PlaceStayId> id) const {
    return id ? places_.rows[id->row].stays[id->stay].words : QString();
}

void PlacesStrip::setCurrent(std::optional<PlaceStayId> current) {
    if (current_ == current)
        return;
    current_ = current;
    setAccessibleDescription(wordsAt(current));
    QAccessibleEvent changed(this, QAccessible::DescriptionChanged);
    QAccessible::updateAccessibility(&changed);
    update();
    emit currentChanged(wordsAt(current));
}

// What is drawn of the chosen place, from stay to stay; without a choice, the newest of the first place.
void PlacesStrip::walkAlong(int steps) {
    const auto stays = layoutNow().stays;
    if (stays.empty())
        return;
    const auto here =
        std::find_if(stays.begin(), stays.end(), [&](const auto& stay) { return stay.id == current_; });
    if (here == stays.end()) {
        const auto row = stays.front().id.row;
        const auto last =
            std::find_if(stays.rbegin(), stays.rend(), [&](const auto& stay) { return stay.id.row == row; });
        setCurrent(last->id);
        return;
    }
    const auto next = here - stays.begin() + steps;
    if (next >= 0 && next < std::ssize(stays) && stays[static_cast<std::size_t>(next)].id.row == here->id.row)
        setCurrent(stays[static_cast<std::size_t>(next)].id);
}

void PlacesStrip::walkRows(int steps) {
    const auto stays = layoutNow().stays;
    if (!current_ || stays.empty()) {
        walkAlong(1);
        return;
    }
    // The newest stay of the next place that has one.
    std::optional<PlaceStayId> found;
    for (const auto& stay : stays) {
        const bool beyond = steps > 0 ? stay.id.row > current_->row : stay.id.row < current_->row;
        const bool nearer = !found || stay.id.row == found->row ||
                            (steps > 0 ? stay.id.row < found->row : stay.id.row > found->row);
        if (beyond && nearer)
            found = stay.id;
    }
    if (found)
        setCurrent(found);
}

void PlacesStrip::keyPressEvent(QKeyEvent* event) {
    switch (event->key()) {
        case Qt::Key_Right:
            walkAlong(1);
            break;
        case Qt::Key_Left:
            walkAlong(-1);
            break;
        case Qt::Key_Down:
            walkRows(1);
            break;
        case Qt::Key_Up:
            walkRows(-1);
            break;
        default:
            QWidget::keyPressEvent(event);
    }
}

void PlacesStrip::mousePressEvent(QMouseEvent* event) {
    if (event->button() == Qt::LeftButton)
        setCurrent(placeStayAt(layoutNow(), event->position()));
}

void PlacesStrip::focusInEvent(QFocusEvent* event) {
    QWidget::focusInEvent(event);
    if (!current_ && event->reason() != Qt::MouseFocusReason)
        walkAlong(1);
    update();
}

bool PlacesStrip::event(QEvent* event) {
    if (event->type() != QEvent::ToolTip)
        return QWidget::event(event);
    const auto* help = static_cast<QHelpEvent*>(event);
    const QString words = wordsAt(placeStayAt(layoutNow(), help->pos()));
    QToolTip::showText(help->globalPos(), asTip(words), this);
    return true;
}

}  // namespace wm::ui

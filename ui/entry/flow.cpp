// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/entry/flow.h"

#include <algorithm>

namespace wm::ui {

Flow::Flow(int across, int down) : across_(across), down_(down) {
    setContentsMargins(0, 0, 0, 0);
}

Flow::~Flow() {
    for (auto* item : items_)
        delete item;
}

void Flow::addItem(QLayoutItem* item) {
    items_.push_back(item);
}

int Flow::count() const {
    return static_cast<int>(items_.size());
}

QLayoutItem* Flow::itemAt(int index) const {
    return index >= 0 && index < count() ? items_[static_cast<std::size_t>(index)] : nullptr;
}

QLayoutItem* Flow::takeAt(int index) {
    auto* item = itemAt(index);
    if (item != nullptr)
        items_.erase(items_.begin() + index);
    return item;
}

int Flow::heightForWidth(int width) const {
    return arrange(QRect(0, 0, width, 0), false);
}

QSize Flow::minimumSize() const {
    QSize size;
    for (const auto* item : items_)
        size = size.expandedTo(item->minimumSize());
    return size;
}

void Flow::setGeometry(const QRect& rect) {
    QLayout::setGeometry(rect);
    arrange(rect, true);
}

int Flow::arrange(const QRect& rect, bool reallyMove) const {
    int x = rect.left();
    int y = rect.top();
    int tallest = 0;
    for (auto* item : items_) {
        if (item->isEmpty())
            continue;
        const QSize size = item->sizeHint().boundedTo(QSize(std::max(rect.width(), 1), QLAYOUTSIZE_MAX));
        if (x > rect.left() && x + size.width() > rect.left() + rect.width()) {
            x = rect.left();
            y += tallest + down_;
            tallest = 0;
        }
        if (reallyMove)
            item->setGeometry(QRect(QPoint(x, y), size));
        x += size.width() + across_;
        tallest = std::max(tallest, size.height());
    }
    return y + tallest - rect.top();
}

}  // namespace wm::ui

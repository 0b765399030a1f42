// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/columns.h"

#include <QCoreApplication>
#include <QScrollArea>
#include <QSplitter>
#include <QVBoxLayout>

#include "ui/theme/type.h"

namespace wm::ui {

QVBoxLayout* linesOf(QWidget* column) {
    auto* lines = new QVBoxLayout(column);
    lines->setContentsMargins(0, 0, 0, 0);
    lines->setSpacing(kSpaceClose);
    return lines;
}

QSplitter* columnsOf(QWidget* page, std::initializer_list<Column> columns) {
    auto* splitter = new QSplitter(Qt::Horizontal, page);
    QList<int> widths;
    for (const Column& column : columns) {
        splitter->addWidget(column.widget);
        splitter->setStretchFactor(splitter->count() - 1, column.width);
        widths.append(column.width);
    }
    splitter->setChildrenCollapsible(false);
    splitter->setSizes(widths);
    return splitter;
}

QScrollArea* scrolled(QWidget* column, QWidget* parent) {
    auto* area = new QScrollArea(parent);
    area->setWidget(column);
    area->setWidgetResizable(true);
    area->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    area->setFocusPolicy(Qt::NoFocus);
    return area;
}

void settle(QWidget* from) {
    for (QWidget* each = from; each != nullptr; each = each->isWindow() ? nullptr : each->parentWidget()) {
        if (each->layout() != nullptr)
            each->layout()->activate();
        if (auto* area = qobject_cast<QScrollArea*>(each)) {
            QEvent request(QEvent::LayoutRequest);
            QCoreApplication::sendEvent(area, &request);
            return;
        }
    }
}

QVBoxLayout* pageLines(QWidget* page) {
    auto* lines = new QVBoxLayout(page);
    lines->setContentsMargins(kSpaceSection, kSpaceGroup, kSpaceSection, kSpaceGroup);
    lines->setSpacing(kSpaceLine);
    return lines;
}

}  // namespace wm::ui

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/ui/harness/widgets.h"

#include <QAbstractButton>
#include <QAbstractItemView>
#include <QComboBox>
#include <QHeaderView>
#include <QLabel>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QScrollBar>
#include <QTabBar>

namespace wm::ui {

QString classOf(const QObject& object) {
    return QString::fromLatin1(object.metaObject()->className()).section(QStringLiteral("::"), -1);
}

// The two arrows of a line of tabs have names like ours.
bool isQtsOwn(const QWidget& widget) {
    return widget.objectName().startsWith(QLatin1String("qt_")) ||
           qobject_cast<const QTabBar*>(widget.parentWidget()) != nullptr;
}

bool rolls(const QAbstractScrollArea& area, Qt::Orientation way) {
    const bool across = way == Qt::Horizontal;
    const auto policy = across ? area.horizontalScrollBarPolicy() : area.verticalScrollBarPolicy();
    const auto* bar = across ? area.horizontalScrollBar() : area.verticalScrollBar();
    return policy != Qt::ScrollBarAlwaysOff && bar->maximum() > bar->minimum();
}

QWidgetList seenUnder(QWidget* root) {
    QWidgetList seen;
    if (root->isVisible())
        seen << root;
    for (auto* widget : root->findChildren<QWidget*>())
        if (widget->isVisible() && widget->window() == root->window())
            seen << widget;
    return seen;
}

bool isControl(const QWidget& widget) {
    const auto* around = widget.parentWidget();
    const auto* area = qobject_cast<const QAbstractScrollArea*>(around);
    const bool isPart = isQtsOwn(widget) || (area != nullptr && area->viewport() == &widget) ||
                        qobject_cast<const QHeaderView*>(&widget) != nullptr ||
                        qobject_cast<const QLineEdit*>(around) != nullptr ||
                        qobject_cast<const QTabBar*>(around) != nullptr ||
                        qobject_cast<const QComboBox*>(around) != nullptr ||
                        qobject_cast<const QAbstractItemView*>(around) != nullptr;
    if (isPart || widget.isWindow())
        return false;
    const bool takesKeys = widget.focusPolicy() != Qt::NoFocus;
    if (const auto* label = qobject_cast<const QLabel*>(&widget))
        return takesKeys && !label->text().isEmpty();
    if (qobject_cast<const QAbstractScrollArea*>(&widget) != nullptr)
        return takesKeys && (qobject_cast<const QAbstractItemView*>(&widget) != nullptr ||
                             qobject_cast<const QPlainTextEdit*>(&widget) != nullptr);
    return takesKeys || qobject_cast<const QAbstractButton*>(&widget) != nullptr;
}

}  // namespace wm::ui

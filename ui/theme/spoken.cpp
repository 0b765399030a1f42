// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/theme/spoken.h"

#include <QAccessibleWidget>

namespace wm::ui {

namespace {

constexpr const char* kRole = "spoken-role";

QAccessibleInterface* speaker(const QString& /*className*/, QObject* object) {
    auto* widget = qobject_cast<QWidget*>(object);
    const QVariant role = object == nullptr ? QVariant() : object->property(kRole);
    if (widget == nullptr || !role.isValid())
        return nullptr;
    return new QAccessibleWidget(widget, static_cast<QAccessible::Role>(role.toInt()));
}

}  // namespace

void speakAs(QWidget* widget, QAccessible::Role role) {
    QAccessible::installFactory(speaker);
    widget->setProperty(kRole, static_cast<int>(role));
}

}  // namespace wm::ui

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/shell/own_keys.h"

#include <QApplication>
#include <QKeyEvent>
#include <QLineEdit>

namespace wm::ui {

namespace {

bool isOfTheFile(const QLineEdit* field, const QKeyEvent& key) {
    return field != nullptr && ((key.matches(QKeySequence::Undo) && !field->isUndoAvailable()) ||
                                (key.matches(QKeySequence::Redo) && !field->isRedoAvailable()));
}

}  // namespace

OwnKeys::OwnKeys(QObject* parent) : QObject(parent) {
    qApp->installEventFilter(this);
}

bool OwnKeys::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() != QEvent::ShortcutOverride)
        return false;
    const auto& key = *static_cast<QKeyEvent*>(event);
    const bool isOfAList = key.key() == Qt::Key_Escape && QApplication::activePopupWidget() != nullptr;
    if (isOfAList)
        event->accept();
    else if (isOfTheFile(qobject_cast<QLineEdit*>(watched), key))
        event->ignore();
    else
        return false;
    return true;
}

}  // namespace wm::ui

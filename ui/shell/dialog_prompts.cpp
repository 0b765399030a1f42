// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/shell/dialog_prompts.h"

#include <QApplication>
#include <QFileDialog>
#include <QMessageBox>
#include <QPushButton>

#include "ui/theme/plain.h"
#include "ui/words/tr.h"

namespace wm::ui {

bool DialogPrompts::confirm(const QString& question, const QString& yes) {
    QMessageBox box(QMessageBox::NoIcon, ui::tr("Witnessmark"), question, QMessageBox::Cancel,
                    QApplication::activeWindow());
    box.setTextFormat(Qt::PlainText);
    auto* agree = box.addButton(asCaption(yes), QMessageBox::AcceptRole);
    box.setDefaultButton(QMessageBox::Cancel);
    box.exec();
    return box.clickedButton() == agree;
}

std::optional<QString> DialogPrompts::chooseFile(FileUse use, const QString& title, const QString& filter) {
    auto* window = QApplication::activeWindow();
    const QString path = use == FileUse::Open ? QFileDialog::getOpenFileName(window, title, {}, filter)
                                              : QFileDialog::getSaveFileName(window, title, {}, filter);
    return path.isEmpty() ? std::nullopt : std::optional(path);
}

void DialogPrompts::report(const QString& words, const QString& detail) {
    QMessageBox box(QMessageBox::NoIcon, ui::tr("Witnessmark"), words, QMessageBox::Ok,
                    QApplication::activeWindow());
    box.setTextFormat(Qt::PlainText);
    box.setInformativeText(detail);
    box.exec();
}

}  // namespace wm::ui

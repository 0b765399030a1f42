// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/shell/dialog_prompts.h"

#include <QApplication>
#include <QFileDialog>
#include <QMessageBox>
#include <QPushButton>

#include "ui/theme/plain.h"
#include "ui/words/tr.h"
#include "ui/workbench/file_names.h"

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

std::optional<QString> DialogPrompts::chooseFile(FileUse use, const QString& title, const QString& filter,
                                                 const QString& suggested) {
    QFileDialog dialog(QApplication::activeWindow(), title, {}, filter);
    dialog.setAcceptMode(use == FileUse::Open ? QFileDialog::AcceptOpen : QFileDialog::AcceptSave);
    dialog.setFileMode(use == FileUse::Open ? QFileDialog::ExistingFile : QFileDialog::AnyFile);
    // The dialog asks before it replaces a file; so it must know the whole name.
    if (use == FileUse::Save)
        dialog.setDefaultSuffix(endingOf(filter));
    if (!suggested.isEmpty())
        dialog.selectFile(suggested);
    if (dialog.exec() != QDialog::Accepted)
        return std::nullopt;
    return dialog.selectedFiles().value(0);
}

void DialogPrompts::report(const QString& words, const QString& detail) {
    QMessageBox box(QMessageBox::NoIcon, ui::tr("Witnessmark"), words, QMessageBox::Ok,
                    QApplication::activeWindow());
    box.setTextFormat(Qt::PlainText);
    box.setInformativeText(detail);
    box.exec();
}

}  // namespace wm::ui

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/shell/backups_dialog.h"

#include <QDialogButtonBox>
#include <QFileInfo>
#include <QHBoxLayout>
#include <QLabel>
#include <QListWidget>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QVBoxLayout>

#include "ui/theme/type.h"
#include "ui/words/apply_words.h"
#include "ui/words/speech.h"
#include "ui/workbench/file_names.h"
#include "ui/workbench/prompts.h"

namespace wm::ui {

BackupsDialog::BackupsDialog(const store::File& file, Prompts& prompts, QWidget* parent)
    : QDialog(parent), file_(file), prompts_(prompts), backups_(file.backups()) {
    setObjectName(QStringLiteral("backups-dialog"));
    setWindowTitle(tr("Backups of %1").arg(QFileInfo(file.path()).fileName()));
    resize(640, 360);
    list_ = new QListWidget(this);
    list_->setObjectName(QStringLiteral("backups-list"));
    list_->setAccessibleName(tr("backups, newest first"));
    for (const auto& backup : backups_)
        list_->addItem(QString(backup.takenAt).replace(QLatin1Char('T'), QLatin1Char(' ')));
    summary_ = new QLabel(tr("A copy is kept at the first change of each day. There is none yet."), this);
    summary_->setWordWrap(true);
    lost_ = new QPlainTextEdit(this);
    lost_->setReadOnly(true);
    lost_->setObjectName(QStringLiteral("backups-lost"));
    lost_->setAccessibleName(tr("what going back would lose"));
    restore_ = new QPushButton(tr("Restore to a copy…"), this);
    restore_->setObjectName(QStringLiteral("restore"));
    restore_->setEnabled(false);
    auto* right = new QVBoxLayout;
    right->setSpacing(kSpaceClose);
    right->addWidget(summary_);
    right->addWidget(lost_, 1);
    auto* columns = new QHBoxLayout;
    columns->setSpacing(kSpaceGroup);
    columns->addWidget(list_, 1);
    columns->addLayout(right, 2);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close, this);
    buttons->addButton(restore_, QDialogButtonBox::ActionRole);
    auto* lines = new QVBoxLayout(this);
    lines->addLayout(columns, 1);
    lines->addWidget(buttons);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    connect(restore_, &QPushButton::clicked, this, &BackupsDialog::restore);
    connect(list_, &QListWidget::currentRowChanged, this, &BackupsDialog::showChosen);
    if (!backups_.empty())
        list_->setCurrentRow(0);
}

void BackupsDialog::showChosen() {
    const int row = list_->currentRow();
    restore_->setEnabled(row >= 0);
    if (row < 0)
        return;
    const auto preview = file_.preview(backups_[static_cast<std::size_t>(row)]);
    if (!preview) {
        summary_->setText(wordsFor(preview.error()));
        return lost_->clear();
    }
    summary_->setText(preview->lost.empty() ? tr("Nothing has been entered since.")
                                            : tr("Going back to it would lose:"));
    QStringList words;
    for (const auto& line : preview->lost) {
        const QString text = wordsOfKept(line.text.toStdString());
        words << (line.comesBack ? tr("%1 (taken back since; it would stand again)").arg(text) : text);
    }
    lost_->setPlainText(words.join(QLatin1Char('\n')));
}

void BackupsDialog::restore() {
    const auto& backup = backups_[static_cast<std::size_t>(list_->currentRow())];
    const auto path = prompts_.chooseFile(Prompts::FileUse::Save, tr("Restore to a copy"),
                                          tr("Witnessmark (*.witnessmark)"));
    if (!path)
        return;
    const QString to = withEnding(*path, QStringLiteral(".witnessmark"));
    const auto written = file_.restoreTo(backup, to);
    if (!written)
        return prompts_.report(wordsFor(written.error()), written.error().detail);
    prompts_.report(
        tr("The backup stands in %1. The open file was not touched.").arg(QFileInfo(to).fileName()), {});
}

}  // namespace wm::ui

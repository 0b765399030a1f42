// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/shell/status_line.h"

#include <QAction>
#include <QHBoxLayout>
#include <QLabel>
#include <QPainter>
#include <QToolButton>

#include "ui/theme/plain.h"
#include "ui/theme/tokens.h"
#include "ui/theme/type.h"
#include "ui/workbench/workbench.h"

namespace wm::ui {

namespace {

constexpr int kWidestUndo = 220;
constexpr int kLeastUndo = 120;

QToolButton* keyFor(QAction* action, QWidget* parent) {
    auto* button = new QToolButton(parent);
    const auto follow = [button, action] { button->setEnabled(action->isEnabled()); };
    QObject::connect(button, &QToolButton::clicked, action, &QAction::trigger);
    QObject::connect(action, &QAction::changed, button, follow);
    button->setToolTip(action->toolTip());
    button->setText(action->text() + QLatin1Char(' ') +
                    action->shortcut().toString(QKeySequence::NativeText));
    button->setObjectName(action->objectName() + QStringLiteral("-key"));
    button->setAccessibleName(action->text());
    button->setFocusPolicy(Qt::TabFocus);
    return button;
}

// Shows that something is left out where there is no room for all of it.
class Words : public QLabel {
  public:
    using QLabel::QLabel;

  protected:
    void paintEvent(QPaintEvent* /*event*/) override {
        QPainter painter(this);
        painter.setPen(palette().color(QPalette::WindowText));
        painter.drawText(rect(), Qt::AlignLeft | Qt::AlignVCenter,
                         fontMetrics().elidedText(text(), Qt::ElideRight, width()));
    }
};

QToolButton* stepButton(QAction* action, const char* name, QWidget* parent) {
    auto* button = new QToolButton(parent);
    button->setObjectName(QLatin1String(name));
    button->setFocusPolicy(Qt::TabFocus);
    QObject::connect(button, &QToolButton::clicked, action, &QAction::trigger);
    return button;
}

}  // namespace

StatusLine::StatusLine(Workbench& workbench, QAction* undo, QAction* redo,
                       const std::vector<QAction*>& entries, QWidget* parent)
    : QWidget(parent), workbench_(workbench), undo_(undo), redo_(redo), words_(new Words(this)) {
    setObjectName(QStringLiteral("status"));
    words_->setObjectName(QStringLiteral("status-words"));
    words_->setTextFormat(Qt::PlainText);
    words_->setMinimumWidth(1);
    undoButton_ = stepButton(undo_, "undo-button", this);
    redoButton_ = stepButton(redo_, "redo-button", this);
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(kSpaceGroup, 0, kSpaceClose, kSpaceHair);
    row->setSpacing(kSpaceHair);
    row->addWidget(words_);
    row->addWidget(undoButton_);
    row->addWidget(redoButton_);
    row->addStretch(1);
    for (auto* action : entries) {
        keys_.push_back(keyFor(action, this));
        row->addWidget(keys_.back());
    }
}

void StatusLine::refresh() {
    const QString undoes = workbench_.undoText();
    undoButton_->setVisible(!undoes.isEmpty());
    undoButton_->setToolTip(asTip(tr("Takes back: %1").arg(undoes)));
    undoButton_->setAccessibleName(tr("undo: %1").arg(undoes));
    const QString redoes = workbench_.redoText();
    redoButton_->setVisible(!redoes.isEmpty());
    redoButton_->setText(tr("Redo"));
    redoButton_->setToolTip(
        asTip(tr("Says again: %1 (%2)").arg(redoes, redo_->shortcut().toString(QKeySequence::NativeText))));
    redoButton_->setAccessibleName(tr("redo: %1").arg(redoes));
    const auto book = workbench_.book();
    for (auto* key : keys_)
        key->setVisible(book && !book->machines().empty());
    if (!workbench_.hasFile())
        return say(QString());
    if (workbench_.readOnly())
        return say(tr("open for reading only"));
    say(saved_);
}

void StatusLine::say(const QString& words, bool isRefusal) {
    QPalette ink = palette();
    const Tokens tokens = tokensFor(ink);
    ink.setColor(QPalette::WindowText, isRefusal ? tokens.over : tokens.pencil);
    words_->setPalette(ink);
    words_->setText(words);
    words_->setToolTip(asTip(words));
    fit();
}

// What undo would take back is told as far as the words before it leave room, and in a few letters at least.
void StatusLine::fit() {
    const QString undoes = workbench_.undoText();
    const auto tell = [&](int most) {
        undoButton_->setText(tr("Undo: %1 (%2)")
                                 .arg(undoButton_->fontMetrics().elidedText(undoes, Qt::ElideRight, most),
                                      undo_->shortcut().toString(QKeySequence::NativeText)));
    };
    tell(kLeastUndo);
    int room = width() - layout()->contentsMargins().left() - layout()->contentsMargins().right() -
               words_->sizeHint().width() + kLeastUndo;
    for (int at = 1; at < layout()->count(); ++at)
        if (const auto* part = layout()->itemAt(at)->widget(); part != nullptr && !part->isHidden())
            room -= part->sizeHint().width() + kSpaceHair;
    tell(std::clamp(room, kLeastUndo, kWidestUndo));
}

void StatusLine::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    fit();
}

void StatusLine::noteSaved(const QString& what, const QDateTime& when) {
    saved_ = tr("saved %1 · %2").arg(when.toString(QStringLiteral("HH:mm")), what);
    refresh();
}

}  // namespace wm::ui

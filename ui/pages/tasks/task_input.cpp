// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/tasks/task_input.h"

#include <QAbstractItemView>
#include <QCheckBox>
#include <QComboBox>
#include <QCompleter>
#include <QEvent>
#include <QLabel>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QStringListModel>
#include <QVBoxLayout>

#include "ui/pages/tasks/task_draft.h"
#include "ui/theme/row_delegate.h"
#include "ui/theme/tokens.h"
#include "ui/theme/type.h"

namespace wm::ui {

namespace {

constexpr int kFaultWidth = 190;
constexpr int kWidestChoice = 50;  // letters; a long name is read in the list
constexpr int kTextLines = 3;

void suggestIn(QLineEdit* edit, const Choices& choices) {
    QStringList words;
    for (const auto& [value, word] : choices)
        words << value;
    if (edit->completer() != nullptr) {
        if (auto* model = qobject_cast<QStringListModel*>(edit->completer()->model()))
            model->setStringList(words);
        return;
    }
    auto* completer = new QCompleter(edit);
    completer->setFilterMode(Qt::MatchContains);
    completer->setCaseSensitivity(Qt::CaseInsensitive);
    completer->setModel(new QStringListModel(words, completer));
    edit->setCompleter(completer);
    completer->popup()->setItemDelegate(new RowDelegate(completer->popup()));
    completer->popup()->setStyleSheet(
        QStringLiteral("QAbstractItemView { border: 1px solid palette(dark); }"));
}

}  // namespace

TaskInput::TaskInput(const FieldSpec& spec, const QString& objectName, QWidget* parent)
    : QWidget(parent),
      kind_(spec.kind),
      label_(new QLabel(spec.kind == InputKind::Tick ? QStringLiteral(" ") : spec.label, this)),
      fault_(new QLabel(this)),
      control_(makeControl(spec)) {
    control_->setObjectName(objectName);
    control_->setAccessibleName(spec.label);
    label_->setProperty("role", QStringLiteral("note"));
    label_->setFont(noteFont(font()));
    label_->setBuddy(control_);
    fault_->setObjectName(objectName + QStringLiteral("-fault"));
    fault_->setFont(noteFont(font()));
    fault_->setTextFormat(Qt::PlainText);
    fault_->setWordWrap(true);
    fault_->setMinimumWidth(kFaultWidth);
    fault_->hide();
    auto* lines = new QVBoxLayout(this);
    lines->setContentsMargins(0, 0, 0, 0);
    lines->setSpacing(2);
    lines->addWidget(label_);
    lines->addWidget(control_);
    lines->addWidget(fault_);
    lines->addStretch();
}

QWidget* TaskInput::makeControl(const FieldSpec& spec) {
    if (spec.kind == InputKind::Choice) {
        auto* box = new QComboBox(this);
        box->setSizeAdjustPolicy(QComboBox::AdjustToContents);
        box->setMaximumWidth(fontMetrics().averageCharWidth() * kWidestChoice + kSpacePage);
        box->setFocusPolicy(Qt::StrongFocus);
        box->installEventFilter(this);
        connect(box, &QComboBox::activated, this, &TaskInput::edited);
        return box;
    }
    if (spec.kind == InputKind::Tick) {
        auto* tick = new QCheckBox(spec.label, this);
        tick->setFixedHeight(QLineEdit().sizeHint().height());
        connect(tick, &QCheckBox::clicked, this, &TaskInput::edited);
        return tick;
    }
    const int width = fontMetrics().averageCharWidth() * spec.letters + kSpaceSection;
    if (spec.kind == InputKind::Lines) {
        auto* words = new QPlainTextEdit(this);
        words->setTabChangesFocus(true);
        words->setFixedSize(width, fontMetrics().lineSpacing() * kTextLines + kSpaceLine);
        connect(words, &QPlainTextEdit::textChanged, this, &TaskInput::edited);
        return words;
    }
    auto* edit = new QLineEdit(this);
    edit->setFixedWidth(width);
    connect(edit, &QLineEdit::textEdited, this, &TaskInput::edited);
    return edit;
}

QString TaskInput::value() const {
    if (const auto* box = qobject_cast<const QComboBox*>(control_))
        return box->currentData().toString();
    if (const auto* tick = qobject_cast<const QCheckBox*>(control_))
        return tick->isChecked() ? kTicked : QString();
    if (const auto* words = qobject_cast<const QPlainTextEdit*>(control_))
        return words->toPlainText();
    return static_cast<const QLineEdit*>(control_)->text();
}

void TaskInput::setValue(const QString& value) {
    if (value == this->value())
        return;
    if (auto* box = qobject_cast<QComboBox*>(control_)) {
        if (box->findData(value) < 0)
            box->addItem(value, value);
        box->setCurrentIndex(box->findData(value));
    } else if (auto* tick = qobject_cast<QCheckBox*>(control_)) {
        tick->setChecked(!value.isEmpty());
    } else if (auto* words = qobject_cast<QPlainTextEdit*>(control_)) {
        const QSignalBlocker quiet(words);
        words->setPlainText(value);
    } else {
        auto* edit = static_cast<QLineEdit*>(control_);
        edit->setText(value);
        edit->setCursorPosition(0);
    }
}

void TaskInput::offer(const Choices& choices) {
    if (kind_ == InputKind::Suggested)
        suggestIn(static_cast<QLineEdit*>(control_), choices);
    auto* box = qobject_cast<QComboBox*>(control_);
    if (box == nullptr)
        return;
    const QString kept = value();
    const bool hadOne = box->count() > 0;
    box->clear();
    for (const auto& [value, words] : choices)
        box->addItem(words, value);
    if (hadOne)
        setValue(kept);
}

void TaskInput::showLabel(bool shown) {
    label_->setVisible(shown);
}

void TaskInput::showFault(const QString& words) {
    QPalette palette = fault_->palette();
    palette.setColor(QPalette::WindowText, tokensFor(this->palette()).over);
    fault_->setPalette(palette);
    fault_->setText(words);
    fault_->setVisible(!words.isEmpty());
    control_->setAccessibleDescription(words);
    updateGeometry();
}

// The wheel scrolls the editor; it changes a choice only where the keys are.
bool TaskInput::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() != QEvent::Wheel || static_cast<QWidget*>(watched)->hasFocus())
        return false;
    event->ignore();
    return true;
}

}  // namespace wm::ui

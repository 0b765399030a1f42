// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/fields/field_input.h"

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
#include <algorithm>

#include "ui/fields/draft.h"
#include "ui/theme/row_delegate.h"
#include "ui/theme/tokens.h"
#include "ui/theme/type.h"

namespace wm::ui {

namespace {

constexpr int kFaultWidth = 190;
constexpr int kWidestChoice = 50;  // letters; a long name is read in the list
constexpr int kWidestSearch = 68;
constexpr int kLeastSearch = 16;
constexpr int kTextLines = 3;
const QString kPopupEdge = QStringLiteral("QAbstractItemView { border: 1px solid palette(dark); }");

// The line that was typed, or the only one that has it in its words; -1: none, or several.
int lineMeant(const QComboBox& box) {
    const QString typed = box.currentText().trimmed();
    int found = typed.isEmpty() ? -1 : box.findText(typed, Qt::MatchFixedString);
    int often = 0;
    for (int at = 0; at < box.count() && found < 0 && !typed.isEmpty(); ++at)
        often += box.itemText(at).contains(typed, Qt::CaseInsensitive) ? 1 : 0;
    if (often == 1)
        found = box.findText(typed, Qt::MatchContains);
    return found;
}

// What stands in a box: the value of the words, or the words themselves where they name nothing.
QString valueIn(const QComboBox& box) {
    if (!box.isEditable())
        return box.currentData().toString();
    const int at = lineMeant(box);
    return at < 0 ? box.currentText().trimmed() : box.itemData(at).toString();
}

// As wide as what stands in it: the longest name there is would leave no room beside it.
void fitToText(QComboBox& box) {
    if (!box.isEditable())
        return;
    const QFontMetrics metrics = box.fontMetrics();
    const int letter = metrics.averageCharWidth();
    const int wanted = std::clamp(metrics.horizontalAdvance(box.currentText()) + letter,
                                  letter * kLeastSearch, letter * kWidestSearch);
    box.setFixedWidth(wanted + kSpacePage + kSpaceClose);
}

// Its list shows the names whole.
void widenList(QComboBox& box) {
    int widest = 0;
    for (int at = 0; at < box.count(); ++at)
        widest = std::max(widest, box.fontMetrics().horizontalAdvance(box.itemText(at)));
    for (QAbstractItemView* list : {box.view(), box.completer()->popup()})
        list->setMinimumWidth(widest + kSpacePage + kSpaceClose);
}

void choose(QComboBox& box, const QString& value) {
    if (box.findData(value) < 0 && !box.isEditable())
        box.addItem(value, value);
    box.setCurrentIndex(box.findData(value));
    if (box.isEditable()) {
        if (box.currentIndex() < 0)
            box.setEditText(value);
        box.lineEdit()->setCursorPosition(0);
        fitToText(box);
    }
}

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
    completer->popup()->setStyleSheet(kPopupEdge);
}

}  // namespace

FieldInput::FieldInput(const FieldSpec& spec, const QString& objectName, QWidget* parent)
    : QWidget(parent),
      kind_(spec.kind),
      label_(new QLabel(spec.kind == InputKind::Tick ? QStringLiteral(" ") : spec.label, this)),
      fault_(new QLabel(this)),
      control_(makeControl(spec)) {
    control_->setObjectName(objectName);
    setSpoken(spec.label);
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

QWidget* FieldInput::makeChoice(bool isSearched) {
    auto* box = new QComboBox(this);
    box->setSizeAdjustPolicy(QComboBox::AdjustToContents);
    box->setMaximumWidth(fontMetrics().averageCharWidth() * kWidestChoice + kSpacePage);
    box->setFocusPolicy(Qt::StrongFocus);
    box->installEventFilter(this);
    connect(box, &QComboBox::activated, this, &FieldInput::edited);
    if (!isSearched)
        return box;
    box->setEditable(true);
    box->setInsertPolicy(QComboBox::NoInsert);
    box->completer()->setCompletionMode(QCompleter::PopupCompletion);
    box->completer()->setFilterMode(Qt::MatchContains);
    box->completer()->popup()->setItemDelegate(new RowDelegate(box->completer()->popup()));
    box->completer()->popup()->setStyleSheet(kPopupEdge);
    connect(box->lineEdit(), &QLineEdit::textEdited, this, &FieldInput::edited);
    // A part of a name becomes the whole one when the keys go on.
    connect(box->lineEdit(), &QLineEdit::editingFinished, this, [box] {
        if (const int at = lineMeant(*box); at >= 0)
            box->setCurrentIndex(at);
        fitToText(*box);
    });
    connect(box, &QComboBox::activated, box, [box] { fitToText(*box); });
    fitToText(*box);
    return box;
}

QWidget* FieldInput::makeControl(const FieldSpec& spec) {
    if (spec.kind == InputKind::Choice || spec.kind == InputKind::Search)
        return makeChoice(spec.kind == InputKind::Search);
    if (spec.kind == InputKind::Tick) {
        auto* tick = new QCheckBox(spec.label, this);
        tick->setFixedHeight(QLineEdit().sizeHint().height());
        connect(tick, &QCheckBox::clicked, this, &FieldInput::edited);
        return tick;
    }
    const int width = fontMetrics().averageCharWidth() * spec.letters + kSpaceSection;
    if (spec.kind == InputKind::Lines) {
        auto* words = new QPlainTextEdit(this);
        words->setTabChangesFocus(true);
        words->setFixedSize(width, fontMetrics().lineSpacing() * kTextLines + kSpaceLine);
        connect(words, &QPlainTextEdit::textChanged, this, &FieldInput::edited);
        return words;
    }
    auto* edit = new QLineEdit(this);
    edit->setFixedWidth(width);
    connect(edit, &QLineEdit::textEdited, this, &FieldInput::edited);
    return edit;
}

QString FieldInput::value() const {
    if (const auto* box = qobject_cast<const QComboBox*>(control_))
        return valueIn(*box);
    if (const auto* tick = qobject_cast<const QCheckBox*>(control_))
        return tick->isChecked() ? kTicked : QString();
    if (const auto* words = qobject_cast<const QPlainTextEdit*>(control_))
        return words->toPlainText();
    return static_cast<const QLineEdit*>(control_)->text();
}

void FieldInput::setValue(const QString& value) {
    if (value == this->value())
        return;
    if (auto* box = qobject_cast<QComboBox*>(control_)) {
        choose(*box, value);
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

void FieldInput::offer(const Choices& choices) {
    if (kind_ == InputKind::Suggested)
        suggestIn(static_cast<QLineEdit*>(control_), choices);
    auto* box = qobject_cast<QComboBox*>(control_);
    if (box == nullptr || (kind_ == InputKind::Search && choices == offered_))
        return;
    offered_ = choices;
    const QString kept = value();
    const bool hadOne = box->count() > 0 || box->isEditable();
    box->clear();
    for (const auto& [value, words] : choices)
        box->addItem(words, value);
    if (box->isEditable()) {
        box->setCurrentIndex(-1);
        widenList(*box);
    }
    if (hadOne)
        choose(*box, kept);
}

void FieldInput::setSpoken(const QString& name) {
    control_->setAccessibleName(name);
    if (const auto* box = qobject_cast<QComboBox*>(control_); box != nullptr && box->isEditable())
        box->lineEdit()->setAccessibleName(name);
}

void FieldInput::showLabel(bool shown) {
    label_->setVisible(shown);
}

void FieldInput::showFault(const QString& words) {
    QPalette palette = fault_->palette();
    palette.setColor(QPalette::WindowText, tokensFor(this->palette()).over);
    fault_->setPalette(palette);
    fault_->setText(words);
    fault_->setVisible(!words.isEmpty());
    control_->setAccessibleDescription(words);
    updateGeometry();
}

// The wheel scrolls the editor; it changes a choice only where the keys are.
bool FieldInput::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() != QEvent::Wheel || static_cast<QWidget*>(watched)->hasFocus())
        return false;
    event->ignore();
    return true;
}

}  // namespace wm::ui

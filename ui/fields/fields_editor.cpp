// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/fields/fields_editor.h"

#include <QAbstractButton>
#include <QCheckBox>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QToolButton>
#include <QVBoxLayout>
#include <algorithm>
#include <utility>

#include "ui/entry/flow.h"
#include "ui/fields/field_input.h"
#include "ui/fields/field_list.h"
#include "ui/theme/type.h"
#include "ui/words/error_words.h"
#include "ui/words/figures.h"

namespace wm::ui {

FieldsEditor::FieldsEditor(SheetSpec sheet, QWidget* parent)
    : QWidget(parent), sheet_(std::move(sheet)), often_(new QBoxLayout(QBoxLayout::TopToBottom)) {
    setObjectName(sheet_.prefix + QStringLiteral("-editor"));
    setAccessibleName(sheet_.spoken);
    often_->setSpacing(kSpaceLine);
    auto* lines = new QVBoxLayout(this);
    lines->setContentsMargins(0, 0, kSpaceClose, 0);
    lines->setSpacing(kSpaceClose);
    lines->addLayout(often_);
    for (const GroupSpec& spec : sheet_.groups) {
        QWidget* group = makeGroup(spec);
        if (spec.folded)
            lines->addWidget(group);
        else
            often_->addWidget(group, 0, Qt::AlignTop);
    }
    lines->addStretch();
}

QWidget* FieldsEditor::makeGroup(const GroupSpec& spec) {
    auto* whole = new QWidget(this);
    auto* lines = new QVBoxLayout(whole);
    lines->setContentsMargins(0, 0, 0, 0);
    lines->setSpacing(kSpaceHair);
    Group group{.inside = new QWidget(whole), .title = spec.title};
    if (spec.folded) {
        group.fold = new QToolButton(whole);
        group.fold->setObjectName(QStringLiteral("%1-fold-%2").arg(sheet_.prefix).arg(groups_.size()));
        group.fold->setCheckable(true);
        group.fold->setAutoRaise(true);
        group.fold->setFocusPolicy(Qt::StrongFocus);
        group.fold->setArrowType(Qt::RightArrow);
        group.fold->setToolButtonStyle(Qt::ToolButtonTextBesideIcon);
        group.fold->setText(spec.title);
        group.fold->setStyleSheet(
            QStringLiteral("QToolButton:checked:!hover:!pressed { background: transparent; }"));
        lines->addWidget(group.fold);
        group.inside->hide();
        connect(group.fold, &QToolButton::toggled, group.inside,
                [inside = group.inside, fold = group.fold](bool open) {
                    inside->setVisible(open);
                    fold->setArrowType(open ? Qt::DownArrow : Qt::RightArrow);
                });
    } else {
        auto* title = new QLabel(spec.title, whole);
        title->setProperty("role", QStringLiteral("section"));
        lines->addWidget(title);
    }
    fill(group.inside, spec);
    lines->addWidget(group.inside);
    for (const auto& list : spec.lists)
        group.names.push_back(list.name);
    for (const auto& field : spec.fields)
        group.names.push_back(field.name);
    groups_.push_back(std::move(group));
    return whole;
}

void FieldsEditor::fill(QWidget* inside, const GroupSpec& spec) {
    auto* lines = new QVBoxLayout(inside);
    lines->setContentsMargins(spec.folded ? kSpaceSection : 0, 0, 0, spec.folded ? kSpaceClose : 0);
    lines->setSpacing(kSpaceClose);
    for (const ListSpec& list : spec.lists)
        lines->addWidget(makeList(list, inside));
    auto* flow = new Flow(kSpaceLine, kSpaceClose);
    for (const FieldSpec& field : spec.fields) {
        auto* input = new FieldInput(field, sheet_.prefix + QLatin1Char('-') + text(field.name), inside);
        inputs_[field.name] = input;
        flow->addWidget(input);
        connect(input, &FieldInput::edited, this, &FieldsEditor::reportEdit);
    }
    lines->addLayout(flow);
}

FieldList* FieldsEditor::makeList(const ListSpec& spec, QWidget* inside) {
    auto* rows = new FieldList(spec, sheet_.prefix, inside);
    lists_[spec.name] = rows;
    if (spec.isDoubted)
        connect(rows, &FieldList::edited, this, &FieldsEditor::doubtTheFigure);
    connect(rows, &FieldList::edited, this, [this, rows] {
        offerAgain(rows);
        reportEdit();
    });
    connect(rows, &FieldList::openAsked, this,
            [this, name = spec.name](const QString& value) { emit openAsked(name, value); });
    return rows;
}

void FieldsEditor::offer(ChoicesOf choices) {
    choices_ = std::move(choices);
    for (const auto& [name, input] : inputs_)
        input->offer(choices_({{}, name, {}, shown_}));
    for (const auto& [name, list] : lists_)
        list->offer([this, name = name](const std::string& field, const DraftRow& row) {
            return choices_({name, field, row, draft()});
        });
}

// The line that is being typed in is asked by its list.
void FieldsEditor::offerAgain(const FieldList* but) {
    for (const auto& [name, list] : lists_)
        if (list != but)
            list->offerAgain();
}

void FieldsEditor::show(const Draft& draft) {
    shown_ = draft;
    for (const auto& [name, input] : inputs_)
        input->setValue(shown_.fields[name]);
    for (const auto& [name, list] : lists_)
        list->setRows(shown_.lists[name]);
    offerAgain(nullptr);
    showFoldCounts();
}

Draft FieldsEditor::draft() const {
    Draft draft = shown_;
    for (const auto& [name, input] : inputs_)
        draft.fields[name] = input->value();
    for (const auto& [name, list] : lists_)
        draft.lists[name] = list->rows();
    return draft;
}

// Another figure than the one that was confirmed is not confirmed, until somebody says so again.
void FieldsEditor::doubtTheFigure() {
    inputs_.at("confirmed")->setValue(QString());
}

void FieldsEditor::reportEdit() {
    showFoldCounts();
    emit edited();
}

// A shut fold says how much is behind it.
void FieldsEditor::showFoldCounts() {
    for (const Group& group : groups_) {
        if (group.fold == nullptr)
            continue;
        std::size_t lines = 0;
        for (const std::string& name : group.names)
            if (const auto list = lists_.find(name); list != lists_.end())
                lines += list->second->rows().size();
        const QString words = lines == 0 ? group.title : tr("%1 (%2)").arg(group.title).arg(lines);
        group.fold->setText(words);
    }
}

FieldInput* FieldsEditor::inputAt(const base::Place& place) const {
    if (place.lines.empty()) {
        const auto input = inputs_.find(place.field);
        return input == inputs_.end() ? nullptr : input->second;
    }
    const auto list = lists_.find(place.lines.front().list);
    return list == lists_.end() ? nullptr : list->second->field(place.lines.front().at, place.field);
}

void FieldsEditor::open(const base::Place& place) {
    const std::string& name = place.lines.empty() ? place.field : place.lines.front().list;
    for (const Group& group : groups_)
        if (group.fold != nullptr && std::count(group.names.begin(), group.names.end(), name) > 0)
            group.fold->setChecked(true);
}

Faults FieldsEditor::showFaults(const Faults& faults) {
    clearFaults();
    Faults elsewhere;
    std::optional<base::Place> first;
    for (const base::Error& fault : faults) {
        FieldInput* input = inputAt(fault.field);
        if (input == nullptr) {
            elsewhere.push_back(fault);
            continue;
        }
        open(fault.field);
        input->showFault(wordsAtField(fault));
        if (!first)
            first = fault.field;
    }
    if (first)
        goTo(*first);
    return elsewhere;
}

void FieldsEditor::markFaults(const Faults& faults) {
    clearFaults();
    for (const base::Error& fault : faults)
        if (FieldInput* input = inputAt(fault.field))
            input->showFault(wordsAtField(fault));
}

void FieldsEditor::clearFaults() {
    for (const auto& [name, input] : inputs_)
        input->showFault(QString());
    for (const auto& [name, list] : lists_)
        list->clearFaults();
}

void FieldsEditor::goTo(const base::Place& place) {
    open(place);
    FieldInput* input = inputAt(place);
    if (input == nullptr)
        return;
    input->control()->setFocus(Qt::OtherFocusReason);
    if (auto* edit = qobject_cast<QLineEdit*>(input->control()))
        edit->selectAll();
    emit wentTo(input);
}

void FieldsEditor::addLine(const std::string& list) {
    open(base::Place(list));
    FieldList* rows = lists_.at(list);
    emit wentTo(rows->addLine());
}

void FieldsEditor::setAcross(bool across) {
    often_->setDirection(across ? QBoxLayout::LeftToRight : QBoxLayout::TopToBottom);
    often_->setSpacing(across ? kSpaceSection : kSpaceLine);
    for (int at = 0; at < often_->count(); ++at)
        often_->setStretch(at, across ? 1 : 0);
}

// What a field does not take for itself comes here. Enter on a key of the editor is that key.
void FieldsEditor::keyPressEvent(QKeyEvent* event) {
    if (event->key() != Qt::Key_Return && event->key() != Qt::Key_Enter)
        return QWidget::keyPressEvent(event);
    auto* button = qobject_cast<QAbstractButton*>(focusWidget());
    if (button != nullptr && qobject_cast<QCheckBox*>(button) == nullptr)
        button->click();
    else
        emit saveAsked();
}

// At the field itself its place in the list needs no saying.
QString wordsAtField(base::Error fault) {
    fault.field = fault.field.field;
    return wordsFor(fault);
}

}  // namespace wm::ui

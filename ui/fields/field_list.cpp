// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/fields/field_list.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QToolButton>
#include <QVBoxLayout>
#include <algorithm>
#include <utility>

#include "ui/entry/flow.h"
#include "ui/fields/field_input.h"
#include "ui/theme/type.h"
#include "ui/words/figures.h"

namespace wm::ui {

FieldList::FieldList(ListSpec spec, const QString& prefix, QWidget* parent)
    : QWidget(parent),
      spec_(std::move(spec)),
      prefix_(prefix),
      add_(new QPushButton(
          spec_.addKey.isEmpty() ? tr("+ %1").arg(spec_.one) : tr("+ %1 (%2)").arg(spec_.one, spec_.addKey),
          this)) {
    add_->setObjectName(named(QStringLiteral("add")));
    add_->setAccessibleName(tr("add a %1").arg(spec_.one));
    add_->setFlat(true);
    add_->setStyleSheet(QStringLiteral(
        "QPushButton { padding: 4px; } QPushButton:focus { padding: 3px; }"));  // under the fields' edge
    auto* lines = new QVBoxLayout(this);
    lines->setContentsMargins(0, 0, 0, 0);
    lines->setSpacing(kSpaceHair);
    if (!spec_.title.isEmpty()) {
        auto* title = new QLabel(spec_.title, this);
        title->setProperty("role", QStringLiteral("note"));
        title->setFont(noteFont(font()));
        title->setWordWrap(true);
        lines->addWidget(title);
    }
    // Single fields stand side by side, lines of several one below the other.
    if (spec_.columns.size() == 1) {
        place_ = new Flow(kSpaceLine, kSpaceHair);
        lines->addLayout(place_);
    } else {
        auto* column = new QVBoxLayout;
        column->setSpacing(kSpaceHair);
        place_ = column;
        lines->addLayout(column);
    }
    lines->addWidget(add_, 0, Qt::AlignLeft);
    connect(add_, &QPushButton::clicked, this, &FieldList::addLine);
}

QString FieldList::named(const QString& rest) const {
    return prefix_ + QLatin1Char('-') + text(spec_.name) + QLatin1Char('-') + rest;
}

void FieldList::offer(RowChoices choices) {
    choices_ = std::move(choices);
    for (std::size_t row = 0; row < lines_.size(); ++row)
        for (std::size_t at = 0; at < spec_.columns.size(); ++at)
            lines_[row].inputs[at]->offer(choices_(spec_.columns[at].name, rows_[row]));
}

void FieldList::offerAgain() {
    if (!choices_)
        return;
    for (std::size_t row = 0; row < lines_.size(); ++row)
        for (std::size_t at = 0; at < spec_.columns.size(); ++at)
            if (!spec_.columns[at].follows.empty())
                lines_[row].inputs[at]->offer(choices_(spec_.columns[at].name, rows_[row]));
}

void FieldList::setRows(const std::vector<DraftRow>& rows) {
    if (rows == rows_)
        return;
    rows_ = rows;
    build();
}

FieldInput* FieldList::field(std::size_t row, const std::string& column) const {
    if (row >= lines_.size())
        return nullptr;
    for (std::size_t at = 0; at < spec_.columns.size(); ++at)
        if (spec_.columns[at].name == column)
            return lines_[row].inputs[at];
    return nullptr;
}

void FieldList::clearFaults() {
    for (const Line& line : lines_)
        for (FieldInput* input : line.inputs)
            input->showFault(QString());
}

FieldInput* FieldList::addLine() {
    DraftRow row;
    for (const FieldSpec& column : spec_.columns) {
        const auto choices = choices_ ? choices_(column.name, row) : Choices{};
        const bool isChoice = column.kind == InputKind::Choice && !choices.empty();
        row[column.name] = !column.begins.isEmpty() ? column.begins
                           : isChoice               ? choices.front().first
                                                    : QString();
    }
    rows_.push_back(std::move(row));
    build();
    FieldInput* first = lines_.back().inputs.front();
    first->control()->setFocus(Qt::OtherFocusReason);
    emit edited();
    return first;
}

void FieldList::takeOut(std::size_t at) {
    rows_.erase(rows_.begin() + static_cast<std::ptrdiff_t>(at));
    build();
    add_->setFocus(Qt::OtherFocusReason);
    emit edited();
}

void FieldList::build() {
    for (const Line& line : std::exchange(lines_, {})) {
        place_->removeWidget(line.box);
        line.box->hide();
        line.box->setParent(nullptr);
        line.box->deleteLater();  // it may be its own cross that was clicked
    }
    for (std::size_t at = 0; at < rows_.size(); ++at) {
        lines_.push_back(makeLine(at));
        place_->addWidget(lines_.back().box);
        lines_.back().box->show();
    }
    setOrder();
    updateGeometry();
}

// Tab comes to the lines before it comes to the button below them.
void FieldList::setOrder() {
    QWidget* last = nullptr;
    const auto then = [&last](QWidget* next) {
        if (last != nullptr)
            setTabOrder(last, next);
        last = next;
    };
    for (const Line& line : lines_) {
        for (const FieldInput* input : line.inputs)
            then(input->control());
        for (QWidget* key : line.keys)
            then(key);
    }
    then(add_);
}

// Another figure than the one that was confirmed is not confirmed, until somebody says so again.
void FieldList::doubtTheFigure(std::size_t row) {
    const auto said = rows_[row].find("confirmed");
    if (said == rows_[row].end())
        return;
    said->second.clear();
    if (auto* tick = field(row, "confirmed"))
        tick->setValue(QString());
}

// What hung on the field and can't be chosen any more is chosen anew: a joint is no access step.
void FieldList::take(std::size_t at, const FieldSpec& column, const FieldInput& input) {
    rows_[at][column.name] = input.value();
    if (column.kind == InputKind::Figure || column.name == "unit")
        doubtTheFigure(at);
    for (const FieldSpec& other : spec_.columns) {
        if (other.follows != column.name || !choices_)
            continue;
        const Choices choices = choices_(other.name, rows_[at]);
        QString& value = rows_[at][other.name];
        if (std::none_of(choices.begin(), choices.end(),
                         [&](const auto& choice) { return choice.first == value; }))
            value.clear();
        FieldInput* follower = field(at, other.name);
        follower->offer(choices);
        follower->setValue(value);
    }
    emit edited();
}

FieldInput* FieldList::makeInput(std::size_t at, const FieldSpec& column, QWidget* box) {
    auto* input = new FieldInput(column, named(QStringLiteral("%1-%2").arg(at).arg(text(column.name))), box);
    input->setSpoken(tr("%1 %2, %3").arg(spec_.one).arg(at + 1).arg(column.label));
    input->showLabel(column.below || (at == 0 && hasLabels()));
    if (choices_)
        input->offer(choices_(column.name, rows_[at]));
    input->setValue(rows_[at][column.name]);
    connect(input, &FieldInput::edited, this, [this, at, input, column] { take(at, column, *input); });
    return input;
}

QToolButton* FieldList::makeKey(const QString& name, const QString& sign, QWidget* box) {
    auto* key = new QToolButton(box);
    key->setObjectName(named(name));
    key->setText(sign);
    key->setFocusPolicy(Qt::StrongFocus);
    return key;
}

FieldList::Line FieldList::makeLine(std::size_t at) {
    Line line;
    line.box = new QWidget(this);
    for (const FieldSpec& column : spec_.columns)
        line.inputs.push_back(makeInput(at, column, line.box));
    if (!spec_.opens.isEmpty()) {
        auto* open = makeKey(QStringLiteral("%1-open").arg(at), QStringLiteral("→"), line.box);
        open->setToolTip(spec_.opens);
        open->setAccessibleName(tr("%1 %2: %3").arg(spec_.one).arg(at + 1).arg(spec_.opens));
        connect(open, &QToolButton::clicked, this,
                [this, at] { emit openAsked(rows_[at][spec_.columns.front().name]); });
        line.keys.push_back(open);
    }
    auto* cross = makeKey(QStringLiteral("%1-out").arg(at), QStringLiteral("×"), line.box);
    cross->setToolTip(tr("take this %1 out").arg(spec_.one));
    cross->setAccessibleName(tr("take %1 %2 out").arg(spec_.one).arg(at + 1));
    connect(cross, &QToolButton::clicked, this, [this, at] { takeOut(at); });
    line.keys.push_back(cross);
    if (spec_.isSentence)
        layOutSentence(line);
    else
        layOut(line, at == 0);
    return line;
}

void FieldList::layOut(const Line& line, bool isFirst) {
    auto* rows = new QVBoxLayout(line.box);
    rows->setContentsMargins(0, 0, 0, 0);
    rows->setSpacing(kSpaceHair);
    auto* row = new QHBoxLayout;
    auto* below = new QHBoxLayout;
    for (auto* each : {row, below}) {
        each->setSpacing(kSpaceClose);
        rows->addLayout(each);
    }
    for (std::size_t at = 0; at < line.inputs.size(); ++at)
        (spec_.columns[at].below ? below : row)->addWidget(line.inputs[at], 0, Qt::AlignTop);
    // As low as the fields, which stand under their labels in the first line.
    for (QWidget* key : line.keys) {
        auto* beside = new QVBoxLayout;
        beside->setSpacing(2);
        if (isFirst && hasLabels()) {
            auto* blank = new QLabel(QStringLiteral(" "), line.box);
            blank->setFont(noteFont(font()));
            beside->addWidget(blank);
        }
        beside->addWidget(key);
        beside->addStretch();
        row->addLayout(beside);
    }
    row->addStretch(1);
    below->addStretch(1);
}

// What follows a lead stays together; where the line has no room for it, it goes on below.
void FieldList::layOutSentence(const Line& line) {
    auto* flow = new Flow(kSpaceClose, kSpaceHair);
    QHBoxLayout* part = nullptr;
    const auto begin = [&] {
        auto* box = new QWidget(line.box);
        part = new QHBoxLayout(box);
        part->setContentsMargins(0, 0, 0, 0);
        part->setSpacing(kSpaceClose);
        flow->addWidget(box);
    };
    begin();
    for (std::size_t at = 0; at < line.inputs.size(); ++at) {
        if (const QString& lead = spec_.columns[at].lead; !lead.isEmpty()) {
            begin();
            auto* words = new QLabel(lead, line.box);
            words->setFixedHeight(line.inputs[at]->control()->sizeHint().height());
            part->addWidget(words, 0, Qt::AlignTop);
        }
        part->addWidget(line.inputs[at], 0, Qt::AlignTop);
    }
    for (QWidget* key : line.keys)
        part->addWidget(key, 0, Qt::AlignTop);
    line.box->setLayout(flow);
}

}  // namespace wm::ui

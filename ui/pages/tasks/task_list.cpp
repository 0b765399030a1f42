// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/tasks/task_list.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QToolButton>
#include <QVBoxLayout>
#include <utility>

#include "ui/entry/flow.h"
#include "ui/pages/tasks/task_input.h"
#include "ui/theme/type.h"
#include "ui/words/figures.h"

namespace wm::ui {

TaskList::TaskList(ListSpec spec, QWidget* parent)
    : QWidget(parent), spec_(std::move(spec)), add_(new QPushButton(tr("+ %1").arg(spec_.one), this)) {
    add_->setObjectName(QStringLiteral("task-%1-add").arg(text(spec_.name)));
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
    connect(add_, &QPushButton::clicked, this, &TaskList::addLine);
}

void TaskList::offer(ChoicesOf choices) {
    choices_ = std::move(choices);
    for (const Line& line : lines_)
        for (std::size_t at = 0; at < line.inputs.size(); ++at)
            line.inputs[at]->offer(choices_(spec_.columns[at].name));
}

void TaskList::setRows(const std::vector<DraftRow>& rows) {
    if (rows == rows_)
        return;
    rows_ = rows;
    build();
}

TaskInput* TaskList::field(std::size_t row, const std::string& column) const {
    if (row >= lines_.size())
        return nullptr;
    for (std::size_t at = 0; at < spec_.columns.size(); ++at)
        if (spec_.columns[at].name == column)
            return lines_[row].inputs[at];
    return nullptr;
}

void TaskList::clearFaults() {
    for (const Line& line : lines_)
        for (TaskInput* input : line.inputs)
            input->showFault(QString());
}

void TaskList::addLine() {
    DraftRow row;
    for (const FieldSpec& column : spec_.columns) {
        const auto choices = choices_ ? choices_(column.name) : Choices{};
        row[column.name] =
            column.kind == InputKind::Choice && !choices.empty() ? choices.front().first : QString();
    }
    rows_.push_back(std::move(row));
    build();
    lines_.back().inputs.front()->control()->setFocus(Qt::OtherFocusReason);
    emit edited();
}

void TaskList::takeOut(std::size_t at) {
    rows_.erase(rows_.begin() + static_cast<std::ptrdiff_t>(at));
    build();
    add_->setFocus(Qt::OtherFocusReason);
    emit edited();
}

void TaskList::build() {
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
    // Tab comes to the lines before it comes to the button below them.
    QWidget* last = nullptr;
    const auto then = [&last](QWidget* next) {
        if (last != nullptr)
            setTabOrder(last, next);
        last = next;
    };
    for (const Line& line : lines_) {
        for (const TaskInput* input : line.inputs)
            then(input->control());
        then(line.out);
    }
    then(add_);
    updateGeometry();
}

// Another figure than the one that was confirmed is not confirmed, until somebody says so again.
void TaskList::doubtTheFigure(std::size_t row) {
    const auto said = rows_[row].find("confirmed");
    if (said == rows_[row].end())
        return;
    said->second.clear();
    if (auto* tick = field(row, "confirmed"))
        tick->setValue(QString());
}

TaskList::Line TaskList::makeLine(std::size_t at) {
    Line line;
    line.box = new QWidget(this);
    auto* rows = new QVBoxLayout(line.box);
    rows->setContentsMargins(0, 0, 0, 0);
    rows->setSpacing(kSpaceHair);
    auto* row = new QHBoxLayout;
    auto* below = new QHBoxLayout;
    for (auto* each : {row, below}) {
        each->setSpacing(kSpaceClose);
        rows->addLayout(each);
    }
    for (const FieldSpec& column : spec_.columns) {
        const QString name = text(column.name);
        auto* input = new TaskInput(
            column, QStringLiteral("task-%1-%2-%3").arg(text(spec_.name)).arg(at).arg(name), line.box);
        input->control()->setAccessibleName(tr("%1 %2, %3").arg(spec_.one).arg(at + 1).arg(column.label));
        input->showLabel(column.below || (at == 0 && spec_.columns.size() > 1));
        if (choices_)
            input->offer(choices_(column.name));
        input->setValue(rows_[at][column.name]);
        connect(input, &TaskInput::edited, this, [this, at, input, column] {
            rows_[at][column.name] = input->value();
            if (column.kind == InputKind::Figure || column.name == "unit")
                doubtTheFigure(at);
            emit edited();
        });
        (column.below ? below : row)->addWidget(input, 0, Qt::AlignTop);
        line.inputs.push_back(input);
    }
    auto* cross = new QToolButton(line.box);
    line.out = cross;
    cross->setObjectName(QStringLiteral("task-%1-%2-out").arg(text(spec_.name)).arg(at));
    cross->setText(QStringLiteral("×"));
    cross->setToolTip(tr("take this %1 out").arg(spec_.one));
    cross->setAccessibleName(tr("take %1 %2 out").arg(spec_.one).arg(at + 1));
    cross->setFocusPolicy(Qt::StrongFocus);
    connect(cross, &QToolButton::clicked, this, [this, at] { takeOut(at); });
    // As low as the fields, which stand under their labels in the first line.
    auto* beside = new QVBoxLayout;
    beside->setSpacing(2);
    if (at == 0 && spec_.columns.size() > 1) {
        auto* blank = new QLabel(QStringLiteral(" "), line.box);
        blank->setFont(noteFont(font()));
        beside->addWidget(blank);
    }
    beside->addWidget(cross);
    beside->addStretch();
    row->addLayout(beside);
    row->addStretch(1);
    below->addStretch(1);
    return line;
}

}  // namespace wm::ui

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/tasks/baseline_table.h"

#include <QKeyEvent>

namespace wm::ui {

namespace {

std::optional<Said> saidBy(int key) {
    switch (key) {
        case Qt::Key_N:
            return Said::New;
        case Qt::Key_O:
            return Said::NeverDone;
        case Qt::Key_S:
            return Said::Serviced;
        case Qt::Key_F:
            return Said::Fine;
        case Qt::Key_U:
            return Said::Unknown;
        default:
            return std::nullopt;
    }
}

}  // namespace

BaselineTable::BaselineTable(QWidget* parent)
    : RowTable(
          {tr("Task"), tr("About"), tr("Interval"), tr("If left undone"), tr("What is known"), tr("When")}, 0,
          parent) {
    setObjectName(QStringLiteral("baselineTable"));
    setAccessibleName(tr("tasks that nobody has recorded"));
    setSelectionMode(QAbstractItemView::ExtendedSelection);
    setSortingEnabled(false);
}

std::vector<TaskId> BaselineTable::markedTasks() const {
    std::vector<TaskId> tasks;
    for (const QModelIndex& index : selectionModel()->selectedRows())
        if (const auto id = index.data(TableModel::IdRole).toLongLong(); id != kFold)
            tasks.emplace_back(id);
    return tasks;
}

void BaselineTable::mark(const std::function<bool(TaskId)>& belongs) {
    QItemSelection marked;
    for (int row = 0; row < model()->rowCount(); ++row) {
        const QModelIndex index = model()->index(row, 0);
        if (belongs(TaskId{index.data(TableModel::IdRole).toLongLong()}))
            marked.select(index, model()->index(row, model()->columnCount() - 1));
    }
    selectionModel()->select(marked, QItemSelectionModel::ClearAndSelect);
}

void BaselineTable::moveTo(std::int64_t id) {
    choose(id);
    selectionModel()->select(currentIndex(), QItemSelectionModel::ClearAndSelect | QItemSelectionModel::Rows);
}

void BaselineTable::keyPressEvent(QKeyEvent* event) {
    if (!takesAnswers_ || !takeKey(event->key(), event->modifiers()))
        RowTable::keyPressEvent(event);
}

bool BaselineTable::takeKey(int key, Qt::KeyboardModifiers modifiers) {
    if (modifiers == Qt::ControlModifier && key == Qt::Key_A) {
        emit allAsked();
        return true;
    }
    if (modifiers != Qt::NoModifier && modifiers != Qt::ShiftModifier)
        return false;
    if (key == Qt::Key_G) {
        emit groupAsked();
        return true;
    }
    const auto said = saidBy(key);
    if (said)
        emit answered(*said);
    return said.has_value();
}

}  // namespace wm::ui

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/tables/table_model.h"

#include <QFont>
#include <algorithm>
#include <utility>

#include "ui/theme/plain.h"

namespace wm::ui {

TableModel::TableModel(std::vector<QString> headers, QObject* parent)
    : QAbstractTableModel(parent), headers_(std::move(headers)) {}

void TableModel::setRows(std::vector<TableRow> rows) {
    beginResetModel();
    rows_ = std::move(rows);
    endResetModel();
}

int TableModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(rows_.size());
}

int TableModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(headers_.size());
}

QVariant TableModel::data(const QModelIndex& index, int role) const {
    if (!checkIndex(index, CheckIndexOption::IndexIsValid | CheckIndexOption::ParentIsInvalid))
        return {};
    const TableRow& row = rows_[static_cast<std::size_t>(index.row())];
    const auto column = static_cast<std::size_t>(index.column());
    const Cell cell = column < row.cells.size() ? row.cells[column] : Cell{};
    switch (role) {
        case Qt::DisplayRole:
            return cell.text;
        case Qt::DecorationRole:
            return cell.icon.isNull() ? QVariant{} : QVariant(cell.icon);
        case Qt::ToolTipRole: {
            const QString words =
                row.toolTip.isEmpty() ? cell.text : cell.text + QLatin1Char('\n') + row.toolTip;
            return asTip(words);
        }
        case Qt::TextAlignmentRole:
            return QVariant::fromValue(Qt::AlignVCenter | (cell.figure ? Qt::AlignRight : Qt::AlignLeft));
        case Qt::FontRole:
            if (row.struck) {
                QFont font;
                font.setStrikeOut(true);
                return font;
            }
            return {};
        case SortRole:
            return cell.sort.isValid() ? cell.sort : QVariant(cell.text);
        case IdRole:
            return QVariant::fromValue<qlonglong>(row.id);
        case FigureRole:
            return cell.figure;
        case PencilRole:
            return cell.pencil;
        case OverRole:
            return cell.over;
        case UnconfirmedRole:
            return cell.unconfirmed;
        default:
            return {};
    }
}

bool TableModel::holdsFigures(std::size_t column) const {
    return std::any_of(rows_.begin(), rows_.end(), [column](const TableRow& row) {
        return column < row.cells.size() && row.cells[column].figure;
    });
}

QVariant TableModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal || section < 0 || section >= columnCount())
        return {};
    const auto column = static_cast<std::size_t>(section);
    if (role == Qt::DisplayRole)
        return headers_[column];
    // A head stands over its figures as they stand.
    if (role == Qt::TextAlignmentRole)
        return QVariant::fromValue(Qt::AlignVCenter |
                                   (holdsFigures(column) ? Qt::AlignRight : Qt::AlignLeft));
    return {};
}

}  // namespace wm::ui

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QAbstractTableModel>
#include <QIcon>
#include <QString>
#include <QVariant>
#include <cstdint>
#include <vector>

namespace wm::ui {

/// One figure or word of a table, ready to read.
struct Cell {
    QString text{};
    QVariant sort{};  ///< what it sorts by, if that is not the text
    QIcon icon{};
    bool figure = false;       ///< to the right
    bool pencil = false;       ///< secondary
    bool over = false;         ///< to be looked at: what is too much, or too late
    bool unconfirmed = false;  ///< carries the wedge
};

struct TableRow {
    std::int64_t id = 0;  ///< of the thing that the row is about
    std::vector<Cell> cells{};
    QString toolTip{};
    bool struck = false;
};

/// Rows of ready words over core values; pages make them from the book, this only shows them.
class TableModel : public QAbstractTableModel {
    Q_OBJECT

  public:
    enum Role { SortRole = Qt::UserRole, IdRole, FigureRole, PencilRole, OverRole, UnconfirmedRole };

    explicit TableModel(std::vector<QString> headers, QObject* parent = nullptr);
    void setRows(std::vector<TableRow> rows);
    [[nodiscard]] const std::vector<TableRow>& rows() const { return rows_; }

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

  private:
    [[nodiscard]] bool holdsFigures(std::size_t column) const;

    std::vector<QString> headers_;
    std::vector<TableRow> rows_;
};

}  // namespace wm::ui

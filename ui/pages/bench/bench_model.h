// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QAbstractTableModel>
#include <vector>

#include "ui/pages/bench/bench_cells.h"

namespace wm::ui {

/// The Bench as a table: the bands' names at the left, a column a machine, as many rows as the page has room
/// for. What does not fit is counted in the last row of its band.
class BenchModel : public QAbstractTableModel {
    Q_OBJECT

  public:
    enum Role : std::uint16_t { BandRole = Qt::UserRole, IsFirstOfBandRole };

    explicit BenchModel(QObject* parent = nullptr) : QAbstractTableModel(parent) {}

    void show(std::vector<QString> names, std::vector<BenchColumn> columns);
    /// Shows at most so many rows; fewer if there is less to show.
    void fit(int rows);

    [[nodiscard]] const BenchCell& cell(const QModelIndex& index) const;
    /// The cell about the same task or snag as `like`, or with the same words; an invalid index if there is
    /// none.
    [[nodiscard]] QModelIndex find(const BenchCell& like) const;
    [[nodiscard]] QModelIndex firstChoice() const;

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation, int role) const override;
    [[nodiscard]] Qt::ItemFlags flags(const QModelIndex& index) const override;

  private:
    struct Row {
        Band band = Band::UntilThen;
        bool isFirst = false;
        std::vector<BenchCell> cells;
    };
    void arrange();
    [[nodiscard]] std::vector<int> shares() const;

    std::vector<QString> names_;
    std::vector<BenchColumn> columns_;
    std::vector<Row> rows_;
    int fits_ = 24;
};

}  // namespace wm::ui

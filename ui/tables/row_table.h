// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QElapsedTimer>
#include <QTableView>
#include <cstdint>
#include <optional>
#include <vector>

#include "ui/tables/table_model.h"

class QSortFilterProxyModel;

namespace wm::ui {

/// A calm table: hairlines, whole rows, sortable by its heads, filtered by words. Keeps its choice by id when
/// the rows are made anew. Enter and double click say activated, Space says toggled. Where there is little
/// room, words take more lines; figures and heads stay whole as long as they can.
class RowTable : public QTableView {
    Q_OBJECT

  public:
    RowTable(std::vector<QString> headers, int stretchedColumn, QWidget* parent);

    /// For a table whose words stand nowhere else.
    static constexpr int kAsManyAsItTakes = 40;
    /// No row takes more lines than that; what does not fit ends in an ellipsis. Three, if nothing is said.
    void setMostLines(int lines);
    void show(std::vector<TableRow> rows);
    /// Rows that hold every one of the words, in any column. A search chooses the first of them.
    void filter(const QString& words);
    [[nodiscard]] std::optional<std::int64_t> chosenId() const;
    void choose(std::int64_t id);
    /// What the filter lets through, from top to bottom as it is sorted now.
    [[nodiscard]] std::vector<std::int64_t> shownIds() const;
    [[nodiscard]] const TableModel& rows() const { return *model_; }
    /// A few rows: a table takes the room that there is, and asks for no more in a column that scrolls.
    [[nodiscard]] QSize sizeHint() const override;

  signals:
    void activatedId(std::int64_t id);
    void toggledId(std::int64_t id);
    void chosenChanged();

  protected:
    void keyPressEvent(QKeyEvent* event) override;
    void keyboardSearch(const QString& search) override;
    void resizeEvent(QResizeEvent* event) override;

  private:
    struct Wanted {
        int column = 0;
        int most = 0;   ///< with every word on one line
        int least = 0;  ///< of what can't be broken
    };
    [[nodiscard]] std::vector<Wanted> wantedWidths() const;
    /// Columns as wide as what stands in them, as long as the stretched one keeps its share.
    void shareWidth();
    void fitRows();

    TableModel* model_;
    QSortFilterProxyModel* proxy_;
    int stretched_;
    QElapsedTimer sinceTyped_{};
    bool isTight_ = false;   ///< some words have less room than they want
    bool wasTight_ = false;  ///< when the rows got their heights
};

}  // namespace wm::ui

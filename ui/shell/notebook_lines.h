// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QAbstractTableModel>
#include <QTableView>
#include <array>
#include <vector>

#include "ui/shell/notebook_preview.h"

namespace wm::ui {

/// Which lines are shown.
enum class LineFilter : std::uint8_t { All, Taken, Doubtful, Refused, Known };

/// The lines of a notebook with their verdicts. Words are made when they are seen, so that a hundred thousand
/// lines cost no more than a screenful.
class NotebookLines : public QAbstractTableModel {
    Q_OBJECT

  public:
    enum At { StateAt, LineAt, CellsAt, ReasonAt, CureAt, Columns };

    explicit NotebookLines(const NotebookPreview& preview, QObject* parent = nullptr);

    void show(LineFilter filter);
    [[nodiscard]] LineFilter filter() const { return filter_; }
    /// Shows the lines anew, after they were judged again.
    void reload() { show(filter_); }
    /// Shows the same lines with what has been agreed to since.
    void restate();
    [[nodiscard]] const notebook::Line* lineAt(int row) const;
    /// The first line shown that waits for a word, or -1.
    [[nodiscard]] int firstOpen() const;
    [[nodiscard]] int countOf(LineFilter filter) const { return counts_[static_cast<std::size_t>(filter)]; }

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

  private:
    [[nodiscard]] QString wordsAt(const notebook::Line& line, int column) const;

    const NotebookPreview& preview_;
    LineFilter filter_ = LineFilter::All;
    std::vector<std::size_t> shown_{};  ///< places in Notebook::lines
    std::array<int, 5> counts_{};
};

/// "taken", "doubtful, cure taken" ...
QString stateWords(LineState state);
/// One line in full: its cells by their heads, the verdict with its reason, and what is likely.
QString detailWords(const NotebookPreview& preview, const notebook::Line& line);

/// The table of lines. Keys: Space or C accepts the cure of a line, K of all of its kind, A of all, L leaves
/// it out; left and right go through the verdicts; Enter imports.
class NotebookTable : public QTableView {
    Q_OBJECT

  public:
    explicit NotebookTable(NotebookLines* lines, QWidget* parent = nullptr);

  signals:
    void cureAsked();
    void kindAsked();
    void allAsked();
    void leaveOutAsked();
    void importAsked();
    void sideways(int by);
    void lineChosen();

  protected:
    void keyPressEvent(QKeyEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void currentChanged(const QModelIndex& current, const QModelIndex& previous) override;
};

}  // namespace wm::ui

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/tables/row_table.h"

#include <QHeaderView>
#include <QKeyEvent>
#include <QRegularExpression>
#include <QSortFilterProxyModel>
#include <algorithm>
#include <utility>

#include "ui/tables/cell_delegate.h"

namespace wm::ui {

namespace {

// All words somewhere in the row, in any order.
class WordsFilter : public QSortFilterProxyModel {
  public:
    using QSortFilterProxyModel::QSortFilterProxyModel;

    void setWords(const QString& words) {
        words_ = words.split(QLatin1Char(' '), Qt::SkipEmptyParts);
        invalidateFilter();
    }

  protected:
    [[nodiscard]] bool filterAcceptsRow(int row, const QModelIndex& parent) const override {
        QString line;
        for (int column = 0; column < sourceModel()->columnCount(parent); ++column)
            line += sourceModel()->index(row, column, parent).data().toString() + QLatin1Char(' ');
        return std::all_of(words_.begin(), words_.end(),
                           [&](const QString& word) { return line.contains(word, Qt::CaseInsensitive); });
    }

  private:
    QStringList words_;
};

}  // namespace

RowTable::RowTable(std::vector<QString> headers, int stretchedColumn, QWidget* parent)
    : QTableView(parent),
      model_(new TableModel(std::move(headers), this)),
      proxy_(new WordsFilter(this)),
      stretched_(stretchedColumn) {
    proxy_->setSourceModel(model_);
    proxy_->setSortRole(TableModel::SortRole);
    proxy_->setSortCaseSensitivity(Qt::CaseInsensitive);
    setModel(proxy_);
    setItemDelegate(new CellDelegate(this));
    setSelectionBehavior(QAbstractItemView::SelectRows);
    setSelectionMode(QAbstractItemView::SingleSelection);
    setEditTriggers(QAbstractItemView::NoEditTriggers);
    setTabKeyNavigation(false);
    setShowGrid(false);
    setWordWrap(false);
    setFrameShape(QFrame::NoFrame);
    verticalHeader()->hide();
    verticalHeader()->setDefaultSectionSize(fontMetrics().height() + 12);
    horizontalHeader()->setHighlightSections(false);
    horizontalHeader()->setDefaultAlignment(Qt::AlignLeft | Qt::AlignVCenter);
    horizontalHeader()->setSectionResizeMode(QHeaderView::Interactive);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    horizontalHeader()->setSectionResizeMode(stretchedColumn, QHeaderView::Stretch);
    horizontalHeader()->setSortIndicatorClearable(true);
    horizontalHeader()->setSortIndicator(-1, Qt::AscendingOrder);
    setSortingEnabled(true);
    connect(selectionModel(), &QItemSelectionModel::currentRowChanged, this, &RowTable::chosenChanged);
    connect(this, &QTableView::doubleClicked, this, [this](const QModelIndex& index) {
        emit activatedId(index.data(TableModel::IdRole).toLongLong());
    });
}

void RowTable::wrapWords() {
    setWordWrap(true);
    verticalHeader()->setMinimumSectionSize(verticalHeader()->defaultSectionSize());
    // The stretched column gets its width last, after show() and resizing.
    connect(horizontalHeader(), &QHeaderView::sectionResized, this, [this](int column) {
        if (column == stretched_)
            resizeRowsToContents();
    });
}

void RowTable::show(std::vector<TableRow> rows) {
    const auto kept = chosenId();
    model_->setRows(std::move(rows));
    shareWidth();
    if (wordWrap())
        resizeRowsToContents();
    if (kept)
        choose(*kept);
    if (!currentIndex().isValid() && proxy_->rowCount() > 0)
        setCurrentIndex(proxy_->index(0, 0));
}

void RowTable::filter(const QString& words) {
    static_cast<WordsFilter*>(proxy_)->setWords(words);
    if (!currentIndex().isValid() && proxy_->rowCount() > 0)
        setCurrentIndex(proxy_->index(0, 0));
}

std::optional<std::int64_t> RowTable::chosenId() const {
    if (!currentIndex().isValid())
        return std::nullopt;
    return currentIndex().data(TableModel::IdRole).toLongLong();
}

void RowTable::choose(std::int64_t id) {
    for (int row = 0; row < proxy_->rowCount(); ++row)
        if (proxy_->index(row, 0).data(TableModel::IdRole).toLongLong() == id)
            setCurrentIndex(proxy_->index(row, 0));
}

std::vector<std::int64_t> RowTable::shownIds() const {
    std::vector<std::int64_t> ids;
    for (int row = 0; row < proxy_->rowCount(); ++row)
        ids.push_back(proxy_->index(row, 0).data(TableModel::IdRole).toLongLong());
    return ids;
}

void RowTable::shareWidth() {
    int visible = 0;
    for (int column = 0; column < model_->columnCount(); ++column)
        visible += column != stretched_ && !isColumnHidden(column) ? 1 : 0;
    if (visible == 0)
        return;
    // The stretched column keeps what it needs, at most three tenths; what the narrow ones leave over, the
    // wide ones may take.
    int room = viewport()->width() - std::min(sizeHintForColumn(stretched_), viewport()->width() * 3 / 10);
    std::vector<std::pair<int, int>> wanted;
    for (int column = 0; column < model_->columnCount(); ++column)
        if (column != stretched_ && !isColumnHidden(column))
            wanted.emplace_back(
                std::max(sizeHintForColumn(column), horizontalHeader()->sectionSizeHint(column)), column);
    std::sort(wanted.begin(), wanted.end());
    for (const auto& [width, column] : wanted) {
        const int share = std::min(width, room / visible--);
        setColumnWidth(column, share);
        room -= share;
    }
}

QSize RowTable::sizeHint() const {
    constexpr int kLeastRows = 3;
    return {QTableView::sizeHint().width(),
            horizontalHeader()->sizeHint().height() + kLeastRows * verticalHeader()->defaultSectionSize()};
}

void RowTable::resizeEvent(QResizeEvent* event) {
    QTableView::resizeEvent(event);
    shareWidth();
}

void RowTable::keyPressEvent(QKeyEvent* event) {
    const auto id = chosenId();
    if (id && (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter))
        emit activatedId(*id);
    else if (id && event->key() == Qt::Key_Space)
        emit toggledId(*id);
    else
        QTableView::keyPressEvent(event);
}

}  // namespace wm::ui

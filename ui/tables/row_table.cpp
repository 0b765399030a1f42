// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/tables/row_table.h"

#include <QApplication>
#include <QHeaderView>
#include <QKeyEvent>
#include <QRegularExpression>
#include <QSortFilterProxyModel>
#include <algorithm>
#include <numeric>
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

// Of a column: its figures, and the single words of what is no figure.
int widestUnbroken(const std::vector<TableRow>& rows, std::size_t column, const QFontMetrics& metrics) {
    constexpr int kAround = 24;  // the gap between columns, and what a style leaves free
    int widest = 0;
    for (const TableRow& row : rows) {
        if (column >= row.cells.size())
            continue;
        const Cell& cell = row.cells[column];
        const int beside = kAround + (cell.icon.isNull() ? 0 : kAround) + (cell.unconfirmed ? kAround : 0);
        const QStringList parts = cell.figure ? QStringList{cell.text} : cell.text.split(QLatin1Char(' '));
        for (const QString& part : parts)
            widest = std::max(widest, metrics.horizontalAdvance(part) + beside);
    }
    return widest;
}

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
    setWordWrap(true);
    setFrameShape(QFrame::NoFrame);
    verticalHeader()->hide();
    verticalHeader()->setDefaultSectionSize(fontMetrics().height() + 12);
    verticalHeader()->setMinimumSectionSize(verticalHeader()->defaultSectionSize());
    setMostLines(3);
    horizontalHeader()->setHighlightSections(false);
    horizontalHeader()->setDefaultAlignment(Qt::AlignLeft | Qt::AlignVCenter);
    horizontalHeader()->setSectionResizeMode(QHeaderView::Interactive);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    horizontalHeader()->setSectionResizeMode(stretchedColumn, QHeaderView::Stretch);
    horizontalHeader()->setSortIndicatorClearable(true);
    horizontalHeader()->setSortIndicator(-1, Qt::AscendingOrder);
    setSortingEnabled(true);
    // The stretched column gets its width last, after show() and resizing, and after it was said: hence
    // queued.
    connect(
        horizontalHeader(), &QHeaderView::sectionResized, this,
        [this](int column) {
            if (column == stretched_)
                fitRows();
        },
        Qt::QueuedConnection);
    connect(selectionModel(), &QItemSelectionModel::currentRowChanged, this, &RowTable::chosenChanged);
    connect(this, &QTableView::doubleClicked, this, [this](const QModelIndex& index) {
        emit activatedId(index.data(TableModel::IdRole).toLongLong());
    });
}

void RowTable::setMostLines(int lines) {
    verticalHeader()->setMaximumSectionSize(verticalHeader()->defaultSectionSize() +
                                            (lines - 1) * fontMetrics().lineSpacing());
}

void RowTable::show(std::vector<TableRow> rows) {
    const auto kept = chosenId();
    model_->setRows(std::move(rows));
    wasTight_ = false;  // new rows have the height of one line
    shareWidth();
    fitRows();
    if (kept)
        choose(*kept);
    if (!currentIndex().isValid() && proxy_->rowCount() > 0)
        setCurrentIndex(proxy_->index(0, 0));
}

void RowTable::filter(const QString& words) {
    static_cast<WordsFilter*>(proxy_)->setWords(words);
    const bool searches = !words.trimmed().isEmpty();
    if ((searches || !currentIndex().isValid()) && proxy_->rowCount() > 0)
        setCurrentIndex(proxy_->index(0, 0));
    updateGeometries();  // the way that can be scrolled is another one now
    scrollTo(currentIndex());
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

std::vector<RowTable::Wanted> RowTable::wantedWidths() const {
    const int widest = viewport()->width() / 4;
    std::vector<Wanted> wanted;
    const auto& rows = model_->rows();
    for (int column = 0; column < model_->columnCount(); ++column) {
        if (column == stretched_ || isColumnHidden(column))
            continue;
        const int head = horizontalHeader()->sectionSizeHint(column);
        const int most = std::max(sizeHintForColumn(column), head);
        const int unbroken =
            std::min(widestUnbroken(rows, static_cast<std::size_t>(column), fontMetrics()), widest);
        wanted.push_back({column, most, std::clamp(unbroken, head, most)});
    }
    // Figures first; then what the narrow ones leave over, the wide ones may take.
    std::sort(wanted.begin(), wanted.end(), [](const Wanted& a, const Wanted& b) {
        return std::pair(a.least < a.most, a.most) < std::pair(b.least < b.most, b.most);
    });
    return wanted;
}

void RowTable::shareWidth() {
    // The stretched column keeps what it needs, at most three tenths.
    const int needed = sizeHintForColumn(stretched_);
    int room = viewport()->width() - std::min(needed, viewport()->width() * 3 / 10);
    const auto wanted = wantedWidths();
    int least = std::accumulate(wanted.begin(), wanted.end(), 0,
                                [](int sum, const Wanted& each) { return sum + each.least; });
    // Before a word of the others is cut, it gives up a tenth.
    room = std::max(room, std::min(least, viewport()->width() * 8 / 10));
    const bool isEnough = least <= room;
    int rest = viewport()->width();
    isTight_ = false;
    for (std::size_t at = 0; at < wanted.size(); ++at) {
        const Wanted& want = wanted[at];
        const int equal = std::max(1, room / static_cast<int>(wanted.size() - at));
        least -= want.least;  // of those that follow
        const int share = std::min(want.most, isEnough ? std::clamp(equal, want.least, room - least) : equal);
        setColumnWidth(want.column, share);
        isTight_ = isTight_ || share < want.most;
        room -= share;
        rest -= share;
    }
    isTight_ = isTight_ || rest < needed;
}

// As high as their words; one line each where all have the room that they want.
void RowTable::fitRows() {
    if (isTight_)
        resizeRowsToContents();
    for (int row = 0; wasTight_ && !isTight_ && row < proxy_->rowCount(); ++row)
        setRowHeight(row, verticalHeader()->defaultSectionSize());
    wasTight_ = isTight_;
}

QSize RowTable::sizeHint() const {
    constexpr int kLeastRows = 3;
    return {QTableView::sizeHint().width(),
            horizontalHeader()->sizeHint().height() + kLeastRows * verticalHeader()->defaultSectionSize()};
}

void RowTable::resizeEvent(QResizeEvent* event) {
    QTableView::resizeEvent(event);
    shareWidth();
    fitRows();
}

// While a name is typed the space belongs to it.
void RowTable::keyboardSearch(const QString& search) {
    sinceTyped_.start();
    QTableView::keyboardSearch(search);
}

void RowTable::keyPressEvent(QKeyEvent* event) {
    const auto id = chosenId();
    const bool types =
        sinceTyped_.isValid() && !sinceTyped_.hasExpired(QApplication::keyboardInputInterval());
    if (types && event->key() == Qt::Key_Space)
        return keyboardSearch(event->text());
    if (id && (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter))
        emit activatedId(*id);
    else if (id && event->key() == Qt::Key_Space)
        emit toggledId(*id);
    else
        QTableView::keyPressEvent(event);
}

}  // namespace wm::ui

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/shell/notebook_lines.h"

#include <QHeaderView>
#include <QKeyEvent>
#include <QPainter>
#include <algorithm>

#include "ui/tables/cell_delegate.h"
#include "ui/tables/table_model.h"
#include "ui/theme/plain.h"
#include "ui/theme/tokens.h"
#include "ui/theme/type.h"
#include "ui/words/notebook_words.h"

namespace wm::ui {

namespace {

using notebook::Line;
using notebook::Verdict;

constexpr int kSign = 14;  ///< edge of a verdict's sign
constexpr int kStateRole = Qt::UserRole + 20;

LineFilter filterOf(const Line& line) {
    if (line.inFile)
        return LineFilter::Known;
    switch (line.verdict) {
        case Verdict::Taken:
            return LineFilter::Taken;
        case Verdict::Doubtful:
            return LineFilter::Doubtful;
        case Verdict::Refused:
            break;
    }
    return LineFilter::Refused;
}

// By shape first: a tick goes in, a ring asks (ticked once it was answered), a bar stays out, a cross is
// refused, two bars are there already.
void paintSign(QPainter& painter, QRectF box, LineState state, const Tokens& tokens) {
    const auto at = [&box](double x, double y) {
        return QPointF(box.left() + x * box.width(), box.top() + y * box.height());
    };
    const bool asks = state == LineState::Open;
    const QColor ink = asks ? tokens.due : state == LineState::Refused ? tokens.over : tokens.ink;
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(ink, 1.8, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    painter.setBrush(Qt::NoBrush);
    if (asks || state == LineState::Cured)
        painter.drawEllipse(box.adjusted(1, 1, -1, -1));
    switch (state) {
        case LineState::GoesIn:
            painter.drawPolyline(QPolygonF({at(0.1, 0.55), at(0.4, 0.85), at(0.92, 0.15)}));
            break;
        case LineState::Cured:
            painter.drawPolyline(QPolygonF({at(0.3, 0.52), at(0.45, 0.68), at(0.72, 0.33)}));
            break;
        case LineState::Known:
            painter.drawLine(at(0.15, 0.35), at(0.85, 0.35));
            painter.drawLine(at(0.15, 0.65), at(0.85, 0.65));
            break;
        case LineState::LeftOut:
            painter.drawLine(at(0.15, 0.5), at(0.85, 0.5));
            break;
        case LineState::Refused:
            painter.drawLine(at(0.15, 0.15), at(0.85, 0.85));
            painter.drawLine(at(0.85, 0.15), at(0.15, 0.85));
            break;
        case LineState::Open:
            painter.setBrush(ink);
            painter.drawEllipse(at(0.5, 0.5), 1.2, 1.2);
            break;
    }
}

class LineDelegate : public CellDelegate {
  public:
    using CellDelegate::CellDelegate;

    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override {
        CellDelegate::paint(painter, option, index);
        const QVariant state = index.data(kStateRole);
        if (!state.isValid())
            return;
        painter->save();
        const QRectF box(option.rect.left() + kSpaceClose, option.rect.center().y() - kSign / 2.0 + 0.5,
                         kSign, kSign);
        paintSign(*painter, box, static_cast<LineState>(state.toInt()), tokensFor(option.palette));
        painter->restore();
    }

  protected:
    void initStyleOption(QStyleOptionViewItem* option, const QModelIndex& index) const override {
        CellDelegate::initStyleOption(option, index);
        if (index.column() != NotebookLines::StateAt)
            return;
        // Room for the sign, as an icon that paints nothing: the words stand beside it.
        option->features |= QStyleOptionViewItem::HasDecoration;
        option->decorationSize = QSize(kSign + kSpaceHair, kSign);
    }
};

}  // namespace

QString stateWords(LineState state) {
    switch (state) {
        case LineState::GoesIn:
            return NotebookLines::tr("taken");
        case LineState::Known:
            return NotebookLines::tr("taken before");
        case LineState::Open:
            return NotebookLines::tr("doubtful");
        case LineState::Cured:
            return NotebookLines::tr("doubtful: cured");
        case LineState::LeftOut:
            return NotebookLines::tr("left out");
        case LineState::Refused:
            break;
    }
    return NotebookLines::tr("refused");
}

QString detailWords(const NotebookPreview& preview, const Line& line) {
    QStringList cells;
    const auto& header = preview.table().header;
    for (std::size_t at = 0; at < line.cells.size(); ++at) {
        const QString cell = cellsInWords({line.cells[at]});
        const QString head = at < header.size() ? cellsInWords({header[at]}) : QString();
        if (!cell.isEmpty())
            cells << (head.isEmpty() ? cell : head + QStringLiteral(": ") + cell);
    }
    QString words = NotebookLines::tr("line %1 · %2").arg(line.line).arg(cells.join(QStringLiteral(" · ")));
    if (const QString reason = reasonFor(line); !reason.isEmpty())
        words += QLatin1Char('\n') + stateWords(preview.stateOf(line)) + QStringLiteral(": ") + reason;
    if (const QString cure = cureFor(line); !cure.isEmpty())
        words += NotebookLines::tr("; likely: %1").arg(cure);
    else if (line.verdict == notebook::Verdict::Doubtful && !line.inFile)
        words += NotebookLines::tr("; nothing is likely: put it right in the sheet and import again");
    return words;
}

NotebookLines::NotebookLines(const NotebookPreview& preview, QObject* parent)
    : QAbstractTableModel(parent), preview_(preview) {}

void NotebookLines::show(LineFilter filter) {
    beginResetModel();
    filter_ = filter;
    shown_.clear();
    counts_ = {};
    if (const auto* notebook = preview_.notebook())
        for (std::size_t at = 0; at < notebook->lines.size(); ++at) {
            const LineFilter of = filterOf(notebook->lines[at]);
            ++counts_[static_cast<std::size_t>(of)];
            ++counts_[static_cast<std::size_t>(LineFilter::All)];
            if (filter == LineFilter::All || filter == of)
                shown_.push_back(at);
        }
    endResetModel();
}

void NotebookLines::restate() {
    if (!shown_.empty())
        emit dataChanged(index(0, 0), index(rowCount() - 1, Columns - 1));
}

const Line* NotebookLines::lineAt(int row) const {
    if (row < 0 || row >= rowCount() || preview_.notebook() == nullptr)
        return nullptr;
    return &preview_.notebook()->lines[shown_[static_cast<std::size_t>(row)]];
}

int NotebookLines::firstOpen() const {
    for (int row = 0; row < rowCount(); ++row)
        if (preview_.stateOf(*lineAt(row)) == LineState::Open)
            return row;
    return -1;
}

int NotebookLines::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(shown_.size());
}

int NotebookLines::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : int{Columns};
}

QString NotebookLines::wordsAt(const Line& line, int column) const {
    switch (column) {
        case StateAt:
            return stateWords(preview_.stateOf(line));
        case LineAt:
            return QString::number(line.line);
        case CellsAt:
            return cellsInWords(line.cells);
        case ReasonAt:
            return reasonFor(line);
        default:
            return cureFor(line);
    }
}

QVariant NotebookLines::data(const QModelIndex& index, int role) const {
    if (!checkIndex(index, CheckIndexOption::IndexIsValid | CheckIndexOption::ParentIsInvalid))
        return {};
    const Line* line = lineAt(index.row());
    if (line == nullptr)
        return {};
    switch (role) {
        case Qt::DisplayRole:
            return wordsAt(*line, index.column());
        case Qt::ToolTipRole:
            return asTip(wordsAt(*line, index.column()));
        case Qt::TextAlignmentRole:
            return QVariant::fromValue(Qt::AlignVCenter |
                                       (index.column() == LineAt ? Qt::AlignRight : Qt::AlignLeft));
        case TableModel::FigureRole:
            return index.column() == LineAt;
        case TableModel::PencilRole:
            return index.column() == LineAt || line->inFile;
        case kStateRole:
            return index.column() == StateAt ? QVariant(static_cast<int>(preview_.stateOf(*line)))
                                             : QVariant{};
        default:
            return {};
    }
}

QVariant NotebookLines::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal)
        return {};
    if (role == Qt::TextAlignmentRole)
        return QVariant::fromValue(Qt::AlignVCenter | (section == LineAt ? Qt::AlignRight : Qt::AlignLeft));
    if (role != Qt::DisplayRole)
        return {};
    switch (section) {
        case StateAt:
            return tr("verdict");
        case LineAt:
            return tr("line");
        case CellsAt:
            return tr("as it stands in the notebook");
        case ReasonAt:
            return tr("why");
        case CureAt:
            return tr("likely cure");
        default:
            return {};
    }
}

NotebookTable::NotebookTable(NotebookLines* lines, QWidget* parent) : QTableView(parent) {
    setObjectName(QStringLiteral("notebook-lines"));
    setAccessibleName(tr("lines of the notebook"));
    setModel(lines);
    dressRows(*this);
    setItemDelegate(new LineDelegate(this));
    setEditTriggers(QAbstractItemView::NoEditTriggers);
    setTabKeyNavigation(false);
    setFrameShape(QFrame::NoFrame);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setVerticalScrollMode(QAbstractItemView::ScrollPerItem);
    verticalHeader()->setSectionResizeMode(QHeaderView::Fixed);
    connect(this, &QTableView::doubleClicked, this, &NotebookTable::cureAsked);
}

void NotebookTable::keyPressEvent(QKeyEvent* event) {
    if ((event->modifiers() & ~Qt::KeypadModifier) != Qt::NoModifier)
        return QTableView::keyPressEvent(event);
    switch (event->key()) {
        case Qt::Key_Space:
        case Qt::Key_C:
            return emit cureAsked();
        case Qt::Key_K:
            return emit kindAsked();
        case Qt::Key_A:
            return emit allAsked();
        case Qt::Key_L:
            return emit leaveOutAsked();
        case Qt::Key_Left:
            return emit sideways(-1);
        case Qt::Key_Right:
            return emit sideways(1);
        case Qt::Key_Return:
        case Qt::Key_Enter:
            return emit importAsked();
        default:
            return QTableView::keyPressEvent(event);
    }
}

void NotebookTable::resizeEvent(QResizeEvent* event) {
    QTableView::resizeEvent(event);
    const int letter = fontMetrics().averageCharWidth();
    const int state = kSign + kSpaceSection + letter * 16;
    const int line = letter * 6 + kSpaceGroup;
    const int room = std::max(viewport()->width() - state - line, 100);
    setColumnWidth(NotebookLines::StateAt, state);
    setColumnWidth(NotebookLines::LineAt, line);
    setColumnWidth(NotebookLines::CellsAt, room * 40 / 100);
    setColumnWidth(NotebookLines::ReasonAt, room * 35 / 100);
}

void NotebookTable::currentChanged(const QModelIndex& current, const QModelIndex& previous) {
    QTableView::currentChanged(current, previous);
    emit lineChosen();
}

}  // namespace wm::ui

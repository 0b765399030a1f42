// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/bench/bench_grid.h"

#include <QHeaderView>
#include <QKeyEvent>
#include <QPainter>
#include <algorithm>

#include "ui/drawing/device_space.h"
#include "ui/drawing/wedge.h"
#include "ui/pages/bench/bench_model.h"
#include "ui/pages/machine_columns.h"
#include "ui/theme/tokens.h"
#include "ui/theme/type.h"

namespace wm::ui {

namespace {

constexpr int kMark = 18;
constexpr int kBar = 3;
constexpr int kRoomForColumns = 500;
constexpr int kWidestName = 380;

QColor farColor(const BenchCell& cell, const Tokens& tokens) {
    if (!cell.mark)
        return cell.ride == BenchCell::Ride::No          ? tokens.over
               : cell.ride == BenchCell::Ride::NotUnseen ? tokens.due
                                                         : tokens.pencil;
    switch (cell.mark->kind) {
        case MarkState::Kind::Overdue:
            return tokens.over;
        case MarkState::Kind::BeforeEvent:
        case MarkState::Kind::MayBeOver:
            return tokens.due;
        case MarkState::Kind::NoRecord:
            return tokens.unmarked;
        case MarkState::Kind::InHand:
            break;
    }
    return tokens.pencil;
}

void paintText(QPainter& painter, const QRect& room, int align, const QString& words, const QColor& color) {
    painter.setPen(color);
    painter.drawText(room, align | Qt::AlignVCenter,
                     painter.fontMetrics().elidedText(words, Qt::ElideRight, room.width()));
}

// How far, ending at the right edge of `room`, with the wedge behind it; answers how wide it was.
int paintFar(QPainter& painter, const QRect& room, const BenchCell& cell, const QString& words,
             const Tokens& tokens) {
    const QFontMetrics metrics = painter.fontMetrics();
    const int wedge = static_cast<int>(wedgeAdvance(QFontMetricsF(metrics)));
    const QString far = metrics.elidedText(words, Qt::ElideRight, room.width() - wedge);
    const int width = metrics.horizontalAdvance(far);
    const int end = room.right() + 1 - (cell.mark ? wedge : 0);
    const int baseline = room.top() + (room.height() + metrics.ascent() - metrics.descent()) / 2;
    painter.setPen(farColor(cell, tokens));
    painter.drawText(end - width, baseline, far);
    if (cell.unconfirmed)
        paintWedge(painter, wedgeBehind(QPointF(end, baseline), QFontMetricsF(metrics)), tokens);
    return far.isEmpty() ? 0 : room.right() + 1 - end + width;
}

// A short name that is whole says more than a long one that is cut.
QString nameFor(const BenchCell& cell, const QFontMetrics& metrics, int room) {
    const bool fits = metrics.horizontalAdvance(cell.words) <= room;
    return fits || cell.shortWords.isEmpty() ? cell.words : cell.shortWords;
}

void paintName(QPainter& painter, const QRect& room, const BenchCell& cell, const Tokens& tokens) {
    const QFontMetrics metrics = painter.fontMetrics();
    const QString weekend = cell.picked ? BenchModel::tr("  · weekend") : QString();
    const int forName = room.width() - metrics.horizontalAdvance(weekend);
    const QString name = metrics.elidedText(nameFor(cell, metrics, forName), Qt::ElideRight, forName);
    const bool isMore = cell.kind == BenchCell::Kind::More;
    const bool isWork = cell.canBeChosen() && !isMore;
    paintText(painter, room, Qt::AlignLeft, name,
              isWork   ? tokens.ink
              : isMore ? farColor(cell, tokens)  // what is folded away is no less grave
                       : tokens.pencil);
    paintText(painter, room.adjusted(metrics.horizontalAdvance(name), 0, 0, 0), Qt::AlignLeft, weekend,
              tokens.pencil);
}

// Where there is room, what stands at the right edge elsewhere stands in columns of its own.
void paintWide(QPainter& painter, const QRect& room, const BenchCell& cell, const Tokens& tokens) {
    const int name = std::min(room.width() * 38 / 100, kWidestName);
    const QRect far(room.left() + name + kSpaceClose, room.top(), std::clamp(room.width() / 4, 150, 220),
                    room.height());
    paintName(painter, QRect(room.left(), room.top(), name, room.height()), cell, tokens);
    paintFar(painter, far, cell, cell.farAndBeside(), tokens);
    const QRect rest = room.adjusted(far.right() - room.left() + kSpaceSection, 0, 0, 0);
    const int date =
        painter.fontMetrics().horizontalAdvance(QStringLiteral("about Wed 30 May 2026")) + kSpaceGroup;
    const bool both = rest.width() > date * 2;
    paintText(painter, QRect(rest.left(), rest.top(), both ? date : rest.width(), rest.height()),
              Qt::AlignLeft, cell.when, tokens.pencil);
    if (both)
        paintText(painter, rest.adjusted(date, 0, 0, 0), Qt::AlignLeft, cell.why, tokens.pencil);
}

// What stands beside gives way to the name.
QString farFor(const BenchCell& cell, const QFontMetrics& metrics, int room) {
    const QString both = cell.farAndBeside();
    const int wedge = static_cast<int>(wedgeAdvance(QFontMetricsF(metrics)));
    const int needed =
        metrics.horizontalAdvance(cell.words) + metrics.horizontalAdvance(both) + wedge + kSpaceClose;
    return needed <= room ? both : cell.far;
}

void paintCell(QPainter& painter, const QRect& rect, const BenchCell& cell, const Tokens& tokens) {
    QRect room = rect.adjusted(kSpaceLine, 0, -kSpaceLine, 0);
    const QRectF mark(room.left(), room.top() + (room.height() - kMark) / 2.0, kMark, kMark);
    if (cell.mark)
        paintMark(painter, mark, *cell.mark, tokens);
    if (cell.canBeChosen())
        room.setLeft(room.left() + kMark + kSpaceClose);
    if (room.width() >= kRoomForColumns && !cell.farAndBeside().isEmpty())
        return paintWide(painter, room, cell, tokens);
    QRect right = room;
    right.setLeft(room.right() - room.width() * 6 / 10);
    const int far = paintFar(painter, right, cell, farFor(cell, painter.fontMetrics(), room.width()), tokens);
    room.setRight(room.right() - far - (far > 0 ? kSpaceClose : 0));
    paintName(painter, room, cell, tokens);
}

}  // namespace

void BenchDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option,
                          const QModelIndex& index) const {
    const auto* model = qobject_cast<const BenchModel*>(index.model());
    const Tokens tokens = tokensFor(option.palette);
    const bool isFirst = index.data(BenchModel::IsFirstOfBandRole).toBool();
    painter->save();
    painter->setFont(option.font);
    if (isFirst && index.row() > 0)
        paintHorizontal(*painter, option.rect.left(), option.rect.right() + 1, option.rect.top(),
                        tokens.rule);
    if (index.column() == 0) {
        painter->setPen(tokens.pencil);
        painter->drawText(option.rect.adjusted(kSpaceLine, 0, 0, 0), Qt::AlignLeft | Qt::AlignVCenter,
                          index.data().toString());
    } else {
        paintVertical(*painter, option.rect.left(), option.rect.top(), option.rect.bottom() + 1, tokens.rule);
        if (option.state.testFlag(QStyle::State_Selected)) {
            const bool focused = option.widget != nullptr && option.widget->hasFocus();
            painter->fillRect(option.rect, tokens.select);
            painter->fillRect(QRect(option.rect.topLeft(), QSize(kBar, option.rect.height())),
                              focused ? tokens.ink : tokens.pencil);
        }
        paintCell(*painter, option.rect, model->cell(index), tokens);
    }
    painter->restore();
}

BenchGrid::BenchGrid(QWidget* parent) : QTableView(parent) {
    setObjectName(QStringLiteral("bench-grid"));
    setAccessibleName(tr("jobs by machine"));
    setItemDelegate(new BenchDelegate(this));
    setShowGrid(false);
    setSelectionMode(SingleSelection);
    setTabKeyNavigation(false);
    setWordWrap(false);
    setFrameShape(NoFrame);
    setHorizontalScrollMode(ScrollPerPixel);
    setEditTriggers(NoEditTriggers);
    verticalHeader()->hide();
    horizontalHeader()->hide();
    horizontalHeader()->setMinimumSectionSize(1);
    verticalHeader()->setMinimumSectionSize(1);
    connect(this, &QTableView::doubleClicked, this, &BenchGrid::recordAsked);
}

void BenchGrid::setBench(BenchModel* model) {
    bench_ = model;
    setModel(model);
}

int BenchGrid::rowHeight() const {
    return fontMetrics().height() + kSpaceClose;
}

void BenchGrid::layOutColumns(int windowWidth) {
    verticalHeader()->setDefaultSectionSize(rowHeight());
    const int machines = bench_->columnCount() - 1;
    const int aligned = ui::columnWidth(windowWidth, machines);
    // Columns too narrow to read scroll sideways; then the heads above can't name them.
    horizontalHeader()->setVisible(aligned < kLeastColumn);
    setHorizontalScrollBarPolicy(aligned < kLeastColumn ? Qt::ScrollBarAsNeeded : Qt::ScrollBarAlwaysOff);
    setColumnWidth(0, kGutter);
    // The last one ends where the page does, also beside a scroll bar: nothing slips sideways.
    const bool fits = aligned >= kLeastColumn;
    horizontalHeader()->setStretchLastSection(fits);
    for (int column = 1; column <= machines; ++column)
        if (!fits || column < machines)
            setColumnWidth(column, std::max(aligned, kLeastColumn));
}

QModelIndex BenchGrid::beside(const QModelIndex& from, int step) const {
    for (int column = from.column() + step; column >= 1 && column < bench_->columnCount(); column += step)
        for (int away = 0; away < bench_->rowCount(); ++away)
            for (const int row : {from.row() - away, from.row() + away})
                if (row >= 0 && row < bench_->rowCount() &&
                    bench_->cell(bench_->index(row, column)).canBeChosen())
                    return bench_->index(row, column);
    return from;
}

QModelIndex BenchGrid::moveCursor(CursorAction action, Qt::KeyboardModifiers modifiers) {
    const QModelIndex from = currentIndex();
    if (!from.isValid())
        return bench_->firstChoice();
    if (action == MoveLeft || action == MoveRight)
        return beside(from, action == MoveLeft ? -1 : 1);
    return QTableView::moveCursor(action, modifiers);
}

void BenchGrid::keyPressEvent(QKeyEvent* event) {
    const QModelIndex at = currentIndex();
    if (at.isValid() && event->modifiers() == Qt::NoModifier) {
        switch (event->key()) {
            case Qt::Key_Space:
                return emit pickAsked(at);
            case Qt::Key_Return:
            case Qt::Key_Enter:
                return emit recordAsked(at);
            case Qt::Key_D:
                return emit putOffAsked(at);
            default:
                break;
        }
    }
    QTableView::keyPressEvent(event);
}

}  // namespace wm::ui

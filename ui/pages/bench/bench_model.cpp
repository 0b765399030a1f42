// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/bench/bench_model.h"

#include <algorithm>
#include <array>
#include <numeric>
#include <utility>

#include "ui/theme/plain.h"

namespace wm::ui {

namespace {

using Kind = BenchCell::Kind;

// Rows that a band keeps when room gets short, first a fair share, then the least; and the order in which
// bands give rows back: what can wait first.
constexpr std::array<int, kBands> kFair{3, 2, 3, 2, 8, 3, 4, 1, 1, 3, 1, 2, 2};
constexpr std::array<int, kBands> kLeast{3, 2, 2, 1, 4, 2, 2, 1, 1, 3, 1, 2, 1};
constexpr std::array<Band, 12> kGivesFirst{
    Band::CanWait, Band::ToOrder,    Band::PutOff,  Band::Round,     Band::NeverRecorded, Band::Should,
    Band::Snags,   Band::CheckAgain, Band::InDoubt, Band::HandTight, Band::NotFitted,     Band::Must};
// What can wait is looked at on its machine, not here; it never takes more than this.
constexpr int kMostThatCanWait = 4;
constexpr int kMostFollowUps = 3;

QString tipFor(const BenchCell& cell) {
    QStringList lines{cell.words, cell.farAndBeside(), cell.when};
    lines.removeAll(QString());
    return asTip(lines.join(QLatin1Char('\n')));
}

QString restWords(Band band, int all, int rest) {
    if (band == Band::Round)
        return BenchModel::tr("%n check(s)", nullptr, all);
    if (rest < all)
        return BenchModel::tr("and %1 more").arg(rest);
    if (band == Band::ToOrder)
        return BenchModel::tr("%n line(s) of the shelf", nullptr, all);
    return band == Band::CanWait ? BenchModel::tr("%1 in hand").arg(all)
                                 : BenchModel::tr("%1 of them").arg(all);
}

std::size_t at(Band band) {
    return static_cast<std::size_t>(band);
}

// Nothing is called clear that nobody recorded.
QString nothingWords(Band band, std::size_t unknown) {
    if (unknown == 0)
        return BenchModel::tr("nothing");
    return band == Band::Must ? BenchModel::tr("nothing known; %1 without record").arg(unknown)
                              : BenchModel::tr("nothing known");
}

}  // namespace

void BenchModel::show(std::vector<QString> names, std::vector<BenchColumn> columns) {
    beginResetModel();
    names_ = std::move(names);
    columns_ = std::move(columns);
    arrange();
    endResetModel();
}

void BenchModel::fit(int rows) {
    if (rows == fits_)
        return;
    beginResetModel();
    fits_ = rows;
    arrange();
    endResetModel();
}

std::vector<int> BenchModel::shares() const {
    std::vector<int> wants(kBands, 0);
    for (const auto& column : columns_)
        for (std::size_t band = 0; band < wants.size(); ++band)
            wants[band] = std::max(wants[band], static_cast<int>(column[band].size()));
    if (!columns_.empty()) {
        wants[at(Band::Must)] = std::max(wants[at(Band::Must)], 1);
        wants[at(Band::Should)] = std::max(wants[at(Band::Should)], 1);
    }
    if (columns_.size() > 1) {
        wants[at(Band::CanWait)] = std::min(wants[at(Band::CanWait)], kMostThatCanWait);
        wants[at(Band::CheckAgain)] = std::min(wants[at(Band::CheckAgain)], kMostFollowUps);
        wants[at(Band::Round)] = std::min(wants[at(Band::Round)], 1);
    }
    int over = std::accumulate(wants.begin(), wants.end(), 0) - fits_;
    for (const auto& keeps : {kFair, kLeast})
        for (const Band band : kGivesFirst) {
            int& want = wants[at(band)];
            const int gives = std::clamp(want - keeps[at(band)], 0, std::max(over, 0));
            want -= gives;
            over -= gives;
        }
    return wants;
}

void BenchModel::arrange() {
    rows_.clear();
    const auto rows = shares();
    for (int band = 0; band < kBands; ++band) {
        const auto place = static_cast<std::size_t>(band);
        for (int line = 0; line < rows[place]; ++line) {
            Row row{static_cast<Band>(band), line == 0, {}};
            for (const auto& column : columns_) {
                const auto& cells = column[place];
                const auto size = static_cast<int>(cells.size());
                const bool isLast = line == rows[place] - 1;
                BenchCell cell;
                if (isLast && size > rows[place]) {
                    cell.kind = Kind::More;
                    cell.machine = cells.front().machine;
                    cell.words = restWords(row.band, size, size - line);
                    for (auto hidden = cells.begin() + line; hidden != cells.end(); ++hidden)
                        cell.ride = std::max(cell.ride, hidden->ride);
                } else if (line < size) {
                    cell = cells[static_cast<std::size_t>(line)];
                } else if (line == 0 && (row.band == Band::Must || row.band == Band::Should)) {
                    cell.kind = Kind::Words;
                    cell.words = nothingWords(row.band, column[at(Band::NeverRecorded)].size());
                }
                row.cells.push_back(std::move(cell));
            }
            rows_.push_back(std::move(row));
        }
    }
}

const BenchCell& BenchModel::cell(const QModelIndex& index) const {
    static const BenchCell none;
    if (!index.isValid() || index.column() == 0)
        return none;
    return rows_[static_cast<std::size_t>(index.row())].cells[static_cast<std::size_t>(index.column() - 1)];
}

QModelIndex BenchModel::find(const BenchCell& like) const {
    for (int row = 0; row < rowCount(); ++row)
        for (int column = 1; column < columnCount(); ++column) {
            const auto& each = cell(index(row, column));
            if (each.kind == like.kind && each.machine == like.machine && each.task == like.task &&
                each.snag == like.snag && each.origin == like.origin &&
                (each.task || each.snag || each.words == like.words))
                return index(row, column);
        }
    return {};
}

QModelIndex BenchModel::firstChoice() const {
    for (int column = 1; column < columnCount(); ++column)
        for (int row = 0; row < rowCount(); ++row)
            if (cell(index(row, column)).canBeChosen())
                return index(row, column);
    return {};
}

int BenchModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(rows_.size());
}

int BenchModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(columns_.size()) + 1;
}

QVariant BenchModel::data(const QModelIndex& index, int role) const {
    if (!index.isValid())
        return {};
    const auto& row = rows_[static_cast<std::size_t>(index.row())];
    if (role == BandRole)
        return static_cast<int>(row.band);
    if (role == IsFirstOfBandRole)
        return row.isFirst;
    if (index.column() == 0)
        return role == Qt::DisplayRole && row.isFirst ? QVariant(bandWords(row.band)) : QVariant();
    const auto& shown = cell(index);
    if (shown.kind == Kind::Nothing)
        return {};
    const QString picked = shown.picked ? tr(", in the weekend") : QString();
    switch (role) {
        case Qt::DisplayRole:
            return shown.words;
        case Qt::ToolTipRole:
            return tipFor(shown);
        case Qt::AccessibleTextRole:
            return QStringLiteral("%1: %2, %3%4")
                .arg(bandWords(row.band), shown.words, shown.farAndBeside(), picked);
        default:
            return {};
    }
}

QVariant BenchModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (role != Qt::DisplayRole || orientation != Qt::Horizontal || section < 1 ||
        section > static_cast<int>(names_.size()))
        return {};
    return names_[static_cast<std::size_t>(section - 1)];
}

Qt::ItemFlags BenchModel::flags(const QModelIndex& index) const {
    if (!index.isValid())
        return Qt::NoItemFlags;
    if (!cell(index).canBeChosen())
        return Qt::ItemNeverHasChildren;
    return Qt::ItemIsEnabled | Qt::ItemIsSelectable | Qt::ItemNeverHasChildren;
}

}  // namespace wm::ui

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/machine/history_model.h"

#include <QFont>
#include <algorithm>
#include <utility>

#include "ui/words/figures.h"

namespace wm::ui {

namespace {

// A detail's index carries its entry's row, counted from 1; a line's own carries 0.
constexpr quintptr kLine = 0;

}  // namespace

void HistoryModel::show(std::shared_ptr<const book::Book> book, std::optional<MachineId> machine) {
    beginResetModel();
    book_ = std::move(book);
    all_ = book_ ? historyOf(*book_, machine) : std::vector<HistoryEntry>();
    choose();
    endResetModel();
}

void HistoryModel::filter(Filter filter) {
    beginResetModel();
    filter_ = std::move(filter);
    choose();
    endResetModel();
}

bool HistoryModel::passes(const HistoryEntry& entry) const {
    if ((filter_.kind && *filter_.kind != entry.kind) || (entry.isStruck && !filter_.withStruck))
        return false;
    if (filter_.words.isEmpty() || filter_.found.contains(entry.fact))
        return true;
    const QString whole = entry.words + QLatin1Char(' ') + entry.figure + QLatin1Char(' ') +
                          entry.details.join(QLatin1Char(' '));
    const auto words = filter_.words.split(QLatin1Char(' '), Qt::SkipEmptyParts);
    return std::all_of(words.begin(), words.end(),
                       [&whole](const QString& word) { return whole.contains(word, Qt::CaseInsensitive); });
}

void HistoryModel::choose() {
    shown_.clear();
    for (std::size_t at = 0; at < all_.size(); ++at)
        if (passes(all_[at]))
            shown_.push_back(at);
}

const HistoryEntry* HistoryModel::entry(const QModelIndex& index) const {
    if (!index.isValid())
        return nullptr;
    const auto row =
        index.internalId() == kLine ? static_cast<std::size_t>(index.row()) : index.internalId() - 1;
    return row < shown_.size() ? &all_[shown_[row]] : nullptr;
}

QModelIndex HistoryModel::find(std::int64_t fact) const {
    for (std::size_t row = 0; row < shown_.size(); ++row)
        if (all_[shown_[row]].fact == fact)
            return index(static_cast<int>(row), 0);
    return {};
}

QModelIndex HistoryModel::index(int row, int column, const QModelIndex& parent) const {
    if (row < 0 || column < 0 || row >= rowCount(parent) || column >= columnCount(parent))
        return {};
    return createIndex(row, column, parent.isValid() ? static_cast<quintptr>(parent.row()) + 1 : kLine);
}

QModelIndex HistoryModel::parent(const QModelIndex& index) const {
    if (!index.isValid() || index.internalId() == kLine)
        return {};
    return createIndex(static_cast<int>(index.internalId() - 1), 0, kLine);
}

int HistoryModel::rowCount(const QModelIndex& parent) const {
    if (!parent.isValid())
        return static_cast<int>(shown_.size());
    const auto* line = parent.internalId() == kLine && parent.column() == 0 ? entry(parent) : nullptr;
    return line != nullptr ? static_cast<int>(line->details.size()) : 0;
}

int HistoryModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() && parent.internalId() != kLine ? 0 : Columns;
}

QVariant HistoryModel::lineData(const HistoryEntry& entry, int column, int role) const {
    if (role == Qt::FontRole && entry.isStruck) {
        QFont font;
        font.setStrikeOut(true);
        return font;
    }
    if (role == Qt::TextAlignmentRole && column == Figure)
        return QVariant(Qt::AlignRight | Qt::AlignVCenter);
    if (role == Qt::AccessibleTextRole && entry.isStruck && column == Words)
        return tr("struck: %1").arg(entry.words);
    if (role != Qt::DisplayRole)
        return {};
    switch (column) {
        case Day:
            return dayWords(entry.date, book_->today());
        case Machine:
            if (const auto* machine = book_->ledger().find<items::Machine>(entry.machine))
                return text(machine->name);
            return {};
        case Words:
            return entry.words;
        default:
            return entry.figure;
    }
}

QVariant HistoryModel::data(const QModelIndex& index, int role) const {
    const auto* line = entry(index);
    if (line == nullptr)
        return {};
    if (index.internalId() == kLine)
        return lineData(*line, index.column(), role);
    return role == Qt::DisplayRole && index.column() == Words ? QVariant(line->details.value(index.row()))
                                                              : QVariant();
}

}  // namespace wm::ui

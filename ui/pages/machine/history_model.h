// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QAbstractItemModel>
#include <optional>
#include <set>
#include <vector>

#include "ui/pages/machine/history.h"

namespace wm::ui {

/// The history as an outline: a line an entry, its details below it when opened in place.
class HistoryModel : public QAbstractItemModel {
    Q_OBJECT

  public:
    enum Column : std::uint8_t { Day, Machine, Words, Figure, Columns };

    explicit HistoryModel(QObject* parent = nullptr) : QAbstractItemModel(parent) {}

    struct Filter {
        std::optional<HistoryKind> kind;
        QString words;                 ///< as typed; empty shows all
        std::set<std::int64_t> found;  ///< facts that the file's own search names for these words
        bool withStruck = true;
    };
    void show(std::shared_ptr<const book::Book> book, std::optional<MachineId> machine);
    void filter(Filter filter);

    /// The entry of a line or of one of its details, or nullptr.
    [[nodiscard]] const HistoryEntry* entry(const QModelIndex& index) const;
    [[nodiscard]] QModelIndex find(std::int64_t fact) const;

    [[nodiscard]] QModelIndex index(int row, int column, const QModelIndex& parent = {}) const override;
    [[nodiscard]] QModelIndex parent(const QModelIndex& index) const override;
    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;

  private:
    void choose();
    [[nodiscard]] bool passes(const HistoryEntry& entry) const;
    [[nodiscard]] QVariant lineData(const HistoryEntry& entry, int column, int role) const;

    std::shared_ptr<const book::Book> book_;
    std::vector<HistoryEntry> all_;
    std::vector<std::size_t> shown_;  ///< places in all_
    Filter filter_;
};

}  // namespace wm::ui

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>
#include <optional>
#include <vector>

#include "ui/pages/page.h"
#include "ui/tables/table_model.h"

class QLabel;
class QLineEdit;

namespace wm::ui {

class RowTable;

/// A page that is one table with a search line above it and one sentence for when it is empty.
class TablePage : public Page {
    Q_OBJECT

  public:
    struct Content {
        QString name{};    ///< for object names
        QString spoken{};  ///< for who can't see it
        std::vector<QString> headers{};
        int stretchedColumn = 0;
        int machineColumn = 1;  ///< hidden while one machine is chosen
        QString findWords{};
        QString emptyWords{};
        std::function<std::vector<TableRow>(const TablePage&)> rows{};
    };

    TablePage(const PageTools& tools, Content content, QWidget* parent);
    void refresh() override;
    [[nodiscard]] QWidget* firstFocus() override;
    bool find() override;
    [[nodiscard]] Workbench& bench() const { return workbench(); }

  private:
    Content content_;
    QLineEdit* find_;
    QLabel* empty_;
    RowTable* table_;
};

}  // namespace wm::ui

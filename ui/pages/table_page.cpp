// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/table_page.h"

#include <QLabel>
#include <QLineEdit>
#include <QVBoxLayout>
#include <utility>

#include "ui/tables/row_table.h"
#include "ui/theme/type.h"
#include "ui/workbench/workbench.h"

namespace wm::ui {

TablePage::TablePage(const PageTools& tools, Content content, QWidget* parent)
    : Page(tools, parent),
      content_(std::move(content)),
      find_(new QLineEdit(this)),
      empty_(new QLabel(content_.emptyWords, this)),
      table_(new RowTable(content_.headers, content_.stretchedColumn, this)) {
    find_->setObjectName(content_.name + QStringLiteral("Find"));
    find_->setPlaceholderText(content_.findWords);
    find_->setAccessibleName(content_.findWords);
    find_->setClearButtonEnabled(true);
    table_->setObjectName(content_.name + QStringLiteral("Table"));
    table_->setAccessibleName(content_.spoken);
    empty_->setProperty("role", QStringLiteral("note"));
    empty_->setWordWrap(true);
    auto* lines = new QVBoxLayout(this);
    lines->setContentsMargins(kSpaceSection, kSpaceGroup, kSpaceSection, kSpaceGroup);
    lines->setSpacing(kSpaceLine);
    lines->addWidget(find_);
    lines->addWidget(empty_);
    lines->addWidget(table_, 1);
    connect(find_, &QLineEdit::textChanged, table_, &RowTable::filter);
}

QWidget* TablePage::firstFocus() {
    return table_;
}

bool TablePage::find() {
    find_->setFocus();
    find_->selectAll();
    return true;
}

void TablePage::refresh() {
    auto rows = content_.rows(*this);
    empty_->setVisible(rows.empty());
    table_->setVisible(!rows.empty());
    table_->setColumnHidden(content_.machineColumn, workbench().chosen().has_value());
    table_->show(std::move(rows));
}

}  // namespace wm::ui

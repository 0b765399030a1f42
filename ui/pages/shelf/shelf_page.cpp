// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/shelf/shelf_page.h"

#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QSplitter>
#include <QVBoxLayout>

#include "ui/pages/columns.h"
#include "ui/pages/shelf/shelf_rows.h"
#include "ui/pages/shelf/stock_line_form.h"
#include "ui/tables/row_table.h"
#include "ui/theme/type.h"
#include "ui/words/figures.h"
#include "ui/workbench/workbench.h"

namespace wm::ui {

ShelfPage::ShelfPage(const PageTools& tools, QWidget* parent)
    : Page(tools, parent),
      find_(new QLineEdit(this)),
      lines_(new RowTable({tr("Part or fluid"), tr("Part number"), tr("On hand"), QString(), tr("On order"),
                           tr("Keep"), tr("Where")},
                          0, this)),
      title_(new QLabel(this)),
      lots_(new RowTable({tr("Container"), tr("Left"), tr("Opened"), tr("Good until")}, 0, this)),
      moves_(new RowTable({tr("Day"), tr("In or out"), tr("Why"), tr("For")}, 3, this)),
      form_(new StockLineForm(tools.workbench, this)),
      empty_(new QLabel(this)) {
    find_->setObjectName(QStringLiteral("shelfFind"));
    find_->setPlaceholderText(tr("find on the shelf"));
    find_->setAccessibleName(tr("Find on the shelf"));
    find_->setClearButtonEnabled(true);
    lines_->setObjectName(QStringLiteral("shelfLines"));
    lines_->setAccessibleName(tr("Lines of the shelf"));
    lots_->setObjectName(QStringLiteral("shelfLots"));
    lots_->setAccessibleName(tr("Containers of the chosen line"));
    moves_->setObjectName(QStringLiteral("shelfMoves"));
    moves_->setAccessibleName(tr("What went in and out of the chosen line"));
    title_->setProperty("role", QStringLiteral("section"));
    empty_->setProperty("role", QStringLiteral("note"));
    empty_->setText(tr("Nothing stands on the shelf yet. Type the first part or fluid below."));
    layOut();
    connect(find_, &QLineEdit::textChanged, lines_, &RowTable::filter);
    connect(lines_, &RowTable::chosenChanged, this, &ShelfPage::showLine);
}

void ShelfPage::layOut() {
    auto* right = new QWidget(this);
    auto* rightLines = linesOf(right);
    rightLines->addWidget(title_);
    rightLines->addWidget(lots_, 1);
    rightLines->addWidget(moves_, 2);
    auto* left = new QWidget(this);
    auto* leftLines = linesOf(left);
    leftLines->addWidget(find_);
    leftLines->addWidget(empty_);
    leftLines->addWidget(lines_, 1);
    auto* lines = pageLines(this);
    lines->addWidget(columnsOf(this, {{left, 760}, {right, 480}}), 1);
    lines->addWidget(form_);
}

QWidget* ShelfPage::firstFocus() {
    return lines_;
}

bool ShelfPage::find() {
    find_->setFocus();
    find_->selectAll();
    return true;
}

void ShelfPage::refresh() {
    auto rows = shelfRows(*workbench().book());
    const bool empty = rows.empty();
    empty_->setVisible(empty);
    lines_->setVisible(!empty);
    lines_->show(std::move(rows));
    if (empty)
        form_->startNewLine();
    showLine();
}

void ShelfPage::showLine() {
    const auto book = workbench().book();
    const auto id = lines_->chosenId();
    const auto* line = id ? book->ledger().find<stock::StockLine>(StockLineId(*id)) : nullptr;
    title_->setText(line == nullptr ? QString() : text(line->name));
    lots_->show(line == nullptr ? std::vector<TableRow>{} : lotRows(*book, line->id));
    moves_->show(line == nullptr ? std::vector<TableRow>{} : moveRows(*book, line->id));
    form_->setLine(line == nullptr ? std::nullopt : std::optional(line->id));
}

}  // namespace wm::ui

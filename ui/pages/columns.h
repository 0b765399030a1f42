// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <initializer_list>

class QSplitter;
class QVBoxLayout;
class QWidget;

namespace wm::ui {

/// What stands in one column of a page: lines close together, without a margin of their own. The layout
/// belongs to `column`.
QVBoxLayout* linesOf(QWidget* column);

struct Column {
    QWidget* widget;
    int width;  ///< to begin with, in pixels, in proportion to the others
};

/// Columns that the user can make wider but not fold away. Belongs to `page`.
QSplitter* columnsOf(QWidget* page, std::initializer_list<Column> columns);

/// The lines of a whole page, with the margins of every page.
QVBoxLayout* pageLines(QWidget* page);

}  // namespace wm::ui

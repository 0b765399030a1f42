// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <initializer_list>

class QScrollArea;
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

/// A column that scrolls where its words need more height than there is: a layout would take it from the
/// wrapped ones, and cut them off. Belongs to `parent`.
QScrollArea* scrolled(QWidget* column, QWidget* parent);

/// Gives changed words their height at once. A layout inside another one asks for more height by an event, a
/// level at a time: what is painted in between is cut off.
void settle(QWidget* from);

/// The lines of a whole page, with the margins of every page.
QVBoxLayout* pageLines(QWidget* page);

}  // namespace wm::ui

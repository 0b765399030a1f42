// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "ui/print/sheet_marks.h"
#include "ui/print/sheet_type.h"

namespace wm::ui {

/// The smallest thing that stays on one page; marks are relative to its top left.
struct Row {
    double height = 0;
    std::vector<Mark> marks;

    /// One line of text with its top at `y`; the row grows to hold it. Answers where the text ends below.
    double addLine(const TextLine& line, double x, double y);
    double addLineRight(const TextLine& line, double right, double y);
    double addLines(const std::vector<TextLine>& lines, double x, double y);
    void addRule(double x1, double x2, double y, bool heavy = false);
    void addBox(const QRectF& rect);
    void growTo(double bottom);
};

/// Rows that stay together where a page can hold them: a step with its boxes.
struct Group {
    std::vector<Row> rows;
    bool keepWithNext = false;  ///< a heading

    [[nodiscard]] double height() const;
    void addSpace(double height);
    /// Each line a row of its own, so that a long text can run over a page's end.
    void addText(const QString& text, const QFont& font, double x, double width);
};

enum class Start : std::uint8_t {
    Flow,    ///< goes on where the last section ended
    Lower,   ///< on a new page, if it does not fit whole and little of this page is left
    Whole,   ///< on a new page, if it does not fit whole here
    NewPage  ///< always
};

/// A list, or a stretch of the work.
struct Section {
    Start start = Start::Flow;
    std::vector<Group> groups;
    std::size_t with = 0;  ///< how many of the sections that follow count as one with it

    [[nodiscard]] double height() const;
};

/// A heading, over a rule if what follows brings none; kept with what follows it.
Group headingGroup(const QString& text, double width, bool ruled = true);

/// A line to write on at `bottom`, with words before and after it, all of it from `left` to `right`.
void addBlank(Row& row, const QString& before, const QString& after, double left, double right, double bottom,
              int size = kNoteSize);

}  // namespace wm::ui

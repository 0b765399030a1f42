// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/print/print_rows.h"

#include <algorithm>
#include <numeric>

namespace wm::ui {

double Row::addLine(const TextLine& line, double x, double y) {
    if (line.text.isEmpty())
        return y;
    marks.push_back(TextMark{QRectF(x, y, line.width, line.height), line.ascent, line.text, line.font});
    growTo(y + line.height);
    return y + line.height;
}

double Row::addLineRight(const TextLine& line, double right, double y) {
    return addLine(line, right - line.width, y);
}

double Row::addLines(const std::vector<TextLine>& lines, double x, double y) {
    for (const TextLine& line : lines)
        y = addLine(line, x, y);
    return y;
}

void Row::addRule(double x1, double x2, double y, bool heavy) {
    marks.push_back(RuleMark{QLineF(x1, y, x2, y), heavy});
    growTo(y + kLineWeight);
}

void Row::addBox(const QRectF& rect) {
    marks.push_back(BoxMark{rect});
    growTo(rect.bottom() + kLineWeight);
}

void Row::growTo(double bottom) {
    height = std::max(height, bottom);
}

double Group::height() const {
    return std::accumulate(rows.begin(), rows.end(), 0.0,
                           [](double sum, const Row& row) { return sum + row.height; });
}

void Group::addSpace(double space) {
    if (!rows.empty())
        rows.back().height += space;
}

void Group::addText(const QString& text, const QFont& font, double x, double width) {
    for (const TextLine& line : wrapped(text, font, width)) {
        Row row;
        row.addLine(line, x, 0);
        rows.push_back(std::move(row));
    }
}

double Section::height() const {
    return std::accumulate(groups.begin(), groups.end(), 0.0,
                           [](double sum, const Group& group) { return sum + group.height(); });
}

Group headingGroup(const QString& text, double width, bool ruled) {
    Group group;
    group.keepWithNext = true;
    Row row;
    const double y = row.addLine(elided(text, paperFont(kSectionSize, true), width), 0, 14);
    if (ruled)
        row.addRule(0, width, y + 2);
    row.growTo(y + (ruled ? 6 : 3));
    group.rows.push_back(std::move(row));
    return group;
}

void addBlank(Row& row, const QString& before, const QString& after, double left, double right, double bottom,
              int size) {
    const double gap = 4;
    const auto place = [&](const TextLine& line, double x) { row.addLine(line, x, bottom - line.ascent); };
    if (!before.isEmpty()) {
        const TextLine line = oneLine(before, paperFont(size));
        place(line, left);
        left += line.width + gap;
    }
    if (!after.isEmpty()) {
        const TextLine line = oneLine(after, paperFont(size));
        right -= line.width;
        place(line, right);
        right -= gap;
    }
    row.addRule(left, std::max(left, right), bottom);
}

}  // namespace wm::ui

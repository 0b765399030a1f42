// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "ui/print/sheet_sections.h"
#include "ui/words/tr.h"

namespace wm::ui {

namespace {

constexpr double kLineColumn = 26;
constexpr double kBlankColumn = 60;
constexpr double kRuledLine = 25;  ///< between lines to write on

void addRuledLines(Group& group, int count, double width) {
    for (int line = 0; line < count; ++line) {
        Row row;
        row.addRule(0, width, kRuledLine - 1);
        group.rows.push_back(std::move(row));
    }
}

Group followUpGroup(const sheet::FollowUpLine& line, double width) {
    const double whenWidth = 150;
    Row row;
    row.addLine(oneLine(fromCore(line.field), paperFont(kSmallSize)), 0, 9);
    row.addBox({kLineColumn, 3, kTick, kTick});
    const double room = width - kBlankColumn - whenWidth - 10;
    double y = row.addLines(wrapped(fromCore(line.what), paperFont(14), room), kBlankColumn, 6);
    if (!line.because.empty())
        y = row.addLines(wrapped(fromCore(line.because), paperFont(kNoteSize), room), kBlankColumn, y);
    double right = 6;
    for (const TextLine& part : wrapped(fromCore(line.when), paperFont(kNoteSize, true), whenWidth))
        right = row.addLineRight(part, width, right);
    row.growTo(std::max({y, right, 3 + kTick}) + 4);
    row.addRule(0, width, row.height);
    Group group;
    group.rows.push_back(std::move(row));
    return group;
}

Section followUpSection(const sheet::JobSheet& sheet, double width) {
    Section section{Start::Lower, {headingGroup(tr("Check after the work"), width)}};
    for (const sheet::FollowUpLine& line : sheet.followUps)
        section.groups.push_back(followUpGroup(line, width));
    return section;
}

Section firstRideSection(double width) {
    Group group;
    addCaution(group, upkeep::Hazard::FirstRide, 0, width, CautionDetail::WhoDecides);
    group.addSpace(6);
    Row date;
    addBlank(date, tr("date"), QString(), 0, 160, kRuledLine);
    date.growTo(kRuledLine + 6);
    group.rows.push_back(std::move(date));
    group.rows.push_back(initialsRow(width));
    return {Start::Lower, {headingGroup(tr("Fit to ride"), width), std::move(group)}};
}

Section settingsSection(const sheet::JobSheet& sheet, double width) {
    Section section{Start::Lower, {headingGroup(tr("Settings to note and restore"), width)}};
    for (const sheet::SettingLine& line : sheet.settings) {
        const double blank = width * 0.66;
        const double room = blank - 10 - kLineColumn;
        Row row;
        row.addLine(oneLine(fromCore(line.field), paperFont(kSmallSize)), 0, 9);
        addBlank(row, tr("left at"), QString(), blank, width, kRuledLine);
        double y = row.addLines(wrapped(fromCore(line.name), paperFont(14), room), kLineColumn, 5);
        y = row.addLines(wrapped(fromCore(line.value + " (" + line.noted + ")"), paperFont(14, true), room),
                         kLineColumn, y);
        row.growTo(std::max(y, kRuledLine) + 5);
        Group group;
        group.rows.push_back(std::move(row));
        section.groups.push_back(std::move(group));
    }
    return section;
}

Section notesSection(const QString& heading, int lines, double width) {
    Group group;
    addRuledLines(group, lines, width);
    group.addSpace(4);
    return {Start::Lower, {headingGroup(heading, width), std::move(group)}};
}

Section writeBackSection(const sheet::JobSheet& sheet, double width) {
    Section section{Start::Lower, {headingGroup(tr("Type back"), width)}};
    Group how;
    how.addText(tr("By these letters and numbers, with every box and blank before that has one."),
                paperFont(kNoteSize), 0, width);
    section.groups.push_back(std::move(how));
    for (const sheet::WriteBackLine& line : sheet.writeBack) {
        const double lineEnd = width - 40;
        Row row;
        const TextLine what = oneLine(fromCore(line.what), paperFont(14));
        row.addLine(oneLine(fromCore(line.field), paperFont(kSmallSize, true)), 0, kRuledLine - 13);
        row.addLine(what, kLineColumn, kRuledLine - what.ascent);
        const double from = kLineColumn + what.width + 6;
        row.addRule(from, lineEnd, kRuledLine);
        if (!line.unit.empty())
            row.addLine(oneLine(fromCore(line.unit), paperFont(14)), lineEnd + 4, kRuledLine - what.ascent);
        row.growTo(kRuledLine + 3);
        Group group;
        group.rows.push_back(std::move(row));
        section.groups.push_back(std::move(group));
    }
    return section;
}

}  // namespace

std::vector<Section> closingSections(const sheet::JobSheet& sheet, double width) {
    std::vector<Section> sections;
    if (!sheet.followUps.empty())
        sections.push_back(followUpSection(sheet, width));
    if (!sheet.settings.empty())
        sections.push_back(settingsSection(sheet, width));
    if (std::find(sheet.cautions.begin(), sheet.cautions.end(), upkeep::Hazard::FirstRide) !=
        sheet.cautions.end())
        sections.push_back(firstRideSection(width));
    sections.push_back(notesSection(tr("Which bolts are only hand-tight? What is left over?"), 2, width));
    sections.push_back(notesSection(tr("Found"), 2, width));
    sections.push_back(notesSection(tr("Did"), 2, width));
    sections.push_back(notesSection(tr("Left open"), 2, width));
    sections.push_back(writeBackSection(sheet, width));
    return sections;
}

}  // namespace wm::ui

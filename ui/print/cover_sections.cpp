// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/print/sheet_sections.h"
#include "ui/words/caution_words.h"
#include "ui/words/tr.h"

namespace wm::ui {

namespace {

constexpr double kFactColumn = 88;
constexpr double kIdColumn = 26;
constexpr double kAmountEnd = 130;

void addFact(Group& group, const QString& name, const QString& value, double width) {
    if (value.isEmpty())
        return;
    Row row;
    const TextLine label = oneLine(name, paperFont(kNoteSize));
    const auto lines = wrapped(value, paperFont(kStepSize, true), width - kFactColumn);
    const double bottom = row.addLines(lines, kFactColumn, 0);
    row.addLine(label, 0, lines.front().ascent - label.ascent);
    row.growTo(bottom + 3);
    group.rows.push_back(std::move(row));
}

Section factsSection(const sheet::JobSheet& sheet, double width) {
    Group facts;
    addFact(facts, tr("for"), fromCore(sheet.target), width);
    addFact(facts, tr("at the bench"), fromCore(sheet.window), width);
    addFact(facts, tr("work"), fromCore(sheet.workTime), width);
    addFact(facts, tr("hour meter"), fromCore(sheet.meter), width);
    addFact(facts, tr("total time"), fromCore(sheet.totalTime), width);
    addFact(facts, tr("fitted"), fromCore(sheet.configuration), width);
    addFact(facts, tr("printed"), fromCore(sheet.date), width);
    Row who;
    addBlank(who, tr("done by"), QString(), 0, width / 2 - 12, 24);
    addBlank(who, tr("second person"), QString(), width / 2, width, 24);
    who.growTo(32);
    facts.rows.push_back(std::move(who));
    return {Start::Flow, {std::move(facts)}};
}

// A list of lines under a heading; nothing if the list is empty.
void addList(std::vector<Section>& sections, const QString& heading, const std::vector<std::string>& items,
             const QFont& font, double width) {
    if (items.empty())
        return;
    Section section;
    section.groups.push_back(headingGroup(heading, width));
    for (const std::string& item : items) {
        Group group;
        group.addText(fromCore(item), font, 0, width);
        group.addSpace(3);
        section.groups.push_back(std::move(group));
    }
    sections.push_back(std::move(section));
}

Section cautionsSection(const sheet::JobSheet& sheet, double width) {
    Section section{Start::Flow, {headingGroup(tr("Mind"), width)}};
    for (const upkeep::Hazard hazard : sheet.cautions) {
        Group group;
        addCaution(group, hazard, 0, width, CautionDetail::WhoDecides);
        group.addSpace(5);
        section.groups.push_back(std::move(group));
    }
    return section;
}

Group pullGroup(const sheet::PullLine& line, double width) {
    const double placeWidth = 120;
    const double text = kAmountEnd + 10;
    const double textWidth = width - text - placeWidth - 8;
    Row row;
    row.addLine(oneLine(fromCore(line.field), paperFont(kSmallSize)), 0, 9);
    row.addBox({kIdColumn, 3, kTick, kTick});
    row.addLineRight(oneLine(fromCore(line.amount), paperFont(kStepSize, true)), kAmountEnd, 5);
    double y = row.addLines(wrapped(fromCore(line.what), paperFont(14), textWidth), text, 6);
    QString small = fromCore(line.partNumber);
    if (line.onlyIfNeeded)
        small = small.isEmpty() ? tr("if needed") : tr("%1 · if needed").arg(small);
    if (!small.isEmpty())
        y = row.addLines(wrapped(small, paperFont(kNoteSize), textWidth), text, y);
    const QString place = line.onShelfList ? fromCore(line.place) : tr("not on the shelf list");
    double right = 6;
    if (!line.enough)
        for (const TextLine& part :
             wrapped(fromCore(line.shortBy).toUpper(), paperFont(kNoteSize, true), placeWidth))
            right = row.addLineRight(part, width, right);
    for (const TextLine& part : wrapped(place, paperFont(kNoteSize), placeWidth))
        right = row.addLineRight(part, width, right);
    row.growTo(std::max({y, right, kTick + 3}) + 4);
    row.addRule(0, width, row.height);
    Group group;
    group.rows.push_back(std::move(row));
    return group;
}

Section pullSection(const sheet::JobSheet& sheet, double width) {
    Section section{Start::Flow, {headingGroup(tr("Pull first"), width)}};
    for (const sheet::PullLine& line : sheet.pull)
        section.groups.push_back(pullGroup(line, width));
    return section;
}

}  // namespace

void addCaution(Group& group, upkeep::Hazard hazard, double x, double width, CautionDetail detail) {
    const double indent = 24;
    const CautionWords words = cautionWords(hazard);
    const std::size_t first = group.rows.size();
    group.addText(words.hazard, paperFont(kNoteSize + 1, true), x + indent, width - indent);
    QString rest;
    if (detail != CautionDetail::Name)
        rest = words.doThis;
    if (detail == CautionDetail::WhoDecides)
        rest += QLatin1Char(' ') + words.deferTo;
    group.addText(rest, paperFont(kNoteSize), x + indent, width - indent);
    Row& head = group.rows[first];
    const TextLine sign = oneLine(QStringLiteral("!"), paperFont(kNoteSize + 1, true));
    head.addBox({x, 1, 15, 15});
    head.addLine(sign, x + (15 - sign.width) / 2, 8.5 - sign.height / 2);
}

std::vector<Section> coverSections(const sheet::JobSheet& sheet, double width) {
    std::vector<Section> sections;
    addList(sections, tr("Jobs"), sheet.jobs, paperFont(kJobSize, true), width);
    if (!sections.empty())
        sections.back().groups.back().addSpace(10);
    sections.push_back(factsSection(sheet, width));
    addList(sections, tr("Not fitted: not to be ridden so"), sheet.notFitted, paperFont(14), width);
    addList(sections, tr("Hand-tight now: torque and mark these first"), sheet.handTight, paperFont(14),
            width);
    addList(sections, tr("In doubt: look at these first"), sheet.inDoubt, paperFont(14), width);
    addList(sections, tr("Snags left open"), sheet.openSnags, paperFont(14), width);
    if (!sheet.cautions.empty())
        sections.push_back(cautionsSection(sheet, width));
    addList(sections, tr("Tools"), sheet.tools, paperFont(14), width);
    if (!sheet.pull.empty())
        sections.push_back(pullSection(sheet, width));
    return sections;
}

}  // namespace wm::ui

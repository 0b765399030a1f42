// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <QFontMetricsF>
#include <QPainter>
#include <algorithm>

#include "core/sheet/sheet_words.h"
#include "ui/drawing/joint_order.h"
#include "ui/drawing/wedge.h"
#include "ui/print/sheet_sections.h"
#include "ui/words/speech.h"
#include "ui/words/tr.h"

namespace wm::ui {

namespace {

constexpr double kBoxColumn = 46;   ///< after clock and field id
constexpr double kTextColumn = 80;  ///< after the step's box
constexpr double kJointText = 114;  ///< after the joint's box
constexpr double kMinutesColumn = 52;
constexpr double kWriteHeight = 26;  ///< a line to write on, with gloves

// The first two lines of a text go with the boxes beside them; the rest may run over the page's end.
void addRestOf(Group& group, const std::vector<TextLine>& lines, std::size_t from, double x) {
    for (std::size_t at = from; at < lines.size(); ++at) {
        Row row;
        row.addLine(lines[at], x, 0);
        group.rows.push_back(std::move(row));
    }
}

void addHead(Group& group, const sheet::SheetLine& line, double width) {
    const bool isJob = line.kind == sheet::LineKind::Job;
    const bool stands = isJob || line.kind == sheet::LineKind::BreakLoose;
    const auto lines = wrapped(fromCore(line.text), paperFont(isJob ? kJobSize : kStepSize, stands),
                               width - kTextColumn - kMinutesColumn);
    Row row;
    row.addRule(0, width, kLineWeight / 2);
    const double clock = row.addLine(oneLine(fromCore(line.clock), paperFont(kNoteSize + 1)), 0, 3);
    row.addLine(oneLine(fromCore(line.field), paperFont(kSmallSize)), 0, clock);
    row.addBox({kBoxColumn, 5, kTick, kTick});
    const std::size_t beside = std::min<std::size_t>(lines.size(), 2);
    const double top = lines.size() == 1 ? 5 + (kTick - lines[0].height) / 2 : 4;
    double y = top;
    for (std::size_t at = 0; at < beside; ++at)
        y = row.addLine(lines[at], kTextColumn, y);
    row.addLineRight(oneLine(fromCore(line.minutes), paperFont(kNoteSize)), width, top + 2);
    row.growTo(lines.size() > 2 ? y : std::max(y, 5 + kTick) + 5);
    group.rows.push_back(std::move(row));
    addRestOf(group, lines, beside, kTextColumn);
}

QString joined(const std::vector<QString>& parts) {
    QString text;
    for (const QString& part : parts)
        if (!part.isEmpty())
            text += (text.isEmpty() ? QString() : QStringLiteral(" · ")) + part;
    return text;
}

QString jointName(const sheet::TorqueLine& torque) {
    const QString count = torque.count > 1 ? QStringLiteral("%1 × ").arg(torque.count) : QString();
    return count + fromCore(torque.joint);
}

// What else is to be known of a joint, under its name and figure, over the whole width.
std::vector<TextLine> jointWords(const sheet::TorqueLine& torque, double width) {
    std::vector<TextLine> lines;
    const auto add = [&](const QString& text, const QFont& font) {
        for (TextLine& line : wrapped(text, font, width))
            lines.push_back(std::move(line));
    };
    if (torque.leftHand)
        add(tr("LEFT-HAND THREAD"), paperFont(14, true));
    if (!torque.figure.converted.empty())
        add(QStringLiteral("= ") + fromCore(torque.figure.converted), paperFont(14));
    if (!torque.stages.empty())
        add(tr("stages: %1").arg(fromCore(torque.stages)), paperFont(14, true));
    add(joined({fromCore(torque.thread), fromCore(torque.condition), fromCore(torque.locking)}),
        paperFont(kNoteSize));
    if (!torque.renew.empty())
        add(fromCore(sheet::renewText(torque.renew, speech())), paperFont(kNoteSize));
    if (!torque.order.empty())
        add(tr("order: %1").arg(fromCore(torque.order)), paperFont(kNoteSize));
    add(fromCore(torque.figure.source), paperFont(kSmallSize));
    return lines;
}

// The figure, big, on one line with its unit. Answers its left edge.
double addFigure(Row& row, const sheet::Figure& figure, double left, double right) {
    const QString text = fromCore(figure.text);
    int size = kTorqueSize;
    const auto full = [&] {
        const QFont font = paperFont(size, true);
        return widthOf(text, font) + wedgeAdvance(QFontMetricsF(font));  // confirmed or not: one column
    };
    while (size > kNoteSize && full() > right - left)
        --size;
    const QFont font = paperFont(size, true);
    const TextLine line = oneLine(text, font);
    const double x = right - full();
    row.addLine(line, x, 0);
    if (!figure.confirmed) {
        const QRectF wedge = wedgeBehind({x + line.width, line.ascent}, QFontMetricsF(font));
        row.marks.push_back(WedgeMark{wedge});
    }
    return x;
}

double addTorqueBlank(Row& row, double right) {
    const double left = right - 150;
    addBlank(row, tr("torque"), QStringLiteral("N·m"), left, right, kWriteHeight - 4);
    addBlank(row, tr("manual p."), QString(), left, right, 2 * kWriteHeight - 6);
    row.growTo(2 * kWriteHeight);
    return left;
}

// The name beside the figure, the rest below both. A figure that leaves no room for the name stands above it.
void addTorque(Group& group, const sheet::TorqueLine& torque, double width) {
    constexpr double kLeastName = 110;
    constexpr double kUnderDigits = 6;  // digits have nothing below the line
    Row row;
    row.addLine(oneLine(fromCore(torque.field), paperFont(kSmallSize)), kBoxColumn, 9);
    row.addBox({kTextColumn, 3, kTick, kTick});
    const double edge = torque.figure.text.empty() ? addTorqueBlank(row, width)
                                                   : addFigure(row, torque.figure, kJointText, width);
    const double figureEnd = row.height;
    const double nameRoom = edge - 10 - kJointText;
    const bool beside = nameRoom >= kLeastName;
    double y =
        row.addLines(wrapped(jointName(torque), paperFont(14, true), beside ? nameRoom : width - kJointText),
                     kJointText, beside ? 5 : figureEnd);
    // Few words go on beside it.
    auto lines = jointWords(torque, beside ? nameRoom : width - kJointText);
    const auto tall = static_cast<double>(lines.size()) * QFontMetricsF(paperFont(kNoteSize)).height();
    if (beside && y + tall > figureEnd) {
        lines = jointWords(torque, width - kJointText);
        y = std::max(y, figureEnd - kUnderDigits);
    }
    const std::size_t together = std::min<std::size_t>(lines.size(), 8);
    for (std::size_t at = 0; at < together; ++at)
        y = row.addLine(lines[at], kJointText, y);
    row.growTo(std::max({y, row.height, 3 + kTick}) + (together == lines.size() ? 8 : 0));
    group.rows.push_back(std::move(row));
    addRestOf(group, lines, together, kJointText);
}

// Of a pattern that words alone leave open: four bolts crosswise, spokes by laps. Those drawings count in
// pixels of 1/96 inch.
void addOrderPicture(Group& group, const sheet::TorqueLine& torque) {
    constexpr std::int64_t kMostToTellApart = 40;
    constexpr double kSide = 108;
    constexpr double kPixel = 72.0 / 96.0;
    if (torque.count < 3 || torque.count > kMostToTellApart)
        return;
    const JointOrder order{torque.sequence,
                           static_cast<int>(torque.count),
                           static_cast<int>(std::min(torque.sequenceStep, torque.count)),
                           {}};
    if (torque.sequence == fastening::Sequence::Listed || tighteningSequence(order).empty())
        return;
    const auto paint = [order](QPainter& painter, const QRectF& rect) {
        painter.translate(rect.topLeft());
        painter.scale(kPixel, kPixel);
        paintJointOrderOnPaper(painter, QRectF(QPointF(0, 0), rect.size() / kPixel), order, paperFont(14));
    };
    Row row;
    row.marks.push_back(PictureMark{QRectF(kJointText, 0, kSide, kSide), paint});
    row.growTo(kSide + 8);
    group.rows.push_back(std::move(row));
}

void addQuantity(Group& group, const sheet::Figure& quantity, double room) {
    const QFont font = paperFont(kJobSize, true);
    const QFontMetricsF metrics(font);
    const auto lines = wrapped(fromCore(quantity.text), font, room - wedgeAdvance(metrics));
    Row row;
    double y = 0;
    for (const TextLine& line : lines) {
        // The wedge stands behind the last line, where the amount is.
        if (!quantity.confirmed && &line == &lines.back())
            row.marks.push_back(WedgeMark{wedgeBehind({kTextColumn + line.width, y + line.ascent}, metrics)});
        y = row.addLine(line, kTextColumn, y);
    }
    row.growTo(y);
    group.rows.push_back(std::move(row));
}

// Answers the lower edge.
double addLimit(Row& row, const sheet::MeasureLine& measure, double room, double width, double y) {
    if (measure.limit.empty()) {
        if (room < 180) {  // narrow paper: below the value, over the whole width
            room = width - kTextColumn;
            y = std::max(y, kWriteHeight + 4);
        }
        const double middle = kTextColumn + room / 2;
        addBlank(row, tr("limit"), QString(), kTextColumn, middle - 6, y + 18);
        addBlank(row, tr("manual p."), QString(), middle, kTextColumn + room, y + 18);
        return y + 24;
    }
    const auto lines = wrapped(tr("limit %1").arg(fromCore(measure.limit)), paperFont(14, true),
                               room - wedgeAdvance(QFontMetricsF(paperFont(14, true))));
    if (!measure.limitConfirmed && !lines.empty()) {
        const TextLine& line = lines.front();
        row.marks.push_back(
            WedgeMark{wedgeBehind({kTextColumn + line.width, y + line.ascent}, QFontMetricsF(line.font))});
    }
    return row.addLines(lines, kTextColumn, y);
}

void addMeasure(Group& group, const sheet::MeasureLine& measure, double width) {
    const double blankLeft = width - 150;
    const double room = blankLeft - kTextColumn - 10;
    Row row;
    row.addLine(oneLine(fromCore(measure.field), paperFont(kSmallSize)), kBoxColumn, 9);
    addBlank(row, tr("now"), fromCore(measure.unit), blankLeft, width, kWriteHeight, 14);
    double y = row.addLines(wrapped(fromCore(measure.name), paperFont(14, true), room), kTextColumn, 3);
    if (!measure.last.empty())
        y = row.addLines(wrapped(tr("last %1").arg(fromCore(measure.last)), paperFont(kNoteSize), room),
                         kTextColumn, y);
    y = addLimit(row, measure, room, width, y);
    row.growTo(std::max(y, kWriteHeight) + 6);
    group.rows.push_back(std::move(row));
}

}  // namespace

Row initialsRow(double width) {
    Row row;
    const double boxWidth = 74;
    double right = width;
    for (const QString& words : {tr("second person"), tr("initials")}) {
        row.addBox({right - boxWidth, 3, boxWidth, kTick});
        const TextLine label = oneLine(words, paperFont(kNoteSize));
        row.addLineRight(label, right - boxWidth - 6, 3 + (kTick - label.height) / 2);
        right -= boxWidth + label.width + 22;
    }
    row.growTo(kTick + 9);
    return row;
}

Group stepGroup(const sheet::SheetLine& line, double width, std::set<upkeep::Hazard>& said) {
    Group group;
    addHead(group, line, width);
    const double room = width - kTextColumn;
    if (!line.howTo.empty()) {
        group.addText(fromCore(line.howTo), paperFont(kNoteSize + 1), kTextColumn, room);
        group.addSpace(4);
    }
    for (const upkeep::Hazard hazard : line.hazards) {
        addCaution(group, hazard, kTextColumn, room,
                   said.insert(hazard).second ? CautionDetail::WhatToDo : CautionDetail::Name);
        group.addSpace(4);
    }
    for (const sheet::Figure& quantity : line.quantities) {
        addQuantity(group, quantity, room);
        group.addSpace(4);
    }
    for (const sheet::MeasureLine& measure : line.measures)
        addMeasure(group, measure, width);
    for (const sheet::TorqueLine& torque : line.torques) {
        addTorque(group, torque, width);
        addOrderPicture(group, torque);
    }
    if (line.safety)
        group.rows.push_back(initialsRow(width));
    return group;
}

}  // namespace wm::ui

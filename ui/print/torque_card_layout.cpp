// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/print/torque_card_layout.h"

#include <algorithm>

#include "ui/print/sheet_sections.h"
#include "ui/words/tr.h"

namespace wm::ui {

namespace {

constexpr double kCardHead = 52;
constexpr double kCardFoot = 42;
constexpr int kFigureSize = 24;
constexpr int kNameSize = 16;
constexpr double kWedge = 11;

QString belowText(const sheet::CardLine& line, bool hasDrawer) {
    QString tool;
    if (!line.tool.empty())
        tool = tr("with %1").arg(fromCore(line.tool));
    else if (hasDrawer)
        tool = tr("no wrench in the drawer reaches it");
    QString text = fromCore(line.thread);
    for (const QString& part : {fromCore(line.how), tool})
        if (!part.isEmpty())
            text += (text.isEmpty() ? QString() : QStringLiteral(" · ")) + part;
    return text;
}

// The figure keeps its whole width at the right; words that need more than two lines beside it stand below.
Row lineRow(const sheet::CardLine& line, double width, bool hasDrawer) {
    Row row;
    const double top = 4;
    const TextLine figure = oneLine(fromCore(line.torque), paperFont(kFigureSize, true));
    double right = row.addLineRight(figure, width, top);
    if (!line.confirmed)
        row.marks.push_back(
            WedgeMark{QRectF(width - figure.width - kWedge - 5, top + figure.height / 2 - 4, kWedge, 9)});
    if (!line.metric.empty())
        right = row.addLineRight(oneLine(fromCore(line.metric), paperFont(kNoteSize)), width, right);
    const double words = width - figure.width - kWedge - 18;
    double y = row.addLines(wrapped(fromCore(line.joint), paperFont(kNameSize, true), words), 0, top + 3);
    const QString below = belowText(line, hasDrawer);
    const QFont small = paperFont(kNoteSize);
    auto lines = wrapped(below, small, words);
    if (lines.size() > 2) {
        lines = wrapped(below, small, width);
        y = std::max(y, right);
    }
    y = row.addLines(lines, 0, y);
    row.growTo(std::max(y, right) + 4);
    row.addRule(0, width, row.height);
    return row;
}

Row headRow(const sheet::TorqueCard& card, std::size_t page, std::size_t pages, double width) {
    Row row;
    const double glyph = 24;
    row.marks.push_back(WitnessMark{QRectF(0, 2, glyph, glyph)});
    const TextLine count = oneLine(tr("page %1 of %2").arg(page).arg(pages), paperFont(14, true));
    const double x = glyph + 8;
    row.addLine(elided(tr("%1: torques").arg(fromCore(card.machine)), paperFont(20, true),
                       width - x - count.width - 12),
                x, 0);
    row.addLineRight(count, width, 4);
    QString small = fromCore(card.model);
    small +=
        (small.isEmpty() ? QString() : QStringLiteral(" · ")) + tr("printed %1").arg(fromCore(card.date));
    row.addLine(elided(small, paperFont(kSmallSize + 1), width - x), x, 26);
    row.addRule(0, width, kCardHead - 8, true);
    return row;
}

Row footRow(const sheet::TorqueCard& card, bool unconfirmed, double width) {
    Row row;
    const QFont font = paperFont(kSmallSize);
    if (unconfirmed) {
        row.marks.push_back(WedgeMark{QRectF(0, 3, 9, 7)});
        row.addLine(elided(tr("not confirmed against the service manual: look it up before you use it"), font,
                           width - 14),
                    14, 0);
    }
    row.addLine(elided(tr("The service manual for this model and year stands above this card."), font, width),
                0, 13);
    if (card.blank > 0)
        row.addLine(elided(tr("%n joint(s) of this machine have no figure yet and are not on the card.",
                              nullptr, static_cast<int>(card.blank)),
                           font, width),
                    0, 26);
    return row;
}

void lay(SheetPage& page, const Row& row, double y) {
    for (const Mark& mark : row.marks)
        page.marks.push_back(movedBy(mark, 0, y));
}

}  // namespace

std::optional<std::vector<SheetPage>> layOutTorqueCard(const sheet::TorqueCard& card, QSizeF area) {
    if (area.width() < kLeastArea.width() || area.height() < kLeastArea.height())
        return std::nullopt;
    const double width = area.width();
    const double bottom = area.height() - kCardFoot;
    std::vector<SheetPage> pages(1);
    double y = kCardHead;
    for (const sheet::CardGroup& group : card.groups) {
        Group heading = headingGroup(fromCore(group.title), width);
        bool isHeaded = false;
        for (const sheet::CardLine& line : group.lines) {
            const Row row = lineRow(line, width, card.hasDrawer);
            const double head = isHeaded ? 0 : heading.height();
            if (y + head + row.height > bottom && y > kCardHead) {
                pages.emplace_back();
                y = kCardHead;
            }
            if (!isHeaded) {
                lay(pages.back(), heading.rows.front(), y);
                y += heading.height();
                isHeaded = true;
            }
            lay(pages.back(), row, y);
            y += row.height;
        }
    }
    for (std::size_t page = 0; page < pages.size(); ++page) {
        const bool unconfirmed = hasWedge(pages[page]);
        lay(pages[page], headRow(card, page + 1, pages.size(), width), 0);
        lay(pages[page], footRow(card, unconfirmed, width), area.height() - kCardFoot + 4);
    }
    return pages;
}

QString torqueCardTitle(const sheet::TorqueCard& card) {
    return tr("Torque card, %1").arg(fromCore(card.machine));
}

}  // namespace wm::ui

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/print/sheet_layout.h"

#include <algorithm>

#include "ui/print/sheet_sections.h"
#include "ui/words/tr.h"

namespace wm::ui {

namespace {

constexpr double kHead = 46;
constexpr double kFoot = 30;

// Lays rows down and turns the page where it must.
class Paginator {
  public:
    explicit Paginator(double bodyHeight) : body_(bodyHeight) { turn(); }

    void add(const std::vector<Section>& sections) {
        for (std::size_t at = 0; at < sections.size(); ++at) {
            double whole = 0;
            for (std::size_t with = at; with <= at + sections[at].with && with < sections.size(); ++with)
                whole += sections[with].height();
            if (y_ > 0 && startsOver(sections[at].start, whole))
                turn();
            for (std::size_t group = 0; group < sections[at].groups.size(); ++group)
                add(sections[at].groups, group);
        }
    }

    std::vector<SheetPage> take() { return std::move(pages_); }

  private:
    [[nodiscard]] double left() const { return body_ - y_; }

    [[nodiscard]] bool startsOver(Start start, double whole) const {
        constexpr double kLittle = 0.3;
        switch (start) {
            case Start::Flow:
                return false;
            case Start::Lower:
                return whole > left() && left() < kLittle * body_;
            case Start::Whole:
                return whole > left();
            case Start::NewPage:
                return true;
        }
        return false;
    }

    void turn() {
        pages_.emplace_back();
        y_ = 0;
    }

    // Headings count with what they head: the run of kept groups is placed or turned as one.
    void add(const std::vector<Group>& groups, std::size_t at) {
        const bool isHeld = at > 0 && groups[at - 1].keepWithNext;
        double run = groups[at].height();
        for (std::size_t next = at; groups[next].keepWithNext && next + 1 < groups.size(); ++next)
            run += groups[next + 1].height();
        // A run that no page can hold is placed by its first group alone.
        const double wanted = run <= body_ ? run : groups[at].height();
        if (!isHeld && y_ > 0 && wanted > left() && wanted <= body_)
            turn();
        for (const Row& row : groups[at].rows)
            add(row);
    }

    void add(const Row& row) {
        if (row.height > left() && y_ > 0)
            turn();
        if (row.height <= body_) {
            for (const Mark& mark : row.marks)
                lay(mark);
            y_ += row.height;
            return;
        }
        addTall(row);
    }

    // A row that no page can hold: what fits stays, the rest goes on at the top of the next page.
    void addTall(const Row& row) {
        Row rest;
        double top = row.height;
        for (const Mark& mark : row.marks) {
            const QRectF bounds = boundsOf(mark);
            if (bounds.bottom() <= body_ || bounds.height() > body_) {
                lay(mark);
            } else {
                rest.marks.push_back(mark);
                top = std::min(top, bounds.top());
            }
        }
        turn();
        for (Mark& mark : rest.marks)
            mark = movedBy(mark, 0, -top);
        rest.height = row.height - top;
        if (!rest.marks.empty())
            add(rest);
    }

    void lay(const Mark& mark) { pages_.back().marks.push_back(movedBy(mark, 0, kHead + y_)); }

    double body_;
    double y_ = 0;
    std::vector<SheetPage> pages_;
};

Row headRow(const sheet::JobSheet& sheet, std::size_t page, std::size_t pages, double width) {
    Row row;
    const double glyph = 20;
    row.marks.push_back(WitnessMark{QRectF(0, 2, glyph, glyph)});
    const TextLine count = oneLine(tr("page %1 of %2").arg(page).arg(pages), paperFont(14, true));
    const QString name = sheet.number == 0 ? tr("Job sheet, proof") : tr("Job sheet %1").arg(sheet.number);
    const TextLine number = oneLine(name, paperFont(kHeadSize, true));
    const double x = glyph + 8;
    row.addLine(number, x, 0);
    const double machineX = x + number.width + 18;
    row.addLine(
        elided(fromCore(sheet.machine), paperFont(kHeadSize, true), width - machineX - count.width - 12),
        machineX, 0);
    row.addLineRight(count, width, 2);
    row.addLine(elided(fromCore(sheet.configuration), paperFont(kSmallSize + 1), width - x), x, 21);
    row.addRule(0, width, 38);
    return row;
}

Row footRow(bool unconfirmed, double width) {
    Row row;
    const QFont font = paperFont(kSmallSize);
    double y = 0;
    if (unconfirmed) {
        row.marks.push_back(WedgeMark{QRectF(0, 3, 9, 7)});
        row.addLine(elided(tr("not confirmed against the service manual: look it up before you use it"), font,
                           width - 14),
                    14, 0);
    }
    y = 13;
    row.addLine(
        elided(tr("The service manual for this model and year stands above this sheet."), font, width), 0, y);
    return row;
}

void addRow(SheetPage& page, const Row& row, double y) {
    for (const Mark& mark : row.marks)
        page.marks.push_back(movedBy(mark, 0, y));
}

}  // namespace

bool hasWedge(const SheetPage& page) {
    return std::any_of(page.marks.begin(), page.marks.end(),
                       [](const Mark& mark) { return std::holds_alternative<WedgeMark>(mark); });
}

QSizeF paperSizeMm(PaperSize size) {
    return size == PaperSize::A4 ? QSizeF(210.0, 297.0) : QSizeF(215.9, 279.4);
}

std::optional<QSizeF> printableMm(PaperSize size, double marginMm) {
    const QSizeF whole = paperSizeMm(size);
    const QSizeF inside = whole - QSizeF(2 * marginMm, 2 * marginMm);
    if (marginMm < 0 || inside.width() <= 0 || inside.height() <= 0)
        return std::nullopt;
    return inside;
}

std::optional<std::vector<SheetPage>> layOutSheet(const sheet::JobSheet& sheet, QSizeF area) {
    if (area.width() < kLeastArea.width() || area.height() < kLeastArea.height())
        return std::nullopt;
    Paginator paginator(area.height() - kHead - kFoot);
    for (const auto& part : {coverSections, workSections, closingSections})
        paginator.add(part(sheet, area.width()));
    std::vector<SheetPage> pages = paginator.take();
    for (std::size_t page = 0; page < pages.size(); ++page) {
        const bool unconfirmed = hasWedge(pages[page]);
        addRow(pages[page], headRow(sheet, page + 1, pages.size(), area.width()), 0);
        addRow(pages[page], footRow(unconfirmed, area.width()), area.height() - kFoot + 4);
    }
    return pages;
}

}  // namespace wm::ui

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/drawing/place_picture.h"

#include <QFontMetricsF>
#include <QLocale>
#include <QPainter>
#include <algorithm>
#include <cmath>

#include "ui/drawing/device_space.h"
#include "ui/theme/type.h"
#include "ui/words/languages.h"

namespace wm::ui {

namespace {

using calendar::Date;

class PlacesPlacer {
  public:
    PlacesPlacer(const Places& places, double width, const QFont& font)
        : places_(places), base_(font), note_(noteFont(font)), width_(width) {
        double names = 0;
        for (const PlaceRow& row : places.rows)
            names = std::max(names, row.depth * kSpaceLine + base_.horizontalAdvance(row.name));
        layout_.left = std::min(std::ceil(names) + kSpaceGroup, std::max(48.0, width * 0.25));
        days_ = std::max(1, places.today - places.first + 1);
    }

    PlacesLayout place() {
        placeMonths();
        const double line = base_.height() + 6.0;
        double y = layout_.axis + kSpaceHair;
        for (std::size_t row = 0; row < places_.rows.size(); ++row) {
            const PlaceRow& each = places_.rows[row];
            const double x = each.depth * kSpaceLine;
            layout_.names.push_back(
                {QRectF(x, y, layout_.left - x, line - 4.0),
                 base_.elidedText(each.name, Qt::ElideRight, layout_.left - x - kSpaceClose)});
            for (std::size_t stay = 0; stay < each.stays.size(); ++stay)
                placeStay({row, stay}, each.stays[stay], y, line);
            y += line;
        }
        layout_.size = QSizeF(width_, y + kSpaceHair);
        return std::move(layout_);
    }

  private:
    [[nodiscard]] double xOf(Date date) const {
        return layout_.left + (width_ - layout_.left) * (date - places_.first) / days_;
    }

    void placeMonths() {
        layout_.axis = note_.height() + 4.0;
        double free = 0;
        for (Date day = places_.first; day <= places_.today; day = day.plusDays(1)) {
            if (day.day() != 1)
                continue;
            const QString name = spokenLocale().standaloneMonthName(day.month(), QLocale::ShortFormat);
            const double end = xOf(day) + 3.0 + note_.horizontalAdvance(name);
            const bool room = xOf(day) >= free && end <= width_;
            free = room ? end + 6.0 : free;
            layout_.months.push_back({xOf(day), room ? name : QString()});
        }
    }

    void placeStay(PlaceStayId id, const PlaceStay& stay, double y, double line) {
        const Date last = stay.to.value_or(places_.today.plusDays(1));
        if (last < places_.first || stay.from > places_.today)
            return;
        const double from = std::max(layout_.left, xOf(stay.from));
        const double to = std::min(width_, xOf(last));
        PlacesLayout::Stay placed;
        placed.id = id;
        placed.shape = QRectF(from, y, std::max(to - from, 1.0), line);
        placed.begins = stay.from >= places_.first;
        placed.ends = stay.to && *stay.to <= places_.today;
        constexpr double kLeastText = 24;
        const double room = placed.shape.width() - 2 * kSpaceHair;
        if (room >= std::min(kLeastText, base_.horizontalAdvance(stay.label)))
            placed.text = base_.elidedText(stay.label, Qt::ElideRight, room);
        layout_.stays.push_back(placed);
    }

    const Places& places_;
    QFontMetricsF base_;
    QFontMetricsF note_;
    double width_;
    double days_ = 1;
    PlacesLayout layout_;
};

void paintStay(QPainter& painter, const PlacesLayout::Stay& stay, const Tokens& tokens, bool current) {
    const QRectF& shape = stay.shape;
    const double base = shape.bottom() - 3.0;
    if (current)
        painter.fillRect(shape, tokens.select);
    paintHorizontal(painter, shape.left(), shape.right() - (stay.ends ? 2.0 : 0.0), base, tokens.ink, 1.5);
    if (stay.begins)
        paintVertical(painter, shape.left(), shape.top() + 3.0, base, tokens.ink, 1.5);
    if (stay.ends)
        paintVertical(painter, shape.right() - 2.0, base - 5.0, base, tokens.ink, 1.5);
    painter.setPen(tokens.ink);
    painter.drawText(shape.adjusted(kSpaceHair, 0, -kSpaceHair + 1.0, -4.0),
                     Qt::AlignLeft | Qt::AlignVCenter | Qt::TextSingleLine, stay.text);
}

}  // namespace

PlacesLayout layOutPlaces(const Places& places, double width, const QFont& font) {
    return PlacesPlacer(places, width, font).place();
}

std::optional<PlaceStayId> placeStayAt(const PlacesLayout& layout, const QPointF& point) {
    for (const PlacesLayout::Stay& stay : layout.stays)
        if (stay.shape.contains(point))
            return stay.id;
    return std::nullopt;
}

void paintPlaces(QPainter& painter, const Places& places, const PlacesLayout& layout, const QFont& font,
                 const Tokens& tokens, std::optional<PlaceStayId> current) {
    painter.setFont(noteFont(font));
    for (const PlacesLayout::Tick& month : layout.months) {
        painter.setPen(tokens.ink);
        painter.drawText(QRectF(month.x + 3.0, 0, 80.0, layout.axis), Qt::AlignLeft | Qt::AlignVCenter,
                         month.text);
        paintVertical(painter, month.x, month.text.isEmpty() ? layout.axis - 4.0 : 2.0, layout.size.height(),
                      tokens.rule);
    }
    paintHorizontal(painter, layout.left, layout.size.width(), layout.axis, tokens.pencil);
    painter.setFont(font);
    painter.setPen(tokens.pencil);
    for (const PlacesLayout::Name& name : layout.names)
        painter.drawText(name.place, Qt::AlignLeft | Qt::AlignVCenter | Qt::TextSingleLine, name.text);
    for (const PlacesLayout::Stay& stay : layout.stays)
        paintStay(painter, stay, tokens, current == stay.id);
    if (places.rows.empty())
        return;
    paintHorizontal(painter, 0, layout.size.width(), layout.size.height() - 1.0, tokens.rule);
}

}  // namespace wm::ui

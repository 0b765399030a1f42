// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QFont>
#include <QPointF>
#include <QRectF>
#include <QString>
#include <cstddef>
#include <optional>
#include <vector>

#include "core/calendar/date.h"
#include "ui/drawing/glyph.h"
#include "ui/theme/tokens.h"

class QPainter;

namespace wm::ui {

struct SeasonEvent {
    calendar::Date first;
    calendar::Date last;  ///< the same day, or later if it lasts
    QString label;
};

/// When one job falls due: with a chance of 10, 50 and 90 % by these dates.
struct SeasonBar {
    QString label;
    calendar::Date early;
    calendar::Date likely;
    calendar::Date late;
    MarkState mark;
    QString words;  ///< the same in a sentence, for hovering and for a screen reader
};

struct SeasonGroup {
    QString name;
    std::vector<SeasonBar> bars;
};

/// What the strip shows, from `first` to `last`, both days shown whole. Bars that begin after `last` are left
/// out; what ended before `first` stands at the left edge, since it is overdue and must not vanish.
struct Season {
    calendar::Date first;
    calendar::Date last;
    calendar::Date today;
    std::vector<SeasonEvent> events;
    std::vector<SeasonGroup> groups;
};

struct SeasonBarId {
    std::size_t group;
    std::size_t bar;
    friend bool operator==(const SeasonBarId&, const SeasonBarId&) = default;
};

/// Where everything lies, the upper left corner being (0, 0). Painting, hitting and measuring all use it.
struct SeasonLayout {
    struct Bar {
        SeasonBarId id;
        QRectF shape;   ///< from early to late, its height the thickness at early
        double likely;  ///< x
        QRectF label;   ///< glyph and text
        QString text;   ///< shortened where there is no room
    };
    struct Group {
        QRectF row;
        QString name;
    };
    struct Post {
        double left;
        double right;  ///< the end of the last day
        QRectF label;  ///< null where there is no room for words
        QString text;
        bool today;
    };
    struct Tick {
        double x;
        QString text;  ///< empty where there is no room
    };
    QRectF plot;  ///< what lies below the axis
    double monthLine;
    double weekLine;
    std::vector<Tick> months;
    std::vector<Tick> weeks;
    std::vector<Post> posts;
    std::vector<Group> groups;
    std::vector<Bar> bars;
    QSizeF size;
};

SeasonLayout layOutSeason(const Season& season, double width, const QFont& font);

/// The bar whose shape or label is at `point`, if any.
std::optional<SeasonBarId> seasonBarAt(const SeasonLayout& layout, const QPointF& point);

/// Bars thin from the 10 % date to the 90 % date, cut at 50 %: thick is the chance that the job still holds.
void paintSeason(QPainter& painter, const QPointF& corner, const Season& season, const SeasonLayout& layout,
                 const QFont& font, const Tokens& tokens, std::optional<SeasonBarId> current = std::nullopt);

}  // namespace wm::ui

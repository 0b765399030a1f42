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
#include "ui/theme/tokens.h"

class QPainter;

namespace wm::ui {

/// What sat at one place, from one day to another.
struct PlaceStay {
    QString label;
    calendar::Date from;
    std::optional<calendar::Date> to;  ///< nothing: it still sits there
    QString words;                     ///< the same in a sentence
};

/// One line of the picture: a place, and what sat there in order of time.
struct PlaceRow {
    QString name;
    int depth = 0;  ///< how deep it sits: the piston in the engine is one deeper
    std::vector<PlaceStay> stays;
};

/// Which item was where, when, from `first` to `today`, both days shown whole.
struct Places {
    calendar::Date first;
    calendar::Date today;
    std::vector<PlaceRow> rows;
};

struct PlaceStayId {
    std::size_t row;
    std::size_t stay;
    friend bool operator==(const PlaceStayId&, const PlaceStayId&) = default;
};

/// Where everything lies, the upper left corner being (0, 0).
struct PlacesLayout {
    struct Stay {
        PlaceStayId id;
        QRectF shape;
        QString text;        ///< shortened, or empty where there is no room
        bool begins = true;  ///< false: it began before the picture does
        bool ends = true;    ///< false: it still sits there
    };
    struct Name {
        QRectF place;
        QString text;
    };
    struct Tick {
        double x;
        QString text;  ///< empty where there is no room
    };
    double axis = 0;  ///< y of the line under the months
    double left = 0;  ///< x of the first day
    std::vector<Tick> months;
    std::vector<Name> names;
    std::vector<Stay> stays;
    QSizeF size;
};

PlacesLayout layOutPlaces(const Places& places, double width, const QFont& font);

std::optional<PlaceStayId> placeStayAt(const PlacesLayout& layout, const QPointF& point);

/// A stay is a line between two uprights with its item's name on it; no upright where it goes on.
void paintPlaces(QPainter& painter, const Places& places, const PlacesLayout& layout, const QFont& font,
                 const Tokens& tokens, std::optional<PlaceStayId> current = std::nullopt);

}  // namespace wm::ui

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ui/drawing/season.h"

namespace wm::ui {

inline calendar::Date dayOf2026(int month, int day) {
    return *calendar::makeDate(2026, month, day);
}

/// An invented season: two groups that crowd a lane, an overdue job, a race of two days.
inline Season demoSeason() {
    using Kind = MarkState::Kind;
    const auto d = dayOf2026;
    return {d(4, 20),
            d(8, 30),
            d(5, 7),
            {{d(5, 16), d(5, 16), QStringLiteral("Brackwater sprint")},
             {d(5, 24), d(5, 25), QStringLiteral("Kesten two-day")},
             {d(6, 20), d(6, 20), QStringLiteral("Moorgate night")},
             {d(6, 28), d(6, 28), QStringLiteral("Practice")},
             {d(8, 1), d(8, 2), QStringLiteral("Hollins final")}},
            {{QStringLiteral("chassis"),
              {{QStringLiteral("linkage"),
                d(4, 25),
                d(5, 1),
                d(5, 5),
                {Kind::Overdue, 0.0, false},
                QStringLiteral("linkage: overdue since about 1 May")},
               {QStringLiteral("steering bearings"),
                d(6, 25),
                d(7, 14),
                d(8, 10),
                {Kind::InHand, 0.0, false},
                QStringLiteral("steering bearings: 25 Jun to 10 Aug")}}},
             {QStringLiteral("engine"),
              {{QStringLiteral("piston"),
                d(5, 12),
                d(5, 22),
                d(6, 8),
                {Kind::BeforeEvent, 55.0, false},
                QStringLiteral("piston: 12 May to 8 Jun, likely 22 May")},
               {QStringLiteral("clutch plates"),
                d(5, 30),
                d(6, 21),
                d(7, 20),
                {Kind::InHand, 0.0, false},
                QStringLiteral("clutch plates: 30 May to 20 Jul")},
               {QStringLiteral("crank"),
                d(8, 5),
                d(8, 25),
                d(10, 2),
                {Kind::InHand, 0.0, false},
                QStringLiteral("crank: from 5 Aug")}}},
             {QStringLiteral("suspension"),
              {{QStringLiteral("fork oil"),
                d(5, 14),
                d(5, 19),
                d(5, 27),
                {Kind::BeforeEvent, 70.0, true},
                QStringLiteral("fork oil: 14 to 27 May, put off")},
               {QStringLiteral("shock oil"),
                d(7, 1),
                d(7, 20),
                d(8, 18),
                {Kind::InHand, 0.0, false},
                QStringLiteral("shock oil: 1 Jul to 18 Aug")}}}}};
}

}  // namespace wm::ui

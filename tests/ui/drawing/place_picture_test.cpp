// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/drawing/place_picture.h"

#include <gtest/gtest.h>

#include <QApplication>
#include <QSignalSpy>
#include <QTest>

#include "tests/ui/drawing/demo_season.h"
#include "ui/drawing/places_strip.h"

namespace wm::ui {
namespace {

Places demoPlaces() {
    const auto d = dayOf2026;
    return {d(1, 1),
            d(4, 10),
            {{QStringLiteral("engine"),
              0,
              {{QStringLiteral("no. 1"), dayOf2026(1, 1).plusDays(-40), d(2, 1), QStringLiteral("one")},
               {QStringLiteral("no. 2"), d(2, 3), std::nullopt, QStringLiteral("two")}}},
             {QStringLiteral("piston"), 1, {}},
             {QStringLiteral("rear wheel"),
              0,
              {{QStringLiteral("mud wheel with a long name"), d(3, 1), d(3, 3), QStringLiteral("three")}}}}};
}

TEST(PlacesPicture, DaysLieOnOneScaleAndWhatBeganBeforeIsCut) {
    const PlacesLayout layout = layOutPlaces(demoPlaces(), 1000.0, QApplication::font());
    const double day = (1000.0 - layout.left) / 100.0;  // 1 January to 10 April, both whole
    ASSERT_EQ(layout.stays.size(), 3U);
    EXPECT_DOUBLE_EQ(layout.stays[0].shape.left(), layout.left);
    EXPECT_FALSE(layout.stays[0].begins);
    EXPECT_TRUE(layout.stays[0].ends);
    EXPECT_NEAR(layout.stays[0].shape.right(), layout.left + 31 * day, 1e-6);
    EXPECT_NEAR(layout.stays[1].shape.left(), layout.left + 33 * day, 1e-6);
    EXPECT_NEAR(layout.stays[1].shape.right(), 1000.0, 1e-6);
    EXPECT_TRUE(layout.stays[1].begins);
    EXPECT_FALSE(layout.stays[1].ends);
}

TEST(PlacesPicture, WordsStayInsideTheirStayInAnyWidth) {
    for (const double width : {240.0, 640.0, 1900.0}) {
        const PlacesLayout layout = layOutPlaces(demoPlaces(), width, QApplication::font());
        for (const auto& stay : layout.stays) {
            EXPECT_LE(QFontMetricsF(QApplication::font()).horizontalAdvance(stay.text), stay.shape.width())
                << width;
            EXPECT_GE(stay.shape.left(), layout.left - 1e-6);
            EXPECT_LE(stay.shape.right(), width + 1e-6);
        }
    }
}

TEST(PlacesPicture, AStayIsHitWhereItIsDrawn) {
    const PlacesLayout layout = layOutPlaces(demoPlaces(), 1000.0, QApplication::font());
    for (const auto& stay : layout.stays)
        EXPECT_EQ(placeStayAt(layout, stay.shape.center()), stay.id);
    EXPECT_FALSE(placeStayAt(layout, {1.0, 1.0}));
}

TEST(PlacesStrip, KeysWalkAlongAPlaceAndFromPlaceToPlace) {
    PlacesStrip strip;
    strip.resize(1000, 200);
    strip.setPlaces(demoPlaces());
    QSignalSpy spoken(&strip, &PlacesStrip::currentChanged);
    QTest::keyClick(&strip, Qt::Key_Right);
    EXPECT_EQ(strip.current(), (PlaceStayId{0, 1})) << "the newest first";
    QTest::keyClick(&strip, Qt::Key_Right);
    EXPECT_EQ(strip.current(), (PlaceStayId{0, 1})) << "nothing is newer";
    QTest::keyClick(&strip, Qt::Key_Left);
    EXPECT_EQ(strip.current(), (PlaceStayId{0, 0}));
    QTest::keyClick(&strip, Qt::Key_Down);
    EXPECT_EQ(strip.current(), (PlaceStayId{2, 0})) << "an empty place is passed over";
    EXPECT_EQ(spoken.back().front().toString(), QStringLiteral("three"));
    EXPECT_EQ(strip.accessibleDescription(), QStringLiteral("three"));
    QTest::keyClick(&strip, Qt::Key_Up);
    EXPECT_EQ(strip.current(), (PlaceStayId{0, 1}));
    strip.setPlaces({});
    EXPECT_FALSE(strip.current());
    QTest::keyClick(&strip, Qt::Key_Right);
    EXPECT_FALSE(strip.current());
}

}  // namespace
}  // namespace wm::ui

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/drawing/wedge.h"

#include <gtest/gtest.h>

#include <QApplication>
#include <QImage>
#include <QPainter>

#include "ui/theme/type.h"

namespace wm::ui {
namespace {

TEST(Wedge, RisesAwayFromTheFigure) {
    QImage image(10, 8, QImage::Format_ARGB32_Premultiplied);
    image.fill(Qt::white);
    QPainter painter(&image);
    paintWedgeOnPaper(painter, QRectF(0, 0, 10, 8));
    painter.end();
    EXPECT_EQ(image.pixelColor(9, 7), QColor(Qt::black));
    EXPECT_EQ(image.pixelColor(0, 0), QColor(Qt::white));
    EXPECT_LT(image.pixelColor(9, 2).value(), 128);
    EXPECT_GT(image.pixelColor(2, 2).value(), 200);
}

TEST(Wedge, StandsOnTheBaselineRightBehindTheFigure) {
    for (const auto size : {FigureSize::InText, FigureSize::Noted, FigureSize::Large}) {
        const QFontMetricsF metrics(figureFont(QApplication::font(), size));
        const QRectF place = wedgeBehind({100.0, 50.0}, metrics);
        EXPECT_DOUBLE_EQ(place.bottom(), 50.0);
        EXPECT_GT(place.left(), 100.0);
        EXPECT_LT(place.height(), metrics.capHeight());
        EXPECT_NEAR(place.right(), 100.0 + wedgeAdvance(metrics), 1e-9);
    }
}

}  // namespace
}  // namespace wm::ui

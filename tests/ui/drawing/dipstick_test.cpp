// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/drawing/dipstick.h"

#include <gtest/gtest.h>

#include <QImage>
#include <QPainter>

#include "tests/ui/drawing/colour_vision.h"

namespace wm::ui {
namespace {

using LevelLeft = DipstickLevels::Left;

const QRectF kPlace(0.0, 0.0, 40.0, 96.0);

QImage drawn(const DipstickLevels& levels, const Tokens& tokens) {
    QImage image(40, 96, QImage::Format_ARGB32_Premultiplied);
    image.fill(tokens.paper);
    QPainter painter(&image);
    paintDipstick(painter, kPlace, levels, tokens);
    return image;
}

// Ink in the rows between two levels, as a share of black.
double inkBetween(const QImage& image, double low, double high) {
    const int top = static_cast<int>(dipstickHeight(kPlace, high)) + 3;
    const int bottom = static_cast<int>(dipstickHeight(kPlace, low)) - 3;
    double ink = 0.0;
    for (int y = top; y < bottom; ++y) {
        for (int x = 18; x < 23; ++x) {
            ink += 1.0 - image.pixelColor(x, y).valueF();
        }
    }
    return ink / (5.0 * (bottom - top));
}

TEST(Dipstick, HeightsRunFromFootToFull) {
    EXPECT_LT(dipstickHeight(kPlace, 1.0), dipstickHeight(kPlace, 0.5));
    EXPECT_LT(dipstickHeight(kPlace, 0.5), dipstickHeight(kPlace, 0.0));
    const double middle = (dipstickHeight(kPlace, 0.0) + dipstickHeight(kPlace, 1.0)) / 2.0;
    EXPECT_NEAR(dipstickHeight(kPlace, 0.5), middle, 1e-9);
}

TEST(Dipstick, HoldsWildLevelsWithinTheStick) {
    EXPECT_DOUBLE_EQ(dipstickHeight(kPlace, 1.0), dipstickHeight(kPlace, 7.0));
    EXPECT_GT(dipstickHeight(kPlace, -50.0), dipstickHeight(kPlace, 0.0));
    EXPECT_LE(dipstickHeight(kPlace, -50.0), kPlace.bottom());
}

TEST(Dipstick, IsWetUpToTheBracketAndDryAbove) {
    const QImage image = drawn({LevelLeft{0.4, 0.5, 0.7}, 0.1, 0.0}, printTokens());
    const double wet = inkBetween(image, 0.05, 0.38);
    const double edge = inkBetween(image, 0.52, 0.68);
    const double dry = inkBetween(image, 0.72, 0.98);
    EXPECT_GT(wet, edge * 1.2);
    EXPECT_GT(edge, 0.05);
    EXPECT_LT(dry, 0.02);
}

TEST(Dipstick, PastTheEndAndUnknownDifferByShapeAlone) {
    const QImage nearly = drawn({LevelLeft{0.0, 0.02, 0.05}, 0.25, 0.0}, printTokens());
    const QImage past = drawn({LevelLeft{-0.1, -0.05, 0.0}, 0.25, 0.0}, printTokens());
    const QImage unknown = drawn({std::nullopt, 0.25, 0.0}, printTokens());
    EXPECT_GT(shareApart(nearly, past, Vision::Grey, 20.0), 0.012);
    EXPECT_GT(shareApart(nearly, unknown, Vision::Grey, 20.0), 0.012);
    EXPECT_GT(shareApart(past, unknown, Vision::Grey, 20.0), 0.012);
}

TEST(Dipstick, FootIsFilledOnlyPastTheEnd) {
    const auto footIsFilled = [](const LevelLeft& left) {
        const QImage image = drawn({left, std::nullopt, std::nullopt}, printTokens());
        return image.pixelColor(20, 90).value() < 32;
    };
    EXPECT_TRUE(footIsFilled({-0.1, -0.05, 0.1}));
    EXPECT_TRUE(footIsFilled({-40.0, -30.0, -20.0}));
    EXPECT_FALSE(footIsFilled({-0.05, 0.02, 0.1}));
    EXPECT_FALSE(footIsFilled({0.0, 0.0, 0.0}));
}

TEST(Dipstick, ShowsOnlyTheMarksThatThereAre) {
    const DipstickLevels bare{LevelLeft{0.5, 0.5, 0.5}, std::nullopt, std::nullopt};
    DipstickLevels usual = bare;
    usual.usualMark = 0.3;
    DipstickLevels limit = bare;
    limit.limitMark = 0.3;
    EXPECT_NE(drawn(bare, lightTokens()), drawn(usual, lightTokens()));
    EXPECT_NE(drawn(usual, lightTokens()), drawn(limit, lightTokens()));
}

}  // namespace
}  // namespace wm::ui

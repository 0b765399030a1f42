// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/drawing/application_icon.h"

#include <gtest/gtest.h>

#include <QImage>
#include <QPixmap>

#include "ui/theme/tokens.h"

namespace wm::ui {
namespace {

TEST(ApplicationIcon, IsTheMarkInHandOnPaper) {
    for (const int side : {16, 32, 48, 128}) {
        const QImage image = applicationIcon().pixmap(side, side).toImage();
        ASSERT_EQ(image.size(), QSize(side, side));
        int ink = 0;
        int paper = 0;
        for (int y = 0; y < side; ++y) {
            for (int x = 0; x < side; ++x) {
                const QColor pixel = image.pixelColor(x, y);
                ink += pixel.alpha() == 255 && pixel.value() < 96 ? 1 : 0;
                paper += pixel.rgb() == lightTokens().paper.rgb() ? 1 : 0;
            }
        }
        EXPECT_GT(ink, side * side / 20) << side;
        EXPECT_GT(paper, side * side / 5) << side;
    }
}

}  // namespace
}  // namespace wm::ui

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/drawing/joint_order.h"

#include <gtest/gtest.h>

#include <QApplication>
#include <QImage>
#include <QPainter>
#include <algorithm>
#include <cstdlib>
#include <numeric>

namespace wm::ui {
namespace {

using fastening::Sequence;

std::vector<int> sequenceOf(Sequence sequence, int count, int step = 0) {
    return tighteningSequence({sequence, count, step, {}});
}

TEST(TighteningSequence, FollowsTheWorkedExamples) {
    EXPECT_EQ(sequenceOf(Sequence::CrissCross, 4), (std::vector<int>{0, 2, 1, 3}));
    EXPECT_EQ(sequenceOf(Sequence::CrissCross, 5), (std::vector<int>{0, 2, 4, 1, 3}));
    EXPECT_EQ(sequenceOf(Sequence::CrissCross, 8), (std::vector<int>{0, 4, 2, 6, 1, 5, 3, 7}));
    EXPECT_EQ(sequenceOf(Sequence::EveryNth, 9, 3), (std::vector<int>{0, 3, 6, 1, 4, 7, 2, 5, 8}));
    // Four by two: the upper row is 0 to 3, the lower one 4 to 7.
    EXPECT_EQ(sequenceOf(Sequence::Spiral, 8), (std::vector<int>{1, 2, 6, 5, 4, 0, 3, 7}));
}

TEST(TighteningSequence, TakesEveryFastenerOnce) {
    for (const Sequence sequence : {Sequence::CrissCross, Sequence::Spiral, Sequence::EveryNth}) {
        for (int count = 1; count <= 72; ++count) {
            std::vector<int> places = sequenceOf(sequence, count, 1 + count % 7);
            std::sort(places.begin(), places.end());
            std::vector<int> all(static_cast<std::size_t>(count));
            std::iota(all.begin(), all.end(), 0);
            EXPECT_EQ(places, all) << static_cast<int>(sequence) << " of " << count;
        }
    }
}

TEST(TighteningSequence, CrissCrossGoesNearlyAcrossAtEachPair) {
    for (int count = 4; count <= 20; ++count) {
        const std::vector<int> places = sequenceOf(Sequence::CrissCross, count);
        for (std::size_t i = 0; i + 1 < places.size(); i += 2) {
            const int apart = std::abs(places[i] - places[i + 1]);
            EXPECT_GE(std::min(apart, count - apart), (count - 1) / 2) << count << " at " << i;
        }
    }
}

TEST(TighteningSequence, SpiralNeverComesBackTowardsTheMiddle) {
    for (int count = 2; count <= 20; ++count) {
        const int columns = (count + 1) / 2;
        int before = 0;
        for (const int place : sequenceOf(Sequence::Spiral, count)) {
            const int out = std::abs(2 * (place % columns) - (columns - 1));
            EXPECT_GE(out, before) << count;
            before = out;
        }
    }
}

TEST(TighteningSequence, SurvivesWildInput) {
    EXPECT_TRUE(sequenceOf(Sequence::CrissCross, -3).empty());
    EXPECT_TRUE(sequenceOf(Sequence::Any, 6).empty());
    EXPECT_EQ(sequenceOf(Sequence::EveryNth, 4, -5).size(), 4U);
    EXPECT_EQ(sequenceOf(Sequence::EveryNth, 4, 900).size(), 4U);
    EXPECT_LE(sequenceOf(Sequence::CrissCross, 2000000000).size(), 72U);
}

QImage drawn(const JointOrder& order) {
    QImage image(200, 200, QImage::Format_ARGB32_Premultiplied);
    image.fill(Qt::white);
    QPainter painter(&image);
    paintJointOrderOnPaper(painter, QRectF(0, 0, 200, 200), order, QApplication::font());
    return image;
}

TEST(JointOrderPicture, IsBlackOnPaperAndDiffersByOrder) {
    const std::vector<JointOrder> orders = {
        {Sequence::Any, 6, 0, {}},
        {Sequence::CrissCross, 6, 0, {}},
        {Sequence::Spiral, 6, 0, {}},
        {Sequence::EveryNth, 36, 3, {}},
        {Sequence::EveryNth, 36, 4, {}},
        {Sequence::Listed, 2, 0, {QStringLiteral("upper"), QStringLiteral("lower <b>")}}};
    std::vector<QImage> pictures;
    for (const JointOrder& order : orders) {
        const QImage picture = drawn(order);
        int dark = 0;
        for (int y = 0; y < 200; ++y) {
            for (int x = 0; x < 200; ++x) {
                const QColor pixel = picture.pixelColor(x, y);
                EXPECT_EQ(pixel.hsvSaturation(), 0);
                dark += pixel.value() < 64 ? 1 : 0;
            }
        }
        EXPECT_GT(dark, 150);
        for (const QImage& other : pictures) {
            EXPECT_NE(picture, other);
        }
        pictures.push_back(picture);
    }
}

}  // namespace
}  // namespace wm::ui

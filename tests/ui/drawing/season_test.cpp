// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/drawing/season.h"

#include <gtest/gtest.h>

#include <QApplication>
#include <QTest>
#include <algorithm>
#include <set>

#include "tests/ui/drawing/demo_season.h"
#include "ui/drawing/season_strip.h"

namespace wm::ui {
namespace {

const SeasonLayout::Bar& barOf(const SeasonLayout& layout, SeasonBarId id) {
    return *std::find_if(layout.bars.begin(), layout.bars.end(),
                         [&](const auto& bar) { return bar.id == id; });
}

TEST(Season, DatesLieOnOneScale) {
    const Season season = demoSeason();
    const SeasonLayout layout = layOutSeason(season, 1000.0, QApplication::font());
    const double day = layout.plot.width() / 133.0;  // 20 April to 30 August, both whole
    const auto& piston = barOf(layout, {1, 0});
    EXPECT_NEAR(piston.shape.left(), layout.plot.left() + 22 * day, 1e-6);   // 12 May
    EXPECT_NEAR(piston.likely, layout.plot.left() + 32 * day, 1e-6);         // 22 May
    EXPECT_NEAR(piston.shape.right(), layout.plot.left() + 50 * day, 1e-6);  // 8 June, whole
}

TEST(Season, WeeksAreIsoWeeks) {
    const SeasonLayout layout = layOutSeason(demoSeason(), 1400.0, QApplication::font());
    ASSERT_FALSE(layout.weeks.empty());
    EXPECT_EQ(layout.weeks.front().text, QStringLiteral("17"));  // Monday 20 April 2026
    EXPECT_NEAR(layout.weeks.front().x, layout.plot.left(), 1e-6);
}

TEST(Season, NothingOverlapsInAnyWidth) {
    for (const double width : {320.0, 640.0, 1000.0, 1900.0}) {
        const SeasonLayout layout = layOutSeason(demoSeason(), width, QApplication::font());
        for (std::size_t a = 0; a < layout.bars.size(); ++a) {
            for (std::size_t b = a + 1; b < layout.bars.size(); ++b) {
                const QRectF one = layout.bars[a].shape.united(layout.bars[a].label);
                const QRectF other = layout.bars[b].shape.united(layout.bars[b].label);
                EXPECT_FALSE(one.intersects(other)) << width << ": bars " << a << " and " << b;
            }
        }
        for (std::size_t a = 0; a < layout.posts.size(); ++a) {
            for (std::size_t b = a + 1; b < layout.posts.size(); ++b) {
                EXPECT_FALSE(layout.posts[a].label.intersects(layout.posts[b].label)) << width;
            }
        }
    }
}

TEST(Season, EveryBarIsHitWhereItIsDrawnAndNowhereElse) {
    const SeasonLayout layout = layOutSeason(demoSeason(), 1000.0, QApplication::font());
    ASSERT_EQ(layout.bars.size(), 7U);
    for (const SeasonLayout::Bar& bar : layout.bars) {
        EXPECT_EQ(seasonBarAt(layout, bar.shape.center()), bar.id);
        EXPECT_EQ(seasonBarAt(layout, bar.label.center()), bar.id);
    }
    EXPECT_EQ(seasonBarAt(layout, QPointF(5.0, 5.0)), std::nullopt);
    EXPECT_EQ(seasonBarAt(layout, QPointF(-1.0, 1e6)), std::nullopt);
}

TEST(Season, WhatIsLongOverdueStandsAtTheLeftEdge) {
    Season season = demoSeason();
    const auto old = dayOf2026(1, 5);
    season.groups[0].bars[0] = {
        QStringLiteral("linkage"), old, old, old, {MarkState::Kind::Overdue, 0.0, false}, {}};
    const SeasonLayout layout = layOutSeason(season, 1000.0, QApplication::font());
    EXPECT_DOUBLE_EQ(barOf(layout, {0, 0}).shape.left(), layout.plot.left());
    EXPECT_GE(barOf(layout, {0, 0}).shape.width(), 6.0);
}

TEST(Season, WhatBeginsAfterItsEndIsLeftOut) {
    Season season = demoSeason();
    season.groups[1].bars[2].early = season.last.plusDays(1);
    const SeasonLayout layout = layOutSeason(season, 1000.0, QApplication::font());
    EXPECT_EQ(layout.bars.size(), 6U);
}

TEST(Season, TodayIsShownOnlyInsideTheSeason) {
    Season season = demoSeason();
    const auto isToday = [](const auto& post) { return post.today; };
    const SeasonLayout inside = layOutSeason(season, 1000.0, QApplication::font());
    EXPECT_EQ(std::count_if(inside.posts.begin(), inside.posts.end(), isToday), 1);
    season.today = season.first.plusDays(-1);
    const SeasonLayout outside = layOutSeason(season, 1000.0, QApplication::font());
    EXPECT_EQ(std::count_if(outside.posts.begin(), outside.posts.end(), isToday), 0);
}

TEST(Season, SurvivesAnEmptyOrTinyStrip) {
    Season season{dayOf2026(5, 1), dayOf2026(5, 1), dayOf2026(5, 1), {}, {}};
    EXPECT_GT(layOutSeason(season, 20.0, QApplication::font()).size.height(), 0.0);
    EXPECT_TRUE(layOutSeason(season, 1000.0, QApplication::font()).bars.empty());
}

class SeasonStripWidget : public testing::Test {
  protected:
    void SetUp() override {
        strip.setSeason(demoSeason());
        strip.resize(900, strip.heightForWidth(900));
        strip.show();
        ASSERT_TRUE(QTest::qWaitForWindowActive(&strip));
    }
    SeasonStrip strip;
};

TEST_F(SeasonStripWidget, ArrowsWalkByDate) {
    QTest::keyClick(&strip, Qt::Key_Home);
    EXPECT_EQ(strip.current(), (SeasonBarId{0, 0}));
    QTest::keyClick(&strip, Qt::Key_Right);
    EXPECT_EQ(strip.current(), (SeasonBarId{1, 0}));
    EXPECT_EQ(strip.accessibleDescription(), QStringLiteral("piston: 12 May to 8 Jun, likely 22 May"));
    QTest::keyClick(&strip, Qt::Key_End);
    QTest::keyClick(&strip, Qt::Key_Down);
    EXPECT_EQ(strip.current(), (SeasonBarId{1, 2}));
}

TEST_F(SeasonStripWidget, MouseChoosesWhatItPointsAt) {
    const SeasonLayout layout = layOutSeason(demoSeason(), 900.0, strip.font());
    QTest::mouseClick(&strip, Qt::LeftButton, {}, barOf(layout, {2, 1}).shape.center().toPoint());
    EXPECT_EQ(strip.current(), (SeasonBarId{2, 1}));
    QTest::mouseClick(&strip, Qt::LeftButton, {}, QPoint(2, 2));
    EXPECT_EQ(strip.current(), std::nullopt);
}

TEST_F(SeasonStripWidget, CurrentBarIsSeen) {
    QTest::keyClick(&strip, Qt::Key_Home);
    const QImage first = strip.grab().toImage();
    QTest::keyClick(&strip, Qt::Key_Right);
    EXPECT_NE(strip.grab().toImage(), first);
}

}  // namespace
}  // namespace wm::ui

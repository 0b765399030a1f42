// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/drawing/opening_picture.h"

#include <gtest/gtest.h>

#include <QApplication>
#include <QImage>
#include <QPainter>

namespace wm::ui {
namespace {

using MarkKind = MarkState::Kind;

std::vector<OpeningStep> rearEnd() {
    return {{QStringLiteral("rear wheel"), 11, 0, false, {}},
            {QStringLiteral("linkage"),
             24,
             1,
             false,
             {{QStringLiteral("linkage"), {MarkKind::Overdue, 0.0, false}}}},
            {{},
             0,
             1,
             true,
             {{QStringLiteral("wheel bearings"), {MarkKind::BeforeEvent, 40.0, false}},
              {QStringLiteral("tyre"), {MarkKind::InHand, 0.0, false}}}},
            {QStringLiteral("seat"), 2, 0, false, {}}};
}

TEST(OpeningPicture, StepsHangOnWhatComesOffBefore) {
    const OpeningLayout layout = layOutOpening(rearEnd(), 500.0, QApplication::font());
    ASSERT_EQ(layout.rows.size(), 4U);
    EXPECT_EQ(layout.rows[0].parent, std::nullopt);
    EXPECT_EQ(layout.rows[1].parent, std::optional<std::size_t>(0));
    EXPECT_EQ(layout.rows[2].parent, std::optional<std::size_t>(0));
    EXPECT_EQ(layout.rows[3].parent, std::nullopt);
    EXPECT_GT(layout.rows[1].label.left(), layout.rows[0].label.left());
}

TEST(OpeningPicture, MinutesStandInOneColumn) {
    const OpeningLayout layout = layOutOpening(rearEnd(), 500.0, QApplication::font());
    for (const OpeningLayout::Row& row : layout.rows) {
        EXPECT_DOUBLE_EQ(row.minutes.right(), layout.rows[0].minutes.right());
        EXPECT_GE(row.minutes.left(), row.label.right());
    }
}

TEST(OpeningPicture, JobsNeverOverlap) {
    for (const double width : {180.0, 300.0, 600.0}) {
        const OpeningLayout layout = layOutOpening(rearEnd(), width, QApplication::font());
        ASSERT_EQ(layout.jobs.size(), 3U);
        for (std::size_t a = 0; a < layout.jobs.size(); ++a) {
            for (std::size_t b = a + 1; b < layout.jobs.size(); ++b) {
                EXPECT_FALSE(layout.jobs[a].area.intersects(layout.jobs[b].area)) << width;
            }
        }
    }
}

TEST(OpeningPicture, WrapsJobsRatherThanCutThem) {
    const OpeningLayout wide = layOutOpening(rearEnd(), 600.0, QApplication::font());
    const OpeningLayout narrow =
        layOutOpening(rearEnd(), wide.jobs[1].area.right() + 5.0, QApplication::font());
    EXPECT_GT(narrow.size.height(), wide.size.height());
    EXPECT_EQ(narrow.jobs[1].text, QStringLiteral("wheel bearings"));
    EXPECT_GT(narrow.jobs[2].area.top(), narrow.jobs[1].area.top());
}

TEST(OpeningPicture, SurvivesNothingAndNonsense) {
    EXPECT_EQ(layOutOpening({}, 500.0, QApplication::font()).size.height(), 0.0);
    std::vector<OpeningStep> odd = rearEnd();
    odd[0].depth = 9;
    odd[3].depth = -4;
    const OpeningLayout layout = layOutOpening(odd, 10.0, QApplication::font());
    QImage image(100, 200, QImage::Format_ARGB32_Premultiplied);
    image.fill(Qt::white);
    const QImage blank = image;
    QPainter painter(&image);
    paintOpening(painter, QPointF(), odd, layout, QApplication::font(), printTokens());
    painter.end();
    EXPECT_NE(image, blank);
}

}  // namespace
}  // namespace wm::ui

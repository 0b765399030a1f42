// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/ui/drawing/parts_gallery.h"

#include <gtest/gtest.h>

#include <QApplication>
#include <QFileInfo>
#include <QPageSize>
#include <QPdfWriter>
#include <string>

#include "tests/ui/drawing/demo_season.h"
#include "tests/ui/drawing/reference_image.h"
#include "ui/drawing/dipstick.h"
#include "ui/drawing/glyph.h"
#include "ui/drawing/joint_order.h"
#include "ui/drawing/opening_picture.h"
#include "ui/drawing/season.h"
#include "ui/drawing/wedge.h"
#include "ui/theme/type.h"

namespace wm::ui {
namespace {

void drawMarks(QPainter& painter, const Tokens& tokens) {
    using Kind = MarkState::Kind;
    double y = 16.0;
    for (const int side : {16, 24, 48}) {
        double x = 16.0;
        for (const MarkState& state :
             {MarkState{Kind::InHand, 0.0, false}, MarkState{Kind::BeforeEvent, 30.0, false},
              MarkState{Kind::BeforeEvent, 80.0, true}, MarkState{Kind::Overdue, 0.0, false},
              MarkState{Kind::NoRecord, 0.0, false}}) {
            paintMark(painter, QRectF(x, y, side, side), state, tokens);
            x += side + 16;
        }
        y += side + 8;
    }
}

void drawFigures(QPainter& painter, const Tokens& tokens) {
    double y = 40.0;
    for (const auto size : {FigureSize::InText, FigureSize::Noted, FigureSize::Large}) {
        painter.setFont(figureFont(QApplication::font(), size));
        painter.setPen(tokens.ink);
        const QString text = QStringLiteral("110");
        painter.drawText(QPointF(380.0, y), text);
        const QFontMetricsF metrics(painter.font());
        const QPointF end(380.0 + metrics.horizontalAdvance(text), y);
        paintWedge(painter, wedgeBehind(end, metrics), tokens);
        painter.setFont(QApplication::font());
        painter.drawText(end + QPointF(wedgeAdvance(metrics) + 6.0, 0.0), QStringLiteral("N·m"));
        y += size == FigureSize::InText ? 30.0 : 46.0;
    }
}

void drawDipsticks(QPainter& painter, const Tokens& tokens) {
    using Left = DipstickLevels::Left;
    const DipstickLevels cases[] = {
        {Left{0.82, 0.86, 0.90}, 0.25, 0.0}, {Left{0.30, 0.48, 0.62}, 0.25, 0.0},
        {Left{-0.05, 0.08, 0.2}, 0.25, 0.0}, {Left{-0.1, -0.04, 0.1}, 0.25, 0.0},
        {std::nullopt, 0.25, 0.0},           {Left{0.5, 0.5, 0.5}, 0.0, std::nullopt}};
    double x = 620.0;
    for (const DipstickLevels& levels : cases) {
        paintDipstick(painter, QRectF(x, 12.0, 40.0, 120.0), levels, tokens);
        paintDipstick(painter, QRectF(x, 140.0, 40.0, 56.0), levels, tokens);
        x += 56.0;
    }
}

void drawSeason(QPainter& painter, const Tokens& tokens) {
    const Season season = demoSeason();
    const SeasonLayout layout = layOutSeason(season, 960.0, QApplication::font());
    paintSeason(painter, QPointF(20.0, 220.0), season, layout, QApplication::font(), tokens,
                SeasonBarId{1, 0});
}

void drawOpening(QPainter& painter, const Tokens& tokens) {
    using Kind = MarkState::Kind;
    const std::vector<OpeningStep> steps = {
        {QStringLiteral("rear wheel"), 11, 0, false, {}},
        {QStringLiteral("linkage"), 24, 1, false, {{QStringLiteral("linkage"), {Kind::Overdue, 0.0, false}}}},
        {QStringLiteral("shock"), 14, 2, false, {{QStringLiteral("shock oil"), {Kind::InHand, 0.0, false}}}},
        {{},
         0,
         1,
         true,
         {{QStringLiteral("wheel bearings"), {Kind::BeforeEvent, 40.0, false}},
          {QStringLiteral("tyre"), {Kind::InHand, 0.0, false}},
          {QStringLiteral("rear pads"), {Kind::NoRecord, 0.0, false}}}},
        {QStringLiteral("seat and tank"),
         6,
         0,
         false,
         {{QStringLiteral("plug"), {Kind::BeforeEvent, 60.0, true}}}}};
    const OpeningLayout layout = layOutOpening(steps, 460.0, QApplication::font());
    paintOpening(painter, QPointF(20.0, 430.0), steps, layout, QApplication::font(), tokens);
}

void drawJointOrders(QPainter& painter, const Tokens& tokens) {
    using fastening::Sequence;
    const QFont font = QApplication::font();
    paintJointOrder(painter, QRectF(20, 600, 150, 150), {Sequence::CrissCross, 4, 0, {}}, font, tokens);
    paintJointOrder(painter, QRectF(190, 600, 150, 150), {Sequence::CrissCross, 5, 0, {}}, font, tokens);
    paintJointOrder(painter, QRectF(360, 600, 150, 150), {Sequence::CrissCross, 8, 0, {}}, font, tokens);
    paintJointOrder(painter, QRectF(530, 600, 220, 150), {Sequence::Spiral, 8, 0, {}}, font, tokens);
    paintJointOrder(painter, QRectF(530, 430, 220, 150), {Sequence::Spiral, 10, 0, {}}, font, tokens);
    paintJointOrder(painter, QRectF(770, 560, 220, 220), {Sequence::EveryNth, 36, 3, {}}, font, tokens);
    const std::vector<QString> names = {QStringLiteral("axle, by hand"), QStringLiteral("axle nut"),
                                        QStringLiteral("right pinch bolts"),
                                        QStringLiteral("left pinch bolts")};
    paintJointOrder(painter, QRectF(790, 430, 200, 120), {Sequence::Listed, 4, 0, names}, font, tokens);
    paintJointOrder(painter, QRectF(20, 760, 120, 120), {Sequence::CrissCross, 14, 0, {}}, font, tokens);
    paintJointOrder(painter, QRectF(160, 760, 120, 120), {Sequence::Any, 6, 0, {}}, font, tokens);
}

void drawEverything(QPainter& painter, const Tokens& tokens) {
    drawMarks(painter, tokens);
    drawFigures(painter, tokens);
    drawDipsticks(painter, tokens);
    drawSeason(painter, tokens);
    drawOpening(painter, tokens);
    drawJointOrders(painter, tokens);
}

TEST(PartsGallery, DrawsEveryPartForTheEye) {
    struct Picture {
        const char* name;
        Tokens tokens;
        double scale;
    };
    for (const Picture& wanted :
         {Picture{"light", lightTokens(), 1.0}, Picture{"dark", darkTokens(), 1.0},
          Picture{"paper", printTokens(), 1.0}, Picture{"light-150", lightTokens(), 1.5}}) {
        const QImage image =
            galleryPicture(QSize(1010, 900), wanted.tokens, wanted.scale,
                           [&wanted](QPainter& painter) { drawEverything(painter, wanted.tokens); });
        const QString path = pictureFolder() + QStringLiteral("parts-") + QString::fromLatin1(wanted.name) +
                             QStringLiteral(".png");
        EXPECT_TRUE(image.save(path)) << path.toStdString();
    }
}

// As a print does it: one unit is a pixel of 1/96 inch, fonts are sized in pixels.
TEST(PartsGallery, DrawsEveryPartOnPaper) {
    const QString path = pictureFolder() + QStringLiteral("parts.pdf");
    const QFont before = QApplication::font();
    QFont font = before;
    font.setPixelSize(13);
    QApplication::setFont(font);
    QPdfWriter writer(path);
    writer.setPageSize(QPageSize(QPageSize::A4));
    writer.setPageOrientation(QPageLayout::Landscape);
    writer.setResolution(1200);
    {
        QPainter painter(&writer);
        const double width = painter.window().width();
        painter.scale(width / 1060.0, width / 1060.0);
        drawEverything(painter, printTokens());
    }
    QApplication::setFont(before);
    EXPECT_GT(QFileInfo(path).size(), 10000);
}

}  // namespace
}  // namespace wm::ui

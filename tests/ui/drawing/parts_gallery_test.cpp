// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/ui/drawing/parts_gallery.h"

#include <gtest/gtest.h>

#include <QApplication>
#include <string>
#include <utility>

#include "tests/ui/drawing/demo_season.h"
#include "tests/ui/drawing/reference_image.h"
#include "ui/drawing/dipstick.h"
#include "ui/drawing/glyph.h"
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

TEST(PartsGallery, DrawsEveryPartForTheEye) {
    const std::pair<QString, Tokens> grounds[] = {{QStringLiteral("light"), lightTokens()},
                                                  {QStringLiteral("dark"), darkTokens()},
                                                  {QStringLiteral("paper"), printTokens()}};
    for (const auto& [name, tokens] : grounds) {
        const QImage image =
            galleryPicture(QSize(1000, 720), tokens, 1.0, [&tokens = tokens](QPainter& painter) {
                drawMarks(painter, tokens);
                drawFigures(painter, tokens);
                drawDipsticks(painter, tokens);
                drawSeason(painter, tokens);
            });
        const QString path = pictureFolder() + QStringLiteral("parts-") + name + QStringLiteral(".png");
        EXPECT_TRUE(image.save(path)) << path.toStdString();
    }
}

}  // namespace
}  // namespace wm::ui

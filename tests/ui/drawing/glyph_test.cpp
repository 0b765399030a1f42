// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/drawing/glyph.h"

#include <gtest/gtest.h>

#include <QImage>
#include <QPainter>
#include <algorithm>
#include <string>
#include <utility>
#include <vector>

#include "tests/ui/drawing/colour_vision.h"
#include "tests/ui/drawing/reference_image.h"
#include "ui/theme/contrast.h"

namespace wm::ui {
namespace {

using MarkKind = MarkState::Kind;

struct Ground {
    std::string name;
    Tokens tokens;
};

std::vector<Ground> grounds() {
    return {{"light", lightTokens()}, {"dark", darkTokens()}, {"paper", printTokens()}};
}

std::vector<MarkState> everyState() {
    return {{MarkKind::InHand, 0.0, false},       {MarkKind::BeforeEvent, 30.0, false},
            {MarkKind::BeforeEvent, 55.0, false}, {MarkKind::BeforeEvent, 80.0, false},
            {MarkKind::Overdue, 0.0, false},      {MarkKind::NoRecord, 0.0, false},
            {MarkKind::MayBeOver, 0.0, false},    {MarkKind::InHand, 0.0, true},
            {MarkKind::Overdue, 0.0, true}};
}

QImage drawn(const MarkState& state, int side, const Tokens& tokens) {
    QImage image(side, side, QImage::Format_ARGB32_Premultiplied);
    image.fill(tokens.paper);
    QPainter painter(&image);
    paintMark(painter, QRectF(0, 0, side, side), state, tokens);
    return image;
}

TEST(Mark, LooksAsItsReference) {
    const auto states = everyState();
    for (const int side : {16, 24, 48}) {
        for (const Ground& ground : grounds()) {
            QImage strip(side * static_cast<int>(states.size()), side, QImage::Format_ARGB32_Premultiplied);
            strip.fill(ground.tokens.paper);
            QPainter painter(&strip);
            for (std::size_t i = 0; i < states.size(); ++i) {
                const QRectF place(side * static_cast<int>(i), 0, side, side);
                ground.name == "paper" ? paintMarkOnPaper(painter, place, states[i])
                                       : paintMark(painter, place, states[i], ground.tokens);
            }
            painter.end();
            const QString name = QStringLiteral("mark-%1-%2").arg(ground.name.c_str()).arg(side);
            EXPECT_EQ(differenceFromReference(strip, name), "");
        }
    }
}

// The least share of pixels by which two different standings differ clearly (L*a*b* distance above 20, some
// nine times the just noticeable one), to every eye, at every size, on every ground.
constexpr double kClearly = 20.0;
constexpr double kLeastShare = 0.08;

TEST(Mark, StandingsRemainApartToEveryEye) {
    auto states = everyState();
    states.resize(7);
    double least = 1.0;
    for (const int side : {16, 24, 48}) {
        for (const Ground& ground : grounds()) {
            for (const Vision vision :
                 {Vision::Full, Vision::Protanopia, Vision::Deuteranopia, Vision::Tritanopia, Vision::Grey}) {
                for (std::size_t a = 0; a < states.size(); ++a) {
                    for (std::size_t b = a + 1; b < states.size(); ++b) {
                        if (states[a].kind == states[b].kind) {
                            continue;
                        }
                        const double share =
                            shareApart(drawn(states[a], side, ground.tokens),
                                       drawn(states[b], side, ground.tokens), vision, kClearly);
                        EXPECT_GE(share, kLeastShare) << ground.name << ' ' << side << " px: state " << a
                                                      << " and " << b << ", eye " << static_cast<int>(vision);
                        least = std::min(least, share);
                    }
                }
            }
        }
    }
    RecordProperty("leastShare", std::to_string(least));
}

TEST(Mark, PutOffIsSeenAtEverySize) {
    for (const int side : {16, 24, 48}) {
        for (const MarkKind kind : {MarkKind::InHand, MarkKind::BeforeEvent, MarkKind::MayBeOver,
                                    MarkKind::Overdue, MarkKind::NoRecord}) {
            const QImage without = drawn({kind, 80.0, false}, side, lightTokens());
            const QImage with = drawn({kind, 80.0, true}, side, lightTokens());
            EXPECT_GE(shareApart(without, with, Vision::Grey, kClearly), 0.02) << side;
        }
    }
}

// Machado et al. keep the greys: each row of a matrix sums to 1. One wrong figure would show here.
TEST(ColourVision, LeavesGreysAlone) {
    for (const Vision vision : {Vision::Protanopia, Vision::Deuteranopia, Vision::Tritanopia, Vision::Grey}) {
        const QColor grey(120, 120, 120);
        EXPECT_LT(colourDistance(seenBy(vision, grey), grey), 0.5);
    }
}

TEST(ColourVision, ConfusesWhatThatEyeConfuses) {
    const QColor red("#B03030");
    const QColor olive("#6A6A20");
    EXPECT_LT(colourDistance(seenBy(Vision::Deuteranopia, red), seenBy(Vision::Deuteranopia, olive)),
              0.5 * colourDistance(red, olive));
}

// The flat at the top of the nut at rest lies on the pixel grid, and its line has at least 1.3 px of ink.
TEST(Mark, LinesLieOnTheGridAndAreNeverTooThin) {
    for (const int side : {16, 20, 24, 32, 48}) {
        QImage image(side, side, QImage::Format_ARGB32_Premultiplied);
        image.fill(Qt::transparent);
        QPainter painter(&image);
        paintMark(painter, QRectF(0, 0, side, side), {MarkKind::InHand, 0.0, false}, lightTokens());
        painter.end();
        const int column = static_cast<int>(8.0 * side / 24.0);
        double ink = 0.0;
        double first = 0.0;
        for (int y = 0; y < side * 14 / 24; ++y) {
            const double here = image.pixelColor(column, y).alphaF();
            first = first == 0.0 ? here : first;
            ink += here;
            if (ink > 0.0 && here == 0.0) {
                break;
            }
        }
        EXPECT_GT(first, 0.95) << side;
        EXPECT_GE(ink, 1.25) << side;
    }
}

TEST(Mark, TurnIsHeldWithinItsStanding) {
    const Tokens tokens = lightTokens();
    EXPECT_EQ(drawn({MarkKind::BeforeEvent, -10.0, false}, 24, tokens),
              drawn({MarkKind::BeforeEvent, kLeastTurn, false}, 24, tokens));
    EXPECT_EQ(drawn({MarkKind::BeforeEvent, 200.0, false}, 24, tokens),
              drawn({MarkKind::BeforeEvent, kMostTurn, false}, 24, tokens));
}

TEST(Mark, StaysInsideItsSquare) {
    for (const MarkState& state : everyState()) {
        for (const int side : {16, 24, 48}) {
            QImage image(side + 20, side + 20, QImage::Format_ARGB32_Premultiplied);
            image.fill(Qt::transparent);
            QPainter painter(&image);
            paintMark(painter, QRectF(10, 10, side, side), state, lightTokens());
            painter.end();
            int outside = 0;
            for (int i = 0; i < side + 20; ++i) {
                outside = std::max({outside, image.pixelColor(i, 9).alpha(), image.pixelColor(9, i).alpha(),
                                    image.pixelColor(i, side + 10).alpha(),
                                    image.pixelColor(side + 10, i).alpha()});
            }
            EXPECT_EQ(outside, 0) << side << " px, kind " << static_cast<int>(state.kind)
                                  << (state.putOff ? ", put off" : "");
        }
    }
}

TEST(Mark, ColoursReachThreeToOne) {
    for (const Tokens& tokens : {lightTokens(), darkTokens(), printTokens()}) {
        for (const QColor& ground : {tokens.paper, tokens.sheet, laidOver(tokens.select, tokens.sheet)}) {
            for (const QColor& color :
                 {tokens.ink, tokens.pencil, tokens.due, tokens.over, tokens.unmarked}) {
                EXPECT_GE(contrastRatio(color, ground), kGraphicsContrast);
            }
        }
    }
}

TEST(MarkIcon, IsDrawnAnewForADenserScreen) {
    const MarkState state{MarkKind::BeforeEvent, 50.0, false};
    QPixmap pixmap = markIcon(state, lightTokens()).pixmap(QSize(16, 16), 2.0);
    ASSERT_EQ(pixmap.size(), QSize(32, 32));
    QImage expected(32, 32, QImage::Format_ARGB32_Premultiplied);
    expected.fill(Qt::transparent);
    QPainter painter(&expected);
    paintMark(painter, QRectF(0, 0, 32, 32), state, lightTokens());
    painter.end();
    pixmap.setDevicePixelRatio(1.0);
    EXPECT_EQ(pixmap.toImage().convertToFormat(expected.format()), expected);
}

}  // namespace
}  // namespace wm::ui

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/theme/theme.h"

#include <gtest/gtest.h>

#include <QApplication>
#include <QHeaderView>
#include <QImage>
#include <QListView>
#include <QPushButton>
#include <QStringListModel>
#include <QTableWidget>
#include <QTest>
#include <QTreeView>
#include <vector>

#include "ui/theme/row_delegate.h"
#include "ui/theme/type.h"

namespace wm::ui {
namespace {

class Theme : public testing::Test {
  protected:
    void TearDown() override { applyTheme(*qApp, ThemeChoice::Light); }
};

TEST_F(Theme, GoesThereAndBack) {
    applyTheme(*qApp, ThemeChoice::Dark);
    EXPECT_EQ(QApplication::palette().color(QPalette::Window), darkTokens().paper);
    EXPECT_EQ(tokensFor(QApplication::palette()).ink, darkTokens().ink);
    applyTheme(*qApp, ThemeChoice::Light);
    EXPECT_EQ(QApplication::palette().color(QPalette::Window), lightTokens().paper);
    EXPECT_EQ(tokensFor(QApplication::palette()).ink, lightTokens().ink);
}

TEST_F(Theme, SystemForgetsAnEarlierChoice) {
    applyTheme(*qApp, ThemeChoice::System);
    const QColor first = QApplication::palette().color(QPalette::Window);
    applyTheme(*qApp, ThemeChoice::Dark);
    applyTheme(*qApp, ThemeChoice::System);
    EXPECT_EQ(QApplication::palette().color(QPalette::Window), first);
}

TEST_F(Theme, StyleSheetHasEveryPlaceFilled) {
    const QString sheet = styleSheetFrom(lightTokens());
    EXPECT_FALSE(sheet.contains(QLatin1Char('@'))) << sheet.toStdString();
}

TEST_F(Theme, FocusOfAButtonIsSeen) {
    applyTheme(*qApp, ThemeChoice::Light);
    QWidget window;
    QPushButton button(QStringLiteral("Record"), &window);
    button.resize(button.sizeHint());
    window.resize(200, 80);
    window.show();
    window.activateWindow();
    ASSERT_TRUE(QTest::qWaitForWindowActive(&window));
    button.clearFocus();
    const QImage without = button.grab().toImage();
    button.setFocus(Qt::TabFocusReason);
    ASSERT_TRUE(button.hasFocus());
    EXPECT_NE(button.grab().toImage(), without);
}

class ChosenRow : public Theme {
  protected:
    // The pixels of the second row, from its left edge, at its middle.
    static std::vector<QRgb> pixels(QAbstractItemView& view, bool focused) {
        QStringListModel model({QStringLiteral("fork oil"), QStringLiteral("linkage")});
        view.setModel(&model);
        view.setItemDelegate(new RowDelegate(&view));
        view.resize(200, 100);
        view.setCurrentIndex(model.index(1, 0));
        view.show();
        view.activateWindow();
        EXPECT_TRUE(QTest::qWaitForWindowActive(&view));
        focused ? view.setFocus() : view.clearFocus();
        const QImage image = view.viewport()->grab().toImage();
        const int y = view.visualRect(model.index(1, 0)).center().y();
        std::vector<QRgb> row;
        for (int x = 0; x < 5; ++x) {
            row.push_back(image.pixelColor(x, y).rgb());
        }
        view.setModel(nullptr);
        return row;
    }
};

TEST_F(ChosenRow, CarriesABarOfThreePixels) {
    for (const auto choice : {ThemeChoice::Light, ThemeChoice::Dark}) {
        applyTheme(*qApp, choice);
        const Tokens tokens = tokensOf(choice);
        const QRgb ink = tokens.ink.rgb();
        const QRgb tint = laidOver(tokens.select, tokens.sheet).rgb();
        QListView list;
        EXPECT_EQ(pixels(list, true), (std::vector<QRgb>{ink, ink, ink, tint, tint}));
        QTreeView tree;
        tree.setHeaderHidden(true);
        EXPECT_EQ(pixels(tree, true), (std::vector<QRgb>{ink, ink, ink, tint, tint}));
    }
}

TEST_F(ChosenRow, ShowsThatTheListLostTheFocus) {
    applyTheme(*qApp, ThemeChoice::Light);
    QListView list;
    const QRgb bar = pixels(list, false).front();
    EXPECT_NE(bar, lightTokens().ink.rgb());
    EXPECT_NE(bar, laidOver(lightTokens().select, lightTokens().sheet).rgb());
}

TEST_F(ChosenRow, StandsAtTheFirstColumnOnScreen) {
    applyTheme(*qApp, ThemeChoice::Light);
    QTableWidget table(1, 3);
    table.setSelectionBehavior(QAbstractItemView::SelectRows);
    table.setItemDelegate(new RowDelegate(&table));
    table.horizontalHeader()->moveSection(2, 0);
    table.horizontalHeader()->hideSection(2);
    table.verticalHeader()->hide();
    table.resize(400, 100);
    table.show();
    table.activateWindow();
    ASSERT_TRUE(QTest::qWaitForWindowActive(&table));
    table.setCurrentCell(0, 1);
    table.setFocus();
    const QImage image = table.viewport()->grab().toImage();
    const int y = table.visualRect(table.model()->index(0, 0)).center().y();
    EXPECT_EQ(image.pixelColor(1, y).rgb(), lightTokens().ink.rgb());
    const int second = table.visualRect(table.model()->index(0, 1)).left();
    EXPECT_NE(image.pixelColor(second + 1, y).rgb(), lightTokens().ink.rgb());
}

TEST(Type, SizesFollowTheBase) {
    QFont base;
    base.setPointSizeF(10.0);
    EXPECT_DOUBLE_EQ(pageTitleFont(base).pointSizeF(), 15.0);
    EXPECT_DOUBLE_EQ(sectionFont(base).pointSizeF(), 11.5);
    EXPECT_DOUBLE_EQ(figureFont(base, FigureSize::Noted).pointSizeF(), 13.0);
    EXPECT_DOUBLE_EQ(figureFont(base, FigureSize::Large).pointSizeF(), 24.0);
    base.setPointSizeF(8.0);
    EXPECT_GE(noteFont(base).pointSizeF(), 8.0);
}

TEST(Type, DigitsStandInColumns) {
    const QFontMetricsF metrics(figureFont(QApplication::font(), FigureSize::Noted));
    for (const QChar digit : QStringLiteral("023456789")) {
        EXPECT_DOUBLE_EQ(metrics.horizontalAdvance(digit), metrics.horizontalAdvance(QLatin1Char('1')));
    }
}

}  // namespace
}  // namespace wm::ui

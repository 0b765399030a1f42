// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// Another season beside the likely one, by the keys alone.
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QRegularExpression>

#include "tests/ui/window.h"
#include "ui/tables/row_table.h"

namespace wm::ui {
namespace {

class WhatIfViewTest : public WindowTest {
  protected:
    void SetUp() override {
        openOn(Garage::Fill::Season);
        heron_ = garage_->machine("Heron 250");
        garage_->workbench().choose(heron_);
        window_->goTo(PageId::Machine);
        child("fitted")->setFocus();
        press(Qt::Key_I);
    }
    void choose(const char* name, int at) {
        auto* box = child<QComboBox>(name);
        box->setCurrentIndex(at);
        emit box->activated(at);
    }
    QString words(const char* name) { return child<QLabel>(name)->text(); }
    std::size_t rows() { return child<RowTable>("what-if-rows")->rows().rows().size(); }

    MachineId heron_;
};

TEST_F(WhatIfViewTest, StandsInTheHistorysPlaceAndBeginsWithNothingSupposed) {
    EXPECT_TRUE(child("what-if")->isVisible());
    EXPECT_EQ(QApplication::focusWidget()->objectName(), QStringLiteral("what-if-ridden"));
    EXPECT_EQ(rows(), 0U);
    EXPECT_FALSE(child("what-if-then")->isVisible());
    EXPECT_TRUE(words("what-if-now").startsWith(QStringLiteral("As it is: ")));
}

TEST_F(WhatIfViewTest, RiddenMoreOftenBringsJobsForwardAndKeepsNothing) {
    const auto* before = garage_->workbench().book().get();
    choose("what-if-ridden", 4);
    EXPECT_GT(rows(), 3U);
    EXPECT_TRUE(child("what-if-then")->isVisible());
    EXPECT_EQ(words("what-if-then"),
              QStringLiteral("If so: the same for the machine as a whole; other days for %1 of its jobs.")
                  .arg(rows()));
    EXPECT_EQ(garage_->workbench().book().get(), before) << "nothing is written";
    const auto& first = child<RowTable>("what-if-rows")->rows().rows().front().cells;
    EXPECT_LE(first[3].sort.toInt(), first[1].sort.toInt()) << "no later than as it is";
    choose("what-if-ridden", 0);
    EXPECT_EQ(rows(), 0U);
}

TEST_F(WhatIfViewTest, RiddenMoreOftenLowersTheChanceOfTheMachine) {
    garage_->workbench().choose(garage_->machine("Sorrel 450"));
    choose("what-if-ridden", 4);
    const auto percent = [this](const char* name) {
        const auto found = QRegularExpression(QStringLiteral("(?:nothing|no more) [a-z0-9 ]+: (\\d+) %;"))
                               .match(words(name));
        EXPECT_TRUE(found.hasMatch()) << words(name).toStdString();
        return found.captured(1).toInt();
    };
    EXPECT_LT(percent("what-if-then"), percent("what-if-now"));
    EXPECT_GT(percent("what-if-then"), 0);
}

TEST_F(WhatIfViewTest, OneRaceMoreWantsADayAhead) {
    auto* day = child<QLineEdit>("what-if-event");
    day->setFocus();
    type(QStringLiteral("2020-05-05"));
    EXPECT_TRUE(words("what-if-fault").contains(QStringLiteral("ahead")));
    EXPECT_EQ(rows(), 0U);
    day->clear();
    type(QStringLiteral("+3"));
    EXPECT_EQ(words("what-if-fault"), QString());
    EXPECT_GT(rows(), 0U);
    day->clear();
    type(QStringLiteral("31.2."));
    EXPECT_FALSE(words("what-if-fault").isEmpty());
}

TEST_F(WhatIfViewTest, EscapeGoesBackToTheHistory) {
    choose("what-if-ground", 4);
    child<QComboBox>("what-if-ground")->setFocus();
    press(Qt::Key_Escape);
    EXPECT_FALSE(child("what-if")->isVisible());
    EXPECT_EQ(QApplication::focusWidget()->objectName(), QStringLiteral("fitted"));
}

}  // namespace
}  // namespace wm::ui

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sheet/sheet_words.h"

#include <gtest/gtest.h>

namespace wm::sheet {
namespace {

TEST(SheetWordsTest, WritesDaysWithTheirWeekday) {
    EXPECT_EQ(dayText(*calendar::makeDate(2026, 5, 16)), "Sat 16 May 2026");
    EXPECT_EQ(dateText(*calendar::makeDate(2026, 1, 1)), "1 Jan 2026");
}

TEST(SheetWordsTest, SaysOnceThatSomethingIsNewEachTime) {
    EXPECT_EQ(renewText(""), "");
    EXPECT_EQ(renewText("washer"), "new each time: washer");
    EXPECT_EQ(renewText("new cotter, if there is one"), "new cotter, if there is one");
    EXPECT_EQ(renewText("Cotter each time"), "Cotter each time");
    EXPECT_EQ(renewText("gasket if torn"), "gasket if torn");
    EXPECT_EQ(renewText("bolts, where the manual asks for it"), "bolts, where the manual asks for it");
    EXPECT_EQ(renewText("gasket or O-rings"), "new each time: gasket or O-rings");
}

TEST(SheetWordsTest, NeverWritesABareDecimalMark) {
    fastening::JointVersion joint;
    joint.torque = units::Decimal{5, 1};
    EXPECT_EQ(torqueText(joint, '.'), "0.5 N·m");
    joint.torqueHigh = units::Decimal{75, 2};
    EXPECT_EQ(torqueText(joint, ','), "0,5 to 0,75 N·m");
    EXPECT_EQ(hoursWithUnit(units::Hours{50}, '.'), "0.5 h");
}

TEST(SheetWordsTest, KeepsTheDigitsOfTheManual) {
    fastening::JointVersion joint;
    joint.torque = units::Decimal{250, 2};
    joint.unit = units::TorqueUnit::KilogramForceMetre;
    EXPECT_EQ(torqueText(joint, '.'), "2.50 kgf·m");
    EXPECT_EQ(inNewtonMetresText(joint, '.'), "24.5 N·m");  // 2.50 x 9.80665 = 24.5166
}

TEST(SheetWordsTest, SaysABracketAsSuch) {
    using units::Hours;
    EXPECT_EQ(bracketText({Hours{6000}, Hours{6500}, Hours{8000}}, '.'), "60.0 to 80.0 h, likely 65.0 h");
    EXPECT_EQ(bracketText({Hours{6000}, Hours{6500}, std::nullopt}, '.'), "at least 60.0 h, likely 65.0 h");
    EXPECT_EQ(bracketText({Hours{6000}, Hours{6000}, Hours{6000}}, '.'), "60.0 h");
}

TEST(SheetWordsTest, SaysLimitsOrderAndTime) {
    upkeep::MeasurePoint point{"gap", "mm", units::Decimal{10, 2}, units::Decimal{15, 2}, "", true};
    EXPECT_EQ(limitText(point, '.'), "0.10 to 0.15 mm");
    point.most.reset();
    EXPECT_EQ(limitText(point, '.'), "at least 0.10 mm");
    point.least.reset();
    EXPECT_EQ(limitText(point, '.'), "");
    fastening::JointVersion spokes;
    spokes.sequence = fastening::Sequence::EveryNth;
    spokes.sequenceStep = 3;
    spokes.sequenceNote = "begin at the valve";
    EXPECT_EQ(orderText(spokes), "every 3rd one, lap after lap, small turns. begin at the valve");
    EXPECT_EQ(whenText({"", "", upkeep::When::AfterDays, 1}, '.'), "after 1 day");
    EXPECT_EQ(sourceText("", "4-2"), "p. 4-2");
}

}  // namespace
}  // namespace wm::sheet

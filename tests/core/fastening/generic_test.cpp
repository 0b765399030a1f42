// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/fastening/generic.h"

#include <gtest/gtest.h>

#include <rapidcheck/gtest.h>
#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>
#include <string>

#include "core/fastening/plausible.h"
#include "core/fastening/wrench.h"

namespace wm::fastening {
namespace {

using base::Fault;
using units::Decimal;
using units::TorqueUnit;

GenericAsk cover(std::string thread, std::string propertyClass) {
    GenericAsk ask;
    ask.kind = JointKind::Cover;
    ask.thread = std::move(thread);
    ask.propertyClass = std::move(propertyClass);
    return ask;
}

TEST(ThreadTest, IsReadAsItIsWritten) {
    for (const char* text : {"M8x1.25", "m8 x 1,25", "8x1.25", "M8", "M8×1.25", " M8x1.250 "})
        EXPECT_EQ(parseThread("thread", text), (Thread{8, 1.25})) << text;
    EXPECT_EQ(threadText(*parseThread("thread", "M20 x 1.50")), "M20x1.5");
}

TEST(ThreadTest, WhatIsNotMadeIsRefused) {
    const auto fault = [](const std::string& text) { return parseThread("thread", text).error().fault; };
    EXPECT_EQ(fault(""), Fault::Empty);
    for (const char* text : {"M7.3x9", "M8x9", "M8x1.3", "M8x0", "M8x-1.25", "M0", "M-8", "M6x1.25", "M999"})
        EXPECT_EQ(fault(text), Fault::Implausible) << text;
    for (const char* text : {"8", "1/4-20", "abc", "Mx1", "M8x", "M8x1x1", "M8xnan", "<b>M8</b>"})
        EXPECT_EQ(fault(text), Fault::Malformed) << text;
    EXPECT_EQ(fault("M" + std::string(10'000, '8')), Fault::Malformed);
    EXPECT_EQ(parseThread("thread", "M8x9").error().wanted, "M8x1.25");
}

TEST(GenericTest, ABandSaysWhatItRestsOn) {
    const auto band = genericBand(cover("M6", "8.8"));
    ASSERT_TRUE(band);
    // 0.75 x 11,658 N at µ 0.08: by hand 8743.5 x (0.16 + 0.58 x 5.350 x 0.08 + 3.825 x 0.08) / 1000.
    EXPECT_NEAR(band->high, 6.245, 0.005);
    EXPECT_NEAR(band->low, band->high * 2 / 3, 1e-9);
    EXPECT_NEAR(band->most, 8743.5, 0.1);
    EXPECT_FALSE(band->holeDecides);
}

TEST(GenericTest, TheSofterHoleSetsTheLimit) {
    GenericAsk ask = cover("M6", "10.9");
    ask.hole = Hole::Aluminium;
    const auto band = genericBand(ask);
    ASSERT_TRUE(band);
    EXPECT_TRUE(band->holeDecides);
    EXPECT_LT(band->high, genericBand(cover("M6", "10.9"))->high);
}

TEST(GenericTest, IsRefusedForEveryKindOfTheList) {
    using enum JointKind;
    for (const JointKind kind : {Brake, Axle, Pinch, Steering, Peg, Pivot, Linkage, Shock, Swingarm, Wheel,
                                 Spoke, Suspension, EngineMount, Sprocket}) {
        GenericAsk ask = cover("M8", "8.8");
        ask.kind = kind;
        EXPECT_EQ(genericBand(ask).error().why, GenericWhy::DangerousKind) << base::nameOf(kind);
    }
    for (const JointKind kind : {Other, Engine, Cover}) {
        GenericAsk ask = cover("M8", "8.8");
        ask.kind = kind;
        EXPECT_TRUE(genericBand(ask)) << base::nameOf(kind);
    }
}

// A joint typed in a hurry has no kind: its name must do.
TEST(GenericTest, IsRefusedForANameThatSpeaksOfADangerousKind) {
    const auto kindOf = [](std::string name) -> std::optional<JointKind> {
        GenericAsk ask = cover("M8", "8.8");
        ask.kind = JointKind::Other;
        ask.name = std::move(name);
        const auto band = genericBand(ask);
        return band ? std::nullopt : std::optional(band.error().kind);
    };
    using enum JointKind;
    EXPECT_EQ(kindOf("REAR AXLE NUT"), Axle);
    EXPECT_EQ(kindOf("Axle pinch bolts, free leg"), Pinch);
    EXPECT_EQ(kindOf("Front brake disc bolts"), Brake);
    EXPECT_EQ(kindOf("Top clamp bolts"), Steering);
    EXPECT_EQ(kindOf("shock, upper bolt"), Shock);
    EXPECT_EQ(kindOf("Engine mount, front"), EngineMount);
    EXPECT_EQ(kindOf("front disk"), Brake);
    EXPECT_EQ(kindOf("Lever perch"), Brake);
    EXPECT_EQ(kindOf("Bremssattel"), Brake);
    EXPECT_EQ(kindOf("Steuerkopf, oben"), Steering);
    EXPECT_EQ(kindOf("Rear hub"), Wheel);
    EXPECT_EQ(kindOf("Clutch hub nut"), std::nullopt);
    EXPECT_EQ(kindOf("Coolant hose clamps"), std::nullopt);
    EXPECT_EQ(kindOf("Seat bolts"), std::nullopt);
    EXPECT_EQ(kindOf(""), std::nullopt);
}

TEST(GenericTest, IsRefusedForWhatHoldsCrankRodAndHead) {
    for (const char* name : {"Con rod bolt", "big end", "Cylinder head nuts", "Head bolts"}) {
        GenericAsk ask = cover("M8", "12.9");
        ask.kind = JointKind::Engine;
        ask.name = name;
        const auto band = genericBand(ask);
        ASSERT_FALSE(band) << name;
        EXPECT_EQ(band.error().why, GenericWhy::ByAngle) << name;
    }
}

TEST(GenericTest, IsRefusedForMagnesiumAnglesAndWhatIsKnown) {
    const auto why = [](auto change) {
        GenericAsk ask = cover("M8", "8.8");
        change(ask);
        return genericBand(ask).error().why;
    };
    EXPECT_EQ(why([](GenericAsk& ask) { ask.hole = Hole::Magnesium; }), GenericWhy::Magnesium);
    EXPECT_EQ(why([](GenericAsk& ask) { ask.byAngle = true; }), GenericWhy::ByAngle);
    EXPECT_EQ(why([](GenericAsk& ask) { ask.hasFigure = true; }), GenericWhy::HasFigure);
    EXPECT_EQ(why([](GenericAsk& ask) { ask.thread = "M7.3x9"; }), GenericWhy::NoSuchThread);
    EXPECT_EQ(why([](GenericAsk& ask) { ask.thread = "M20x1.5"; }), GenericWhy::TooSmallOrLarge);
    EXPECT_EQ(why([](GenericAsk& ask) { ask.propertyClass = "A2-70"; }), GenericWhy::NoSuchClass);
    EXPECT_EQ(why([](GenericAsk& ask) { ask.engagement = 0.5; }), GenericWhy::ShortEngagement);
    for (const double bad :
         {0.0, -1.0, std::numeric_limits<double>::quiet_NaN(), std::numeric_limits<double>::infinity()})
        EXPECT_EQ(why([bad](GenericAsk& ask) { ask.engagement = bad; }), GenericWhy::NotANumber) << bad;
}

RC_GTEST_PROP(GenericTest, ThickerStrongerAndRougherNeverTakeLess, ()) {
    const std::vector<std::string> threads{"M4", "M5", "M6", "M8", "M10", "M12", "M14", "M16"};
    const std::vector<std::string> classes{"4.6", "5.6", "4.8", "5.8", "6.8", "8.8", "9.8", "10.9", "12.9"};
    GenericAsk ask =
        cover(threads[*rc::gen::inRange<std::size_t>(0, 7)], classes[*rc::gen::inRange<std::size_t>(0, 8)]);
    ask.hole = *rc::gen::element(Hole::Steel, Hole::Aluminium);
    ask.lubrication = *rc::gen::element(Lubrication::Unknown, Lubrication::Dry, Lubrication::Lubricated,
                                        Lubrication::AntiSeize);
    const auto band = genericBand(ask);
    RC_ASSERT(band.has_value());
    RC_ASSERT(band->low > 0 && band->low < band->high);
    RC_ASSERT(band->most <= kMostOfProof * band->proof * (1 + 1e-12));
    // The high end stretches the slipperiest joint to what it bears, and no more.
    RC_ASSERT(band->high <= torqueFor(kMostOfProof * band->proof, band->thread, band->slippery,
                                      bearingDiameter(band->thread)) *
                                (1 + 1e-12));
    GenericAsk thicker = ask;
    thicker.thread = *(std::find(threads.begin(), threads.end(), ask.thread) + 1);
    RC_ASSERT(genericBand(thicker)->high >= band->high);
    GenericAsk stronger = ask;
    stronger.propertyClass = *(std::find(classes.begin(), classes.end(), ask.propertyClass) + 1);
    RC_ASSERT(genericBand(stronger)->high >= band->high);
}

TEST(PlausibleTest, AFigureTwelveOrTenTimesOffIsQuestionedWithItsMisreading) {
    const auto doubt = [](Decimal value, TorqueUnit unit, const char* thread) {
        return doubtAbout(value, unit, JointKind::Cover, thread);
    };
    const auto inch = doubt({96, 0}, TorqueUnit::PoundForceFoot, "M6");  // 96 lbf·in is 11 N·m
    ASSERT_TRUE(inch);
    EXPECT_EQ(inch->misreading, TorqueMisreading::InchForFoot);
    EXPECT_EQ(inch->meantUnit, TorqueUnit::PoundForceInch);
    const auto kilogram = doubt({22, 1}, TorqueUnit::NewtonMetre, "M8");  // 2.2 kgf·m is 22 N·m
    ASSERT_TRUE(kilogram);
    EXPECT_EQ(kilogram->misreading, TorqueMisreading::KilogramMetre);
    const auto point = doubt({120, 0}, TorqueUnit::NewtonMetre, "M6");
    ASSERT_TRUE(point);
    EXPECT_EQ(point->meant.text(), "12.0");
    EXPECT_FALSE(doubt({10, 0}, TorqueUnit::NewtonMetre, "M6"));
    EXPECT_FALSE(doubt({120, 0}, TorqueUnit::NewtonMetre, ""));  // no thread, no doubt
    EXPECT_FALSE(doubt({120, 0}, TorqueUnit::NewtonMetre, "no thread"));
}

TEST(WrenchTest, AnAdapterThatPointsBackIsRefused) {
    const auto fault = [](double torque, double length, Adapter adapter) {
        return settingFor(torque, length, adapter).error().fault;
    };
    const double nan = std::numeric_limits<double>::quiet_NaN();
    EXPECT_EQ(fault(50, 300, {200, 180}), Fault::Implausible);
    EXPECT_EQ(fault(50, 300, {300, 150}), Fault::Implausible);
    EXPECT_TRUE(settingFor(50, 300, {40, 135}));  // a little back over the handle
    EXPECT_EQ(fault(50, 300, {301, 0}), Fault::TooLarge);
    EXPECT_EQ(fault(50, 300, {40, 181}), Fault::TooLarge);
    EXPECT_EQ(fault(50, 300, {-40, 0}), Fault::Negative);
    EXPECT_EQ(fault(0, 300, {40, 0}), Fault::NotPositive);
    EXPECT_EQ(fault(-1, 300, {40, 0}), Fault::NotPositive);
    EXPECT_EQ(fault(50, 0, {40, 0}), Fault::NotPositive);
    for (const double bad : {nan, std::numeric_limits<double>::infinity()}) {
        EXPECT_EQ(fault(bad, 300, {40, 0}), Fault::NotANumber);
        EXPECT_EQ(fault(50, bad, {40, 0}), Fault::NotANumber);
        EXPECT_EQ(fault(50, 300, {bad, 0}), Fault::NotANumber);
        EXPECT_EQ(fault(50, 300, {40, bad}), Fault::NotANumber);
    }
}

RC_GTEST_PROP(WrenchTest, TheSettingGivesTheTargetBack, ()) {
    const double target = *rc::gen::inRange(1, 30'000) / 100.0;
    const double length = *rc::gen::inRange(100, 1'000);
    const Adapter adapter{static_cast<double>(*rc::gen::inRange(0, 100)),
                          static_cast<double>(*rc::gen::inRange(0, 91))};
    const auto setting = settingFor(target, length, adapter);
    RC_ASSERT(setting.has_value());
    RC_ASSERT(*setting <= target * (1 + 1e-12));
    RC_ASSERT(std::abs(*torqueAt(*setting, length, adapter) - target) < 1e-9 * target);
    const Adapter longer{adapter.length, std::max(0.0, adapter.angle - 10)};
    RC_ASSERT(*settingFor(target, length, longer) <= *setting * (1 + 1e-12));
}

TEST(WrenchTest, WhatReachesTheFastener) {
    const Achieved reach = achieved(50, 4);
    EXPECT_NEAR(reach.low, 48.0769, 1e-4);
    EXPECT_NEAR(reach.high, 52.0833, 1e-4);
    EXPECT_NEAR(*deviationPercent(50, reach.low), 4, 1e-9);
    EXPECT_NEAR(*deviationPercent(50, reach.high), -4, 1e-9);
    EXPECT_FALSE(deviationPercent(50, 0));
}

}  // namespace
}  // namespace wm::fastening

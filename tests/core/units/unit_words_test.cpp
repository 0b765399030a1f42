// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/units/unit_words.h"

#include <gtest/gtest.h>

#include <rapidcheck/gtest.h>

namespace wm::units {
namespace {

using base::Fault;

std::string read(std::string_view typed) {
    const auto range = parseTorqueRange("torque", typed);
    if (!range)
        return "fault " + std::to_string(static_cast<int>(range.error().fault));
    std::string words = range->low.text();
    if (range->high)
        words += " to " + range->high->text();
    if (range->unit)
        words += ' ' + std::string(base::nameOf(*range->unit));
    return words;
}

TEST(UnitWordsTest, ATorqueIsReadAsItIsTyped) {
    EXPECT_EQ(read("25 ft lb"), "25 lbf·ft");
    EXPECT_EQ(read("25 lbf·ft"), "25 lbf·ft");
    EXPECT_EQ(read("25ft-lbs"), "25 lbf·ft");
    EXPECT_EQ(read("25 foot pounds"), "25 lbf·ft");
    EXPECT_EQ(read("2,5 kgm"), "2.5 kgf·m");
    EXPECT_EQ(read("2.50 kgf.m"), "2.50 kgf·m");
    EXPECT_EQ(read("2.5 m-kg"), "2.5 kgf·m");
    EXPECT_EQ(read("300 in-lb"), "300 lbf·in");
    EXPECT_EQ(read("300 inch pounds"), "300 lbf·in");
    EXPECT_EQ(read("9 kgf cm"), "9 kgf·cm");
    EXPECT_EQ(read("110"), "110");
    EXPECT_EQ(read("110 Nm"), "110 N·m");
    EXPECT_EQ(read("  110 N m "), "110 N·m");
    EXPECT_EQ(read("110 newton metres"), "110 N·m");
}

TEST(UnitWordsTest, BothEndsOfARangeInOneLine) {
    EXPECT_EQ(read("18-22 ft lb"), "18 to 22 lbf·ft");
    EXPECT_EQ(read("18 - 22"), "18 to 22");
    EXPECT_EQ(read("4.0 to 4.6 Nm"), "4.0 to 4.6 N·m");
    EXPECT_EQ(read("4,0–4,6 Nm"), "4.0 to 4.6 N·m");
    EXPECT_EQ(read("18 Nm to 22 Nm"), "18 to 22 N·m");
    EXPECT_EQ(parseTorqueRange("torque", "22-18").error().fault, Fault::OutOfOrder);
    EXPECT_EQ(parseTorqueRange("torque", "18 Nm - 22 ft lb").error().fault, Fault::WrongUnit);
}

TEST(UnitWordsTest, WhatIsNoTorqueIsRefusedWithTheWord) {
    const auto fault = [](std::string_view typed) { return parseTorque("torque", typed).error().fault; };
    EXPECT_EQ(fault(""), Fault::Empty);
    EXPECT_EQ(fault("abc"), Fault::NotANumber);
    EXPECT_EQ(fault("nan"), Fault::NotANumber);
    EXPECT_EQ(fault("inf Nm"), Fault::NotANumber);
    EXPECT_EQ(fault("1e9"), Fault::WrongUnit);
    EXPECT_EQ(fault("0"), Fault::NotPositive);
    EXPECT_EQ(fault("-5 Nm"), Fault::NotPositive);
    EXPECT_EQ(fault("25 bananas"), Fault::WrongUnit);
    EXPECT_EQ(fault("25 psi"), Fault::WrongUnit);
    EXPECT_EQ(fault("25 oz"), Fault::WrongUnit);
    EXPECT_EQ(fault("25 daNm"), Fault::WrongUnit);
    EXPECT_EQ(fault("9999999999999"), Fault::TooLarge);
    EXPECT_EQ(parseTorque("torque", "25 bananas").error().given, "bananas");
    EXPECT_EQ(parseTorque("torque", "25 bananas").error().wanted, "N·m, lbf·ft, lbf·in, kgf·m, kgf·cm");
    EXPECT_EQ(parseTorque("torque", "25 psi").error().wanted, torqueUnits());
    EXPECT_EQ(fault("<b>25</b>"), Fault::NotANumber);
    EXPECT_EQ(fault(std::string(10'000, '1')), Fault::TooLarge);
}

TEST(UnitWordsTest, OtherMeasuresAreReadToo) {
    EXPECT_EQ(parseMeasured("value", "0.85 bar")->unit, "bar");
    EXPECT_EQ(parseMeasured("value", "350 cc")->unit, "cm³");
    EXPECT_EQ(parseMeasured("value", "1,05 L")->unit, "l");
    EXPECT_EQ(parseMeasured("value", "1 kgf/cm²")->unit, "kgf/cm²");
    EXPECT_FALSE(parseMeasured("value", "12 out"));
    EXPECT_FALSE(unitNamed("qt"));  // US or imperial: nobody can tell
    EXPECT_FALSE(unitNamed(""));
    EXPECT_FALSE(unitNamed("·"));
}

RC_GTEST_PROP(UnitWordsTest, ATorqueComesBackAsItWasWritten, ()) {
    const auto value =
        Decimal{*rc::gen::inRange<std::int64_t>(1, 10'000'000), *rc::gen::inRange(0, kMostPlaces + 1)};
    const auto unit =
        *rc::gen::element(TorqueUnit::NewtonMetre, TorqueUnit::PoundForceFoot, TorqueUnit::PoundForceInch,
                          TorqueUnit::KilogramForceMetre, TorqueUnit::KilogramForceCentimetre);
    const char mark = *rc::gen::element('.', ',');
    const auto typed = parseTorque("torque", value.text(mark) + ' ' + std::string(base::nameOf(unit)));
    RC_ASSERT(typed.has_value());
    RC_ASSERT(typed->value.text() == value.text());
    RC_ASSERT(typed->unit == unit);
}

RC_GTEST_PROP(UnitWordsTest, AnyTextIsReadOrRefused, (const std::string& text)) {
    const auto range = parseTorqueRange("torque", text);
    if (range)
        RC_ASSERT(range->low > Decimal{});
}

}  // namespace
}  // namespace wm::units

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/fastening/stages.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <string>

namespace wm::fastening {
namespace {

using base::Fault;

std::string read(std::string_view text) {
    const auto stages = parseStages(text);
    if (!stages)
        return "fault " + std::to_string(static_cast<int>(stages.error().fault)) + ": " +
               stages.error().given;
    std::string words;
    for (const Stage& stage : *stages)
        words += (words.empty() ? "" : " | ") + stageText(stage);
    return words;
}

std::string fault(Fault fault, std::string_view given) {
    return "fault " + std::to_string(static_cast<int>(fault)) + ": " + std::string(given);
}

TEST(StagesTest, AreReadAsTheyArePrinted) {
    EXPECT_EQ(read(""), "");
    EXPECT_EQ(read("snug, 20, 38"), "snug | to 20 | to 38");
    EXPECT_EQ(read("seat 40, loosen, 9"), "to 40 | loosen | to 9");
    EXPECT_EQ(read("30 + 90 deg"), "to 30 | 90\u00B0 further");
    EXPECT_EQ(read("Snug; half; FULL"), "snug | half | full");
    EXPECT_EQ(read("20, loosen 1/4 turn, 12"), "to 20 | loosen 90\u00B0 | to 12");
    EXPECT_EQ(read("25, lock to lock five times, loosen, 7"), "to 25 | lock to lock | loosen | to 7");
    EXPECT_EQ(read("15+60\u00B0+60\u00B0"), "to 15 | 60\u00B0 further | 60\u00B0 further");
}

TEST(StagesTest, ACommaBetweenDigitsIsADecimalComma) {
    EXPECT_EQ(read("snug, 4,5, 9"), "snug | to 4.5 | to 9");
    EXPECT_EQ(read("4,50; 9,0"), "to 4.50 | to 9.0");
    EXPECT_EQ(stageText(parseStages("4.5").value().front(), ','), "to 4,5");
}

TEST(StagesTest, SayWhichPartIsWrong) {
    EXPECT_EQ(read("snug,, 20"), fault(Fault::Malformed, ""));
    EXPECT_EQ(read("snug, tight, 20"), fault(Fault::Malformed, "tight"));
    EXPECT_EQ(read("0, 20"), fault(Fault::NotPositive, "0"));
    EXPECT_EQ(read("-5"), fault(Fault::NotPositive, "-5"));
    EXPECT_EQ(read("nan"), fault(Fault::Malformed, "nan"));
    EXPECT_EQ(read("30 + 0 deg"), fault(Fault::NotPositive, "0 deg"));
    EXPECT_EQ(read("30 + 721 deg"), fault(Fault::TooLarge, "721 deg"));
    EXPECT_EQ(read("30 + 0,5 deg"), fault(Fault::Malformed, "0,5 deg"));
    EXPECT_EQ(read("38, 20"), fault(Fault::OutOfOrder, "20"));
    EXPECT_EQ(read("90 deg"), fault(Fault::Inconsistent, "90\u00B0 further"));
    EXPECT_EQ(read("40, loosen"), fault(Fault::Inconsistent, "loosen"));
    EXPECT_EQ(read("<b>20</b>"), fault(Fault::Malformed, "<b>20</b>"));
    EXPECT_EQ(read(std::string(10'000, ',')), fault(Fault::Malformed, ""));
}

using units::Decimal;
using units::TorqueUnit;

JointVersion staged(std::optional<Decimal> torque, const char* stages, std::optional<Decimal> high = {}) {
    return {.torque = torque, .torqueHigh = high, .stages = stages};
}

// The stages when `torque` takes the place of what stood there; "unclear" if that is not plain.
std::string after(const JointVersion& stood, Decimal torque, std::optional<Decimal> high = {},
                  TorqueUnit unit = TorqueUnit::NewtonMetre) {
    JointVersion now = stood;
    now.torque = torque;
    now.torqueHigh = high;
    now.unit = unit;
    const auto stages = stagesAfter(stood, now);
    if (stages)
        return *stages;
    EXPECT_EQ(stages.error().fault, Fault::Inconsistent);
    EXPECT_EQ(stages.error().field, "stages");
    EXPECT_EQ(stages.error().given, stood.stages);
    return "unclear";
}

TEST(StagesTest, TheLastTorqueFollowsTheFigureThatStoodThere) {
    EXPECT_EQ(after(staged(Decimal{38, 0}, "snug, 20, 38"), {40, 0}), "snug, 20, 40");
    EXPECT_EQ(after(staged(Decimal{38, 0}, "Snug,20, 38"), {405, 1}), "Snug,20, 40.5");
    EXPECT_EQ(after(staged(Decimal{90, 1}, "seat 40, loosen, to 9"), {10, 0}), "seat 40, loosen, to 10");
    EXPECT_EQ(after(staged(Decimal{30, 0}, "30 + 90 deg"), {35, 0}), "35 + 90 deg");
    EXPECT_EQ(after(staged(Decimal{90, 1}, "4,5; 9,0"), {95, 1}), "4,5; 9,5");
    EXPECT_EQ(after(staged(Decimal{18, 0}, "10, 22", Decimal{22, 0}), {20, 0}, Decimal{24, 0}), "10, 24");
    EXPECT_EQ(after(staged(Decimal{18, 0}, "10, 18", Decimal{22, 0}), {20, 0}, Decimal{24, 0}), "10, 20");
    EXPECT_EQ(after(staged(Decimal{18, 0}, "10, 22", Decimal{22, 0}), {20, 0}), "10, 20") << "no range now";
    EXPECT_EQ(after(staged(Decimal{30, 0}, "30 + 90 deg"), {22, 0}, {}, TorqueUnit::PoundForceFoot),
              "22 + 90 deg")
        << "its only torque is in the other unit as well";
}

TEST(StagesTest, WhatTheFigureIsNoPartOfStays) {
    EXPECT_EQ(after(staged(Decimal{38, 0}, ""), {40, 0}), "");
    EXPECT_EQ(after(staged(Decimal{38, 0}, "half, full"), {40, 0}), "half, full");
    EXPECT_EQ(after(staged(Decimal{38, 0}, "20, full"), {40, 0}), "20, full");
    EXPECT_EQ(after(staged(std::nullopt, "20, 38"), {38, 0}), "20, 38") << "a figure typed into its blank";
    EXPECT_EQ(after(staged(Decimal{38, 0}, "20, 38"), {38, 0}), "20, 38");
    EXPECT_EQ(after(staged(Decimal{38, 0}, "see the picture"), {40, 0}), "see the picture");
    JointVersion anew = staged(Decimal{40, 0}, "15, 40");
    EXPECT_EQ(stagesAfter(staged(Decimal{38, 0}, "20, 38"), anew).value(), "15, 40") << "typed as well";
}

TEST(StagesTest, WhereItIsNotPlainWhatBecomesOfThemNothingIsGuessed) {
    EXPECT_EQ(after(staged(Decimal{40, 0}, "seat 40, loosen, 40"), {45, 0}), "unclear")
        << "both, or the last?";
    EXPECT_EQ(after(staged(Decimal{38, 0}, "20, 38"), {36, 0}, Decimal{40, 0}), "unclear") << "which end?";
    EXPECT_EQ(after(staged(Decimal{38, 0}, "20, 38"), {28, 0}, {}, TorqueUnit::PoundForceFoot), "unclear")
        << "20 of what?";
    EXPECT_EQ(after(staged(Decimal{38, 0}, "20, full"), {28, 0}, {}, TorqueUnit::PoundForceFoot), "unclear");
}

// Only the last torque is another one, and what can be read stays so.
TEST(StagesTest, NothingButTheLastTorqueChanges) {
    EXPECT_TRUE(rc::check("stages after a torque", [] {
        const auto count = *rc::gen::inRange(0, 4);
        const char mark = *rc::gen::element('.', ',');
        std::string text = *rc::gen::element<std::string>("", "snug; ", "Seat 0.5 ; loosen;  ");
        std::int64_t digits = *rc::gen::inRange(10, 50);
        const auto written = [mark](std::int64_t tenths) { return Decimal{tenths, 1}.text(mark); };
        for (int at = 0; at < count; ++at, digits += *rc::gen::inRange(1, 90))
            text += written(digits) + "; ";
        const std::string end = *rc::gen::element<std::string>("", " + 90 deg", ";full");
        const JointVersion stood = staged(Decimal{digits, 1}, (text + written(digits) + end).c_str());
        const std::int64_t now = digits + *rc::gen::inRange(1, 500);
        RC_ASSERT(after(stood, {now, 1}) == text + written(now) + end);
    }));
}

}  // namespace
}  // namespace wm::fastening

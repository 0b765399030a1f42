// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/fastening/stages.h"

#include <gtest/gtest.h>

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

}  // namespace
}  // namespace wm::fastening

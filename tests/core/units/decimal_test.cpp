// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/units/decimal.h"

#include <gtest/gtest.h>

namespace wm::units {
namespace {

TEST(DecimalTest, KeepsTheDigitsOfItsSource) {
    EXPECT_EQ(parseDecimal("torque", "2,50")->text(), "2.50");
    EXPECT_EQ(*parseDecimal("torque", "2.50"), *parseDecimal("torque", "2.5"));
    EXPECT_EQ(parseDecimal("torque", "-,5")->text(','), "-0,5");
}

TEST(DecimalTest, RefusesWhatIsNoNumber) {
    for (const char* text : {"nan", "inf", "1e3", "1.2.3", "12 h", "0x10", "-", ".", "--1"})
        EXPECT_EQ(parseDecimal("torque", text).error().fault, base::Fault::NotANumber) << text;
    EXPECT_EQ(parseDecimal("torque", "  ").error().fault, base::Fault::Empty);
    EXPECT_EQ(parseDecimal("torque", "1234567890123").error().fault, base::Fault::TooLarge);
}

TEST(DecimalTest, RoundsHalvesAwayFromZero) {
    EXPECT_EQ((Decimal{251, 2}.scaledTo(1)), 25);
    EXPECT_EQ((Decimal{255, 2}.scaledTo(1)), 26);
    EXPECT_EQ((Decimal{-255, 2}.scaledTo(1)), -26);
}

}  // namespace
}  // namespace wm::units

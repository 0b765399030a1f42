// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/upkeep/typed_bracket.h"

#include <gtest/gtest.h>

namespace wm::upkeep {
namespace {

CountBracket bracketIn(const char* text, Counter counter = Counter::Washes) {
    const auto bracket = parseBracket("count", text, counter);
    if (!bracket)
        ADD_FAILURE() << text << ": fault " << static_cast<int>(bracket.error().fault);
    return bracket.value_or(CountBracket{-1, -1, -1});
}

base::Fault refusalOf(const char* text, Counter counter = Counter::Washes) {
    const auto bracket = parseBracket("count", text, counter);
    EXPECT_FALSE(bracket) << text;
    return bracket ? base::Fault::Unknown : bracket.error().fault;
}

TEST(TypedBracketTest, IsReadAsItIsSaid) {
    EXPECT_EQ(bracketIn("8"), (CountBracket{8, 8, 8}));
    EXPECT_EQ(bracketIn("None"), (CountBracket{0, 0, 0}));
    EXPECT_EQ(bracketIn("6..8..12"), (CountBracket{6, 8, 12}));
    EXPECT_EQ(bracketIn("6 - 8 - 12"), (CountBracket{6, 8, 12}));
    EXPECT_EQ(bracketIn("6 to 12"), (CountBracket{6, std::nullopt, 12}));
    EXPECT_EQ(bracketIn("6\u201312"), (CountBracket{6, std::nullopt, 12}));
    EXPECT_EQ(bracketIn("6.."), (CountBracket{6, std::nullopt, std::nullopt}));
    EXPECT_EQ(bracketIn("6..?..?"), (CountBracket{6, std::nullopt, std::nullopt}));
    EXPECT_EQ(bracketIn("..12"), (CountBracket{0, std::nullopt, 12}));
    EXPECT_EQ(bracketIn("10,5..15..25.25", Counter::Hours), (CountBracket{1050, 1500, 2525}));
    EXPECT_EQ(bracketIn("1..2,5", Counter::Metres), (CountBracket{1000, std::nullopt, 2500}));
}

TEST(TypedBracketTest, RefusesWhatSaysNothingOrContradictsItself) {
    EXPECT_EQ(refusalOf(" "), base::Fault::Empty);
    EXPECT_EQ(refusalOf("?"), base::Fault::Malformed);
    EXPECT_EQ(refusalOf("1..2..3..4"), base::Fault::Malformed);
    EXPECT_EQ(refusalOf("12..6"), base::Fault::OutOfOrder);
    EXPECT_EQ(refusalOf("6..13..12"), base::Fault::OutOfOrder);
    EXPECT_EQ(refusalOf("-3"), base::Fault::Negative);
    EXPECT_EQ(refusalOf("some"), base::Fault::NotANumber);
}

}  // namespace
}  // namespace wm::upkeep

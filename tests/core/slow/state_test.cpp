// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// The truth table of tests/data/state: whether a machine is whole.
#include <gtest/gtest.h>

#include <set>

#include "tests/core/slow/tale.h"

namespace wm::tale {
namespace {

const std::set<std::string, std::less<>> kSaid{"state",      "of",      "on",   "whole",    "open",
                                               "hand_tight", "missing", "away", "in_doubt", "questions"};

TEST(StateTableTest, EveryCaseHasANameOfItsOwnAReasonAndAQuestion) {
    std::set<std::string> names;
    const auto cases = casesIn("state");
    for (const Case& one : cases) {
        EXPECT_TRUE(names.insert(one.name).second) << one.name;
        EXPECT_GE(one.why.size(), 14U) << one.name;
        EXPECT_FALSE(one.asks.empty()) << one.name;
        for (const Json& ask : one.asks)
            EXPECT_TRUE(ask.contains("state") || ask.contains("may_fit")) << one.name;
    }
    EXPECT_GE(cases.size(), 40U);
}

TEST(StateTableTest, WholeIsSaidOnlyWhereNothingElseIs) {
    for (const Case& one : casesIn("state"))
        for (const Json& ask : one.asks) {
            if (!ask.contains("state"))
                continue;
            bool isFree = true;
            for (const auto& [key, value] : ask.items()) {
                EXPECT_TRUE(kSaid.contains(key)) << one.name << ": " << key;
                if (value.is_array() && key != "questions")
                    isFree = isFree && value.empty();
            }
            EXPECT_EQ(ask.at("whole").get<bool>(), isFree) << one.name << ": " << ask.dump();
        }
}

}  // namespace
}  // namespace wm::tale

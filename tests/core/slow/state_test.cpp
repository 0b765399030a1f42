// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// The truth table of tests/data/state: whether a machine is whole.
#include "tests/core/slow/state.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <set>

namespace wm::tale {
namespace {

const std::set<std::string, std::less<>> kSaid{
    "state", "of", "on", "whole", "open", "out", "away", "missing", "in_doubt", "hand_tight", "questions"};

TEST(StateTableTest, EveryCaseHasANameOfItsOwnAReasonAndAQuestion) {
    std::set<std::string> names;
    const auto cases = casesIn("state");
    for (const Case& one : cases) {
        EXPECT_TRUE(names.insert(one.name).second) << one.name;
        EXPECT_GE(one.why.size(), 14U) << one.name;
        EXPECT_FALSE(one.asks.empty()) << one.name;
        for (const Json& ask : one.asks)
            EXPECT_TRUE(ask.contains("state") || ask.contains("may_fit") || ask.contains("may_confirm"))
                << one.name;
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
                if (value.is_array() && key != "questions" && key != "out")
                    isFree = isFree && value.empty();
            }
            EXPECT_EQ(ask.at("whole").get<bool>(), isFree) << one.name << ": " << ask.dump();
        }
}

std::vector<std::string> listOf(const Json& ask, const char* key) {
    auto list = ask.value(key, std::vector<std::string>{});
    std::sort(list.begin(), list.end());
    return list;
}

TEST(StateTableTest, TheSlowReckoningAgreesWithIt) {
    for (const Case& one : casesIn("state"))
        for (const Json& ask : one.asks) {
            SCOPED_TRACE(one.theme + ": " + one.name + ", " + ask.dump());
            const auto on = dayOf(ask.at("on"));
            const auto text = [&](const char* key) { return ask.at(key).get<std::string>(); };
            if (ask.contains("may_confirm")) {
                EXPECT_EQ(slowMayConfirm(one.facts, text("of"), text("may_confirm"), on), text("is"));
                continue;
            }
            if (ask.contains("may_fit")) {
                EXPECT_EQ(slowMayFit(one.facts, text("may_fit"), text("to"), text("at"), on), text("is"));
                continue;
            }
            const State state = slowState(one.facts, ask.at("state").get<std::string>(), on);
            EXPECT_EQ(state.open, listOf(ask, "open"));
            EXPECT_EQ(state.handTight, listOf(ask, "hand_tight"));
            EXPECT_EQ(state.out, listOf(ask, "out"));
            EXPECT_EQ(state.missing, listOf(ask, "missing"));
            EXPECT_EQ(state.away, listOf(ask, "away"));
            EXPECT_EQ(state.inDoubt, listOf(ask, "in_doubt"));
            EXPECT_EQ(state.questions, listOf(ask, "questions"));
            EXPECT_EQ(state.isWhole(), ask.at("whole").get<bool>());
        }
}

}  // namespace
}  // namespace wm::tale

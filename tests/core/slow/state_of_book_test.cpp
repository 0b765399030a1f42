// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// The program against the truth table in tests/data/state, and against the slow reckoning on random benches.
#include <gtest/gtest.h>

#include <algorithm>

#include "tests/core/slow/book_state.h"
#include "tests/core/slow/random_bench.h"

namespace wm::tale {
namespace {

std::vector<std::string> wantedList(const Json& ask, const char* key) {
    auto list = ask.value(key, std::vector<std::string>{});
    std::sort(list.begin(), list.end());
    return list;
}

TEST(StateOfTheBookTest, AnswersEveryCaseOfTheTable) {
    for (const Case& one : casesIn("state")) {
        const Tale tale = taleOf(one.facts);
        for (const Json& ask : one.asks) {
            SCOPED_TRACE(one.theme + ": " + one.name + ", " + ask.dump());
            const auto on = dayOf(ask.at("on"));
            const auto text = [&](const char* key) { return ask.at(key).get<std::string>(); };
            if (ask.contains("may_fit")) {
                EXPECT_EQ(mayFitByBook(tale, text("may_fit"), text("to"), text("at"), on), text("is"));
                continue;
            }
            const State state = stateByBook(tale, text("state"), on);
            EXPECT_EQ(state.open, wantedList(ask, "open"));
            EXPECT_EQ(state.handTight, wantedList(ask, "hand_tight"));
            EXPECT_EQ(state.missing, wantedList(ask, "missing"));
            EXPECT_EQ(state.away, wantedList(ask, "away"));
            EXPECT_EQ(state.inDoubt, wantedList(ask, "in_doubt"));
            EXPECT_EQ(state.questions, wantedList(ask, "questions"));
            EXPECT_EQ(state.isWhole(), ask.at("whole").get<bool>());
        }
    }
}

// Two outings of one day are one question.
std::string joined(State state) {
    std::string all;
    state.questions.erase(std::unique(state.questions.begin(), state.questions.end()), state.questions.end());
    for (const auto* list :
         {&state.open, &state.handTight, &state.missing, &state.away, &state.inDoubt, &state.questions}) {
        for (const std::string& each : *list)
            all += each + "; ";
        all += "| ";
    }
    return all;
}

// A mark on a joint bears a day and no part of it.
std::vector<Json> asRowsHoldIt(std::vector<Json> facts) {
    for (Json& fact : facts)
        if (fact.contains("confirm"))
            fact.erase("part");
    return facts;
}

TEST(StateOfTheBookTest, AgreesWithTheSlowReckoningOnRandomBenches) {
    int differing = 0;
    std::string examples;
    for (std::uint64_t seed = 1; seed <= 300; ++seed) {
        const int days = 3 + static_cast<int>(seed % 15);
        const auto facts = asRowsHoldIt(randomBench(seed, days));
        const Tale tale = taleOf(facts);
        for (const int day : {days / 2, days})
            for (const std::string machine : {"Heron", "Kite"}) {
                const std::string right = joined(slowState(facts, machine, benchDay(day)));
                const std::string said = joined(stateByBook(tale, machine, benchDay(day)));
                if (right == said)
                    continue;
                ++differing;
                examples += "\nbench " + std::to_string(seed) + ", " + machine + " on " +
                            benchDay(day).iso() + "\n  right: " + right + "\n  said:  " + said;
            }
    }
    EXPECT_EQ(differing, 0) << examples.substr(0, 4000);
}

}  // namespace
}  // namespace wm::tale

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// The slow reckoning of whose clock it is against the truth table in tests/data/subject.
#include "tests/core/slow/subject.h"

#include <gtest/gtest.h>

#include <set>

namespace wm::tale {
namespace {

std::string joined(const std::vector<std::string>& lines) {
    std::string all;
    for (const std::string& line : lines)
        all += "\n  " + line;
    return all;
}

TEST(SubjectTableTest, EveryCaseHasANameOfItsOwnAReasonAndAQuestion) {
    std::set<std::string> names;
    const auto cases = casesIn("subject");
    for (const Case& one : cases) {
        EXPECT_TRUE(names.insert(one.name).second) << one.name;
        EXPECT_GE(one.why.size(), 20U) << one.name;
        EXPECT_FALSE(one.asks.empty()) << one.name;
        EXPECT_NO_THROW(taleOf(one.facts)) << one.name;
    }
    EXPECT_GE(cases.size(), 60U);
}

TEST(SubjectTableTest, TheSlowReckoningAgreesWithIt) {
    for (const Case& one : casesIn("subject")) {
        const Tale tale = taleOf(one.facts);
        for (const Json& ask : one.asks) {
            const auto on = dayOf(ask.at("on"));
            if (ask.contains("may_record")) {
                EXPECT_EQ(slowMayRecord(tale, ask.at("of").get<std::string>(),
                                        ask.at("may_record").get<std::string>(), on),
                          ask.at("is").get<std::string>())
                    << one.theme << ": " << one.name << ", " << ask.dump();
                continue;
            }
            const auto wrong =
                ask.contains("follow_ups")
                    ? differences(ask, slowFollowUps(tale, ask.at("follow_ups").get<std::string>(), on))
                    : differences(ask, slowAnswer(tale, ask.at("of").get<std::string>(),
                                                  ask.at("task").get<std::string>(), on));
            EXPECT_TRUE(wrong.empty())
                << one.theme << ": " << one.name << ", " << ask.dump() << joined(wrong);
        }
    }
}

}  // namespace
}  // namespace wm::tale

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// The checker of the truths of order by itself: plans written by hand, in which it must find what is wrong
// and leave alone what is right.
#include <gtest/gtest.h>

#include <algorithm>
#include <map>

#include "tests/core/order/order_files.h"

namespace wm::order {
namespace {

std::string wordOf(Verdict verdict) {
    switch (verdict) {
        case Verdict::NotConcerned:
            return "not concerned";
        case Verdict::Held:
            return "held";
        case Verdict::CannotBeSaid:
            return "cannot be said";
        case Verdict::Broken:
            return "broken";
    }
    return "";
}

// "stand up; off seat"
Acts actsIn(const std::string& text) {
    Acts acts;
    for (std::size_t from = 0; from < text.size();) {
        const std::size_t end = std::min(text.find("; ", from), text.size());
        acts.push_back(text.substr(from, end - from));
        from = end + 2;
    }
    return acts;
}

// All that a truth or a plan names, without those for which there are no words.
Sayable sayableWithout(const Json& absent) {
    if (absent.empty())
        return {};
    std::set<std::string> all{"see marks",
                              "wait until cold",
                              "hold rear brake",
                              "hold clutch hub",
                              "on top clamp",
                              "watch front reservoir",
                              "check oil level",
                              "strap machine",
                              "run engine",
                              "begin weight-on work",
                              "ride",
                              "set chain slack",
                              "off valve cover",
                              "spin front wheel, brake held"};
    for (const Json& plan : fileOf("plans.json"))
        for (const std::string& act : actsIn(plan.at("plan").get<std::string>()))
            all.insert(act);
    for (const Json& act : absent)
        all.erase(act.get<std::string>());
    return all;
}

TEST(OrderTruthsTest, AreThoseOfAllTwentySixNumbers) {
    std::set<int> numbers;
    std::set<std::string> names;
    for (const Truth& truth : truths().all()) {
        numbers.insert(std::stoi(truth.name));
        EXPECT_TRUE(names.insert(truth.name).second) << truth.name << " twice";
    }
    for (int number = 1; number <= 26; ++number)
        EXPECT_TRUE(numbers.contains(number)) << number;
}

TEST(OrderTruthsTest, FindWhatIsWrongAndLeaveWhatIsRight) {
    for (const Json& plan : fileOf("plans.json")) {
        const std::string name = plan.at("truth").get<std::string>();
        const Acts acts = actsIn(plan.at("plan").get<std::string>());
        const Finding finding = truths().judge(truths().named(name), acts,
                                               sayableWithout(plan.value("no_words_for", Json::array())));
        const std::string where = name + ": " + plan.at("plan").get<std::string>();
        EXPECT_EQ(wordOf(finding.verdict), plan.at("is").get<std::string>())
            << where << " (" << finding.first << " > " << finding.second << ")";
        if (plan.contains("shows")) {
            EXPECT_EQ(finding.first + " > " + finding.second, plan.at("shows").get<std::string>()) << where;
        }
    }
}

TEST(OrderTruthsTest, EachHasAPlanThatBreaksItAndOneThatHoldsIt) {
    std::map<std::string, std::set<std::string>> seen;
    for (const Json& plan : fileOf("plans.json"))
        seen[plan.at("truth").get<std::string>()].insert(plan.at("is").get<std::string>());
    for (const Truth& truth : truths().all()) {
        EXPECT_TRUE(seen[truth.name].contains("broken")) << truth.name;
        EXPECT_TRUE(seen[truth.name].contains("held")) << truth.name;
    }
}

// A truth whose plan holds because none of it was read would hold without its acts as well.
TEST(OrderTruthsTest, ConcernOnlyWhatTheyAreAbout) {
    for (const Truth& truth : truths().all())
        EXPECT_EQ(wordOf(truths().judge(truth, {"off nothing that is known"}, {}).verdict),
                  truth.at.empty() || !truth.at.front().matches("off nothing that is known") ? "not concerned"
                                                                                             : "held")
            << truth.name;
}

// Each state in each list by itself, at each act: none stands there without being asked.
TEST(OrderTruthsTest, SeeEachStateThatMustNotBe) {
    int asked = 0;
    for (const Truth& truth : truths().all())
        for (const std::string& state : truth.notWhile)
            for (const Pattern& begin : truths().state(state).begins)
                for (const Pattern& at : truth.at) {
                    const Acts acts{begin.with("seat").text(), at.with("seat").text()};
                    EXPECT_EQ(wordOf(truths().judge(truth, acts, {}).verdict), "broken")
                        << truth.name << ": " << acts.front() << "; " << acts.back();
                    ++asked;
                }
    EXPECT_GE(asked, 98);
}

TEST(OrderTruthsTest, MissEachStateThatMustBe) {
    for (const Truth& truth : truths().all())
        for (const std::string& name : truth.onlyWhile)
            for (const Pattern& at : truth.at) {
                const std::string act = at.with("seat").text();
                const Truths::State state = truths().state(Pattern(name).with("seat").text());
                EXPECT_EQ(wordOf(truths().judge(truth, {act}, {}).verdict), "broken")
                    << truth.name << ": " << act;
                EXPECT_EQ(wordOf(truths().judge(truth, {state.begins.front().text(), act}, {}).verdict),
                          "held")
                    << truth.name << ": " << act;
                for (const Pattern& end : state.ends)
                    EXPECT_EQ(wordOf(truths()
                                         .judge(truth, {state.begins.front().text(), end.text(), act}, {})
                                         .verdict),
                              "broken")
                        << truth.name << ": " << end.text() << "; " << act;
            }
}

TEST(OrderTruthsTest, AJointTakenAsLooseAfterItWasTorquedIsNotHeld) {
    const Truth& caps = truths().named("4f");
    EXPECT_EQ(truths().judge(caps, {"crack top pinch bolts", "torque fork caps"}, {}).verdict, Verdict::Held);
    EXPECT_EQ(truths().judge(caps, {"torque fork caps"}, {}).verdict, Verdict::Broken);
}

}  // namespace
}  // namespace wm::order

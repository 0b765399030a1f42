// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// What must be true of the state of any bench, whoever reckons it.
#include "tests/core/slow/random_bench.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <map>

#include "tests/core/slow/state.h"

namespace wm::tale {
namespace {

constexpr std::uint64_t kBenches = 300;

int daysOf(std::uint64_t seed) {
    return 3 + static_cast<int>(seed % 15);
}

void lookAt(const State& state, const std::string& machine, std::map<std::string, int>& seen) {
    seen["whole"] += state.isWhole() ? 1 : 0;
    seen["open"] += state.open.empty() ? 0 : 1;
    seen["out"] += state.out.empty() ? 0 : 1;
    seen["missing"] += state.missing.empty() ? 0 : 1;
    seen["away"] += state.away.empty() ? 0 : 1;
    seen["asked"] += state.questions.empty() ? 0 : 1;
    for (const std::string& doubt : state.inDoubt)
        ++seen[doubt.starts_with("older")                          ? "older moves"
               : doubt.find("tightened with") != std::string::npos ? "wrench"
               : doubt.find("came with") != std::string::npos      ? "came with"
                                                                   : "out and back"];
    for (const std::string& joint : state.out)
        seen["out by the work alone"] += joint.starts_with("seat bolt") ? 1 : 0;
    for (const std::string& joint : state.handTight) {
        ++seen[joint.substr(0, joint.find_first_of("0123456789,") - 1)];
        if (joint.starts_with("top cover bolts") && machine != "Heron")
            ++seen["known on the other machine alone"];
    }
}

TEST(RandomBenchTest, HoldsWhatItIsFor) {
    std::map<std::string, int> seen;
    for (std::uint64_t seed = 1; seed <= kBenches; ++seed)
        for (const std::string machine : {"Heron", "Kite", "Plover"})
            lookAt(slowState(randomBench(seed, daysOf(seed)), machine, benchDay(daysOf(seed))), machine,
                   seen);
    for (const char* what : {"whole", "open", "out", "out by the work alone", "missing", "away", "asked",
                             "older moves", "wrench", "came with", "out and back", "head nuts",
                             "clutch hub nut", "sprocket bolts", "engine mount", "rear axle nut",
                             "rocker cover bolts", "seat bolt", "known on the other machine alone"})
        EXPECT_GE(seen[what], 5) << what;
}

// Nobody has to say in which order he rode and worked, so the order of telling says nothing either.
TEST(RandomBenchTest, WorkAndRideOfOneDayAreToldInEitherOrder) {
    for (std::uint64_t seed = 1; seed <= kBenches; ++seed) {
        auto facts = randomBench(seed, daysOf(seed));
        const State before = slowState(facts, "Heron", benchDay(daysOf(seed)));
        const auto isRide = [](const Json& fact) { return fact.contains("ride"); };
        for (std::size_t i = 1; i < facts.size(); ++i)
            if (facts[i].contains("day") && facts[i - 1].contains("day") &&
                facts[i].at("day") == facts[i - 1].at("day") && isRide(facts[i]) != isRide(facts[i - 1]))
                std::swap(facts[i], facts[i - 1]);
        EXPECT_TRUE(slowState(facts, "Heron", benchDay(daysOf(seed))) == before) << "bench " << seed;
    }
}

// With every joint confirmed the next day by a wrench that was checked that day, nothing is left that a
// wrench can settle; what is not there is still not there, and what came from elsewhere may have more than
// this machine knows.
TEST(RandomBenchTest, AConfirmationOfAllLeavesOnlyWhatIsNotThere) {
    for (std::uint64_t seed = 1; seed <= kBenches; ++seed) {
        auto facts = randomBench(seed, daysOf(seed));
        const auto next = benchDay(daysOf(seed));
        const State before = slowState(facts, "Heron", next);
        facts.push_back({{"tool", "Third wrench"}});
        facts.push_back({{"day", next.iso()}, {"check", "Third wrench"}, {"passed", true}});
        Json all{{"day", next.iso()}, {"confirm", Json::array()}, {"on", "Heron"}, {"with", "Third wrench"}};
        for (const Json& fact : facts)
            if (fact.contains("joint") && fact.value("of", "") == "Heron")
                all["confirm"].push_back(fact.at("joint"));
        facts.push_back(all);
        const State after = slowState(facts, "Heron", next);
        EXPECT_TRUE(after.handTight.empty()) << "bench " << seed;
        for (const std::string& doubt : after.inDoubt)
            EXPECT_NE(doubt.find("came with joints"), std::string::npos) << "bench " << seed << ": " << doubt;
        EXPECT_TRUE(std::includes(before.out.begin(), before.out.end(), after.out.begin(), after.out.end()))
            << "bench " << seed;
        EXPECT_TRUE(after.missing == before.missing && after.away == before.away && after.open == before.open)
            << "bench " << seed;
    }
}

TEST(RandomBenchTest, ADayWithoutAnyFactChangesNothing) {
    for (std::uint64_t seed = 1; seed <= kBenches; ++seed) {
        const auto facts = randomBench(seed, daysOf(seed));
        EXPECT_TRUE(slowState(facts, "Heron", benchDay(daysOf(seed))) ==
                    slowState(facts, "Heron", benchDay(daysOf(seed) + 3)))
            << "bench " << seed;
    }
}

// A joint is on at most one list, and a position too.
TEST(RandomBenchTest, NothingIsSaidTwice) {
    for (std::uint64_t seed = 1; seed <= kBenches; ++seed) {
        const State state = slowState(randomBench(seed, daysOf(seed)), "Heron", benchDay(daysOf(seed)));
        for (const std::string& path : state.missing)
            for (const std::string& away : state.away)
                EXPECT_FALSE(away.starts_with(path + ":")) << "bench " << seed;
        for (const std::string& doubt : state.inDoubt)
            for (const std::string& joint : state.handTight)
                EXPECT_FALSE(doubt.find("tightened with") != std::string::npos &&
                             joint.starts_with(doubt.substr(0, doubt.find(':'))))
                    << "bench " << seed;
    }
}

}  // namespace
}  // namespace wm::tale

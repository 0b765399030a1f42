// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include "tests/core/made.h"

namespace wm::upkeep {
namespace {

using base::Error;
using base::Fault;
using made::day;
using made::hours;
using made::Made;

constexpr MachineId kMachine{77};

class FollowUpsTest : public testing::Test {
  protected:
    Made make;
    usage::UseFacts use;
    std::vector<Record> records;
    std::vector<FollowUpAnswer> answers;
    std::vector<std::pair<std::string, FollowUpRule>> rules;  // of the job "wheel"

    // Of one machine on which nothing is tracked.
    std::vector<Demand> demands(std::span<const usage::Atom> atoms) const {
        std::vector<Demand> all;
        for (const Record& record : records)
            if (record.code == "wheel" && record.kind == RecordKind::Done)
                for (const auto& [because, rule] : rules) {
                    Demand demand{.origin = &record, .because = because, .rule = rule, .machine = kMachine};
                    demand.stands = {{momentOf(record), std::nullopt}};
                    demand.atoms = atoms;
                    for (const Record& other : records)
                        if (!rule.code.empty() && other.code == rule.code)
                            demand.settling.push_back(&other);
                    all.push_back(demand);
                }
        return all;
    }
    // "what since date due", one a line.
    std::vector<std::string> open(std::string_view on) {
        std::vector<const FollowUpAnswer*> answerPointers;
        for (const FollowUpAnswer& answer : answers)
            answerPointers.push_back(&answer);
        const auto atoms = usage::atomsOf(use);
        std::vector<std::string> lines;
        for (const FollowUp& up : openFollowUps(demands(atoms), answerPointers, day(on))) {
            EXPECT_EQ(up.machine, kMachine);
            lines.push_back(up.because + ": " + up.rule.what + " since " + up.since.iso() +
                            (up.due ? " due" : ""));
        }
        return lines;
    }
    FollowUpAnswer answer(std::size_t record, std::string what, std::string_view date) {
        FollowUpAnswer made;
        made.origin = records[record].id.value();
        made.what = std::move(what);
        made.date = day(date);
        return made;
    }
};

using Lines = std::vector<std::string>;

TEST_F(FollowUpsTest, ComeInTheirTime) {
    rules = {{"axle", {.what = "pump the brake"}},
             {"axle", {.what = "re-check spokes", .when = When::NextOuting}},
             {"axle", {.what = "re-check nuts", .when = When::AfterHours, .amount = 300}},
             {"axle", {.what = "look again", .when = When::AfterDays, .amount = 10}}};
    records = {make.record("2026-05-01", RecordKind::Done, "wheel")};
    EXPECT_EQ(open("2026-04-30"), Lines{});
    EXPECT_EQ(open("2026-05-01"),
              (Lines{"axle: pump the brake since 2026-05-01 due", "axle: re-check spokes since 2026-05-01",
                     "axle: re-check nuts since 2026-05-01", "axle: look again since 2026-05-01"}));
    use.washes = {make.wash("2026-05-02")};
    EXPECT_EQ(open("2026-05-02")[1], "axle: re-check spokes since 2026-05-01") << "a wash is no outing";
    use.outings = {make.outing("2026-05-01", "5"), make.outing("2026-05-03", "2"),
                   make.outing("2026-05-05", "1")};
    EXPECT_EQ(open("2026-05-03")[1], "axle: re-check spokes since 2026-05-01 due");
    EXPECT_EQ(open("2026-05-04")[2], "axle: re-check nuts since 2026-05-01");
    EXPECT_EQ(open("2026-05-05")[2], "axle: re-check nuts since 2026-05-01 due");
    EXPECT_EQ(open("2026-05-10")[3], "axle: look again since 2026-05-01");
    EXPECT_EQ(open("2026-05-11")[3], "axle: look again since 2026-05-01 due");
}

TEST_F(FollowUpsTest, UnloggedRidingIsAnOutingToo) {
    rules = {{"axle", {.what = "re-check", .when = When::NextOuting}}};
    records = {make.record("2026-05-03", RecordKind::Done, "wheel")};
    use.hourReadings = {make.reading("2026-05-01", "1"), make.reading("2026-05-03", "2")};
    EXPECT_EQ(open("2026-05-06"), (Lines{"axle: re-check since 2026-05-03"})) << "all of it before the job";
    use.hourReadings.push_back(make.reading("2026-05-06", "3"));
    EXPECT_EQ(open("2026-05-05"), (Lines{"axle: re-check since 2026-05-03 due"}))
        << "some of it by then, as far as anybody can say";
    EXPECT_EQ(open("2026-05-03"), (Lines{"axle: re-check since 2026-05-03"}));
}

TEST_F(FollowUpsTest, AnAnswerClosesItsOwn) {
    rules = {{"axle", {.what = "pump the brake"}}, {"axle", {.what = "line up the chain"}}};
    records = {make.record("2026-05-01", RecordKind::Done, "wheel")};
    answers = {answer(0, "pump the brake", "2026-05-02")};
    EXPECT_EQ(open("2026-05-02"), (Lines{"axle: line up the chain since 2026-05-01 due"}));
    EXPECT_EQ(open("2026-05-01").size(), 2U) << "answered tomorrow";
    answers = {answer(0, "pump the brake", "2026-05-02")};
    answers[0].origin = 12345;
    EXPECT_EQ(open("2026-05-02").size(), 2U);
}

TEST_F(FollowUpsTest, ARecordOfTheNamedTaskClosesIt) {
    rules = {{"new wheel", {.what = "spokes", .code = "spokes", .when = When::NextOuting}}};
    records = {make.record("2026-05-01", RecordKind::Done, "wheel"),
               make.record("2026-05-02", RecordKind::Done, "spokes")};
    use.outings = {make.outing("2026-05-03", "1")};
    EXPECT_EQ(open("2026-05-03"), (Lines{"new wheel: spokes since 2026-05-01 due"}))
        << "done before it was due";
    records.push_back(make.record("2026-05-03", RecordKind::Baseline, "spokes"));
    EXPECT_EQ(open("2026-05-03"), Lines{}) << "a baseline says that it was done";
    records.back() = make.record("2026-05-03", RecordKind::LookedFine, "spokes");
    EXPECT_EQ(open("2026-05-03"), Lines{});
}

TEST_F(FollowUpsTest, WhatIsAskedForAtOnceIsClosedTheSameEvening) {
    rules = {{"new wheel", {.what = "chain slack", .code = "slack"}}};
    records = {make.record("2026-05-01", RecordKind::Done, "wheel")};
    EXPECT_EQ(open("2026-05-01").size(), 1U);
    records.push_back(make.record("2026-05-01", RecordKind::Done, "slack"));
    EXPECT_EQ(open("2026-05-01"), Lines{});
}

TEST_F(FollowUpsTest, AJobDoesNotCloseItsOwnDemand) {
    rules = {{"wheel", {.what = "do it again", .code = "wheel"}}};
    records = {make.record("2026-05-01", RecordKind::Done, "wheel")};
    EXPECT_EQ(open("2026-05-01").size(), 1U);
}

TEST_F(FollowUpsTest, ANewerOriginTakesThePlaceOfTheOlder) {
    rules = {{"axle", {.what = "re-check", .when = When::NextOuting}}};
    records = {make.record("2026-05-10", RecordKind::Done, "wheel"),
               make.record("2026-05-01", RecordKind::Done, "wheel")};
    use.outings = {make.outing("2026-05-05", "1")};
    EXPECT_EQ(open("2026-05-10"), (Lines{"axle: re-check since 2026-05-10"}));
    EXPECT_EQ(open("2026-05-09"), (Lines{"axle: re-check since 2026-05-01 due"}));
    answers = {answer(0, "re-check", "2026-05-10")};
    EXPECT_EQ(open("2026-05-10"), Lines{}) << "looked at after the newer job: that covers the older";
}

TEST_F(FollowUpsTest, StandInOrderOfOriginAndOnlyDoneWorkBringsThem) {
    rules = {{"front", {.what = "re-check"}}, {"rear", {.what = "re-check"}}};
    records = {make.record("2026-05-10", RecordKind::LookedFine, "wheel"),
               make.record("2026-05-01", RecordKind::Done, "wheel")};
    EXPECT_EQ(open("2026-05-10"),
              (Lines{"front: re-check since 2026-05-01 due", "rear: re-check since 2026-05-01 due"}));
    rules.pop_back();
    records.push_back(make.record("2026-04-01", RecordKind::Done, "wheel"));
    EXPECT_EQ(open("2026-05-10").size(), 1U);
}

class DeferralTest : public testing::Test {
  protected:
    std::vector<Deferral> all;
    Deferral& put(std::string_view date, std::int64_t entered) {
        Deferral deferral;
        deferral.id = DeferralId{entered};
        deferral.entered = entered;
        deferral.date = day(date);
        all.push_back(deferral);
        return all.back();
    }
    // The order of entry of the one in force, or 0.
    std::int64_t inForce(std::string_view on, std::string_view machine = "0",
                         std::optional<calendar::Date> lastDone = {}) {
        std::vector<const Deferral*> pointers;
        for (const Deferral& deferral : all)
            pointers.push_back(&deferral);
        const Deferral* found = deferralInForce(pointers, day(on), hours(machine), lastDone);
        return found == nullptr ? 0 : found->entered;
    }
};

TEST_F(DeferralTest, ComesBackOnItsDayOrAtItsHours) {
    put("2026-05-01", 1).untilDate = day("2026-05-10");
    EXPECT_EQ(inForce("2026-04-30"), 0);
    EXPECT_EQ(inForce("2026-05-01"), 1);
    EXPECT_EQ(inForce("2026-05-09"), 1);
    EXPECT_EQ(inForce("2026-05-10"), 0);
    all[0].untilHours = hours("62");
    EXPECT_EQ(inForce("2026-05-02", "61.99"), 1);
    EXPECT_EQ(inForce("2026-05-02", "62"), 0);
    all[0].untilDate.reset();
    EXPECT_EQ(inForce("2026-06-02", "61.99"), 1);
}

TEST_F(DeferralTest, TheNewestDecisionCounts) {
    put("2026-05-01", 1).untilDate = day("2026-12-01");
    put("2026-05-03", 2).untilDate = day("2026-05-05");
    EXPECT_EQ(inForce("2026-05-02"), 1);
    EXPECT_EQ(inForce("2026-05-04"), 2);
    EXPECT_EQ(inForce("2026-05-05"), 0) << "cut short: the old one does not come back";
    put("2026-05-03", 3).untilDate = day("2026-05-08");
    EXPECT_EQ(inForce("2026-05-05"), 3);
    std::swap(all[1], all[2]);
    EXPECT_EQ(inForce("2026-05-05"), 3);
}

TEST_F(DeferralTest, WithoutAnEndItHoldsNothing) {
    put("2026-05-01", 1);
    EXPECT_EQ(inForce("2026-05-01"), 0);
    EXPECT_EQ((all.clear(), inForce("2026-05-01")), 0);
}

TEST_F(DeferralTest, TheJobEndsIt) {
    put("2026-05-01", 1).untilDate = day("2026-12-01");
    EXPECT_EQ(inForce("2026-05-09", "0", day("2026-04-30")), 1);
    EXPECT_EQ(inForce("2026-05-09", "0", day("2026-05-01")), 0);
}

}  // namespace
}  // namespace wm::upkeep

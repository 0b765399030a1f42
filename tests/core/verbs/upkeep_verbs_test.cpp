// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/verbs/bench.h"

namespace wm::verbs {
namespace {

using base::Fault;
using units::Hours;
using upkeep::Consequence;

class UpkeepVerbsTest : public testing::Test, public FurnishedBench {
  protected:
    SnagId addLeak(Consequence consequence = Consequence::CostsMoney) {
        must(saying(addSnag, upkeep::Snag{.machine = heron,
                                          .date = day("2026-03-01"),
                                          .what = "weeping fork seal",
                                          .consequence = consequence}));
        return last<upkeep::Snag>();
    }
    [[nodiscard]] upkeep::Deferral putOff(TaskId task, const char* until, std::string reason) const {
        return {.machine = heron,
                .task = task,
                .date = today,
                .untilDate = day(until),
                .reason = std::move(reason)};
    }
};

TEST_F(UpkeepVerbsTest, NotesASnag) {
    addLeak();
    ASSERT_EQ(book().snags(heron).size(), 1U);
    const auto at = [&](auto&& spoil) {
        upkeep::Snag other{.machine = heron, .date = day("2026-03-01"), .what = "bent lever"};
        spoil(other);
        return refusedAt(saying(addSnag, other));
    };
    EXPECT_EQ(at([](auto& s) { s.what = "Weeping fork seal "; }), At(Fault::Duplicate, "what"));
    EXPECT_EQ(at([](auto& s) { s.what = " "; }), At(Fault::Empty, "what"));
    EXPECT_EQ(at([](auto& s) { s.what = "\xfe"; }), At(Fault::NotText, "what"));
    EXPECT_EQ(at([](auto& s) { s.machine = MachineId{1}; }), At(Fault::Unknown, "machine"));
    EXPECT_EQ(at([](auto& s) { s.item = ItemId{1}; }), At(Fault::Unknown, "item"));
    EXPECT_EQ(at([](auto& s) { s.task = TaskId{1}; }), At(Fault::Unknown, "task"));
    EXPECT_EQ(at([](auto& s) { s.date = day("2026-05-21"); }), At(Fault::InFuture, "date"));
    EXPECT_EQ(at([](auto& s) { s.date = day("2026-01-01"); }), At(Fault::BeforeItsTime, "date"));
}

TEST_F(UpkeepVerbsTest, ATaskOfAnotherMachineIsNotMeant) {
    must(saying(saveMachine, items::Machine{.name = "Otter 125", .since = day("2026-01-10")}));
    const MachineId otter = last<items::Machine>();
    EXPECT_EQ(
        refusedAt(saying(
            addSnag, upkeep::Snag{.machine = otter, .task = pads, .date = day("2026-03-01"), .what = "x"})),
        At(Fault::Inconsistent, "task"));
    JobDraft draft{.record = job(pads, "2026-03-01")};
    draft.record.machine = otter;
    EXPECT_EQ(refusedAt(record(draft)), At(Fault::Inconsistent, "task"));
    draft.record = {.machine = otter, .snag = addLeak(), .date = day("2026-03-01")};
    EXPECT_EQ(refusedAt(record(draft)), At(Fault::Inconsistent, "snag"));
}

TEST_F(UpkeepVerbsTest, ClosesASnagOnce) {
    const SnagId snag = addLeak();
    must(saying(pick, heron, std::nullopt, snag, true));
    upkeep::SnagEnd end{.snag = snag, .date = day("2026-02-28"), .how = "was only spray"};
    EXPECT_EQ(refusedAt(saying(endSnag, end)), At(Fault::BeforeItsTime, "date"));
    end.date = day("2026-05-21");
    EXPECT_EQ(refusedAt(saying(endSnag, end)), At(Fault::InFuture, "date"));
    end.date = day("2026-03-01");
    end.record = RecordId{1};
    EXPECT_EQ(refusedAt(saying(endSnag, end)), At(Fault::Unknown, "record"));
    end.record.reset();
    EXPECT_EQ(must(saying(endSnag, end)), "closed the snag \"weeping fork seal\" on Heron 250");
    EXPECT_TRUE(book().snags(heron).empty());
    EXPECT_FALSE(ledger().all<weekend::Pick>().at(0).picked);
    EXPECT_EQ(refusedAt(saying(endSnag, end)), At(Fault::NothingToDo, "snag"));
    end.snag = SnagId{4};
    EXPECT_EQ(refusedAt(saying(endSnag, end)), At(Fault::Unknown, "snag"));
    addLeak();  // the same words are free again
}

TEST_F(UpkeepVerbsTest, PutsAJobOff) {
    EXPECT_EQ(must(saying(defer, putOff(oilChange, "2026-06-01", ""))),
              "put off \"Oil change\" on Heron 250 until 2026-06-01");
    auto byHours = putOff(oilChange, "2026-06-01", "");
    byHours.untilHours = Hours{1250};
    EXPECT_EQ(must(saying(defer, byHours)), "put off \"Oil change\" on Heron 250 until 2026-06-01 or 12.5 h");
    byHours.untilDate.reset();
    EXPECT_EQ(must(saying(defer, byHours)), "put off \"Oil change\" on Heron 250 until 12.5 h");
    const SnagId snag = addLeak();
    EXPECT_EQ(must(saying(defer, upkeep::Deferral{.machine = heron,
                                                  .snag = snag,
                                                  .date = day("2026-03-02"),
                                                  .untilDate = day("2026-06-01")})),
              "put off \"weeping fork seal\" on Heron 250 until 2026-06-01");
    EXPECT_NE(book().snags(heron).at(0).deferral, nullptr);
}

TEST_F(UpkeepVerbsTest, ASafetyJobIsPutOffForAReasonOnly) {
    EXPECT_EQ(refusedAt(saying(defer, putOff(pads, "2026-06-01", " "))), At(Fault::ReasonNeeded, "reason"));
    must(saying(defer, putOff(pads, "2026-06-01", "new pads are in the post")));
    // Again with the same words, it would roll over in silence.
    const auto error = refused(saying(defer, putOff(pads, "2026-06-08", "New pads are in the post")));
    EXPECT_EQ(error.fault, Fault::ReasonNeeded);
    EXPECT_EQ(error.given, "new pads are in the post");
    EXPECT_EQ(refusedAt(saying(defer, putOff(pads, "2026-06-08", ""))), At(Fault::ReasonNeeded, "reason"));
    must(saying(defer, putOff(pads, "2026-06-08", "the post lost them, ordered again")));
    const SnagId snag = addLeak(Consequence::SafetyHidden);
    EXPECT_EQ(
        refusedAt(saying(
            defer,
            upkeep::Deferral{.machine = heron, .snag = snag, .date = today, .untilDate = day("2026-06-01")})),
        At(Fault::ReasonNeeded, "reason"));
}

// Put off for a week; the week is over and the job is back. The same words again would let it roll over in
// silence, as if the week had never ended. Once the job was done, the words are a reason again.
TEST_F(UpkeepVerbsTest, ASafetyDeferralThatRanOutIsNotSaidAgainInTheSameWords) {
    must(saying(defer, putOff(pads, "2026-05-27", "new pads are in the post")));
    EXPECT_NE(book().dueLine(pads)->deferral, nullptr);
    today = day("2026-05-27");
    EXPECT_EQ(book().dueLine(pads)->deferral, nullptr) << "it came back by itself";
    EXPECT_EQ(refusedAt(saying(defer, putOff(pads, "2026-06-03", "New pads are in the post "))),
              At(Fault::ReasonNeeded, "reason"));
    must(record({.record = job(pads, "2026-05-27")}));
    today = day("2026-06-20");
    must(saying(defer, putOff(pads, "2026-06-27", "new pads are in the post")));
}

TEST_F(UpkeepVerbsTest, ADeferralHasAnEndAhead) {
    must(ride({.outing = outing("2026-03-01", 500)}));
    const auto at = [&](auto&& spoil) {
        auto deferral = putOff(oilChange, "2026-06-01", "");
        spoil(deferral);
        return refusedAt(saying(defer, deferral));
    };
    EXPECT_EQ(at([](auto& d) { d.untilDate.reset(); }), At(Fault::Empty, "until_date"));
    EXPECT_EQ(at([&](auto& d) { d.untilDate = today; }), At(Fault::OutOfOrder, "until_date"));
    EXPECT_EQ(at([](auto& d) { d.untilHours = Hours{500}; }), At(Fault::OutOfOrder, "until_hours"));
    EXPECT_EQ(at([](auto& d) { d.untilHours = Hours{-1}; }), At(Fault::Negative, "until_hours"));
    EXPECT_EQ(at([](auto& d) { d.task.reset(); }), At(Fault::Empty, "task"));
    EXPECT_EQ(at([](auto& d) { d.snag = SnagId{1}; }), At(Fault::Inconsistent, "task"));
    EXPECT_EQ(at([](auto& d) { d.task = TaskId{1}; }), At(Fault::Unknown, "task"));
    EXPECT_EQ(at([](auto& d) { d.by = PersonId{1}; }), At(Fault::Unknown, "by_person"));
    EXPECT_EQ(at([](auto& d) { d.machine = MachineId{1}; }), At(Fault::Unknown, "machine"));
    EXPECT_EQ(at([](auto& d) { d.date = day("2026-05-21"); }), At(Fault::InFuture, "date"));
}

TEST_F(UpkeepVerbsTest, AnswersAFollowUpOnce) {
    must(record({.record = job(oilChange, "2026-03-02")}));
    upkeep::FollowUpAnswer answer{.machine = heron,
                                  .origin = last<upkeep::Record>().value(),
                                  .what = "check for leaks",
                                  .date = day("2026-03-03")};
    EXPECT_EQ(must(saying(answerFollowUp, answer)), "answered \"check for leaks\" on Heron 250");
    EXPECT_EQ(refusedAt(saying(answerFollowUp, answer)), At(Fault::NothingToDo, "what"));
    answer.what = "";
    EXPECT_EQ(refusedAt(saying(answerFollowUp, answer)), At(Fault::Empty, "what"));
    answer.what = "x";
    answer.origin = wheel.value();
    EXPECT_EQ(refusedAt(saying(answerFollowUp, answer)), At(Fault::Unknown, "origin"));
    must(saying(logCrash, usage::Crash{.machine = heron, .date = day("2026-03-04")}));
    answer.origin = last<usage::Crash>().value();
    answer.date = day("2026-06-04");
    EXPECT_EQ(refusedAt(saying(answerFollowUp, answer)), At(Fault::InFuture, "date"));
    answer.date = day("2026-03-04");
    must(saying(answerFollowUp, answer));
}

TEST_F(UpkeepVerbsTest, SaysALongSnagInShort) {
    const std::string umlauts = [] {
        std::string text;
        for (int i = 0; i < 40; ++i)
            text += "ä";
        return text;
    }();
    EXPECT_EQ(must(saying(addSnag,
                          upkeep::Snag{.machine = heron, .date = today, .what = umlauts + "\nsecond line"})),
              "noted the snag \"" + umlauts.substr(0, 60) + "…\" on Heron 250");
    EXPECT_EQ(must(saying(addSnag, upkeep::Snag{.machine = heron, .date = today, .what = "a\nb"})),
              "noted the snag \"a…\" on Heron 250");
}

}  // namespace
}  // namespace wm::verbs

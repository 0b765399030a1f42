// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/verbs/bench.h"

namespace wm::verbs {

using picture::Strike;

namespace {

using base::Fault;
using units::Hours;

class CorrectVerbsTest : public testing::Test, public FurnishedBench {
  protected:
    // A job that brings one of everything that a job can bring.
    RecordId recordAll() {
        must(record({.record = job(oilChange, "2026-02-01")}));
        const auto origin = last<upkeep::Record>().value();
        must(saying(addSnag,
                    upkeep::Snag{.machine = heron, .date = day("2026-03-01"), .what = "pads are thin"}));
        JobDraft draft{.record = job(pads, "2026-03-02"), .answers = {{origin, "check for leaks"}}};
        draft.record.snag = last<upkeep::Snag>();
        draft.record.meter = Hours{900};
        draft.record.uses = {{.line = oil, .amount = 100}};
        draft.record.steps = {{"rear-wheel"}};
        must(record(draft));
        return last<upkeep::Record>();
    }
};

TEST_F(CorrectVerbsTest, StrikesAnOutingWithAllThatCameWithIt) {
    must(ride({.outing = outing("2026-02-20", 100), .meterAfter = Hours{100}, .washed = true}));
    must(ride(
        {.outing = outing("2026-03-01", 900), .meterAfter = Hours{1000}, .washed = true, .crashed = true}));
    EXPECT_EQ(must(saying(strike, last<usage::Outing>().value(), "wrong machine")),
              "struck the outing of 2026-03-01 on Heron 250");
    EXPECT_EQ(ledger().all<usage::Outing>().size(), 1U);
    EXPECT_EQ(ledger().all<usage::HourReading>().size(), 1U);
    EXPECT_EQ(ledger().all<usage::Wash>().size(), 1U);
    EXPECT_TRUE(ledger().all<usage::Crash>().empty());
    EXPECT_EQ(ledger().struck<usage::Outing>().size(), 1U);
    for (const Strike& strike : ledger().all<Strike>()) {
        EXPECT_EQ(strike.reason, "wrong machine");
        EXPECT_EQ(strike.date, today);
    }
    EXPECT_EQ(book().life(heron).hours.best, Hours{100});
}

// Three outings of one day, each with what the meter showed after it: any of them can be entered anew.
TEST_F(CorrectVerbsTest, CorrectsEachOfThreeOutingsOfOneDay) {
    for (const std::int64_t shown : {101, 100, 102})
        must(ride({.outing = outing("2026-02-20", 10), .meterAfter = Hours{shown}}));
    const auto noted = ledger().all<usage::Outing>();
    const std::vector<usage::Outing> outings(noted.begin(), noted.end());
    for (std::size_t at = 0; at < outings.size(); ++at)
        must(saying(correct, outings[at].id.value(), "rider",
                    ride({.outing = outings[at], .meterAfter = Hours{std::array{101, 100, 102}.at(at)}})));
    EXPECT_EQ(ledger().all<usage::Outing>().size(), 3U);
    EXPECT_EQ(book().meterNow(heron), Hours{102});
}

TEST_F(CorrectVerbsTest, StrikesAJobWithAllThatItBrought) {
    const RecordId id = recordAll();
    EXPECT_EQ(book().handTight(heron).size(), 1U);
    EXPECT_EQ(must(saying(strike, id.value(), "was the other bike")),
              "struck \"Brake pads\" of 2026-03-02 on Heron 250");
    EXPECT_TRUE(book().handTight(heron).empty());
    EXPECT_EQ(book().snags(heron).size(), 1U);
    EXPECT_EQ(book().onHand(oil)->amount, 1000);
    EXPECT_TRUE(ledger().all<usage::HourReading>().empty());
    EXPECT_TRUE(ledger().all<upkeep::FollowUpAnswer>().empty());
    EXPECT_EQ(ledger().all<upkeep::Record>().size(), 1U);
}

TEST_F(CorrectVerbsTest, StrikesOnlyFactsAndOnlyOnce) {
    must(saying(logWash, usage::Wash{.machine = heron, .date = today}));
    const auto wash = last<usage::Wash>().value();
    EXPECT_EQ(refusedAt(saying(strike, wash, " ")), At(Fault::ReasonNeeded, "reason"));
    EXPECT_EQ(refusedAt(saying(strike, wash, "\xff")), At(Fault::NotText, "reason"));
    must(saying(strike, wash, "never happened"));
    EXPECT_EQ(refusedAt(saying(strike, wash, "again")), At(Fault::AlreadyStruck, "fact"));
    EXPECT_EQ(refusedAt(saying(strike, last<Strike>().value(), "it did")), At(Fault::Unknown, "fact"));
    EXPECT_EQ(refusedAt(saying(strike, heron.value(), "sold")), At(Fault::Unknown, "fact"));
    EXPECT_EQ(refusedAt(saying(strike, ledger().all<upkeep::TaskVersion>()[0].id.value(), "x")),
              At(Fault::Unknown, "fact"));
    EXPECT_EQ(refusedAt(saying(strike, 5, "x")), At(Fault::Unknown, "fact"));
    EXPECT_EQ(refusedAt(saying(strike, -5, "x")), At(Fault::Unknown, "fact"));
}

TEST_F(CorrectVerbsTest, WhatWasStruckAloneStaysStruckOnce) {
    must(ride({.outing = outing("2026-03-01", 100), .washed = true}));
    must(saying(strike, last<usage::Wash>().value(), "it was not"));
    must(saying(strike, last<usage::Outing>().value(), "wrong day"));
    EXPECT_EQ(ledger().all<Strike>().size(), 2U);
}

TEST_F(CorrectVerbsTest, AMoveThatOthersRestOnStays) {
    const auto fitted = ledger().all<items::Move>()[1].id.value();
    must(saying(moveItem,
                items::Move{.item = wheel, .date = day("2026-03-01"), .kind = items::MoveKind::Removed}));
    EXPECT_EQ(refusedAt(saying(strike, fitted, "x")), At(Fault::NotFitted, "move"));
    must(saying(strike, last<items::Move>().value(), "it stayed on"));
    must(saying(strike, fitted, "was never on"));
    EXPECT_EQ(ledger().all<items::Move>().size(), 1U);
}

TEST_F(CorrectVerbsTest, CorrectsAReadingThatStoodInItsOwnWay) {
    const usage::HourReading wrong{.machine = heron, .date = day("2026-03-01"), .shown = Hours{9000}};
    must(saying(logReading, wrong));
    auto right = wrong;
    right.shown = Hours{900};
    EXPECT_EQ(refused(saying(logReading, right)).fault, Fault::MeterRunsBack);
    const auto fact = last<usage::HourReading>().value();
    EXPECT_EQ(must(saying(correct, fact, "digits swapped", saying(logReading, right))),
              "corrected the reading of 2026-03-01 on Heron 250");
    ASSERT_EQ(ledger().all<usage::HourReading>().size(), 1U);
    EXPECT_EQ(ledger().all<usage::HourReading>()[0].shown, Hours{900});
    EXPECT_EQ(ledger().struck<usage::HourReading>().size(), 1U);
}

TEST_F(CorrectVerbsTest, CorrectsTheFirstOfTwoOutingsOfADay) {
    must(ride({.outing = outing("2026-03-01", 80), .meterAfter = Hours{80}}));
    const auto first = last<usage::Outing>().value();
    must(ride({.outing = outing("2026-03-01", 70), .meterAfter = Hours{150}}));
    const auto before = book().life(heron);
    must(saying(correct, first, "rider was left out",
                ride({.outing = outing("2026-03-01", 80), .meterAfter = Hours{80}})));
    EXPECT_EQ(ledger().all<usage::HourReading>()[0].part, calendar::DayPart::Riding);
    EXPECT_EQ(book().meterNow(heron), Hours{150});
    EXPECT_EQ(book().life(heron), before);
}

TEST_F(CorrectVerbsTest, CorrectsAJobInOneGo) {
    const RecordId id = recordAll();
    JobDraft again{.record = job(pads, "2026-03-02"), .confirmed = {axle}};
    again.record.snag = ledger().all<upkeep::Snag>()[0].id;
    again.record.uses = {{.line = oil, .amount = 150}};
    again.record.steps = {{"rear-wheel"}};
    must(saying(correct, id.value(), "axle was confirmed", record(again)));
    EXPECT_EQ(book().onHand(oil)->amount, 850);
    EXPECT_TRUE(book().handTight(heron).empty());
    EXPECT_TRUE(book().snags(heron).empty());
    EXPECT_EQ(ledger().all<upkeep::Record>().size(), 2U);
}

// It was tightened with the job and found moved that evening: a word put right in the job makes it no
// tighter.
TEST_F(CorrectVerbsTest, WhatWasFoundAfterAJobStaysAfterIt) {
    using fastening::MarkKind;
    JobDraft draft{.record = job(pads, "2026-03-02"), .confirmed = {axle}};
    draft.record.steps = {{"rear-wheel"}};
    must(record(draft));
    const RecordId id = last<upkeep::Record>();
    must(
        saying(markJoints,
               {{.joint = axle, .date = day("2026-03-02"), .kind = MarkKind::FoundMoved, .note = "a hair"}}));
    ASSERT_EQ(book().handTight(heron).size(), 1U);
    auto again = *draftOf(ledger(), id);
    again.record.note = "new pads, the soft ones";
    must(saying(correct, id.value(), "which pads", record(again)));
    ASSERT_EQ(book().handTight(heron).size(), 1U);
    EXPECT_EQ(ledger().all<fastening::JointMark>().back().note, "a hair");
    EXPECT_EQ(ledger().all<fastening::JointMark>().size(), 2U) << "tightened, found moved";
    again = *draftOf(ledger(), last<upkeep::Record>());
    again.record.date = day("2026-03-03");
    must(saying(correct, last<upkeep::Record>().value(), "it was the day after", record(again)));
    EXPECT_TRUE(book().handTight(heron).empty()) << "tightened on the day after it was found";
}

// Two jobs of one evening: what was told first came first, and still does when a word of it is put right.
TEST_F(CorrectVerbsTest, WhatIsPutRightKeepsItsPlace) {
    JobDraft draft{.record = job(pads, "2026-03-02"), .confirmed = {axle}};
    draft.record.steps = {{"rear-wheel"}};
    draft.record.meter = Hours{900};
    must(record(draft));
    const RecordId id = last<upkeep::Record>();
    must(record({.record = job(oilChange, "2026-03-02")}));
    auto again = *draftOf(ledger(), id);
    again.record.note = "the soft ones";
    must(saying(correct, id.value(), "which pads", record(again)));
    const auto records = ledger().all<upkeep::Record>();
    ASSERT_EQ(records.size(), 2U);
    EXPECT_EQ(records[0].note, "the soft ones");
    EXPECT_EQ(records[0].entered, ledger().struck<upkeep::Record>()[0].entered);
    EXPECT_LT(ledger().all<fastening::JointMark>()[0].entered, records[1].entered);
    EXPECT_LT(ledger().all<usage::HourReading>().back().entered, records[1].entered);
}

// The words of a snag that was dealt with are put right: it does not come back, and the job that ended it,
// with all that came with it, is still its job.
TEST_F(CorrectVerbsTest, ASnagThatHasEndedStaysEnded) {
    const RecordId job = recordAll();
    const auto& old = ledger().all<upkeep::Snag>().front();
    const auto before = *ledger().find<upkeep::Record>(job);
    const auto open = book().handTight(heron).size();
    upkeep::Snag again = old;
    again.what = "rear pads are thin";
    must(saying(correct, old.id.value(), "which pads", saying(addSnag, again)));
    ASSERT_EQ(ledger().all<upkeep::Snag>().size(), 1U);
    EXPECT_TRUE(book().snags(heron).empty());
    const auto& carried = *ledger().find<upkeep::Record>(last<upkeep::Record>());
    EXPECT_EQ(carried.snag, ledger().all<upkeep::Snag>().front().id);
    EXPECT_EQ(carried.statedBest, before.statedBest);
    EXPECT_EQ(ledger().all<upkeep::Record>().size(), 2U);
    EXPECT_EQ(book().onHand(oil)->amount, 900);
    EXPECT_EQ(book().handTight(heron).size(), open);
    EXPECT_EQ(book().meterNow(heron), Hours{900});
}

TEST_F(CorrectVerbsTest, AnAnsweredFollowUpStaysAnswered) {
    must(record({.record = job(oilChange, "2026-02-01")}));
    const auto origin = last<upkeep::Record>();
    must(saying(answerFollowUp, upkeep::FollowUpAnswer{.machine = heron,
                                                       .origin = origin.value(),
                                                       .what = "check for leaks",
                                                       .date = day("2026-02-03")}));
    const auto open = book().followUps(heron).size();
    auto draft = *draftOf(ledger(), origin);
    draft.record.note = "a drop at the sump plug";
    must(saying(correct, origin.value(), "note", record(draft)));
    EXPECT_EQ(book().followUps(heron).size(), open);
    EXPECT_EQ(ledger().all<upkeep::FollowUpAnswer>().size(), 1U);
}

// A job of last month, put right when newer readings stand: what the meter showed then stays a reading.
TEST_F(CorrectVerbsTest, AJobKeepsItsReadingAmongNewerOnes) {
    auto first = job(oilChange, "2026-02-01");
    first.meter = Hours{900};
    must(record({.record = first}));
    const auto id = last<upkeep::Record>();
    must(ride({.outing = outing("2026-03-01", 100), .meterAfter = Hours{1000}}));
    auto draft = *draftOf(ledger(), id);
    draft.record.meter = Hours{890};
    must(saying(correct, id.value(), "read wrong", record(draft)));
    ASSERT_EQ(ledger().all<usage::HourReading>().size(), 2U);
    EXPECT_EQ(ledger().all<usage::HourReading>()[0].shown, Hours{890});
    EXPECT_EQ(ledger().all<usage::HourReading>()[0].record, last<upkeep::Record>());
}

TEST_F(CorrectVerbsTest, AWashStaysWithItsOuting) {
    must(ride({.outing = outing("2026-03-01", 100), .washed = true}));
    auto wash = ledger().all<usage::Wash>().front();
    wash.pressure = true;
    must(saying(correct, wash.id.value(), "jet", saying(logWash, wash)));
    EXPECT_EQ(ledger().all<usage::Wash>().front().outing, last<usage::Outing>());
    must(saying(strike, last<usage::Outing>().value(), "wrong machine"));
    EXPECT_TRUE(ledger().all<usage::Wash>().empty());
}

TEST_F(CorrectVerbsTest, CorrectsAMove) {
    const auto fitted = ledger().all<items::Move>()[1].id.value();
    must(saying(moveItem,
                items::Move{.item = wheel, .date = day("2026-03-01"), .kind = items::MoveKind::Removed}));
    const items::Move later{
        .item = wheel, .date = day("2026-02-01"), .machine = heron, .position = "rear wheel"};
    must(saying(correct, fitted, "was fitted later", saying(moveItem, later)));
    EXPECT_FALSE(book().fittings().at(heron, "rear wheel", {day("2026-01-20")}));
    auto tooLate = later;
    tooLate.date = day("2026-04-01");
    refused(saying(correct, last<items::Move>().value(), "even later", saying(moveItem, tooLate)));
}

TEST_F(CorrectVerbsTest, WhenTheNewEntryIsRefusedNothingIsStruck) {
    must(ride({.outing = outing("2026-03-01", 100)}));
    const auto fact = last<usage::Outing>().value();
    EXPECT_EQ(refusedAt(saying(correct, fact, "typo", ride({.outing = outing("2026-03-01", -1)}))),
              At(Fault::Negative, "hours"));
    EXPECT_EQ(refusedAt(saying(correct, fact, "", ride({.outing = outing("2026-03-01", 1)}))),
              At(Fault::ReasonNeeded, "reason"));
    EXPECT_TRUE(ledger().all<Strike>().empty());
}

TEST_F(CorrectVerbsTest, StrikeAndReEntryGiveTheSameFigures) {
    FurnishedBench plain;
    for (Bench* bench : {static_cast<Bench*>(this), static_cast<Bench*>(&plain)}) {
        bench->must(ride({.outing = outing("2026-03-01", 130), .meterAfter = Hours{150}, .washed = true}));
        bench->must(ride({.outing = outing("2026-03-08", 210), .meterAfter = Hours{380}}));
    }
    must(saying(correct, ledger().all<usage::Outing>()[0].id.value(), "again",
                ride({.outing = outing("2026-03-01", 130), .meterAfter = Hours{150}, .washed = true})));
    EXPECT_EQ(book().life(heron), plain.book().life(plain.heron));
    EXPECT_EQ(book().life(engine), plain.book().life(plain.engine));
}

}  // namespace
}  // namespace wm::verbs

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/book/state.h"
#include "tests/core/verbs/bench.h"

namespace wm::verbs {
namespace {

using base::Fault;
using units::Hours;
using units::Metres;
using usage::MeterEvent;

class UseVerbsTest : public testing::Test, public FurnishedBench {
  protected:
    At rideWith(const std::function<void(OutingDraft&)>& spoil) {
        OutingDraft draft{.outing = outing("2026-03-01", 130)};
        spoil(draft);
        return refusedAt(ride(draft));
    }
};

TEST_F(UseVerbsTest, LogsAnOutingWithAllThatCameWithIt) {
    OutingDraft draft{.outing = outing("2026-03-01", 130),
                      .meterAfter = Hours{140},
                      .pressureWashed = true,
                      .crashed = true};
    EXPECT_EQ(must(ride(draft)), "logged an outing of 1.3 h on Heron 250");
    const OutingId id = last<usage::Outing>();
    EXPECT_EQ(ledger().all<usage::HourReading>().at(0).shown, Hours{140});
    EXPECT_EQ(ledger().all<usage::HourReading>().at(0).outing, id);
    EXPECT_TRUE(ledger().all<usage::Wash>().at(0).pressure);
    EXPECT_EQ(ledger().all<usage::Wash>().at(0).outing, id);
    EXPECT_EQ(ledger().all<usage::Crash>().at(0).outing, id);
    EXPECT_EQ(book().life(heron).washes, 1);
}

TEST_F(UseVerbsTest, LogsAnOutingOfDistanceOrOfNothingButTheDay) {
    EXPECT_EQ(
        must(ride({.outing = {.machine = heron, .date = day("2026-03-01"), .distance = Metres{42'500}}})),
        "logged an outing of 42.5 km on Heron 250");
    EXPECT_EQ(must(ride({.outing = {.machine = heron, .date = day("2026-03-02")}, .washed = true})),
              "logged an outing on Heron 250");
    EXPECT_FALSE(ledger().all<usage::Wash>().at(0).pressure);
}

TEST_F(UseVerbsTest, RefusesAnOutingThatCannotBe) {
    EXPECT_EQ(rideWith([](auto& d) { d.outing.machine = MachineId{9}; }), At(Fault::Unknown, "machine"));
    EXPECT_EQ(rideWith([](auto& d) { d.outing.rider = PersonId{9}; }), At(Fault::Unknown, "rider"));
    EXPECT_EQ(rideWith([](auto& d) { d.outing.event = EventId{9}; }), At(Fault::Unknown, "event"));
    EXPECT_EQ(rideWith([](auto& d) { d.outing.date = day("2026-05-21"); }), At(Fault::InFuture, "date"));
    EXPECT_EQ(rideWith([](auto& d) { d.outing.date = day("2026-01-09"); }), At(Fault::BeforeItsTime, "date"));
    EXPECT_EQ(rideWith([](auto& d) { d.outing.date = calendar::Date{2'000'000'000}; }),
              At(Fault::NotADate, "date"));
    EXPECT_EQ(rideWith([](auto& d) { d.outing.hours = Hours{-1}; }), At(Fault::Negative, "hours"));
    EXPECT_EQ(rideWith([](auto& d) { d.outing.hours = Hours{2401}; }), At(Fault::TooLarge, "hours"));
    EXPECT_EQ(rideWith([](auto& d) { d.outing.distance = Metres{-1}; }), At(Fault::Negative, "distance"));
    EXPECT_EQ(rideWith([](auto& d) { d.outing.distance = Metres{3'000'001}; }),
              At(Fault::TooLarge, "distance"));
    EXPECT_EQ(rideWith([](auto& d) { d.outing.starts = -1; }), At(Fault::Negative, "starts"));
    EXPECT_EQ(rideWith([](auto& d) { d.outing.starts = 1001; }), At(Fault::TooLarge, "starts"));
    EXPECT_EQ(rideWith([](auto& d) { d.outing.note = "\xf5"; }), At(Fault::NotText, "note"));
    EXPECT_EQ(rideWith([](auto& d) { d.meterAfter = Hours{-1}; }), At(Fault::Negative, "meter"));
}

TEST_F(UseVerbsTest, ADayHasTwentyFourHours) {
    must(ride({.outing = outing("2026-03-01", 1200)}));
    must(ride({.outing = outing("2026-03-01", 1200)}));
    const auto error = refused(ride({.outing = outing("2026-03-01", 1)}));
    EXPECT_EQ(error.fault, Fault::TooLarge);
    EXPECT_EQ(error.given, "24.01");
    must(ride({.outing = outing("2026-03-02", 1)}));
}

TEST_F(UseVerbsTest, AnOutingOfAnEventLiesInIt) {
    must(saying(saveEvent,
                outlook::Event{.name = "Sand day", .first = day("2026-03-07"), .last = day("2026-03-08")}));
    OutingDraft draft{.outing = outing("2026-03-08", 100)};
    draft.outing.event = last<outlook::Event>();
    must(ride(draft));
    draft.outing.date = day("2026-03-09");
    EXPECT_EQ(refusedAt(ride(draft)), At(Fault::OutOfOrder, "event"));
    draft.outing.date = day("2026-03-06");
    EXPECT_EQ(refusedAt(ride(draft)), At(Fault::OutOfOrder, "event"));
}

TEST_F(UseVerbsTest, AHandTightJointMustBeAnsweredFirst) {
    JobDraft draft{.record = job(pads, "2026-03-02")};
    draft.record.steps = {{"rear-wheel"}};
    must(record(draft));
    const auto error = refused(ride({.outing = outing("2026-03-07", 100)}));
    EXPECT_EQ(error.fault, Fault::MustAnswer);
    EXPECT_EQ(error.given, "rear axle nut");
    // What was ridden before the wheel came out is no matter of that.
    must(ride({.outing = outing("2026-03-01", 100)}));
    auto answered = outing("2026-03-07", 100);
    answered.rider = mara;
    must(ride({.outing = answered, .handTightSeen = true}));
    // The answer stays with the joint, and goes if the outing is struck.
    const auto note = ledger().all<fastening::JointMark>().back();
    EXPECT_EQ(note.kind, fastening::MarkKind::RiddenOpen);
    EXPECT_EQ(note.joint, axle);
    EXPECT_EQ(note.by, mara);
    EXPECT_EQ(note.outing, last<usage::Outing>());
    EXPECT_EQ(book().handTight(heron).size(), 1U);
    must(saying(strike, last<usage::Outing>().value(), "wrong day"));
    EXPECT_NE(ledger().strikeOf(note.id.value()), nullptr);
    must(saying(markJoints,
                std::vector<fastening::JointMark>{
                    {.joint = axle, .date = day("2026-03-08"), .kind = fastening::MarkKind::Confirmed}}));
    must(ride({.outing = outing("2026-03-09", 100)}));
}

TEST_F(UseVerbsTest, AJointInDoubtMustBeAnsweredFirst) {
    must(saying(
        saveTool,
        fastening::Tool{.name = "Long red", .low = units::Decimal{20, 0}, .high = units::Decimal{200, 0}}));
    const ToolId red = last<fastening::Tool>();
    must(saying(markJoints, std::vector<fastening::JointMark>{{.joint = axle,
                                                               .date = day("2026-03-02"),
                                                               .kind = fastening::MarkKind::Confirmed,
                                                               .tool = red}}));
    must(ride({.outing = outing("2026-03-03", 100)}));
    must(saying(recordCalibration,
                fastening::Calibration{.tool = red, .date = day("2026-03-05"), .foundWithin = false}));
    const auto error = refused(ride({.outing = outing("2026-03-07", 100)}));
    EXPECT_EQ(error.fault, Fault::MustAnswer);
    EXPECT_EQ(error.field, base::Place("in_doubt"));
    EXPECT_EQ(error.given, "rear axle nut");
    must(ride({.outing = outing("2026-03-01", 100)}));
    must(ride({.outing = outing("2026-03-07", 100), .handTightSeen = true}));
}

TEST_F(UseVerbsTest, ReadsTheMeters) {
    EXPECT_EQ(must(saying(logReading, usage::HourReading{.machine = heron,
                                                         .date = day("2026-03-01"),
                                                         .shown = Hours{1230},
                                                         .outing = OutingId{77}})),
              "read 12.3 h on Heron 250");
    EXPECT_EQ(ledger().all<usage::HourReading>().at(0).outing, std::nullopt);
    EXPECT_EQ(must(saying(logDistance,
                          usage::DistanceReading{
                              .machine = heron, .date = day("2026-03-01"), .shown = Metres{1'234'500}})),
              "read 1234.5 km on Heron 250");
    const auto hours = [&](const char* on, std::int64_t shown, MeterEvent event) {
        return usage::HourReading{.machine = heron, .date = day(on), .shown = Hours{shown}, .event = event};
    };
    EXPECT_EQ(refusedAt(saying(logReading, hours("2026-03-02", 1229, MeterEvent::Plain))),
              At(Fault::MeterRunsBack, "shown"));
    EXPECT_EQ(refused(saying(logReading, hours("2026-03-02", 1230 + 2401, MeterEvent::Plain))).fault,
              Fault::MeterJumps);
    EXPECT_EQ(refusedAt(saying(logReading, hours("2026-03-02", -1, MeterEvent::Plain))),
              At(Fault::Negative, "shown"));
    EXPECT_EQ(refusedAt(saying(logReading, hours("2026-03-02", 10'000'001, MeterEvent::Replaced))),
              At(Fault::TooLarge, "shown"));
    EXPECT_EQ(refusedAt(saying(logReading, hours("2026-05-30", 1240, MeterEvent::Plain))),
              At(Fault::InFuture, "date"));
    EXPECT_EQ(refusedAt(saying(logReading, hours("2026-03-02", 3, MeterEvent::RolledOver))),
              At(Fault::Empty, "rolls_at"));
    must(saying(logReading, hours("2026-03-02", 0, MeterEvent::Replaced)));
    must(saying(logReading, hours("2026-03-03", 150, MeterEvent::Plain)));
}

TEST_F(UseVerbsTest, LogsWashesAndCrashes) {
    EXPECT_EQ(must(saying(logWash, usage::Wash{.machine = heron, .date = day("2026-03-01")})),
              "washed Heron 250");
    EXPECT_EQ(must(saying(logCrash, usage::Crash{.machine = heron, .date = day("2026-03-01")})),
              "noted a crash on Heron 250");
    EXPECT_EQ(refusedAt(saying(logWash, usage::Wash{.machine = MachineId{1}, .date = day("2026-03-01")})),
              At(Fault::Unknown, "machine"));
    EXPECT_EQ(refusedAt(saying(logCrash, usage::Crash{.machine = heron, .date = day("2026-06-01")})),
              At(Fault::InFuture, "date"));
    EXPECT_EQ(refusedAt(saying(
                  logCrash, usage::Crash{.machine = heron, .date = day("2026-03-01"), .note = "\xc0\x80"})),
              At(Fault::NotText, "note"));
}

TEST_F(UseVerbsTest, AsksWhatTheMeterRanWhileAJointWasOpen) {
    const auto reading = [&](const char* on, std::int64_t shown) {
        return usage::HourReading{.machine = heron, .date = day(on), .shown = Hours{shown}};
    };
    must(saying(logReading, reading("2026-03-01", 1000)));
    auto draft = JobDraft{.record = job(pads, "2026-03-02")};
    draft.record.steps = {{"rear-wheel"}};
    must(record(draft));
    EXPECT_EQ(refusedAt(saying(logReading, reading("2026-03-05", 1200))),
              At(Fault::MustAnswer, "hand_tight"));
    must(saying(logReadingSeen, reading("2026-03-05", 1200), {.openJoints = true}));
    EXPECT_EQ(ledger().all<fastening::JointMark>().back().kind, fastening::MarkKind::RiddenOpen);
    EXPECT_TRUE(book::riddenOpen(book(), heron).empty());
    // The meter stood.
    must(saying(logReading, reading("2026-03-06", 1200)));
}

TEST_F(UseVerbsTest, WorkOfTheDayOfTheRideCameAfterIt) {
    auto draft = JobDraft{.record = job(pads, "2026-03-02")};
    draft.record.steps = {{"rear-wheel"}};
    must(record(draft));
    must(ride({.outing = outing("2026-03-02", 130)}));
    EXPECT_EQ(rideWith([](auto& each) { each.outing.date = day("2026-03-03"); }),
              At(Fault::MustAnswer, "hand_tight"));
}

TEST_F(UseVerbsTest, AsksWhetherTheMeterHasStopped) {
    must(ride({.outing = outing("2026-03-01", 150), .meterAfter = Hours{1000}}));
    // Ten hours on the watch, 1.2 on the meter.
    OutingDraft draft{.outing = outing("2026-03-07", 1000), .meterAfter = Hours{1120}};
    EXPECT_EQ(refused(ride(draft)), (base::Error{Fault::MeterStood, "noted", "10.0 h", "1.2 h"}));
    draft.meterIsRight = true;
    must(ride(draft));
    // It was answered: what comes after it is another matter.
    must(ride({.outing = outing("2026-03-08", 150), .meterAfter = Hours{1270}}));
    EXPECT_EQ(refusedAt(ride({.outing = outing("2026-03-09", 130), .meterAfter = Hours{1270}})),
              At(Fault::MeterStood, "noted"));
}

TEST_F(UseVerbsTest, AsksOfAReadingAndOfALateOutingToo) {
    const auto reading = [&](const char* on, std::int64_t shown) {
        return usage::HourReading{.machine = heron, .date = day(on), .shown = Hours{shown}};
    };
    must(saying(logReading, reading("2026-03-01", 1000)));
    must(ride({.outing = outing("2026-03-02", 130)}));
    EXPECT_EQ(refused(saying(logReading, reading("2026-03-03", 1000))),
              (base::Error{Fault::MeterStood, "noted", "1.3 h", "0.0 h"}));
    must(saying(logReadingSeen, reading("2026-03-03", 1000), {.meterIsRight = true}));
    must(saying(logReading, reading("2026-03-05", 1020)));
    EXPECT_EQ(refusedAt(ride({.outing = outing("2026-03-04", 300)})), At(Fault::MeterStood, "noted"));
    // It stood from the last reading on, and that is said.
    auto stopped = reading("2026-03-05", 1020);
    stopped.event = MeterEvent::Stopped;
    must(saying(logReading, stopped));
    must(ride({.outing = outing("2026-03-06", 300), .meterAfter = Hours{1020}}));
}

}  // namespace
}  // namespace wm::verbs

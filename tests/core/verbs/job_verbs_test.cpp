// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/verbs/bench.h"

namespace wm::verbs {
namespace {

using base::Fault;
using fastening::MarkKind;
using upkeep::RecordKind;

class RecordJobTest : public testing::Test, public FurnishedBench {};

TEST_F(RecordJobTest, FillsItemVersionCodeAndTotalTime) {
    must(ride({.outing = outing("2026-03-01", 130)}));
    EXPECT_EQ(must(record({.record = job(oilChange, "2026-03-02")})), "recorded \"Oil change\" on Heron 250");
    const auto& done = ledger().all<upkeep::Record>().at(0);
    EXPECT_EQ(done.item, engine);
    EXPECT_EQ(done.version, ledger().all<upkeep::TaskVersion>().at(0).id);
    EXPECT_EQ(done.code, "oil-change");
    EXPECT_EQ(done.what, "Oil change");
    EXPECT_EQ(done.statedBest, units::Hours{130});
    EXPECT_EQ(done.statedHigh, units::Hours{130});
}

TEST_F(RecordJobTest, TakesWhatWasUsedAndOpensTheBottle) {
    auto draft = JobDraft{.record = job(oilChange, "2026-03-02")};
    draft.record.uses = {{.line = oil, .amount = 700}, {.line = oil, .amount = 500}};
    must(record(draft));
    const auto& moves = ledger().all<stock::StockMove>();
    ASSERT_EQ(moves.size(), 4U);  // bought, 700 and 300 from the bottle, 200 from nowhere
    EXPECT_EQ(moves[1].amount, -700);
    EXPECT_EQ(moves[1].lot, bottle);
    EXPECT_EQ(moves[2].amount, -300);
    EXPECT_EQ(moves[3].amount, -200);
    EXPECT_EQ(moves[3].lot, std::nullopt);
    EXPECT_EQ(moves[3].record, last<upkeep::Record>());
    EXPECT_EQ(book().onHand(oil)->amount, -200);
    EXPECT_EQ(ledger().find<stock::Lot>(bottle)->opened, day("2026-03-02"));
}

TEST_F(RecordJobTest, LeavesOpenedJointsHandTightUnlessConfirmed) {
    auto draft = JobDraft{.record = job(pads, "2026-03-02")};
    draft.record.steps = {{"rear-wheel"}, {"rear-wheel"}};
    must(record(draft));
    ASSERT_EQ(book().handTight(heron).size(), 1U);
    EXPECT_EQ(book().handTight(heron)[0].state.joint, axle);
    draft.record.date = day("2026-03-03");
    draft.confirmed = {axle, axle};
    must(record(draft));
    EXPECT_TRUE(book().handTight(heron).empty());
    EXPECT_EQ(ledger().all<fastening::JointMark>().size(), 2U);
    EXPECT_EQ(ledger().all<fastening::JointMark>().back().kind, MarkKind::Confirmed);
}

TEST_F(RecordJobTest, ACheckLoosensNothing) {
    upkeep::TaskVersion check{.machine = heron, .validFrom = day("2026-01-10"), .name = "Axles: check"};
    check.limits = {{.every = 500}};
    check.joints = {{"axle"}};
    must(saying(saveTask, check));
    auto draft = JobDraft{.record = job(ledger().all<upkeep::TaskVersion>().back().task, "2026-03-02")};
    must(record(draft));
    EXPECT_TRUE(book().handTight(heron).empty()) << "the wheel stayed in";
    EXPECT_TRUE(ledger().all<fastening::JointMark>().empty());
    draft.record.date = day("2026-03-03");
    draft.confirmed = {axle};
    must(record(draft));
    EXPECT_EQ(ledger().all<fastening::JointMark>().back().kind, MarkKind::Confirmed);
    draft.record.date = day("2026-03-04");
    draft.record.steps = {{"rear-wheel"}};
    draft.confirmed.clear();
    must(record(draft));
    EXPECT_EQ(book().handTight(heron).size(), 1U) << "but this time it came out";
}

TEST_F(RecordJobTest, SendsOutWhatItIsOn) {
    auto draft = JobDraft{.record = job(oilChange, "2026-03-02"),
                          .sends = Sending{.where = "Lane Engines", .backOn = day("2026-03-20")}};
    must(record(draft));
    const auto& away = ledger().all<items::Move>().back();
    EXPECT_EQ(away.item, engine);
    EXPECT_EQ(away.kind, items::MoveKind::Away);
    EXPECT_EQ(away.record, last<upkeep::Record>());
    EXPECT_EQ(away.note, "Lane Engines");
    const auto again = draftOf(ledger(), last<upkeep::Record>());
    ASSERT_TRUE(again && again->sends);
    EXPECT_EQ(again->sends->backOn, day("2026-03-20"));
    draft.record.date = day("2026-03-03");
    EXPECT_EQ(refusedAt(record(draft)), At(Fault::NothingThere, "task")) << "it is at the workshop";
    draft.record.task = pads;
    EXPECT_EQ(refusedAt(record(draft)), At(Fault::NotFitted, "sends"));
    // Struck, the engine never left.
    must(saying(strike, last<upkeep::Record>().value(), "told wrongly"));
    EXPECT_EQ(book().fittings().at(heron, "engine", {day("2026-03-04")}), engine);
}

// A job that does not take the item out loosens what holds it when it sends it.
TEST_F(RecordJobTest, SendingLoosensWhatHoldsTheItemUnlessTheJobDid) {
    must(saying(saveTask,
                upkeep::TaskVersion{.machine = heron, .name = "True the wheel", .position = "rear wheel"}));
    auto draft = JobDraft{.record = job(ledger().all<upkeep::TaskVersion>().back().task, "2026-03-02"),
                          .sends = Sending{.where = "Lane Wheels"}};
    must(record(draft));
    EXPECT_EQ(ledger().all<items::Move>().back().told, items::Told::Work);
    must(saying(strike, last<upkeep::Record>().value(), "told wrongly"));
    draft.record.steps = {{"rear-wheel"}};
    must(record(draft));
    EXPECT_EQ(ledger().all<items::Move>().back().told, items::Told::AsItWas);
}

TEST_F(RecordJobTest, OnTheBenchItIsThatItems) {
    must(saying(moveItem, {.item = engine, .date = day("2026-03-02"), .kind = items::MoveKind::Removed}));
    must(record({.record = job(oilChange, "2026-03-03")}));
    EXPECT_EQ(ledger().all<upkeep::Record>().back().item, engine);
    must(saying(moveItem, {.item = engine, .date = day("2026-03-04"), .kind = items::MoveKind::Away}));
    const auto error = refused(record({.record = job(oilChange, "2026-03-05")}));
    EXPECT_EQ(error, (base::Error{Fault::NothingThere, "task", "Oil change", "engine"}));
}

TEST_F(RecordJobTest, TheMeterSaysWhetherItWasBeforeTheRide) {
    must(ride({.outing = outing("2026-03-01", 100), .meterAfter = units::Hours{1000}}));
    must(ride({.outing = outing("2026-03-02", 130), .meterAfter = units::Hours{1130}}));
    auto draft = JobDraft{.record = job(oilChange, "2026-03-02")};
    draft.record.meter = units::Hours{1000};
    must(record(draft));
    EXPECT_EQ(ledger().all<upkeep::Record>().back().part, calendar::DayPart::BeforeRiding);
    draft.record.task = pads;
    draft.record.meter = units::Hours{1130};
    must(record(draft));
    EXPECT_EQ(ledger().all<upkeep::Record>().back().part, calendar::DayPart::AfterRiding);
}

TEST_F(RecordJobTest, OfTheSameJobThatOnlyConfirmsTheJointsAreTaken) {
    auto draft = JobDraft{.record = job(pads, "2026-03-02")};
    draft.record.steps = {{"rear-wheel"}};
    must(record(draft));
    draft.confirmed = {axle};
    EXPECT_EQ(must(record(draft)), "torqued rear axle nut on Heron 250");
    EXPECT_EQ(ledger().all<upkeep::Record>().size(), 1U);
    EXPECT_EQ(ledger().all<fastening::JointMark>().back().record, last<upkeep::Record>());
    EXPECT_TRUE(book().handTight(heron).empty());
    draft.record.uses = {{.line = oil, .amount = 5}};
    EXPECT_EQ(refusedAt(record(draft)), At(Fault::Duplicate, "date"));
}

TEST_F(RecordJobTest, AsksAboutAJointThatTheJobNeverTouches) {
    must(saying(saveJoint, fastening::JointVersion{.machine = heron, .name = "front axle nut"}));
    auto draft = JobDraft{.record = job(pads, "2026-03-02")};
    draft.record.steps = {{"rear-wheel"}};
    draft.confirmed = {axle, ledger().all<fastening::JointVersion>().back().joint};
    EXPECT_EQ(refusedAt(record(draft)), At(Fault::NotOpened, "torqued"));
    draft.confirmsOthers = true;
    must(record(draft));
}

TEST_F(RecordJobTest, OpensNothingWhereNothingWasTakenApart) {
    auto draft = JobDraft{.record = job(pads, "2026-03-02"), .opensJoints = false};
    draft.record.kind = RecordKind::LookedFine;
    draft.record.steps = {{"rear-wheel"}};
    EXPECT_EQ(must(record(draft)), "noted \"Brake pads\" as fine on Heron 250");
    EXPECT_TRUE(ledger().all<fastening::JointMark>().empty());
}

TEST_F(RecordJobTest, SaysThatAValueIsOutsideItsLimit) {
    auto version = *book().task(pads);
    version.measures = {{.name = "pad, front", .unit = "mm", .least = units::Decimal{10, 1}},
                        {.name = "disc",
                         .unit = "mm",
                         .least = units::Decimal{35, 1},
                         .most = units::Decimal{40, 1},
                         .mostGood = true}};
    must(saying(saveTask, version));
    const auto said = [&](std::int64_t pad, std::int64_t disc, const char* on) {
        JobDraft draft{.record = job(pads, on)};
        draft.record.measured = {{.name = "pad, front", .unit = "mm", .value = units::Decimal{pad, 1}},
                                 {.name = "disc", .unit = "mm", .value = units::Decimal{disc, 1}}};
        return must(record(draft));
    };
    EXPECT_EQ(said(11, 40, "2026-03-01"), "recorded \"Brake pads\" on Heron 250");
    EXPECT_EQ(said(10, 40, "2026-03-02"),
              "recorded \"Brake pads\" on Heron 250; AT its limit: pad, front 1.0 mm");
    EXPECT_EQ(said(9, 35, "2026-03-05"),
              "recorded \"Brake pads\" on Heron 250; OUTSIDE its limit: pad, front 0.9 mm; AT its limit: "
              "disc 3.5 mm");
    EXPECT_EQ(said(9, 40, "2026-03-03"),
              "recorded \"Brake pads\" on Heron 250; OUTSIDE its limit: pad, front 0.9 mm");
    EXPECT_EQ(said(0, 41, "2026-03-04"),
              "recorded \"Brake pads\" on Heron 250; OUTSIDE its limit: pad, front 0.0 mm, disc 4.1 mm");
}

TEST_F(RecordJobTest, ALookThatRenewsNothingSaysSo) {
    auto version = *book().task(oilChange);
    version.kit = {{.what = "engine oil", .amount = 1000, .unit = upkeep::Unit::Millilitre}};
    must(saying(saveTask, version));
    JobDraft draft{.record = job(oilChange, "2026-03-02"), .opensJoints = false};
    draft.record.kind = RecordKind::LookedFine;
    EXPECT_TRUE(must(record(draft)).ends_with("; its count goes on, a look renews nothing"));
}

TEST_F(RecordJobTest, NotesAMeterThatIsNews) {
    auto draft = JobDraft{.record = job(oilChange, "2026-03-02")};
    draft.record.meter = units::Hours{520};
    must(record(draft));
    ASSERT_EQ(ledger().all<usage::HourReading>().size(), 1U);
    EXPECT_EQ(ledger().all<usage::HourReading>()[0].shown, units::Hours{520});
    EXPECT_EQ(ledger().all<usage::HourReading>()[0].record, last<upkeep::Record>());
    // The same evening and the same figure say nothing new; an older day fits in without being noted.
    must(record({.record = [&] {
        auto other = job(pads, "2026-03-02");
        other.meter = units::Hours{520};
        return other;
    }()}));
    draft.record.date = day("2026-02-02");
    draft.record.meter = units::Hours{310};
    must(record(draft));
    EXPECT_EQ(ledger().all<usage::HourReading>().size(), 1U);
}

TEST_F(RecordJobTest, QuestionsAMeterThatDoesNotFit) {
    auto draft = JobDraft{.record = job(oilChange, "2026-03-02")};
    draft.record.meter = units::Hours{520};
    must(record(draft));
    draft.record.date = day("2026-03-05");
    draft.record.meter = units::Hours{519};
    EXPECT_EQ(refused(record(draft)).fault, Fault::MeterRunsBack);
    draft.record.meter = units::Hours{520 + 3 * 2400 + 1};
    EXPECT_EQ(refused(record(draft)).fault, Fault::MeterJumps);
    draft.record.meter = units::Hours{-1};
    EXPECT_EQ(refused(record(draft)).fault, Fault::Negative);
    draft.record.meter = units::Hours{10'000'001};
    EXPECT_EQ(refused(record(draft)).fault, Fault::TooLarge);
    draft.record.date = day("2026-02-20");
    draft.record.meter = units::Hours{521};
    EXPECT_EQ(refused(record(draft)).fault, Fault::OutOfOrder);
}

TEST_F(RecordJobTest, RefusesTheSameJobTwice) {
    const JobDraft draft{.record = job(oilChange, "2026-03-02")};
    must(record(draft));
    const auto error = refused(record(draft));
    EXPECT_EQ(error.fault, Fault::Duplicate);
    EXPECT_EQ(error.field, "date");
    auto other = draft;
    other.record.task.reset();
    other.record.what = "new grips";
    must(record(other));
    other.record.what = "New Grips";
    EXPECT_EQ(refused(record(other)).fault, Fault::Duplicate);
    other.record.what = "straightened the bars";
    must(record(other));
}

TEST_F(RecordJobTest, EndsTheSnagAndLeavesTheWeekend) {
    must([&](const VerbContext& context) {
        return addSnag(context, {.machine = heron, .date = day("2026-03-01"), .what = "weeping fork seal"});
    });
    const SnagId snag = last<upkeep::Snag>();
    must([&](const VerbContext& context) { return pick(context, heron, std::nullopt, snag, true); });
    JobDraft draft{.record = {.machine = heron, .snag = snag, .date = day("2026-03-02")}};
    EXPECT_EQ(must(record(draft)), "recorded \"weeping fork seal\" on Heron 250");
    EXPECT_TRUE(book().snags(heron).empty());
    EXPECT_FALSE(ledger().all<weekend::Pick>().at(0).picked);
    draft.record.date = day("2026-03-03");
    EXPECT_EQ(refused(record(draft)).fault, Fault::NothingToDo);
}

TEST_F(RecordJobTest, AnswersFollowUps) {
    must(record({.record = job(oilChange, "2026-03-02")}));
    const auto origin = last<upkeep::Record>().value();
    must(record({.record = job(pads, "2026-03-03"), .answers = {{origin, "check for leaks"}}}));
    ASSERT_EQ(ledger().all<upkeep::FollowUpAnswer>().size(), 1U);
    EXPECT_EQ(ledger().all<upkeep::FollowUpAnswer>()[0].record, last<upkeep::Record>());
    EXPECT_EQ(refused(record({.record = job(pads, "2026-03-04"), .answers = {{engine.value(), "x"}}})).fault,
              Fault::Unknown);
    EXPECT_EQ(refused(record({.record = job(pads, "2026-03-04"), .answers = {{origin, " "}}})).fault,
              Fault::Empty);
}

TEST_F(RecordJobTest, ABaselineMayBeOlderThanTheFile) {
    auto draft = JobDraft{.record = job(oilChange, "2025-11-01")};
    draft.record.kind = RecordKind::Baseline;
    draft.record.uses = {{.line = oil, .amount = 700}};
    draft.record.meter = units::Hours{100};
    EXPECT_EQ(must(record(draft)), "noted \"Oil change\" as done before on Heron 250");
    const auto& done = ledger().all<upkeep::Record>().at(0);
    EXPECT_EQ(done.item, engine);
    EXPECT_EQ(done.statedBest, std::nullopt);
    EXPECT_EQ(ledger().all<stock::StockMove>().size(), 1U);
    EXPECT_TRUE(ledger().all<usage::HourReading>().empty());
    draft.record.kind = RecordKind::Done;
    EXPECT_EQ(refused(record(draft)).fault, Fault::BeforeItsTime);
    draft.record.date = day("2026-05-21");
    EXPECT_EQ(refused(record(draft)).fault, Fault::InFuture);
}

TEST_F(RecordJobTest, NamesWhatIsWrongAndWhere) {
    const auto faultOf = [&](auto&& spoil) {
        JobDraft draft{.record = job(oilChange, "2026-03-02")};
        spoil(draft);
        const auto error = refused(record(draft));
        return std::pair(error.fault, error.field.text());
    };
    using P = std::pair<Fault, std::string>;
    EXPECT_EQ(faultOf([](auto& d) { d.record.machine = MachineId{7}; }), P(Fault::Unknown, "machine"));
    EXPECT_EQ(faultOf([](auto& d) { d.record.task = TaskId{7}; }), P(Fault::Unknown, "task"));
    EXPECT_EQ(faultOf([](auto& d) { d.record.snag = SnagId{7}; }), P(Fault::Unknown, "snag"));
    EXPECT_EQ(faultOf([](auto& d) { d.record.by = PersonId{7}; }), P(Fault::Unknown, "by_person"));
    EXPECT_EQ(faultOf([](auto& d) { d.record.sheet = SheetId{7}; }), P(Fault::Unknown, "sheet"));
    EXPECT_EQ(faultOf([](auto& d) { d.record.task.reset(); }), P(Fault::Empty, "what"));
    EXPECT_EQ(faultOf([](auto& d) { d.record.what = "\xff"; }), P(Fault::NotText, "what"));
    EXPECT_EQ(faultOf([](auto& d) { d.record.note.assign(20'001, 'x'); }), P(Fault::TooLong, "note"));
    EXPECT_EQ(faultOf([](auto& d) { d.record.minutes = units::Minutes{-1}; }), P(Fault::Negative, "minutes"));
    EXPECT_EQ(faultOf([](auto& d) { d.record.minutes = units::Minutes{100'001}; }),
              P(Fault::TooLarge, "minutes"));
    EXPECT_EQ(faultOf([](auto& d) { d.record.uses = {{.line = StockLineId{7}, .amount = 1}}; }),
              P(Fault::Unknown, "uses[0].line"));
    EXPECT_EQ(faultOf([&](auto& d) { d.record.uses = {{.line = oil, .amount = 0}}; }),
              P(Fault::NotPositive, "uses[0].amount"));
    EXPECT_EQ(faultOf([&](auto& d) { d.record.uses = {{.line = oil, .lot = LotId{7}, .amount = 1}}; }),
              P(Fault::Unknown, "uses[0].lot"));
    EXPECT_EQ(faultOf([](auto& d) { d.record.steps = {{"engine-out"}}; }),
              P(Fault::Unknown, "steps[0].code"));
    EXPECT_EQ(faultOf([](auto& d) { d.record.measured = {{.name = ""}}; }),
              P(Fault::Empty, "measured[0].name"));
    EXPECT_EQ(faultOf([](auto& d) { d.record.measured = {{.name = "metal on the magnet", .unit = "g"}}; }),
              P(Fault::WrongUnit, "measured[0].unit"));
    EXPECT_EQ(faultOf([](auto& d) { d.confirmed = {JointId{7}}; }), P(Fault::Unknown, "torqued"));
}

}  // namespace
}  // namespace wm::verbs

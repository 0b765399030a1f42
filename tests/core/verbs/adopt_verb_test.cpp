// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <set>

#include "tests/core/verbs/bench.h"

namespace wm::verbs {

using picture::Garage;
using picture::kTables;
using picture::Row;
using picture::Strike;

namespace {

using base::Fault;

// A file in which every table has rows.
class AdoptTest : public testing::Test, public FurnishedBench {
  protected:
    void SetUp() override {
        must(saying(nameGarage, "shed", std::optional<calendar::Date>{}));
        must(saying(saveEvent, outlook::Event{.name = "Sand day",
                                              .first = day("2026-03-01"),
                                              .last = day("2026-03-01"),
                                              .entries = {{.machine = heron, .rider = mara}}}));
        must(ride({.outing = outing("2026-03-01", 130),
                   .meterAfter = units::Hours{130},
                   .washed = true,
                   .crashed = true}));
        must(saying(logDistance, usage::DistanceReading{.machine = heron, .date = day("2026-03-01")}));
        must(saying(noteSetting,
                    items::Setting{.machine = heron, .date = today, .name = "clicks", .value = "12"}));
        must(saying(addSnag, upkeep::Snag{.machine = heron, .date = day("2026-03-01"), .what = "leak"}));
        JobDraft draft{.record = job(pads, "2026-03-02"),
                       .answers = {{last<usage::Crash>().value(), "look at the bars"}}};
        draft.record.snag = last<upkeep::Snag>();
        draft.record.uses = {{.line = oil, .lot = bottle, .amount = 10}};
        draft.record.steps = {{"rear-wheel"}};
        must(record(draft));
        must(saying(defer,
                    upkeep::Deferral{
                        .machine = heron, .task = oilChange, .date = today, .untilDate = day("2026-06-01")}));
        must(saying(orderStock, stock::StockOrder{.line = oil, .date = today, .amount = 500}));
        must(saying(saveWindow, weekend::WorkWindow{.date = today, .endsAt = units::Minutes{60}}));
        must(saying(pick, heron, std::optional(oilChange), std::optional<SnagId>{}, true));
        must(saying(issueSheet,
                    weekend::IssuedSheet{.machine = heron, .date = today, .jobs = {{.task = oilChange}}}));
        must(saying(logWash, usage::Wash{.machine = heron, .date = today}));
        must(saying(strike, last<usage::Wash>().value(), "it rained"));
        fillDrawer();
    }
    void fillDrawer() {
        must(saying(saveTool, fastening::Tool{.name = "Long red", .high = units::Decimal{200, 0}}));
        must(saying(recordCalibration,
                    fastening::Calibration{
                        .tool = last<fastening::Tool>(), .date = day("2026-03-03"), .foundWithin = false}));
        must(saying(answerFollowUp, upkeep::FollowUpAnswer{.machine = heron,
                                                           .origin = last<fastening::Calibration>().value(),
                                                           .what = "re-check rear axle nut",
                                                           .date = today}));
    }
    template <class R>
    At adoptWith(const std::function<void(R&)>& spoil) {
        auto rows = ledger().rows();
        for (Row& row : rows)
            if (auto* found = std::get_if<R>(&row)) {
                spoil(*found);
                break;
            }
        Bench empty;
        return empty.refusedAt(saying(adoptAll, rows));
    }
};

TEST_F(AdoptTest, WhatCorrectsAFactMayHaveItsPlace) {
    auto rows = ledger().rows();
    const auto place = ledger().struck<usage::Wash>()[0].entered;
    for (Row& row : rows)
        if (auto* wash = std::get_if<usage::Wash>(&row); wash != nullptr && wash->entered != place)
            wash->entered = place;
    Bench empty;
    empty.must(saying(adoptAll, rows));
    EXPECT_EQ(empty.ledger().all<usage::Wash>()[0].entered, place);
}

TEST_F(AdoptTest, TakesInAWholeFileAsItIs) {
    const auto rows = ledger().rows();
    std::set<std::size_t> tables;
    for (const Row& row : rows)
        tables.insert(row.index());
    ASSERT_EQ(tables.size(), kTables);
    Bench empty;
    EXPECT_EQ(empty.must(saying(adoptAll, rows)), "took in a whole file");
    EXPECT_EQ(empty.ledger().rows(), rows);
    EXPECT_EQ(empty.ledger().nextEntered(), ledger().nextEntered());
    EXPECT_EQ(empty.book().life(heron), book().life(heron));
}

TEST_F(AdoptTest, OnlyIntoAnEmptyFile) {
    EXPECT_EQ(refusedAt(saying(adoptAll, ledger().rows())), At(Fault::NotEmpty, "file"));
    Bench named;
    named.must(saying(nameGarage, "new", std::optional<calendar::Date>{}));
    EXPECT_EQ(named.refusedAt(saying(adoptAll, std::vector<Row>{})), At(Fault::NothingToDo, "file"));
    named.must(saying(adoptAll, ledger().rows()));
    EXPECT_EQ(named.ledger().garage().name, "shed");
}

TEST_F(AdoptTest, EveryReferenceMustBeThere) {
    EXPECT_EQ(adoptWith<usage::Outing>([](auto& o) { o.machine = MachineId{1}; }),
              At(Fault::Inconsistent, "outing[0].machine"));
    EXPECT_EQ(adoptWith<usage::Outing>([](auto& o) { o.event = EventId{1}; }),
              At(Fault::Inconsistent, "outing[0].event"));
    // An id that is there, but of another kind.
    EXPECT_EQ(adoptWith<usage::Outing>([this](auto& o) { o.machine = MachineId{engine.value()}; }),
              At(Fault::Inconsistent, "outing[0].machine"));
    EXPECT_EQ(adoptWith<outlook::Event>([](auto& e) { e.entries[0].rider = PersonId{1}; }),
              At(Fault::Inconsistent, "event[0].entries[0].rider"));
    EXPECT_EQ(adoptWith<upkeep::Record>([](auto& r) { r.task = TaskId{1}; }),
              At(Fault::Inconsistent, "record[0].task"));
    EXPECT_EQ(adoptWith<upkeep::Record>([](auto& r) { r.uses[0].lot = LotId{1}; }),
              At(Fault::Inconsistent, "record[0].uses[0].lot"));
    EXPECT_EQ(adoptWith<fastening::Calibration>([](auto& c) { c.tool = ToolId{1}; }),
              At(Fault::Inconsistent, "calibration[0].tool"));
    EXPECT_EQ(adoptWith<fastening::JointMark>([](auto& m) { m.joint = JointId{1}; }),
              At(Fault::Inconsistent, "joint_mark[0].joint"));
    EXPECT_EQ(adoptWith<Strike>([](auto& s) { s.fact = 1; }), At(Fault::Inconsistent, "strike[0].fact"));
    EXPECT_EQ(adoptWith<Strike>([this](auto& s) { s.fact = heron.value(); }),
              At(Fault::Inconsistent, "strike[0].fact"));
    EXPECT_EQ(adoptWith<upkeep::FollowUpAnswer>([this](auto& a) { a.origin = wheel.value(); }),
              At(Fault::Inconsistent, "follow_up_answer[0].origin"));
    EXPECT_EQ(adoptWith<upkeep::TaskVersion>([](auto& t) { t.steps = {{"seat"}}; }),
              At(Fault::Inconsistent, "task_version.steps"));
    EXPECT_EQ(adoptWith<weekend::StepVersion>([](auto& s) { s.joints = {{"seat"}}; }),
              At(Fault::Inconsistent, "step_version.joints"));
    EXPECT_EQ(adoptWith<weekend::StepVersion>([](auto& s) { s.needs = {{.code = "seat"}}; }),
              At(Fault::Inconsistent, "step_version.needs"));
}

TEST_F(AdoptTest, EveryIdIsThereOnce) {
    EXPECT_EQ(adoptWith<usage::Wash>([this](auto& w) { w.id = WashId{wheel.value()}; }),
              At(Fault::Duplicate, "wash[0].id"));
    EXPECT_EQ(adoptWith<usage::Wash>([](auto& w) { w.id = WashId{0}; }),
              At(Fault::NotPositive, "wash[0].id"));
    EXPECT_EQ(adoptWith<usage::Wash>([](auto& w) { w.entered = 1; }),
              At(Fault::Duplicate, "wash[0].entered"));
    EXPECT_EQ(adoptWith<usage::Wash>([](auto& w) { w.entered = 0; }),
              At(Fault::NotPositive, "wash[0].entered"));
    EXPECT_EQ(adoptWith<usage::Wash>([](auto& w) { w.entered = std::numeric_limits<std::int64_t>::max(); }),
              At(Fault::TooLarge, "wash[0].entered"));
    EXPECT_EQ(adoptWith<Garage>([](auto& g) { g.id = GarageId{2}; }),
              At(Fault::Inconsistent, "garage[0].id"));
    auto rows = ledger().rows();
    const Strike again{.id = StrikeId{77}, .entered = 10'000, .fact = ledger().all<Strike>()[0].fact};
    rows.emplace_back(again);
    Bench empty;
    EXPECT_EQ(empty.refusedAt(saying(adoptAll, rows)), At(Fault::AlreadyStruck, "strike[1].fact"));
}

TEST_F(AdoptTest, EveryBoundHolds) {
    EXPECT_EQ(adoptWith<items::Person>([](auto& p) { p.name = " "; }), At(Fault::Empty, "person[0].name"));
    EXPECT_EQ(adoptWith<items::Machine>([](auto& m) { m.pastLow = units::Hours{-1}; }),
              At(Fault::Negative, "machine[0].past_low"));
    EXPECT_EQ(adoptWith<usage::Outing>([](auto& o) { o.hours = units::Hours{2401}; }),
              At(Fault::TooLarge, "outing[0].hours"));
    EXPECT_EQ(adoptWith<usage::Outing>([](auto& o) { o.ground = static_cast<usage::Ground>(9); }),
              At(Fault::Malformed, "outing[0].ground"));
    EXPECT_EQ(adoptWith<usage::Wash>([](auto& w) { w.note = "\xff"; }), At(Fault::NotText, "wash[0].note"));
    EXPECT_EQ(adoptWith<upkeep::TaskVersion>([](auto& t) { t.limits[0].every = 0; }),
              At(Fault::NotPositive, "task_version[0].limits[0].every"));
    EXPECT_EQ(adoptWith<upkeep::Deferral>([](auto& d) { d.task.reset(); }),
              At(Fault::Empty, "deferral[0].task"));
    EXPECT_EQ(adoptWith<stock::StockMove>([](auto& m) { m.amount = 0; }),
              At(Fault::NotPositive, "stock_move[0].amount"));
    EXPECT_EQ(adoptWith<Strike>([](auto& s) { s.reason = ""; }), At(Fault::Empty, "strike[0].reason"));
}

TEST_F(AdoptTest, TheRowsFitEachOther) {
    EXPECT_EQ(adoptWith<usage::Outing>([](auto& o) { o.date = day("2026-01-09"); }),
              At(Fault::BeforeItsTime, "outing[0].date"));
    EXPECT_EQ(adoptWith<items::Move>([](auto& m) { m.date = day("2026-01-09"); }),
              At(Fault::BeforeItsTime, "move[0].date"));
    EXPECT_EQ(adoptWith<items::Move>([this](auto& m) { m.item = wheel; }), At(Fault::InTwoPlaces, "move"));
    EXPECT_EQ(adoptWith<items::Move>([](auto& m) { m.position = "rear wheel"; }),
              At(Fault::PositionTaken, "move"));
    EXPECT_EQ(adoptWith<upkeep::TaskVersion>([](auto& t) { t.code = "brake-pads"; }),
              At(Fault::Duplicate, "task_version.code"));
    auto rows = ledger().rows();
    rows.emplace_back(items::Machine{.id = MachineId{77}, .name = "HERON 250", .since = today});
    Bench empty;
    EXPECT_EQ(empty.refusedAt(saying(adoptAll, rows)), At(Fault::Duplicate, "machine.name"));
    rows = ledger().rows();
    rows.emplace_back(stock::StockLine{.id = StockLineId{77}, .name = "plug"});
    rows.emplace_back(stock::Lot{.id = LotId{78}, .line = StockLineId{77}});
    rows.emplace_back(
        stock::StockMove{.id = StockMoveId{79}, .entered = 999, .line = oil, .lot = LotId{78}, .amount = -1});
    EXPECT_EQ(empty.refusedAt(saying(adoptAll, rows)), At(Fault::Inconsistent, "stock_move.lot"));
}

}  // namespace
}  // namespace wm::verbs

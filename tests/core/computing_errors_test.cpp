// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// Twelve computing errors that mechanics make with a notebook or a spreadsheet, each with the answer worked
// by hand; and the false zero of a used machine.
#include <gtest/gtest.h>

#include "core/book/evening.h"
#include "core/units/convert.h"
#include "core/weekend/plan.h"
#include "tests/core/made.h"
#include "tests/core/weekend/generic_machine.h"

namespace wm {
namespace {

using made::Case;
using made::day;
using made::evening;
using made::every;
using made::Made;
using upkeep::Counter;
using upkeep::CountFrom;

// Oil every 5 h, each time done 1 h late, over a season. Counted from completion: done at 6, due at 11; done
// at 12, due at 17; ... after five times the job is done at 30 and due at 35: one hour of drift a time.
// Counted from fixed marks: done at 6, due at 10; done at 11, due at 15; done at 16, due at 20: the marks
// stay where they are.
TEST(ComputingErrorsTest, LastDoneAndFixedMarksDriftApart) {
    const auto dueAfter = [](CountFrom countFrom, std::vector<std::int64_t>& doneAt) {
        Made make;
        Case it;
        it.versions = {made::task({every("5")})};
        it.versions[0].countFrom = countFrom;
        usage::UseFacts use;
        std::int64_t ridden = 0;
        calendar::Date date = day("2026-03-01");
        std::int64_t due = 500;
        for (int time = 0; time < 5; ++time) {
            const std::int64_t late = due + 100;
            use.outings.push_back(make.outing(date.iso(), "0"));
            use.outings.back().hours = units::Hours{late - ridden};
            it.records.push_back(make.record(date.iso()));
            it.atoms = usage::atomsOf(use);
            ridden = late;
            doneAt.push_back(late / 100);
            due = ridden + it.on(date.iso()).limits.at(0).left;
            date = date.plusDays(7);
        }
        return due;
    };
    std::vector<std::int64_t> floating;
    EXPECT_EQ(dueAfter(CountFrom::Completion, floating), 3500);
    EXPECT_EQ(floating, (std::vector<std::int64_t>{6, 12, 18, 24, 30}));
    std::vector<std::int64_t> fixed;
    EXPECT_EQ(dueAfter(CountFrom::FixedMarks, fixed), 3000);
    EXPECT_EQ(fixed, (std::vector<std::int64_t>{6, 11, 16, 21, 26}));
}

// Valves were checked at 28 h on a meter that died at 40.0 and was replaced by one from zero, which now
// shows 12.0. Behind the check lie 40 - 28 = 12 h on the old meter and 12 on the new: 24 h. Every 20 h:
// overdue by 4. A notebook compares 12 with 28 + 20 = 48 and says nothing.
TEST(ComputingErrorsTest, AReplacedMeterSilencesNothing) {
    Made make;
    Case it;
    usage::UseFacts use;
    use.hourReadings = {make.reading("2026-02-28", "0"), make.reading("2026-03-01", "28"),
                        make.replaced("2026-04-01", "40", "0"), make.reading("2026-05-01", "12")};
    it.atoms = usage::atomsOf(use);
    it.records = {make.record("2026-03-01")};
    it.versions = {made::task({every("20")})};
    const auto down = it.on("2026-05-01");
    EXPECT_EQ(down.limits[0].behind, (upkeep::CountBracket{2400, 2400, 2400}));
    EXPECT_EQ(down.limits[0].left, -400);
    EXPECT_TRUE(down.over);
}

// The shock ran 10 h on the red machine, then 4 h on the blue one while the spare sat on the red, which ran 6
// h more. The shock has 14 h behind it, the spare 6; the machines have 16 and 4. A notebook gives the
// shock 16.
TEST(ComputingErrorsTest, HoursFollowThePartNotTheMachine) {
    constexpr MachineId red{101};
    constexpr MachineId blue{102};
    constexpr ItemId shock{1};
    constexpr ItemId spare{2};
    Made make;
    usage::UseFacts redUse;
    usage::UseFacts blueUse;
    redUse.outings = {make.outing("2026-03-07", "10"), make.outing("2026-04-04", "6")};
    blueUse.outings = {make.outing("2026-04-05", "4")};
    const std::vector<items::Move> moves{make.fit(shock, red, "shock", evening("2026-03-01")),
                                         make.move(shock, items::MoveKind::Removed, evening("2026-03-10")),
                                         make.fit(spare, red, "shock", evening("2026-03-10")),
                                         make.fit(shock, blue, "shock", evening("2026-03-12"))};
    const items::Fittings fittings(moves);
    const auto redAtoms = usage::atomsOf(redUse);
    const auto blueAtoms = usage::atomsOf(blueUse);
    const auto life = [&](ItemId item) {
        const auto atoms =
            items::atomsOf(made::newItem(item, "2026-03-01"), fittings, [&](MachineId machine) {
                return std::span<const usage::Atom>(machine == red ? redAtoms : blueAtoms);
            });
        return made::text(usage::exposure(atoms, std::nullopt, evening("2026-05-01")).hours);
    };
    EXPECT_EQ(life(shock), "14.0");
    EXPECT_EQ(life(spare), "6.0");
    EXPECT_EQ(made::text(usage::exposure(redAtoms, std::nullopt, evening("2026-05-01")).hours), "16.0");
}

// Valve clearance: first at 5 h, then every 25. New machine, 5.2 h: due, 0.2 h over. A chart with the repeat
// interval alone says 19.8 h left. Once done, 25 h count from there.
TEST(ComputingErrorsTest, TheFirstIntervalIsNotForgotten) {
    Made make;
    Case it;
    usage::UseFacts use;
    use.outings = {make.outing("2026-03-07", "5.2")};
    it.atoms = usage::atomsOf(use);
    it.versions = {made::task({{.every = 2500, .first = 500}})};
    EXPECT_EQ(it.on("2026-03-07").limits[0].left, -20);
    EXPECT_TRUE(it.on("2026-03-07").over);
    it.records = {make.record("2026-03-08")};
    EXPECT_EQ(it.on("2026-03-08").limits[0].left, 2500);
}

// Ring every 15 h, the piston with every second ring, the rod with every fourth piston job. Ring jobs at 15,
// 30, 45 and 60 h: ring, ring + piston, ring, ring + piston; the rod is asked for with the fourth.
TEST(ComputingErrorsTest, StagedJobsAreNotLost) {
    Made make;
    Case ring;
    ring.versions = {made::task({every("15")})};
    ring.versions[0].everyNth = 2;
    Case rod;
    rod.versions = {made::task({})};
    rod.versions[0].nthOf = "ring";
    rod.versions[0].nth = 4;
    std::vector<bool> withPiston;
    std::vector<bool> rodDue;
    for (const char* date : {"2026-03-01", "2026-04-01", "2026-05-01", "2026-06-01"}) {
        const bool piston = ring.on(date).extraDue();
        withPiston.push_back(piston);
        ring.records.push_back(make.record(date, upkeep::RecordKind::Done, "ring"));
        ring.records.back().extraDone = piston;
        rod.others = ring.records;
        rodDue.push_back(rod.on(date).over);
    }
    EXPECT_EQ(withPiston, (std::vector<bool>{false, true, false, true}));
    EXPECT_EQ(rodDue, (std::vector<bool>{false, false, false, true}));
}

// Coolant: 12 months or 50 h, whichever comes first. Filled on 1 March 2025; on 1 March 2026 it has run 20 h:
// due by the date. Taken as "and" it would wait for 30 h more.
TEST(ComputingErrorsTest, WhicheverComesFirstIsNotBoth) {
    Made make;
    Case it;
    usage::UseFacts use;
    use.outings = {make.outing("2025-06-01", "20")};
    it.atoms = usage::atomsOf(use);
    it.records = {make.record("2025-03-01")};
    it.versions = {made::task({every(12, Counter::Months), every("50")})};
    EXPECT_FALSE(it.on("2026-02-28").over);
    EXPECT_TRUE(it.on("2026-03-01").over);
    it.versions[0].combine = upkeep::Combine::Last;
    EXPECT_FALSE(it.on("2026-03-01").over);
}

// Pads are looked at every race and renewed when worn. A look that finds them good starts no new life of the
// pads and makes none due: with 9 h on them they still have 9 h, and the look is done.
TEST(ComputingErrorsTest, AJobByConditionIsNoCalendarJob) {
    Made make;
    Case it;
    usage::UseFacts use;
    use.outings = {make.outing("2026-03-07", "4"), make.outing("2026-03-14", "5")};
    it.atoms = usage::atomsOf(use);
    it.records = {make.record("2026-03-01"), make.record("2026-03-08", upkeep::RecordKind::LookedFine)};
    it.versions = {made::task({every("20")})};
    it.versions[0].renews = true;
    EXPECT_EQ(it.on("2026-03-14").limits[0].behind.best, 900) << "the pads";
    it.versions[0].renews = false;
    EXPECT_EQ(it.on("2026-03-14").limits[0].behind.best, 500) << "the look";
}

// Linkage every 10 washes or mud days. Three dry days with a wash each, and one day of mud with a pressure
// wash: 4 washes, one of them driven past the seals, 1 mud day; a task that is due after mud is due. Hours
// stay raw: 8 h.
TEST(ComputingErrorsTest, AMudDayIsNoNormalDay) {
    Made make;
    Case it;
    usage::UseFacts use;
    for (const char* date : {"2026-03-07", "2026-03-08", "2026-03-14"}) {
        use.outings.push_back(make.outing(date, "2", usage::Ground::Hard));
        use.washes.push_back(make.wash(date));
    }
    use.outings.push_back(make.outing("2026-03-15", "2", usage::Ground::Mud));
    use.washes.push_back(make.wash("2026-03-15", true));
    it.atoms = usage::atomsOf(use);
    const auto all = usage::exposure(it.atoms, std::nullopt, evening("2026-03-15"));
    EXPECT_EQ(made::text(all.hours), "8.0");
    EXPECT_EQ(all.washes, 4);
    EXPECT_EQ(all.pressureWashes, 1);
    EXPECT_EQ(all.mudDays, 1);
    it.versions = {made::task({every(10, Counter::Washes)})};
    it.versions[0].triggers = {{upkeep::Happening::MudDay, ""}};
    EXPECT_FALSE(it.on("2026-03-14").over);
    EXPECT_TRUE(it.on("2026-03-15").over);
    EXPECT_EQ(it.on("2026-03-15").triggeredOn, day("2026-03-15"));
    EXPECT_EQ(it.on("2026-03-15").limits[0].left, 6);
}

// 60 lbf·in are 6.8 N·m; read as lbf·ft they would be 81: twelve times. 1 kgf·m is 9.80665 N·m. A fork's air
// gap in mm is no volume in ml, and is not converted into one.
TEST(ComputingErrorsTest, UnitsDoNotMix) {
    const double inInches = *units::convert(60, "lbf·in", "N·m");
    const double inFeet = *units::convert(60, "lbf·ft", "N·m");
    EXPECT_NEAR(inInches, 6.779, 0.0005);
    EXPECT_NEAR(inFeet / inInches, 12, 1e-12);
    EXPECT_DOUBLE_EQ(*units::convert(1, "kgf·m", "N·m"), 9.80665);
    EXPECT_EQ(units::convert(110, "mm", "ml").error().fault, base::Fault::WrongUnit);
}

// A shelf of so much of each line, and a job that uses this of it.
book::KitState kitOnShelf(const std::vector<std::pair<std::int64_t, std::int64_t>>& shelfAndNeed) {
    std::vector<picture::Row> rows;
    auto job = made::task({every("30")});
    std::int64_t id = 0;
    for (const auto& [there, need] : shelfAndNeed) {
        const StockLineId line{++id};
        rows.emplace_back(stock::StockLine{.id = line, .name = std::to_string(id)});
        rows.emplace_back(stock::StockMove{.id = StockMoveId{100 + id},
                                           .entered = id,
                                           .line = line,
                                           .date = day("2026-03-01"),
                                           .amount = there,
                                           .why = stock::StockWhy::Bought});
        job.kit.push_back({.what = std::to_string(id), .line = line, .amount = need});
    }
    const book::Book book(std::make_shared<const picture::Ledger>(std::move(rows)), day("2026-03-02"));
    return book::kitState(book, job);
}

// A fork service takes two oil seals and two dust seals, one of each a leg, and 350 ml a leg: 700. The shelf
// has 2, 1 and 600: one dust seal and 100 ml are missing. Counted "a seal, a dust seal, 350" as the manual
// lists them for one leg, everything would seem to be there.
TEST(ComputingErrorsTest, QuantityASideIsNotForgotten) {
    const auto both = kitOnShelf({{2, 2}, {1, 2}, {600, 700}});
    ASSERT_EQ(both.missing.size(), 2U);
    EXPECT_EQ(both.missing[0].what, "2");
    EXPECT_EQ(both.missing[0].missing, 1);
    EXPECT_EQ(both.missing[1].what, "3");
    EXPECT_EQ(both.missing[1].missing, 100);
    EXPECT_TRUE(kitOnShelf({{2, 1}, {1, 1}, {600, 350}}).complete());
}

// Three machines take 850 ml of oil each: 2550 ml, out of three bottles of 1000 ml. What is left of one
// bottle goes into the next machine: after two machines 3000 - 1700 = 1300 ml are there, enough for the
// third, and 450 ml are left. Of two bottles 300 ml are left and the third machine lacks 550. Counted in
// bottles a machine, each of them leaves 150 ml that nobody counts, and a fourth one would be bought.
TEST(ComputingErrorsTest, PartBottlesAreCountedByTheMillilitre) {
    EXPECT_TRUE(kitOnShelf({{3000 - 2 * 850, 850}}).complete());
    const auto ofTwo = kitOnShelf({{2000 - 2 * 850, 850}});
    ASSERT_EQ(ofTwo.missing.size(), 1U);
    EXPECT_EQ(ofTwo.missing[0].missing, 550);
    // The bottles themselves: 850 ml out of an opened one with 150 and two full ones empties the opened one
    // first, and opens one.
    const stock::OnHand shelf{.line = StockLineId{1},
                              .amount = 2150,
                              .usable = 2150,
                              .lots = {{.lot = LotId{1}, .amount = 150, .opened = true},
                                       {.lot = LotId{2}, .amount = 1000},
                                       {.lot = LotId{3}, .amount = 1000}}};
    const std::vector<std::pair<std::optional<LotId>, std::int64_t>> drawn{{LotId{1}, 150}, {LotId{2}, 700}};
    EXPECT_EQ(stock::drawFrom(shelf, 850), drawn);
}

// Tyre 35 min, wheel bearings 40, linkage 35, chain kit 45, on a machine that takes 5 min to set up, 11 for
// the rear wheel, 24 for the linkage and 7 for the chain (off and on). One by one: 35 + 16, 40 + 16, 35 + 40
// and 45 + 23 = 51 + 56 + 75 + 68 = 250. In one opening: 155 + 5 + 11 + 24 + 7 = 202.
TEST(ComputingErrorsTest, SharedTeardownIsCountedOnce) {
    const auto machine = weekend::genericMachine(true);
    const std::vector<weekend::Job> jobs{
        weekend::makeJob("tyre", 35, {"RWH"}), weekend::makeJob("wheel bearings", 40, {"RWH"}),
        weekend::makeJob("linkage", 35, {"LNK"}), weekend::makeJob("chain kit", 45, {"CHN", "RWH"})};
    const auto plan = weekend::planWork(weekend::pointersTo(machine), jobs);
    ASSERT_TRUE(plan.has_value());
    EXPECT_EQ(plan->alone.count(), 250);
    EXPECT_EQ(plan->work.count(), 202);
}

// A machine bought with 41 h on a meter that was fitted late: at least 41, likely 80, nobody knows how much
// more. Its valves have no record: neither 41 h nor 0 h since, but no record. The life of the engine
// is 41..80.. with an open end.
TEST(ComputingErrorsTest, AUsedMachineHasNoFalseZero) {
    Made make;
    Case it;
    it.since = day("2026-03-01");
    it.startedNew = false;
    usage::UseFacts use;
    use.hourReadings = {make.reading("2026-03-01", "41"), make.reading("2026-03-08", "43")};
    it.atoms = items::withPast(made::usedMachine("2026-03-01", "41", "80", ""), usage::atomsOf(use));
    EXPECT_EQ(made::text(usage::exposure(it.atoms, std::nullopt, evening("2026-03-08")).hours),
              "43.0..82.0..");
    it.versions = {made::task({every("25")}, upkeep::Consequence::HiddenWear)};
    EXPECT_TRUE(it.on("2026-03-08").noRecord);
    EXPECT_TRUE(it.on("2026-03-08").limits.empty());
}

}  // namespace
}  // namespace wm

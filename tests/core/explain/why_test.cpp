// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// Where figures come from: worked trees.
#include "core/explain/why.h"

#include <gtest/gtest.h>

#include "tests/core/explain/adds_up.h"
#include "tests/core/made.h"

namespace wm::explain {
namespace {

using made::before;
using made::day;
using made::evening;
using upkeep::Counter;
using usage::Ground;

constexpr MachineId kHeron{9001};
constexpr MachineId kKestrel{9002};
constexpr MachineId kPlover{9003};
constexpr ItemId kPiston{9011};
constexpr ItemId kEngineA{9012};
constexpr ItemId kEngineB{9013};

class WhyTest : public testing::Test {
  protected:
    WhyTest() {
        for (const auto& [id, name] :
             {std::pair(kHeron, "Heron"), {kKestrel, "Kestrel"}, {kPlover, "Plover"}})
            rows.emplace_back(
                items::Machine{.id = id, .name = name, .since = day("2026-01-01"), .startedNew = true});
        for (const auto& [id, name] :
             {std::pair(kPiston, "Piston"), {kEngineA, "Engine A"}, {kEngineB, "Engine B"}}) {
            auto item = made::newItem(id, "2026-01-01");
            item.name = name;
            rows.emplace_back(item);
        }
        job.machine = kPlover;
        job.name = "New piston";
        job.position = "engine/piston";
        job.source = "common practice";
        job.validFrom = day("2026-01-01");
    }
    template <class Fact>
    void on(MachineId machine, Fact fact) {
        fact.machine = machine;
        rows.emplace_back(fact);
    }
    [[nodiscard]] book::Book book(std::string_view today) {
        auto all = rows;
        all.emplace_back(job);
        return {std::make_shared<const picture::Ledger>(std::move(all)), day(today)};
    }
    std::string tree(std::string_view today) {
        const auto asked = book(today);
        const Step root = why(asked, *asked.dueLine(job.task));
        EXPECT_EQ(whereItDoesNotAddUp(root), std::nullopt);
        return print(root);
    }

    made::Made make;
    std::vector<picture::Row> rows;
    upkeep::TaskVersion job = made::task({made::every("15")});
};

// A piston that lived in two engines and three machines, every 15 h, mud x 1.5.
//   Engine A sits in the Heron until 20 January: 2 + 3 h.                                        5.0
//   Then engine A goes into the Kestrel, until the piston leaves it on 1 February. The meter there ran 5.5 h
//   from the 21st to the 31st, 4 of them noted; 1.5 are more than 0.1 + 5 % of 4 = 0.3: unlogged.  5.5
//   Then the piston goes into engine B, which has sat in the Plover all along and ran 6 h in January, without
//   this piston: 2 h of mud x 1.5 and 1 h of sand.                                               4.0
// 5.0 + 5.5 + 4.0 = 14.5 of 15 h: half an hour is left. As ridden it is 13.5 h.
TEST_F(WhyTest, APistonThatLivedInTwoEnginesAndThreeMachines) {
    rows.emplace_back(make.fit(kEngineA, kHeron, "engine", before("2026-01-01")));
    rows.emplace_back(make.fit(kEngineB, kPlover, "engine", before("2026-01-01")));
    rows.emplace_back(make.fit(kPiston, kEngineA, "piston", before("2026-01-01")));
    on(kHeron, make.outing("2026-01-10", "2"));
    on(kPlover, make.outing("2026-01-11", "6"));
    on(kHeron, make.outing("2026-01-17", "3"));
    rows.emplace_back(make.move(kEngineA, items::MoveKind::Removed, evening("2026-01-20")));
    rows.emplace_back(make.fit(kEngineA, kKestrel, "engine", evening("2026-01-20")));
    on(kKestrel, make.reading("2026-01-21", "0"));
    on(kKestrel, make.outing("2026-01-24", "4"));
    on(kKestrel, make.reading("2026-01-31", "5.5"));
    rows.emplace_back(make.move(kPiston, items::MoveKind::Removed, evening("2026-02-01")));
    rows.emplace_back(make.fit(kPiston, kEngineB, "piston", evening("2026-02-01")));
    on(kPlover, make.outing("2026-02-07", "2", Ground::Mud));
    on(kPlover, make.outing("2026-02-14", "1", Ground::Sand));
    job.weights = {{.ground = Ground::Mud, .permille = 1500}};
    EXPECT_EQ(tree("2026-02-20"),
              "task New piston: 0.5\n"
              "  wording common practice from 2026-01-01\n"
              "    weight mud x1.5\n"
              "  item Piston engine/piston from 2026-01-01\n"
              "  known start from 2026-01-01\n"
              "  limit: 0.5\n"
              "    amount: 15\n"
              "    behind: 14.5\n"
              "      carried Heron engine/piston from 2026-01-01 to 2026-01-20: 5\n"
              "        place Engine A engine/piston from 2026-01-01 to 2026-01-20\n"
              "        outings of 2: 5\n"
              "          outing from 2026-01-10 to 2026-01-10: 2\n"
              "          outing from 2026-01-17 to 2026-01-17: 3\n"
              "      carried Kestrel engine/piston from 2026-01-20 to 2026-02-01: 5.5\n"
              "        place Engine A engine/piston from 2026-01-20 to 2026-02-01\n"
              "        outings of 1: 4\n"
              "          outing from 2026-01-24 to 2026-01-24: 4\n"
              "        gaps of 1: 1.5\n"
              "          gap from 2026-01-21 to 2026-01-31: 1.5\n"
              "      carried Plover engine/piston from 2026-02-01: 4\n"
              "        place Engine B engine/piston from 2026-02-01\n"
              "        outings of 1: 1\n"
              "          outing from 2026-02-14 to 2026-02-14: 1\n"
              "        outings of 1 x1.5: 3\n"
              "          outing x1.5 from 2026-02-07 to 2026-02-07: 3\n");
    const auto asked = book("2026-02-20");
    const Step root = why(asked, *asked.dueLine(job.task));
    EXPECT_EQ(root.children[3].children[1].raw, (upkeep::CountBracket{1350, 1350, 1350}));
}

// Ten days of 10 h that nobody noted, and a wheel that was off from the 4th to the 7th: it had days 2 to 4
// and 8 to 11, seven of ten, 3 h and 4 h at best, each of them up to 10. Together they are at most 10,
// not 20.
TEST_F(WhyTest, TwoPartsOfOneUnloggedStretchAreNoMoreThanTheWhole) {
    job.position = "rear wheel";
    rows.emplace_back(make.fit(kPiston, kPlover, "rear wheel", evening("2026-03-01")));
    rows.emplace_back(make.move(kPiston, items::MoveKind::Removed, evening("2026-03-04")));
    rows.emplace_back(make.fit(kPiston, kPlover, "rear wheel", evening("2026-03-07")));
    on(kPlover, make.reading("2026-03-01", "0"));
    on(kPlover, make.reading("2026-03-11", "10"));
    EXPECT_EQ(tree("2026-03-20"),
              "task New piston: 8\n"
              "  wording common practice from 2026-01-01\n"
              "  item Piston rear wheel from 2026-01-01\n"
              "  known start from 2026-01-01\n"
              "  limit: 8\n"
              "    amount: 15\n"
              "    behind: 0..7..10\n"
              "      carried Plover rear wheel from 2026-03-01 to 2026-03-04: 0..3..10\n"
              "        gaps of 1: 0..3..10\n"
              "          gap from 2026-03-01 to 2026-03-04: 0..3..10\n"
              "      carried Plover rear wheel from 2026-03-07: 0..4..10\n"
              "        gaps of 1: 0..4..10\n"
              "          gap from 2026-03-07 to 2026-03-11: 0..4..10\n"
              "      shared gap of 2 from 2026-03-01 to 2026-03-11: 0..0..-10\n");
}

// Marks every 15 h; done at 16 h, so the next is 30: 14 h on, of which 3 are ridden. And 6 months of days.
TEST_F(WhyTest, FixedMarksAndTheCalendar) {
    job.position.clear();
    job.limits.push_back(made::every(6, Counter::Months));
    job.countFrom = upkeep::CountFrom::FixedMarks;
    on(kPlover, make.outing("2026-01-05", "16"));
    on(kPlover, make.record("2026-01-06"));
    on(kPlover, make.outing("2026-02-05", "3"));
    EXPECT_EQ(tree("2026-02-20"),
              "task New piston first: 11\n"
              "  wording common practice from 2026-01-01\n"
              "  record from 2026-01-06\n"
              "  limit: 11\n"
              "    amount: 14\n"
              "      mark: 30\n"
              "      stood at: -16\n"
              "    behind: 3\n"
              "      outings of 1: 3\n"
              "        outing from 2026-02-05 to 2026-02-05: 3\n"
              "  limit: 131\n"
              "    amount to 2026-07-01: 176\n"
              "    behind: 45\n");
}

TEST_F(WhyTest, WithoutARecordNobodyCanSay) {
    job.position.clear();
    std::get<items::Machine>(rows[2]).startedNew = false;
    job.triggers = {{upkeep::Happening::Wash, ""}};
    on(kPlover, make.wash("2026-02-01"));
    EXPECT_EQ(tree("2026-02-20"),
              "task New piston\n"
              "  happened wash from 2026-02-01\n"
              "  wording common practice from 2026-01-01\n"
              "  no record from 2026-01-01\n");
}

TEST_F(WhyTest, NamesTheJobThatBroughtItOn) {
    job.position.clear();
    job.triggers = {{upkeep::Happening::Job, "oil"}};
    on(kPlover, make.record("2026-02-01", upkeep::RecordKind::Done, "oil"));
    EXPECT_NE(tree("2026-02-20").find("  happened job oil from 2026-02-01\n"), std::string::npos)
        << tree("2026-02-20");
}

TEST_F(WhyTest, NamesTheRaceBeforeWhichItIsDue) {
    job.position.clear();
    job.triggers = {{upkeep::Happening::BeforeRace, ""}};
    outlook::Event race{.id = EventId{9031},
                        .name = "Sand day",
                        .kind = outlook::EventKind::Race,
                        .first = day("2026-02-22"),
                        .last = day("2026-02-22"),
                        .entries = {{.machine = kPlover}}};
    rows.emplace_back(race);
    on(kPlover, make.outing("2026-02-01", "2"));
    EXPECT_NE(tree("2026-02-20").find("  happened before race to 2026-02-22\n"), std::string::npos)
        << tree("2026-02-20");
}

// Due with every second oil change; one was done.
TEST_F(WhyTest, EveryNthOfAnotherJob) {
    job.position.clear();
    job.limits.clear();
    job.nthOf = "oil";
    job.nth = 2;
    on(kPlover, make.record("2026-02-01", upkeep::RecordKind::Done, "oil"));
    EXPECT_EQ(tree("2026-02-20"),
              "task New piston: 1\n"
              "  wording common practice from 2026-01-01\n"
              "  known start from 2026-01-01\n"
              "  limit: 1\n"
              "    amount: 2\n"
              "    other jobs oil: 1\n");
}

// 32 h on 1 March, 7012 h five days later (a figure typed with two digits too many), 40 h on the 8th: the
// jump counts as it stands and is named; from there down nothing is metered, and the note stands.
TEST_F(WhyTest, ReadingsThatCanNotBeAreNamed) {
    job.position.clear();
    job.limits = {made::every("8000")};
    on(kPlover, make.reading("2026-03-01", "32"));
    on(kPlover, make.reading("2026-03-06", "7012"));
    on(kPlover, make.outing("2026-03-07", "2"));
    on(kPlover, make.reading("2026-03-08", "40"));
    const std::string said = tree("2026-03-20");
    EXPECT_NE(said.find("      outings of 1: 2\n"), std::string::npos) << said;
    EXPECT_NE(said.find("      jump 7012.0 32.0 from 2026-03-01 to 2026-03-06\n"
                        "      unmetered 40.0 7012.0 from 2026-03-06 to 2026-03-08\n"),
              std::string::npos)
        << said;
    // A job done since has nothing to do with the jump.
    auto done = make.record("2026-03-06");
    done.task = job.task;
    done.what = "New piston";
    on(kPlover, done);
    const std::string since = tree("2026-03-20");
    EXPECT_EQ(since.find("jump"), std::string::npos) << since;
    EXPECT_NE(since.find("unmetered"), std::string::npos) << since;
}

TEST_F(WhyTest, SaysWithWhichCompletionTheExtraWorkComes) {
    job.everyNth = 3;
    job.extra = "New small end";
    EXPECT_NE(tree("2026-03-20").find("  extra New small end of 3: 3\n"), std::string::npos);
    for (const char* date : {"2026-02-01", "2026-03-01"}) {
        auto done = make.record(date);
        done.task = job.task;
        on(kPlover, done);
    }
    job.position.clear();
    EXPECT_NE(tree("2026-03-20").find("  extra New small end of 3: 1\n"), std::string::npos)
        << tree("2026-03-20");
}

}  // namespace
}  // namespace wm::explain

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// How readings and notes become atoms. Dates lie in May 2026; every figure is worked out beside it.
#include <gtest/gtest.h>

#include "core/usage/meter_doubts.h"
#include "core/usage/metering.h"
#include "tests/core/made.h"

namespace wm::usage {
namespace {

using made::Made;
using made::text;

// "2026-05-03 2.0 metered": one line an atom that has hours.
std::vector<std::string> lines(const UseFacts& facts) {
    static constexpr std::array known{"noted", "assumed",  "metered", "down",
                                      "up",    "unlogged", "at most", "past"};
    std::vector<std::string> result;
    for (const Atom& atom : atomsOf(facts)) {
        std::string line = atom.to.date.iso() + " " + text(atom.hours) + " " +
                           known.at(static_cast<std::size_t>(atom.known));
        if (atom.from != atom.to)
            line += " from " + atom.from.date.iso();
        result.push_back(line);
    }
    return result;
}

using Lines = std::vector<std::string>;

TEST(AtomsTest, NotesStandByThemselvesWithoutReadings) {
    Made make;
    UseFacts facts;
    facts.outings = {make.outing("2026-05-03", "2.0"), make.outing("2026-05-02", "1.5")};
    EXPECT_EQ(lines(facts), (Lines{"2026-05-02 1.5 noted", "2026-05-03 2.0 noted"}));
}

TEST(AtomsTest, NotesThatAgreeWithTheMeterAreMetered) {
    Made make;
    UseFacts facts;
    facts.hourReadings = {make.reading("2026-05-03", "13.5"), make.reading("2026-05-01", "10.0")};
    facts.outings = {make.outing("2026-05-02", "1.5"), make.outing("2026-05-03", "2.0")};
    EXPECT_EQ(lines(facts), (Lines{"2026-05-02 1.5 metered", "2026-05-03 2.0 metered"}));
}

// The meter read after each of them: each has its own stretch, whatever is told first.
TEST(AtomsTest, OutingsOfOneDayLieBetweenTheirOwnReadings) {
    Made make;
    UseFacts facts;
    const auto ridden = [&](const std::string& hours, const std::string& meter) {
        facts.outings.push_back(make.outing("2026-05-03", hours));
        facts.hourReadings.push_back(make.reading("2026-05-03", meter));
        facts.hourReadings.back().outing = facts.outings.back().id;
    };
    ridden("1.0", "1.0");
    ridden("1.0", "2.0");
    ridden("0.5", "2.5");
    EXPECT_EQ(lines(facts),
              (Lines{"2026-05-03 1.0 noted", "2026-05-03 1.0 metered", "2026-05-03 0.5 metered"}));
    EXPECT_TRUE(whereItStood(facts).empty());
    facts.hourReadings.insert(facts.hourReadings.begin(), make.reading("2026-05-01", "0.0"));
    EXPECT_EQ(lines(facts),
              (Lines{"2026-05-03 1.0 metered", "2026-05-03 1.0 metered", "2026-05-03 0.5 metered"}));
    EXPECT_TRUE(whereItStood(facts).empty());
}

TEST(AtomsTest, AnOutingBetweenTwoThatWereReadLiesBetweenThem) {
    Made make;
    UseFacts facts;
    facts.hourReadings = {make.reading("2026-05-01", "10.0")};
    facts.outings = {make.outing("2026-05-03", "1.0"), make.outing("2026-05-03", "0.5"),
                     make.outing("2026-05-03", "1.0")};
    for (const auto& [at, shown] : {std::pair(0, "11.0"), std::pair(2, "12.5")}) {
        facts.hourReadings.push_back(make.reading("2026-05-03", shown));
        facts.hourReadings.back().outing = facts.outings[static_cast<std::size_t>(at)].id;
    }
    EXPECT_EQ(lines(facts),
              (Lines{"2026-05-03 1.0 metered", "2026-05-03 0.5 metered", "2026-05-03 1.0 metered"}));
    // One that was told last is of the end of the day: the evening's reading closes it.
    facts.outings.push_back(make.outing("2026-05-03", "0.4"));
    facts.hourReadings.push_back(make.reading("2026-05-03", "12.9"));
    EXPECT_EQ(lines(facts).back(), "2026-05-03 0.4 metered");
    EXPECT_EQ(lines(facts).size(), 4U);
}

TEST(AtomsTest, NotesThatSayTooMuchAreScaledDownToTheMeter) {
    // Noted 2 + 2 + 1 = 5 h, metered 4.01 h: 401 hundredths x 2/5 = 160.4, 160.4, x 1/5 = 80.2; floors 160 +
    // 160
    // + 80 = 400, the one left goes to the largest remainder, of equal ones the first: 161, 160, 80.
    Made make;
    UseFacts facts;
    facts.hourReadings = {make.reading("2026-05-01", "10"), make.reading("2026-05-04", "14.01")};
    facts.outings = {make.outing("2026-05-02", "2"), make.outing("2026-05-03", "2"),
                     make.outing("2026-05-04", "1")};
    EXPECT_EQ(lines(facts), (Lines{"2026-05-02 1.61 down", "2026-05-03 1.6 down", "2026-05-04 0.8 down"}));
}

TEST(AtomsTest, ToleranceIsATenthOfAnHourAndAnExtraTwentiethAnOuting) {
    // Two outings of 2 h: tolerance 2 x 0.1 + 5 % of 4 = 0.4 h. Missing 0.4: scaled up; missing 0.41:
    // unlogged.
    Made make;
    UseFacts facts;
    facts.hourReadings = {make.reading("2026-05-01", "0"), make.reading("2026-05-03", "4.4")};
    facts.outings = {make.outing("2026-05-02", "2"), make.outing("2026-05-03", "2")};
    EXPECT_EQ(lines(facts), (Lines{"2026-05-02 2.2 up", "2026-05-03 2.2 up"}));

    facts.hourReadings[1].shown = made::hours("4.41");
    EXPECT_EQ(lines(facts), (Lines{"2026-05-02 2.0 noted", "2026-05-03 2.0 noted",
                                   "2026-05-03 0.41 unlogged from 2026-05-01"}));
}

TEST(AtomsTest, MeteredHoursWithoutAnOutingAreUnlogged) {
    Made make;
    UseFacts facts;
    facts.hourReadings = {make.reading("2026-05-01", "0"), make.reading("2026-05-08", "0.1"),
                          make.reading("2026-05-09", "0.1")};
    EXPECT_EQ(lines(facts), (Lines{"2026-05-08 0.1 unlogged from 2026-05-01"}));
    EXPECT_EQ(atomsOf(facts).front().source, 2);
    EXPECT_EQ(atomsOf(facts).front().outings, 0);
}

TEST(AtomsTest, OutingsWithoutANoteShareTheRestOfTheirInterval) {
    // 10 h metered, 3.99 h noted: 6.01 h for two: 3.01 and 3.00.
    Made make;
    UseFacts facts;
    facts.hourReadings = {make.reading("2026-05-01", "0"), make.reading("2026-05-05", "10")};
    facts.outings = {make.outing("2026-05-02"), make.outing("2026-05-03", "3.99"), make.outing("2026-05-04")};
    EXPECT_EQ(lines(facts),
              (Lines{"2026-05-02 3.01 metered", "2026-05-03 3.99 metered", "2026-05-04 3.0 metered"}));
}

TEST(AtomsTest, AMeterThatCountsTheVanSaysAtMost) {
    // Noted 2 h and 1 h; the meter moved 4.5 h, of which the van had 1.5 h or somebody rode.
    Made make;
    UseFacts facts;
    facts.hourReadings = {make.reading("2026-05-01", "0"), make.reading("2026-05-05", "4.5")};
    facts.outings = {make.outing("2026-05-02", "2"), make.outing("2026-05-03", "1")};
    const auto atoms = atomsOf(facts, MeterCounts::TransportToo);
    ASSERT_EQ(atoms.size(), 3U);
    EXPECT_EQ(atoms[0].hours, HoursBracket::exactly(made::hours("2")));
    EXPECT_EQ(atoms[0].known, Known::Noted);
    EXPECT_EQ(atoms[2].hours, (HoursBracket{made::hours("0"), made::hours("0"), made::hours("1.5")}));
    EXPECT_EQ(atoms[2].known, Known::AtMost);
    const calendar::Moment end{made::day("2026-05-05"), calendar::DayPart::AfterRiding};
    const calendar::Moment middle{made::day("2026-05-03"), calendar::DayPart::AfterRiding};
    const auto all = HoursBracket{made::hours("3"), made::hours("3"), made::hours("4.5")};
    EXPECT_EQ(exposure(atoms, std::nullopt, end).hours, all);
    EXPECT_EQ(exposure(atoms, std::nullopt, middle).hours, all) << "the van may have run before or after";
    // A little more than noted is the van as well, and stays so: nothing is scaled up.
    facts.hourReadings[1].shown = made::hours("3.1");
    EXPECT_EQ(exposure(atomsOf(facts, MeterCounts::TransportToo), std::nullopt, end).hours.best,
              made::hours("3"));
    // Less than noted was not ridden, van or not.
    facts.hourReadings[1].shown = made::hours("2.4");
    EXPECT_EQ(exposure(atomsOf(facts, MeterCounts::TransportToo), std::nullopt, end).hours,
              HoursBracket::exactly(made::hours("2.4")));
    // An outing that nobody noted had from nothing to all of the rest: 3.1 - 2.
    facts.hourReadings[1].shown = made::hours("3.1");
    facts.outings[1].hours.reset();
    const auto blank = atomsOf(facts, MeterCounts::TransportToo);
    EXPECT_EQ(blank[1].hours, (HoursBracket{made::hours("0"), made::hours("1.1"), made::hours("1.1")}));
}

TEST(AtomsTest, OutingsWithoutANoteGetNothingWhenTheNotesUseUpTheMeter) {
    Made make;
    UseFacts facts;
    facts.hourReadings = {make.reading("2026-05-01", "0"), make.reading("2026-05-05", "3")};
    facts.outings = {make.outing("2026-05-02"), make.outing("2026-05-03", "4")};
    EXPECT_EQ(lines(facts), (Lines{"2026-05-02 0.0 metered", "2026-05-03 3.0 down"}));
}

TEST(AtomsTest, OutingsNotedAsZeroShareAShortfallEvenly) {
    // Two outings of 0 h, the meter moved 0.2 h: 2 x 0.1 h may be missing, and all weights are zero.
    Made make;
    UseFacts facts;
    facts.hourReadings = {make.reading("2026-05-01", "0"), make.reading("2026-05-05", "0.2")};
    facts.outings = {make.outing("2026-05-02", "0"), make.outing("2026-05-03", "0")};
    EXPECT_EQ(lines(facts), (Lines{"2026-05-02 0.1 up", "2026-05-03 0.1 up"}));
}

TEST(AtomsTest, AfterTheLastReadingAnUnnotedOutingIsABracketAboutTheMean) {
    // Known outings 1.0 and 2.01 h: mean 1.505, half up 1.51; the longest is 2.01, twice the mean 3.02.
    Made make;
    UseFacts facts;
    facts.hourReadings = {make.reading("2026-05-01", "0"), make.reading("2026-05-03", "3.01")};
    facts.outings = {make.outing("2026-05-02", "1"), make.outing("2026-05-03", "2.01"),
                     make.outing("2026-05-04")};
    EXPECT_EQ(lines(facts).back(), "2026-05-04 0.0..1.51..3.02 assumed");
    // A long day: mean (1 + 2.01 + 9) / 3 = 4.0033, longest 9.
    facts.outings.push_back(make.outing("2026-05-05", "9"));
    EXPECT_EQ(lines(facts)[2], "2026-05-04 0.0..4.0..9.0 assumed");
}

TEST(AtomsTest, WithoutAnyKnownOutingNobodyCanSay) {
    Made make;
    UseFacts facts;
    facts.outings = {make.outing("2026-05-04"), make.outing("2026-05-05", "0")};
    EXPECT_EQ(lines(facts), (Lines{"2026-05-04 0.0..0.0.. assumed", "2026-05-05 0.0 noted"}));
}

TEST(AtomsTest, AReadingCountsAtItsMoment) {
    // Read before Sunday's riding: Sunday's 2 h are after it.
    Made make;
    UseFacts facts;
    facts.hourReadings = {make.reading("2026-05-01", "0"), make.reading("2026-05-03", "1")};
    facts.hourReadings[1].part = calendar::DayPart::BeforeRiding;
    facts.outings = {make.outing("2026-05-02", "1"), make.outing("2026-05-03", "2")};
    EXPECT_EQ(lines(facts), (Lines{"2026-05-02 1.0 metered", "2026-05-03 2.0 noted"}));
    facts.hourReadings[1].part = calendar::DayPart::Riding;
    EXPECT_EQ(lines(facts), (Lines{"2026-05-02 0.33 down", "2026-05-03 0.67 down"}));
}

TEST(AtomsTest, AReplacedMeterStillCountsWhatTheOldOneShowed) {
    // 140.2 -> 143.6 on the old one, then 0 -> 9.9: 3.4 and 9.9 h.
    Made make;
    UseFacts facts;
    facts.hourReadings = {make.reading("2026-05-01", "140.2"), make.replaced("2026-05-10", "143.6", "0"),
                          make.reading("2026-05-20", "9.9")};
    EXPECT_EQ(lines(facts),
              (Lines{"2026-05-10 3.4 unlogged from 2026-05-01", "2026-05-20 9.9 unlogged from 2026-05-10"}));
    facts.hourReadings[1].event = MeterEvent::Reset;
    EXPECT_EQ(lines(facts).size(), 2U);
}

TEST(AtomsTest, WithoutTheOldFigureTheNotesStandUpToTheReplacement) {
    Made make;
    UseFacts facts;
    facts.hourReadings = {make.reading("2026-05-01", "140.2"), make.replaced("2026-05-10", "", "0"),
                          make.reading("2026-05-20", "5")};
    facts.outings = {make.outing("2026-05-05", "2"), make.outing("2026-05-15", "5")};
    EXPECT_EQ(lines(facts), (Lines{"2026-05-05 2.0 noted", "2026-05-15 5.0 metered"}));
}

TEST(AtomsTest, ARolledOverMeterStartsAgainFromZero) {
    // 998.7 -> 1000.0 = 0.0 -> 3.2: 1.3 + 3.2 = 4.5 h.
    Made make;
    UseFacts facts;
    facts.hourReadings = {make.reading("2026-05-01", "998.7"), make.rolled("2026-05-10", "3.2", "1000")};
    EXPECT_EQ(lines(facts), (Lines{"2026-05-10 4.5 unlogged from 2026-05-01"}));
    facts.hourReadings[1].rollsAt.reset();
    EXPECT_EQ(lines(facts), Lines{});
}

TEST(AtomsTest, WhileTheMeterIsDeadTheNotesStand) {
    // Dead from 12.0 on; the outings of the 6th and 8th are known from notes; then 20.0 -> 21.5 counts again.
    Made make;
    UseFacts facts;
    facts.hourReadings = {
        make.reading("2026-05-01", "10"), make.reading("2026-05-04", "12", MeterEvent::Stopped),
        make.reading("2026-05-07", "12"), make.reading("2026-05-10", "20", MeterEvent::Resumed),
        make.reading("2026-05-12", "21.5")};
    facts.outings = {make.outing("2026-05-03", "1.9"), make.outing("2026-05-06", "3"),
                     make.outing("2026-05-08", "2"), make.outing("2026-05-11", "1.5")};
    EXPECT_EQ(lines(facts), (Lines{"2026-05-03 2.0 up", "2026-05-06 3.0 noted", "2026-05-08 2.0 noted",
                                   "2026-05-11 1.5 metered"}));
}

TEST(AtomsTest, ALowerReadingWithoutAWordWhyMetersNothing) {
    Made make;
    UseFacts facts;
    facts.hourReadings = {make.reading("2026-05-01", "50"), make.reading("2026-05-05", "47.5"),
                          make.reading("2026-05-09", "49")};
    facts.outings = {make.outing("2026-05-03", "2"), make.outing("2026-05-07", "1.5")};
    EXPECT_EQ(lines(facts), (Lines{"2026-05-03 2.0 noted", "2026-05-07 1.5 metered"}));
}

TEST(AtomsTest, DistanceFollowsTheSameRules) {
    // Odometer 100 -> 151 km, noted 40 km: tolerance 1 + 2 km, so 11 km are unlogged. -> 43 km: scaled up.
    Made make;
    UseFacts facts;
    facts.distanceReadings = {make.odometer("2026-05-01", "100"), make.odometer("2026-05-05", "151")};
    facts.outings = {make.outing("2026-05-03", "1")};
    facts.outings[0].distance = made::km("40");
    auto atoms = atomsOf(facts);
    ASSERT_EQ(atoms.size(), 2U);
    EXPECT_EQ(atoms[0].distance, MetresBracket::exactly(units::Metres{40'000}));
    EXPECT_EQ(atoms[1].distance, MetresBracket::exactly(units::Metres{11'000}));
    EXPECT_EQ(atoms[1].hours, HoursBracket::exactly(units::Hours{0}));
    EXPECT_EQ(atoms[1].kind, AtomKind::Unlogged);

    facts.distanceReadings[1].shown = made::km("143");
    atoms = atomsOf(facts);
    ASSERT_EQ(atoms.size(), 1U);
    EXPECT_EQ(atoms[0].distance, MetresBracket::exactly(units::Metres{43'000}));
    EXPECT_EQ(atoms[0].known, Known::Noted) << "known says how the hours are known";
}

TEST(AtomsTest, WashesAndCrashesCarryTheirOwnCountOnly) {
    Made make;
    UseFacts facts;
    facts.washes = {make.wash("2026-05-03", true), make.wash("2026-05-02")};
    facts.crashes = {make.crash("2026-05-03")};
    facts.outings = {make.outing("2026-05-03", "1", Ground::Water),
                     make.outing("2026-05-02", "1", Ground::Mud), make.race("2026-05-01", "1", 3)};
    facts.outings[2].pace = Pace::Race;
    const auto atoms = atomsOf(facts);
    ASSERT_EQ(atoms.size(), 6U);
    EXPECT_EQ(atoms[0].starts, 3);
    EXPECT_EQ(atoms[0].pace, Pace::Race);
    EXPECT_FALSE(atoms[0].mud);
    EXPECT_TRUE(atoms[1].mud);
    EXPECT_EQ(atoms[1].ground, Ground::Mud);
    EXPECT_EQ(atoms[2].kind, AtomKind::Wash);
    EXPECT_EQ(atoms[2].washes, 1);
    EXPECT_EQ(atoms[2].pressureWashes, 0);
    EXPECT_EQ(atoms[2].hours, HoursBracket::exactly(units::Hours{0}));
    EXPECT_TRUE(atoms[3].mud);
    EXPECT_EQ(atoms[4].kind, AtomKind::Crash);
    EXPECT_EQ(atoms[4].crashes, 1);
    EXPECT_EQ(atoms[5].pressureWashes, 1) << "the wash of an evening comes after its riding";
    EXPECT_EQ(atoms[5].source, 1);
}

TEST(AtomsTest, SharesAddUpToTheWhole) {
    EXPECT_EQ(sharesOf(100, std::vector<std::int64_t>{1, 1, 1}), (std::vector<std::int64_t>{34, 33, 33}));
    EXPECT_EQ(sharesOf(7, std::vector<std::int64_t>{1, 5}), (std::vector<std::int64_t>{1, 6}));
    EXPECT_EQ(sharesOf(5, std::vector<std::int64_t>{0, 0}), (std::vector<std::int64_t>{3, 2}));
    EXPECT_EQ(sharesOf(0, std::vector<std::int64_t>{}), (std::vector<std::int64_t>{}));
    EXPECT_EQ(sharesOf(1'000'000'000, std::vector<std::int64_t>{1'000'000'000, 1}),
              (std::vector<std::int64_t>{999'999'999, 1}));
}

}  // namespace
}  // namespace wm::usage

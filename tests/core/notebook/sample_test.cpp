// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// A season of two machines as an invented garage typed it into a spreadsheet, with the defects that people
// make. What it adds up to is reckoned here from its cells, by nothing that the program uses.
#include <gtest/gtest.h>

#include <cmath>
#include <map>
#include <set>
#include <sstream>

#include "tests/core/notebook/notebook_bench.h"

namespace wm::notebook {
namespace {

const Agreement kAllCures{.allCures = true};

std::set<std::size_t> linesWith(const Notebook& notebook, Verdict verdict) {
    std::set<std::size_t> lines;
    for (const Line& line : notebook.lines)
        if (line.verdict == verdict)
            lines.insert(line.line);
    return lines;
}

TEST(NotebookSampleTest, EachDefectIsNamedAndEveryRightLineTaken) {
    const Garage garage;
    const Notebook notebook = garage.read(notebookFile("outings.csv"));
    EXPECT_EQ(notebook.lines.size(), 78U);
    EXPECT_EQ(linesWith(notebook, Verdict::Doubtful), (std::set<std::size_t>{6, 11, 21, 34, 67, 74}))
        << told(notebook);
    EXPECT_EQ(linesWith(notebook, Verdict::Refused), std::set<std::size_t>{});
    using Remarks = std::vector<Remark>;
    EXPECT_EQ(lineOf(notebook, 6).remarks, (Remarks{{Defect::NameOtherwise, "sorrel 450", "Sorrel 450"}}));
    EXPECT_EQ(lineOf(notebook, 11).remarks, (Remarks{{Defect::DateFar, "04.04.2036", "04.04.2026"}}));
    EXPECT_EQ(lineOf(notebook, 21).remarks, (Remarks{{Defect::MeterRunsBack, "016,9", "106,9"}}));
    EXPECT_EQ(lineOf(notebook, 34).remarks, (Remarks{{Defect::Twice, "", ""}}));
    EXPECT_EQ(lineOf(notebook, 67).remarks, (Remarks{{Defect::HoursForm, "2h", "2,0"}}));
    EXPECT_EQ(lineOf(notebook, 74).remarks, (Remarks{{Defect::DateForm, "2026-10-17", "17.10.2026"}}));
    EXPECT_EQ(lineOf(notebook, 34).cure, Cure::LeaveOut);
    EXPECT_EQ(lineOf(notebook, 21).cure, Cure::AsLikely);
}

TEST(NotebookSampleTest, ARenewedMeterAndUnwrittenRidesAreSaid) {
    const Garage garage;
    const Notebook notebook = garage.read(notebookFile("outings.csv"));
    EXPECT_EQ(lineOf(notebook, 43).remarks, (std::vector<Remark>{{Defect::NewMeter, "", "44,4"}}));
    EXPECT_EQ(lineOf(notebook, 43).facts.event, usage::MeterEvent::Replaced);
    std::map<std::size_t, std::string> unlogged;
    for (const Line& line : notebook.lines)
        for (const Remark& remark : line.remarks)
            if (remark.defect == Defect::Unlogged)
                unlogged[line.line] = remark.given;
    EXPECT_EQ(unlogged,
              (std::map<std::size_t, std::string>{{10, "0,5"}, {36, "0,8"}, {45, "0,5"}, {48, "1,1"}}));
}

TEST(NotebookSampleTest, EveryJobFindsItsTasksAndRaisesNoDoubt) {
    Garage garage;
    garage.take(notebookFile("outings.csv"), kAllCures);
    const Notebook notebook = garage.read(notebookFile("jobs.csv"));
    EXPECT_EQ(notebook.count(Verdict::Taken), 42U) << told(notebook);
    for (const Line& line : notebook.lines) {
        const bool two = line.facts.job == "oil and filter" || line.facts.job == "spokes checked";
        EXPECT_EQ(line.facts.tasks.size(), two ? 2U : 1U) << told(line);
    }
    EXPECT_EQ(lineOf(notebook, 3).facts.used,
              (std::vector<UsedPart>{{"engine oil", 1000, upkeep::Unit::Millilitre},
                                     {"oil filter", 1, upkeep::Unit::Piece},
                                     {"drain washer", 1, upkeep::Unit::Piece}}));
}

TEST(NotebookSampleTest, JobsAloneAskAboutTheMeterOnce) {
    const Garage garage;
    const Notebook notebook = garage.read(notebookFile("jobs.csv"));
    EXPECT_EQ(linesWith(notebook, Verdict::Doubtful), std::set<std::size_t>{25}) << told(notebook);
    EXPECT_TRUE(lineOf(notebook, 25).has(Defect::MeterReplaced));
}

// -- the notebook's own arithmetic

using CsvCells = std::vector<std::string>;

std::vector<CsvCells> cellsOf(const std::string& bytes) {
    std::vector<CsvCells> rows;
    std::istringstream lines(bytes);
    for (std::string line; std::getline(lines, line);) {
        CsvCells cells(1);
        bool quoted = false;
        for (const char c : line) {
            if (c == '"')
                quoted = !quoted;
            else if (c == ';' && !quoted)
                cells.emplace_back();
            else if (c != '\r')
                cells.back() += c;
        }
        rows.push_back(cells);
    }
    rows.erase(rows.begin());
    return rows;
}

long hundredths(std::string cell) {
    for (char& c : cell)
        c = c == ',' ? '.' : c;
    return std::lround(std::stod(cell) * 100);
}

struct Sums {
    long hours = 0;
    long washes = 0;
    long pressure = 0;
    long rides = 0;
    long starts = 0;
};

// What the meter ran from its first figure on, and what was noted before that and after the last. The three
// cells that a reader puts right on sight are put right by hand.
Sums sumsOf(const std::string& machine) {
    Sums sums;
    long last = -1;
    long since = 0;
    std::set<std::string> seen;
    for (CsvCells row : cellsOf(notebookFile("outings.csv"))) {
        if (row[1] == "sorrel 450 ")
            row[1] = "Sorrel 450";
        if (row[4] == "016,9")
            row[4] = "106,9";
        std::string all;
        for (const std::string& cell : row)
            all += cell + ';';
        if (row[1] != machine || !seen.insert(all).second)
            continue;
        if (row[2] == "meter") {
            last = hundredths(row[4]);
            since = 0;
            continue;
        }
        ++sums.rides;
        since += hundredths(row[3]);
        sums.washes += row[7].empty() ? 0 : 1;
        sums.pressure += row[7] == "pressure" ? 1 : 0;
        sums.starts += row[6].empty() ? 0 : std::stol(row[6]);
        if (!row[4].empty()) {
            const long shown = hundredths(row[4]);
            sums.hours += last < 0 ? since : shown - last;
            last = shown;
            since = 0;
        }
    }
    sums.hours += since;
    return sums;
}

class TakenOverTest : public testing::Test {
  protected:
    TakenOverTest() {
        garage.take(notebookFile("outings.csv"), kAllCures);
        garage.take(notebookFile("jobs.csv"), kAllCures);
    }
    [[nodiscard]] usage::Exposure life(MachineId machine) const {
        const book::Book book = garage.book();
        usage::Exposure life = book.life(machine);
        const auto* card = book.ledger().find<items::Machine>(machine);
        life.hours.best -= card->pastBest;
        return life;
    }
    Garage garage;
};

TEST_F(TakenOverTest, HoursWashesAndStartsAddUpAsInTheNotebook) {
    for (const auto& [id, name] :
         {std::pair(garage.heron, "Heron 250"), std::pair(garage.sorrel, "Sorrel 450")}) {
        const Sums sums = sumsOf(name);
        const usage::Exposure exposure = life(id);
        EXPECT_EQ(exposure.hours.best.count(), sums.hours) << name;
        EXPECT_EQ(exposure.washes, sums.washes) << name;
        EXPECT_EQ(exposure.pressureWashes, sums.pressure) << name;
        EXPECT_EQ(exposure.outings, sums.rides) << name;
        EXPECT_EQ(exposure.starts, sums.starts) << name;
    }
    EXPECT_EQ(sumsOf("Heron 250").hours, 6260);
    EXPECT_EQ(sumsOf("Sorrel 450").hours, 6780);
}

TEST_F(TakenOverTest, JobsTheirMinutesAndWhatTheyUsedAddUp) {
    long jobs = 0;
    long minutes = 0;
    long engineOil = 0;
    for (const CsvCells& row : cellsOf(notebookFile("jobs.csv"))) {
        ++jobs;
        minutes += std::stol(row[5]);
        engineOil += row[4].find("engine oil 1,0 l") != std::string::npos ? 1000 : 0;
    }
    const picture::Ledger& ledger = garage.ledger();
    std::set<std::tuple<MachineId, calendar::Date, std::string>> done;
    long recorded = 0;
    for (const auto& record : ledger.all<upkeep::Record>()) {
        done.insert({record.machine, record.date, record.what});
        recorded += record.minutes ? static_cast<long>(record.minutes->count()) : 0;
    }
    EXPECT_EQ(static_cast<long>(done.size()), jobs);
    EXPECT_EQ(recorded, minutes);
    long drawn = 0;
    for (const auto& line : ledger.all<stock::StockLine>())
        for (const auto& move : ledger.all<stock::StockMove>())
            drawn -= move.line == line.id && line.name == "engine oil" ? static_cast<long>(move.amount) : 0;
    EXPECT_EQ(drawn, engineOil);
}

TEST_F(TakenOverTest, JobsAfterARenewedMeterWaitForNothing) {
    Garage other;
    other.take(notebookFile("outings.csv"), kAllCures);
    const book::Book book = other.book();
    const auto taken =
        takeNotebook({book, [] { return 1; }}, other.read(notebookFile("jobs.csv")), {}, "jobs.csv");
    ASSERT_TRUE(taken);
    EXPECT_EQ(taken->waiting, 0U);
}

TEST_F(TakenOverTest, TheCardsBeginWithTheNotebook) {
    const auto* heron = garage.ledger().find<items::Machine>(garage.heron);
    EXPECT_EQ(heron->since, verbs::day("2026-03-07"));
    EXPECT_EQ(heron->pastLow, units::Hours{1250}) << "14.5 on the meter after the first 2.0 h";
    EXPECT_EQ(heron->pastBest, units::Hours{1250});
    EXPECT_FALSE(heron->pastHigh) << "the meter may have been fitted late";
}

TEST_F(TakenOverTest, TakingTheSameFilesAgainAddsNothing) {
    const auto before = garage.ledger().rows().size();
    for (const char* file : {"outings.csv", "jobs.csv"}) {
        EXPECT_EQ(garage.take(notebookFile(file), kAllCures), 0U) << file;
        const Notebook again = garage.read(notebookFile(file));
        for (const Line& line : again.lines)
            EXPECT_TRUE(line.inFile || line.has(Defect::Twice)) << told(line);
    }
    EXPECT_EQ(garage.ledger().rows().size(), before);
}

TEST_F(TakenOverTest, NewLinesOfAGrownNotebookAreAdded) {
    const std::string grown =
        notebookFile("outings.csv") + "31.10.2026;Heron 250;practice;1,0;31,7;hard;;;\n";
    EXPECT_EQ(garage.take(grown, kAllCures), 1U);
    EXPECT_EQ(garage.take(grown, kAllCures), 0U);
}

TEST_F(TakenOverTest, WhatWasStruckOrChangedByHandDoesNotComeBack) {
    const usage::Outing first = garage.ledger().all<usage::Outing>().front();
    const usage::Outing last = garage.ledger().all<usage::Outing>().back();
    garage.must([&](const verbs::VerbContext& context) {
        return verbs::strike(context, first.id.value(), "not mine");
    });
    garage.must([&](const verbs::VerbContext& context) {
        return verbs::correct(context, last.id.value(), "looked it up", [&](const verbs::VerbContext& again) {
            verbs::OutingDraft draft{.outing = last};
            draft.outing.hours = units::Hours{180};
            return verbs::logOuting(again, draft);
        });
    });
    EXPECT_EQ(garage.take(notebookFile("outings.csv"), kAllCures), 0U);
}

TEST(NotebookSampleTest, WithoutItsCuresOnlySureLinesAreTaken) {
    Garage garage;
    EXPECT_EQ(garage.take(notebookFile("outings.csv"), {}), 72U);
    EXPECT_EQ(garage.take(notebookFile("outings.csv"), {.lines = {{21, Choice::Cured}}}), 1U);
    EXPECT_EQ(garage.take(notebookFile("outings.csv"), {.allCures = true, .lines = {{11, Choice::LeftOut}}}),
              3U);
}

TEST(NotebookSampleTest, AFileWithoutMachinesGetsThem) {
    verbs::Bench bench;
    bench.today = verbs::day("2026-11-25");
    const auto change = bench.say([&](const verbs::VerbContext& context) -> base::Result<picture::Change> {
        const auto notebook = readNotebook(*readTable(notebookFile("outings.csv")), context.book);
        return takeNotebook(context, *notebook, kAllCures, "outings.csv").map([](Taken taken) {
            return std::move(taken.change);
        });
    });
    ASSERT_TRUE(change);
    EXPECT_EQ(base::said(base::restored(change->text)), "took over 77 lines of outings.csv");
    std::set<std::string> names;
    for (const auto& machine : bench.ledger().all<items::Machine>())
        names.insert(machine.name);
    EXPECT_EQ(names, (std::set<std::string>{"Heron 250", "Sorrel 450"}));
}

}  // namespace
}  // namespace wm::notebook

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// Which machine each way of writing it means.
#include <gtest/gtest.h>

#include "core/notebook/matching.h"

namespace wm::notebook {
namespace {

const MachineId kHeron{1};
const MachineId kSorrel{2};

class NamesTest : public testing::Test {
  protected:
    void write(std::string_view text, std::size_t lines) { texts_.insert(texts_.end(), lines, text); }
    [[nodiscard]] Names names(const MeantNames& meant = {}) const {
        return {{{"Heron 250", kHeron}, {"Sorrel 450", kSorrel}}, texts_, meant};
    }
    [[nodiscard]] NameFit fit(std::string_view text, const MeantNames& meant = {}) const {
        return names(meant).reading(text).fit;
    }
    [[nodiscard]] std::string machine(std::string_view text, const MeantNames& meant = {}) const {
        const Names all = names(meant);
        const NameReading reading = all.reading(text);
        return reading.machines.size() == 1 ? all.machines().at(reading.machines.front()).name : "";
    }

  private:
    std::vector<std::string_view> texts_;
};

TEST_F(NamesTest, ASpellingThatTheNotebookKeepsToIsItsHabit) {
    write("heron", 20);
    write("Sorrel 450", 20);
    EXPECT_EQ(fit("heron"), NameFit::Same);
    EXPECT_EQ(machine("heron"), "Heron 250");
    EXPECT_EQ(fit("Sorrel 450"), NameFit::Same);
    EXPECT_EQ(fit("not written"), NameFit::Unknown);
}

TEST_F(NamesTest, OneThatStandsThereOnceAmongManyIsAskedAbout) {
    write("Heron 250", 40);
    write("heron250", 2);
    write("Herom 250", 1);
    EXPECT_EQ(fit("heron250"), NameFit::Otherwise);
    EXPECT_EQ(fit("Herom 250"), NameFit::Near);
    EXPECT_EQ(machine("Herom 250"), "Heron 250");
}

// What the mechanic said of a spelling makes its lines lines of the machine like any others.
TEST_F(NamesTest, WhatWasSaidByHandCountsAmongTheLinesOfItsMachine) {
    write("the blue one", 40);
    write("heron250", 2);
    EXPECT_EQ(fit("heron250"), NameFit::Same) << "all lines there are of it";
    const MeantNames meant{{"the blue one", kHeron}};
    EXPECT_EQ(machine("the blue one", meant), "Heron 250");
    EXPECT_EQ(fit("the blue one", meant), NameFit::Same);
    EXPECT_EQ(fit("heron250", meant), NameFit::Otherwise) << "2 of 42";
}

TEST_F(NamesTest, ASingleLineBesideOnesThatWereSaidByHandIsAskedAbout) {
    write("blue", 3);
    write("heron250", 1);
    EXPECT_EQ(fit("heron250"), NameFit::Same);
    EXPECT_EQ(fit("heron250", {{"blue", kHeron}}), NameFit::Otherwise);
    EXPECT_EQ(fit("heron250", {{"blue", kSorrel}}), NameFit::Same) << "lines of another machine";
}

TEST_F(NamesTest, ANameThatTheFileDoesNotKnowIsNewOrRare) {
    write("Plover 125", 3);
    write("Zander", 1);
    EXPECT_EQ(fit("Plover 125"), NameFit::New);
    EXPECT_EQ(fit("Zander"), NameFit::Rare);
    const MeantNames own{{"Zander", std::nullopt}};
    EXPECT_EQ(fit("Zander", own), NameFit::Same);
    EXPECT_EQ(machine("Zander", own), "Zander");
    EXPECT_EQ(fit("Zander", {{"Zander", MachineId{9}}}), NameFit::Rare) << "nobody knows that machine";
}

TEST_F(NamesTest, FiguresTellMachinesApart) {
    write("Heron 450", 5);
    EXPECT_EQ(machine("Heron 450"), "Heron 450");
    EXPECT_EQ(fit("Heron 450"), NameFit::New);
}

TEST_F(NamesTest, TwoInOneCellAreTwo) {
    write("Heron + sorrel", 1);
    const NameReading reading = names().reading("Heron + sorrel");
    EXPECT_EQ(reading.fit, NameFit::Two);
    EXPECT_EQ(reading.machines, (std::vector<std::size_t>{0, 1}));
}

}  // namespace
}  // namespace wm::notebook

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/definitions/chart.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <set>

#include "core/definitions/sharing.h"
#include "tests/core/verbs/bench.h"

namespace wm::definitions {

using namespace verbs;

namespace {

using base::Fault;

class ChartTest : public testing::Test, public FurnishedBench {
  protected:
    Chart check(std::string_view text) { return checkChart(book(), heron, readChart(text)); }
    // "row column fault"
    std::string faults(std::string_view text) {
        std::string words;
        for (const ChartFault& fault : check(text).faults)
            words += std::to_string(fault.row) + " " + std::to_string(static_cast<int>(fault.column)) + " " +
                     std::to_string(static_cast<int>(fault.error.fault)) + ";";
        return words;
    }
};

std::string fault(std::size_t row, ChartColumn column, Fault fault) {
    return std::to_string(row) + " " + std::to_string(static_cast<int>(column)) + " " +
           std::to_string(static_cast<int>(fault)) + ";";
}

TEST_F(ChartTest, ReadsWhatASpreadsheetCopies) {
    const Chart chart = check(
        "joint\ttorque\tpage\tmanual\r\n"
        "Rear axle nut\t110\t2-31\tservice manual\r\n"
        "\r\n"
        "Spoke nipples\t4,0-4,6\t2-8\t\r\n");
    ASSERT_TRUE(chart.faults.empty());
    ASSERT_EQ(chart.versions.size(), 2U);
    EXPECT_EQ(chart.versions[0].joint, axle) << "the joint that the machine has";
    EXPECT_EQ(chart.versions[0].kind, fastening::JointKind::Axle) << "what no cell says stays";
    EXPECT_EQ(chart.versions[0].torque->text(), "110");
    EXPECT_EQ(chart.versions[1].torque->text(), "4.0");
    EXPECT_EQ(chart.versions[1].torqueHigh->text(), "4.6");
    EXPECT_EQ(chart.versions[1].kind, fastening::JointKind::Spoke) << "of a new joint, by its name";
    EXPECT_EQ(chart.versions[1].source, "service manual") << "of the row above";
    EXPECT_EQ(chart.versions[1].page, "2-8");
    EXPECT_FALSE(chart.versions[1].confirmed);
}

TEST_F(ChartTest, ReadsSemicolonsInTheOrderOfTheGrid) {
    const Chart chart =
        check("Drain plug;M12x1.5;1;25 ft lb;;;dry;;washer;2-11;manual;x\n\"Bolts; sump\";M6;8;10;N·m\n");
    ASSERT_TRUE(chart.faults.empty());
    ASSERT_EQ(chart.versions.size(), 2U);
    EXPECT_EQ(chart.versions[0].unit, units::TorqueUnit::PoundForceFoot);
    EXPECT_EQ(chart.versions[0].condition, "dry");
    EXPECT_EQ(chart.versions[0].renew, "washer");
    EXPECT_TRUE(chart.versions[0].confirmed);
    EXPECT_EQ(chart.versions[1].name, "Bolts; sump");
    EXPECT_EQ(chart.versions[1].count, 8);
}

// A cell of two lines comes quoted; a quote in the middle of one is a letter.
TEST_F(ChartTest, ReadsACellOfTwoLinesAndAnInchMark) {
    const auto rows = readChart("joint;torque;manual\n\"Head\nnuts\";38;manual\nPlug 5/8\" hex;13;manual\n");
    ASSERT_EQ(rows.size(), 2U);
    EXPECT_EQ(rows[0][static_cast<std::size_t>(ChartColumn::Joint)], "Head\nnuts");
    EXPECT_EQ(rows[0][static_cast<std::size_t>(ChartColumn::Torque)], "38");
    EXPECT_EQ(rows[1][static_cast<std::size_t>(ChartColumn::Joint)], "Plug 5/8\" hex");
    EXPECT_EQ(rows[1][static_cast<std::size_t>(ChartColumn::Torque)], "13");
}

TEST_F(ChartTest, WritesAllInOneStep) {
    const Chart chart = check(
        "joint;torque;unit;stages;manual;checked\n"
        "Head nuts;38;N·m;snug, 20, 38;manual;yes\n"
        "Drain plug;25 ft lb;;;;\n");
    ASSERT_TRUE(chart.faults.empty());
    must(saying(saveJoints, heron, chart.versions));
    EXPECT_TRUE(book().joint(heron, "head-nuts")->confirmed);
    EXPECT_EQ(book().joint(heron, "drain-plug")->unit, units::TorqueUnit::PoundForceFoot);
    // The same again is nothing new.
    const Chart again = check(
        "joint;torque;unit;stages;manual;checked\n"
        "Head nuts;38;N·m;snug, 20, 38;manual;yes\n"
        "drain-plug;25 lbf·ft;;;;\n");
    EXPECT_TRUE(again.faults.empty());
    EXPECT_TRUE(again.versions.empty());
    EXPECT_EQ(again.unchanged, 2U);
}

// A chart without a column of stages puts them right with the torque, or says that they are wanted.
TEST_F(ChartTest, StagesFollowATorqueWhereNoCellSaysThem) {
    must(saying(saveJoints, heron,
                check("joint;torque;stages;manual\nHead nuts;38;snug, 20, 38;m\n").versions));
    const Chart chart = check("joint;torque;manual\nHead nuts;40;m\n");
    ASSERT_TRUE(chart.faults.empty());
    ASSERT_EQ(chart.versions.size(), 1U);
    EXPECT_EQ(chart.versions[0].stages, "snug, 20, 40");
    EXPECT_EQ(check("joint;torque;stages;manual\nHead nuts;40;15, 40;m\n").versions.at(0).stages, "15, 40");
    const std::string head = "joint;torque;manual\n";
    EXPECT_EQ(faults(head + "Head nuts;28 ft lb;m\n"), fault(0, ChartColumn::Stages, Fault::Inconsistent));
    EXPECT_EQ(faults(head + "Head nuts;15;m\n"), fault(0, ChartColumn::Stages, Fault::OutOfOrder));
}

// The rows of a chart can be kept to their machine: another of the model keeps what it has.
TEST_F(ChartTest, WhatTheModelSharesCanBeOverruledForOneMachine) {
    items::Machine card = *ledger().find<items::Machine>(heron);
    card.maker = "Brackwater";
    card.model = "MX 250";
    card.year = 2020;
    must(saying(saveMachine, card));
    card.id = MachineId{};
    card.name = "Kite 250";
    must(saying(saveMachine, card));
    const MachineId kite = ledger().all<items::Machine>().back().id;
    Chart chart = check("joint;torque;manual\nDrain plug;24;m\n");
    chart.versions.at(0).sharedFrom = 2019;
    chart.versions.at(0).sharedTo = 2021;
    must(saying(saveJoints, heron, chart.versions));
    const auto onKite = [&] { return book().joint(kite, "drain-plug")->torque->text(); };
    EXPECT_EQ(onKite(), "24");
    chart = check("joint;torque;manual\nDrain plug;25;m\n");
    ASSERT_EQ(forOthers(book(), chart.versions).count(kite), 1U);
    const auto here = forThisOneOnly(chart.versions);
    EXPECT_TRUE(forOthers(book(), here).empty());
    must(saying(saveJoints, heron, here));
    EXPECT_EQ(book().joint(heron, "drain-plug")->torque->text(), "25");
    EXPECT_EQ(onKite(), "24");
    EXPECT_EQ(sharedYears(book(), *book().joint(heron, "drain-plug")), (ModelYears{2019, 2021}));
}

TEST_F(ChartTest, SaysWhichCellIsWrong) {
    const std::string head = "joint;thread;count;torque;unit;stages;manual;checked\n";
    EXPECT_EQ(faults(head + ";M6;1;10;;;m;\n"), fault(0, ChartColumn::Joint, Fault::Empty));
    EXPECT_EQ(faults(head + "A;;1;ten;;;m;\n").substr(0, 4), "0 3 ");
    EXPECT_EQ(faults(head + "A;;1;0;;;m;\n"), fault(0, ChartColumn::Torque, Fault::NotPositive));
    EXPECT_EQ(faults(head + "A;;1;22-18;;;m;\n"), fault(0, ChartColumn::Torque, Fault::OutOfOrder));
    EXPECT_EQ(faults(head + "A;;1;10;bar;;m;\n"), fault(0, ChartColumn::Unit, Fault::Unknown));
    EXPECT_EQ(faults(head + "A;;1;10 Nm;ft lb;;m;\n"), fault(0, ChartColumn::Unit, Fault::WrongUnit));
    EXPECT_EQ(faults(head + "A;;0;10;;;m;\n"), fault(0, ChartColumn::Count, Fault::NotPositive));
    EXPECT_EQ(faults(head + "A;;1.5;10;;;m;\n").substr(0, 4), "0 2 ");
    EXPECT_EQ(faults(head + "A;;1;10;;38, 20;m;\n"), fault(0, ChartColumn::Stages, Fault::OutOfOrder));
    EXPECT_EQ(faults(head + "A;;1;10;;;;\n"), fault(0, ChartColumn::Source, Fault::Empty));
    EXPECT_EQ(faults(head + "A;;1;10;;;m;perhaps\n"), fault(0, ChartColumn::Checked, Fault::Malformed));
    EXPECT_EQ(faults(head + "A;;1;10;;;m;\na;;1;11;;;m;\n"), fault(1, ChartColumn::Joint, Fault::Duplicate));
    EXPECT_TRUE(check(head + "A;;1;ten;;;m;\n").versions.empty());
}

// 120 N·m on an M6 is ten times what such a thread takes: asked about, not refused.
TEST_F(ChartTest, AsksAboutADoubtfulFigure) {
    const Chart chart =
        check("joint;thread;torque;manual\nSump bolts;M6x1.0;120;m\nOther bolts;M6x1.0;10;m\n");
    EXPECT_TRUE(chart.faults.empty());
    EXPECT_EQ(chart.versions.size(), 2U);
    ASSERT_EQ(chart.doubts.size(), 1U);
    EXPECT_EQ(chart.doubts[0].row, 0U);
    EXPECT_EQ(chart.doubts[0].doubt.meant.text(), "12.0");
}

TEST_F(ChartTest, NothingIsAFormula) {
    const Chart chart = check("joint;torque\n=1+1;\n<b>axle</b>;\n");
    ASSERT_EQ(chart.versions.size(), 2U);
    EXPECT_EQ(chart.versions[0].name, "=1+1");
    EXPECT_EQ(chart.versions[1].name, "<b>axle</b>");
    EXPECT_TRUE(readChart("").empty());
    EXPECT_TRUE(readChart("\n \n\t\t\n").empty());
}

// Whatever is pasted is either a version, unchanged, or said to be wrong; nothing is thrown or lost.
RC_GTEST_FIXTURE_PROP(ChartTest, EveryRowIsAccountedFor, ()) {
    const auto pieces = *rc::gen::container<std::vector<std::string>>(
        rc::gen::element<std::string>("axle", "110", "\t", ";", "\n", "\"", "4,5-6", "ft lb", "=x", "-",
                                      "joint", "x", "M6", "\xC3\xA9", "0"));
    std::string text;
    for (const std::string& piece : pieces)
        text += piece;
    const auto rows = readChart(text);
    const Chart chart = checkChart(book(), heron, rows);
    std::set<std::size_t> wrong;
    for (const ChartFault& each : chart.faults) {
        RC_ASSERT(each.row < rows.size());
        wrong.insert(each.row);
    }
    RC_ASSERT(chart.versions.size() + chart.unchanged + wrong.size() == rows.size());
}

}  // namespace
}  // namespace wm::definitions

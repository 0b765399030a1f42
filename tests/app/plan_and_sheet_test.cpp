// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <QDir>
#include <QFile>

#include "tests/app/shell.h"

namespace wm::test {
namespace {

using app::Exit;

class PlanVerb : public GarageTest {};
class SheetVerb : public GarageTest {
  protected:
    void SetUp() override {
        GarageTest::SetUp();
        ASSERT_EQ(say({"plan", file_, "--pick", "engine-oil,rear-wheel-bearings"}).exit, 0);
    }
};

TEST_F(PlanVerb, SaysWhatToDoWhenNothingIsPicked) {
    const Said said = say({"plan", file_});
    EXPECT_EQ(said.exit, 0) << said.err.toStdString();
    EXPECT_TRUE(said.out.contains("--pick")) << said.out.toStdString();
    EXPECT_TRUE(say({"plan", file_, "--json"}).json().at("machines").empty());
}

TEST_F(PlanVerb, OrdersThePickedJobsAndMeasuresThem) {
    const Said said = say({"plan", file_, "--machine", "heron", "--pick", "engine-oil, rear-wheel-bearings",
                           "--minutes", "60", "--json"});
    ASSERT_EQ(said.exit, 0) << said.err.toStdString();
    const nlohmann::json plan = said.json();
    expectKeepsTo("plan", plan);
    ASSERT_EQ(plan.at("machines").size(), 1U);
    const nlohmann::json work = plan.at("machines").at(0);
    EXPECT_EQ(work.at("jobs").size(), 2U);
    EXPECT_GT(work.at("work_minutes"), 0);
    EXPECT_GE(work.at("alone_minutes"), work.at("work_minutes"));
    EXPECT_EQ(plan.at("left_minutes"), 60 - plan.at("work_minutes").get<int>());
    EXPECT_EQ(dueLine("engine-oil").at("picked"), true);
}

// Oil is drained warm, and what wants the engine cold waits as long as the file says.
TEST_F(PlanVerb, WaitsAsLongAsAnEngineTakesToBeCold) {
    const auto waited = [this](const QStringList& options) {
        const QStringList asked{"plan", file_, "--pick", "engine-oil, valve-clearance", "--json"};
        const nlohmann::json plan = say(asked + options).json();
        int minutes = 0;
        for (const auto& act : plan.at("machines").at(0).at("acts"))
            if (act.at("kind") == "wait")
                minutes += act.at("minutes").get<int>();
        return minutes;
    };
    const int usual = waited({});
    EXPECT_EQ(waited({"--cold-after", "5:00"}), usual + (usual > 0 ? 60 : 0));
    expectRefusal(say({"plan", file_, "--cold-after", "25:00"}), Exit::Refused, "25:00");
}

// Refused is refused as a whole: no pick stays behind for a time that can't be read.
TEST_F(PlanVerb, ARefusedCallLeavesNoPickBehind) {
    expectRefusal(say({"plan", file_, "--pick", "engine-oil", "--cold-after", "99"}), Exit::Refused, "99");
    EXPECT_EQ(dueLine("engine-oil").at("picked"), false);
}

TEST_F(PlanVerb, PickingWhatIsPickedChangesNothing) {
    ASSERT_EQ(say({"plan", file_, "--pick", "engine-oil"}).exit, 0);
    const QString before = exported();
    EXPECT_EQ(say({"plan", file_, "--pick", "engine-oil"}).exit, 0);
    EXPECT_EQ(exported(), before);
}

TEST_F(PlanVerb, DropsJobs) {
    ASSERT_EQ(say({"plan", file_, "--pick", "engine-oil"}).exit, 0);
    ASSERT_EQ(say({"plan", file_, "--drop", "engine-oil"}).exit, 0);
    EXPECT_EQ(dueLine("engine-oil").at("picked"), false);
}

TEST_F(PlanVerb, PicksAllOrNone) {
    const QString before = exported();
    expectRefusal(say({"plan", file_, "--pick", "engine-oil,flux capacitor"}), Exit::Refused,
                  "“flux capacitor”");
    EXPECT_EQ(exported(), before);
}

TEST_F(PlanVerb, RefusesFiguresThatAreNone) {
    expectRefusal(say({"plan", file_, "--minutes", "-1"}), Exit::Refused, "below zero");
    expectRefusal(say({"plan", file_, "--minutes", "lots"}), Exit::Refused, "“lots”");
    expectRefusal(say({"plan", file_, "--minutes", "999999999"}), Exit::Refused, "too large");
    expectRefusal(say({"plan", file_, "--on", "soon"}), Exit::Refused, "“soon”");
    expectRefusal(say({"plan", file_, "--machine", "Osprey"}), Exit::Refused, "“Osprey”");
}

TEST_F(SheetVerb, WritesANumberedPdf) {
    const Said said = say({"sheet", file_, "--pdf", path("one.pdf"), "--json"});
    ASSERT_EQ(said.exit, 0) << said.err.toStdString();
    expectKeepsTo("sheet", said.json());
    EXPECT_EQ(said.json().at("number"), 1);
    EXPECT_TRUE(bytes("one.pdf").startsWith("%PDF-"));
    EXPECT_GT(bytes("one.pdf").size(), 5000);
    EXPECT_TRUE(say({"sheet", file_, "--pdf", path("two.pdf")}).out.startsWith("Job sheet no. 2 "));
}

TEST_F(SheetVerb, AProofHasNoNumberAndLeavesNoRecord) {
    const QString before = exported();
    const Said said =
        say({"sheet", file_, "--proof", "--paper", "Letter", "--pdf", path("proof.pdf"), "--json"});
    ASSERT_EQ(said.exit, 0) << said.err.toStdString();
    EXPECT_EQ(said.json().at("number"), 0);
    EXPECT_TRUE(bytes("proof.pdf").startsWith("%PDF-"));
    EXPECT_EQ(exported(), before);
}

TEST_F(SheetVerb, GivesTheNumberBackWhenThePaperCanNotBeWritten) {
    const QString before = exported();
    QDir(folder_.path()).mkdir("folder.pdf");
    expectRefusal(say({"sheet", file_, "--pdf", path("folder.pdf")}), Exit::CannotWrite, "folder.pdf");
    expectRefusal(say({"sheet", file_, "--pdf", path("nowhere/sheet.pdf")}), Exit::CannotWrite,
                  "folder is there");
    EXPECT_EQ(exported(), before);
    // Known to be too long by the system alone, once the number is taken; what has no paper is not said
    // again.
    const QString tooLong = QString(300, 'x') + ".pdf";
    expectRefusal(say({"sheet", file_, "--pdf", path(tooLong)}), Exit::CannotWrite, "can't be written");
    expectRefusal(say({"redo", file_, "--accept"}), Exit::Refused, "nothing to say again");
    EXPECT_EQ(exported(), before);
    EXPECT_TRUE(say({"sheet", file_, "--pdf", path("one.pdf")}).out.startsWith("Job sheet no. 1 "));
}

// No number is taken and given back, no copy is made: nothing at all is written for a paper that can't be.
TEST_F(SheetVerb, WritesNothingWhenItsPlaceIsTheGarage) {
    const QByteArray before = bytes(QFileInfo(file_).fileName());
    const auto copies = [this] { return QDir(file_ + ".backups").entryList(QDir::Files); };
    const QStringList copied = copies();
    for (const QString& place : {file_, file_ + "-journal", file_ + ".backups/x.backup"})
        expectRefusal(say({"sheet", file_, "--pdf", place}), Exit::CannotWrite, "garage");
    EXPECT_EQ(bytes(QFileInfo(file_).fileName()), before);
    EXPECT_EQ(copies(), copied);
    EXPECT_FALSE(QFile::exists(file_ + "-journal") && QFileInfo(file_ + "-journal").size() > 0);
}

TEST_F(SheetVerb, ThePaperOfAClosedGarageIsAsClosed) {
    ASSERT_TRUE(QFile::setPermissions(file_, QFileDevice::ReadOwner | QFileDevice::WriteOwner));
    ASSERT_EQ(say({"sheet", file_, "--pdf", path("one.pdf")}).exit, 0);
    EXPECT_FALSE(QFile::permissions(path("one.pdf")) & (QFileDevice::ReadGroup | QFileDevice::ReadOther));
}

TEST_F(SheetVerb, RefusesWhatItCanNotDo) {
    expectRefusal(say({"sheet", file_}), Exit::Usage, "--pdf OUT");
    expectRefusal(say({"sheet", file_, "--pdf", ""}), Exit::Usage, "--pdf OUT");
    expectRefusal(say({"sheet", file_, "--pdf", path("x.pdf"), "--paper", "A0"}), Exit::Refused,
                  "A4, Letter");
    ASSERT_EQ(say({"plan", file_, "--drop", "engine-oil,rear-wheel-bearings"}).exit, 0);
    expectRefusal(say({"sheet", file_, "--pdf", path("x.pdf")}), Exit::Refused, "");
    EXPECT_FALSE(QFile::exists(path("x.pdf")));
}

}  // namespace
}  // namespace wm::test

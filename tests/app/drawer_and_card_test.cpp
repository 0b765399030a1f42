// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <QFile>

#include "tests/app/shell.h"
#include "tests/memo.h"

namespace wm::test {
namespace {

using app::Exit;

// The demo is made once for all tests of a build: it takes some thousand verbs. A test that writes does so in
// a copy.
class DrawerAndCard : public testing::Test {
  protected:
    static void SetUpTestSuite() {
        shared_ = new QTemporaryDir;
        const QString path = shared_->filePath("demo.witnessmark");
        const Memo memo("demo.witnessmark", "");
        QFile file(path);
        if (const auto before = memo.text()) {
            ASSERT_TRUE(file.open(QIODevice::WriteOnly));
            ASSERT_EQ(file.write(QByteArray::fromStdString(*before)), static_cast<qint64>(before->size()));
            return;
        }
        ASSERT_EQ(say({"new", path, "--demo"}).exit, 0);
        ASSERT_TRUE(file.open(QIODevice::ReadOnly));
        memo.keep(file.readAll().toStdString());
    }
    static void TearDownTestSuite() {
        delete shared_;
        shared_ = nullptr;
    }
    void SetUp() override { ASSERT_TRUE(QFile::copy(shared_->filePath("demo.witnessmark"), file_)); }

    static inline QTemporaryDir* shared_ = nullptr;
    QTemporaryDir folder_;
    QString file_ = folder_.filePath("demo.witnessmark");
};

TEST_F(DrawerAndCard, SaysWhatAFailedCheckPutInDoubt) {
    const Said said = say({"drawer", file_});
    EXPECT_EQ(said.exit, 0) << said.err.toStdString();
    for (const char* words :
         {"Long red, 20 to 200 N·m: checked until", "Old bar, 0 to 150 N·m: never checked",
          "Middle click was found out of tolerance on", "7.2 % at the worst",
          "Handlebar clamp bolts, Heron 250: torqued twice, last on Wed 29 Apr by Odile; TO "
          "RE-CHECK",
          "Rear sprocket bolts and nuts, Heron 250: moved 3 times", "loosens more often than its kind",
          "exact conditional test of two rates"})
        EXPECT_TRUE(said.out.contains(QString::fromUtf8(words))) << words << "\n" << said.out.toStdString();
    const Said due = say({"due", file_, "--machine", "Heron"});
    EXPECT_TRUE(due.out.contains(
        "to follow up: re-check Handlebar clamp bolts (tool Middle click found out of tolerance)"))
        << due.out.toStdString();
}

// The job that a look names is due by the measured value, whatever its interval leaves.
TEST_F(DrawerAndCard, SaysWhichValueMakesAJobDue) {
    const Said due = say({"due", file_, "--machine", "Sorrel"});
    EXPECT_TRUE(due.out.contains("Shims (Sorrel engine): 0.09 mm, limit 0.09 (inlet right)"))
        << due.out.toStdString();
    const Said why = say({"due", file_, "--machine", "Sorrel", "--why", "valve-shims"});
    EXPECT_TRUE(
        why.out.startsWith(QString::fromUtf8("Shims: due now, inlet right 0.09\u00A0mm, limit 0.09, ")))
        << why.out.toStdString();
    const auto steps = say({"due", file_, "--machine", "Sorrel", "--why", "valve-shims", "--json"}).json();
    expectKeepsTo("due_why", steps);
    const auto& value = steps.at("children").front();
    EXPECT_EQ(value.at("kind"), "value");
    EXPECT_EQ(value.at("value"), "0.09");
    EXPECT_EQ(value.at("value_limit"), "0.09");
    const auto lines = say({"due", file_, "--machine", "Sorrel", "--json"}).json();
    expectKeepsTo("due", lines);
    const auto measured = [&](const char* code) {
        for (const auto& line : lines)
            if (line.at("code") == code)
                return line.at("measured");
        return nlohmann::json("no such task");
    };
    const auto inlet = measured("valve-shims");
    ASSERT_TRUE(inlet.is_object()) << inlet;
    EXPECT_EQ(inlet.at("value"), "0.09");
    EXPECT_EQ(inlet.at("limit"), "0.09");
    EXPECT_TRUE(measured("valve-clearance").is_null()) << "the look keeps its own round";
    ASSERT_EQ(say({"record", file_, "--machine", "Sorrel", "--task", "valve-shims"}).exit, 0);
    EXPECT_FALSE(say({"due", file_, "--machine", "Sorrel"}).out.contains("Shims (Sorrel engine): 0.09"));
}

TEST_F(DrawerAndCard, AnswersInJson) {
    const Said said = say({"drawer", file_, "--machine", "Heron", "--json"});
    ASSERT_EQ(said.exit, 0);
    expectKeepsTo("drawer", said.json());
}

TEST_F(DrawerAndCard, SaysWhichToolServesATorqueBest) {
    const Said said = say({"drawer", file_, "--torque", "110"});
    EXPECT_EQ(said.exit, 0) << said.err.toStdString();
    EXPECT_TRUE(said.out.startsWith("Long red, 20 to 200 N·m: serves it")) << said.out.toStdString();
    EXPECT_TRUE(say({"drawer", file_, "--torque", "900"}).out.contains("No tool of the drawer reaches 900"));
    const Said json = say({"drawer", file_, "--torque", "80 ft lb", "--json"});
    ASSERT_EQ(json.exit, 0);
    expectKeepsTo("drawer_torque", json.json());
    EXPECT_EQ(json.json().at("tools").at(0).at("name"), "Long red");
    EXPECT_EQ(json.json().at("unit"), "lbf·ft");
    for (const char* bad : {"much", "", "-5", "0", "nan", "10 mm", "22-18"})
        EXPECT_EQ(say({"drawer", file_, "--torque", bad}).exit, static_cast<int>(Exit::Refused)) << bad;
}

TEST_F(DrawerAndCard, WritesTheCardForTheWall) {
    const QString pdf = folder_.filePath("card.pdf");
    const Said said = say({"card", file_, "--machine", "Heron", "--pdf", pdf, "--json"});
    ASSERT_EQ(said.exit, 0) << said.err.toStdString();
    expectKeepsTo("card", said.json());
    QFile written(pdf);
    ASSERT_TRUE(written.open(QIODevice::ReadOnly));
    EXPECT_TRUE(written.readAll().startsWith("%PDF"));
    EXPECT_EQ(say({"card", file_, "--machine", "Heron"}).exit, static_cast<int>(Exit::Usage));
    EXPECT_EQ(say({"card", file_, "--machine", "Heron", "--pdf", pdf, "--paper", "A3"}).exit,
              static_cast<int>(Exit::Refused));
    EXPECT_EQ(say({"card", file_, "--machine", "Heron", "--pdf", folder_.filePath("no/card.pdf")}).exit,
              static_cast<int>(Exit::CannotWrite));
}

// The stop that an open hand-tight list raises must be answered, and the answer stays with the joints.
TEST_F(DrawerAndCard, RidingOnAHandTightListIsAnsweredAndStaysOnRecord) {
    expectRefusal(say({"log", file_, "--machine", "Sorrel", "--outing", "1.5"}), Exit::Refused,
                  "The hand-tight list");
    const auto noted = [this] { return say({"export", file_}).out.count("\"ridden open\""); };
    EXPECT_EQ(noted(), 0);
    ASSERT_EQ(say({"log", file_, "--machine", "Sorrel", "--outing", "1.5", "--seen"}).exit, 0);
    EXPECT_GE(noted(), 3);
}

TEST_F(DrawerAndCard, AJobSaysWithWhatItsJointsWereTightened) {
    const auto cycles = [this] { return say({"drawer", file_, "--json"}).json().at("tools").at(0); };
    const auto before = cycles();
    ASSERT_EQ(before.at("name"), "Long red");
    expectRefusal(say({"record", file_, "--machine", "Sorrel", "--task", "linkage-grease", "--torqued",
                       "rear-axle-nut", "--tool", "short blue"}),
                  Exit::Refused, "short blue");
    const Said said = say({"record", file_, "--machine", "Sorrel", "--task", "linkage-grease", "--torqued",
                           "rear-axle-nut", "--tool", "long"});
    ASSERT_EQ(said.exit, 0) << said.err.toStdString();
    EXPECT_EQ(cycles().at("cycles").get<int>(), before.at("cycles").get<int>() + 1);
}

TEST_F(DrawerAndCard, AMachineWithoutFiguresHasNoCard) {
    const QString blank = folder_.filePath("blank.witnessmark");
    ASSERT_EQ(say({"new", blank, "--machine", "Tern", "--starter", "two-stroke motocross"}).exit, 0);
    const Said said = say({"card", blank, "--pdf", folder_.filePath("card.pdf")});
    EXPECT_EQ(said.exit, static_cast<int>(Exit::Refused));
    EXPECT_TRUE(said.err.contains("no torque figure yet")) << said.err.toStdString();
    EXPECT_TRUE(say({"drawer", blank}).out.contains("no torque tool"));
}

}  // namespace
}  // namespace wm::test

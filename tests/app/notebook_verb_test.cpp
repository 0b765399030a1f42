// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <QFile>
#include <nlohmann/json.hpp>

#include "tests/app/shell.h"

namespace wm::test {
namespace {

using app::Exit;

// Heron 250 is there; Sorrel 450 comes with the notebook. Line 4 is written otherwise, 5 has two figures
// swapped, 6 stands there twice, 8 has no day.
const QByteArray kOutings =
    "date;machine;what;hours;meter;wash\n"
    "04.04.2026;Heron 250;practice;1,0;15,0;\n"
    "05.04.2026;Sorrel 450;race;2,0;103,0;pressure\n"
    "2026-04-11;Heron 250;practice;1,2;16,2;wash\n"
    "12.04.2026;Sorrel 450;practice;2,0;150,0;\n"
    "12.04.2026;Sorrel 450;practice;2,0;150,0;\n"
    "19.04.2026;Sorrel 450;practice;1,0;106,0;\n"
    "some day;Heron 250;practice;1,0;17,2;\n"
    "25.04.2026;Heron 250;practice;1,0;17,2;\n";

class NotebookVerb : public GarageTest {
  protected:
    void SetUp() override {
        GarageTest::SetUp();
        write("outings.csv", kOutings);
    }
    [[nodiscard]] Said import(QStringList more = {}) const {
        return say(QStringList{"import", file_, path("outings.csv")} + more);
    }
};

TEST_F(NotebookVerb, EveryLineIsListedAndNothingWritten) {
    const QString before = exported();
    const Said said = import({"--json"});
    ASSERT_EQ(said.exit, 0) << said.err.toStdString();
    expectKeepsTo("import_lines", said.json());
    const auto lines = said.json();
    ASSERT_EQ(lines.size(), 8U);
    const std::vector<std::string> verdicts{"taken",    "taken", "doubtful", "doubtful",
                                            "doubtful", "taken", "refused",  "taken"};
    for (std::size_t at = 0; at < verdicts.size(); ++at) {
        EXPECT_EQ(lines[at]["line"], at + 2);
        EXPECT_EQ(lines[at]["verdict"], verdicts[at]) << lines[at].dump();
    }
    EXPECT_EQ(lines[2]["cure"], "date 11.04.2026");
    EXPECT_EQ(lines[3]["cure"], "meter 105,0");
    EXPECT_EQ(lines[4]["cure"], "leave it out");
    EXPECT_EQ(exported(), before);
}

TEST_F(NotebookVerb, OfWhichNothingIsTakenNoNewFileIsLeft) {
    write("none.csv",
          "date;machine;what;hours\nsome day;Heron 250;practice;1,0\nno day;Heron 250;race;2,0\n");
    const Said said = say({"import", path("new.witnessmark"), path("none.csv"), "--accept", "taken"});
    EXPECT_TRUE(said.out.contains("No line of")) << said.out.toStdString() << said.err.toStdString();
    EXPECT_TRUE(said.out.contains("nothing was written")) << said.out.toStdString();
    EXPECT_FALSE(QFile::exists(path("new.witnessmark")));
    EXPECT_FALSE(QFile::exists(path("new.witnessmark-journal")));
    const Said taken = say({"import", path("new.witnessmark"), path("outings.csv"), "--accept", "taken"});
    EXPECT_EQ(taken.exit, 0) << taken.err.toStdString();
    EXPECT_TRUE(QFile::exists(path("new.witnessmark")));
}

TEST_F(NotebookVerb, AgreedLinesAreOneStepAndComeOnce) {
    const Said first = import({"--accept", "taken"});
    ASSERT_EQ(first.exit, 0) << first.err.toStdString();
    EXPECT_TRUE(first.out.contains("Took over 4 lines as one step")) << first.out.toStdString();
    const Said cured = import({"--accept", "cured"});
    EXPECT_TRUE(cured.out.contains("Took over 2 lines as one step")) << cured.out.toStdString();
    const QString after = exported();
    EXPECT_TRUE(after.contains("Sorrel 450"));
    const Said again = import({"--accept", "cured"});
    EXPECT_EQ(again.exit, 0);
    EXPECT_TRUE(again.out.contains("nothing was written")) << again.out.toStdString();
    EXPECT_EQ(exported(), after);
    EXPECT_EQ(say({"check", file_}).exit, 0);
}

TEST_F(NotebookVerb, ANewFileIsMadeOnlyToWrite) {
    const QString fresh = path("fresh.witnessmark");
    EXPECT_EQ(say({"import", fresh, path("outings.csv"), "--json"}).exit, static_cast<int>(Exit::CannotOpen));
    EXPECT_FALSE(QFile::exists(fresh));
    EXPECT_EQ(say({"import", fresh, path("outings.csv"), "--accept", "cured"}).exit, 0);
    EXPECT_EQ(say({"check", fresh}).exit, 0);
}

TEST_F(NotebookVerb, BadFilesAreRefusedInWords) {
    const QString before = exported();
    const auto refuse = [&](const QByteArray& text, const QString& words) {
        write("outings.csv", text);
        expectRefusal(import({"--accept", "cured"}), Exit::Refused, words);
    };
    refuse("", "is blank");
    refuse("\x89PNG\r\n\x1A\n", "is no text");
    refuse("just a line\nand another\n", "has no columns");
    refuse("machine;hours\nHeron 250;1,0\nHeron 250;1,0\n", "no column of dates");
    write("outings.csv", kOutings);
    expectRefusal(import({"--accept", "all"}), Exit::Refused, "taken, cured");
    EXPECT_EQ(exported(), before);
}

}  // namespace
}  // namespace wm::test

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <sqlite3.h>
#include <QFile>

#include "app/headless.h"
#include "app/verb.h"
#include "tests/app/shell.h"
#include "tests/repository.h"

namespace wm::test {
namespace {

using app::Exit;

TEST(CommandLine, HelpNamesEveryVerbAndTheExitCodes) {
    const Said said = say({"--help"});
    EXPECT_EQ(said.exit, 0);
    for (const app::VerbSpec& verb : app::allVerbs())
        EXPECT_TRUE(said.out.contains("\n  " + verb.name)) << verb.name.toStdString();
    EXPECT_TRUE(said.out.contains("Exit codes:"));
    EXPECT_EQ(said.err, "");
}

TEST(CommandLine, EveryVerbExplainsItselfItsOptionsAndItsExitCodes) {
    for (const app::VerbSpec& verb : app::allVerbs()) {
        const Said said = say({verb.name, "--help"});
        EXPECT_EQ(said.exit, 0) << verb.name.toStdString();
        EXPECT_TRUE(said.out.contains(verb.summary)) << said.out.toStdString();
        EXPECT_TRUE(said.out.contains("Exit codes:")) << said.out.toStdString();
        EXPECT_TRUE(said.out.contains("\n  witnessmark " + verb.name + " ")) << said.out.toStdString();
        const bool asksAFile = verb.name != "wrench" && verb.name != "generic";
        EXPECT_EQ(asksAFile, !verb.words.empty()) << verb.name.toStdString();
        EXPECT_TRUE(said.out.startsWith("Usage: witnessmark " + verb.name + (asksAFile ? " FILE" : " [")))
            << said.out.toStdString();
        for (const QCommandLineOption& option : verb.options)
            EXPECT_TRUE(said.out.contains("--" + option.names().front()))
                << option.names().front().toStdString();
    }
}

TEST(CommandLine, TellsItsVersion) {
    EXPECT_EQ(say({"--version"}).out, "witnessmark 0.9.0\n");
    EXPECT_EQ(runProgram({"-v"}).out, "witnessmark 0.9.0\n");
}

TEST(CommandLine, RefusesWhatItDoesNotKnow) {
    expectRefusal(say({"frobnicate"}), Exit::Usage, "“frobnicate”");
    expectRefusal(say({"--frobnicate"}), Exit::Usage, "“--frobnicate”");
    expectRefusal(say({"due", "a", "--frobnicate"}), Exit::Usage, "frobnicate");
    expectRefusal(say({"due"}), Exit::Usage, "FILE is missing");
    expectRefusal(say({"import", "a"}), Exit::Usage, "SOURCE is missing");
    expectRefusal(say({"due", "a", "b"}), Exit::Usage, "“b”");
    expectRefusal(say({"due", "a", "--on"}), Exit::Usage, "--on");
}

TEST(CommandLine, AFileWhoseNameBeginsWithADashIsHelpedToItsName) {
    expectRefusal(say({"due", "-dash.witnessmark"}), Exit::Usage, "is given as ./-dash.witnessmark");
    EXPECT_FALSE(say({"due", "-x"}).err.contains("./")) << "no file";
}

TEST(CommandLine, ADashTooFewIsNoRiddle) {
    EXPECT_EQ(say({"wrench", "-torque", "80", "-length", "400", "-adapter", "50"}).exit, 0);
    EXPECT_EQ(say({"due", "-h"}).exit, 0);
    expectRefusal(say({"due", "a", "-frobnicate"}), Exit::Usage, "'frobnicate'");
}

TEST(CommandLine, WordsToPasteAreQuotedForAShell) {
    EXPECT_EQ(app::asArgument("/home/me/q.witnessmark"), "/home/me/q.witnessmark");
    EXPECT_EQ(app::asArgument("our team's.witnessmark"), "'our team'\\''s.witnessmark'");
    EXPECT_EQ(app::asArgument("-q"), "./-q");
    EXPECT_EQ(app::asArgument(""), "''");
}

TEST(CommandLine, AWordAloneOpensTheWindowOnlyIfItIsAFile) {
    QTemporaryDir folder;
    EXPECT_FALSE(app::isHeadless({}));
    EXPECT_TRUE(app::isHeadless({folder.filePath("not-there")}));
    EXPECT_FALSE(app::isHeadless({folder.path()}));
    EXPECT_FALSE(app::isHeadless({"--verbose", folder.path()}));
    EXPECT_FALSE(app::isHeadless({"--verbose"}));
    EXPECT_TRUE(app::isHeadless({"due", folder.path()}));
    EXPECT_TRUE(app::isHeadless({"--help"}));
}

class FileTrouble : public GarageTest, public testing::WithParamInterface<const char*> {
  protected:
    // Each verb with what it needs besides the file.
    [[nodiscard]] QStringList call(const QString& file) const {
        const QString verb = GetParam();
        QStringList arguments{verb, file};
        if (verb == "log")
            arguments << "--wash"
                      << "hand";
        if (verb == "record")
            arguments << "--task"
                      << "engine-oil";
        if (verb == "sheet")
            arguments << "--pdf" << path("out.pdf");
        return arguments;
    }
};

TEST_P(FileTrouble, AFileThatIsNotThere) {
    expectRefusal(say(call(path("nowhere.witnessmark"))), Exit::CannotOpen, "nowhere.witnessmark");
    EXPECT_FALSE(QFile::exists(path("nowhere.witnessmark")));
}

TEST_P(FileTrouble, AFolder) {
    expectRefusal(say(call(folder_.path())), Exit::CannotOpen, "can't be opened");
}

TEST_P(FileTrouble, SomethingElse) {
    write("letter.witnessmark", "Dear Odile, the forks are back.\n");
    expectRefusal(say(call(path("letter.witnessmark"))), Exit::CannotOpen, "letter.witnessmark");
    EXPECT_EQ(bytes("letter.witnessmark"), "Dear Odile, the forks are back.\n");
}

// A file of version 1 is brought up to date by whichever verb comes first, with the old one kept beside it.
TEST_P(FileTrouble, AFileOfAnEarlierVersion) {
    QFile stored(QString::fromStdString(test::repositoryPath("tests/data/store/version_1.sql")));
    ASSERT_TRUE(stored.open(QIODevice::ReadOnly));
    const QString old = path("old.witnessmark");
    sqlite3* made = nullptr;
    ASSERT_EQ(sqlite3_open(old.toUtf8().constData(), &made), SQLITE_OK);
    const int code = sqlite3_exec(made, stored.readAll().constData(), nullptr, nullptr, nullptr);
    ASSERT_EQ(sqlite3_close(made), SQLITE_OK);
    ASSERT_EQ(code, SQLITE_OK);
    const Said said = say(call(old));
    EXPECT_NE(said.exit, static_cast<int>(Exit::CannotOpen)) << said.err.toStdString();
    EXPECT_TRUE(said.err.contains("brought to this version")) << said.err.toStdString();
    EXPECT_TRUE(QFile::exists(old + ".v1.bak"));
    EXPECT_FALSE(say(call(old)).err.contains("brought to this version")) << "once is enough";
}

TEST_P(FileTrouble, AFileCutShort) {
    const QByteArray whole = bytes("garage.witnessmark");
    const QByteArray half = whole.left(whole.size() / 2);
    write("half.witnessmark", half);
    expectRefusal(say(call(path("half.witnessmark"))), Exit::CannotOpen, "half.witnessmark");
    EXPECT_EQ(bytes("half.witnessmark"), half);
}

INSTANTIATE_TEST_SUITE_P(Verbs, FileTrouble,
                         testing::Values("due", "log", "record", "plan", "sheet", "export", "check"));

}  // namespace
}  // namespace wm::test

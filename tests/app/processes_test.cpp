// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <QDir>
#include <QFileInfo>
#include <QProcess>
#include <memory>
#include <vector>

#include <sqlite3.h>
#include <sys/stat.h>

#include "core/store/store.h"
#include "tests/app/shell.h"

namespace wm::test {
namespace {

using app::Exit;

/// The program itself, as the shell starts it.
class Processes : public GarageTest {
  protected:
    [[nodiscard]] std::size_t washes() const {
        return nlohmann::json::parse(exported().toStdString()).at("wash").size();
    }
};

TEST_F(Processes, TheProgramDoesWhatTheVerbDoes) {
    const Said said = runProgram({"log", file_, "--wash", "pressure", "--on", "2026-05-02", "--json"});
    EXPECT_EQ(said.exit, 0) << said.err.toStdString();
    expectKeepsTo("written", said.json());
    EXPECT_EQ(washes(), 1U);
    expectRefusal(runProgram({"log", file_, "--wash", "steam"}), Exit::Refused, "pressure, hand");
    expectRefusal(runProgram({"frobnicate"}), Exit::Usage, "frobnicate");
}

TEST_F(Processes, WritesThePdfWithoutADisplay) {
    ASSERT_EQ(say({"plan", file_, "--pick", "engine-oil"}).exit, 0);
    const Said said = runProgram({"sheet", file_, "--pdf", path("sheet.pdf")});
    EXPECT_EQ(said.exit, 0) << said.err.toStdString();
    EXPECT_TRUE(bytes("sheet.pdf").startsWith("%PDF-"));
}

// Qt has options of its own, and ends over some of them without a word.
TEST_F(Processes, KnowsNoOptionsButItsOwn) {
    for (const char* verb : {"sheet", "card", "check"})
        expectRefusal(runProgram({verb, file_, "-platform", "no-such"}), Exit::Usage, "platform");
}

TEST_F(Processes, EveryAcknowledgedFactOfSeveralAtOnceIsThere) {
    constexpr int kProcesses = 6;
    std::vector<std::unique_ptr<QProcess>> running;
    for (int i = 0; i < kProcesses; ++i) {
        running.push_back(std::make_unique<QProcess>());
        running.back()->start(WM_PROGRAM, {"log", file_, "--wash", "hand", "--on", "2026-05-02", "--note",
                                           QString("from process %1").arg(i)});
    }
    std::size_t acknowledged = 0;
    for (const auto& process : running) {
        ASSERT_TRUE(process->waitForFinished(60'000));
        const QString words = QString::fromUtf8(process->readAllStandardError());
        if (process->exitCode() == 0)
            ++acknowledged;
        else
            EXPECT_EQ(words.count('\n'), 1) << words.toStdString();
    }
    EXPECT_GE(acknowledged, 1U);
    EXPECT_EQ(washes(), acknowledged);
    EXPECT_EQ(say({"check", file_}).exit, 0);
}

// The first changes of a day, said at once: whoever copies has a name of its own until the copy is whole.
TEST_F(Processes, ABackupOfSeveralFirstChangesAtOnceIsWhole) {
    for (int round = 0; round < 6; ++round) {
        QDir(file_ + ".backups").removeRecursively();
        std::vector<std::unique_ptr<QProcess>> running;
        for (int i = 0; i < 5; ++i) {
            running.push_back(std::make_unique<QProcess>());
            running.back()->start(WM_PROGRAM, {"log", file_, "--wash", "hand", "--on", "2026-05-02"});
        }
        for (const auto& process : running) {
            ASSERT_TRUE(process->waitForFinished(60'000));
            const QString words = QString::fromUtf8(process->readAllStandardError());
            EXPECT_TRUE(process->exitCode() != 0 || words.isEmpty()) << words.toStdString();
        }
        const QDir folder(file_ + ".backups");
        const QStringList names = folder.entryList(QDir::Files);
        EXPECT_FALSE(names.isEmpty());
        for (const QString& name : names) {
            EXPECT_TRUE(name.endsWith(".backup")) << name.toStdString();
            EXPECT_EQ(say({"check", folder.filePath(name)}).exit, 0) << name.toStdString();
        }
    }
}

// None takes away what another is just making.
TEST_F(Processes, OfSeveralWhoMakeAGarageUnderOneNameOneDoes) {
    for (int round = 0; round < 6; ++round) {
        const QString garage = path(QString("new%1.witnessmark").arg(round));
        std::vector<std::unique_ptr<QProcess>> running;
        for (int i = 0; i < 5; ++i) {
            running.push_back(std::make_unique<QProcess>());
            running.back()->start(WM_PROGRAM, {"new", garage, "--starter", "four-stroke enduro"});
        }
        int made = 0;
        for (const auto& process : running) {
            ASSERT_TRUE(process->waitForFinished(60'000));
            made += process->exitCode() == 0 ? 1 : 0;
        }
        EXPECT_EQ(made, 1);
        EXPECT_EQ(say({"check", garage}).exit, 0);
    }
}

TEST_F(Processes, AChangeWithoutABackupSaysSo) {
    ASSERT_TRUE(QDir().mkpath(path("elsewhere")));
    ASSERT_TRUE(QFile::link(path("elsewhere"), file_ + ".backups"));
    const Said said = runProgram({"log", file_, "--wash", "hand", "--on", "2026-05-02", "--json"});
    EXPECT_EQ(said.exit, 0) << said.err.toStdString();
    expectKeepsTo("written", said.json());
    EXPECT_TRUE(said.err.contains("without a backup")) << said.err.toStdString();
    EXPECT_TRUE(said.err.contains("is a link")) << said.err.toStdString();
    EXPECT_EQ(said.err.count('\n'), 1);
    EXPECT_EQ(washes(), 1U);
}

// Killed in the middle of a write: what only reads reads it all the same, and says what happened.
TEST_F(Processes, AnInterruptedWriteIsTakenBackByAReader) {
    const QString crashed = path("crashed.witnessmark");
    sqlite3* writer = nullptr;
    ASSERT_EQ(sqlite3_open(file_.toUtf8().constData(), &writer), SQLITE_OK);
    ASSERT_EQ(sqlite3_exec(writer,
                           "PRAGMA journal_mode = TRUNCATE; PRAGMA cache_size = 5; BEGIN IMMEDIATE;"
                           "WITH RECURSIVE n (i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < 400) "
                           "INSERT INTO verb_log SELECT 1000 + i, 'done', 1, hex(randomblob(200)), '' FROM n",
                           nullptr, nullptr, nullptr),
              SQLITE_OK);
    ASSERT_TRUE(QFile::copy(file_, crashed));
    ASSERT_TRUE(QFile::copy(file_ + "-journal", crashed + "-journal"));
    sqlite3_close(writer);
    const Said said = runProgram({"due", crashed, "--json"});
    EXPECT_EQ(said.exit, 0) << said.err.toStdString();
    EXPECT_TRUE(said.err.contains("taken back")) << said.err.toStdString();
    EXPECT_EQ(said.err.count('\n'), 1);
    EXPECT_EQ(runProgram({"due", crashed, "--json"}).err, "");
    EXPECT_EQ(say({"check", crashed}).exit, 0);
}

TEST_F(Processes, AnOpenWindowAndAHeadlessVerbShareTheFile) {
    const auto window = store::File::open(file_, store::OpenFor::Writing);
    ASSERT_NE(window.file, nullptr);
    EXPECT_EQ(runProgram({"log", file_, "--wash", "hand", "--on", "2026-05-02"}).exit, 0);
    EXPECT_TRUE(window.file->refresh());
    EXPECT_EQ(window.file->ledger()->all<usage::Wash>().size(), 1U);
    usage::Wash wash{};
    wash.machine = window.file->ledger()->all<items::Machine>().front().id;
    wash.date = *calendar::makeDate(2026, 5, 3);
    EXPECT_TRUE(window.file->apply(
        [&wash](const verbs::VerbContext& context) { return verbs::logWash(context, wash); },
        *calendar::makeDate(2026, 5, 7)));
    EXPECT_EQ(washes(), 2U);
}

TEST_F(Processes, AFileThatIsHeldIsRefusedAndLeftAlone) {
    sqlite3* holder = nullptr;
    ASSERT_EQ(sqlite3_open(file_.toUtf8().constData(), &holder), SQLITE_OK);
    ASSERT_EQ(sqlite3_exec(holder, "BEGIN EXCLUSIVE", nullptr, nullptr, nullptr), SQLITE_OK);
    const Said said = runProgram({"log", file_, "--wash", "hand", "--on", "2026-05-02"});
    EXPECT_TRUE(said.exit == static_cast<int>(Exit::CannotOpen) ||
                said.exit == static_cast<int>(Exit::CannotWrite))
        << said.exit;
    EXPECT_TRUE(said.err.contains("Another program holds")) << said.err.toStdString();
    sqlite3_exec(holder, "ROLLBACK", nullptr, nullptr, nullptr);
    sqlite3_close(holder);
    EXPECT_EQ(washes(), 0U);
}

TEST_F(Processes, AFullDiskBehindTheAnswerIsNoticed) {
    if (!QFile::exists("/dev/full"))
        GTEST_SKIP() << "no /dev/full here";
    const Said said = runProgram({"export", file_}, "/dev/full");
    EXPECT_EQ(said.exit, static_cast<int>(Exit::CannotWrite));
    EXPECT_TRUE(said.err.contains("could not be written")) << said.err.toStdString();
    // Answers of a line as well; and what was written is not said to be not.
    for (const QStringList& words :
         {QStringList{"check", file_}, QStringList{"--help"}, QStringList{"due", "-h"}})
        EXPECT_EQ(runProgram(words, "/dev/full").exit, static_cast<int>(Exit::CannotWrite))
            << words.front().toStdString();
    const Said log = runProgram({"log", file_, "--wash", "hand", "--on", "2026-05-02"}, "/dev/full");
    EXPECT_EQ(log.exit, static_cast<int>(Exit::CannotWrite));
    EXPECT_TRUE(log.err.contains("is in the file, but the answer")) << log.err.toStdString();
    // An export that did not leave ends no undo.
    EXPECT_EQ(runProgram({"export", file_}, "/dev/full").exit, static_cast<int>(Exit::CannotWrite));
    EXPECT_TRUE(say({"undo", file_}).out.startsWith("Would take back: washed"));
    EXPECT_EQ(washes(), 1U);
}

TEST_F(Processes, NoPaperAndNoTextTakesThePlaceOfAGarage) {
    ASSERT_EQ(say({"plan", file_, "--pick", "engine-oil"}).exit, 0);
    const QString before = exported();
    EXPECT_EQ(runProgram({"export", file_, "--to", file_}).exit, static_cast<int>(Exit::CannotWrite));
    EXPECT_EQ(runProgram({"sheet", file_, "--pdf", file_}).exit, static_cast<int>(Exit::CannotWrite));
    const QString link = path("link.pdf");
    ASSERT_TRUE(QFile::link(file_, link));
    const Said said = runProgram({"sheet", file_, "--pdf", link});
    EXPECT_EQ(said.exit, static_cast<int>(Exit::CannotWrite));
    EXPECT_TRUE(said.err.contains("garage")) << said.err.toStdString();
    EXPECT_EQ(say({"check", file_}).exit, 0);
    EXPECT_EQ(exported(), before);
}

// A device that a plain file is put in the place of is lost to every program until the next start.
TEST_F(Processes, APipeThatIsExportedToStaysAPipe) {
    const QString pipe = path("pipe");
    ASSERT_EQ(mkfifo(pipe.toUtf8().constData(), 0600), 0);
    QProcess reader;
    reader.setStandardOutputFile(path("read.json"));
    reader.start("cat", {pipe});
    ASSERT_TRUE(reader.waitForStarted());
    EXPECT_EQ(runProgram({"export", file_, "--to", pipe}).exit, 0);
    ASSERT_TRUE(reader.waitForFinished(10'000));
    EXPECT_TRUE(bytes("read.json").trimmed().endsWith('}'));
    EXPECT_FALSE(QFileInfo(pipe).isFile());
}

TEST_F(Processes, ALimitOnTheSizeOfFilesEndsInWords) {
    const QString before = exported();
    QProcess process;
    process.start("/bin/sh", {"-c", "ulimit -f 1; exec \"$0\" log \"$1\" --wash hand --on 2026-05-02",
                              WM_PROGRAM, file_});
    ASSERT_TRUE(process.waitForFinished(60'000));
    ASSERT_EQ(process.exitStatus(), QProcess::NormalExit);
    EXPECT_EQ(process.exitCode(), static_cast<int>(Exit::CannotWrite));
    EXPECT_TRUE(process.readAllStandardError().startsWith("witnessmark: "));
    EXPECT_EQ(exported(), before);
}

TEST_F(Processes, BackupsStandBesideTheFileAndNotBesideALink) {
    ASSERT_TRUE(QDir(folder_.path()).mkdir("elsewhere"));
    const QString link = path("elsewhere/link.witnessmark");
    ASSERT_TRUE(QFile::link(file_, link));
    ASSERT_EQ(runProgram({"log", link, "--wash", "hand"}).exit, 0);
    EXPECT_TRUE(QFileInfo(file_ + ".backups").isDir());
    EXPECT_EQ(QDir(path("elsewhere")).entryList(QDir::Files | QDir::Dirs | QDir::NoDotAndDotDot),
              QStringList{"link.witnessmark"});
}

TEST_F(Processes, ABadByteInAnArgumentIsNoText) {
    const QString before = exported();
    QProcess process;
    process.start("/bin/sh", {"-c",
                              QString("exec \"$0\" log \"$1\" --wash hand --on 2026-05-02 --note \"$(printf "
                                      "'\\377\\376')\""),
                              WM_PROGRAM, file_});
    ASSERT_TRUE(process.waitForFinished(60'000));
    EXPECT_EQ(process.exitCode(), static_cast<int>(Exit::Refused));
    EXPECT_EQ(
        QString::fromUtf8(process.readAllStandardError()),
        "witnessmark: The --note holds characters that are no text: enter it again as plain text (UTF-8).\n");
    EXPECT_EQ(exported(), before) << "nothing is written, least of all another text than was given";
}

}  // namespace
}  // namespace wm::test

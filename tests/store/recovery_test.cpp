// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// A program that was killed in the middle of a write leaves its journal beside the file.
#include <sqlite3.h>

#include <QFile>
#include <QFileInfo>

#include "tests/store/faulty_vfs.h"
#include "tests/store/sample.h"

namespace wm::store {
namespace {

using sample::Folder;

// Begins a write so large that part of it reaches the file, and copies what is then on the disk.
void interrupt(const QString& path, const QString& copy) {
    sqlite3* db = nullptr;
    ASSERT_EQ(sqlite3_open(path.toUtf8().constData(), &db), SQLITE_OK);
    const char* write =
        "PRAGMA journal_mode = TRUNCATE; PRAGMA cache_size = 5; BEGIN IMMEDIATE;"
        "WITH RECURSIVE n (i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < 400) "
        "INSERT INTO verb_log SELECT 1000 + i, 'done', 1, hex(randomblob(200)), '' FROM n;"
        "UPDATE file_state SET revision = 1400";
    ASSERT_EQ(sqlite3_exec(db, write, nullptr, nullptr, nullptr), SQLITE_OK);
    ASSERT_TRUE(QFile::copy(path, copy));
    ASSERT_TRUE(QFile::copy(path + "-journal", copy + "-journal"));
    sqlite3_close(db);
    ASSERT_GT(QFileInfo(copy + "-journal").size(), 512);
}

class RecoveryTest : public testing::Test {
  protected:
    void SetUp() override {
        rows_ = sample::fileWith(path_, sample::oneMachine())->ledger()->rows();
        interrupt(path_, crashed_);
    }
    void expectWhole(const File::Opened& answer) const {
        ASSERT_EQ(answer.report.outcome, OpenOutcome::Opened) << answer.report.detail.toStdString();
        EXPECT_EQ(answer.file->ledger()->rows(), rows_);
        EXPECT_TRUE(answer.file->check().empty());
        EXPECT_EQ(QFileInfo(crashed_ + "-journal").size(), 0);
        EXPECT_EQ(sample::answer(crashed_, "SELECT revision FROM file_state"), "1");
    }

    Folder folder_;
    QString path_ = folder_.path("garage.wm");
    QString crashed_ = folder_.path("crashed.wm");
    std::vector<picture::Row> rows_;
};

TEST_F(RecoveryTest, AReaderTakesBackWhatWasInterrupted) {
    const auto answer = File::open(crashed_, OpenFor::ReadingOnly);
    expectWhole(answer);
    ASSERT_NE(answer.file, nullptr);
    EXPECT_TRUE(answer.file->readOnly());
}

TEST_F(RecoveryTest, LeavesAJournalThatBelongsToALiveWriter) {
    QFile::remove(crashed_ + "-journal");
    sqlite3* other = nullptr;
    ASSERT_EQ(sqlite3_open(path_.toUtf8().constData(), &other), SQLITE_OK);
    ASSERT_EQ(sqlite3_exec(other, "PRAGMA journal_mode = TRUNCATE; BEGIN IMMEDIATE; DELETE FROM verb_log",
                           nullptr, nullptr, nullptr),
              SQLITE_OK);
    const auto answer = File::open(path_, OpenFor::ReadingOnly);
    EXPECT_EQ(answer.report.outcome, OpenOutcome::Opened);
    EXPECT_FALSE(answer.report.tookBack);
    EXPECT_GT(QFileInfo(path_ + "-journal").size(), 0);
    EXPECT_EQ(sqlite3_exec(other, "COMMIT", nullptr, nullptr, nullptr), SQLITE_OK) << sqlite3_errmsg(other);
    sqlite3_close(other);
}

TEST_F(RecoveryTest, SaysSoOnceAndOnlyThen) {
    EXPECT_FALSE(File::open(path_, OpenFor::ReadingOnly).report.tookBack);
    EXPECT_FALSE(File::open(path_, OpenFor::Writing).report.tookBack);
    EXPECT_TRUE(File::open(crashed_, OpenFor::ReadingOnly).report.tookBack);
    EXPECT_FALSE(File::open(crashed_, OpenFor::ReadingOnly).report.tookBack);
}

// As on a stick with its lock on: the file can't be read as it stands, and not put right there.
TEST_F(RecoveryTest, NamesAnInterruptedWriteThatCannotBeTakenBackThere) {
    sample::FaultyVfs vfs("locked");
    Options options;
    options.vfs = vfs.name();
    for (const OpenFor purpose : {OpenFor::ReadingOnly, OpenFor::Writing}) {
        vfs.fail(sample::FaultyVfs::Call::Open, 1, SQLITE_CANTOPEN, true, "-journal");
        const auto answer = File::open(crashed_, purpose, options);
        EXPECT_EQ(answer.report.outcome, OpenOutcome::HalfWritten) << answer.report.detail.toStdString();
        EXPECT_EQ(answer.file, nullptr);
    }
    vfs.failNothing();
    expectWhole(File::open(crashed_, OpenFor::ReadingOnly, options));
}

TEST_F(RecoveryTest, LeavesTheJournalOfAnotherProgramsDatabase) {
    sample::execute(path_, "PRAGMA application_id = 17");
    const QString other = folder_.path("other.db");
    interrupt(path_, other);
    EXPECT_EQ(File::open(other, OpenFor::ReadingOnly).file, nullptr);
    EXPECT_GT(QFileInfo(other + "-journal").size(), 512);
}

// Another program is killed in a write while the file is open here.
TEST_F(RecoveryTest, CountsWhatIsTakenBackWhileTheFileIsOpen) {
    const auto file = sample::opened(path_);
    ASSERT_NE(file, nullptr);
    const auto crash = [&](const QString& end) {
        QFile from(crashed_ + end);
        QFile to(path_ + end);
        ASSERT_TRUE(from.open(QIODevice::ReadOnly));
        ASSERT_TRUE(to.open(QIODevice::WriteOnly));
        to.write(from.readAll());
    };
    EXPECT_FALSE(file->refresh());
    EXPECT_EQ(file->takenBack(), 0);
    crash({});
    crash("-journal");
    EXPECT_FALSE(file->refresh());
    EXPECT_EQ(file->takenBack(), 1);
    EXPECT_EQ(file->ledger()->rows(), rows_);
    EXPECT_FALSE(file->refresh());
    EXPECT_EQ(file->takenBack(), 1);
    crash({});
    crash("-journal");
    ASSERT_TRUE(file->apply(sample::wash("and on"), sample::kToday));
    EXPECT_EQ(file->takenBack(), 2);
    EXPECT_TRUE(file->check().empty());
}

TEST_F(RecoveryTest, AWriterTakesBackWhatWasInterrupted) {
    expectWhole(File::open(crashed_, OpenFor::Writing));
}

}  // namespace
}  // namespace wm::store

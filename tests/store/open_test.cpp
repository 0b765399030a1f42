// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <sqlite3.h>

#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <random>

#include "core/store/migration.h"
#include "core/store/opening.h"
#include "core/store/schema.h"
#include "tests/store/faulty_vfs.h"
#include "tests/store/sample.h"

namespace wm::store {
namespace {

using sample::Folder;
using sample::wash;
using sample::washNotes;

void writeBytes(const QString& path, const QByteArray& bytes) {
    QFile file(path);
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    file.write(bytes);
}

QByteArray bytesOf(const QString& path) {
    QFile file(path);
    EXPECT_TRUE(file.open(QIODevice::ReadOnly));
    return file.readAll();
}

// Holds a lock on a file as another program would.
class OtherProgram {
  public:
    OtherProgram(const QString& path, const char* sql) {
        EXPECT_EQ(sqlite3_open(path.toUtf8().constData(), &db_), SQLITE_OK);
        EXPECT_EQ(sqlite3_exec(db_, sql, nullptr, nullptr, nullptr), SQLITE_OK);
    }
    ~OtherProgram() { sqlite3_close(db_); }
    OtherProgram(const OtherProgram&) = delete;
    OtherProgram& operator=(const OtherProgram&) = delete;

  private:
    sqlite3* db_ = nullptr;
};

class OpenTest : public testing::Test {
  protected:
    void SetUp() override { options_.busyMilliseconds = 20; }
    OpenReport outcome(const QString& path, OpenFor purpose = OpenFor::Writing) const {
        auto answer = File::open(path, purpose, options_);
        const bool hasFile = answer.report.outcome == OpenOutcome::Opened ||
                             answer.report.outcome == OpenOutcome::Migrated ||
                             answer.report.outcome == OpenOutcome::NewerReadOnly;
        EXPECT_EQ(answer.file != nullptr, hasFile);
        EXPECT_EQ(answer.report.path, path);
        return answer.report;
    }
    // What is refused must stay as it was, to the byte.
    void expectUntouched(const QString& path, OpenOutcome expected) const {
        const QByteArray before = bytesOf(path);
        EXPECT_EQ(outcome(path).outcome, expected);
        EXPECT_EQ(bytesOf(path), before);
        EXPECT_EQ(QFileInfo(path + "-journal").size(), 0);
    }

    Folder folder_;
    Options options_;
    QString path_ = folder_.path("garage.wm");
};

TEST_F(OpenTest, OpensForWritingAndForReading) {
    sample::fileWith(path_, sample::everyRow());
    EXPECT_EQ(outcome(path_).outcome, OpenOutcome::Opened);
    auto reader = File::open(path_, OpenFor::ReadingOnly, options_);
    ASSERT_EQ(reader.report.outcome, OpenOutcome::Opened);
    EXPECT_TRUE(reader.file->readOnly());
    EXPECT_EQ(reader.file->apply(wash("no"), sample::kToday).error().kind, ApplyError::Kind::ReadOnly);
    EXPECT_EQ(reader.file->undo().error().kind, ApplyError::Kind::ReadOnly);
    EXPECT_EQ(reader.file->redo().error().kind, ApplyError::Kind::ReadOnly);
    EXPECT_EQ(reader.file->undoText(), std::nullopt);
    EXPECT_TRUE(reader.file->endUndo().has_value());
    EXPECT_FALSE(reader.file->search("mud", 5).empty());
    EXPECT_TRUE(reader.file->check().empty());
}

TEST_F(OpenTest, TakesAnyCharacterInAPath) {
    for (const char* name :
         {"a b.wm", "what?mode=ro.wm", "50%41#x.wm", "a&vfs=none.wm", "Mühle 🏁.wm", "';--.wm"}) {
        const QString path = folder_.path(QString::fromUtf8(name));
        sample::fileWith(path, sample::oneMachine());
        EXPECT_TRUE(QFileInfo::exists(path)) << name;
        EXPECT_EQ(outcome(path).outcome, OpenOutcome::Opened) << name;
    }
}

TEST_F(OpenTest, KeepsOneFileThatCanBeCopied) {
    auto file = sample::fileWith(path_, sample::oneMachine());
    EXPECT_EQ(QFileInfo(path_ + "-journal").size(), 0);
    EXPECT_FALSE(QFileInfo::exists(path_ + "-wal"));
    ASSERT_TRUE(QFile::copy(path_, folder_.path("stick.wm")));
    EXPECT_EQ(sample::opened(folder_.path("stick.wm"))->ledger()->rows(), file->ledger()->rows());
}

TEST_F(OpenTest, BringsAWriteAheadFileBackToOneFile) {
    sample::fileWith(path_, sample::oneMachine());
    EXPECT_EQ(sample::answer(path_, "PRAGMA journal_mode = WAL"), "wal");
    EXPECT_EQ(outcome(path_).outcome, OpenOutcome::Opened);
    EXPECT_EQ(sample::answer(path_, "PRAGMA journal_mode"), "delete");
}

TEST_F(OpenTest, NamesWhatIsNotThereOrNoFile) {
    EXPECT_EQ(outcome(path_).outcome, OpenOutcome::NoAccess);
    EXPECT_EQ(outcome(path_).detail, "missing");
    EXPECT_FALSE(QFileInfo::exists(path_)) << "looking made a file";
    ASSERT_TRUE(QDir().mkpath(folder_.path("folder.wm")));
    EXPECT_EQ(outcome(folder_.path("folder.wm")).outcome, OpenOutcome::NoAccess);
    EXPECT_EQ(outcome(folder_.path("folder.wm")).detail, "folder");
}

TEST_F(OpenTest, NamesAFileThatMayNotBeRead) {
    sample::fileWith(path_, sample::oneMachine());
    sample::FaultyVfs vfs("unreadable");
    options_.vfs = vfs.name();
    vfs.fail(sample::FaultyVfs::Call::Open, 1, SQLITE_CANTOPEN, true);
    EXPECT_EQ(outcome(path_).outcome, OpenOutcome::NoAccess);
    vfs.fail(sample::FaultyVfs::Call::Open, 1, SQLITE_PERM, true);
    EXPECT_EQ(outcome(path_).outcome, OpenOutcome::NoAccess);
    vfs.fail(sample::FaultyVfs::Call::Read, 1, SQLITE_IOERR_READ, true);
    EXPECT_EQ(outcome(path_).outcome, OpenOutcome::NoAccess);
}

TEST_F(OpenTest, LeavesWhatIsNotOursAlone) {
    sample::execute(folder_.path("other.db"), "CREATE TABLE wash (id INTEGER); PRAGMA application_id = 17");
    expectUntouched(folder_.path("other.db"), OpenOutcome::NotOurs);
    sample::execute(folder_.path("none.db"), "CREATE TABLE machine (id INTEGER)");
    expectUntouched(folder_.path("none.db"), OpenOutcome::NotOurs);
    writeBytes(path_, "Dear diary,\n" + QByteArray(5000, 'x'));
    expectUntouched(path_, OpenOutcome::NotOurs);
    writeBytes(path_, QByteArray("\x89PNG\r\n\x1a\n\0\0\0\rIHDR", 16) + QByteArray(900, '\7'));
    expectUntouched(path_, OpenOutcome::NotOurs);
    writeBytes(path_, "");
    expectUntouched(path_, OpenOutcome::NotOurs);
}

TEST_F(OpenTest, NamesAFileThatWasCutShort) {
    sample::fileWith(path_, sample::everyRow());
    const QByteArray whole = bytesOf(path_);
    for (const qsizetype size :
         {whole.size() - 1, whole.size() - 4096, whole.size() / 2, qsizetype{4096}, qsizetype{100}}) {
        writeBytes(path_, whole.left(size));
        expectUntouched(path_, OpenOutcome::Corrupt);
    }
}

TEST_F(OpenTest, NamesADamagedHeaderAsDamage) {
    sample::fileWith(path_, sample::everyRow());
    QByteArray bytes = bytesOf(path_);
    bytes[3] = 'X';
    writeBytes(path_, bytes);
    expectUntouched(path_, OpenOutcome::Corrupt);
}

// Bytes flipped anywhere: the file is refused by name, or it can be read and every row of it makes sense.
TEST(LongFlipTest, NeverBringsTheStoreDown) {
    Folder folder;
    const QString path = folder.path("garage.wm");
    sample::fileWith(path, sample::everyRow());
    const QByteArray whole = bytesOf(path);
    std::mt19937 chance(20260516);
    int corrupt = 0;
    for (int i = 0; i < 200; ++i) {
        QByteArray bytes = whole;
        const auto at = std::uniform_int_distribution<qsizetype>(0, whole.size() - 1)(chance);
        bytes[at] = static_cast<char>(bytes[at] ^
                                      static_cast<char>(1U << std::uniform_int_distribution(0, 7)(chance)));
        writeBytes(path, bytes);
        const auto answer = File::open(path, OpenFor::Writing);
        if (answer.report.outcome == OpenOutcome::Corrupt) {
            ++corrupt;
            EXPECT_FALSE(answer.report.detail.isEmpty());
        } else if (answer.file != nullptr) {
            (void)answer.file->apply(wash("on it goes"), sample::kToday);
            (void)answer.file->search("mud", 10);
            (void)answer.file->undo();
            (void)answer.file->check();
        }
        QFile::remove(path + "-journal");
    }
    EXPECT_GT(corrupt, 10) << "hardly any damage was seen";
}

TEST_F(OpenTest, NamesRowsThatMakeNoSense) {
    sample::fileWith(path_, sample::oneMachine());
    sample::execute(
        path_,
        "PRAGMA ignore_check_constraints = ON; INSERT INTO crash VALUES (9, 9, 1001, 'May', NULL, '')");
    const auto report = outcome(path_);
    EXPECT_EQ(report.outcome, OpenOutcome::Corrupt);
    EXPECT_TRUE(report.detail.contains("crash")) << report.detail.toStdString();
}

// A value beyond the limits, which takes half a gigabyte to make: it is no file that can't be found.
TEST(OutcomeTest, AValueTooLargeIsDamage) {
    EXPECT_EQ(outcomeOf(Failure(SQLITE_TOOBIG, "string or blob too big")), OpenOutcome::Corrupt);
    EXPECT_EQ(outcomeOf(Failure(SQLITE_CANTOPEN, "unable to open")), OpenOutcome::NoAccess);
}

TEST_F(OpenTest, NamesAFileWhoseTablesAreGone) {
    sample::fileWith(path_, sample::oneMachine());
    sample::execute(path_, "DROP TABLE deferral");
    EXPECT_EQ(outcome(path_).outcome, OpenOutcome::Corrupt);
}

TEST_F(OpenTest, NamesAFileThatAnotherProgramHolds) {
    auto file = sample::fileWith(path_, sample::oneMachine(), options_);
    {
        const OtherProgram other(path_, "BEGIN EXCLUSIVE");
        EXPECT_EQ(outcome(path_).outcome, OpenOutcome::Locked);
        EXPECT_EQ(outcome(path_, OpenFor::ReadingOnly).outcome, OpenOutcome::Locked);
        EXPECT_EQ(file->apply(wash("blocked"), sample::kToday).error().kind, ApplyError::Kind::Locked);
        EXPECT_EQ(file->undo().error().kind, ApplyError::Kind::Locked);
        EXPECT_FALSE(file->refresh());
    }
    {
        const OtherProgram other(path_, "BEGIN IMMEDIATE");
        EXPECT_EQ(outcome(path_, OpenFor::ReadingOnly).outcome, OpenOutcome::Opened);
        EXPECT_EQ(file->apply(wash("blocked"), sample::kToday).error().kind, ApplyError::Kind::Locked);
    }
    {
        // A reader holds up the very commit.
        const OtherProgram other(path_, "BEGIN; SELECT * FROM machine");
        EXPECT_EQ(file->apply(wash("blocked"), sample::kToday).error().kind, ApplyError::Kind::Locked);
    }
    EXPECT_TRUE(washNotes(*file).empty());
    EXPECT_TRUE(file->apply(wash("free again"), sample::kToday).has_value());
    EXPECT_EQ(washNotes(*sample::opened(path_)), std::vector<std::string>{"free again"});
}

TEST_F(OpenTest, MakesNoFileOverAnother) {
    sample::fileWith(path_, sample::oneMachine());
    const QByteArray before = bytesOf(path_);
    const auto again = File::create(path_);
    EXPECT_EQ(again.report.outcome, OpenOutcome::NoAccess);
    EXPECT_EQ(again.report.detail, "exists");
    EXPECT_EQ(again.file, nullptr);
    EXPECT_EQ(bytesOf(path_), before);
    EXPECT_EQ(File::create(folder_.path("no/such/folder.wm")).report.outcome, OpenOutcome::NoAccess);
    ASSERT_TRUE(QDir().mkpath(folder_.path("folder.wm")));
    EXPECT_EQ(File::create(folder_.path("folder.wm")).report.detail, "folder");
}

// Files of other versions, from schemas that only these tests have.
class VersionTest : public OpenTest {
  protected:
    const int now_ = latestVersion(currentSchema());
    const QString copy_ = path_ + QStringLiteral(".v%1.bak").arg(now_);

    void SetUp() override {
        OpenTest::SetUp();
        options_.schema = currentSchema();
        addStep("a table of tyres", now_, "0.8", {"CREATE TABLE tyre (id INTEGER PRIMARY KEY) STRICT"});
    }
    void addStep(const std::string& description, int oldestReader, const std::string& program,
                 std::vector<std::string> statements) {
        const int version = options_.schema.back().version + 1;
        options_.schema.push_back({version, description, oldestReader, program, std::move(statements)});
    }
    [[nodiscard]] std::string version() const { return sample::answer(path_, "PRAGMA user_version"); }
    OpenReport outcomeToday(const QString& path) const { return File::open(path, OpenFor::Writing).report; }
};

TEST_F(VersionTest, BringsAnOlderFileUpToDate) {
    addStep("a colour for machines", now_ + 2, "0.9",
            {"ALTER TABLE machine ADD COLUMN colour TEXT NOT NULL DEFAULT ''"});
    const auto rows = sample::fileWith(path_, sample::everyRow())->ledger()->rows();
    auto answer = File::open(path_, OpenFor::Writing, options_);
    ASSERT_EQ(answer.report.outcome, OpenOutcome::Migrated) << answer.report.detail.toStdString();
    EXPECT_EQ(answer.report.fromVersion, now_);
    EXPECT_EQ(answer.report.steps, (std::vector<QString>{"a table of tyres", "a colour for machines"}));
    EXPECT_EQ(answer.file->ledger()->rows(), rows);
    EXPECT_EQ(answer.file->undoText(), std::nullopt) << "what was recorded is in the old form";
    EXPECT_EQ(version(), std::to_string(now_ + 2));
    EXPECT_EQ(sample::answer(path_, "SELECT oldest_reader || ' ' || needs_program FROM file_state"),
              std::to_string(now_ + 2) + " 0.9");
    EXPECT_TRUE(answer.file->check().empty());
    // The copy beside it is the old file, whole.
    EXPECT_EQ(answer.report.backup, copy_);
    EXPECT_EQ(sample::opened(answer.report.backup)->ledger()->rows(), rows);
    EXPECT_EQ(outcome(path_).outcome, OpenOutcome::Opened);
}

TEST_F(VersionTest, NeverWritesOverAnEarlierCopy) {
    sample::fileWith(path_, sample::oneMachine());
    writeBytes(copy_, "mine");
    EXPECT_EQ(outcome(path_).backup, path_ + QStringLiteral(".v%1-2.bak").arg(now_));
    EXPECT_EQ(bytesOf(copy_), "mine");
}

TEST_F(VersionTest, TakesEachStepWholeOrNotAtAll) {
    addStep("one that fails half-way", now_ + 2, "0.9",
            {"CREATE TABLE half (id INTEGER) STRICT", "INSERT INTO nowhere VALUES (1)"});
    const auto rows = sample::fileWith(path_, sample::oneMachine())->ledger()->rows();
    EXPECT_EQ(outcome(path_).outcome, OpenOutcome::Corrupt);
    EXPECT_EQ(version(), std::to_string(now_ + 1));
    EXPECT_EQ(sample::answer(path_, "SELECT count(*) FROM sqlite_schema WHERE name = 'half'"), "0");
    EXPECT_EQ(sample::opened(copy_)->ledger()->rows(), rows);
}

TEST_F(VersionTest, TakesNoStepThatBreaksAReference) {
    addStep("one that loses machines", now_ + 2, "0.9", {"DELETE FROM machine"});
    sample::fileWith(path_, sample::everyRow());
    EXPECT_EQ(outcome(path_).outcome, OpenOutcome::Corrupt);
    EXPECT_EQ(sample::answer(path_, "SELECT count(*) FROM machine"), "1");
}

TEST_F(VersionTest, TakesNoStepWithoutACopy) {
    sample::fileWith(path_, sample::oneMachine());
    const QByteArray before = bytesOf(path_);
    sample::FaultyVfs vfs("full");
    options_.vfs = vfs.name();
    vfs.fail(sample::FaultyVfs::Call::Write, 5, SQLITE_FULL, true, ".bak");
    EXPECT_EQ(outcome(path_).outcome, OpenOutcome::NoSpace);
    EXPECT_TRUE(vfs.hasFailed());
    EXPECT_EQ(bytesOf(path_), before);
    EXPECT_FALSE(QFileInfo::exists(copy_));
    vfs.fail(sample::FaultyVfs::Call::Write, 2, SQLITE_FULL, true, "garage.wm");
    EXPECT_EQ(outcome(path_).outcome, OpenOutcome::NoSpace);
    EXPECT_TRUE(vfs.hasFailed());
    vfs.failNothing();
    EXPECT_EQ(version(), std::to_string(now_));
    EXPECT_EQ(outcome(path_).outcome, OpenOutcome::Migrated);
}

TEST_F(VersionTest, IsNotBroughtUpToDateByAReader) {
    sample::fileWith(path_, sample::oneMachine());
    const auto report = outcome(path_, OpenFor::ReadingOnly);
    EXPECT_EQ(report.outcome, OpenOutcome::NoAccess);
    EXPECT_EQ(report.detail, "older");
    EXPECT_EQ(version(), std::to_string(now_));
}

TEST_F(VersionTest, IsReadIfItsProgramAllowsThat) {
    const auto rows = sample::fileWith(path_, sample::everyRow(), options_)->ledger()->rows();
    auto answer = File::open(path_, OpenFor::Writing);
    ASSERT_EQ(answer.report.outcome, OpenOutcome::NewerReadOnly);
    EXPECT_EQ(answer.report.fromVersion, now_ + 1);
    EXPECT_TRUE(answer.file->readOnly());
    EXPECT_EQ(answer.file->ledger()->rows(), rows);
    EXPECT_EQ(answer.file->apply(wash("no"), sample::kToday).error().kind, ApplyError::Kind::ReadOnly);
}

TEST_F(VersionTest, IsRefusedWithTheProgramThatItNeeds) {
    addStep("everything is different", now_ + 2, "0.9", {"ALTER TABLE machine RENAME COLUMN name TO title"});
    addStep("one more thing", now_ + 2, "1.0", {"CREATE TABLE more (id INTEGER PRIMARY KEY) STRICT"});
    ASSERT_EQ(outcome(path_).detail, "missing");
    {
        auto schema = options_.schema;
        options_.schema = currentSchema();
        sample::fileWith(path_, sample::oneMachine(), options_);
        options_.schema = schema;
    }
    (void)File::open(path_, OpenFor::Writing, options_);  // takes the steps; the rows have moved on
    const QByteArray before = bytesOf(path_);
    const auto report = outcomeToday(path_);
    EXPECT_EQ(report.outcome, OpenOutcome::NewerRefused);
    EXPECT_EQ(report.detail, "0.9");
    EXPECT_EQ(report.fromVersion, now_ + 3);
    EXPECT_EQ(bytesOf(path_), before);
}

TEST_F(VersionTest, IsRefusedIfItHoldsWordsThatNobodyHereKnows) {
    sample::fileWith(path_, sample::everyRow(), options_);
    sample::execute(path_,
                    "PRAGMA writable_schema = ON; UPDATE sqlite_schema SET sql = replace(sql, '''any''', "
                    "'''any'', ''zigzag''') WHERE name = 'joint_version'");
    sample::execute(
        path_, "DROP TRIGGER joint_version_is_never_changed; UPDATE joint_version SET sequence = 'zigzag'");
    EXPECT_EQ(outcomeToday(path_).outcome, OpenOutcome::NewerRefused);
}

}  // namespace
}  // namespace wm::store

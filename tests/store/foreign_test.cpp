// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// Files that somebody else made or changed: nothing in them runs.
#include <sys/stat.h>

#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <fstream>
#include <sstream>

#include "core/store/connection.h"
#include "core/store/own_schema.h"
#include "core/verbs/verbs.h"
#include "tests/repository.h"
#include "tests/store/sample.h"

namespace wm::store {
namespace {

using sample::Folder;

QByteArray contentOf(const QString& path) {
    QFile file(path);
    EXPECT_TRUE(file.open(QIODevice::ReadOnly));
    return file.readAll();
}

std::string textOfVersion(int version) {
    std::ifstream file(test::repositoryPath("tests/data/store/version_" + std::to_string(version) + ".sql"));
    std::ostringstream text;
    text << file.rdbuf();
    return text.str();
}

class ForeignTest : public testing::Test {
  protected:
    void SetUp() override { rows_ = sample::fileWith(path_, sample::everyRow())->ledger()->rows(); }
    void expectRefused(const QString& path, const QString& names) const {
        const QByteArray before = contentOf(path);
        for (const OpenFor purpose : {OpenFor::Writing, OpenFor::ReadingOnly}) {
            const auto answer = File::open(path, purpose);
            EXPECT_EQ(answer.file, nullptr);
            EXPECT_EQ(answer.report.outcome, OpenOutcome::Foreign) << answer.report.detail.toStdString();
            EXPECT_TRUE(answer.report.detail.contains(names)) << answer.report.detail.toStdString();
        }
        EXPECT_EQ(contentOf(path), before);
    }

    Folder folder_;
    QString path_ = folder_.path("garage.wm");
    std::vector<picture::Row> rows_;
};

TEST_F(ForeignTest, WhatNobodyHereWroteIsRefusedByItsName) {
    const std::pair<const char*, const char*> kAdded[] = {
        {"CREATE TRIGGER evil AFTER INSERT ON wash BEGIN DELETE FROM verb_log; END", "trigger evil"},
        {"CREATE TEMP TABLE t (i); CREATE VIEW evil AS SELECT 1", "view evil"},
        {"CREATE TABLE evil (id INTEGER)", "table evil"},
        {"CREATE INDEX evil ON wash (note)", "index evil"},
        {"CREATE VIRTUAL TABLE evil USING fts5(a)", "evil"},
        {"ANALYZE", "sqlite_stat1"},
        {"DROP TRIGGER wash_is_never_changed; CREATE TRIGGER wash_is_never_changed BEFORE UPDATE ON wash "
         "BEGIN "
         "SELECT 1; END",
         "wash_is_never_changed"},
        {"ALTER TABLE wash ADD COLUMN twice INTEGER AS (id * 2)", "table wash"},
    };
    for (const auto& [sql, name] : kAdded) {
        const QString path = folder_.path("changed.wm");
        QFile::remove(path);
        ASSERT_TRUE(QFile::copy(path_, path));
        sample::execute(path, sql);
        expectRefused(path, name);
    }
}

TEST_F(ForeignTest, FilesOfEarlierVersionsAreComparedWithWhatTheyWrote) {
    for (int version = 1; version < currentSchema().back().version; ++version) {
        const QString path = folder_.path(QStringLiteral("v%1.wm").arg(version));
        sample::execute(path, textOfVersion(version));
        sample::execute(path, "CREATE TRIGGER evil AFTER DELETE ON undo_change BEGIN SELECT 1; END");
        expectRefused(path, "trigger evil");
        EXPECT_FALSE(QFileInfo::exists(path + QStringLiteral(".v%1.bak").arg(version)));
    }
}

// It says of itself that this program may read it, and answers without end.
TEST_F(ForeignTest, AViewInTheNewerFilesTablesPlaceIsNotAsked) {
    sample::execute(
        path_,
        "PRAGMA user_version = 99; DROP TABLE person; CREATE VIEW person AS WITH RECURSIVE n (i) AS "
        "(SELECT 1 UNION ALL SELECT i + 1 FROM n) SELECT i AS id, 'x' AS name FROM n");
    expectRefused(path_, "view person");
}

TEST_F(ForeignTest, ItsFactsAreTakenOverIntoANewFile) {
    sample::execute(path_,
                    "CREATE TRIGGER evil AFTER INSERT ON wash BEGIN DELETE FROM machine; END;"
                    "CREATE VIEW more AS SELECT 1; ALTER TABLE wash ADD COLUMN rider TEXT");
    const QByteArray before = contentOf(path_);
    const Facts facts = factsOf(path_);
    ASSERT_EQ(facts.report.outcome, OpenOutcome::Opened) << facts.report.detail.toStdString();
    EXPECT_EQ(facts.rows, rows_);
    EXPECT_EQ(contentOf(path_), before);
}

TEST_F(ForeignTest, FactsOfEarlierVersionsAreBroughtToThisOneOnTheWay) {
    const QString path = folder_.path("v1.wm");
    sample::execute(path, textOfVersion(1));
    sample::execute(path, "CREATE VIEW evil AS SELECT 1");
    const Facts facts = factsOf(path);
    ASSERT_EQ(facts.report.outcome, OpenOutcome::Opened) << facts.report.detail.toStdString();
    const QString plain = folder_.path("plain.wm");
    sample::execute(plain, textOfVersion(1));
    const auto migrated = File::open(plain, OpenFor::Writing);
    ASSERT_NE(migrated.file, nullptr);
    EXPECT_EQ(facts.rows, migrated.file->ledger()->rows());
    EXPECT_EQ(sample::answer(path, "PRAGMA user_version"), "1");
}

TEST_F(ForeignTest, WhatIsMissingIsNamedAndTheFactsAreTakenOver) {
    const std::pair<const char*, const char*> kGone[] = {
        {"DROP TRIGGER wash_is_never_changed", "trigger wash_is_never_changed"},
        {"DROP TABLE search", "table search"},
        {"DROP TABLE verb_log", "table verb_log"},
        {"DROP TABLE row_seal", "table row_seal"},
    };
    for (const auto& [sql, name] : kGone) {
        const QString path = folder_.path("lacking.wm");
        QFile::remove(path);
        ASSERT_TRUE(QFile::copy(path_, path));
        sample::execute(path, std::string("PRAGMA foreign_keys = OFF; ") + sql);
        const auto answer = File::open(path, OpenFor::Writing);
        EXPECT_EQ(answer.file, nullptr);
        EXPECT_EQ(answer.report.outcome, OpenOutcome::Lacking) << answer.report.detail.toStdString();
        EXPECT_TRUE(answer.report.detail.startsWith(name)) << answer.report.detail.toStdString();
        const Facts facts = factsOf(path);
        EXPECT_EQ(facts.report.outcome, OpenOutcome::Opened) << facts.report.detail.toStdString();
        EXPECT_EQ(facts.rows, rows_) << sql;
    }
}

TEST_F(ForeignTest, AnIndexThatIsMissingIsNamed) {
    const std::string index = sample::answer(
        path_, "SELECT coalesce(min(name), '') FROM sqlite_schema WHERE type = 'index' AND sql IS NOT NULL");
    ASSERT_FALSE(index.empty());
    sample::execute(path_, "DROP INDEX " + index);
    EXPECT_EQ(File::open(path_, OpenFor::Writing).report.outcome, OpenOutcome::Lacking);
    EXPECT_EQ(factsOf(path_).rows, rows_);
}

TEST_F(ForeignTest, NoFactsAreTakenFromAViewOrFromNowhere) {
    sample::execute(path_, "DROP TABLE person; CREATE VIEW person AS SELECT 1 AS id, 'x' AS name");
    EXPECT_EQ(factsOf(path_).report.outcome, OpenOutcome::Corrupt);
    EXPECT_TRUE(factsOf(path_).report.detail.contains("person"))
        << factsOf(path_).report.detail.toStdString();
    EXPECT_EQ(factsOf(folder_.path("none.wm")).report.detail, "missing");
    sample::execute(folder_.path("other.db"), "CREATE TABLE wash (id INTEGER)");
    EXPECT_EQ(factsOf(folder_.path("other.db")).report.outcome, OpenOutcome::NotOurs);
}

TEST_F(ForeignTest, AStatementThatNeverEndsIsBrokenOff) {
    Options options;
    options.mostSteps = 100'000;
    const Connection connection(path_, Connection::Mode::ReadOnly, options);
    try {
        (void)numberOf(
            connection.handle(),
            "WITH RECURSIVE n (i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n) SELECT max(i) FROM n");
        FAIL() << "it ended";
    } catch (const Failure& failure) {
        EXPECT_EQ(failure.primaryCode(), SQLITE_INTERRUPT);
    }
    options.mostSteps = 50;
    const auto answer = File::open(path_, OpenFor::Writing, options);
    EXPECT_EQ(answer.file, nullptr);
    EXPECT_EQ(answer.report.outcome, OpenOutcome::Endless) << answer.report.detail.toStdString();
}

TEST_F(ForeignTest, AConnectionIsLimited) {
    const Connection connection(path_, Connection::Mode::Writing, Options{});
    connection.harden();
    sqlite3* db = connection.handle();
    EXPECT_THROW(run(db, "ATTACH ':memory:' AS more"), Failure);
    EXPECT_THROW(run(db, "SELECT " + std::string(300, '(') + "1" + std::string(300, ')')), Failure);
    EXPECT_THROW(run(db, "SELECT zeroblob(900000000)"), Failure);
    run(db, "PRAGMA writable_schema = ON");
    EXPECT_THROW(run(db, "UPDATE sqlite_schema SET sql = ''"), Failure);
    int isTrusted = -1;
    sqlite3_db_config(db, SQLITE_DBCONFIG_TRUSTED_SCHEMA, -1, &isTrusted);
    EXPECT_EQ(isTrusted, 0);
}

// To open a pipe is to wait for whoever writes into it.
TEST_F(ForeignTest, PipesAndDevicesAreNotWaitedFor) {
    const QString pipe = folder_.path("pipe");
    ASSERT_EQ(mkfifo(pipe.toUtf8().constData(), 0600), 0);
    for (const QString& path : {pipe, QStringLiteral("/dev/zero")}) {
        EXPECT_EQ(File::open(path, OpenFor::ReadingOnly).report.detail, "device");
        EXPECT_EQ(factsOf(path).report.detail, "device");
    }
}

// The database itself would only say that it can't open something.
TEST_F(ForeignTest, WhatStandsInThePlaceOfTheJournalIsNamed) {
    const QString journal = path_ + "-journal";
    QFile::remove(journal);
    const auto expectNamed = [&](const QString& what) {
        for (const OpenFor purpose : {OpenFor::Writing, OpenFor::ReadingOnly}) {
            const auto report = File::open(path_, purpose).report;
            EXPECT_EQ(report.outcome, OpenOutcome::NoAccess);
            EXPECT_EQ(report.detail, what);
            EXPECT_EQ(report.beside, "garage.wm-journal");
        }
        EXPECT_EQ(factsOf(path_).report.detail, what);
    };
    ASSERT_TRUE(QDir().mkdir(journal));
    expectNamed("beside folder");
    ASSERT_TRUE(QDir().rmdir(journal));
    ASSERT_TRUE(QFile::link(folder_.path("nowhere"), journal));
    expectNamed("beside link");
    ASSERT_TRUE(QFile::remove(journal));
    ASSERT_EQ(mkfifo(journal.toUtf8().constData(), 0600), 0);
    expectNamed("beside device");
    ASSERT_TRUE(QFile::remove(journal));
    EXPECT_NE(File::open(path_, OpenFor::Writing).file, nullptr);
    ASSERT_TRUE(QDir().mkdir(folder_.path("new.wm-journal")));
    EXPECT_EQ(File::create(folder_.path("new.wm")).report.detail, "beside folder");
    EXPECT_FALSE(QFileInfo::exists(folder_.path("new.wm")));
}

TEST_F(ForeignTest, ANameThatIsNoUtf8IsToldApartFromAMissingFile) {
    const QString odd = folder_.path(QString::fromUtf8("gar\xE4ge.wm"));
    EXPECT_EQ(File::open(odd, OpenFor::ReadingOnly).report.detail, "name");
}

TEST_F(ForeignTest, TheNamesBesideAGarageAreItsOwn) {
    for (const char* ending :
         {"-journal", "-wal", "-shm", ".backups/x.json", ".backups/deep/er/x", ".backups"})
        EXPECT_EQ(garageThatOwns(path_ + ending), QFileInfo(path_).canonicalFilePath()) << ending;
    for (const char* free : {"garage.wm.json", "other-journal", "garage-journal", "other.backups/x"})
        EXPECT_EQ(garageThatOwns(folder_.path(free)), std::nullopt) << free;
    ASSERT_TRUE(QFile::link(path_ + "-journal", folder_.path("innocent.json")));
    EXPECT_TRUE(garageThatOwns(folder_.path("innocent.json")).has_value());
    EXPECT_EQ(File::create(path_ + "-wal").report.detail, "reserved");
    EXPECT_FALSE(QFileInfo::exists(path_ + "-wal"));
}

}  // namespace
}  // namespace wm::store

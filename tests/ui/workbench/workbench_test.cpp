// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <QFile>
#include <QSignalSpy>
#include <QSqlDatabase>
#include <QSqlError>
#include <QSqlQuery>
#include <utility>

#include "tests/ui/garage.h"

namespace wm::ui {
namespace {

QByteArray bytesOf(const QString& path) {
    QFile file(path);
    EXPECT_TRUE(file.open(QIODevice::ReadOnly));
    return file.readAll();
}

// Into the file that is there: it is open in another program.
void overwrite(const QString& path, const QByteArray& bytes) {
    QFile file(path);
    EXPECT_TRUE(file.open(QIODevice::WriteOnly));
    EXPECT_EQ(file.write(bytes), bytes.size());
}

// The file and its journal as a program leaves them that is killed in a large write.
std::pair<QByteArray, QByteArray> killedIn(const QString& path) {
    std::pair<QByteArray, QByteArray> left;
    {
        QSqlDatabase other = QSqlDatabase::addDatabase("QSQLITE", "other");
        other.setDatabaseName(path);
        EXPECT_TRUE(other.open());
        QSqlQuery query(other);
        for (const char* statement :
             {"PRAGMA journal_mode = TRUNCATE", "PRAGMA cache_size = 5", "BEGIN IMMEDIATE",
              "WITH RECURSIVE n (i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < 400) INSERT INTO "
              "verb_log SELECT 1000 + i, 'done', 1, hex(randomblob(200)), '' FROM n"})
            EXPECT_TRUE(query.exec(statement)) << query.lastError().text().toStdString();
        left = {bytesOf(path), bytesOf(path + "-journal")};
        EXPECT_TRUE(query.exec("ROLLBACK"));
        other.close();
    }
    QSqlDatabase::removeDatabase("other");
    return left;
}

TEST(Workbench, SaysThatAWriteOfAnotherProgramWasTakenBack) {
    const Garage garage(Garage::Fill::OneMachine);
    Workbench workbench([] { return QDateTime(QDate(2026, 5, 7), QTime(12, 0)); });
    ASSERT_EQ(workbench.open(garage.path()).outcome, store::OpenOutcome::Opened);
    const auto rows = workbench.book()->ledger().rows();
    const auto [file, journal] = killedIn(garage.path());
    overwrite(garage.path(), file);
    overwrite(garage.path() + "-journal", journal);
    QSignalSpy refused(&workbench, &Workbench::refused);
    workbench.refresh();
    workbench.refresh();
    ASSERT_EQ(refused.count(), 1);
    EXPECT_TRUE(refused[0][0].toString().contains("was interrupted"))
        << refused[0][0].toString().toStdString();
    EXPECT_EQ(workbench.book()->ledger().rows(), rows);
}

// A long write lets the window live: a timer that comes meanwhile, on a new day, shows no half of it.
TEST(Workbench, LooksForNothingWhileItWrites) {
    const Garage garage(Garage::Fill::OneMachine);
    QDateTime now(QDate(2026, 5, 7), QTime(23, 59));
    Workbench workbench([&now] { return now; });
    ASSERT_EQ(workbench.open(garage.path()).outcome, store::OpenOutcome::Opened);
    const auto person = [](const verbs::VerbContext& context) {
        items::Person odile;
        odile.name = "Odile";
        return verbs::savePerson(context, odile);
    };
    QSignalSpy changed(&workbench, &Workbench::changed);
    const auto look = [&](std::size_t, std::size_t) {
        now = QDateTime(QDate(2026, 5, 8), QTime(0, 1));
        workbench.refresh();
        EXPECT_EQ(changed.count(), 0);
        return true;
    };
    ASSERT_TRUE(workbench.attempt(person, look).has_value());
    EXPECT_EQ(changed.count(), 1);
    EXPECT_EQ(workbench.book()->today(), day("2026-05-08"));
}

}  // namespace
}  // namespace wm::ui

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// Whatever changes a row but this program is named; whatever this program does leaves each row sealed.
#include "core/store/seal.h"

#include <sqlite3.h>

#include <QCryptographicHash>
#include <QFile>
#include <QFileInfo>
#include <algorithm>
#include <array>
#include <map>
#include <random>

#include "core/store/row_shape.h"
#include "tests/store/sample.h"
#include "tests/store/sealing.h"

namespace wm::store {
namespace {

using sample::Folder;
using sample::kFree;
using sample::kGuarded;
using sample::wash;

// A digest reckoned a second time, from what plain SQL answers.
class Reckoned {
  public:
    explicit Reckoned(const QString& path) {
        EXPECT_EQ(sqlite3_open(path.toUtf8().constData(), &db_), SQLITE_OK);
        eachRowType([this](auto row) {
            using R = decltype(row);
            std::vector<std::string> children;
            R::fields(row, [&](std::string_view name, auto& member) {
                if constexpr (kIsChildren<std::decay_t<decltype(member)>>)
                    children.push_back(childTable<R>(name));
            });
            reckon(std::string(R::kTable), children);
        });
        rows("SELECT of_table, id, digest FROM row_seal", [this](sqlite3_stmt* row) {
            inFile[{text(row, 0), number(row, 1)}] = number(row, 2);
        });
        // By halves, so that SQL, which knows no sum modulo 2^64, can add them up.
        rows(
            "SELECT (SELECT seals FROM file_state) = count(*) AND (SELECT seal_sum FROM file_state) = "
            "((sum(digest & 4294967295) & 4294967295) | (((sum(digest & 4294967295) >> 32) + sum(digest >> "
            "32 "
            "& 4294967295)) << 32)) FROM row_seal",
            [this](sqlite3_stmt* row) { isTotalRight = number(row, 0) == 1; });
    }
    ~Reckoned() { sqlite3_close(db_); }
    Reckoned(const Reckoned&) = delete;
    Reckoned& operator=(const Reckoned&) = delete;

    std::map<std::pair<std::string, std::int64_t>, std::int64_t> should;
    std::map<std::pair<std::string, std::int64_t>, std::int64_t> inFile;
    bool isTotalRight = false;

  private:
    static std::int64_t number(sqlite3_stmt* row, int column) { return sqlite3_column_int64(row, column); }
    static std::string text(sqlite3_stmt* row, int column) {
        const auto* from = reinterpret_cast<const char*>(sqlite3_column_text(row, column));
        return {from, static_cast<std::size_t>(sqlite3_column_bytes(row, column))};
    }
    template <class Each>
    void rows(const std::string& sql, const Each& each) {
        sqlite3_stmt* statement = nullptr;
        ASSERT_EQ(sqlite3_prepare_v2(db_, sql.c_str(), -1, &statement, nullptr), SQLITE_OK)
            << sqlite3_errmsg(db_);
        while (sqlite3_step(statement) == SQLITE_ROW)
            each(statement);
        sqlite3_finalize(statement);
    }
    static void add(QByteArray& bytes, char kind, std::uint64_t number) {
        bytes += kind;
        for (; number > 127; number /= 128)
            bytes += static_cast<char>(number % 128 + 128);
        bytes += static_cast<char>(number);
    }
    static void add(QByteArray& bytes, const std::string& text) {
        add(bytes, 't', text.size());
        bytes += QByteArray::fromStdString(text);
    }
    static void add(QByteArray& bytes, sqlite3_stmt* row, int from) {
        for (int column = from; column < sqlite3_column_count(row); ++column) {
            if (sqlite3_column_type(row, column) == SQLITE_NULL)
                bytes += 'n';
            else if (sqlite3_column_type(row, column) == SQLITE_INTEGER)
                add(bytes, 'i', static_cast<std::uint64_t>(number(row, column)));
            else
                add(bytes, text(row, column));
        }
    }
    void reckon(const std::string& table, const std::vector<std::string>& children) {
        rows("SELECT * FROM \"" + table + "\"", [&](sqlite3_stmt* row) {
            QByteArray bytes;
            add(bytes, table);
            add(bytes, row, 0);
            for (const std::string& child : children)
                rows("SELECT * FROM \"" + child + "\" WHERE owner = " + std::to_string(number(row, 0)) +
                         " ORDER BY position",
                     [&](sqlite3_stmt* each) {
                         add(bytes, child);
                         add(bytes, each, 1);
                     });
            const QByteArray digest = QCryptographicHash::hash(bytes, QCryptographicHash::Blake2b_160);
            std::uint64_t value = 0;
            for (int at = 0; at < 8; ++at)
                value = value * 256 + static_cast<unsigned char>(digest[at]);
            should[{table, number(row, 0)}] = static_cast<std::int64_t>(value);
        });
    }
    sqlite3* db_ = nullptr;
};

class SealTest : public testing::Test {
  protected:
    void SetUp() override { sample::fileWith(path_, sample::everyRow()); }
    // What opening says after `sql` was run by something else, whatever the file is opened for.
    [[nodiscard]] std::string refusal(const std::string& sql) const {
        const QString changed = folder_.path("changed.wm");
        QFile::remove(changed);
        EXPECT_TRUE(QFile::copy(path_, changed));
        sample::execute(changed, sql);
        const auto reading = File::open(changed, OpenFor::ReadingOnly);
        EXPECT_EQ(reading.report.outcome, OpenOutcome::Altered) << sql;
        const auto writing = File::open(changed, OpenFor::Writing);
        EXPECT_EQ(writing.file, nullptr) << sql;
        EXPECT_EQ(writing.report.detail, reading.report.detail);
        return writing.report.detail.toStdString();
    }
    void expectSealed() const {
        const Reckoned rows(path_);
        EXPECT_FALSE(rows.should.empty());
        EXPECT_EQ(rows.inFile, rows.should);
        EXPECT_TRUE(rows.isTotalRight);
    }

    Folder folder_;
    QString path_ = folder_.path("garage.wm");
};

TEST_F(SealTest, IsReckonedFromTheRowAndItsChildren) {
    // By Python's hashlib.blake2b(..., digest_size=20), the first 8 bytes.
    const QString path = folder_.path("known.wm");
    outlook::Event event{EventId{4}, "Round 3", "", outlook::EventKind::Race, {}, {}, false, {}, "two days"};
    event.first = *calendar::makeDate(2026, 6, 6);
    event.last = *calendar::makeDate(2026, 6, 7);
    event.entries = {{MachineId{sample::kMachine}, std::nullopt},
                     {MachineId{sample::kMachine}, std::nullopt}};
    auto rows = sample::oneMachine();
    rows.emplace_back(picture::Garage{GarageId{1}, "The lean-to", calendar::makeDate(2026, 11, 25).value()});
    rows.emplace_back(event);
    ASSERT_NE(sample::fileWith(path, rows), nullptr);
    EXPECT_EQ(sample::answer(path, "SELECT digest FROM row_seal WHERE of_table = 'garage'"),
              "-4085763575375127867");
    EXPECT_EQ(sample::answer(path, "SELECT digest FROM row_seal WHERE of_table = 'event' AND id = 4"),
              "5882978725965276658");
}

TEST_F(SealTest, StandsForEachRowOfEachKind) {
    expectSealed();
    EXPECT_TRUE(sample::opened(path_)->check().empty());
}

TEST_F(SealTest, NamesARowWithALetterChanged) {
    EXPECT_EQ(refusal("UPDATE machine SET note = replace(note, 'bought', 'fought')"),
              "table machine, row 1001 is not as it was written");
    EXPECT_EQ(refusal(kFree + "UPDATE wash SET note = note || ' ' WHERE id = 36" + kGuarded),
              "table wash, row 36 is not as it was written");
    EXPECT_EQ(refusal("UPDATE garage SET name = upper(name)"),
              "table garage, row 1 is not as it was written");
}

TEST_F(SealTest, NamesTheRowOfAChildThatWasChangedMovedOrTakenAway) {
    const std::string line = "table event, row 4 is not as it was written";
    EXPECT_EQ(refusal("UPDATE event_entries SET rider = NULL"), line);
    EXPECT_EQ(refusal("DELETE FROM event_entries WHERE position = 1"), line);
    EXPECT_EQ(refusal("UPDATE event_entries SET position = position + 7"), line);
    EXPECT_EQ(refusal("INSERT INTO event_entries SELECT owner, 9, machine, rider FROM event_entries LIMIT 1"),
              line);
    EXPECT_EQ(refusal("INSERT INTO event_entries VALUES (3, 0, 1001, NULL)"),
              "table event_entries, row 3 belongs to a row that is not there");
    EXPECT_EQ(refusal("INSERT INTO event_entries VALUES (77, 0, 1001, NULL)"),
              "table event_entries, row 77 belongs to a row that is not there");
}

TEST_F(SealTest, NamesAnIdThatWasChanged) {
    EXPECT_EQ(refusal(kFree + "UPDATE wash SET id = 5 WHERE id = 36" + kGuarded),
              "table wash, row 5 has no seal: it was not written by this program");
    EXPECT_EQ(refusal(kFree + "UPDATE wash SET id = 999999 WHERE id = 36" + kGuarded),
              "table wash, row 36 was written and is not there");
}

TEST_F(SealTest, NamesARowThatIsGoneAndOneThatWasPutThere) {
    EXPECT_EQ(refusal("PRAGMA foreign_keys = OFF; DELETE FROM wash WHERE id = 36"),
              "table wash, row 36 was written and is not there");
    EXPECT_EQ(refusal("INSERT INTO wash VALUES (999999, 99, 1001, '2026-05-16', 1, NULL, '')"),
              "table wash, row 999999 has no seal: it was not written by this program");
    EXPECT_EQ(refusal("DELETE FROM row_seal WHERE of_table = 'machine'"),
              "table machine, row 1001 has no seal: it was not written by this program");
    EXPECT_EQ(refusal("UPDATE row_seal SET digest = digest + 1 WHERE of_table = 'machine'"),
              "table machine, row 1001 is not as it was written");
    EXPECT_EQ(refusal("INSERT INTO row_seal VALUES ('tyre', 1, 1)"),
              "table row_seal holds seals of a table that is none");
}

// As from a disc that lost just the pages of a row and of its seal: no seal is left that misses it.
TEST_F(SealTest, MissesARowThatIsGoneWithItsSeal) {
    const std::string total = sample::answer(path_, "SELECT count(*) FROM row_seal");
    const std::string fewer = std::to_string(std::stoi(total) - 1);
    EXPECT_EQ(refusal("PRAGMA foreign_keys = OFF; DELETE FROM wash WHERE id = 36; DELETE FROM row_seal "
                      "WHERE of_table = 'wash' AND id = 36"),
              "table file_state: " + total + " rows were written, and " + fewer + " are there");
}

TEST_F(SealTest, MissesThePlaceOfARowThatWasPutBackToWhatItWas) {
    const std::string kept = sample::answer(path_, "SELECT digest FROM row_seal WHERE of_table = 'person'");
    const std::string name = sample::answer(path_, "SELECT name FROM person WHERE id = 1");
    auto file = sample::opened(path_);
    items::Person person = file->ledger()->all<items::Person>().front();
    person.name = "Anna";
    ASSERT_TRUE(file->apply(sample::writing("Renamed", {person}), sample::kToday));
    file.reset();
    const std::string total = sample::answer(path_, "SELECT count(*) FROM row_seal");
    EXPECT_EQ(refusal("UPDATE person SET name = '" + name + "' WHERE id = 1; UPDATE row_seal SET digest = " +
                      kept + " WHERE of_table = 'person' AND id = 1"),
              "table file_state: " + total + " rows were written, and not these");
}

TEST_F(SealTest, CheckAndTakingOverMissARowThatIsGoneWithItsSeal) {
    const auto file = sample::opened(path_);
    sample::execute(path_,
                    "PRAGMA foreign_keys = OFF; DELETE FROM wash WHERE id = 36; DELETE FROM row_seal WHERE "
                    "of_table = 'wash' AND id = 36");
    const auto isTotal = [](const QString& line) { return line.startsWith("table file_state: "); };
    const std::vector<QString> found = file->check();
    EXPECT_EQ(std::count_if(found.begin(), found.end(), isTotal), 1);
    const std::vector<QString> altered = factsOf(path_).altered;
    ASSERT_EQ(altered.size(), 1U);
    EXPECT_TRUE(isTotal(altered[0]));
}

// Each bit of a text, one at a time, in the bytes of the file: that it opens and says something else is over.
TEST_F(SealTest, NamesEachFlippedBitOfAText) {
    ASSERT_TRUE(sample::opened(path_)->endUndo());
    sample::execute(path_, "VACUUM");
    QFile file(path_);
    ASSERT_TRUE(file.open(QIODevice::ReadOnly));
    const QByteArray whole = file.readAll();
    const QByteArray text = "bought used";
    const auto at = whole.indexOf(text);
    ASSERT_GT(at, 0);
    ASSERT_EQ(whole.indexOf(text, at + 1), -1);
    for (qsizetype byte = at; byte < at + text.size(); ++byte) {
        for (int bit = 0; bit < 8; ++bit) {
            QByteArray flipped = whole;
            flipped[byte] = static_cast<char>(flipped[byte] ^ static_cast<char>(1U << bit));
            QFile changed(folder_.path("flipped.wm"));
            ASSERT_TRUE(changed.open(QIODevice::WriteOnly));
            changed.write(flipped);
            changed.close();
            const auto report = File::open(changed.fileName(), OpenFor::ReadingOnly).report;
            EXPECT_TRUE(report.outcome == OpenOutcome::Altered || report.outcome == OpenOutcome::Corrupt);
            EXPECT_TRUE(report.detail.startsWith("table machine, row 1001")) << report.detail.toStdString();
        }
    }
}

TEST_F(SealTest, CheckNamesAllRowsThatWereChangedMeanwhile) {
    const auto file = sample::opened(path_);
    sample::execute(path_,
                    "PRAGMA foreign_keys = OFF; UPDATE garage SET name = 'x'; UPDATE item SET note = 'x'; "
                    "DELETE FROM wash WHERE id = 36");
    const std::vector<QString> found = file->check();
    ASSERT_GE(found.size(), 4U);
    EXPECT_EQ(std::count(found.begin(), found.end(), "table garage, row 1 is not as it was written"), 1);
    EXPECT_EQ(std::count(found.begin(), found.end(), "table item, row 2 is not as it was written"), 1);
    EXPECT_EQ(std::count(found.begin(), found.end(), "table item, row 3 is not as it was written"), 1);
    EXPECT_EQ(std::count(found.begin(), found.end(), "table wash, row 36 was written and is not there"), 1);
}

TEST_F(SealTest, CheckStopsNamingAtTwenty) {
    auto file = sample::opened(path_);
    for (int i = 0; i < 25; ++i)
        ASSERT_TRUE(file->apply(wash("one of many"), sample::kToday));
    sample::execute(path_, kFree + "UPDATE wash SET note = 'x'" + kGuarded);
    EXPECT_EQ(file->check().size(), kMostAlteredNamed);
    EXPECT_EQ(factsOf(path_).altered.size(), kMostAlteredNamed);
}

TEST_F(SealTest, ItsRowsAreTakenOverAsTheyAreAndTheAlteredOnesNamed) {
    EXPECT_TRUE(factsOf(path_).altered.empty());
    sample::execute(path_, "UPDATE person SET name = 'Anna'; UPDATE item SET note = 'new' WHERE id = 3");
    const Facts facts = factsOf(path_);
    ASSERT_EQ(facts.report.outcome, OpenOutcome::Opened) << facts.report.detail.toStdString();
    EXPECT_EQ(facts.altered, (std::vector<QString>{"table person, row 1 is not as it was written",
                                                   "table item, row 3 is not as it was written"}));
    const QString fresh = folder_.path("fresh.wm");
    const auto file = sample::fileWith(fresh, facts.rows);
    ASSERT_NE(file, nullptr);
    EXPECT_EQ(file->ledger()->find<items::Person>(PersonId{1})->name, "Anna");
    EXPECT_TRUE(file->check().empty());
    EXPECT_NE(sample::opened(fresh), nullptr);
}

TEST_F(SealTest, WithoutAnySealsTheRowsAreTakenAndNoneIsTrusted) {
    sample::execute(path_, "DROP TABLE row_seal; CREATE VIEW row_seal AS SELECT 1");
    EXPECT_EQ(File::open(path_, OpenFor::Writing).report.outcome, OpenOutcome::Foreign);
    const Facts facts = factsOf(path_);
    EXPECT_EQ(facts.report.outcome, OpenOutcome::Opened) << facts.report.detail.toStdString();
    EXPECT_EQ(facts.altered.size(), kMostAlteredNamed);
}

// Seals that can't be made out don't hide what can't be read.
TEST_F(SealTest, AnUnreadableRowIsStillListedAmongTheAltered) {
    sample::execute(path_, "UPDATE person SET name = CAST(X'416EFF' AS TEXT); UPDATE garage SET name = 'x'");
    const Facts facts = factsOf(path_);
    EXPECT_EQ(facts.report.outcome, OpenOutcome::Corrupt);
    EXPECT_EQ(facts.altered, (std::vector<QString>{"table garage, row 1 is not as it was written",
                                                   "table person, row 1 is not as it was written"}));
}

TEST_F(SealTest, NoCopyIsMadeOfAlteredRows) {
    auto file = sample::opened(path_);
    sample::execute(path_, "UPDATE garage SET name = 'x'");
    ASSERT_TRUE(file->apply(wash("on it goes"), sample::kToday));
    ASSERT_TRUE(file->backupTrouble().has_value());
    EXPECT_EQ(file->backupTrouble()->kind, BackupTrouble::Kind::NotSound);
    EXPECT_EQ(file->backupTrouble()->detail, "table garage, row 1 is not as it was written");
    EXPECT_TRUE(file->backups().empty());
}

TEST_F(SealTest, ABackupWithAlteredRowsIsNotRestored) {
    auto file = sample::opened(path_);
    ASSERT_TRUE(file->apply(wash("one"), sample::kToday));
    ASSERT_EQ(file->backups().size(), 1U);
    const Backup backup = file->backups()[0];
    sample::execute(backup.path, "UPDATE garage SET name = 'x'");
    const auto restored = file->restoreTo(backup, folder_.path("restored.wm"));
    ASSERT_FALSE(restored);
    EXPECT_EQ(restored.error().kind, ApplyError::Kind::Corrupt);
    EXPECT_FALSE(QFileInfo::exists(folder_.path("restored.wm")));
}

TEST_F(SealTest, UndoAndRedoCarryItAlong) {
    auto file = sample::opened(path_);
    outlook::Event event = file->ledger()->all<outlook::Event>().front();
    event.name = "Round 4";
    event.entries.pop_back();
    ASSERT_TRUE(file->apply(sample::writing("Renamed", {event}), sample::kToday));
    ASSERT_TRUE(file->apply(wash("after"), sample::kToday));
    expectSealed();
    const std::string after = sample::answer(path_, "SELECT group_concat(digest) FROM row_seal");
    for (int step = 0; step < 2; ++step) {
        ASSERT_TRUE(file->undo());
        expectSealed();
    }
    for (int step = 0; step < 2; ++step) {
        ASSERT_TRUE(file->redo());
        expectSealed();
    }
    EXPECT_EQ(sample::answer(path_, "SELECT group_concat(digest) FROM row_seal"), after);
    EXPECT_NE(sample::opened(path_), nullptr);
}

// What undo keeps may be damaged as well: it is seen before it stands in the file.
TEST_F(SealTest, AnUndoThatWouldWriteAnotherTextIsTakenBack) {
    auto file = sample::opened(path_);
    items::Person person = file->ledger()->all<items::Person>().front();
    person.name = "Anna";
    ASSERT_TRUE(file->apply(sample::writing("Renamed", {person}), sample::kToday));
    const std::string last = " WHERE verb = (SELECT max(verb) FROM undo_change)";
    std::string hex = sample::answer(path_, "SELECT hex(changes) FROM undo_change" + last);
    const auto at = hex.find("646567");  // "deg" of the name before
    ASSERT_NE(at, std::string::npos);
    hex.replace(at, 6, "646F67");
    sample::execute(path_, "UPDATE undo_change SET changes = X'" + hex + "'" + last);
    const auto undone = file->undo();
    ASSERT_FALSE(undone.has_value());
    EXPECT_EQ(undone.error().kind, ApplyError::Kind::UndoDamaged);
    EXPECT_EQ(undone.error().detail, "table person, row 1 is not as it was written");
    EXPECT_EQ(file->ledger()->all<items::Person>().front().name, "Anna");
    expectSealed();
}

TEST_F(SealTest, AnUndoThatCantBeReadIsNotTheDisksFault) {
    auto file = sample::opened(path_);
    items::Person person = file->ledger()->all<items::Person>().front();
    person.name = "Anna";
    ASSERT_TRUE(file->apply(sample::writing("Renamed", {person}), sample::kToday));
    sample::execute(path_, "UPDATE undo_change SET changes = X'54FFFFFF00'");
    const auto undone = file->undo();
    ASSERT_FALSE(undone.has_value());
    EXPECT_EQ(undone.error().kind, ApplyError::Kind::UndoDamaged) << undone.error().detail.toStdString();
    EXPECT_EQ(file->ledger()->all<items::Person>().front().name, "Anna");
    EXPECT_TRUE(file->check().empty());
}

// Two programs, random verbs, undo and redo, over and over: each row's seal is right, and nothing else is
// there.
TEST(SealProperty, HoldsAfterAnyVerbsOfTwoPrograms) {
    for (std::uint32_t seed = 1; seed <= 8; ++seed) {
        const Folder folder;
        const QString path = folder.path("garage.wm");
        std::mt19937 chance(seed);
        const auto upTo = [&chance](int most) { return std::uniform_int_distribution(0, most)(chance); };
        const auto note = [&] {
            static const std::array<std::string, 6> kTexts = {"",           "a",     "Ümit 🏁",
                                                              "two\nlines", "'; --", std::string(3000, 'x')};
            return kTexts.at(static_cast<std::size_t>(upTo(5))) + std::string(kTexts.at(1)) +
                   std::to_string(upTo(99));
        };
        const auto first = sample::fileWith(path, sample::everyRow());
        const auto second = sample::opened(path);
        for (int step = 0; step < 30; ++step) {
            File& file = upTo(1) == 0 ? *first : *second;
            (void)file.refresh();
            auto event = file.ledger()->all<outlook::Event>().front();
            event.note = note();
            event.entries.resize(static_cast<std::size_t>(upTo(4)), {MachineId{sample::kMachine}, {}});
            auto machine = file.ledger()->all<items::Machine>().front();
            machine.note = note();
            machine.goneOn.reset();
            switch (upTo(4)) {
                case 0:
                    (void)file.undo();
                    break;
                case 1:
                    (void)file.redo();
                    break;
                case 2:
                    EXPECT_TRUE(file.apply(sample::writing("Cards", {event, machine}), sample::kToday));
                    break;
                default:
                    EXPECT_TRUE(file.apply(wash(note()), sample::kToday));
            }
            const Reckoned rows(path);
            ASSERT_EQ(rows.inFile, rows.should) << "seed " << seed << ", step " << step;
            ASSERT_TRUE(rows.isTotalRight) << "seed " << seed << ", step " << step;
        }
        EXPECT_TRUE(first->check().empty());
        EXPECT_NE(sample::opened(path), nullptr);
    }
}

}  // namespace
}  // namespace wm::store

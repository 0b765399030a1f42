// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <sqlite3.h>
#include <sys/stat.h>

#include <QDir>
#include <QFile>
#include <array>
#include <cstdlib>
#include <filesystem>
#include <utility>

#include "core/store/store.h"

#include "tests/app/shell.h"

namespace wm::test {
namespace {

using app::Exit;

class ExchangeVerbs : public GarageTest {
  protected:
    void SetUp() override {
        GarageTest::SetUp();
        ASSERT_EQ(say({"log", file_, "--outing", "1.3", "--wash", "hand"}).exit, 0);
        ASSERT_EQ(say({"record", file_, "--task", "chain-kit", "--note", "“quoted” <b>"}).exit, 0);
        write("whole.json", exported().toUtf8());
    }
    void expectNoImport(const QByteArray& text, Exit exit, const QString& words) {
        write("bad.json", text);
        expectRefusal(say({"import", path("copy.witnessmark"), path("bad.json")}), exit, words);
        EXPECT_FALSE(QFile::exists(path("copy.witnessmark")));
    }
};

TEST_F(ExchangeVerbs, AFileComesBackByteForByte) {
    const Said said = say({"import", path("copy.witnessmark"), path("whole.json"), "--json"});
    ASSERT_EQ(said.exit, 0) << said.err.toStdString();
    expectKeepsTo("import", said.json());
    EXPECT_EQ(say({"export", path("copy.witnessmark")}).out, exported());
    EXPECT_EQ(say({"due", path("copy.witnessmark"), "--json"}).out, say({"due", file_, "--json"}).out);
}

TEST_F(ExchangeVerbs, ImportFillsAnEmptyFileOnly) {
    ASSERT_EQ(say({"new", path("empty.witnessmark")}).exit, 0);
    EXPECT_EQ(say({"import", path("empty.witnessmark"), path("whole.json")}).exit, 0);
    // What a killed import left, whose name is said to be free.
    write("begun.witnessmark", "");
    expectRefusal(say({"check", path("begun.witnessmark")}), Exit::CannotOpen, "the name is free");
    EXPECT_EQ(say({"import", path("begun.witnessmark"), path("whole.json")}).exit, 0);
    EXPECT_EQ(say({"check", path("begun.witnessmark")}).exit, 0);
    const QString before = exported();
    expectRefusal(say({"import", file_, path("whole.json")}), Exit::Refused, "new file");
    EXPECT_EQ(exported(), before);
}

TEST_F(ExchangeVerbs, ExportWritesToAFileIfAsked) {
    EXPECT_EQ(say({"export", file_, "--to", path("out.json")}).out, "");
    EXPECT_EQ(bytes("out.json"), exported().toUtf8());
    expectRefusal(say({"export", file_, "--to", folder_.path()}), Exit::CannotWrite, "can't be written");
    expectRefusal(say({"export", file_, "--to", path("nowhere/x.json")}), Exit::CannotWrite,
                  "can't be written");
}

TEST_F(ExchangeVerbs, NothingIsImportedFromABadText) {
    const QByteArray whole = bytes("whole.json");
    expectNoImport("", Exit::Refused, "blank");
    expectNoImport("{", Exit::Refused, "end of text");
    expectNoImport(whole.left(whole.size() / 2), Exit::Refused, "end of text");
    expectNoImport("\xFF\xFE{}", Exit::Refused, "no text");
    expectNoImport("{\"format\": 99}", Exit::Refused, "newer");
    expectNoImport(QByteArray(whole).replace("\"hours\": 130", "\"hours\": -130"), Exit::Refused, "hours");
    expectNoImport(QByteArray(whole).replace("\"hours\": 130", "\"hours\": 1e300"), Exit::Refused, "hours");
    expectNoImport(QByteArray(whole).replace("\"pressure\": false", "\"pressure\": \"no\""), Exit::Refused,
                   "pressure");
    expectNoImport(QByteArray(whole).replace("\"outing\": [", "\"outing\": [{}, "), Exit::Refused,
                   "outing[0]");
}

TEST_F(ExchangeVerbs, AReferenceToNothingIsRefused) {
    nlohmann::json broken = nlohmann::json::parse(bytes("whole.json").toStdString());
    broken["outing"][0]["machine"] = 12345;
    expectNoImport(QByteArray::fromStdString(broken.dump()), Exit::Refused, "outing[0]");
}

TEST_F(ExchangeVerbs, ATextThatCanNotBeReadIsNamed) {
    const QString copy = path("copy.witnessmark");
    expectRefusal(say({"import", copy, path("nowhere.json")}), Exit::CannotOpen, "nowhere.json");
    expectRefusal(say({"import", copy, folder_.path()}), Exit::CannotOpen, "is a folder");
    EXPECT_FALSE(QFile::exists(copy));
}

// To open a pipe is to wait for whoever writes into it.
TEST_F(ExchangeVerbs, WhatNeedNotEndIsNotRead) {
    const QString copy = path("copy.witnessmark");
    const QString pipe = path("pipe");
    ASSERT_EQ(mkfifo(pipe.toUtf8().constData(), 0600), 0);
    for (const QString& endless : {pipe, QStringLiteral("/dev/zero")}) {
        expectRefusal(say({"import", copy, endless}), Exit::CannotOpen, "a pipe or a device");
        expectRefusal(say({"due", endless}), Exit::CannotOpen, "a pipe or a device");
    }
    EXPECT_FALSE(QFile::exists(copy));
}

TEST_F(ExchangeVerbs, AnExportHasTheRightsOfTheGarage) {
    const auto own =
        QFileDevice::ReadOwner | QFileDevice::WriteOwner | QFileDevice::ReadUser | QFileDevice::WriteUser;
    ASSERT_TRUE(QFile::setPermissions(file_, own));
    ASSERT_EQ(say({"export", file_, "--to", path("out.json")}).exit, 0);
    EXPECT_EQ(QFile::permissions(path("out.json")) & ~(QFileDevice::ReadUser | QFileDevice::WriteUser),
              QFileDevice::ReadOwner | QFileDevice::WriteOwner);
}

TEST_F(ExchangeVerbs, NothingIsExportedToTheNamesThatBelongToAGarage) {
    ASSERT_EQ(say({"log", file_, "--wash", "hand", "--on", "2026-05-02"}).exit, 0);
    const QString folder = file_ + ".backups";
    ASSERT_TRUE(QFile::exists(folder));
    const QStringList backups = QDir(folder).entryList(QDir::Files);
    for (const QString& name : {file_ + "-journal", file_ + "-wal", file_ + "-shm", folder + "/x.json",
                                folder + '/' + backups.value(0)})
        expectRefusal(say({"export", file_, "--to", name}), Exit::CannotWrite, "garage");
    EXPECT_FALSE(QFile::exists(file_ + "-wal"));
    EXPECT_EQ(QDir(folder).entryList(QDir::Files), backups);
    EXPECT_EQ(say({"check", file_}).exit, 0);
    expectRefusal(say({"new", file_ + "-journal"}), Exit::CannotWrite, "journal");
}

TEST_F(ExchangeVerbs, TheFactsOfAChangedFileGoIntoANewOne) {
    ASSERT_EQ(say({"log", file_, "--wash", "hand", "--on", "2026-05-02"}).exit, 0);
    const QString before = exported();
    sqlite3* other = nullptr;
    ASSERT_EQ(sqlite3_open(file_.toUtf8().constData(), &other), SQLITE_OK);
    ASSERT_EQ(sqlite3_exec(other, "CREATE TRIGGER evil AFTER INSERT ON wash BEGIN DELETE FROM machine; END",
                           nullptr, nullptr, nullptr),
              SQLITE_OK);
    sqlite3_close(other);
    const Said refused = say({"due", file_});
    expectRefusal(refused, Exit::CannotOpen, "trigger evil");
    EXPECT_TRUE(refused.err.contains("witnessmark import NEW.witnessmark " + file_ + " and"))
        << refused.err.toStdString();
    const QString clean = path("clean.witnessmark");
    const Said taken = say({"import", clean, file_});
    ASSERT_EQ(taken.exit, 0) << taken.err.toStdString();
    EXPECT_EQ(say({"export", clean}).out, before);
    EXPECT_EQ(say({"check", clean}).exit, 0);
}

// A letter of a stored text and a distance: the file still opens for SQLite, and says something else.
TEST_F(ExchangeVerbs, RowsThatSomethingElseChangedAreNamedAndCanBeTakenOver) {
    ASSERT_EQ(say({"log", file_, "--wash", "hand", "--on", "2026-05-02", "--note", "cold water"}).exit, 0);
    sqlite3* other = nullptr;
    ASSERT_EQ(sqlite3_open(file_.toUtf8().constData(), &other), SQLITE_OK);
    ASSERT_EQ(sqlite3_exec(other,
                           "DROP TRIGGER wash_is_never_changed; UPDATE wash SET note = 'bold water' WHERE "
                           "note = 'cold water';"
                           "CREATE TRIGGER wash_is_never_changed BEFORE UPDATE ON \"wash\" BEGIN SELECT "
                           "RAISE(ABORT, 'a fact is added or struck, never changed'); END;"
                           "UPDATE machine SET name = 'Heron 350'",
                           nullptr, nullptr, nullptr),
              SQLITE_OK);
    sqlite3_close(other);
    for (const QStringList& verb : {QStringList{"due", file_}, QStringList{"export", file_},
                                    QStringList{"log", file_, "--wash", "hand"}}) {
        const Said refused = say(verb);
        expectRefusal(refused, Exit::CannotOpen, "is not as it was written");
        EXPECT_TRUE(refused.err.contains("table machine, row ")) << refused.err.toStdString();
        EXPECT_TRUE(refused.err.contains("backups")) << refused.err.toStdString();
        EXPECT_TRUE(refused.err.contains("witnessmark import NEW.witnessmark")) << refused.err.toStdString();
    }
    const Said checked = say({"check", file_});
    EXPECT_EQ(checked.exit, static_cast<int>(Exit::CannotOpen));
    EXPECT_TRUE(checked.out.contains("table machine, row ")) << checked.out.toStdString();
    EXPECT_TRUE(checked.out.contains("table wash, row ")) << checked.out.toStdString();
    const Said listed = say({"check", file_, "--json"});
    expectKeepsTo("check", listed.json());
    EXPECT_EQ(listed.json().at("sound"), false);
    EXPECT_EQ(listed.json().at("findings").size(), 2U) << listed.out.toStdString();
    const QString clean = path("clean.witnessmark");
    const Said taken = say({"import", clean, file_});
    ASSERT_EQ(taken.exit, 0) << taken.err.toStdString();
    EXPECT_TRUE(taken.out.contains("table machine, row ")) << taken.out.toStdString();
    EXPECT_TRUE(taken.out.contains("table wash, row ")) << taken.out.toStdString();
    EXPECT_EQ(say({"check", clean}).exit, 0);
    EXPECT_TRUE(say({"export", clean}).out.contains("bold water"));
    const Said asJson = say({"import", path("again.witnessmark"), file_, "--json"});
    expectKeepsTo("import", asJson.json());
    EXPECT_EQ(asJson.json().at("altered").size(), 2U);
}

TEST_F(ExchangeVerbs, ANameThatIsNoUtf8IsToldApart) {
    const QString odd = path(QString::fromUtf8("gar\xE4ge.witnessmark"));
    expectRefusal(say({"due", odd}), Exit::CannotOpen, "no UTF-8 text");
    expectRefusal(say({"import", path("copy.witnessmark"), odd}), Exit::CannotOpen, "no UTF-8 text");
    expectRefusal(say({odd}), Exit::CannotOpen, "no UTF-8 text");
}

TEST_F(ExchangeVerbs, CheckFindsASoundFileSound) {
    const Said said = say({"check", file_, "--json"});
    EXPECT_EQ(said.exit, 0) << said.err.toStdString();
    expectKeepsTo("check", said.json());
    EXPECT_EQ(said.json().at("sound"), true);
    EXPECT_TRUE(say({"check", file_}).out.startsWith("The file is sound: "));
}

// Figures that no verb would take: the file is the user's, so they come in, and are named.
TEST_F(ExchangeVerbs, ReadingsThatNoVerbWouldTakeAreNamed) {
    ASSERT_EQ(say({"log", file_, "--reading", "32", "--on", "2026-05-01"}).exit, 0);
    ASSERT_EQ(say({"log", file_, "--reading", "33", "--on", "2026-05-06"}).exit, 0);
    ASSERT_EQ(say({"log", file_, "--reading", "34"}).exit, 0);
    nlohmann::json whole = nlohmann::json::parse(exported().toStdString());
    for (auto& reading : whole["hour_reading"])
        if (reading["date"] == "2026-05-06")
            reading["shown"] = 701'200;
    write("odd.json", QByteArray::fromStdString(whole.dump()));
    const QString odd = path("odd.witnessmark");
    const Said said = say({"import", odd, path("odd.json")});
    ASSERT_EQ(said.exit, 0) << said.err.toStdString();
    const std::array<const char*, 2> lines{
        "Heron 250, Wed 6 May: the meter went from 32.0 to 7012.0, more than the days between can hold.",
        "Heron 250, Thu 7 May: the meter went from 7012.0 back to 34.0, and nobody said why."};
    for (const char* line : lines)
        EXPECT_TRUE(said.out.contains(QString(line) + '\n')) << said.out.toStdString();
    const Said checked = say({"check", odd, "--json"});
    EXPECT_EQ(checked.exit, 0);
    expectKeepsTo("check", checked.json());
    EXPECT_EQ(checked.json().at("sound"), true);
    EXPECT_EQ(checked.json().at("odd"), (nlohmann::json{lines[0], lines[1]}));
    const Said again = say({"import", path("again.witnessmark"), path("odd.json"), "--json"});
    expectKeepsTo("import", again.json());
    EXPECT_EQ(again.json().at("odd").size(), 2U);
    EXPECT_FALSE(say({"check", file_, "--json"}).json().contains("odd"));
    const Said why = say({"due", odd, "--why", "engine-oil"});
    for (const char* line : {"Fri 1 May to Wed 6 May: the meter went from 32.0 h to 7012.0 h: more than the "
                             "days between can hold\n",
                             "Wed 6 May to Thu 7 May: not metered, as the meter went from 7012.0 h to 34.0 h "
                             "and nobody said why: "
                             "what was noted stands\n"})
        EXPECT_TRUE(why.out.contains(line)) << why.out.toStdString();
    expectKeepsTo("due_why", say({"due", odd, "--why", "engine-oil", "--json"}).json());
}

TEST_F(ExchangeVerbs, CheckNamesAnItemWhereItsKindDoesNotGo) {
    nlohmann::json whole = nlohmann::json::parse(bytes("whole.json").toStdString());
    whole["item"].push_back({{"id", 77},
                             {"name", "Spare"},
                             {"kind", "front wheel"},
                             {"maker", ""},
                             {"part_number", ""},
                             {"since", "2026-03-01"},
                             {"started_new", true},
                             {"past_low", 0},
                             {"past_best", 0},
                             {"past_high", 0},
                             {"note", ""}});
    whole["move"].push_back({{"id", 78},
                             {"entered", 1'000},
                             {"item", 77},
                             {"date", "2026-05-02"},
                             {"part", "after riding"},
                             {"kind", "fitted"},
                             {"machine", whole["machine"][0]["id"]},
                             {"parent", nullptr},
                             {"position", "rear wheel"},
                             {"note", ""},
                             {"told", "as it was"},
                             {"back_on", nullptr},
                             {"record", nullptr}});
    write("odd.json", QByteArray::fromStdString(whole.dump()));
    ASSERT_EQ(say({"import", path("odd.witnessmark"), path("odd.json")}).exit, 0);
    const Said checked = say({"check", path("odd.witnessmark")});
    EXPECT_EQ(checked.exit, 0);
    EXPECT_TRUE(
        checked.out.contains("Heron 250, rear wheel, Sat 2 May: Spare (front wheel) does not go there.\n"))
        << checked.out.toStdString();
}

TEST_F(ExchangeVerbs, CheckNeverCallsADamagedFileSound) {
    const QByteArray whole = bytes("garage.witnessmark");
    for (const qsizetype page : {2, 5, 9}) {
        QByteArray damaged = whole;
        damaged.replace(page * 4096, 2048, QByteArray(2048, '\x5A'));
        write("damaged.witnessmark", damaged);
        const Said said = say({"check", path("damaged.witnessmark")});
        EXPECT_TRUE(said.exit == static_cast<int>(Exit::Found) ||
                    said.exit == static_cast<int>(Exit::CannotOpen))
            << said.exit << said.out.toStdString();
        EXPECT_EQ(said.err.count('\n'), 1) << said.err.toStdString();
    }
}

// As the shell gives it: Qt itself would lose the bytes.
TEST_F(ExchangeVerbs, AFileWhoseNameIsNoUtf8IsOpened) {
    namespace fs = std::filesystem;
    const fs::path odd = store::onDisk(folder_.path()) / "gar\xE4ge\xFF.witnessmark";
    fs::copy_file(store::onDisk(file_), odd);
    const auto run = [&](const std::string& words) {
        const std::string line =
            std::string(WM_PROGRAM) + ' ' + words + " > '" + path("out").toStdString() + "' 2>&1";
        const int ended = std::system(line.c_str());  // NOLINT: a shell is what this is about
        return std::pair(WEXITSTATUS(ended), QString::fromUtf8(bytes("out")));
    };
    const std::string name = "'" + odd.native() + "'";
    for (const std::string& words :
         {"due " + name, "check " + name, "log " + name + " --wash hand --machine 'Heron 250'",
          "export " + name, "import '" + path("taken.witnessmark").toStdString() + "' " + name}) {
        const auto [exit, out] = run(words);
        EXPECT_EQ(exit, 0) << words << '\n' << out.toStdString();
        EXPECT_FALSE(out.contains("without a backup")) << out.toStdString();
    }
    EXPECT_EQ(run("due '" + odd.native() + ".none'").first, static_cast<int>(app::Exit::CannotOpen));
    EXPECT_EQ(run("log " + name + " --wash hand --note '\xFF'").first, static_cast<int>(app::Exit::Refused));
    for (const auto& entry : fs::directory_iterator(odd.parent_path()))
        fs::remove_all(entry.path());  // which Qt can't do
}

}  // namespace
}  // namespace wm::test

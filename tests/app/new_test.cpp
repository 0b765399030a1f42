// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <sqlite3.h>

#include <QFile>
#include <QFileInfo>
#include <set>
#include <string>

#include "tests/app/shell.h"

namespace wm::test {
namespace {

using app::Exit;

class NewVerb : public GarageTest {
  protected:
    QString other_ = "other.witnessmark";
};

class LongNewVerb : public NewVerb {};  // says a whole season

TEST_F(NewVerb, MakesAnEmptyFile) {
    const Said said = say({"new", path(other_)});
    EXPECT_EQ(said.exit, 0) << said.err.toStdString();
    EXPECT_EQ(say({"due", path(other_)}).out, "There is no machine in this file.\n");
    EXPECT_EQ(say({"due", path(other_), "--json"}).json(), nlohmann::json::array());
}

TEST_F(NewVerb, BringsTheStarterWithNothingConfirmed) {
    const nlohmann::json lines = say({"due", file_, "--json"}).json();
    ASSERT_GE(lines.size(), 40U);
    for (const auto& line : lines)
        EXPECT_EQ(line.at("confirmed"), false);
}

TEST_F(NewVerb, TakesTheStarterByTheNameOfItsFile) {
    const Said said = say({"new", path(other_), "--starter", "two-stroke-motocross"});
    EXPECT_EQ(said.exit, 0) << said.err.toStdString();
    EXPECT_TRUE(said.out.contains("two-stroke motocross")) << said.out.toStdString();
}

// Each opens with its list: nothing behind a new machine is unknown, nothing of it is confirmed.
TEST_F(NewVerb, OpensWithTheListOfEachStarter) {
    const Said help = say({"new", "--help"});
    for (const char* starter :
         {"four-stroke enduro", "four-stroke motocross", "small-wheel youth", "two-stroke motocross"}) {
        EXPECT_TRUE(help.out.simplified().contains(starter)) << starter;
        const QString file = path(QString(starter).replace(' ', '-') + ".witnessmark");
        const Said said = say({"new", file, "--starter", starter, "--started-new"});
        ASSERT_EQ(said.exit, 0) << said.err.toStdString();
        const nlohmann::json lines = say({"due", file, "--json"}).json();
        expectKeepsTo("due", lines);
        EXPECT_GE(lines.size(), 60U) << starter;
        for (const auto& line : lines) {
            EXPECT_EQ(line.at("confirmed"), false) << starter;
            EXPECT_NE(line.at("standing"), "overdue") << starter << line.at("code");
        }
    }
}

// A file whose making was killed: nothing in it, or pages that its journal takes back to nothing.
TEST_F(NewVerb, MakesAnewWhatWasNeverFinished) {
    write("empty.witnessmark", "");
    expectRefusal(say({"due", path("empty.witnessmark")}), Exit::CannotOpen, "was begun under that name");
    EXPECT_EQ(say({"new", path("empty.witnessmark")}).exit, 0);
    sqlite3* begun = nullptr;
    ASSERT_EQ(sqlite3_open(path("begun").toUtf8().constData(), &begun), SQLITE_OK);
    ASSERT_EQ(
        sqlite3_exec(begun,
                     "PRAGMA cache_size = 1; BEGIN; CREATE TABLE t (x); WITH n(i) AS (SELECT 1 UNION ALL "
                     "SELECT i + 1 FROM n WHERE i < 500) INSERT INTO t SELECT randomblob(900) FROM n",
                     nullptr, nullptr, nullptr),
        SQLITE_OK);
    const QString half = path("half.witnessmark");
    ASSERT_TRUE(QFile::copy(path("begun"), half) && QFile::copy(path("begun-journal"), half + "-journal"));
    sqlite3_close(begun);
    ASSERT_GT(QFileInfo(half).size(), 0);
    const Said made = say({"new", half});
    EXPECT_EQ(made.exit, 0) << made.err.toStdString();
    EXPECT_EQ(say({"check", half}).exit, 0);
}

TEST_F(NewVerb, NeverWritesOverAFile) {
    const QByteArray before = bytes("garage.witnessmark");
    expectRefusal(say({"new", file_}), Exit::CannotWrite, "is there already");
    EXPECT_EQ(bytes("garage.witnessmark"), before);
    expectRefusal(say({"new", folder_.path()}), Exit::CannotWrite, "is there already");
}

TEST_F(NewVerb, NeedsItsFolder) {
    expectRefusal(say({"new", path("nowhere/x.witnessmark")}), Exit::CannotWrite, "folder");
}

TEST_F(NewVerb, LeavesNothingBehindWhenItRefuses) {
    expectRefusal(say({"new", path(other_), "--starter", "hovercraft"}), Exit::Refused, "“hovercraft”");
    expectRefusal(say({"new", path(other_), "--machine", "M", "--since", "2026-02-30"}), Exit::Refused,
                  "“2026-02-30”");
    expectRefusal(say({"new", path(other_), "--machine", "M", "--since", "2027-01-01"}), Exit::Refused,
                  "future");
    expectRefusal(say({"new", path(other_), "--machine", "  "}), Exit::Refused, "name");
    expectRefusal(say({"new", path(other_), "--machine", QString(1000, 'x')}), Exit::Refused, "too long");
    expectRefusal(say({"new", path(other_), "--machine", "M", "--past", "nan"}), Exit::Refused, "“nan”");
    expectRefusal(say({"new", path(other_), "--machine", "M", "--past", "-3"}), Exit::Refused, "below zero");
    EXPECT_FALSE(QFile::exists(path(other_)));
    EXPECT_FALSE(QFile::exists(path(other_) + "-journal"));
}

TEST_F(LongNewVerb, MakesTheDemoGarageOnItsOwnDay) {
    const Said said = say({"new", path(other_), "--demo"});
    ASSERT_EQ(said.exit, 0) << said.err.toStdString();
    const nlohmann::json lines = say({"due", path(other_), "--json"}).json();
    expectKeepsTo("due", lines);
    std::set<std::string> machines;
    std::set<std::string> standings;
    for (const auto& line : lines) {
        machines.insert(line.at("machine"));
        standings.insert(line.at("standing"));
    }
    EXPECT_EQ(machines.size(), 4U);
    EXPECT_GE(standings.size(), 3U);
    EXPECT_EQ(say({"sheet", path(other_), "--machine", "Heron 250", "--pdf", path("demo.pdf")}).exit, 0);
    EXPECT_EQ(say({"check", path(other_)}).exit, 0);
}

TEST_F(NewVerb, TheDemoTakesNothingBesides) {
    expectRefusal(say({"new", path(other_), "--demo", "--machine", "M"}), Exit::Usage, "--machine");
    EXPECT_FALSE(QFile::exists(path(other_)));
    EXPECT_FALSE(QFile::exists(path(other_) + "-journal"));
}

TEST_F(NewVerb, KeepsQuotesAndMarkupAsTheyAre) {
    const QString name = "<b>Heron</b> \"250\" & 'co' %1";
    ASSERT_EQ(say({"new", path(other_), "--machine", name}).exit, 0);
    const Said said = say({"export", path(other_)});
    EXPECT_EQ(said.json().at("machine").at(0).at("name"), name.toStdString());
}

}  // namespace
}  // namespace wm::test

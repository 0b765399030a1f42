// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// Text that is none: in the file, on the command line, in what is read. And what a terminal gets to see.
#include <sys/stat.h>

#include <QFile>
#include <stdexcept>

#include "tests/app/shell.h"
#include "tests/core/base/hostile_texts.h"
#include "tests/store/sealing.h"

namespace wm::test {
namespace {

using app::Exit;

class HostileText : public GarageTest {
  protected:
    void damage(const char* sql) const { store::sample::executeSealed(file_, sql); }
};

TEST_F(HostileText, CheckListsWhereSomethingHarmlessIsRead) {
    EXPECT_FALSE(say({"check", file_}).out.contains("harmless"));
    EXPECT_FALSE(say({"check", file_, "--json"}).json().contains("replaced"));
    damage("UPDATE machine SET name = name || char(27) || '[31m'");
    const Said said = say({"check", file_});
    EXPECT_EQ(said.exit, 0) << said.err.toStdString();
    EXPECT_TRUE(said.out.contains("The file is sound: ")) << said.out.toStdString();
    EXPECT_TRUE(said.out.contains("something harmless is read")) << said.out.toStdString();
    EXPECT_TRUE(said.out.contains(", column name\n")) << said.out.toStdString();
    const Said listed = say({"check", file_, "--json"});
    expectKeepsTo("check", listed.json());
    EXPECT_EQ(listed.json().at("sound"), true);
    EXPECT_EQ(listed.json().at("replaced").size(), 1U) << listed.out.toStdString();
}

TEST_F(HostileText, BytesThatAreNoTextAreNamedAndNothingAborts) {
    damage("UPDATE machine SET name = CAST(X'486572FF6F6E' AS TEXT)");
    for (const QStringList& verb : {QStringList{"due", file_, "--json"}, QStringList{"plan", file_, "--json"},
                                    QStringList{"export", file_}, QStringList{"check", file_}}) {
        const Said said = runProgram(verb);
        expectRefusal(said, Exit::CannotOpen, "is damaged: table machine, row ");
        EXPECT_TRUE(said.err.contains("column name holds bytes that are no text")) << said.err.toStdString();
        EXPECT_TRUE(said.err.contains("go back to one of its backups")) << said.err.toStdString();
    }
}

TEST_F(HostileText, WhatNobodyForesawEndsInWords) {
    QString nowhere;
    QTextStream stream(&nowhere);
    app::Console console{stream, stream, [] { return calendar::Date{}; }};
    const auto broken = [](const app::Console& its) {
        return app::guarded(its, []() -> app::Answer<void> { throw std::runtime_error("out of\npaint"); });
    };
    const auto before = broken(console);
    ASSERT_FALSE(before);
    EXPECT_EQ(before.error().exit, Exit::Unforeseen);
    EXPECT_TRUE(before.error().words.contains("“out of paint”"));
    EXPECT_TRUE(before.error().words.contains("nothing of what you asked for just now was written"));
    console.wrote = true;
    EXPECT_TRUE(broken(console).error().words.contains("is in the file"));
    EXPECT_FALSE(app::guarded(console, []() -> app::Answer<void> { throw 3; }));
    EXPECT_TRUE(app::guarded(console, []() -> app::Answer<void> { return {}; }));
}

TEST_F(HostileText, NoOptionBringsItIn) {
    for (const std::string& text : kHostileTexts) {
        const QString given = QString::fromStdString(text);
        for (const QStringList& verb :
             {QStringList{"log", file_, "--wash", "hand", "--note", given},
              QStringList{"log", file_, "--snag", given}, QStringList{"log", file_, "--person", given},
              QStringList{"record", file_, "--task", "chain-kit", "--note", given},
              QStringList{"new", path("other.witnessmark"), "--machine", given}}) {
            const Said said = say(verb);
            EXPECT_FALSE(disturbs(said.err.toStdString())) << said.err.toStdString();
            EXPECT_FALSE(disturbs(said.out.toStdString())) << said.out.toStdString();
            QFile::remove(path("other.witnessmark"));
        }
    }
    write("whole.json", exported().toUtf8());
    EXPECT_FALSE(disturbs(exported().toStdString()));
    const Said back = say({"import", path("back.witnessmark"), path("whole.json")});
    EXPECT_EQ(back.exit, 0) << back.err.toStdString();
}

TEST_F(HostileText, ATabInANotebookComesBackFromTheExport) {
    write("tab.csv",
          "date;machine;hours;rider\n07.03.2026;Heron 250;1,0;\"An\tna\"\n08.03.2026;Heron 250;1,0;x\n");
    ASSERT_EQ(say({"import", file_, path("tab.csv"), "--accept", "cured"}).exit, 0);
    EXPECT_TRUE(exported().contains("\"An na\""));
    write("whole.json", exported().toUtf8());
    const Said back = say({"import", path("back.witnessmark"), path("whole.json")});
    EXPECT_EQ(back.exit, 0) << back.err.toStdString();
}

// An old file, a path: whatever they hold, a terminal is not told to do anything.
TEST_F(HostileText, NothingThatDisturbsReachesATerminal) {
    damage("UPDATE machine SET name = 'He' || char(27) || '[31mron' || char(155) || '2J' || char(8238)");
    for (const QStringList& verb :
         {QStringList{"due", file_}, QStringList{"due", file_, "--json"}, QStringList{"export", file_}}) {
        const Said said = runProgram(verb);
        EXPECT_EQ(said.exit, 0) << said.err.toStdString();
        EXPECT_FALSE(disturbs(said.out.toStdString())) << said.out.toStdString();
    }
    const QString path = this->path(QString("a\x1B[1m") + QChar(0x202E) + ".witnessmark");
    const Said made = runProgram({"new", path, "--verbose"});
    EXPECT_EQ(made.exit, 0) << made.err.toStdString();
    EXPECT_FALSE(disturbs(made.out.toStdString())) << made.out.toStdString();
    EXPECT_FALSE(disturbs(runProgram({"check", this->path("b\x1B[1m"), "--verbose"}).err.toStdString()));
}

TEST_F(HostileText, InputThatNeverEndsIsRefused) {
    const QString pipe = path("pipe");
    ASSERT_EQ(mkfifo(pipe.toUtf8().constData(), 0600), 0);
    for (const QString& endless : {pipe, QStringLiteral("/dev/zero")}) {
        expectRefusal(say({"import", path("new.witnessmark"), endless}), Exit::CannotOpen,
                      "a pipe or a device");
        expectRefusal(say({"import", file_, endless, "--accept", "cured"}), Exit::CannotOpen,
                      "a pipe or a device");
    }
    EXPECT_FALSE(QFile::exists(path("new.witnessmark")));
}

TEST_F(HostileText, ANotebookThatIsNoneIsRefusedByItsSize) {
    const auto refuse = [this](const QByteArray& text, const QString& words) {
        write("large.csv", text);
        expectRefusal(say({"import", file_, path("large.csv")}), Exit::Refused, words);
    };
    refuse(QByteArray(20'000'000, ',') + "x\n", "larger than a notebook can be (16 MB)");
    refuse(QByteArray(2'000'000, ',') + "x\n", "more than 1000 cells on line 1");
    refuse(QByteArray("date;hours\n") + QByteArray("1;2\n").repeated(100'001), "more than 100000 lines");
    refuse((QByteArray(700, ';') + "x\n").repeated(3'000), "more than 2000000 cells");
}

TEST_F(HostileText, WhatStandsTwiceIsSaidWithItsPlace) {
    ASSERT_EQ(say({"log", file_, "--wash", "hand"}).exit, 0);
    ASSERT_EQ(say({"log", file_, "--wash", "pressure", "--on", "2026-05-02"}).exit, 0);
    const QByteArray whole = exported().toUtf8();
    const auto refuse = [this](const QByteArray& text, const QString& words) {
        write("twice.json", text);
        const Said said = say({"import", path("new.witnessmark"), path("twice.json")});
        expectRefusal(said, Exit::Refused, words);
        EXPECT_TRUE(said.err.contains("stands there twice: take one of the two out"))
            << said.err.toStdString();
    };
    refuse(QByteArray(whole).replace("{\n  \"format\": 7,", "{\n  \"format\": 7,\n  \"format\": 7,"),
           "The text on line 3 “format”");
    nlohmann::json twice = nlohmann::json::parse(whole.toStdString());
    twice["wash"][1]["entered"] = twice["wash"][0]["entered"];
    refuse(QByteArray::fromStdString(twice.dump()), "(“entered”) at wash[1].entered");
    twice["wash"][1]["id"] = twice["wash"][0]["id"];
    refuse(QByteArray::fromStdString(twice.dump()), "at wash[1].id");
}

TEST_F(HostileText, ASheetWithoutPicksSaysWhatIsMissing) {
    expectRefusal(say({"sheet", file_, "--pdf", path("s.pdf")}), Exit::Refused,
                  "No job is picked for “Heron 250”, so its sheet would be blank: pick one with witnessmark "
                  "plan FILE --pick TASK.");
}

class UndoVerb : public GarageTest {};

TEST_F(UndoVerb, SaysFirstAndTakesBackWhenAccepted) {
    ASSERT_EQ(say({"log", file_, "--wash", "hand"}).exit, 0);
    const QString before = exported();  // an export ends undo
    expectRefusal(say({"undo", file_, "--accept"}), Exit::Refused, "nothing to take back");
    ASSERT_EQ(say({"log", file_, "--wash", "pressure", "--on", "2026-05-02"}).exit, 0);
    const Said shown = say({"undo", file_});
    EXPECT_EQ(shown.exit, 0) << shown.err.toStdString();
    EXPECT_TRUE(shown.out.startsWith("Would take back: ")) << shown.out.toStdString();
    EXPECT_TRUE(shown.out.contains("Nothing was written")) << shown.out.toStdString();
    const Said taken = say({"undo", file_, "--accept"});
    EXPECT_EQ(taken.exit, 0) << taken.err.toStdString();
    EXPECT_TRUE(taken.out.startsWith("Taken back: ")) << taken.out.toStdString();
    EXPECT_TRUE(say({"redo", file_}).out.startsWith("Would say again: "));
    EXPECT_EQ(say({"redo", file_, "--accept"}).exit, 0);
    EXPECT_EQ(say({"undo", file_, "--accept"}).exit, 0);
    EXPECT_EQ(exported(), before);
    expectRefusal(say({"redo", file_}), Exit::Refused, "nothing to say again");
}

TEST_F(UndoVerb, EmptiesNoGarage) {
    ASSERT_EQ(say({"log", file_, "--wash", "hand"}).exit, 0);
    while (say({"undo", file_, "--accept"}).exit == 0) {
    }
    const Said last = say({"undo", file_, "--accept"});
    EXPECT_EQ(last.exit, static_cast<int>(Exit::Refused));
    EXPECT_TRUE(exported().contains("Heron 250"));
}

TEST_F(UndoVerb, AWholeFileIsNotTakenBack) {
    write("whole.json", exported().toUtf8());
    const QString copy = path("copy.witnessmark");
    ASSERT_EQ(say({"import", copy, path("whole.json")}).exit, 0);
    expectRefusal(say({"undo", copy, "--accept"}), Exit::Refused, "nothing to take back");
    EXPECT_EQ(say({"export", copy}).out, exported());
}

}  // namespace
}  // namespace wm::test

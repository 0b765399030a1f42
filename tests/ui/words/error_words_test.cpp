// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/error_words.h"

#include <gtest/gtest.h>

#include <set>

#include "core/base/names.h"
#include "core/calendar/date.h"
#include "core/units/quantity.h"
#include "ui/words/apply_words.h"
#include "ui/words/field_words.h"

namespace wm::ui {
namespace {

using base::Error;
using base::Fault;

std::vector<Fault> allFaults() {
    std::vector<Fault> faults;
    for (std::size_t i = 0; i < base::kFaults; ++i)
        faults.push_back(static_cast<Fault>(i));
    return faults;
}

TEST(ErrorWords, EveryFaultHasItsOwnSentence) {
    std::set<QString> sentences;
    for (const Fault fault : allFaults()) {
        const QString sentence = wordsFor(Error{fault, "hours", "1.3x", ""});
        EXPECT_TRUE(sentences.insert(sentence).second) << sentence.toStdString();
        EXPECT_TRUE(sentence.startsWith("The number of hours “1.3x”")) << sentence.toStdString();
        EXPECT_TRUE(sentence.contains(": ")) << "says what to do: " << sentence.toStdString();
        EXPECT_TRUE(sentence.endsWith('.'));
        EXPECT_FALSE(sentence.contains('%')) << sentence.toStdString();
        EXPECT_FALSE(sentence.contains('\n'));
    }
    EXPECT_EQ(sentences.size(), allFaults().size());
}

TEST(ErrorWords, WhatWouldHaveBeenRightStandsInEverySentence) {
    for (const Fault fault : allFaults()) {
        const QString sentence = wordsFor(Error{fault, "hours", "1.3x", "the right thing"});
        EXPECT_TRUE(sentence.contains("the right thing")) << sentence.toStdString();
        EXPECT_TRUE(sentence.contains("1.3x")) << sentence.toStdString();
        EXPECT_FALSE(sentence.contains('%')) << sentence.toStdString();
    }
}

TEST(ErrorWords, WhatWaitsForItselfIsNamedActByAct) {
    EXPECT_EQ(
        wordsFor(Error{Fault::Cycle, "edges", "torque Rear axle nut → off Stand → torque Rear axle nut", ""}),
        "These acts wait for each other, so none of them can be first: torque “Rear axle nut” → off "
        "“Stand” → torque “Rear axle nut”. Take one of these orders out.");
    EXPECT_EQ(wordsFor(Error{Fault::Cycle, "edges", "on seat, break loose tank, on seat", ""}),
              "These acts wait for each other, so none of them can be first: on “seat” → crack loose for "
              "“tank” → on “seat”. Take one of these orders out.")
        << "as a schedule names them, by code";
    EXPECT_EQ(wordsFor(Error{Fault::Cycle, "later_code", "rear-axle-nut", ""}),
              "An act can't come before itself (“rear-axle-nut”): choose another one.");
    EXPECT_EQ(wordsFor(Error{Fault::Cycle, "needs", "Seat off → Tank off → Seat off", ""}),
              "These access steps need each other, so none of them can come off first: “Seat off” → “Tank "
              "off” → “Seat off”. Take one of these needs out.");
    EXPECT_EQ(wordsFor(Error{Fault::Inconsistent, "active", "Fork oil", ""}),
              "It can't be switched off, “Fork oil” still needs it: take it out there first.");
    EXPECT_EQ(wordsFor(Error{Fault::Inconsistent, "doings", "Pump the brake", "Rear wheel out"}),
              "The doing “Pump the brake” can't go, the order of “Rear wheel out” still speaks of it: change "
              "that one first.");
}

TEST(ErrorWords, ReadLikeThis) {
    EXPECT_EQ(wordsFor(Error{Fault::NotADate, "date", "2026-02-30", "2026-05-16"}),
              "The date “2026-02-30” is not a day of the calendar: enter it like 2026-05-16.");
    EXPECT_EQ(wordsFor(Error{Fault::InFuture, "date", "2026-06-01", "2026-05-07"}),
              "The date “2026-06-01” lies in the future: enter 2026-05-07 or an earlier day.");
    EXPECT_EQ(
        wordsFor(Error{Fault::NewerFormat, "format", "7", "1"}),
        "The format “7” is that of a newer Witnessmark: read it with that newer program; this one reads "
        "up to format 1.");
    EXPECT_EQ(
        wordsFor(Error{Fault::Malformed, "outing[3].hours", "1.3", "whole number"}),
        "The number of hours at outing[3].hours “1.3” can't be read: what is wanted there is: whole number.");
    EXPECT_EQ(wordsFor(Error{Fault::Malformed, "outing[3].hours", "", "this key"}),
              "The number of hours at outing[3].hours is missing: add it, or export the file once more.");
    EXPECT_EQ(wordsFor(Error{Fault::Malformed, "line 12", "end of text", ""}),
              "The text on line 12 “end of text” can't be read: put it right and try again.");
    EXPECT_EQ(wordsFor(Error{Fault::Empty, "by_person", "", ""}), "The person is blank: fill it in.");
    EXPECT_EQ(wordsFor(Error{Fault::Empty, "hours", "", "12.5, or ? if nobody noted them"}),
              "The number of hours is blank: enter 12.5, or ? if nobody noted them.");
    EXPECT_EQ(wordsFor(Error{Fault::NotADate, "until", "d", "2026-05-16"}),
              "The day to put it off until “d” is not a day of the calendar: enter it like 2026-05-16.");
    EXPECT_EQ(wordsFor(units::parseCount("starts", "1.5", 9).error()),
              "The number of starts “1.5” can't be read: what is wanted there is: a whole number.");
    EXPECT_EQ(wordsFor(calendar::parseDate("date", "9999-12-31").error()),
              "The date “9999-12-31” can't be read: what is wanted there is: a day from 1900 to 2199.");
}

TEST(ErrorWords, UserTextStaysText) {
    const QString sentence = wordsFor(Error{Fault::Duplicate, "name", "<b>Heron</b> %1 %2 &amp;", ""});
    EXPECT_TRUE(sentence.contains("“<b>Heron</b> %1 %2 &amp;”")) << sentence.toStdString();
}

TEST(ErrorWords, UserTextCanNotDisturbTheSentence) {
    EXPECT_EQ(quoted("a\nb\tc"), "“a b c”");
    EXPECT_EQ(quoted(QString(QChar(0x202E)) + "abc"), QString("“") + QChar(0xFFFD) + "abc”");
    EXPECT_EQ(quoted(QString(500, 'x')).size(), 63);
    const QString wrench = QString::fromUcs4(U"\U0001F527", 1);
    EXPECT_TRUE(quoted(QString(59, 'x') + wrench).isValidUtf16());
    EXPECT_TRUE(quoted(QString(59, 'x') + wrench + "y").isValidUtf16());
}

TEST(ErrorWords, AnIdIsNotShown) {
    EXPECT_EQ(wordsFor(Error{Fault::Unknown, "machine", "4611686018427387904", ""}),
              "The machine is not known here: choose one that is there, or add it first.");
}

TEST(ErrorWords, FieldsAreCalledAsTheMechanicCallsThem) {
    EXPECT_EQ(fieldWords("first_day"), "first day");
    EXPECT_EQ(fieldWords("shown"), "meter reading");
    EXPECT_EQ(fieldWords("tasks[3].limits[0].every"), "interval at tasks[3].limits[0].every");
    EXPECT_EQ(fieldWords("measures[2]"), "measures at measures[2]");
    EXPECT_EQ(fieldWords(""), "entry");
}

TEST(ApplyWords, EveryKindHasItsOwnWords) {
    using Kind = store::ApplyError::Kind;
    std::set<QString> sentences;
    for (int i = 0; i < static_cast<int>(base::enumerators<Kind>()); ++i) {
        const QString words =
            wordsFor(store::ApplyError{static_cast<Kind>(i), {Fault::Empty, "name", "", ""}, ""});
        EXPECT_TRUE(sentences.insert(words).second) << words.toStdString();
        EXPECT_TRUE(words.endsWith('.'));
    }
}

TEST(ApplyWords, ARefusalSpeaksOfTheField) {
    store::ApplyError error;
    error.error = Error{Fault::Negative, "hours", "-2", ""};
    EXPECT_EQ(wordsFor(error), "The number of hours “-2” is below zero: enter zero or more.");
}

// Where it was opened to be written, somebody put another file in its place; reading only is told apart.
TEST(ApplyWords, WhatIsReadOnlySaysWhatToDo) {
    store::ApplyError error;
    error.kind = store::ApplyError::Kind::ReadOnly;
    EXPECT_TRUE(wordsFor(error).contains("Copy it to where you may write")) << wordsFor(error).toStdString();
    error.detail = kMovedAway;
    EXPECT_TRUE(wordsFor(error).contains("was replaced or moved")) << wordsFor(error).toStdString();
    EXPECT_TRUE(wordsFor(error).contains("Open it again")) << wordsFor(error).toStdString();
}

TEST(BackupWords, EachTroubleSaysWhatAndWhere) {
    using Kind = store::BackupTrouble::Kind;
    std::set<QString> sentences;
    for (int i = 0; i <= static_cast<int>(Kind::Failed); ++i) {
        const QString words =
            wordsFor(store::BackupTrouble{static_cast<Kind>(i), "/x/ours.wmk.backups", "why"});
        EXPECT_TRUE(sentences.insert(words).second) << words.toStdString();
        EXPECT_TRUE(words.contains("ours.wmk.backups")) << words.toStdString();
        EXPECT_TRUE(words.endsWith('.'));
    }
}

TEST(OpenWords, EveryOutcomeHasItsOwnWords) {
    using Outcome = store::OpenOutcome;
    std::set<QString> sentences;
    for (int i = 0; i < static_cast<int>(base::enumerators<Outcome>()); ++i) {
        store::OpenReport report;
        report.outcome = static_cast<Outcome>(i);
        report.path = "/garage/our <i>team %2.wmk";
        report.detail = "0.9";
        report.backup = "/garage/our.v1.bak";
        const QString words = wordsFor(report);
        EXPECT_TRUE(sentences.insert(words).second) << words.toStdString();
        if (report.outcome == Outcome::Opened)
            continue;
        EXPECT_TRUE(words.contains("our <i>team %2.wmk")) << words.toStdString();
        EXPECT_TRUE(words.endsWith('.'));
    }
}

TEST(OpenWords, SayWhatStandsInThePlaceOfTheJournal) {
    std::set<QString> sentences;
    for (const char* detail : {"beside folder", "beside link", "beside device"}) {
        store::OpenReport report;
        report.outcome = store::OpenOutcome::NoAccess;
        report.path = "/garage/ours.wmk";
        report.detail = detail;
        report.beside = "ours.wmk-journal";
        const QString words = wordsFor(report);
        EXPECT_TRUE(words.contains("“ours.wmk-journal”")) << words.toStdString();
        EXPECT_FALSE(words.contains("that it is there")) << words.toStdString();
        EXPECT_TRUE(sentences.insert(words).second);
    }
}

TEST(OpenWords, SayThatAnInterruptedWriteWasTakenBack) {
    store::OpenReport report;
    report.path = "/garage/ours.wmk";
    report.tookBack = true;
    EXPECT_TRUE(wordsFor(report).contains("ours.wmk” was interrupted"));
    EXPECT_TRUE(wordsFor(report).contains("taken back"));
    report.outcome = store::OpenOutcome::Migrated;
    report.backup = "/garage/ours.v1.bak";
    EXPECT_TRUE(wordsFor(report).contains("taken back"));
    EXPECT_TRUE(wordsFor(report).contains("ours.v1.bak"));
}

TEST(OpenWords, TellTheVersionThatIsNeededAndWhereTheOldFileIs) {
    store::OpenReport report;
    report.path = "/garage/ours.wmk";
    report.outcome = store::OpenOutcome::NewerRefused;
    report.detail = "0.9";
    EXPECT_TRUE(wordsFor(report).contains("0.9"));
    report.detail.clear();
    EXPECT_FALSE(wordsFor(report).contains('(')) << wordsFor(report).toStdString();
    report.outcome = store::OpenOutcome::Migrated;
    report.backup = "/garage/ours.v1.bak";
    EXPECT_TRUE(wordsFor(report).contains("ours.v1.bak"));
}

}  // namespace
}  // namespace wm::ui

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <QDir>
#include <QFile>
#include <QFileInfo>

#include "tests/store/sample.h"

namespace wm::store {
namespace {

using sample::Folder;
using sample::wash;
using sample::washNotes;

class BackupTest : public testing::Test {
  protected:
    void SetUp() override {
        options_.now = [this] { return now_; };
        file_ = sample::fileWith(path_, sample::oneMachine(), options_);
    }
    void say(const std::string& note) { ASSERT_TRUE(file_->apply(wash(note), sample::kToday).has_value()); }
    void nextDay() { now_ = now_.addDays(1); }

    Folder folder_;
    QString path_ = folder_.path("garage.wm");
    QDateTime now_{QDate(2026, 5, 16), QTime(18, 30, 5)};
    Options options_;
    std::unique_ptr<File> file_;
};

TEST_F(BackupTest, AreTakenAtTheFirstChangeOfADay) {
    EXPECT_TRUE(file_->backups().empty()) << "an empty file needs no copy";
    say("one");
    say("two");
    ASSERT_EQ(file_->backups().size(), 1U);
    nextDay();
    EXPECT_EQ(file_->backups().size(), 1U);
    say("three");
    say("four");
    const auto backups = file_->backups();
    ASSERT_EQ(backups.size(), 2U);
    EXPECT_EQ(backups[0].takenAt, "2026-05-17T18:30:05");
    EXPECT_EQ(backups[0].revision, 3);
    EXPECT_EQ(backups[1].revision, 1);
    EXPECT_TRUE(QFileInfo(backups[0].path).absolutePath().endsWith("garage.wm.backups"));
    // Each is the file as it stood before that day's first change.
    EXPECT_EQ(washNotes(*sample::opened(backups[0].path)), (std::vector<std::string>{"one", "two"}));
    EXPECT_FALSE(file_->backupTrouble().has_value());
}

TEST_F(BackupTest, AreNotTakenTwiceByTwoWindows) {
    auto theirs = sample::opened(path_, options_);
    say("mine");
    ASSERT_TRUE(theirs->apply(wash("theirs"), sample::kToday).has_value());
    EXPECT_EQ(file_->backups().size(), 1U);
}

// Ten days with changes, and before them the last of each week: 17 May is the last day of its week.
TEST_F(BackupTest, KeepTheTenNewestAndBeforeThemOneAWeek) {
    for (int day = 0; day < 13; ++day) {
        say(std::to_string(day));
        nextDay();
    }
    const auto backups = file_->backups();
    ASSERT_EQ(backups.size(), 12U);
    EXPECT_EQ(backups.front().takenAt, "2026-05-28T18:30:05");
    EXPECT_EQ(backups[9].takenAt, "2026-05-19T18:30:05");
    EXPECT_EQ(backups[10].takenAt, "2026-05-18T18:30:05");
    EXPECT_EQ(backups[11].takenAt, "2026-05-17T18:30:05");
}

// A laptop that comes out of the van with another year on its clock, and is put right.
TEST_F(BackupTest, OutliveAWrongClock) {
    for (int week = 0; week < 10; ++week) {
        say(std::to_string(week));
        now_ = now_.addDays(7);
    }
    std::vector<QString> before;
    for (const Backup& backup : file_->backups())
        before.push_back(backup.path);
    ASSERT_EQ(before.size(), 10U);
    const QDateTime right = now_;
    now_ = right.addYears(1);
    say("a year ahead");
    now_ = right;
    for (int i = 0; i < 5; ++i)
        say("put right");
    for (const QString& path : before)
        EXPECT_TRUE(QFileInfo::exists(path)) << path.toStdString();
    const auto after = file_->backups();
    ASSERT_EQ(after.size(), 12U) << "one of the wrong day, one of the right one";
    EXPECT_EQ(after[0].takenAt, "2026-07-25T18:30:05") << "the newest is the one written last";
    EXPECT_EQ(after[1].takenAt, "2027-07-25T18:30:05");
}

TEST_F(BackupTest, AreNotWrittenWithEachChangeByAClockThatJumps) {
    const QDateTime right = now_;
    for (int i = 0; i < 12; ++i) {
        now_ = i % 2 == 0 ? right : right.addYears(1);
        say(std::to_string(i));
    }
    EXPECT_EQ(file_->backups().size(), 2U);
}

// With a dead battery every start is on the same day.
TEST_F(BackupTest, AreTakenThoughTheClockStandsStill) {
    for (int i = 0; i < 205; ++i)
        say(std::to_string(i));
    EXPECT_EQ(file_->backups().size(), 3U);
}

TEST_F(BackupTest, HaveTheRightsOfTheFile) {
    const auto own = QFileDevice::ReadOwner | QFileDevice::WriteOwner;
    const auto ours = own | QFileDevice::ReadGroup | QFileDevice::WriteGroup | QFileDevice::ReadOther |
                      QFileDevice::WriteOther;
    ASSERT_TRUE(QFile::setPermissions(path_, own));
    say("one");
    const Backup backup = file_->backups().at(0);
    EXPECT_EQ(QFile::permissions(backup.path) & ours, own);
    EXPECT_EQ(QFile::permissions(path_ + ".backups") & (ours | QFileDevice::ExeGroup | QFileDevice::ExeOther),
              own);
    const QString copy = folder_.path("restored.wm");
    ASSERT_TRUE(file_->restoreTo(backup, copy).has_value());
    EXPECT_EQ(QFile::permissions(copy) & ours, own);
    ASSERT_TRUE(QFile::setPermissions(path_, ours));
    nextDay();
    say("two");
    EXPECT_EQ(QFile::permissions(file_->backups().at(0).path) & ours, ours);
}

TEST_F(BackupTest, AreNotPutWhereALinkLeads) {
    const QString elsewhere = folder_.path("elsewhere");
    ASSERT_TRUE(QDir().mkpath(elsewhere));
    ASSERT_TRUE(QFile::link(elsewhere, path_ + ".backups"));
    say("one");
    EXPECT_TRUE(QDir(elsewhere).isEmpty());
    EXPECT_TRUE(file_->backups().empty());
    ASSERT_TRUE(file_->backupTrouble().has_value());
    EXPECT_EQ(washNotes(*sample::opened(path_)), std::vector<std::string>{"one"});
}

// What a program that was killed left unfinished, under the name of before too.
TEST_F(BackupTest, AreNotHinderedByWhatWasLeftUnfinished) {
    ASSERT_TRUE(QDir().mkpath(path_ + ".backups/unfinished"));
    say("one");
    EXPECT_EQ(file_->backups().size(), 1U);
    EXPECT_FALSE(file_->backupTrouble().has_value());
}

TEST_F(BackupTest, LeaveOtherFilesInTheFolderAlone) {
    say("one");
    QFile other(path_ + ".backups/notes.txt");
    ASSERT_TRUE(other.open(QIODevice::WriteOnly));
    other.write("keep me");
    other.close();
    for (int day = 0; day < 12; ++day) {
        nextDay();
        say(std::to_string(day));
    }
    EXPECT_TRUE(QFileInfo::exists(other.fileName()));
    EXPECT_EQ(file_->backups().size(), 12U);
}

TEST_F(BackupTest, SayWhatGoingBackWouldLose) {
    say("kept");
    nextDay();
    say("lost");  // the copy is taken before this one
    say("never there");
    ASSERT_TRUE(file_->undo().has_value());
    say("lost too");
    const auto preview = file_->preview(file_->backups().front());
    ASSERT_TRUE(preview.has_value());
    ASSERT_EQ(preview->lost.size(), 2U);
    EXPECT_EQ(preview->lost[0].text, "Wash: lost too");
    EXPECT_EQ(preview->lost[1].text, "Wash: lost");
    EXPECT_EQ(preview->lost[1].writtenAt, "2026-05-17T18:30:05");
    EXPECT_FALSE(preview->lost[1].comesBack);
    EXPECT_EQ(preview->rowsThen, 3);
    EXPECT_EQ(preview->rowsNow, 5);
}

TEST_F(BackupTest, SayWhatGoingBackWouldBringBack) {
    say("one");
    say("two");
    QFile::remove(file_->backups().front().path);
    say("three");  // copies once more, with "one" and "two"
    ASSERT_TRUE(file_->undo().has_value());
    ASSERT_TRUE(file_->undo().has_value());
    const auto preview = file_->preview(file_->backups().front());
    ASSERT_TRUE(preview.has_value());
    ASSERT_EQ(preview->lost.size(), 1U);
    EXPECT_EQ(preview->lost[0].text, "Wash: two");
    EXPECT_TRUE(preview->lost[0].comesBack);
}

TEST_F(BackupTest, AreRestoredToACopy) {
    say("one");
    nextDay();
    say("two");
    const QString copy = folder_.path("restored.wm");
    ASSERT_TRUE(file_->restoreTo(file_->backups().front(), copy).has_value());
    EXPECT_EQ(washNotes(*sample::opened(copy)), std::vector<std::string>{"one"});
    EXPECT_EQ(washNotes(*file_), (std::vector<std::string>{"one", "two"}));
    const auto again = file_->restoreTo(file_->backups().front(), path_);
    ASSERT_FALSE(again.has_value());
    EXPECT_EQ(again.error().error.fault, base::Fault::Duplicate);
    EXPECT_EQ(washNotes(*sample::opened(path_)).size(), 2U);
}

TEST_F(BackupTest, ThatAreDamagedAreNamedAndNotRestored) {
    say("one");
    const Backup backup = file_->backups().front();
    QFile damaged(backup.path);
    ASSERT_TRUE(damaged.open(QIODevice::ReadWrite));
    ASSERT_TRUE(damaged.resize(damaged.size() / 2));
    damaged.close();
    EXPECT_EQ(file_->preview(backup).error().kind, ApplyError::Kind::Corrupt);
    EXPECT_EQ(file_->restoreTo(backup, folder_.path("r.wm")).error().kind, ApplyError::Kind::Corrupt);
    EXPECT_FALSE(QFileInfo::exists(folder_.path("r.wm")));
    const Backup gone{folder_.path("gone.backup"), {}, 0};
    EXPECT_FALSE(file_->preview(gone).has_value());
    EXPECT_FALSE(file_->restoreTo(gone, folder_.path("r.wm")).has_value());
    EXPECT_FALSE(QFileInfo::exists(folder_.path("r.wm")));
}

TEST_F(BackupTest, CanFailWithoutKeepingAVerbFromBeingSaved) {
    QFile inTheWay(path_ + ".backups");
    ASSERT_TRUE(inTheWay.open(QIODevice::WriteOnly));
    inTheWay.close();
    say("saved");
    EXPECT_TRUE(file_->backupTrouble().has_value());
    EXPECT_EQ(washNotes(*sample::opened(path_)), std::vector<std::string>{"saved"});
}

}  // namespace
}  // namespace wm::store

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <functional>

#include "tests/store/faulty_vfs.h"
#include "tests/store/sample.h"

namespace wm::store {
namespace {

using sample::FaultyVfs;
using sample::Folder;
using sample::wash;
using sample::washNotes;
using Call = FaultyVfs::Call;
using Kind = ApplyError::Kind;

struct Fault {
    const char* name;
    Call call;
    int code;
    bool onwards;
    Kind kind;
};

const Fault kFaults[] = {
    {"ReadOnce", Call::Read, SQLITE_IOERR_READ, false, Kind::Failed},
    {"ReadEver", Call::Read, SQLITE_IOERR_READ, true, Kind::Failed},
    {"WriteOnce", Call::Write, SQLITE_IOERR_WRITE, false, Kind::Failed},
    {"WriteEver", Call::Write, SQLITE_IOERR_WRITE, true, Kind::Failed},
    {"FullOnce", Call::Write, SQLITE_FULL, false, Kind::NoSpace},
    {"FullEver", Call::Write, SQLITE_FULL, true, Kind::NoSpace},
    {"SyncOnce", Call::Sync, SQLITE_IOERR_FSYNC, false, Kind::Failed},
    {"SyncEver", Call::Sync, SQLITE_IOERR_FSYNC, true, Kind::Failed},
    {"TruncateOnce", Call::Truncate, SQLITE_IOERR_TRUNCATE, false, Kind::Failed},
    {"TruncateEver", Call::Truncate, SQLITE_IOERR_TRUNCATE, true, Kind::Failed},
    {"JournalOnce", Call::Open, SQLITE_CANTOPEN, false, Kind::ReadOnly},
    {"JournalEver", Call::Open, SQLITE_CANTOPEN, true, Kind::ReadOnly},
};

class FaultTest : public testing::TestWithParam<Fault> {
  protected:
    void SetUp() override {
        options_.vfs = vfs_.name();
        options_.dailyBackup = false;
        path_ = folder_.path("faulty.wm");
        auto file = sample::fileWith(path_, sample::oneMachine());
        ASSERT_TRUE(file->apply(wash("before"), sample::kToday).has_value());
    }
    void fail(int nth) { vfs_.fail(GetParam().call, nth, GetParam().code, GetParam().onwards); }

    // Does `act` on a freshly opened file with the 1st, 2nd ... call going wrong, until none does.
    // `act` answers the error, if there was one.
    void eachFault(const std::function<std::optional<Kind>(File&)>& act,
                   const std::vector<std::string>& unchanged, const std::vector<std::string>& done) {
        for (int nth = 1; nth < 500; ++nth) {
            const QString path = folder_.path(QStringLiteral("try%1.wm").arg(nth));
            ASSERT_TRUE(QFile::copy(path_, path));
            auto file = sample::opened(path, options_);
            fail(nth);
            const std::optional<Kind> error = act(*file);
            const bool met = vfs_.hasFailed();
            vfs_.failNothing();
            if (error) {
                EXPECT_TRUE(*error == GetParam().kind)
                    << "call " << nth << " gave " << static_cast<int>(*error);
                EXPECT_TRUE(met);
            }
            // A disc that syncs no more after the point of no return leaves the verb standing, and shows it.
            const bool stands =
                error && GetParam().call == Call::Sync && GetParam().onwards && washNotes(*file) == done;
            expectWhole(*file, path, error && !stands ? unchanged : done, nth);
            if (!met) {
                EXPECT_FALSE(error.has_value());
                EXPECT_GT(nth, 1) << "no such call was made";
                return;
            }
        }
        FAIL() << "the calls never end";
    }

    // The open file goes on from where it was, and whoever opens it next sees the same.
    void expectWhole(File& file, const QString& path, const std::vector<std::string>& notes, int nth) {
        EXPECT_EQ(washNotes(file), notes) << "call " << nth;
        EXPECT_EQ(washNotes(*sample::opened(path)), notes) << "call " << nth;
        const auto next = file.apply(wash("next"), sample::kToday);
        EXPECT_TRUE(next.has_value()) << "call " << nth << ": " << next.error().detail.toStdString();
        std::vector<std::string> after = notes;
        after.emplace_back("next");
        EXPECT_EQ(washNotes(file), after) << "call " << nth;
        EXPECT_TRUE(file.check().empty()) << "call " << nth;
    }

    Folder folder_;
    FaultyVfs vfs_{"faulty"};
    Options options_;
    QString path_;
};

INSTANTIATE_TEST_SUITE_P(Each, FaultTest, testing::ValuesIn(kFaults),
                         [](const auto& which) { return which.param.name; });

TEST_P(FaultTest, LeavesNoVerbHalfWritten) {
    eachFault(
        [](File& file) -> std::optional<Kind> {
            const auto answer = file.apply(wash("during"), sample::kToday);
            return answer ? std::nullopt : std::optional(answer.error().kind);
        },
        {"before"}, {"before", "during"});
}

TEST_P(FaultTest, LeavesNoVerbHalfUndone) {
    eachFault(
        [](File& file) -> std::optional<Kind> {
            file.reachBack();  // what was said before the file was opened here
            const auto answer = file.undo();
            return answer ? std::nullopt : std::optional(answer.error().kind);
        },
        {"before"}, {});
}

// Whatever goes wrong while a file is opened has a name, and the file is as it was.
TEST_P(FaultTest, HasANameWhenOpening) {
    for (int nth = 1; nth < 2000; ++nth) {
        fail(nth);
        const auto answer = File::open(path_, OpenFor::Writing, options_);
        const bool met = vfs_.hasFailed();
        vfs_.failNothing();
        if (answer.file == nullptr)
            EXPECT_EQ(answer.report.outcome, OpenOutcome::NoAccess) << answer.report.detail.toStdString();
        else
            EXPECT_EQ(washNotes(*answer.file), std::vector<std::string>{"before"});
        if (!met)
            break;
    }
    EXPECT_EQ(washNotes(*sample::opened(path_)), std::vector<std::string>{"before"});
}

TEST_P(FaultTest, LeavesNoHalfMadeFile) {
    bool wentThrough = false;
    for (int nth = 1; nth < 2000 && !wentThrough; nth += 7) {
        const QString path = folder_.path(QStringLiteral("made%1.wm").arg(nth));
        fail(nth);
        const auto answer = File::create(path, options_);
        wentThrough = !vfs_.hasFailed();
        vfs_.failNothing();
        if (answer.file != nullptr) {
            EXPECT_TRUE(answer.file->apply(sample::writing("Set up", sample::oneMachine()), sample::kToday)
                            .has_value());
            continue;
        }
        const auto expected = GetParam().kind == Kind::NoSpace ? OpenOutcome::NoSpace : OpenOutcome::NoAccess;
        EXPECT_EQ(answer.report.outcome, expected) << answer.report.detail.toStdString();
        EXPECT_FALSE(QFileInfo::exists(path));
        EXPECT_FALSE(QFileInfo::exists(path + "-journal"));
    }
    EXPECT_TRUE(wentThrough);
}

class DailyCopyFaultTest : public testing::Test {};

// The copy is a second belt: that it can't be made must be said, and must not keep a fact from being saved.
TEST_F(DailyCopyFaultTest, DoesNotKeepAVerbFromBeingSaved) {
    Folder folder;
    FaultyVfs vfs("nospace");
    Options options;
    options.vfs = vfs.name();
    const QString path = folder.path("garage.wm");
    sample::fileWith(path, sample::oneMachine());
    auto file = sample::opened(path, options);
    vfs.fail(Call::Write, 1, SQLITE_FULL, true, "unfinished");
    EXPECT_TRUE(file->apply(wash("saved"), sample::kToday).has_value());
    EXPECT_TRUE(vfs.hasFailed());
    EXPECT_TRUE(file->backupTrouble().has_value());
    EXPECT_TRUE(file->backups().empty());
    EXPECT_TRUE(QDir(path + ".backups").entryList(QDir::Files).empty());
    vfs.failNothing();
    EXPECT_TRUE(file->apply(wash("and copied"), sample::kToday).has_value());
    EXPECT_FALSE(file->backupTrouble().has_value());
    EXPECT_EQ(file->backups().size(), 1U);
}

}  // namespace
}  // namespace wm::store

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// Files whose names are no text, as an old camera or another system leaves them: Qt has no way to say them.
#include <QDateTime>
#include <fstream>
#include <random>
#include <sstream>

#include "core/store/on_disk.h"
#include "tests/repository.h"
#include "tests/store/sample.h"

namespace wm::store {
namespace {

namespace fs = std::filesystem;
using sample::Folder;

TEST(PathTest, KeepsAnyBytes) {
    std::mt19937 chance(7);
    for (int i = 0; i < 2000; ++i) {
        std::string bytes;
        for (int size = std::uniform_int_distribution(0, 12)(chance); size > 0; --size)
            bytes += static_cast<char>(std::uniform_int_distribution(1, 255)(chance));
        EXPECT_EQ(onDisk(pathOf(bytes)).native(), bytes);
    }
}

TEST(PathTest, LeavesTextAsItIs) {
    for (const char* text : {"", "garage.wm", "Ümit 🏁.wm", "%FF?mode=memory", "a b\n"}) {
        EXPECT_EQ(pathOf(text), QString::fromUtf8(text));
        EXPECT_FALSE(isOdd(pathOf(text)));
        EXPECT_EQ(onDisk(QString::fromUtf8(text)).native(), text);
    }
    EXPECT_TRUE(isOdd(pathOf("gar\xE4ge")));
    EXPECT_TRUE(isOdd(pathOf("\xED\xA0\x80")));
    EXPECT_FALSE(isOdd(pathOf("\xF0\x9F\x8F\x81"))) << "a pair is no half";
}

class OddNameTest : public testing::Test {
  protected:
    // Which Qt can't do.
    void TearDown() override {
        for (const auto& entry : fs::directory_iterator(file_.parent_path()))
            fs::remove_all(entry.path());
    }
    [[nodiscard]] fs::path in(const std::string& name) const {
        return onDisk(folder_.path("x")).parent_path() / name;
    }
    Folder folder_;
    const std::string name_ = "gar\xE4ge\xFF.wm";
    const fs::path file_ = in(name_);
    const QString path_ = pathOf(file_.native());
};

TEST_F(OddNameTest, IsMadeWrittenCopiedAndReadAgain) {
    {
        auto made = sample::fileWith(path_, sample::everyRow());
        ASSERT_NE(made, nullptr);
        EXPECT_TRUE(fs::exists(file_));
        ASSERT_TRUE(made->apply(sample::wash("one"), sample::kToday));
        EXPECT_FALSE(made->backupTrouble().has_value()) << made->backupTrouble()->detail.toStdString();
        const auto backups = made->backups();
        ASSERT_EQ(backups.size(), 1U);
        EXPECT_EQ(onDisk(backups[0].path).parent_path(), fs::path(file_.native() + ".backups"));
        EXPECT_TRUE(fs::exists(onDisk(backups[0].path)));
        EXPECT_TRUE(made->restoreTo(backups[0], pathOf(in("\xFE.wm").native())));
        EXPECT_TRUE(fs::exists(in("\xFE.wm")));
        EXPECT_EQ(made->undo().value(), "Wash: one");
    }
    for (const OpenFor purpose : {OpenFor::Writing, OpenFor::ReadingOnly}) {
        const auto again = File::open(path_, purpose);
        ASSERT_NE(again.file, nullptr) << again.report.detail.toStdString();
        EXPECT_EQ(again.file->ledger()->rows().size(), sample::everyRow().size());
        EXPECT_TRUE(again.file->check().empty());
    }
    EXPECT_EQ(factsOf(path_).rows.size(), sample::everyRow().size());
    EXPECT_EQ(File::create(path_).report.detail, "exists");
    EXPECT_EQ(garageThatOwns(pathOf(file_.native() + "-journal")), pathOf(fs::canonical(file_).native()));
    EXPECT_EQ(garageThatOwns(pathOf(file_.native() + ".backups/any")), pathOf(fs::canonical(file_).native()));
    File::discard(path_);
    EXPECT_FALSE(fs::exists(file_));
    EXPECT_EQ(File::open(path_, OpenFor::Writing).report.detail, "missing");
}

TEST_F(OddNameTest, TheCopyOfBeforeStandsBesideIt) {
    const QString plain = folder_.path("plain.wm");
    std::ifstream sql(test::repositoryPath("tests/data/store/version_4.sql"));
    std::ostringstream text;
    text << sql.rdbuf();
    sample::execute(plain, text.str());
    fs::rename(onDisk(plain), file_);
    const auto answer = File::open(path_, OpenFor::Writing);
    ASSERT_EQ(answer.report.outcome, OpenOutcome::Migrated) << answer.report.detail.toStdString();
    EXPECT_TRUE(fs::exists(in(name_ + ".v4.bak")));
}

TEST_F(OddNameTest, WhatStandsBesideItIsSeen) {
    sample::fileWith(path_, sample::oneMachine());
    fs::remove(in(name_ + "-journal"));
    fs::create_directory(in(name_ + "-journal"));
    EXPECT_EQ(File::open(path_, OpenFor::Writing).report.detail, "beside folder");
}

TEST_F(OddNameTest, ACopyHasItsRights) {
    auto made = sample::fileWith(path_, sample::oneMachine());
    fs::permissions(file_, fs::perms::owner_read | fs::perms::owner_write);
    ASSERT_TRUE(made->apply(sample::wash("one"), sample::kToday));
    ASSERT_EQ(made->backups().size(), 1U);
    EXPECT_EQ(fs::status(onDisk(made->backups()[0].path)).permissions(),
              fs::perms::owner_read | fs::perms::owner_write);
    EXPECT_EQ(fs::status(in(name_ + ".backups")).permissions(), fs::perms::owner_all);
}

}  // namespace
}  // namespace wm::store

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// Several at one file.
#include <QFileInfo>
#include <atomic>
#include <chrono>
#include <thread>

#include "tests/store/sample.h"

namespace wm::store {
namespace {

class TogetherTest : public testing::Test {
  protected:
    sample::Folder folder_;
    QString path_ = folder_.path("garage.wm");
};

// "The file has faults: go back to a backup" would cost what was entered since.
TEST_F(TogetherTest, ACheckFindsNoFaultInWhatAnotherWritesMeanwhile) {
    sample::fileWith(path_, sample::everyRow());
    std::atomic<bool> isDone = false;
    std::thread another([&] {
        const auto file = sample::opened(path_);
        while (!isDone) {
            (void)file->apply(sample::wash("meanwhile"), sample::kToday);
            std::this_thread::sleep_for(std::chrono::milliseconds(5));  // somebody else's turn
        }
    });
    const auto file = sample::opened(path_);
    std::vector<QString> found;
    for (int look = 0; look < 40 && found.empty(); ++look)
        found = file->check();
    isDone = true;
    another.join();
    EXPECT_TRUE(found.empty()) << found.front().toStdString();
}

TEST_F(TogetherTest, OfSeveralWhoMakeAFileUnderOneNameOneDoes) {
    for (int round = 0; round < 10; ++round) {
        const QString path = folder_.path(QString("new%1.wm").arg(round));
        std::atomic<int> made = 0;
        std::vector<std::thread> all;
        for (int each = 0; each < 4; ++each)
            all.emplace_back([&] {
                const auto answer = File::create(path);
                made += answer.file != nullptr ? 1 : 0;
            });
        for (std::thread& one : all)
            one.join();
        EXPECT_EQ(made, 1);
        EXPECT_TRUE(sample::opened(path)->check().empty());
    }
}

TEST_F(TogetherTest, TakesTheNameOfAFileWithNothingInIt) {
    ASSERT_TRUE(QFile(path_).open(QIODevice::WriteOnly));
    EXPECT_EQ(File::create(path_).report.outcome, OpenOutcome::Opened);
    EXPECT_EQ(File::create(path_).report.detail, "exists");
    EXPECT_TRUE(sample::opened(path_)->check().empty());
    // What a link leads to may be anybody's.
    ASSERT_TRUE(QFile(folder_.path("empty")).open(QIODevice::WriteOnly));
    ASSERT_TRUE(QFile::link(folder_.path("empty"), folder_.path("link.wm")));
    EXPECT_EQ(File::create(folder_.path("link.wm")).report.detail, "exists");
    EXPECT_EQ(QFileInfo(folder_.path("empty")).size(), 0);
}

}  // namespace
}  // namespace wm::store

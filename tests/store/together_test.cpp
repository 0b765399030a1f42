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

}  // namespace
}  // namespace wm::store

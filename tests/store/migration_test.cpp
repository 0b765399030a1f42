// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// Files of every version that there was, as SQL text in tests/data/store: each is still read, and says the
// same.
#include "core/store/migration.h"

#include <gtest/gtest.h>

#include <fstream>
#include <sstream>

#include "core/ledger/book.h"
#include "core/store/schema.h"
#include "tests/store/sample.h"

namespace wm::store {
namespace {

std::string storedText(const std::string& name) {
    std::ifstream file(std::string(WM_SOURCE_DIR) + "/tests/data/store/" + name, std::ios::binary);
    std::ostringstream text;
    text << file.rdbuf();
    return text.str();
}

// A step that was released is never edited: the file of then begins with the very statements of now.
TEST(MigrationTest, TheFirstStepIsAsItWas) {
    std::string statements;
    const auto schema = currentSchema();
    for (const std::string& statement : schema.front().statements)
        statements += statement + ";\n\n";
    EXPECT_EQ(storedText("version_1.sql").substr(0, statements.size()), statements);
}

class VersionOneTest : public testing::Test {
  protected:
    void SetUp() override { sample::execute(path_, storedText("version_1.sql")); }

    sample::Folder folder_;
    QString path_ = folder_.path("garage.wm");
};

TEST_F(VersionOneTest, IsBroughtUpToDateWithAVerifiedCopyBeside) {
    auto answer = File::open(path_, OpenFor::Writing);
    ASSERT_EQ(answer.report.outcome, OpenOutcome::Migrated) << answer.report.detail.toStdString();
    EXPECT_EQ(answer.report.fromVersion, 1);
    EXPECT_EQ(answer.report.backup, path_ + ".v1.bak");
    EXPECT_EQ(sample::answer(answer.report.backup, "PRAGMA user_version"), "1");
    EXPECT_EQ(sample::answer(answer.report.backup, "SELECT count(*) FROM record"), "1");
    EXPECT_EQ(sample::answer(path_, "PRAGMA user_version"), "2");
    EXPECT_EQ(sample::answer(path_, "SELECT oldest_reader || ' ' || needs_program FROM file_state"), "2 0.2");
    EXPECT_TRUE(answer.file->check().empty());
}

// Oil every 10 h, done on 15 January; 6 h of mud since: 4 h are left, as the program of then said.
TEST_F(VersionOneTest, SaysTheSameAsBefore) {
    auto answer = File::open(path_, OpenFor::Writing);
    ASSERT_NE(answer.file, nullptr);
    const auto ledger = answer.file->ledger();
    ASSERT_EQ(ledger->all<upkeep::TaskVersion>().size(), 1U);
    EXPECT_TRUE(ledger->all<upkeep::TaskVersion>()[0].weights.empty());
    const ledger::Book book(ledger, sample::day(2, 20));
    const auto* line = book.dueLine(TaskId{21});
    ASSERT_NE(line, nullptr);
    ASSERT_EQ(line->countdown.limits.size(), 1U);
    EXPECT_EQ(line->countdown.limits[0].left, 400);
    EXPECT_FALSE(line->countdown.limits[0].raw);
}

// A new wording may weight its hours: mud x 1.5 makes 9 of 10 h of them. The old one stays as it was.
TEST_F(VersionOneTest, TakesWeightsFromThenOn) {
    auto answer = File::open(path_, OpenFor::Writing);
    ASSERT_NE(answer.file, nullptr);
    auto wording = answer.file->ledger()->all<upkeep::TaskVersion>()[0];
    wording.id = TaskVersionId{40};
    wording.validFrom = sample::day(2, 1);
    wording.weights = {{usage::Ground::Mud, std::nullopt, 1500}};
    ASSERT_TRUE(answer.file->apply(sample::writing("weighted", {wording}), sample::day(2, 20)));
    answer.file.reset();
    const auto ledger = sample::opened(path_)->ledger();
    EXPECT_EQ(ledger->all<upkeep::TaskVersion>()[1].weights, wording.weights);
    EXPECT_TRUE(ledger->all<upkeep::TaskVersion>()[0].weights.empty());
    const ledger::Book book(ledger, sample::day(2, 20));
    EXPECT_EQ(book.dueLine(TaskId{21})->countdown.limits[0].left, 100);
}

}  // namespace
}  // namespace wm::store

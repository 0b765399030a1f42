// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// Text that is no text in a file: damage, a foreign hand, an earlier version.
#include "core/base/text.h"
#include "tests/store/sample.h"
#include "tests/store/sealing.h"

namespace wm::store {
namespace {

using sample::Folder;

class TextTest : public testing::Test {
  protected:
    void SetUp() override { sample::fileWith(path_, sample::everyRow()); }
    [[nodiscard]] OpenReport refused(const std::string& sql) const {
        sample::executeSealed(path_, sql);
        const auto opened = File::open(path_, OpenFor::Writing);
        EXPECT_EQ(opened.file, nullptr) << sql;
        EXPECT_EQ(opened.report.outcome, OpenOutcome::Corrupt) << sql;
        return opened.report;
    }

    Folder folder_;
    QString path_ = folder_.path("garage.wm");
};

TEST_F(TextTest, BytesThatAreNoTextAreNamedByTableRowAndColumn) {
    EXPECT_EQ(refused("UPDATE person SET name = CAST(X'416EFF' AS TEXT)").detail,
              "table person, row 1, column name holds bytes that are no text");
}

TEST_F(TextTest, ANulIsNoText) {
    EXPECT_EQ(refused("UPDATE person SET name = 'An' || char(0) || 'na'").detail,
              "table person, row 1, column name holds bytes that are no text");
}

TEST_F(TextTest, EachColumnOfTextIsLookedAt) {
    const QString detail = refused("UPDATE item SET note = CAST(X'C328' AS TEXT) WHERE id = 2").detail;
    EXPECT_EQ(detail, "table item, row 2, column note holds bytes that are no text");
    sample::executeSealed(path_, "UPDATE item SET note = '' WHERE id = 2");
    EXPECT_NE(File::open(path_, OpenFor::Writing).file, nullptr);
}

TEST_F(TextTest, ABlobIsNoText) {
    sample::executeSealed(
        path_,
        "PRAGMA writable_schema = ON; UPDATE sqlite_schema SET sql = replace(sql, ') STRICT', ')') "
        "WHERE name = 'person'; PRAGMA writable_schema = OFF;");
    sample::executeSealed(path_, "UPDATE person SET name = X'416E6E61'");
    EXPECT_EQ(File::open(path_, OpenFor::Writing).file, nullptr);
}

TEST_F(TextTest, WhereNothingIsReplacedNothingIsListed) {
    const auto file = sample::opened(path_);
    ASSERT_NE(file, nullptr);
    EXPECT_TRUE(file->replacedTexts().empty());
}

TEST_F(TextTest, ReplacedTextsOfChildrenAreListedToo) {
    sample::executeSealed(path_, "UPDATE task_version_kit SET what = what || char(0x202E)");
    const auto file = sample::opened(path_);
    ASSERT_NE(file, nullptr);
    const auto replaced = file->replacedTexts();
    ASSERT_FALSE(replaced.empty());
    EXPECT_TRUE(replaced[0].startsWith("table task_version_kit, row ")) << replaced[0].toStdString();
    EXPECT_TRUE(replaced[0].endsWith(", column what")) << replaced[0].toStdString();
}

TEST_F(TextTest, ListingStopsAtTwenty) {
    auto file = sample::opened(path_);
    for (int i = 0; i < 25; ++i)
        ASSERT_TRUE(file->apply(sample::wash("one of many"), sample::kToday));
    sample::executeSealed(path_, sample::kFree + "UPDATE wash SET note = note || char(7)" + sample::kGuarded);
    EXPECT_EQ(file->replacedTexts().size(), 20U);
}

// What earlier versions took and no text may hold any more: it stays in the file, and is read as harmless.
TEST_F(TextTest, WhatAnEarlierVersionTookIsReadAsHarmless) {
    sample::executeSealed(path_, "UPDATE person SET name = 'An' || char(9) || 'na' || char(10) || 'B'");
    sample::executeSealed(
        path_,
        "UPDATE item SET note = 'a' || char(0x9B) || '31m' || char(0x202E) || char(10) || 'b' "
        "WHERE id = 2");
    const auto file = sample::opened(path_);
    ASSERT_NE(file, nullptr);
    EXPECT_EQ(file->ledger()->all<items::Person>().front().name, "An na B");
    const auto* item = file->ledger()->find<items::Item>(ItemId{2});
    ASSERT_NE(item, nullptr);
    EXPECT_EQ(item->note, "a\uFFFD31m\uFFFD\nb");
    EXPECT_TRUE(file->check().empty());
    EXPECT_EQ(file->replacedTexts(),
              (std::vector<QString>{"table person, row 1, column name", "table item, row 2, column note"}));
}

}  // namespace
}  // namespace wm::store

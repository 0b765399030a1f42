// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// Rows that no verb wrote, under seals that are right: whoever reckons with them relies on bounds and
// references.
#include "tests/store/sample.h"
#include "tests/store/sealing.h"

namespace wm::store {
namespace {

using sample::Folder;

struct Forged {
    std::string table;
    std::string set;
    std::string found;  ///< what is said of it, from its beginning
};

// The table's own guard is taken away for the change and put back as it was.
void forge(const QString& path, const Forged& forged) {
    const std::string guard = forged.table + "_is_never_changed";
    const std::string sql =
        sample::answer(path, "SELECT coalesce(max(sql), '') FROM sqlite_schema WHERE name = '" + guard + "'");
    sample::executeSealed(path, "PRAGMA foreign_keys = OFF; DROP TRIGGER IF EXISTS " + guard + "; UPDATE \"" +
                                    forged.table + "\" SET " + forged.set + ";" + sql);
}

class SoundnessTest : public testing::Test {
  protected:
    void SetUp() override { sample::fileWith(path_, sample::everyRow()); }
    void expectNamed(const Forged& forged) {
        forge(path_, forged);
        for (const OpenFor purpose : {OpenFor::Writing, OpenFor::ReadingOnly}) {
            const auto answer = File::open(path_, purpose);
            EXPECT_EQ(answer.file, nullptr) << forged.set;
            EXPECT_EQ(answer.report.outcome, OpenOutcome::Corrupt) << forged.set;
            EXPECT_TRUE(answer.report.detail.startsWith(QString::fromStdString(forged.found)))
                << answer.report.detail.toStdString();
        }
        EXPECT_EQ(factsOf(path_).report.outcome, OpenOutcome::Corrupt) << forged.set;
    }

    Folder folder_;
    QString path_ = folder_.path("garage.wm");
};

class OutOfBoundsTest : public SoundnessTest, public testing::WithParamInterface<Forged> {};

TEST_P(OutOfBoundsTest, IsNamedByTableRowAndColumn) {
    expectNamed(GetParam());
}

INSTANTIATE_TEST_SUITE_P(
    Forged, OutOfBoundsTest,
    testing::Values(
        Forged{"outing", "hours = 9223372036854775807",
               "table outing, row 35, column hours is out of bounds: "},
        Forged{"outing", "starts = 1001", "table outing, row 35, column starts is out of bounds: 1001"},
        Forged{"outing", "entered = 9223372036854775807", "table outing, row 35, column entered is out of "},
        Forged{"machine", "name = replace(hex(zeroblob(500000)), '00', 'ab')",
               "table machine, row 1001, column name is longer than any text here"},
        Forged{"machine", "name = replace(hex(zeroblob(101)), '00', 'ab')",
               "table machine, row 1001, column name is longer than the 200 bytes"},
        Forged{"machine", "maker = replace(hex(zeroblob(101)), '00', 'ab')",
               "table machine, row 1001, column maker is longer than the 200 bytes"},
        Forged{"machine", "note = replace(hex(zeroblob(10001)), '00', 'ab')",
               "table machine, row 1001, column note is longer than any text here"},
        Forged{"task_version_limits", "every = 9223372036854775807",
               "table task_version, row 20, column limits[0].every is out of bounds: "},
        Forged{"event", "last_day = '2199-12-31'", "table event, row 4, column last_day is out of bounds: "},
        Forged{"stock_move", "amount = amount * 1000000000",
               "table stock_move, row 48, column amount is out of bounds: -800000000000"}));

class ReferenceTest : public SoundnessTest, public testing::WithParamInterface<Forged> {};

TEST_P(ReferenceTest, ToNothingIsNamedByTableRowAndColumn) {
    expectNamed(GetParam());
}

INSTANTIATE_TEST_SUITE_P(
    Forged, ReferenceTest,
    testing::Values(
        Forged{"tool", "id = 9", "table calibration, row 56, column tool refers to nothing: 8"},
        Forged{"record", "task = 99", "table record, row 42, column task refers to nothing: 99"},
        Forged{"joint_mark", "joint = 99", "table joint_mark, row 46, column joint refers to nothing"},
        Forged{"pick", "task = 99 WHERE task IS NOT NULL",
               "table pick, row 55, column task refers to nothing: 99"},
        Forged{"strike", "fact = 1001", "table strike, row 51, column fact refers to nothing: 1001"},
        Forged{"follow_up_answer", "origin = 1001",
               "table follow_up_answer, row 45, column origin refers to nothing: 1001"},
        Forged{"record_uses", "lot = 99", "table record, row 42, column uses[0].lot refers to nothing"}));

TEST_F(SoundnessTest, ARowIsMissedByWhatRefersToIt) {
    sample::executeSealed(path_, "PRAGMA foreign_keys = OFF; DELETE FROM machine");
    const auto report = File::open(path_, OpenFor::ReadingOnly).report;
    EXPECT_EQ(report.outcome, OpenOutcome::Corrupt);
    EXPECT_TRUE(report.detail.endsWith("machine refers to nothing: 1001")) << report.detail.toStdString();
}

// The hub sits in the wheel, and now the wheel in the hub.
TEST_F(SoundnessTest, APartInsideItselfIsNamed) {
    expectNamed(
        {"move", "machine = NULL, parent = 3 WHERE id = 30", "table move, row 31, column parent puts "});
}

// It could not be read again: better said before than a file that stays shut.
TEST_F(SoundnessTest, WhatIsOutOfBoundsIsNotWritten) {
    auto file = sample::opened(path_);
    usage::Wash row;
    row.id = WashId{99};
    row.machine = MachineId{sample::kMachine};
    row.date = sample::kToday;
    row.note = std::string(20'001, 'x');
    const auto written = file->apply(sample::writing("Wash", {row}), sample::kToday);
    ASSERT_FALSE(written);
    EXPECT_EQ(written.error().kind, ApplyError::Kind::Refused);
    EXPECT_EQ(written.error().error.fault, base::Fault::TooLong);
    EXPECT_NE(sample::opened(path_), nullptr);
}

// Each sign that is read as a harmless one is longer than it was written.
TEST_F(SoundnessTest, ATextThatGrewByBeingReadIsNotTooLong) {
    sample::executeSealed(path_,
                          "UPDATE machine SET note = replace(hex(zeroblob(9999)), '00', char(7) || 'a')");
    EXPECT_NE(sample::opened(path_), nullptr);
}

// SQLite leaves the rules of its tables out where a file may only be read: one verb would call sound what the
// next calls damaged.
TEST_F(SoundnessTest, ACheckOfAReaderLooksAtTheRulesOfTheTables) {
    sample::execute(path_, "PRAGMA ignore_check_constraints = ON; UPDATE file_state SET revision = -1");
    EXPECT_EQ(File::open(path_, OpenFor::Writing).report.outcome, OpenOutcome::Corrupt);
    const auto reader = File::open(path_, OpenFor::ReadingOnly);
    ASSERT_NE(reader.file, nullptr);
    ASSERT_FALSE(reader.file->check().empty());
    EXPECT_TRUE(reader.file->check().front().contains("file_state"));
}

TEST_F(SoundnessTest, ANewerFileOutOfTheseBoundsNeedsItsProgram) {
    forge(path_, {"outing", "starts = 1001", {}});
    sample::execute(path_, "PRAGMA user_version = 99; UPDATE file_state SET needs_program = '9.9'");
    EXPECT_EQ(File::open(path_, OpenFor::ReadingOnly).report.outcome, OpenOutcome::NewerRefused);
}

}  // namespace
}  // namespace wm::store

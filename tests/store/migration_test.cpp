// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// Files of every version that there was, as SQL text in tests/data/store: each is still read, and says the
// same.
#include "core/store/migration.h"

#include <gtest/gtest.h>

#include <fstream>
#include <sstream>

#include "core/book/book.h"
#include "core/book/state.h"
#include "core/store/schema.h"
#include "tests/repository.h"
#include "tests/store/sample.h"

namespace wm::store {
namespace {

const std::string kNow = std::to_string(currentSchema().back().version);
const std::string kReadableBy = [] {
    const Schema schema = currentSchema();
    const int oldest = schema.back().oldestReader;
    return std::to_string(oldest) + ' ' + schema.at(static_cast<std::size_t>(oldest) - 1).program;
}();

std::string storedText(const std::string& name) {
    std::ifstream file(test::repositoryPath(std::string("tests/data/store/") + name), std::ios::binary);
    std::ostringstream text;
    text << file.rdbuf();
    return text.str();
}

// A step that was released is never edited: a file of then begins with the very statements of now.
TEST(MigrationTest, TheStepsOfThenAreAsTheyWere) {
    std::string statements;
    for (const SchemaStep& step : currentSchema()) {
        for (const std::string& statement : step.statements)
            statements += statement + ";\n\n";
        const std::string file = "version_" + std::to_string(step.version) + ".sql";
        if (step.version < currentSchema().back().version) {
            EXPECT_EQ(storedText(file).substr(0, statements.size()), statements) << file;
        }
    }
}

/// A file as the program of a version left it.
class OldFileTest : public testing::Test {
  protected:
    explicit OldFileTest(int version) {
        sample::execute(path_, storedText("version_" + std::to_string(version) + ".sql"));
    }

    sample::Folder folder_;
    QString path_ = folder_.path("garage.wm");
};

class EveryVersionTest : public OldFileTest, public testing::WithParamInterface<int> {
  protected:
    EveryVersionTest() : OldFileTest(GetParam()) {}
};

TEST_P(EveryVersionTest, IsBroughtUpToDateWithAVerifiedCopyBeside) {
    auto answer = File::open(path_, OpenFor::Writing);
    ASSERT_EQ(answer.report.outcome, OpenOutcome::Migrated) << answer.report.detail.toStdString();
    EXPECT_EQ(answer.report.fromVersion, GetParam());
    EXPECT_EQ(answer.report.backup, path_ + QStringLiteral(".v%1.bak").arg(GetParam()));
    EXPECT_EQ(sample::answer(answer.report.backup, "PRAGMA user_version"), std::to_string(GetParam()));
    EXPECT_EQ(sample::answer(answer.report.backup, "SELECT count(*) FROM record"), "1");
    EXPECT_EQ(sample::answer(path_, "PRAGMA user_version"), kNow);
    EXPECT_EQ(sample::answer(path_, "SELECT oldest_reader || ' ' || needs_program FROM file_state"),
              kReadableBy);
    EXPECT_TRUE(answer.file->check().empty());
}

INSTANTIATE_TEST_SUITE_P(Files, EveryVersionTest, testing::Range(1, currentSchema().back().version));

class VersionOneTest : public OldFileTest {
  protected:
    VersionOneTest() : OldFileTest(1) {}
};

// Oil every 10 h, done on 15 January; 6 h of mud since: 4 h are left, as the program of then said.
TEST_F(VersionOneTest, SaysTheSameAsBefore) {
    auto answer = File::open(path_, OpenFor::Writing);
    ASSERT_NE(answer.file, nullptr);
    const auto ledger = answer.file->ledger();
    ASSERT_EQ(ledger->all<upkeep::TaskVersion>().size(), 1U);
    EXPECT_TRUE(ledger->all<upkeep::TaskVersion>()[0].weights.empty());
    const book::Book book(ledger, sample::day(2, 20));
    const auto* line = book.dueLine(TaskId{21});
    ASSERT_NE(line, nullptr);
    ASSERT_EQ(line->countdown.limits.size(), 1U);
    EXPECT_EQ(line->countdown.limits[0].left, 400);
    EXPECT_FALSE(line->countdown.limits[0].raw);
}

// A new version may weight its hours: mud x 1.5 makes 9 of 10 h of them. The old one stays as it was.
TEST_F(VersionOneTest, TakesWeightsFromThenOn) {
    auto answer = File::open(path_, OpenFor::Writing);
    ASSERT_NE(answer.file, nullptr);
    auto version = answer.file->ledger()->all<upkeep::TaskVersion>()[0];
    version.id = TaskVersionId{40};
    version.validFrom = sample::day(2, 1);
    version.weights = {{usage::Ground::Mud, std::nullopt, 1500}};
    ASSERT_TRUE(answer.file->apply(sample::writing("weighted", {version}), sample::day(2, 20)));
    answer.file.reset();
    const auto ledger = sample::opened(path_)->ledger();
    EXPECT_EQ(ledger->all<upkeep::TaskVersion>()[1].weights, version.weights);
    EXPECT_TRUE(ledger->all<upkeep::TaskVersion>()[0].weights.empty());
    const book::Book book(ledger, sample::day(2, 20));
    EXPECT_EQ(book.dueLine(TaskId{21})->countdown.limits[0].left, 100);
}

class VersionTwoTest : public OldFileTest {
  protected:
    VersionTwoTest() : OldFileTest(2) {}
};

// Mud x 1.5: of the 10 h 9 are behind. The drain plug moved on 1 February and is open since.
TEST_F(VersionTwoTest, SaysTheSameAsBefore) {
    auto answer = File::open(path_, OpenFor::Writing);
    ASSERT_NE(answer.file, nullptr);
    const auto ledger = answer.file->ledger();
    const auto& joint = ledger->all<fastening::JointVersion>().at(0);
    EXPECT_EQ(joint.torque->text(), "20");
    EXPECT_FALSE(joint.sharedFrom || joint.sharedTo);
    const auto& marks = ledger->all<fastening::JointMark>();
    ASSERT_EQ(marks.size(), 3U);
    EXPECT_EQ(marks[1].record, RecordId{30});
    EXPECT_EQ(marks[2].note, "weeping washer");
    EXPECT_FALSE(marks[2].tool || marks[2].movedCount || marks[2].movedDegrees || marks[2].outing);
    const book::Book book(ledger, sample::day(2, 20));
    EXPECT_EQ(book.dueLine(TaskId{21})->countdown.limits[0].left, 100);
    ASSERT_EQ(book.handTight(MachineId{1}).size(), 1U);
    EXPECT_EQ(book.handTight(MachineId{1})[0].state.why, fastening::MarkKind::FoundMoved);
    EXPECT_EQ(answer.file->search("weeping", 5), std::vector<std::int64_t>{62});
}

// The drawer from then on: a tool, what it tightened, and that its marks still can't be changed.
TEST_F(VersionTwoTest, TakesToolsAndTheirMarks) {
    auto answer = File::open(path_, OpenFor::Writing);
    ASSERT_NE(answer.file, nullptr);
    fastening::Tool tool{ToolId{70}, "Long red"};
    tool.high = units::Decimal{200, 0};
    fastening::JointMark mark{JointMarkId{71}, 0, JointId{51}, sample::day(2, 2)};
    mark.kind = fastening::MarkKind::Confirmed;
    mark.tool = tool.id;
    ASSERT_TRUE(answer.file->apply(sample::writing("tightened", {tool, mark}), sample::day(2, 20)));
    answer.file.reset();
    EXPECT_EQ(sample::opened(path_)->ledger()->all<fastening::JointMark>().back().tool, tool.id);
    EXPECT_EQ(sample::answer(path_,
                             "SELECT count(*) FROM sqlite_schema WHERE type = 'trigger' AND tbl_name = "
                             "'joint_mark'"),
              "3");
}

class VersionThreeTest : public OldFileTest {
  protected:
    VersionThreeTest() : OldFileTest(3) {}
};

// The interval was confirmed, of the amounts nobody ever said so; the limit keeps its confirmation.
TEST_F(VersionThreeTest, SaysTheSameAsBeforeButForAmountsThatNobodyConfirmed) {
    auto answer = File::open(path_, OpenFor::Writing);
    ASSERT_NE(answer.file, nullptr);
    const auto ledger = answer.file->ledger();
    const auto& task = ledger->all<upkeep::TaskVersion>().at(0);
    EXPECT_TRUE(task.confirmed);
    ASSERT_EQ(task.kit.size(), 2U);
    EXPECT_EQ(task.kit[0],
              (upkeep::KitLine{"engine oil", std::nullopt, 900, upkeep::Unit::Millilitre, false}));
    EXPECT_FALSE(task.kit[0].confirmed || task.kit[1].confirmed);
    ASSERT_EQ(task.measures.size(), 1U);
    EXPECT_TRUE(task.measures[0].confirmed && task.measures[0].page.empty());
    EXPECT_EQ(ledger->all<fastening::JointMark>().at(1).tool, ToolId{70});
}

TEST_F(VersionThreeTest, TakesThePageOfAnAmountFromThenOn) {
    auto answer = File::open(path_, OpenFor::Writing);
    ASSERT_NE(answer.file, nullptr);
    auto version = answer.file->ledger()->all<upkeep::TaskVersion>()[0];
    version.id = TaskVersionId{40};
    version.validFrom = sample::day(2, 1);
    version.kit[0].source = "service manual";
    version.kit[0].page = "2-9";
    version.kit[0].confirmed = true;
    version.measures[0].page = "4-2";
    ASSERT_TRUE(answer.file->apply(sample::writing("confirmed", {version}), sample::day(2, 20)));
    answer.file.reset();
    const auto ledger = sample::opened(path_)->ledger();
    const auto& tasks = ledger->all<upkeep::TaskVersion>();
    EXPECT_EQ(tasks[1].kit, version.kit);
    EXPECT_EQ(tasks[1].measures, version.measures);
}

class VersionFourTest : public OldFileTest {
  protected:
    VersionFourTest() : OldFileTest(4) {}
};

TEST_F(VersionFourTest, SaysTheSameAsBefore) {
    auto answer = File::open(path_, OpenFor::Writing);
    ASSERT_NE(answer.file, nullptr);
    const auto ledger = answer.file->ledger();
    EXPECT_EQ(ledger->garage().name, "The lean-to");
    const auto& task = ledger->all<upkeep::TaskVersion>().at(0);
    ASSERT_EQ(task.kit.size(), 2U);
    EXPECT_TRUE(task.kit[0].confirmed && task.kit[0].page == "2-9" && !task.kit[1].confirmed);
    EXPECT_EQ(task.measures.at(0).page, "4-2");
    const book::Book book(ledger, sample::day(2, 20));
    EXPECT_EQ(book.dueLine(TaskId{21})->countdown.limits[0].left, 100);
}

// A single limit is one of wear; between two the limits themselves are good.
TEST_F(VersionFourTest, AskOfEachLimitWhetherItIsStillGood) {
    sample::execute(path_,
                    "INSERT INTO task_version_measures VALUES "
                    "(20, 1, 'play', 'mm', '0.10', '0.15', 'service manual', 1, '4-3')");
    const auto answer = File::open(path_, OpenFor::Writing);
    ASSERT_NE(answer.file, nullptr);
    const auto& measures = answer.file->ledger()->all<upkeep::TaskVersion>().at(0).measures;
    ASSERT_EQ(measures.size(), 2U);
    EXPECT_TRUE(!measures[0].leastGood && !measures[0].mostGood && measures[0].job.empty());
    EXPECT_TRUE(measures[1].leastGood && measures[1].mostGood);
}

// A text that is read as another, harmless one is sealed as it stands in the file.
TEST_F(VersionFourTest, SealsWhatStandsThere) {
    ASSERT_EQ(File::open(path_, OpenFor::Writing).report.outcome, OpenOutcome::Migrated);
    EXPECT_EQ(sample::answer(path_, "SELECT hex(note) FROM joint_mark WHERE id = 62"),
              "77656570696E6709776173686572E280AE");
    const auto file = sample::opened(path_);
    ASSERT_NE(file, nullptr);
    EXPECT_EQ(file->ledger()->all<fastening::JointMark>().at(2).note, "weeping washer\uFFFD");
    EXPECT_TRUE(file->check().empty());
}

// Where a joint of the starters sits is known by its code; of one's own nobody has said it.
TEST_F(VersionFourTest, KnowsWhereTheJointsOfTheStartersSit) {
    sample::execute(path_, R"(INSERT INTO joint_version
SELECT 52, 40, 53, machine, valid_from, 'head-nuts', 'Head nuts', kind, thread, count, torque, torque_high, unit, stages,
    condition, locking, renew, left_hand, sequence, sequence_step, sequence_note, source, page, confirmed, typed_by, checked_by,
    active, shared_from, shared_to FROM joint_version WHERE id = 50)");
    const auto answer = File::open(path_, OpenFor::Writing);
    ASSERT_NE(answer.file, nullptr);
    const auto ledger = answer.file->ledger();
    EXPECT_EQ(ledger->find<fastening::JointVersion>(JointVersionId{52})->position, "engine");
    EXPECT_EQ(ledger->find<fastening::JointVersion>(JointVersionId{50})->position, std::nullopt);
    EXPECT_TRUE(answer.file->check().empty());
}

class VersionFiveTest : public OldFileTest {
  protected:
    VersionFiveTest() : OldFileTest(5) {}
};

// What a step frees is known by its code; whether the wheel was torqued then nobody ever asked.
TEST_F(VersionFiveTest, AsksOnceAboutWhatWasPutOn) {
    auto answer = File::open(path_, OpenFor::Writing);
    ASSERT_NE(answer.file, nullptr);
    const auto ledger = answer.file->ledger();
    const auto& step = ledger->all<weekend::StepVersion>().at(0);
    ASSERT_EQ(step.frees.size(), 2U);
    EXPECT_EQ(step.frees[0].code, "rear wheel");
    for (const items::Move& move : ledger->all<items::Move>())
        EXPECT_TRUE(move.told == items::Told::Unasked && !move.backOn && !move.record);
    const book::Book book(ledger, sample::day(1, 30));
    const auto doubts = book::stateOf(book, MachineId{1}).doubts;
    ASSERT_EQ(doubts.size(), 1U);
    EXPECT_EQ(doubts[0].why, book::Doubting::OlderMoves);
    EXPECT_EQ(doubts[0].positions, std::vector<std::string>{"rear wheel"});
}

class VersionSevenTest : public OldFileTest {
  protected:
    VersionSevenTest() : OldFileTest(7) {}
};

// It was said that the plug sits in the engine. What its seals add up to is counted when it is opened.
TEST_F(VersionSevenTest, SaysTheSameAsBeforeAndCountsItsRows) {
    const auto answer = File::open(path_, OpenFor::Writing);
    ASSERT_NE(answer.file, nullptr);
    EXPECT_EQ(answer.file->ledger()->all<fastening::JointVersion>().at(0).position, "engine");
    EXPECT_EQ(sample::answer(path_, "SELECT seals FROM file_state"), "16");
    EXPECT_TRUE(answer.file->check().empty());
}

class VersionEightTest : public OldFileTest {
  protected:
    VersionEightTest() : OldFileTest(8) {}
};

// Nobody said anything of the order of work: no step and no task is bound by what it never said.
TEST_F(VersionEightTest, BindsNoOrderThatNobodySaid) {
    const auto answer = File::open(path_, OpenFor::Writing);
    ASSERT_NE(answer.file, nullptr);
    const auto ledger = answer.file->ledger();
    const auto& step = ledger->all<weekend::StepVersion>().at(0);
    EXPECT_TRUE(step.doings.empty() && step.edges.empty());
    EXPECT_EQ(step.bodyState, upkeep::BodyState::Any);
    const auto& task = ledger->all<upkeep::TaskVersion>().at(0);
    EXPECT_TRUE(task.doings.empty() && task.edges.empty() && !task.comesLast);
    EXPECT_EQ(ledger->all<fastening::JointVersion>().at(0).held, "");
    EXPECT_TRUE(answer.file->check().empty());
}

// Which words are a starter's nobody said either: the first ones of a machine that was set up with a
// schedule, unless they name a manual or are confirmed.
TEST(WordsOfAStarterTest, AreTheFirstOfAMachineThatHasOne) {
    const sample::Folder folder;
    const QString path = folder.path("garage.wm");
    sample::execute(path,
                    storedText("version_4.sql") +
                        "UPDATE machine SET starter = 'two-stroke motocross', since = '2025-11-01';"
                        "DROP TRIGGER joint_version_is_never_changed;"
                        "UPDATE joint_version SET confirmed = 0, source = 'common practice';"
                        "CREATE TRIGGER joint_version_is_never_changed BEFORE UPDATE ON \"joint_version\" "
                        "BEGIN SELECT RAISE(ABORT, 'a fact is added or struck, never changed'); END;");
    const auto answer = File::open(path, OpenFor::Writing);
    ASSERT_NE(answer.file, nullptr);
    const auto ledger = answer.file->ledger();
    EXPECT_TRUE(ledger->all<fastening::JointVersion>().at(0).fromStarter);
    EXPECT_FALSE(ledger->all<upkeep::TaskVersion>().at(0).fromStarter) << "confirmed";
    EXPECT_EQ(sample::answer(
                  path, "SELECT count(*) FROM sqlite_master WHERE name LIKE '%_version_is_never_changed'"),
              "3");
    EXPECT_TRUE(answer.file->check().empty());
}

// Rows of every version there was are sealed, and from then on a change of one is found.
TEST(SealedByMigration, FilesOfEveryVersion) {
    for (int version = 1; version < currentSchema().back().version; ++version) {
        const sample::Folder folder;
        const QString path = folder.path("garage.wm");
        sample::execute(path, storedText("version_" + std::to_string(version) + ".sql"));
        ASSERT_NE(File::open(path, OpenFor::Writing).file, nullptr) << version;
        EXPECT_NE(sample::opened(path), nullptr) << version;
        sample::execute(path, "UPDATE machine SET name = 'Heron 251'");
        const auto report = File::open(path, OpenFor::Writing).report;
        EXPECT_EQ(report.outcome, OpenOutcome::Altered) << version;
        EXPECT_EQ(report.detail, "table machine, row 1 is not as it was written") << version;
    }
}

}  // namespace
}  // namespace wm::store

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <set>

#include "tests/store/sample.h"

namespace wm::store {
namespace {

using sample::Folder;
using sample::wash;
using sample::washNotes;
using Kind = ApplyError::Kind;

class FileTest : public testing::Test {
  protected:
    Folder folder_;
    QString path_ = folder_.path("garage.wm");
};

TEST_F(FileTest, KeepsWhatAVerbWrote) {
    const std::vector<picture::Row> rows = sample::everyRow();
    {
        auto made = File::create(path_);
        ASSERT_EQ(made.report.outcome, OpenOutcome::Opened);
        EXPECT_FALSE(made.file->readOnly());
        EXPECT_TRUE(made.file->ledger()->rows().empty());
        const auto verb = [&rows](const verbs::VerbContext&) { return picture::Change{"Set up", rows}; };
        ASSERT_TRUE(made.file->apply(verb, sample::kToday).has_value());
        EXPECT_EQ(made.file->ledger()->rows(), picture::Ledger(rows).rows());
        EXPECT_TRUE(made.file->check().empty());
    }
    const auto again = sample::opened(path_);
    EXPECT_EQ(again->ledger()->rows(), picture::Ledger(rows).rows());
    EXPECT_TRUE(again->check().empty());
    EXPECT_EQ(again->path(), path_);
}

TEST_F(FileTest, ShowsTheChangeAtOnceAndAfterReopening) {
    auto file = sample::fileWith(path_, sample::oneMachine());
    ASSERT_TRUE(file->apply(wash("first"), sample::kToday).has_value());
    ASSERT_TRUE(file->apply(wash("second"), sample::kToday).has_value());
    EXPECT_EQ(washNotes(*file), (std::vector<std::string>{"first", "second"}));
    EXPECT_EQ(washNotes(*sample::opened(path_)), (std::vector<std::string>{"first", "second"}));
}

TEST_F(FileTest, WritesNothingOfARefusedVerb) {
    auto file = sample::fileWith(path_, sample::oneMachine());
    const auto no = [](const verbs::VerbContext&) -> base::Result<picture::Change> {
        return base::refuse(base::Fault::Unknown, "machine", "27");
    };
    const auto answer = file->apply(no, sample::kToday);
    ASSERT_FALSE(answer.has_value());
    EXPECT_EQ(answer.error().kind, Kind::Refused);
    EXPECT_EQ(answer.error().error, (base::Error{base::Fault::Unknown, "machine", "27", ""}));
    const auto nothing = [](const verbs::VerbContext&) { return picture::Change{"Nothing", {}}; };
    EXPECT_EQ(file->apply(nothing, sample::kToday).error().error.fault, base::Fault::NothingToDo);
    EXPECT_EQ(file->undoText(), "Set up");
}

// The tables hold what a wrong verb would break, and a half-written verb is taken back.
TEST_F(FileTest, WritesNothingOfAVerbThatTheTablesRefuse) {
    auto file = sample::fileWith(path_, sample::oneMachine());
    usage::Wash good;
    good.id = WashId{501};
    good.machine = MachineId{sample::kMachine};
    usage::Wash homeless = good;
    homeless.id = WashId{502};
    homeless.machine = MachineId{777};
    EXPECT_EQ(file->apply(sample::writing("Two", {good, homeless}), sample::kToday).error().kind,
              Kind::Failed);
    EXPECT_EQ(file->apply(sample::writing("Twice", {good, good}), sample::kToday).error().kind, Kind::Failed);
    EXPECT_TRUE(washNotes(*file).empty());
    EXPECT_TRUE(washNotes(*sample::opened(path_)).empty());
    EXPECT_TRUE(file->apply(wash("still works"), sample::kToday).has_value());
}

TEST_F(FileTest, AWriteThatIsStoppedLeavesNothingOfIt) {
    auto file = sample::fileWith(path_, sample::oneMachine());
    const auto before = file->ledger();
    std::vector<picture::Row> rows;
    for (std::int64_t id = 1; id <= 1000; ++id) {
        usage::Wash wash;
        wash.id = WashId{id * 1000};
        wash.machine = MachineId{sample::kMachine};
        wash.date = sample::kToday;
        rows.emplace_back(wash);
    }
    const auto verb = sample::writing("A thousand", rows);
    for (const std::size_t stop : {0U, 512U, 1000U}) {
        std::size_t last = 1;
        const auto answer = file->apply(verb, sample::kToday, [&](std::size_t done, std::size_t of) {
            EXPECT_EQ(of, rows.size());
            last = done;
            return done < stop;
        });
        ASSERT_FALSE(answer.has_value()) << stop;
        EXPECT_EQ(answer.error().error, (base::Error{base::Fault::Stopped, "entry", "", ""}));
        EXPECT_EQ(last, stop);
        EXPECT_EQ(file->ledger(), before) << stop;
        EXPECT_EQ(file->undoText(), "Set up") << stop;
        EXPECT_EQ(sample::opened(path_)->ledger()->rows(), before->rows()) << stop;
        EXPECT_TRUE(file->check().empty()) << stop;
    }
    ASSERT_TRUE(file->apply(verb, sample::kToday, [](std::size_t, std::size_t) { return true; }).has_value());
    EXPECT_EQ(washNotes(*sample::opened(path_)).size(), rows.size());
    ASSERT_TRUE(file->undo().has_value());
    EXPECT_TRUE(washNotes(*file).empty());
}

TEST_F(FileTest, SurvivesAVerbThatThrows) {
    auto file = sample::fileWith(path_, sample::oneMachine());
    const auto throws = [](const verbs::VerbContext&) -> base::Result<picture::Change> {
        throw std::runtime_error("out of paint");
    };
    const auto answer = file->apply(throws, sample::kToday);
    ASSERT_FALSE(answer.has_value());
    EXPECT_EQ(answer.error().kind, Kind::Failed);
    EXPECT_EQ(answer.error().detail, QStringLiteral("out of paint"));
    EXPECT_TRUE(file->apply(wash("whole"), sample::kToday).has_value());
}

TEST_F(FileTest, ChecksAStaleVerbOnTheFreshBook) {
    auto mine = sample::fileWith(path_, sample::oneMachine());
    auto theirs = sample::opened(path_);
    ASSERT_TRUE(theirs->apply(wash("theirs"), sample::kToday).has_value());
    EXPECT_TRUE(washNotes(*mine).empty());
    // Only one wash may be noted: on the old picture the verb would go through.
    std::vector<std::size_t> seen;
    const auto onlyOne = [&seen](const verbs::VerbContext& context) -> base::Result<picture::Change> {
        seen.push_back(context.book.ledger().all<usage::Wash>().size());
        if (!context.book.ledger().all<usage::Wash>().empty())
            return base::refuse(base::Fault::Duplicate, "wash");
        return wash("mine")(context);
    };
    const auto answer = mine->apply(onlyOne, sample::kToday);
    ASSERT_FALSE(answer.has_value());
    EXPECT_EQ(answer.error().kind, Kind::Refused);
    EXPECT_EQ(answer.error().error.fault, base::Fault::Duplicate);
    EXPECT_EQ(seen, (std::vector<std::size_t>{0, 1}));
    EXPECT_EQ(washNotes(*mine), std::vector<std::string>{"theirs"});
}

TEST_F(FileTest, NumbersAStaleVerbOnFromTheFreshBook) {
    auto mine = sample::fileWith(path_, sample::oneMachine());
    auto theirs = sample::opened(path_);
    ASSERT_TRUE(theirs->apply(wash("theirs"), sample::kToday).has_value());
    ASSERT_TRUE(mine->apply(wash("mine"), sample::kToday).has_value());
    ASSERT_TRUE(theirs->apply(wash("theirs again"), sample::kToday).has_value());
    EXPECT_EQ(washNotes(*theirs), (std::vector<std::string>{"theirs", "mine", "theirs again"}));
    std::set<base::Entered> numbers;
    for (const auto& row : theirs->ledger()->all<usage::Wash>())
        numbers.insert(row.entered);
    EXPECT_EQ(numbers.size(), 3U);
}

TEST_F(FileTest, BelievesARefusalOnlyOnTheFreshBook) {
    auto mine = sample::fileWith(path_, sample::oneMachine());
    auto theirs = sample::opened(path_);
    ASSERT_TRUE(theirs->apply(wash("needed"), sample::kToday).has_value());
    const auto second = [](const verbs::VerbContext& context) -> base::Result<picture::Change> {
        if (context.book.ledger().all<usage::Wash>().empty())
            return base::refuse(base::Fault::Unknown, "wash");
        return wash("after it")(context);
    };
    EXPECT_TRUE(mine->apply(second, sample::kToday).has_value());
}

TEST_F(FileTest, RefreshesOnlyWhenAnotherWindowWrote) {
    auto mine = sample::fileWith(path_, sample::oneMachine());
    auto theirs = sample::opened(path_);
    EXPECT_FALSE(mine->refresh());
    ASSERT_TRUE(theirs->apply(wash("theirs"), sample::kToday).has_value());
    const auto before = mine->ledger();
    EXPECT_TRUE(mine->refresh());
    EXPECT_TRUE(before->all<usage::Wash>().empty()) << "a picture in use was changed";
    EXPECT_EQ(washNotes(*mine), std::vector<std::string>{"theirs"});
    EXPECT_FALSE(mine->refresh());
}

TEST_F(FileTest, GivesIdsThatAreNeverTheSame) {
    const base::IdSource ids = randomIds();
    std::set<std::int64_t> seen;
    for (int i = 0; i < 10'000; ++i) {
        const std::int64_t id = ids();
        EXPECT_GE(id, 1);
        EXPECT_TRUE(seen.insert(id).second);
    }
    EXPECT_GT(*seen.rbegin(), std::int64_t{1} << 62U);
}

class UndoTest : public FileTest {
  protected:
    void SetUp() override {
        options_.now = [this] { return now_; };
        file_ = sample::fileWith(path_, sample::oneMachine(), options_);
    }
    void say(const std::string& note) { ASSERT_TRUE(file_->apply(wash(note), sample::kToday).has_value()); }

    QDateTime now_{QDate(2026, 5, 16), QTime(18, 30)};
    Options options_;
    std::unique_ptr<File> file_;
};

TEST_F(UndoTest, TakesVerbsBackInOrderAndSaysThemAgain) {
    say("one");
    say("two");
    const auto full = file_->ledger()->rows();
    EXPECT_EQ(file_->undoText(), "Wash: two");
    EXPECT_EQ(file_->undo().value(), "Wash: two");
    EXPECT_EQ(file_->undo().value(), "Wash: one");
    EXPECT_TRUE(washNotes(*file_).empty());
    EXPECT_EQ(file_->undoText(), "Set up");
    EXPECT_EQ(file_->redoText(), "Wash: one");
    EXPECT_EQ(file_->redo().value(), "Wash: one");
    EXPECT_EQ(washNotes(*file_), std::vector<std::string>{"one"});
    EXPECT_EQ(file_->redo().value(), "Wash: two");
    EXPECT_EQ(file_->ledger()->rows(), full);
    EXPECT_EQ(file_->redoText(), std::nullopt);
    EXPECT_EQ(file_->redo().error().error.fault, base::Fault::NothingToDo);
    EXPECT_TRUE(file_->check().empty());
}

// A finger that stays on Ctrl+Z must not empty a garage.
TEST_F(UndoTest, TheOnlyMachineGoesOnlyIfThatIsWanted) {
    say("one");
    ASSERT_TRUE(file_->undo().has_value());
    const auto before = file_->ledger()->rows();
    const auto answer = file_->undo();
    ASSERT_FALSE(answer.has_value());
    EXPECT_EQ(answer.error().error, (base::Error{base::Fault::MustAnswer, "last machine", "", ""}));
    EXPECT_EQ(file_->ledger()->rows(), before);
    EXPECT_EQ(sample::opened(path_)->ledger()->rows(), before);
    EXPECT_EQ(file_->undoText(), "Set up");
    EXPECT_TRUE(file_->undo(LastMachine::MayGo).has_value());
    EXPECT_TRUE(file_->ledger()->all<items::Machine>().empty());
}

TEST_F(UndoTest, TakesBackEverythingAndNothingIsLeft) {
    ASSERT_TRUE(file_->undo(LastMachine::MayGo).has_value());
    EXPECT_TRUE(file_->ledger()->rows().empty());
    const std::vector<picture::Row> rows = sample::everyRow();
    const auto verb = [&rows](const verbs::VerbContext&) { return picture::Change{"All", rows}; };
    ASSERT_TRUE(file_->apply(verb, sample::kToday).has_value());
    EXPECT_FALSE(file_->search("mud", 10).empty());
    ASSERT_TRUE(file_->undo(LastMachine::MayGo).has_value());
    EXPECT_TRUE(file_->ledger()->rows().empty());
    EXPECT_TRUE(file_->search("mud", 10).empty());
    ASSERT_TRUE(file_->redo().has_value());
    EXPECT_EQ(file_->ledger()->rows(), picture::Ledger(rows).rows());
    EXPECT_EQ(file_->search("mud", 10), std::vector<std::int64_t>{35});
    EXPECT_TRUE(file_->check().empty());
}

TEST_F(UndoTest, BringsAnOldCardBackWithItsChildren) {
    outlook::Event event;
    event.id = EventId{70};
    event.name = "Round 1";
    event.entries = {{MachineId{sample::kMachine}, {}}, {MachineId{sample::kMachine}, {}}};
    ASSERT_TRUE(file_->apply(sample::writing("Add", {event}), sample::kToday).has_value());
    outlook::Event changed = event;
    changed.name = "Round 1, moved";
    changed.entries.pop_back();
    ASSERT_TRUE(file_->apply(sample::writing("Change", {changed}), sample::kToday).has_value());
    ASSERT_TRUE(file_->undo().has_value());
    EXPECT_EQ(file_->ledger()->all<outlook::Event>(), std::vector{event});
    ASSERT_TRUE(file_->redo().has_value());
    EXPECT_EQ(file_->ledger()->all<outlook::Event>(), std::vector{changed});
}

TEST_F(UndoTest, UnstrikesAFact) {
    say("one");
    const auto id = file_->ledger()->all<usage::Wash>().front().id;
    const picture::Strike strike{StrikeId{71}, 0, id.value(), sample::kToday, "wrong"};
    ASSERT_TRUE(file_->apply(sample::writing("Strike", {strike}), sample::kToday).has_value());
    EXPECT_TRUE(washNotes(*file_).empty());
    ASSERT_TRUE(file_->undo().has_value());
    EXPECT_EQ(washNotes(*file_), std::vector<std::string>{"one"});
}

TEST_F(UndoTest, ForgetsWhatWasUndoneWhenAnewVerbIsSaid) {
    say("one");
    ASSERT_TRUE(file_->undo().has_value());
    say("instead");
    EXPECT_EQ(file_->redoText(), std::nullopt);
    EXPECT_EQ(file_->undo().value(), "Wash: instead");
}

TEST_F(UndoTest, EndsWithTheSession) {
    say("one");
    say("two");
    ASSERT_TRUE(file_->undo().has_value());
    file_ = sample::opened(path_, options_);
    EXPECT_EQ(file_->undoText(), std::nullopt);
    EXPECT_EQ(file_->redoText(), std::nullopt);
    EXPECT_EQ(file_->undo().error().error.fault, base::Fault::NothingToDo);
    say("three");
    EXPECT_EQ(file_->undo().value(), "Wash: three");
    EXPECT_EQ(file_->undoText(), std::nullopt);
    EXPECT_EQ(washNotes(*file_), std::vector<std::string>{"one"});
}

TEST_F(UndoTest, GoesBackBeyondTheSessionWhereThereIsNone) {
    say("one");
    say("two");
    ASSERT_TRUE(file_->undo().has_value());
    file_ = sample::opened(path_, options_);
    file_->reachBack();
    EXPECT_EQ(file_->redo().value(), "Wash: two");
    EXPECT_EQ(file_->undo().value(), "Wash: two");
    EXPECT_EQ(file_->undo().value(), "Wash: one");
}

// A window that stays open over midnight goes on; one that is found open in the morning does not.
TEST_F(UndoTest, EndsAfterTwelveHours) {
    now_ = QDateTime(QDate(2026, 5, 16), QTime(20, 0));
    say("evening");
    now_ = now_.addSecs(5 * 3600);
    EXPECT_EQ(file_->undoText(), "Wash: evening") << "after midnight";
    say("night");
    now_ = now_.addSecs(8 * 3600);
    EXPECT_EQ(file_->undo().value(), "Wash: night");
    EXPECT_EQ(file_->redoText(), "Wash: night");
    EXPECT_EQ(file_->undoText(), std::nullopt) << "thirteen hours later";
    EXPECT_EQ(file_->undo().error().error.fault, base::Fault::NothingToDo);
    now_ = now_.addSecs(5 * 3600);
    EXPECT_EQ(file_->redoText(), std::nullopt);
    EXPECT_EQ(file_->redo().error().error.fault, base::Fault::NothingToDo);
    file_->reachBack();
    EXPECT_EQ(file_->undoText(), std::nullopt) << "the limit holds for everybody";
}

// No table takes such a day, and what it would have said of the disk is not so.
TEST_F(UndoTest, AClockBeyondAllDaysIsNamed) {
    say("one");
    for (const int year : {1899, 2200, 10'020}) {
        now_.setDate(QDate(year, 5, 16));
        const auto written = file_->apply(wash("two"), sample::kToday);
        ASSERT_FALSE(written) << year;
        EXPECT_EQ(written.error().kind, Kind::Clock) << year;
        EXPECT_TRUE(written.error().detail.contains(QString::number(year)));
        EXPECT_EQ(file_->undo().error().kind, Kind::Clock);
    }
    now_.setDate(QDate(2199, 12, 31));
    EXPECT_TRUE(file_->apply(wash("two"), sample::kToday));
}

// What a wrong clock says of the time that has passed is not believed.
TEST_F(UndoTest, EndsWhereTheClockJumps) {
    say("one");
    const QDateTime then = now_;
    now_ = then.addDays(-1);
    EXPECT_EQ(file_->undoText(), std::nullopt);
    now_ = then.addSecs(-3600);
    EXPECT_EQ(file_->undoText(), "Wash: one") << "summer time ended";
}

TEST_F(UndoTest, EndsWhereAFactLeftTheProgram) {
    say("printed");
    ASSERT_TRUE(file_->endUndo().has_value());
    EXPECT_EQ(file_->undoText(), std::nullopt);
    say("after");
    EXPECT_EQ(file_->undo().value(), "Wash: after");
    EXPECT_EQ(file_->undoText(), std::nullopt);
    EXPECT_EQ(washNotes(*file_), std::vector<std::string>{"printed"});
}

TEST_F(UndoTest, DoesNotTakeBackWhatTheWindowHasNotSeen) {
    say("mine");
    auto theirs = sample::opened(path_, options_);
    ASSERT_TRUE(theirs->apply(wash("theirs"), sample::kToday).has_value());
    const auto answer = file_->undo();
    ASSERT_FALSE(answer.has_value());
    EXPECT_EQ(answer.error().kind, Kind::Stale);
    EXPECT_EQ(washNotes(*file_), (std::vector<std::string>{"mine", "theirs"}));
    EXPECT_EQ(file_->undo().value(), "Wash: theirs");
    EXPECT_EQ(theirs->redo().error().kind, Kind::Stale);
    EXPECT_EQ(theirs->redo().value(), "Wash: theirs");
}

class SearchTest : public FileTest {
  protected:
    void SetUp() override {
        file_ = File::create(path_).file;
        const std::vector<picture::Row> rows = sample::everyRow();
        const auto verb = [&rows](const verbs::VerbContext&) { return picture::Change{"All", rows}; };
        ASSERT_TRUE(file_->apply(verb, sample::kToday).has_value());
    }
    std::vector<std::int64_t> found(const QString& query) const {
        auto ids = file_->search(query, 100);
        std::sort(ids.begin(), ids.end());
        return ids;
    }
    std::unique_ptr<File> file_;
};

TEST_F(SearchTest, FindsFactsByTheBeginningsOfTheirWords) {
    EXPECT_EQ(found("boot"), std::vector<std::int64_t>{35});
    EXPECT_EQ(found("BOO mu"), std::vector<std::int64_t>{35});
    EXPECT_EQ(found("boot drip"), std::vector<std::int64_t>{});
    EXPECT_EQ(found("drip"), (std::vector<std::int64_t>{40, 45}));
    EXPECT_EQ(found("burnt"), std::vector<std::int64_t>{42});
    EXPECT_EQ(found("2-31"), std::vector<std::int64_t>{42});
    EXPECT_EQ(found("rear pres"), std::vector<std::int64_t>{32});
    EXPECT_EQ(found("twice"), std::vector<std::int64_t>{50}) << "a struck fact stays readable";
    EXPECT_EQ(file_->search("drip", 1).size(), 1U);
}

TEST_F(SearchTest, ReadsNoSyntaxInTheQuery) {
    for (const char* query :
         {"", " ", "\"", "'", "*", "boot OR", "NOT", "NEAR(boot", "text:boot", "boot)", "^boot ^mud", "-",
          "boot\" OR \"drip", "{text}: boot", "a AND", "%", "\xe2\x80\x94", "\\"})
        EXPECT_LE(file_->search(QString::fromUtf8(query), 10).size(), 1U) << query;
    EXPECT_TRUE(file_->search(QString(QChar(0)), 10).empty());
    EXPECT_EQ(found("\"boot\""), std::vector<std::int64_t>{35});
    EXPECT_TRUE(file_->search("boot", 0).empty());
    EXPECT_TRUE(file_->search("boot", -1).empty());
    EXPECT_TRUE(file_->search(QString(100'000, QChar('x')), 10).empty());
}

TEST_F(SearchTest, FindsAccentedWordsEitherWay) {
    ASSERT_TRUE(
        file_->apply(wash("Mühle, \xd0\xb3\xd1\x80\xd1\x8f\xd0\xb7\xd1\x8c"), sample::kToday).has_value());
    EXPECT_EQ(found("muhle").size(), 1U);
    EXPECT_EQ(found(QString::fromUtf8("MÜHLE")).size(), 1U);
    EXPECT_EQ(found(QString::fromUtf8("\xd0\xb3\xd1\x80\xd1\x8f")).size(), 1U);
}

}  // namespace
}  // namespace wm::store

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <QAbstractItemModelTester>
#include <QCheckBox>
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QTreeView>
#include <algorithm>

#include "core/verbs/move_verbs.h"
#include "tests/ui/window.h"
#include "ui/entry/entry_strip.h"
#include "ui/pages/machine/fitted_model.h"
#include "ui/pages/machine/history_model.h"
#include "ui/pages/machine/places_of.h"
#include "ui/pages/machine/season_of.h"

namespace wm::ui {
namespace {

using Reporting = QAbstractItemModelTester::FailureReportingMode;

TEST(HistoryModel, IsAProperModel) {
    Garage garage(Garage::Fill::Season);
    HistoryModel model;
    QAbstractItemModelTester tester(&model, Reporting::Fatal);
    model.show(garage.workbench().book(), std::nullopt);
    EXPECT_GT(model.rowCount(), 30);
    model.filter({HistoryKind::Job, {}, {}, true});
    model.filter({std::nullopt, QStringLiteral("no such words"), {}, true});
    EXPECT_EQ(model.rowCount(), 0);
    model.show(nullptr, std::nullopt);
}

TEST(HistoryModel, IsNewestFirst) {
    Garage garage(Garage::Fill::Season);
    const auto entries = historyOf(garage.book(), garage.machine("Sorrel 450"));
    ASSERT_FALSE(entries.empty());
    EXPECT_TRUE(
        std::is_sorted(entries.begin(), entries.end(), [](const HistoryEntry& a, const HistoryEntry& b) {
            return std::pair(a.date, a.entered) > std::pair(b.date, b.entered);
        }));
    for (const auto& entry : entries)
        EXPECT_EQ(entry.machine, garage.machine("Sorrel 450"));
}

TEST(History, TellsAMeterFigureFromHoursRidden) {
    Garage garage(Garage::Fill::Season);
    int jobs = 0;
    int rides = 0;
    for (const auto& entry : historyOf(garage.book(), garage.machine("Sorrel 450"))) {
        const bool isMeter = entry.kind == HistoryKind::Job || entry.kind == HistoryKind::Meter;
        if (entry.figure.isEmpty() || (!isMeter && entry.kind != HistoryKind::Riding))
            continue;
        EXPECT_EQ(entry.figure.startsWith(QLatin1String("at ")), isMeter) << entry.figure.toStdString();
        ++(isMeter ? jobs : rides);
    }
    EXPECT_GT(jobs, 0);
    EXPECT_GT(rides, 0);
}

// An engine that goes straight into another machine: it leaves the one, and comes to the other.
TEST(History, AMovedEngineLeavesTheMachineThatHadIt) {
    Garage garage(Garage::Fill::Season);
    const MachineId heron = garage.machine("Heron 250");
    const MachineId sorrel = garage.machine("Sorrel 450");
    const auto engine =
        *garage.book().fittings().at(heron, "engine", calendar::Moment{garage.book().today()});
    garage.say([&](const verbs::VerbContext& context) {
        items::Move move;
        move.item = engine;
        move.kind = items::MoveKind::Fitted;
        move.machine = sorrel;
        move.position = "engine";
        move.date = context.book.today();
        return verbs::fitItem(context,
                              {.move = move, .oldGoesTo = items::MoveKind::Removed, .fromElsewhere = true});
    });
    const auto today = [&](MachineId machine) {
        QStringList words;
        for (const auto& entry : historyOf(garage.book(), machine))
            if (entry.kind == HistoryKind::Item && entry.date == garage.book().today())
                words << entry.words;
        return words;
    };
    EXPECT_EQ(today(heron), QStringList{"engine no. 1 taken off, to Sorrel 450"});
    EXPECT_TRUE(today(sorrel).contains("engine no. 1 fitted, engine"));
}

TEST(FittedModel, IsAProperModel) {
    Garage garage(Garage::Fill::Season);
    FittedModel model;
    QAbstractItemModelTester tester(&model, Reporting::Fatal);
    model.show(fittedOn(garage.book(), std::nullopt));
    EXPECT_EQ(model.rowCount(), 3);
    model.show(fittedOn(garage.book(), garage.machine("Heron 250")));
    EXPECT_EQ(model.rowCount(), 1);
    const auto heron = model.index(0, 0);
    EXPECT_EQ(model.rowCount(heron), 4);
    EXPECT_EQ(model.rowCount(model.index(1, 0, heron)), 1) << "the piston sits in the engine";
    model.show(std::make_unique<FittedNode>());
}

TEST(PlacesOf, GivesEachPlaceOfAMachineOrEachItemThatMoved) {
    Garage garage(Garage::Fill::Demo);
    const Places heron = placesOf(garage.book(), garage.machine("Heron 250"));
    const auto engine = std::find_if(heron.rows.begin(), heron.rows.end(), [](const PlaceRow& row) {
        return row.name == QStringLiteral("engine");
    });
    ASSERT_NE(engine, heron.rows.end());
    EXPECT_GE(engine->stays.size(), 2U) << "the demo season swaps engines";
    for (const PlaceRow& row : heron.rows)
        for (std::size_t at = 1; at < row.stays.size(); ++at) {
            ASSERT_TRUE(row.stays[at - 1].to);
            EXPECT_LE(*row.stays[at - 1].to, row.stays[at].from) << row.name.toStdString();
        }
    const Places all = placesOf(garage.book(), std::nullopt);
    ASSERT_FALSE(all.rows.empty());
    for (const PlaceRow& row : all.rows)
        EXPECT_GT(row.stays.size(), 1U) << "what never moved is left out";
}

TEST(Fitted, ItsStickShowsTheBracketOfWhatIsLeft) {
    upkeep::LimitState limit;
    limit.amount = 1000;
    limit.limit.allowance = 250;
    limit.behind = {250, 500, 625};
    const auto levels = levelsOf(limit);
    ASSERT_TRUE(levels.left);
    EXPECT_DOUBLE_EQ(levels.left->low, 0.5);
    EXPECT_DOUBLE_EQ(levels.left->best, 0.6);
    EXPECT_DOUBLE_EQ(levels.left->high, 0.8);
    EXPECT_DOUBLE_EQ(*levels.usualMark, 0.2);
    EXPECT_DOUBLE_EQ(*levels.limitMark, 0.0);
    limit.unbounded = true;
    EXPECT_FALSE(levelsOf(limit).left);
}

TEST(SeasonOf, HoldsWhatIsDueAndTheEventsAhead) {
    Garage garage(Garage::Fill::Season);
    const auto season = seasonOf(garage.book(), garage.machine("Heron 250"));
    ASSERT_EQ(season.events.size(), 3U);
    EXPECT_EQ(season.events.front().label, QStringLiteral("Birch Hollow"));
    EXPECT_GE(season.last, season.events.back().last);
    ASSERT_FALSE(season.groups.empty());
    for (const auto& group : season.groups)
        for (const auto& bar : group.bars) {
            EXPECT_LE(bar.early, bar.likely);
            EXPECT_LE(bar.likely, bar.late);
        }
    const auto all = seasonOf(garage.book(), std::nullopt);
    EXPECT_EQ(all.groups.front().name, QStringLiteral("Heron 250"));
}

class MachinePageTest : public WindowTest {
  protected:
    void SetUp() override {
        openOn(Garage::Fill::Season);
        press(Qt::Key_F5);
        window_->goTo(PageId::Machine);
        list_ = child<QTreeView>("history");
        search_ = child<QLineEdit>("history-search");
    }
    QStringList shown() {
        QStringList words;
        for (int row = 0; row < list_->model()->rowCount(); ++row)
            words << list_->model()->index(row, HistoryModel::Words).data().toString();
        return words;
    }
    EntryStrip* strip() { return child<EntryStrip>("entry-strip"); }

    QTreeView* list_ = nullptr;
    QLineEdit* search_ = nullptr;
};

TEST_F(MachinePageTest, FindsARecordedJobAndKeepsTheKeysInTheBox) {
    press(Qt::Key_F3);
    type(QStringLiteral("spark plug"));
    child<QLineEdit>("note")->setText(QStringLiteral("colour of a biscuit"));
    press(Qt::Key_Return);
    ASSERT_FALSE(strip()->isOpen());
    press(Qt::Key_F, Qt::ControlModifier);
    EXPECT_EQ(QApplication::focusWidget(), search_);
    type(QStringLiteral("biscu"));
    EXPECT_EQ(QApplication::focusWidget(), search_);
    EXPECT_EQ(shown(), QStringList{QStringLiteral("Spark plug")});
    type(QStringLiteral("xx"));
    EXPECT_TRUE(shown().isEmpty());
    EXPECT_TRUE(child<QLabel>("history-nothing")->isVisible());
    search_->clear();
    EXPECT_GT(shown().size(), 10);
}

TEST_F(MachinePageTest, CtrlFFindsFromAnyPage) {
    window_->goTo(PageId::Bench);
    press(Qt::Key_F, Qt::ControlModifier);
    EXPECT_EQ(window_->shownPage(), PageId::Machine);
    EXPECT_EQ(QApplication::focusWidget(), search_);
}

TEST_F(MachinePageTest, AnEntryOpensInItsPlace) {
    search_->setText(QStringLiteral("race"));
    list_->setFocus();
    const auto first = list_->model()->index(0, 0);
    EXPECT_FALSE(list_->isExpanded(first));
    press(Qt::Key_Return);
    EXPECT_TRUE(list_->isExpanded(first));
    press(Qt::Key_Return);
    EXPECT_FALSE(list_->isExpanded(first));
}

TEST_F(MachinePageTest, StrikingNeedsAReasonAndLeavesTheEntryReadable) {
    search_->setText(QStringLiteral("left radiator guard"));
    list_->setFocus();
    press(Qt::Key_Delete);
    ASSERT_TRUE(strip()->isOpen());
    press(Qt::Key_Return);
    EXPECT_TRUE(strip()->isOpen()) << "no reason, no strike";
    type(QStringLiteral("it was the other machine"));
    press(Qt::Key_Return);
    ASSERT_FALSE(strip()->isOpen());
    ASSERT_EQ(shown().size(), 1);
    const auto line = list_->model()->index(0, HistoryModel::Words);
    EXPECT_TRUE(line.data(Qt::FontRole).value<QFont>().strikeOut());
    EXPECT_EQ(garage_->book().ledger().all<upkeep::Snag>().size(), 1U);
}

TEST_F(MachinePageTest, CorrectingStrikesAndEntersAnew) {
    const auto before = garage_->book().ledger().all<usage::Outing>().size();
    search_->setText(QStringLiteral("race"));
    list_->setFocus();
    press(Qt::Key_C);
    ASSERT_TRUE(strip()->isOpen());
    auto* hours = child<QLineEdit>("hours");
    EXPECT_FALSE(hours->text().isEmpty()) << "begins with what was entered";
    hours->setText(QStringLiteral("1,25"));
    child<QLineEdit>("reason")->setText(QStringLiteral("misread the watch"));
    child<QCheckBox>("crash")->setFocus();
    press(Qt::Key_Return);
    ASSERT_FALSE(strip()->isOpen());
    const auto& outings = garage_->book().ledger().all<usage::Outing>();
    EXPECT_EQ(outings.size(), before);
    const auto struck = garage_->book().ledger().struck<usage::Outing>();
    ASSERT_EQ(struck.size(), 1U);
    const auto again = std::find_if(outings.begin(), outings.end(), [&](const usage::Outing& outing) {
        return outing.entered == struck[0].entered;
    });
    ASSERT_NE(again, outings.end()) << "in the place of what it corrects";
    EXPECT_EQ(again->hours, units::Hours{125});
    EXPECT_EQ(again->kind, usage::OutingKind::Race);
    press(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_TRUE(garage_->book().ledger().struck<usage::Outing>().empty());
}

TEST_F(MachinePageTest, TakesAnItemOffAndFitsItAgain) {
    auto* tree = child<QTreeView>("fitted");
    auto* model = qobject_cast<FittedModel*>(tree->model());
    const auto fork = [this] {
        for (const auto& item : garage_->book().ledger().all<items::Item>())
            if (item.name == "fork set")
                return item.id;
        return ItemId{};
    }();
    tree->setFocus();
    tree->setCurrentIndex(model->find(fork));
    press(Qt::Key_T);
    ASSERT_TRUE(strip()->isOpen());
    press(Qt::Key_Return);
    ASSERT_FALSE(strip()->isOpen());
    EXPECT_FALSE(model->node(model->find(fork))->isFitted);
    EXPECT_FALSE(garage_->book().fittings().at(garage_->machine("Heron 250"), "fork",
                                               calendar::Moment{garage_->book().today()}));
    // Its place stands empty on the machine: two keys put it back.
    tree->setCurrentIndex(model->find(fork));
    EXPECT_TRUE(model->node(model->find(fork))->isGap);
    EXPECT_EQ(model->node(model->find(fork))->place, QStringLiteral("fork"));
    EXPECT_TRUE(child<QLabel>("state")->text().startsWith("Not whole: fork, off since"))
        << child<QLabel>("state")->text().toStdString();
    press(Qt::Key_F);
    press(Qt::Key_Return);
    ASSERT_FALSE(strip()->isOpen());
    EXPECT_EQ(garage_->book().fittings().at(garage_->machine("Heron 250"), "fork",
                                            calendar::Moment{garage_->book().today()}),
              fork);
}

TEST_F(MachinePageTest, ShowsAllMachinesWhenNoneIsChosen) {
    press(Qt::Key_Escape);
    EXPECT_FALSE(garage_->workbench().chosen());
    EXPECT_FALSE(list_->isColumnHidden(HistoryModel::Machine));
    press(Qt::Key_F5);
    EXPECT_TRUE(list_->isColumnHidden(HistoryModel::Machine));
}

class EmptyMachinePage : public WindowTest {};

TEST_F(EmptyMachinePage, SaysWhatToDoFirst) {
    openOn(Garage::Fill::OneMachine);
    window_->goTo(PageId::Machine);
    auto* kinds = child<QComboBox>("history-kind");
    kinds->setCurrentIndex(1);
    EXPECT_TRUE(child<QLabel>("history-nothing")->isVisible());
    child<QTreeView>("fitted")->setFocus();
    press(Qt::Key_F);
    EXPECT_TRUE(child<EntryStrip>("entry-strip")->isOpen());
}

}  // namespace
}  // namespace wm::ui

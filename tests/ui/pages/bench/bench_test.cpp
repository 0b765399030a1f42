// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <QAbstractItemModelTester>
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QScrollBar>
#include <QTreeWidget>
#include <algorithm>

#include "tests/ui/window.h"
#include "ui/entry/entry_strip.h"
#include "ui/pages/bench/bench_grid.h"
#include "ui/pages/bench/bench_model.h"
#include "ui/pages/machine_columns.h"
#include "ui/tables/row_table.h"
#include "ui/words/figures.h"

namespace wm::ui {
namespace {

std::vector<BenchColumn> columnsOf(const book::Book& book) {
    std::vector<MachineId> all;
    for (const auto* machine : book.machines())
        all.push_back(machine->id);
    std::vector<BenchColumn> columns;
    for (const auto machine : all)
        columns.push_back(benchColumn(book, machine, all));
    return columns;
}

TEST(BenchModel, IsAProperModel) {
    Garage garage(Garage::Fill::Season);
    BenchModel model;
    QAbstractItemModelTester tester(&model, QAbstractItemModelTester::FailureReportingMode::Fatal);
    model.show({"a", "b", "c"}, columnsOf(garage.book()));
    for (const int rows : {1, 12, 20, 200})
        model.fit(rows);
    model.show({}, {});
    EXPECT_EQ(model.rowCount(), 0);
}

TEST(BenchModel, KeepsWithinTheRoomAndCountsTheRest) {
    Garage garage(Garage::Fill::Season);
    const auto columns = columnsOf(garage.book());
    BenchModel model;
    model.show({"a", "b", "c"}, columns);
    model.fit(28);
    EXPECT_LE(model.rowCount(), 28);
    // In each band and column: what is shown and what is counted make up all of it.
    for (std::size_t column = 0; column < columns.size(); ++column)
        for (int band = 0; band < kBands; ++band) {
            int shown = 0;
            int counted = 0;
            for (int row = 0; row < model.rowCount(); ++row) {
                const auto index = model.index(row, static_cast<int>(column) + 1);
                if (index.data(BenchModel::BandRole).toInt() != band)
                    continue;
                const auto& cell = model.cell(index);
                if (cell.kind == BenchCell::Kind::More) {
                    const auto words = cell.words.split(QLatin1Char(' '));
                    for (const auto& word : words)
                        counted += word.toInt();
                } else if (cell.machine != MachineId{}) {  // all but the word that stands where nothing does
                    ++shown;
                }
            }
            EXPECT_EQ(shown + counted,
                      static_cast<int>(columns[column][static_cast<std::size_t>(band)].size()))
                << "band " << band << ", column " << column;
        }
}

// Three doubtful joints in one line are no less amber than one of them alone, and a loose one among them is
// red.
TEST(BenchModel, WhatIsFoldedAwayIsAsGraveAsItsWorst) {
    BenchCell joint;
    joint.kind = BenchCell::Kind::Joint;
    joint.machine = MachineId(1);
    joint.ride = BenchCell::Ride::NotUnseen;
    BenchColumn column(kBands);
    auto& doubts = column[static_cast<std::size_t>(Band::InDoubt)];
    doubts.assign(3, joint);
    BenchModel model;
    const auto more = [&] {
        model.show({"a"}, {column});
        model.fit(1);
        for (int row = 0; row < model.rowCount(); ++row)
            if (const auto& cell = model.cell(model.index(row, 1)); cell.kind == BenchCell::Kind::More)
                return cell;
        return BenchCell{};
    };
    EXPECT_EQ(more().ride, BenchCell::Ride::NotUnseen);
    doubts.back().ride = BenchCell::Ride::No;
    EXPECT_EQ(more().ride, BenchCell::Ride::No);
    joint.ride = BenchCell::Ride::Yes;
    doubts.assign(3, joint);
    EXPECT_EQ(more().ride, BenchCell::Ride::Yes);
}

TEST(BenchModel, DoesNotCallClearWhatNobodyRecorded) {
    BenchCell never;
    never.kind = BenchCell::Kind::Job;
    never.machine = MachineId(1);
    BenchColumn column(kBands);
    column[static_cast<std::size_t>(Band::NeverRecorded)].assign(83, never);
    BenchModel model;
    model.show({"a", "b"}, {column, BenchColumn(kBands)});
    EXPECT_EQ(model.index(0, 0).data().toString(), "must");
    EXPECT_EQ(model.index(0, 1).data().toString(), "nothing known; 83 without record");
    EXPECT_EQ(model.index(1, 1).data().toString(), "nothing known");
    EXPECT_EQ(model.index(0, 2).data().toString(), "nothing");
}

TEST(BenchModel, PutsWhatIsHandTightBeforeTheJobs) {
    BenchCell cell;
    cell.kind = BenchCell::Kind::Joint;
    BenchColumn column(kBands);
    column[static_cast<std::size_t>(Band::HandTight)].push_back(cell);
    column[static_cast<std::size_t>(Band::Must)].push_back(cell);
    BenchModel model;
    model.show({"a"}, {column});
    EXPECT_EQ(model.index(0, 0).data().toString(), "hand-tight");
    EXPECT_EQ(model.index(1, 0).data().toString(), "must");
}

TEST(BenchCells, PutEachJobWhereItBelongs) {
    Garage garage(Garage::Fill::Season);
    const auto heron = garage.machine("Heron 250");
    const auto column = benchColumn(garage.book(), heron, {heron});
    const auto has = [&column](Band band, const char* words) {
        const auto& cells = column[static_cast<std::size_t>(band)];
        return std::any_of(cells.begin(), cells.end(),
                           [words](const BenchCell& cell) { return cell.words == QLatin1String(words); });
    };
    EXPECT_TRUE(has(Band::Must, "Rear tyre"));
    EXPECT_TRUE(has(Band::Should, "Engine oil"));
    EXPECT_TRUE(has(Band::CanWait, "Fork oil"));
    EXPECT_TRUE(has(Band::NeverRecorded, "Coolant"));
    EXPECT_TRUE(has(Band::Snags, "left radiator guard bent"));
    EXPECT_TRUE(has(Band::PutOff, "fork seal weeps, right"));
    EXPECT_FALSE(has(Band::Snags, "fork seal weeps, right"));
    const auto& never = column[static_cast<std::size_t>(Band::NeverRecorded)];
    const auto isSafety = [&garage](const BenchCell& cell) {
        return upkeep::isSafety(garage.book().task(*cell.task)->consequence);
    };
    EXPECT_TRUE(std::is_partitioned(never.begin(), never.end(), isSafety));
    const auto sorrel = garage.machine("Sorrel 450");
    const auto open = benchColumn(garage.book(), sorrel, {sorrel});
    const auto& joints = open[static_cast<std::size_t>(Band::HandTight)];
    ASSERT_EQ(joints.size(), 1U);
    EXPECT_EQ(joints.front().ride, BenchCell::Ride::No);
}

class BenchPageTest : public WindowTest {
  protected:
    void SetUp() override {
        openOn(Garage::Fill::Season);
        grid_ = child<BenchGrid>("bench-grid");
        model_ = qobject_cast<BenchModel*>(grid_->model());
    }
    const BenchCell& current() { return model_->cell(grid_->currentIndex()); }
    void stepOn(const char* words) {
        for (int column = 1; column < model_->columnCount(); ++column)
            for (int row = 0; row < model_->rowCount(); ++row)
                if (model_->cell(model_->index(row, column)).words == QLatin1String(words))
                    return grid_->setCurrentIndex(model_->index(row, column));
        ADD_FAILURE() << "no cell says " << words;
    }

    BenchGrid* grid_ = nullptr;
    BenchModel* model_ = nullptr;
};

TEST_F(BenchPageTest, ShowsThreeMachinesWithoutScrolling) {
    window_->resize(1280, 800);
    QApplication::processEvents();
    EXPECT_LE(grid_->rowHeight() * model_->rowCount(), grid_->viewport()->height());
    int width = 0;
    for (int column = 0; column < model_->columnCount(); ++column)
        width += grid_->columnWidth(column);
    EXPECT_LE(width, grid_->viewport()->width());
    EXPECT_EQ(grid_->columnViewportPosition(1), kGutter);
}

TEST_F(BenchPageTest, SaysTheOtherKeysInOneLine) {
    window_->resize(1280, 800);
    QApplication::processEvents();
    for (const auto* label : window_->page(PageId::Bench)->findChildren<QLabel*>())
        if (label->text().startsWith(QStringLiteral("Ctrl+B"))) {
            EXPECT_GE(label->width(), label->fontMetrics().horizontalAdvance(label->text()));
            return;
        }
    FAIL() << "no label says it";
}

TEST_F(BenchPageTest, OneMachineScrollsDownAndNeverSideways) {
    window_->resize(1280, 700);
    garage_->workbench().choose(garage_->machine("Sorrel 450"));
    QApplication::processEvents();
    ASSERT_GT(grid_->verticalScrollBar()->maximum(), 0);
    EXPECT_EQ(grid_->horizontalScrollBar()->maximum(), 0);
}

TEST_F(BenchPageTest, ArrowsGoFromJobToJobAndMachineToMachine) {
    EXPECT_EQ(QApplication::focusWidget(), grid_);
    ASSERT_TRUE(current().canBeChosen());
    const auto first = grid_->currentIndex();
    press(Qt::Key_Down);
    EXPECT_EQ(grid_->currentIndex(), first.siblingAtRow(first.row() + 1));
    for (int step = 0; step < 40; ++step) {
        press(Qt::Key_Down);
        EXPECT_TRUE(current().canBeChosen());
    }
    press(Qt::Key_Right);
    EXPECT_EQ(grid_->currentIndex().column(), 2);
    EXPECT_TRUE(current().canBeChosen());
    press(Qt::Key_Right);
    EXPECT_EQ(grid_->currentIndex().column(), 3);
    press(Qt::Key_Right);
    EXPECT_EQ(grid_->currentIndex().column(), 3);
}

TEST_F(BenchPageTest, SpacePutsAJobIntoTheWeekendAndOutAgain) {
    const auto task = current().task;
    ASSERT_TRUE(task);
    press(Qt::Key_Space);
    EXPECT_TRUE(garage_->book().dueLine(*task)->picked);
    EXPECT_EQ(current().task, task) << "the cursor stays on its job";
    press(Qt::Key_Space);
    EXPECT_FALSE(garage_->book().dueLine(*task)->picked);
}

TEST_F(BenchPageTest, EnterRecordsTheJobUnderTheCursor) {
    press(Qt::Key_Down);
    const auto task = current().task;
    const auto name = current().words;
    ASSERT_TRUE(task);
    const auto before = garage_->book().ledger().all<upkeep::Record>().size();
    press(Qt::Key_Return);
    EXPECT_EQ(child<QLineEdit>("task")->text(), name);
    press(Qt::Key_Return);
    ASSERT_EQ(garage_->book().ledger().all<upkeep::Record>().size(), before + 1);
    EXPECT_EQ(garage_->book().ledger().all<upkeep::Record>().back().task, task);
    EXPECT_EQ(QApplication::focusWidget(), grid_) << "the keys go back to where they were";
}

TEST_F(BenchPageTest, EnterOnAHandTightJointIsAboutThatJoint) {
    const auto sorrel = garage_->machine("Sorrel 450");
    const auto open = garage_->book().handTight(sorrel);
    ASSERT_EQ(open.size(), 1U);
    BenchCell like;
    like.kind = BenchCell::Kind::Joint;
    like.machine = sorrel;
    like.words = text(open[0].joint->name);
    const auto at = model_->find(like);
    ASSERT_TRUE(at.isValid());
    grid_->setCurrentIndex(at);
    press(Qt::Key_Return);
    auto* joints = child<RowTable>("handTightJoints");
    EXPECT_TRUE(joints->isVisible());
    EXPECT_EQ(QApplication::focusWidget(), joints);
    EXPECT_EQ(joints->chosenId(), open[0].joint->joint.value());
}

TEST(BenchCells, WhatIsOverGoesBeforeWhatIsNot) {
    Garage garage(Garage::Fill::Demo);
    int both = 0;
    for (const auto* machine : garage.book().machines()) {
        const auto column = benchColumn(garage.book(), machine->id, {machine->id});
        const auto& must = column[static_cast<std::size_t>(Band::Must)];
        const auto isOver = [](const BenchCell& cell) {
            return cell.mark && cell.mark->kind == MarkState::Kind::Overdue;
        };
        EXPECT_TRUE(std::is_partitioned(must.begin(), must.end(), isOver)) << machine->name;
        both +=
            std::any_of(must.begin(), must.end(), isOver) && !std::all_of(must.begin(), must.end(), isOver);
    }
    EXPECT_GT(both, 0);
}

TEST(BenchCells, CarryTheShortNameOfTheTask) {
    Garage garage(Garage::Fill::Demo);
    const auto sorrel = garage.machine("Sorrel 450");
    const auto column = benchColumn(garage.book(), sorrel, {sorrel});
    const auto& must = column[static_cast<std::size_t>(Band::Must)];
    const auto bearings = std::find_if(must.begin(), must.end(), [](const BenchCell& cell) {
        return cell.words == QLatin1String("Front wheel bearings and seals");
    });
    ASSERT_NE(bearings, must.end());
    EXPECT_EQ(bearings->shortWords, "Front bearings");
}

// 0.09 mm at a limit of 0.09 is known, where an interval is only reckoned: it is not hidden behind "and 3
// more".
TEST(BenchCells, WhatWasMeasuredToBeAtItsLimitComesFirst) {
    Garage garage(Garage::Fill::Demo);
    const auto sorrel = garage.machine("Sorrel 450");
    const auto column = benchColumn(garage.book(), sorrel, {sorrel});
    const auto& should = column[static_cast<std::size_t>(Band::Should)];
    ASSERT_GT(should.size(), 1U);
    EXPECT_EQ(should.front().words, "Shims");
}

// Whatever was written down last: what is entered now is about the machine under the cursor.
TEST_F(BenchPageTest, EntriesAreAboutTheMachineUnderTheCursor) {
    for (const Qt::Key step : {Qt::Key_unknown, Qt::Key_Right, Qt::Key_Right}) {
        if (step != Qt::Key_unknown)
            press(step);
        const MachineId here = current().machine;
        press(Qt::Key_F3);
        const auto all = window_->findChildren<QComboBox*>(QStringLiteral("machine"));
        const auto shown = std::find_if(all.begin(), all.end(), [](auto* each) { return each->isVisible(); });
        ASSERT_NE(shown, all.end());
        EXPECT_EQ((*shown)->currentText(), text(garage_->book().ledger().find<items::Machine>(here)->name));
        press(Qt::Key_Escape);
    }
}

TEST_F(BenchPageTest, PutsOffWithReasonAndEnd) {
    const auto task = current().task;
    ASSERT_TRUE(task && upkeep::isSafety(garage_->book().task(*task)->consequence));
    press(Qt::Key_D);
    press(Qt::Key_Return);
    EXPECT_TRUE(child<EntryStrip>("entry-strip")->isOpen()) << "a safety job needs a reason and an end";
    child<QLineEdit>("until")->setText(QStringLiteral("+5"));
    child<QLineEdit>("reason")->setText(QStringLiteral("disc is on its way"));
    press(Qt::Key_Return);
    ASSERT_NE(garage_->book().dueLine(*task)->deferral, nullptr);
    EXPECT_EQ(garage_->book().dueLine(*task)->deferral->untilDate, day("2026-05-12"));
}

TEST_F(BenchPageTest, SaysWhy) {
    press(Qt::Key_Down);
    press(Qt::Key_F1);
    auto* why = QApplication::activePopupWidget();
    ASSERT_NE(why, nullptr);
    EXPECT_TRUE(why->accessibleName().contains(QStringLiteral("Rear brake pads")))
        << why->accessibleName().toStdString();
    EXPECT_TRUE(why->accessibleName().contains(QStringLiteral("limit")))
        << why->accessibleName().toStdString();
    QTest::keyClick(why, Qt::Key_A);
    EXPECT_EQ(QApplication::activePopupWidget(), nullptr);
}

TEST_F(BenchPageTest, WhyIsATreeThatTheArrowsOpenAndEscapeLeaves) {
    stepOn("Engine oil");
    press(Qt::Key_F1);
    auto* why = QApplication::activePopupWidget();
    ASSERT_NE(why, nullptr);
    auto* tree = why->findChild<QTreeWidget*>(QStringLiteral("derivation"));
    ASSERT_NE(tree, nullptr);
    EXPECT_EQ(QApplication::focusWidget(), tree);
    const auto* decides = tree->findItems(QStringLiteral("what decides"), Qt::MatchRecursive).value(0);
    ASSERT_NE(decides, nullptr);
    EXPECT_TRUE(decides->isExpanded());
    ASSERT_EQ(decides->childCount(), 2);
    EXPECT_EQ(decides->child(1)->text(0), QStringLiteral("behind it"));
    auto* group = decides->child(1)->child(0);
    ASSERT_NE(group, nullptr);
    EXPECT_FALSE(group->isExpanded()) << "a list of facts opens when asked for";
    tree->setCurrentItem(group);
    QTest::keyClick(tree, Qt::Key_Right);
    EXPECT_TRUE(group->isExpanded());
    QTest::keyClick(tree, Qt::Key_Left);
    EXPECT_FALSE(group->isExpanded());
    QTest::keyClick(tree, Qt::Key_Escape);
    EXPECT_EQ(QApplication::activePopupWidget(), nullptr);
}

TEST_F(BenchPageTest, TheRestOpensItsMachine) {
    for (int row = 0; row < model_->rowCount(); ++row)
        if (model_->cell(model_->index(row, 2)).kind == BenchCell::Kind::More) {
            const auto machine = model_->cell(model_->index(row, 2)).machine;
            grid_->setCurrentIndex(model_->index(row, 2));
            press(Qt::Key_Return);
            EXPECT_EQ(garage_->workbench().chosen(), machine);
            EXPECT_EQ(model_->columnCount(), 2);
            press(Qt::Key_Escape);
            EXPECT_EQ(model_->columnCount(), 4);
            return;
        }
    FAIL() << "nothing was left out";
}

}  // namespace
}  // namespace wm::ui

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// Tasks are written and changed by the keys alone.
#include <QAction>
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QMenu>
#include <QPushButton>
#include <QToolButton>

#include "tests/ui/window.h"
#include "ui/pages/tasks/task_rows.h"
#include "ui/tables/row_table.h"
#include "ui/words/figures.h"

namespace wm::ui {
namespace {

class TasksPageTest : public WindowTest {
  protected:
    void SetUp() override {
        openOn(Garage::Fill::Season);
        garage_->workbench().choose(garage_->machine("Heron 250"));
        window_->goTo(PageId::Tasks);
        table_ = child<RowTable>("tasksTable");
        forkOil_ = garage_->task("Heron 250", "fork-oil");
        linkage_ = garage_->task("Heron 250", "linkage-grease");
    }
    const upkeep::TaskVersion& version(TaskId task) { return *garage_->book().task(task); }
    void choose(TaskId task) {
        table_->choose(task.value());
        table_->setFocus();
    }
    QLineEdit* line(const char* name) { return child<QLineEdit>(name); }
    QString preview() {
        QTest::qWait(200);  // a pause in typing
        return child<QLabel>("task-preview")->text();
    }
    QString cell(TaskId task, TaskColumn column) {
        for (const auto& row : table_->rows().rows())
            if (row.id == task.value())
                return row.cells.at(column).text;
        return {};
    }
    std::int64_t left(TaskId task) { return garage_->book().dueLine(task)->countdown.limits.front().left; }

    RowTable* table_ = nullptr;
    TaskId forkOil_;
    TaskId linkage_;
};

TEST_F(TasksPageTest, AnIntervalIsChangedByTheKeysAndTheDueListFollows) {
    choose(forkOil_);
    const auto before = version(forkOil_);
    const auto leftBefore = left(forkOil_);
    ASSERT_EQ(before.limits.front().counter, upkeep::Counter::Hours);
    press(Qt::Key_Return);
    ASSERT_EQ(QApplication::focusWidget()->objectName(), QStringLiteral("task-limits-0-every"));
    type(QStringLiteral("7,5"));
    const QString foretold = preview();
    EXPECT_TRUE(foretold.startsWith(text(before.name) + QStringLiteral(": "))) << foretold.toStdString();
    EXPECT_TRUE(foretold.contains(QStringLiteral("→"))) << foretold.toStdString();
    EXPECT_EQ(version(forkOil_).limits, before.limits);  // nothing is written before it is saved
    press(Qt::Key_Return);
    EXPECT_EQ(version(forkOil_).limits.front().every, 750);
    EXPECT_EQ(version(forkOil_).validFrom, garage_->book().today());
    EXPECT_EQ(left(forkOil_), leftBefore - before.limits.front().every + 750);
    EXPECT_TRUE(foretold.contains(cell(forkOil_, TaskDue))) << foretold.toStdString();
    EXPECT_EQ(QApplication::focusWidget(), table_);
    press(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(version(forkOil_).limits, before.limits);
    EXPECT_EQ(left(forkOil_), leftBefore);
    EXPECT_EQ(line("task-limits-0-every")->text().toDouble() * 100,
              static_cast<double>(before.limits.front().every));
}

TEST_F(TasksPageTest, AChangeOfWordsSaysThatItMovesNothing) {
    choose(forkOil_);
    EXPECT_FALSE(child<QPushButton>("task-save")->isEnabled());
    line("task-source")->setFocus();
    line("task-source")->selectAll();
    type(QStringLiteral("Heron manual"));
    EXPECT_EQ(preview(), QStringLiteral("Changes nothing in today's list."));
    EXPECT_TRUE(child<QPushButton>("task-save")->isEnabled());
}

TEST_F(TasksPageTest, AFaultStandsAtItsField) {
    choose(forkOil_);
    press(Qt::Key_Return);
    type(QStringLiteral("soon"));
    press(Qt::Key_Return);
    const auto* fault = child<QLabel>("task-limits-0-every-fault");
    EXPECT_TRUE(fault->isVisible());
    EXPECT_TRUE(fault->text().contains(QStringLiteral("soon"))) << fault->text().toStdString();
    EXPECT_FALSE(fault->text().contains(QStringLiteral("limits"))) << fault->text().toStdString();
    EXPECT_EQ(QApplication::focusWidget(), line("task-limits-0-every"));
    EXPECT_EQ(line("task-limits-0-every")->text(), QStringLiteral("soon"));
    line("task-limits-0-every")->selectAll();
    type(QStringLiteral("0"));  // what the fields can read, the verb may still refuse
    press(Qt::Key_Return);
    EXPECT_TRUE(fault->isVisible());
    line("task-limits-0-every")->selectAll();
    type(QStringLiteral("9"));
    press(Qt::Key_Return);
    EXPECT_EQ(version(forkOil_).limits.front().every, 900);
    EXPECT_FALSE(fault->isVisible());
}

TEST_F(TasksPageTest, AFaultInAFoldOpensIt) {
    choose(forkOil_);
    auto* add = child<QPushButton>("task-kit-add");
    EXPECT_FALSE(add->isVisible());
    add->click();
    line("task-name")->setFocus();
    press(Qt::Key_Return);
    const auto at = version(forkOil_).kit.size();
    const auto* fault = window_->findChild<QLabel*>(QStringLiteral("task-kit-%1-what-fault").arg(at));
    ASSERT_NE(fault, nullptr);
    EXPECT_TRUE(fault->isVisible());
}

// What a task says of the order of work, and what is done besides, reads as sentences and can be changed.
TEST_F(TasksPageTest, ItsOrderAndWhatIsDoneBesidesAreChanged) {
    using upkeep::Deed;
    const auto brakes = garage_->task("Heron 250", "brakes-check");
    choose(brakes);
    const auto before = version(brakes);
    ASSERT_EQ(before.edges.size(), 2U);
    const auto box = [this](const char* name) { return child<QComboBox>(name); };
    EXPECT_EQ(box("task-edges-1-earlier_code")->currentText(),
              QStringLiteral("Rear wheel out, caliper hanger free"));
    EXPECT_EQ(box("task-edges-1-later_code")->currentText(), text(before.name));
    child<QPushButton>("task-doings-add")->click();
    line("task-doings-0-what")->setFocus();
    type(QStringLiteral("Wipe the discs"));
    child<QPushButton>("task-edges-add")->click();
    const auto say = [&](const char* deedBox, Deed deed, const char* codeBox, const QString& words) {
        box(deedBox)->setCurrentIndex(static_cast<int>(deed));
        emit box(deedBox)->activated(static_cast<int>(deed));
        box(codeBox)->setFocus();
        box(codeBox)->lineEdit()->selectAll();
        type(words);
    };
    say("task-edges-2-earlier", Deed::Job, "task-edges-2-earlier_code", text(before.name));
    say("task-edges-2-later", Deed::Do, "task-edges-2-later_code", QStringLiteral("wipe"));
    press(Qt::Key_Return);
    ASSERT_EQ(version(brakes).doings.size(), 1U) << preview().toStdString();
    EXPECT_EQ(version(brakes).doings[0].code, "wipe-the-discs");
    ASSERT_EQ(version(brakes).edges.size(), 3U);
    EXPECT_EQ(version(brakes).edges[2],
              (upkeep::Edge{{Deed::Job, "brakes-check"}, {Deed::Do, "wipe-the-discs"}}));
    EXPECT_EQ(version(brakes).confirmed, before.confirmed);
    // And the other way round as well: each would wait for the other.
    child<QPushButton>("task-edges-add")->click();
    say("task-edges-3-earlier", Deed::Do, "task-edges-3-earlier_code", QStringLiteral("wipe"));
    say("task-edges-3-later", Deed::Job, "task-edges-3-later_code", text(before.name));
    press(Qt::Key_Return);
    EXPECT_EQ(version(brakes).edges.size(), 3U);
    EXPECT_TRUE(preview().contains(QStringLiteral("wait"))) << preview().toStdString();
}

TEST_F(TasksPageTest, WhatWasTypedStaysWithItsTask) {
    choose(forkOil_);
    press(Qt::Key_Return);
    type(QStringLiteral("7.5"));
    choose(linkage_);
    EXPECT_NE(line("task-limits-0-every")->text(), QStringLiteral("7.5"));
    EXPECT_TRUE(cell(forkOil_, TaskName).endsWith(QStringLiteral("(not saved)")));
    EXPECT_FALSE(cell(linkage_, TaskName).endsWith(QStringLiteral("(not saved)")));
    window_->goTo(PageId::Bench);
    garage_->workbench().choose(garage_->machine("Sorrel 450"));
    window_->goTo(PageId::Tasks);
    garage_->workbench().choose(garage_->machine("Heron 250"));
    choose(forkOil_);
    EXPECT_EQ(line("task-limits-0-every")->text(), QStringLiteral("7.5"));
    prompts_.agrees = false;
    window_->close();
    EXPECT_TRUE(window_->isVisible());  // asked first: there is something not saved
    child<QPushButton>("task-drop")->click();
    EXPECT_FALSE(cell(forkOil_, TaskName).endsWith(QStringLiteral("(not saved)")));
    EXPECT_NE(line("task-limits-0-every")->text(), QStringLiteral("7.5"));
}

TEST_F(TasksPageTest, TheFilterKeepsTheKeysWhileTheTableFollows) {
    auto* find = line("tasksFind");
    find->setFocus();
    type(QStringLiteral("fork"));
    EXPECT_EQ(QApplication::focusWidget(), find);
    EXPECT_LT(table_->shownIds().size(), 10U);
    garage_->ride("Heron 250", "2026-05-03", 100, usage::OutingKind::Practice, usage::Ground::Dust, false);
    EXPECT_EQ(QApplication::focusWidget(), find);
    EXPECT_LT(table_->shownIds().size(), 10U);
}

TEST_F(TasksPageTest, OneKeyConfirmsAFigureAndAsksForItsPage) {
    choose(forkOil_);
    const auto count = confirmedOf(garage_->book(), garage_->machine("Heron 250"));
    press(Qt::Key_F12);
    EXPECT_FALSE(version(forkOil_).confirmed);
    ASSERT_EQ(QApplication::focusWidget(), line("task-page"));
    EXPECT_TRUE(child<QLabel>("task-page-fault")->isVisible());
    EXPECT_EQ(line("task-source")->text(), QStringLiteral("service manual"));
    type(QStringLiteral("3-12"));
    press(Qt::Key_F12);
    EXPECT_TRUE(version(forkOil_).confirmed);
    EXPECT_EQ(version(forkOil_).page, "3-12");
    EXPECT_EQ(child<QLabel>("tasks-progress")->text(),
              QStringLiteral("%1 of %2 confirmed").arg(count.confirmed + 1).arg(count.all));
    ASSERT_TRUE(table_->chosenId());
    const TaskId next(*table_->chosenId());
    EXPECT_NE(next, forkOil_);
    EXPECT_FALSE(version(next).confirmed);
    ASSERT_EQ(QApplication::focusWidget(), line("task-page"));  // the next one wants its page at once
    type(QStringLiteral("3-13"));
    press(Qt::Key_F12);
    EXPECT_TRUE(version(next).confirmed);
    garage_->workbench().undo();
    EXPECT_FALSE(version(next).confirmed);
    EXPECT_TRUE(version(forkOil_).confirmed);
}

TEST_F(TasksPageTest, AnotherFigureIsNotConfirmedUntilSomebodySaysSo) {
    choose(forkOil_);
    press(Qt::Key_F12);
    type(QStringLiteral("3-12"));
    press(Qt::Key_F12);
    ASSERT_TRUE(version(forkOil_).confirmed);
    choose(forkOil_);
    press(Qt::Key_Return);
    type(QStringLiteral("9"));
    press(Qt::Key_Return);
    EXPECT_EQ(version(forkOil_).limits.front().every, 900);
    EXPECT_FALSE(version(forkOil_).confirmed);
}

TEST_F(TasksPageTest, ANewTaskIsWrittenAndUndoneInOneStep) {
    const auto before = garage_->book().tasks(garage_->machine("Heron 250")).size();
    table_->setFocus();
    press(Qt::Key_Insert);
    ASSERT_EQ(QApplication::focusWidget(), line("task-name"));
    type(QStringLiteral("Radiator guard bolts"));
    line("task-limits-0-every")->setFocus();
    type(QStringLiteral("4"));
    EXPECT_TRUE(preview().contains(QStringLiteral("comes onto the list"))) << preview().toStdString();
    press(Qt::Key_Return);
    ASSERT_EQ(garage_->book().tasks(garage_->machine("Heron 250")).size(), before + 1);
    const TaskId task = garage_->task("Heron 250", "radiator-guard-bolts");
    EXPECT_EQ(table_->chosenId(), task.value());
    EXPECT_EQ(version(task).limits.front().every, 400);
    EXPECT_FALSE(version(task).confirmed);
    garage_->workbench().undo();
    EXPECT_EQ(garage_->book().tasks(garage_->machine("Heron 250")).size(), before);
}

TEST_F(TasksPageTest, ATaskIsSwitchedOffAndOnAndNeverDeleted) {
    choose(linkage_);
    press(Qt::Key_Delete);
    EXPECT_TRUE(preview().contains(QStringLiteral("leaves the list"))) << preview().toStdString();
    ASSERT_EQ(QApplication::focusWidget()->objectName(), QStringLiteral("task-save"));
    press(Qt::Key_Space);
    EXPECT_FALSE(version(linkage_).active);
    EXPECT_EQ(garage_->book().dueLine(linkage_), nullptr);
    EXPECT_EQ(cell(linkage_, TaskDue), QStringLiteral("switched off"));
    choose(linkage_);
    press(Qt::Key_Delete);
    press(Qt::Key_Space);
    EXPECT_TRUE(version(linkage_).active);
    EXPECT_NE(garage_->book().dueLine(linkage_), nullptr);
}

TEST_F(TasksPageTest, ACopyBeginsOnTheOtherMachine) {
    table_->setFocus();
    press(Qt::Key_Insert);
    type(QStringLiteral("Guard bolts"));
    line("task-limits-0-every")->setFocus();
    type(QStringLiteral("4"));
    press(Qt::Key_Return);
    auto* copies = child<QPushButton>("task-copy")->menu();
    QAction* toSorrel = nullptr;
    for (auto* action : copies->actions())
        if (action->text() == QStringLiteral("Sorrel 450"))
            toSorrel = action;
    ASSERT_NE(toSorrel, nullptr);
    toSorrel->trigger();
    EXPECT_EQ(garage_->workbench().chosen(), garage_->machine("Sorrel 450"));
    EXPECT_EQ(line("task-source")->text(), QStringLiteral("as on Heron 250"));
    press(Qt::Key_Return);
    EXPECT_EQ(version(garage_->task("Sorrel 450", "guard-bolts")).limits.front().every, 400);
}

TEST_F(TasksPageTest, ATaskWithoutARecordOffersToBeginItsCount) {
    choose(forkOil_);
    EXPECT_FALSE(child<QPushButton>("task-new-on")->isVisible());
    const book::DueLine* never = nullptr;
    for (const auto& line : garage_->book().due(garage_->machine("Heron 250")))
        if (line.countdown.noRecord && !line.task->renews && never == nullptr)
            never = &line;
    ASSERT_NE(never, nullptr);
    const TaskId task = never->task->task;
    choose(task);
    ASSERT_TRUE(child<QPushButton>("task-looked-fine")->isVisible());
    child<QPushButton>("task-looked-fine")->click();
    EXPECT_FALSE(garage_->book().dueLine(task)->countdown.noRecord);
    EXPECT_EQ(garage_->book().dueLine(task)->last->kind, upkeep::RecordKind::LookedFine);
    garage_->workbench().undo();
    choose(task);
    child<QPushButton>("task-done-on")->click();
    ASSERT_EQ(QApplication::focusWidget()->objectName(), QStringLiteral("date"));
    type(QStringLiteral("2026-03-02"));
    press(Qt::Key_Return);
    ASSERT_NE(garage_->book().dueLine(task)->last, nullptr);
    EXPECT_EQ(garage_->book().dueLine(task)->last->kind, upkeep::RecordKind::Baseline);
    EXPECT_EQ(garage_->book().dueLine(task)->last->date, day("2026-03-02"));
}

TEST_F(TasksPageTest, ALimitIsAddedAndTakenOut) {
    choose(forkOil_);
    const auto limits = version(forkOil_).limits.size();
    child<QPushButton>("task-limits-add")->click();
    const QString name = QStringLiteral("task-limits-%1-").arg(limits);
    ASSERT_EQ(QApplication::focusWidget()->objectName(), name + QStringLiteral("every"));
    type(QStringLiteral("12"));
    auto* counter = window_->findChild<QComboBox*>(name + QStringLiteral("counter"));
    counter->setCurrentIndex(counter->findData(QStringLiteral("months")));
    emit counter->activated(counter->currentIndex());
    line("task-name")->setFocus();
    press(Qt::Key_Return);
    ASSERT_EQ(version(forkOil_).limits.size(), limits + 1);
    EXPECT_EQ(version(forkOil_).limits.back().counter, upkeep::Counter::Months);
    EXPECT_EQ(version(forkOil_).limits.back().every, 12);
    window_->findChild<QToolButton*>(name + QStringLiteral("out"))->click();
    line("task-name")->setFocus();
    press(Qt::Key_Return);
    EXPECT_EQ(version(forkOil_).limits.size(), limits);
}

TEST_F(TasksPageTest, SandThatCountsMoreBringsTheJobForward) {
    choose(forkOil_);
    ASSERT_TRUE(version(forkOil_).weights.empty());
    const auto leftBefore = left(forkOil_);
    child<QPushButton>("task-weights-add")->click();
    ASSERT_EQ(QApplication::focusWidget()->objectName(), QStringLiteral("task-weights-0-ground"));
    line("task-weights-0-permille")->setFocus();
    type(QStringLiteral("1,5"));
    press(Qt::Key_Return);
    ASSERT_EQ(version(forkOil_).weights.size(), 1U);
    EXPECT_EQ(version(forkOil_).weights[0].permille, 1500);
    EXPECT_FALSE(version(forkOil_).weights[0].ground) << "any ground was left as it was offered";
    const auto& limit = garage_->book().dueLine(forkOil_)->countdown.limits.front();
    EXPECT_LT(limit.left, leftBefore);
    ASSERT_TRUE(limit.raw) << "the hours as ridden stand beside";
    EXPECT_LT(limit.raw->best, limit.behind.best);
    EXPECT_TRUE(cell(forkOil_, TaskInterval).contains(QStringLiteral("counts 1.5")))
        << cell(forkOil_, TaskInterval).toStdString();
}

TEST_F(TasksPageTest, EscapeLeavesTheFieldsForTheTable) {
    choose(forkOil_);
    press(Qt::Key_Return);
    press(Qt::Key_Escape);
    EXPECT_EQ(QApplication::focusWidget(), table_);
    EXPECT_TRUE(garage_->workbench().chosen());  // not yet all machines
    press(Qt::Key_Escape);
    EXPECT_FALSE(garage_->workbench().chosen());
}

// An amount in ml that was checked is not checked in g.
TEST_F(TasksPageTest, AnotherUnitIsNotConfirmed) {
    auto wanted = version(forkOil_);
    ASSERT_FALSE(wanted.kit.empty());
    wanted.kit.front().confirmed = true;
    wanted.kit.front().source = "Heron 250 service manual (invented)";
    wanted.kit.front().page = "4-2";
    wanted.measures = {{.name = "oil level", .unit = "mm", .least = units::Decimal{100, 0}}};
    wanted.measures.front().source = "Heron 250 service manual (invented), p. 4-3";
    wanted.measures.front().confirmed = true;
    garage_->say([wanted](const verbs::VerbContext& context) { return verbs::saveTask(context, wanted); });
    choose(forkOil_);
    ASSERT_TRUE(version(forkOil_).kit.front().confirmed);
    ASSERT_TRUE(version(forkOil_).measures.front().confirmed);
    auto* unit = child<QComboBox>("task-kit-0-unit");
    const int other = static_cast<int>(upkeep::Unit::Gram);
    unit->setCurrentIndex(other);
    emit unit->activated(other);
    auto* measured = line("task-measures-0-unit");
    measured->setFocus();
    measured->selectAll();
    QTest::keyClicks(measured, QStringLiteral("cm"));
    preview();
    child<QPushButton>("task-save")->click();
    EXPECT_EQ(version(forkOil_).measures.front().unit, "cm");
    EXPECT_EQ(version(forkOil_).kit.front().unit, upkeep::Unit::Gram);
    EXPECT_FALSE(version(forkOil_).kit.front().confirmed);
    EXPECT_FALSE(version(forkOil_).measures.front().confirmed);
}

}  // namespace
}  // namespace wm::ui

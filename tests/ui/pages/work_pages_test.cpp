// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// The pages on which work is planned and booked, by the keys.
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QScrollBar>
#include <algorithm>
#include <set>

#include "core/book/evening.h"
#include "core/verbs/verbs.h"
#include "tests/ui/window.h"
#include "ui/pages/sheets/sheet_rows.h"
#include "ui/pages/weekend/weekend_rows.h"
#include "ui/tables/row_table.h"

namespace wm::ui {
namespace {

class WorkPagesTest : public WindowTest {
  protected:
    void SetUp() override { openOn(Garage::Fill::Season); }
    const book::Book& book() { return garage_->book(); }
    void enter(QLineEdit* field, const char* typed) {
        field->setFocus();
        field->selectAll();
        QTest::keyClicks(field, QString::fromUtf8(typed));
        QTest::keyClick(field, Qt::Key_Return);
    }
};

TEST_F(WorkPagesTest, SpacePutsAJobIntoTheWeekendAndTakesItOut) {
    const MachineId heron = garage_->machine("Heron 250");
    garage_->workbench().choose(heron);
    window_->goTo(PageId::Weekend);
    auto* jobs = child<RowTable>("weekendJobs");
    const TaskId task = garage_->task("Heron 250", "engine-oil");
    const bool before = book().dueLine(task)->picked;
    const auto workBefore = book::eveningOf(book(), heron).work;
    jobs->choose(task.value());
    QTest::keyClick(jobs, Qt::Key_Space);
    EXPECT_NE(book().dueLine(task)->picked, before);
    EXPECT_NE(book::eveningOf(book(), heron).work, workBefore);
    jobs->choose(task.value());
    QTest::keyClick(jobs, Qt::Key_Space);
    EXPECT_EQ(book().dueLine(task)->picked, before);
    EXPECT_EQ(book::eveningOf(book(), heron).work, workBefore);
}

// What was put in goes up to the others; the cursor is on the line that came next.
TEST_F(WorkPagesTest, TheCursorOfTheWeekendStaysInItsPlace) {
    garage_->workbench().choose(garage_->machine("Heron 250"));
    window_->goTo(PageId::Weekend);
    auto* jobs = child<RowTable>("weekendJobs");
    const auto before = jobs->shownIds();
    ASSERT_GT(before.size(), 12U);
    const auto id = before[before.size() - 3];
    ASSERT_FALSE(book().dueLine(TaskId(id))->picked);
    jobs->choose(id);
    const int scrolled = jobs->verticalScrollBar()->value();
    QTest::keyClick(jobs, Qt::Key_Space);
    ASSERT_TRUE(book().dueLine(TaskId(id))->picked);
    EXPECT_EQ(jobs->chosenId(), before[before.size() - 2]);
    EXPECT_NEAR(jobs->verticalScrollBar()->value(), scrolled, 3);
    EXPECT_TRUE(jobs->viewport()->rect().contains(jobs->visualRect(jobs->currentIndex())));
}

TEST_F(WorkPagesTest, AWorkWindowIsTypedInOneLine) {
    window_->goTo(PageId::Weekend);
    child<QLineEdit>("windowFrom")->setText(QString());
    enter(child<QLineEdit>("windowTo"), "25:00");
    EXPECT_EQ(book().nextWindow(), nullptr);  // said beside it, nothing written
    enter(child<QLineEdit>("windowTo"), "20:30");
    ASSERT_NE(book().nextWindow(), nullptr);
    EXPECT_EQ(book().nextWindow()->date.iso(), "2026-05-08");  // "fri" ahead of Thursday, 7 May
    EXPECT_EQ((book().nextWindow()->endsAt - book().nextWindow()->startsAt).count(), 150);
}

TEST_F(WorkPagesTest, HowLongAnEngineCoolsIsTypedBesideTheWindow) {
    window_->goTo(PageId::Weekend);
    auto* cold = child<QLineEdit>("coldAfter");
    EXPECT_EQ(cold->text(), QStringLiteral("4:00"));
    enter(cold, "2:30");
    EXPECT_EQ(book().ledger().garage().cool, units::Minutes{150});
    enter(cold, "soon");
    EXPECT_EQ(book().ledger().garage().cool, units::Minutes{150});
    EXPECT_EQ(cold->text(), QStringLiteral("soon")) << "what can't be read stays as typed";
}

TEST_F(WorkPagesTest, WhatIsDueComesBeforeWhatIsWatchedOrPutOff) {
    garage_->workbench().choose(std::nullopt);
    window_->goTo(PageId::Weekend);
    std::set<SnagId> waits;
    for (const auto* machine : book().machines())
        for (const auto& open : book().snags(machine->id))
            if (!open.picked && (open.deferral != nullptr || open.snag->wish == upkeep::SnagWish::Watch))
                waits.insert(open.snag->id);
    ASSERT_FALSE(waits.empty());
    bool hasWaited = false;
    int due = 0;
    for (const auto id : child<RowTable>("weekendJobs")->shownIds()) {
        const auto* line = book().dueLine(TaskId(id));
        hasWaited = hasWaited || waits.contains(SnagId(id));
        if (line == nullptr || line->picked || line->deferral != nullptr ||
            line->standing.kind != outlook::StandingKind::Overdue)
            continue;
        EXPECT_FALSE(hasWaited) << line->task->name;
        ++due;
    }
    EXPECT_GT(due, 1);
    EXPECT_TRUE(hasWaited);
}

TEST_F(WorkPagesTest, TheOrderSaysWhereTheWindowEnds) {
    const MachineId heron = garage_->machine("Heron 250");
    garage_->workbench().choose(heron);
    window_->goTo(PageId::Weekend);
    const auto work = book::eveningOf(book(), heron).work.count();
    ASSERT_GT(work, 20);
    const auto ends = [&](const char* until) {
        child<QLineEdit>("windowFrom")->setText(QString());
        enter(child<QLineEdit>("windowTo"), until);
        std::vector<int> rows;
        const auto* order = child<RowTable>("weekendOrder")->model();
        for (int row = 0; row < order->rowCount(); ++row)
            if (order->index(row, 1).data().toString().startsWith("The work window ends"))
                rows.push_back(row);
        return rows;
    };
    EXPECT_TRUE(ends("23:59").empty());
    const auto at = ends("18:10");  // it begins at 18:00
    ASSERT_EQ(at.size(), 1U);
    const auto* order = child<RowTable>("weekendOrder")->model();
    EXPECT_EQ(order->index(at.front(), 0).data().toString(), "18:10");
    EXPECT_LT(order->index(at.front() - 1, 0).data().toString(), "18:10");
    EXPECT_LT(at.front(), order->rowCount() - 1);
}

TEST_F(WorkPagesTest, TheShelfTakesACountAndRefusesNonsense) {
    window_->goTo(PageId::Shelf);
    auto* lines = child<RowTable>("shelfLines");
    ASSERT_TRUE(lines->chosenId());
    const StockLineId line(*lines->chosenId());
    const auto before = book().onHand(line)->amount;
    auto* what = child<QComboBox>("stockWhat");
    auto* amount = child<QLineEdit>("stockAmount");
    what->setCurrentIndex(0);
    for (const char* typed : {"-3", "nan", "1e9", "99999999999", ""}) {
        enter(amount, typed);
        EXPECT_EQ(book().onHand(line)->amount, before) << typed;
    }
    enter(amount, "3");
    EXPECT_EQ(book().onHand(line)->amount, before + 3);
    garage_->workbench().undo();
    EXPECT_EQ(book().onHand(line)->amount, before);
}

TEST_F(WorkPagesTest, ANewLineComesWithWhatIsThereAndGoesInOneUndo) {
    window_->goTo(PageId::Shelf);
    const auto lines = book().ledger().all<stock::StockLine>().size();
    child<QComboBox>("stockWhat")->setCurrentIndex(5);
    child<QLineEdit>("stockAmount")->setText("4");
    enter(child<QLineEdit>("stockName"), "chain link");
    ASSERT_EQ(book().ledger().all<stock::StockLine>().size(), lines + 1);
    const auto& all = book().ledger().all<stock::StockLine>();
    const auto made =
        std::find_if(all.begin(), all.end(), [](const auto& l) { return l.name == "chain link"; });
    ASSERT_NE(made, all.end());
    EXPECT_EQ(book().onHand(made->id)->amount, 4);
    // The keys are in the field, which holds no letters of its own any more.
    ASSERT_EQ(QApplication::focusWidget(), child<QLineEdit>("stockName"));
    press(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(child<QLineEdit>("stockName")->text(), QString());
    EXPECT_EQ(book().ledger().all<stock::StockLine>().size(), lines);
    press(Qt::Key_Z, Qt::ControlModifier | Qt::ShiftModifier);
    EXPECT_EQ(book().ledger().all<stock::StockLine>().size(), lines + 1);
    // Letters that are begun are taken back first.
    type(QStringLiteral("spoke"));
    press(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(child<QLineEdit>("stockName")->text(), QString());
    EXPECT_EQ(book().ledger().all<stock::StockLine>().size(), lines + 1);
}

TEST_F(WorkPagesTest, AFigureFromTheManualIsTypedAsPrinted) {
    garage_->workbench().choose(garage_->machine("Heron 250"));
    window_->goTo(PageId::Torque);
    auto* joints = child<RowTable>("torqueJoints");
    ASSERT_TRUE(joints->chosenId());
    const JointId joint(*joints->chosenId());
    ASSERT_FALSE(book().joint(joint)->torque);
    auto* torque = child<QLineEdit>("jointTorque");
    enter(torque, "abc");
    EXPECT_FALSE(book().joint(joint)->torque);
    EXPECT_EQ(torque->text(), QStringLiteral("abc"));  // what was typed stays
    enter(torque, "24,50");
    ASSERT_TRUE(book().joint(joint)->torque);
    EXPECT_EQ(book().joint(joint)->torque->text(), "24.50");
    EXPECT_FALSE(book().joint(joint)->confirmed);
}

TEST_F(WorkPagesTest, ALoosenedJointIsHandTightUntilItIsConfirmed) {
    const MachineId heron = garage_->machine("Heron 250");
    garage_->workbench().choose(heron);
    window_->goTo(PageId::Torque);
    const auto before = book().handTight(heron).size();
    child<QWidget>("jointLoosen")->setFocus();
    press(Qt::Key_Space);
    EXPECT_EQ(book().handTight(heron).size(), before + 1);
    child<QWidget>("jointConfirm")->setFocus();
    press(Qt::Key_Space);
    EXPECT_EQ(book().handTight(heron).size(), before);
}

TEST_F(WorkPagesTest, ASavedSheetGetsItsNumberAndAFailedOneGivesItBack) {
    garage_->workbench().choose(garage_->machine("Heron 250"));
    window_->goTo(PageId::Sheets);
    prompts_.paths = {garage_->in(QStringLiteral("no/such/folder/sheet.pdf"))};
    child<QWidget>("sheetsPdf")->setFocus();
    press(Qt::Key_Space);
    EXPECT_EQ(prompts_.reported.size(), 1);
    EXPECT_TRUE(book().ledger().all<weekend::IssuedSheet>().empty());
    prompts_.paths = {garage_->in(QStringLiteral("sheet"))};
    child<QWidget>("sheetsPdf")->setFocus();
    press(Qt::Key_Space);
    ASSERT_EQ(book().ledger().all<weekend::IssuedSheet>().size(), 1U);
    EXPECT_EQ(prompts_.suggestions.back(), QStringLiteral("Heron 250 2026-05-07 sheet 1.pdf"));
    const QString path = garage_->in(QStringLiteral("sheet.pdf"));
    EXPECT_TRUE(QFile::exists(path));
    EXPECT_EQ(child<QLabel>("status-words")->text(), QStringLiteral("job sheet no. 1 is in ") + path);
    EXPECT_TRUE(garage_->workbench().undoText().isEmpty());  // what is on paper is not taken back
}

// What went out on paper is made void, with its reason; its number stays and is not given again.
TEST_F(WorkPagesTest, ASheetThatWentOutIsMadeVoid) {
    garage_->workbench().choose(garage_->machine("Heron 250"));
    window_->goTo(PageId::Sheets);
    EXPECT_FALSE(child<QPushButton>("sheetsVoid")->isEnabled());
    prompts_.paths = {garage_->in(QStringLiteral("sheet.pdf"))};
    child<QWidget>("sheetsPdf")->setFocus();
    press(Qt::Key_Space);
    ASSERT_EQ(book().ledger().all<weekend::IssuedSheet>().size(), 1U);
    const auto sheet = book().ledger().all<weekend::IssuedSheet>().front();
    child<RowTable>("sheetsTable")->choose(sheet.id.value());
    auto* button = child<QPushButton>("sheetsVoid");
    ASSERT_TRUE(button->isEnabled());
    button->setFocus();
    press(Qt::Key_Space);
    EXPECT_EQ(child<QLineEdit>("reason")->accessibleName(), QStringLiteral("why it is void (needed)"));
    enter(child<QLineEdit>("reason"), "the van broke down");
    EXPECT_TRUE(book().ledger().all<weekend::IssuedSheet>().empty());
    ASSERT_EQ(book().ledger().struck<weekend::IssuedSheet>().size(), 1U);
    child<RowTable>("sheetsTable")->choose(sheet.id.value());
    EXPECT_FALSE(button->isEnabled());
    EXPECT_TRUE(issuedWords(book(), sheet).contains(QStringLiteral("the van broke down")));
    EXPECT_EQ(sheetRows(book(), std::nullopt).size(), 2U);  // the proof, and the void one
}

TEST_F(WorkPagesTest, ANameIsNoPlaceForFigures) {
    auto task = *book().task(garage_->task("Heron 250", "engine-oil"));
    task.name = "Oil %2";
    const book::DueLine line{.task = &task};
    book::Evening evening;
    evening.machines.push_back({.alsoOpen = {&line}});
    EXPECT_TRUE(alsoOpenWords(evening).endsWith(
        QStringLiteral("Oil %2 (") + QString::number(task.minutes.count()) + QStringLiteral(" min)")))
        << alsoOpenWords(evening).toStdString();
}

}  // namespace
}  // namespace wm::ui

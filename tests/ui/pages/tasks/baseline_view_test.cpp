// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// What is known of the tasks of a machine is said with one key a task, and written in one go.
#include <QComboBox>
#include <QFocusEvent>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <set>

#include "core/book/unrecorded.h"
#include "tests/ui/window.h"
#include "ui/pages/tasks/baseline_answers.h"
#include "ui/tables/row_table.h"
#include "ui/words/figures.h"

namespace wm::ui {
namespace {

using upkeep::RecordKind;

TEST(ParseWhen, ReadsADayHoursOrBoth) {
    const auto today = day("2026-05-07");
    const auto read = [&](const char* typed) { return parseWhen(QString::fromUtf8(typed), today); };
    EXPECT_EQ(read("3 may 2025")->date, day("2025-05-03"));
    EXPECT_FALSE(read("3 may 2025")->meter);
    EXPECT_EQ(read("41,5")->meter, units::Hours{4150});
    EXPECT_FALSE(read("41,5")->date);
    EXPECT_EQ(read("41.5 h")->meter, units::Hours{4150});
    EXPECT_EQ(read("41,5 h")->meter, units::Hours{4150});
    EXPECT_FALSE(read("41,5 h")->date);
    EXPECT_EQ(read("41")->meter, units::Hours{4100});
    EXPECT_EQ(read("3.5.2025 41.5h")->date, day("2025-05-03"));
    EXPECT_EQ(read("3.5.2025 41.5h")->meter, units::Hours{4150});
    EXPECT_EQ(read("2025-05-03, 41,5 h")->meter, units::Hours{4150});
    EXPECT_EQ(read("today")->date, today);
    EXPECT_FALSE(read("  ")->date || read("")->meter);
    EXPECT_EQ(read("soon").error().fault, base::Fault::NotADate);
    EXPECT_EQ(read("31.4.").error().fault, base::Fault::NotADate);
    EXPECT_EQ(read("soon 41 h").error().field, "date");
    EXPECT_EQ(read("99999999999 h").error().field, "meter");
    EXPECT_EQ(read("-5 h").error().field, "date");
}

TEST(ParseWhen, ReadsWhatIsRemembered) {
    const auto today = day("2026-05-07");
    const auto read = [&](const char* typed) {
        return parseWhen(QString::fromUtf8(typed), today).value_or(When{});
    };
    using upkeep::CountBracket;
    EXPECT_EQ(read("10..15..25 h ago").hoursAgo, (CountBracket{1000, 1500, 2500}));
    EXPECT_EQ(read("10 .. 25 h ago").hoursAgo, (CountBracket{1000, std::nullopt, 2500}));
    EXPECT_EQ(read("15,5 h ago").hoursAgo, (CountBracket{1550, 1550, 1550}));
    EXPECT_EQ(read("33..36 h").meterThen, (CountBracket{3300, std::nullopt, 3600}));
    const auto days = read("1 mar 2025..1 aug 2025 8..12..20 h ago");
    ASSERT_TRUE(days.day);
    EXPECT_EQ(days.day->first, day("2025-03-01"));
    EXPECT_EQ(days.day->last, day("2025-08-01"));
    EXPECT_EQ(days.hoursAgo, (CountBracket{800, 1200, 2000}));
    EXPECT_EQ(read("1 oct 2025 8..12..20 h ago").date, day("2025-10-01"));
    EXPECT_EQ(whenWords(read("10..25 h ago"), today), "10.0 h to 25.0 h ago");
    EXPECT_EQ(parseWhen("25..10 h ago", today).error().fault, base::Fault::OutOfOrder);
    // Hours ago, or what the meter showed? It is asked, and not taken for a day.
    EXPECT_EQ(parseWhen("10..15..25", today).error().fault, base::Fault::Malformed);
    EXPECT_EQ(parseWhen("10..15..25", today).error().wanted,
              "10..15..25 h ago, or 10..15..25 h of the meter");
}

// How far about? It is asked: a figure that is remembered is never taken for one that was written down.
TEST(ParseWhen, AboutIsFromTheLeastToTheMost) {
    const auto today = day("2026-05-07");
    for (const char* typed : {"about 10 h ago", "About 41,5 h", "ca. 41", "~ 3 may", "about 10..10 h ago"})
        EXPECT_EQ(parseWhen(QString::fromUtf8(typed), today).error().fault, base::Fault::Malformed) << typed;
    EXPECT_EQ(parseWhen("about soon", today).error().fault, base::Fault::NotADate);
    EXPECT_EQ(parseWhen("about 8..12 h ago", today)->hoursAgo,
              (upkeep::CountBracket{800, std::nullopt, 1200}));
    for (const char* typed : {"mar 2026", "about march 2026"}) {
        const auto when = parseWhen(QString::fromUtf8(typed), today);
        ASSERT_TRUE(when && when->day) << typed;
        EXPECT_EQ(when->day->first, day("2026-03-01"));
        EXPECT_EQ(when->day->last, day("2026-03-31"));
    }
    EXPECT_TRUE(parseWhen("mar 2026 8..12 h ago", today)->hoursAgo) << "both";
}

class BaselineViewTest : public WindowTest {
  protected:
    void SetUp() override {
        openOn(Garage::Fill::OneMachine);
        press(Qt::Key_B, Qt::ControlModifier);
        table_ = child<RowTable>("baselineTable");
        ASSERT_EQ(QApplication::focusWidget(), table_);
    }
    MachineId heron() { return garage_->machine("Heron 250"); }
    std::size_t unknown() { return book::unknownOf(garage_->book(), heron()).size(); }
    auto records() { return garage_->book().ledger().all<upkeep::Record>(); }
    const upkeep::TaskVersion& here() { return *garage_->book().task(TaskId{*table_->chosenId()}); }
    QString said(std::int64_t id, std::size_t column) {
        for (const auto& row : table_->rows().rows())
            if (row.id == id)
                return row.cells.at(column).text;
        return {};
    }
    QLineEdit* when() { return child<QLineEdit>("baseline-when"); }
    QString words() { return child<QLabel>("baseline-words")->text(); }
    void choose(const char* code) {
        press(Qt::Key_A, Qt::ControlModifier);  // what is folded can't be chosen
        table_->choose(garage_->task("Heron 250", code).value());
        table_->selectionModel()->select(table_->currentIndex(),
                                         QItemSelectionModel::ClearAndSelect | QItemSelectionModel::Rows);
        table_->setFocus();
    }

    RowTable* table_ = nullptr;
};

TEST_F(BaselineViewTest, TenQuestionsStandOpenAndTheRestIsFolded) {
    const auto all = unknown();
    ASSERT_GT(all, 20U);
    ASSERT_EQ(table_->shownIds().size(), 11U);
    EXPECT_EQ(table_->shownIds().back(), 0);
    EXPECT_TRUE(said(0, 0).startsWith(QString::number(all - 10))) << said(0, 0).toStdString();
    EXPECT_EQ(TaskId{table_->shownIds().front()},
              book::unknownOf(garage_->book(), heron()).front()->task->task);
    press(Qt::Key_N);  // one is answered, the next one comes into sight
    EXPECT_EQ(table_->shownIds().size(), 12U);
    const auto before = table_->shownIds();
    table_->choose(0);
    press(Qt::Key_Space);
    ASSERT_EQ(table_->shownIds().size(), all);
    EXPECT_EQ(table_->chosenId(), table_->shownIds().at(before.size() - 1)) << "the first that was folded";
}

TEST_F(BaselineViewTest, OneKeyATaskAndOneEnter) {
    const auto before = unknown();
    const auto first = TaskId{*table_->chosenId()};
    press(Qt::Key_N);
    const auto second = TaskId{*table_->chosenId()};
    EXPECT_NE(first, second);
    press(Qt::Key_S);
    EXPECT_EQ(QApplication::focusWidget()->objectName(), QStringLiteral("baseline-when"));
    type(QStringLiteral("3 may 2025"));
    press(Qt::Key_Return);
    EXPECT_EQ(QApplication::focusWidget(), table_);
    const auto third = TaskId{*table_->chosenId()};
    press(Qt::Key_U);
    EXPECT_EQ(child<QPushButton>("baseline-write")->text(),
              QStringLiteral("Write the 2 answered, 1 left unknown (Enter)"));
    EXPECT_TRUE(records().empty());  // nothing is written before Enter
    press(Qt::Key_Return);
    EXPECT_FALSE(said(third.value(), 4).isEmpty()) << "it is not asked again";
    EXPECT_NE(table_->chosenId(), third.value());
    EXPECT_TRUE(window_->page(PageId::Tasks)->unsaved().isEmpty());
    ASSERT_EQ(records().size(), 2U) << words().toStdString();
    EXPECT_EQ(records().at(0).task, first);
    EXPECT_EQ(records().at(0).date, day("2026-01-10"));
    EXPECT_EQ(records().at(1).task, second);
    EXPECT_EQ(records().at(1).date, day("2025-05-03"));
    EXPECT_EQ(records().at(1).kind, RecordKind::Baseline);
    EXPECT_EQ(unknown(), before - 2);
    press(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_TRUE(records().empty());
    EXPECT_EQ(unknown(), before);
}

TEST_F(BaselineViewTest, OneKeyForAllThatIsLeft) {
    const auto before = unknown();
    press(Qt::Key_S);
    type(QStringLiteral("1 march"));
    press(Qt::Key_Return);
    press(Qt::Key_A, Qt::ControlModifier);
    press(Qt::Key_N);  // it came used: everything new is asked about
    ASSERT_EQ(prompts_.asked.size(), 1);
    EXPECT_TRUE(prompts_.asked.front().contains(QStringLiteral("came used")));
    EXPECT_EQ(said(table_->shownIds().back(), 4), QString());
    prompts_.agrees = true;
    press(Qt::Key_N);
    press(Qt::Key_Return);
    EXPECT_EQ(records().size(), before) << words().toStdString();
    EXPECT_EQ(unknown(), 0U);
    EXPECT_EQ(records().at(0).date, day("2026-03-01"));  // the answer that was there stays
    EXPECT_EQ(records().at(1).date, day("2026-01-10"));
    EXPECT_FALSE(table_->isVisible());
    EXPECT_TRUE(child<QLabel>("baseline-head")->text().contains(QStringLiteral("every task")));
    press(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(unknown(), before);
}

TEST_F(BaselineViewTest, AGroupIsAnsweredAsOne) {
    choose("engine-oil");
    press(Qt::Key_G);
    press(Qt::Key_S);
    type(QStringLiteral("10 h"));
    press(Qt::Key_Return);
    press(Qt::Key_Return);
    EXPECT_GT(records().size(), 8U) << words().toStdString();
    for (const auto& record : records()) {
        EXPECT_TRUE(garage_->book().task(*record.task)->position.starts_with("engine"));
        EXPECT_EQ(record.date, day("2026-01-09"));  // 10.0 h, where 12.0 h stood on the first day
    }
}

TEST_F(BaselineViewTest, LookingBeginsNoCountOfWhatIsRenewed) {
    choose("front-pads");
    const auto id = *table_->chosenId();
    press(Qt::Key_F);
    EXPECT_EQ(said(id, 4), QString());
    EXPECT_TRUE(words().contains(QStringLiteral("renewed"))) << words().toStdString();
    EXPECT_EQ(table_->chosenId(), id);
    choose("steering-check");
    press(Qt::Key_F);
    press(Qt::Key_Return);
    ASSERT_EQ(records().size(), 1U);
    EXPECT_EQ(records().front().kind, RecordKind::LookedFine);
    EXPECT_EQ(records().front().date, garage_->book().today());
}

TEST_F(BaselineViewTest, WhatNeedsADayAsksForIt) {
    choose("front-brake-fluid");
    press(Qt::Key_S);
    type(QStringLiteral("10 h"));
    press(Qt::Key_Return);
    EXPECT_EQ(QApplication::focusWidget()->objectName(), QStringLiteral("baseline-when"));
    EXPECT_TRUE(words().contains(QStringLiteral("say the day"))) << words().toStdString();
    child<QLineEdit>("baseline-when")->selectAll();
    type(QStringLiteral("tomorrow"));
    press(Qt::Key_Return);
    EXPECT_TRUE(words().contains(QStringLiteral("future"))) << words().toStdString();
    child<QLineEdit>("baseline-when")->selectAll();
    type(QStringLiteral("gibberish"));
    press(Qt::Key_Return);
    EXPECT_TRUE(words().contains(QStringLiteral("gibberish"))) << words().toStdString();
    press(Qt::Key_Escape);
    EXPECT_EQ(QApplication::focusWidget(), table_);
    EXPECT_EQ(garage_->workbench().chosen(), heron());  // Escape was the field's
}

TEST_F(BaselineViewTest, TheWrongLineIsNamedAndNothingIsWritten) {
    choose("engine-oil");
    const auto id = *table_->chosenId();
    press(Qt::Key_S);
    type(QStringLiteral("500 h"));  // more than the meter ever showed
    press(Qt::Key_Return);
    table_->choose(table_->shownIds().front());
    press(Qt::Key_N);
    press(Qt::Key_Return);
    EXPECT_TRUE(records().empty());
    EXPECT_EQ(table_->chosenId(), id);
    EXPECT_TRUE(words().startsWith(QStringLiteral("Engine oil: "))) << words().toStdString();
    EXPECT_FALSE(words().contains(QStringLiteral("lines["))) << words().toStdString();
}

TEST_F(BaselineViewTest, AnswersStayWhileOtherPagesAreLookedAt) {
    const auto first = *table_->chosenId();
    press(Qt::Key_N);
    press(Qt::Key_S);
    const auto second = *table_->chosenId();
    type(QStringLiteral("2 may 2025"));  // not finished with Enter
    window_->goTo(PageId::Bench);
    press(Qt::Key_B, Qt::ControlModifier);
    EXPECT_EQ(said(first, 4), QStringLiteral("new on"));
    EXPECT_EQ(said(second, 4), QStringLiteral("serviced"));
    prompts_.agrees = false;
    window_->close();
    EXPECT_TRUE(window_->isVisible());
    press(Qt::Key_Return);
    EXPECT_EQ(records().size(), 2U);
    window_->close();
    EXPECT_FALSE(window_->isVisible());
}

TEST_F(BaselineViewTest, AUsedMachineWithAScheduleIsAskedAtOnce) {
    window_->action(ActionId::AddMachine)->trigger();
    type(QStringLiteral("Plover 125"));
    child<QLineEdit>("pastBest")->setText(QStringLiteral("30"));
    child<QLineEdit>("shown")->setText(QStringLiteral("30"));
    press(Qt::Key_Return);
    EXPECT_EQ(window_->shownPage(), PageId::Tasks);
    EXPECT_EQ(garage_->workbench().chosen(), garage_->machine("Plover 125"));
    EXPECT_EQ(QApplication::focusWidget(), table_);
    EXPECT_EQ(table_->shownIds().size(), 11U);
}

TEST_F(BaselineViewTest, ANewMachineIsNotAsked) {
    window_->goTo(PageId::Bench);
    window_->action(ActionId::AddMachine)->trigger();
    type(QStringLiteral("Plover 125"));
    child<QComboBox>("startedNew")->setCurrentIndex(0);
    press(Qt::Key_Return);
    EXPECT_EQ(window_->shownPage(), PageId::Bench);
}

// An hour figure says nothing of a part that was new on a day, or that was looked at.
TEST_F(BaselineViewTest, HoursAreRefusedWhereOnlyADayCounts) {
    for (const auto& [code, key] :
         {std::pair("engine-oil", Qt::Key_N), std::pair("steering-check", Qt::Key_F)}) {
        choose(code);
        const auto id = *table_->chosenId();
        press(key);
        table_->choose(id);
        const QString before = said(id, 5);
        ASSERT_FALSE(before.isEmpty()) << code;
        when()->setFocus();
        type(QStringLiteral("47,5 h"));
        press(Qt::Key_Return);
        EXPECT_TRUE(words().startsWith(QStringLiteral("A day, not hours"))) << words().toStdString();
        EXPECT_EQ(QApplication::focusWidget(), when()) << code;
        table_->setFocus();
        EXPECT_EQ(said(id, 5), before) << code;
        EXPECT_TRUE(words().contains(QStringLiteral("A day, not hours"))) << words().toStdString();
    }
}

TEST_F(BaselineViewTest, ALookElsewhereDoesNotTakeWhatIsHalfTyped) {
    choose("engine-oil");
    const auto id = *table_->chosenId();
    press(Qt::Key_S);
    type(QStringLiteral("3 may 202"));
    for (const auto reason : {Qt::ActiveWindowFocusReason, Qt::PopupFocusReason}) {
        QFocusEvent away(QEvent::FocusOut, reason);
        QCoreApplication::sendEvent(when(), &away);
        QFocusEvent back(QEvent::FocusIn, reason);
        QCoreApplication::sendEvent(when(), &back);
        EXPECT_EQ(said(id, 4), QString()) << reason;
        EXPECT_EQ(when()->text(), QStringLiteral("3 may 202")) << reason;
    }
    EXPECT_EQ(window_->page(PageId::Tasks)->unsaved().size(), 1) << "but it is not lost unasked";
    type(QStringLiteral("5"));
    press(Qt::Key_Return);
    EXPECT_EQ(said(id, 4), QStringLiteral("serviced"));
}

TEST_F(BaselineViewTest, WhatCantBeSaidLeavesTheFieldToTheNextLine) {
    choose("fork-oil");
    const auto answered = *table_->chosenId();
    press(Qt::Key_S);
    type(QStringLiteral("1 may 2025"));
    press(Qt::Key_Return);
    choose("engine-oil");
    const auto id = *table_->chosenId();
    for (const char* typed : {"gibberish", "tomorrow"}) {
        choose("engine-oil");
        press(Qt::Key_S);
        type(QString::fromLatin1(typed));
        table_->setFocus();
        EXPECT_TRUE(words().startsWith(QStringLiteral("Engine oil: "))) << words().toStdString();
        EXPECT_EQ(said(id, 4), QString()) << typed;
        table_->choose(answered);
        EXPECT_EQ(when()->text(), QStringLiteral("1 may 2025")) << typed;
        when()->setFocus();
        when()->selectAll();
        type(QStringLiteral("2 may 2025"));
        press(Qt::Key_Return);
        EXPECT_EQ(said(id, 4), QString()) << "nothing is said of the line before";
        EXPECT_TRUE(said(answered, 5).contains(QStringLiteral("2 May"))) << said(answered, 5).toStdString();
        table_->choose(answered);
        when()->setFocus();
        when()->selectAll();
        type(QStringLiteral("1 may 2025"));
        press(Qt::Key_Return);
    }
}

TEST_F(BaselineViewTest, WhatIsTypedIsSaidOfTheMachineThatWasSeen) {
    garage_->addMachine("Plover 125", "four-stroke-motocross", units::Hours{3000});
    const auto id = *table_->chosenId();
    press(Qt::Key_S);
    type(QStringLiteral("3 may 2025"));
    garage_->workbench().choose(garage_->machine("Plover 125"));
    EXPECT_EQ(when()->text(), QString());
    garage_->workbench().choose(heron());
    EXPECT_EQ(said(id, 4), QStringLiteral("serviced"));
    EXPECT_EQ(records().size(), 0U);
}

TEST_F(BaselineViewTest, BothWheelsAreAGroup) {
    std::set<std::int64_t> wheels;
    for (const auto* due : book::unknownOf(garage_->book(), heron()))
        if (due->task->position.starts_with("front wheel") || due->task->position.starts_with("rear wheel"))
            wheels.insert(due->task->task.value());
    ASSERT_GT(wheels.size(), 1U);
    table_->choose(0);
    press(Qt::Key_Space);
    table_->choose(*wheels.begin());
    press(Qt::Key_G);
    std::set<std::int64_t> marked;
    for (const QModelIndex& index : table_->selectionModel()->selectedRows())
        marked.insert(index.data(TableModel::IdRole).toLongLong());
    EXPECT_EQ(marked, wheels);
}

}  // namespace
}  // namespace wm::ui

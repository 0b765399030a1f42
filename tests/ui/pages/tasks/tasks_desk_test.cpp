// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// The views beside the tasks: a used machine's evidence, the plan for its first hours, a schedule made to
// fit.
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QSignalSpy>
#include <QTabBar>
#include <QToolButton>
#include <algorithm>

#include "core/book/first_hours.h"
#include "tests/ui/window.h"
#include "ui/pages/tasks/evidence_words.h"
#include "ui/tables/row_table.h"
#include "ui/words/figures.h"
#include "ui/words/standing_words.h"

namespace wm::ui {
namespace {

using units::Hours;

class TasksDeskTest : public WindowTest {
  protected:
    void SetUp() override {
        openOn(Garage::Fill::OneMachine);
        window_->goTo(PageId::Tasks);
    }
    MachineId heron() { return garage_->machine("Heron 250"); }
    const items::Machine& card() { return *garage_->book().ledger().find<items::Machine>(heron()); }
    void view(int at) { child<QTabBar>("taskViews")->setCurrentIndex(at); }
    void fill(const char* name, const char* typed) {
        auto* field = child<QLineEdit>(name);
        field->setFocus();
        field->selectAll();
        type(QString::fromUtf8(typed));
    }
    QString label(const char* name) { return child<QLabel>(name)->text(); }
};

class UsedViewTest : public TasksDeskTest {
  protected:
    void SetUp() override {
        TasksDeskTest::SetUp();
        window_->action(ActionId::UsedMachine)->trigger();
        ASSERT_EQ(QApplication::focusWidget()->objectName(), QStringLiteral("used-meter-shown"));
    }
};

TEST_F(UsedViewTest, EvidenceGoesInAndABracketComesOut) {
    EXPECT_FALSE(child<QPushButton>("used-state")->isEnabled());
    type(QStringLiteral("41"));
    EXPECT_EQ(label("used-says-0"), QStringLiteral("at least 41.0 h"));
    EXPECT_EQ(label("used-result"), QStringLiteral("Behind the machine: 41.0 h or more."));
    fill("used-word-likely", "60,5");
    EXPECT_TRUE(label("used-result").contains(QStringLiteral("likely 60.5 h")))
        << label("used-result").toStdString();
    fill("used-seasons-seasons", "2");
    EXPECT_TRUE(label("used-says-2").contains(QStringLiteral("blank"))) << label("used-says-2").toStdString();
    EXPECT_FALSE(child<QPushButton>("used-state")->isEnabled());  // half a line is not stated
    fill("used-seasons-season_low", "30");
    fill("used-seasons-season_high", "60");
    EXPECT_EQ(label("used-result"), QStringLiteral("Behind the machine: 60.0 h to 120.0 h, likely 90.0 h."));
    fill("used-front-code", "2319");
    EXPECT_TRUE(label("used-says-6").contains(QStringLiteral("3 Jun 2019")))
        << label("used-says-6").toStdString();
    press(Qt::Key_Return);
    EXPECT_EQ(card().pastLow, Hours{6000});
    EXPECT_EQ(card().pastBest, Hours{9000});
    EXPECT_EQ(card().pastHigh, Hours{12000});
    EXPECT_NE(card().note.find("the seller says 60.5 h"), std::string::npos) << card().note;
    EXPECT_EQ(child<QLineEdit>("used-meter-shown")->text(), QString());
    press(Qt::Key_Z, Qt::ControlModifier);  // no letter is left in the field that could be taken back
    EXPECT_EQ(card().pastBest, Hours{1200});
    EXPECT_TRUE(card().note.empty());
}

TEST_F(UsedViewTest, EnterStatesItFromTheDropDownToo) {
    type(QStringLiteral("41"));
    auto* fitted = child<QComboBox>("used-fitted");
    fitted->setFocus();
    QTest::keyClick(fitted, Qt::Key_Return);
    EXPECT_EQ(card().pastLow, Hours{4100});
}

TEST_F(UsedViewTest, AContradictionIsNamedAndNothingIsStated) {
    type(QStringLiteral("41"));
    child<QComboBox>("used-fitted")->setCurrentIndex(1);
    fill("used-disc-as_new", "4.0");
    fill("used-disc-limit", "3.5");
    fill("used-disc-now", "3,6");
    EXPECT_EQ(label("used-says-4"), QStringLiteral("80 % worn"));
    fill("used-disc-life_low", "60");
    const QString result = label("used-result");
    EXPECT_TRUE(result.startsWith(QStringLiteral("These can't both be right"))) << result.toStdString();
    EXPECT_TRUE(result.contains(QStringLiteral("hour meter 41.0 h"))) << result.toStdString();
    EXPECT_FALSE(child<QPushButton>("used-state")->isEnabled());
    press(Qt::Key_Return);
    EXPECT_EQ(card().pastBest, Hours{1200});
    fill("used-disc-now", "4.1");  // it can't have grown
    EXPECT_TRUE(label("used-says-4").contains(QStringLiteral("far from anything real")))
        << label("used-says-4").toStdString();
}

TEST_F(UsedViewTest, WhatWasTypedStaysWithItsMachine) {
    garage_->addMachine("Sorrel 450", "four-stroke-motocross", Hours{500});
    type(QStringLiteral("41"));
    window_->goTo(PageId::Bench);
    garage_->workbench().choose(garage_->machine("Sorrel 450"));
    window_->action(ActionId::UsedMachine)->trigger();
    EXPECT_EQ(child<QLineEdit>("used-meter-shown")->text(), QString());
    garage_->workbench().choose(heron());
    EXPECT_EQ(child<QLineEdit>("used-meter-shown")->text(), QStringLiteral("41"));
    EXPECT_EQ(window_->page(PageId::Tasks)->unsaved().size(), 1);
    child<QPushButton>("used-clear")->click();
    EXPECT_TRUE(window_->page(PageId::Tasks)->unsaved().isEmpty());
}

TEST_F(UsedViewTest, WhatThePastRestsOnCanBeAsked) {
    type(QStringLiteral("41"));
    press(Qt::Key_Return);
    garage_->record("Heron 250", "spark-plug", "2026-05-07", upkeep::RecordKind::Baseline);
    // Done before the file, so the stated past lies behind it.
    verbs::JobDraft draft;
    draft.record = {.machine = heron(),
                    .task = garage_->task("Heron 250", "rotor"),
                    .kind = upkeep::RecordKind::Baseline,
                    .date = day("2025-01-01")};
    garage_->say([draft](const verbs::VerbContext& context) { return verbs::recordJob(context, draft); });
    const auto* line = garage_->book().dueLine(garage_->task("Heron 250", "rotor"));
    const Why why = whyOf(garage_->book(), *line);
    QString all;
    const std::function<void(const WhyNode&)> collect = [&](const WhyNode& node) {
        all += node.what + QLatin1Char('\n');
        for (const auto& under : node.children)
            collect(under);
    };
    for (const auto& node : why.tree)
        collect(node);
    EXPECT_TRUE(all.contains(QStringLiteral("hour meter 41.0 h"))) << all.toStdString();
}

TEST_F(TasksDeskTest, ThePlanIsMadeOfTheTasksWithoutARecord) {
    view(2);
    auto* table = child<RowTable>("firstHoursTable");
    std::size_t jobs = 0;
    const auto plan = book::firstHours(garage_->book(), heron());
    for (const auto& group : plan)
        jobs += group.jobs.size();
    ASSERT_GT(jobs, 50U);
    EXPECT_EQ(table->rows().rows().size(), jobs + plan.size());
    EXPECT_TRUE(table->rows().rows().front().cells.front().text.startsWith(QStringLiteral("At once")));
    garage_->record("Heron 250", "engine-oil", "2026-05-01");
    EXPECT_EQ(table->rows().rows().size(), jobs + plan.size() - 1);
}

class AdjustViewTest : public TasksDeskTest {
  protected:
    void SetUp() override {
        TasksDeskTest::SetUp();
        view(4);
        table_ = child<RowTable>("adjustTable");
    }
    const upkeep::TaskVersion& oil() {
        return *garage_->book().task(garage_->task("Heron 250", "engine-oil"));
    }
    QString then(std::int64_t id) {
        for (const auto& row : table_->rows().rows())
            if (row.id == id)
                return row.cells.at(2).text;
        return {};
    }
    RowTable* table_ = nullptr;
};

TEST_F(AdjustViewTest, AScheduleIsMadeToFitInOneGo) {
    const auto before = oil();
    const auto grips = garage_->task("Heron 250", "grips");
    const auto steps = garage_->book().ledger().all<weekend::StepVersion>().size();
    fill("adjust-percent", "80");
    EXPECT_TRUE(then(before.task.value()).contains(QStringLiteral("4.8 h")))
        << then(before.task.value()).toStdString();
    press(Qt::Key_Escape);
    EXPECT_EQ(QApplication::focusWidget(), table_);
    table_->choose(grips.value());
    press(Qt::Key_Space);
    table_->choose(-1);  // the first edge that differs between models
    press(Qt::Key_Space);
    EXPECT_FALSE(then(-1).isEmpty());
    EXPECT_EQ(oil().limits, before.limits);
    window_->goTo(PageId::Bench);  // what was begun stays
    window_->goTo(PageId::Tasks);
    EXPECT_EQ(window_->page(PageId::Tasks)->unsaved().size(), 1);
    table_->setFocus();
    press(Qt::Key_Return);
    EXPECT_EQ(oil().limits.front().every, 480);
    EXPECT_FALSE(garage_->book().task(grips)->active);
    EXPECT_EQ(garage_->book().ledger().all<weekend::StepVersion>().size(), steps + 1);
    EXPECT_EQ(child<QLineEdit>("adjust-percent")->text(), QStringLiteral("100"));
    press(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(oil().limits, before.limits);
    EXPECT_TRUE(garage_->book().task(grips)->active);
    EXPECT_EQ(garage_->book().ledger().all<weekend::StepVersion>().size(), steps);
}

TEST_F(AdjustViewTest, ABadPercentageIsSaid) {
    fill("adjust-percent", "lots");
    EXPECT_TRUE(label("adjust-words").contains(QStringLiteral("lots")))
        << label("adjust-words").toStdString();
    press(Qt::Key_Return);
    fill("adjust-percent", "0");
    press(Qt::Key_Return);
    EXPECT_FALSE(label("adjust-words").isEmpty());
    fill("adjust-percent", "9999");
    press(Qt::Key_Return);
    EXPECT_FALSE(label("adjust-words").isEmpty());
    EXPECT_EQ(oil().limits.front().every, 600);
}

// No machine, no plan: nothing that Enter could record, and no key that says so.
TEST_F(TasksDeskTest, ThePlanRecordsJobsAlone) {
    garage_->addMachine("Plover 125", "four-stroke-motocross", Hours{3000});
    garage_->workbench().choose(std::nullopt);
    view(2);
    const auto* record = child<QToolButton>("first-hours-record");
    EXPECT_FALSE(record->isEnabled());
    EXPECT_EQ(window_->page(PageId::Tasks)->firstFocus(), child<QTabBar>("taskViews"));
    garage_->workbench().choose(garage_->machine("Heron 250"));
    auto* table = child<RowTable>("firstHoursTable");
    ASSERT_LT(*table->chosenId(), 0) << "the head of the first stage";
    EXPECT_FALSE(record->isEnabled());
    table->choose(table->shownIds().at(1));
    EXPECT_TRUE(record->isEnabled());
}

TEST(EvidenceWords, ABracketReadsAsOne) {
    using usage::HoursBracket;
    EXPECT_EQ(bracketWords(HoursBracket::exactly(Hours{4100})), QStringLiteral("41.0 h"));
    EXPECT_EQ(bracketWords({Hours{4100}, Hours{4100}, std::nullopt}), QStringLiteral("41.0 h or more"));
    EXPECT_EQ(bracketWords({Hours{4100}, Hours{8000}, std::nullopt}),
              QStringLiteral("41.0 h or more, likely 80.0 h"));
    EXPECT_EQ(bracketWords({Hours{4100}, Hours{8000}, Hours{12000}}),
              QStringLiteral("41.0 h to 120.0 h, likely 80.0 h"));
}

// The view and the machine are known before the page is worked out.
TEST_F(TasksDeskTest, AViewThatIsAskedForIsWorkedOutOnce) {
    garage_->addMachine("Plover 125", "four-stroke-motocross", Hours{3000});
    for (const PageId from : {PageId::Bench, PageId::Tasks}) {
        view(0);
        window_->goTo(from);
        garage_->workbench().choose(std::nullopt);
        QSignalSpy made(&child<RowTable>("baselineTable")->rows(), &QAbstractItemModel::modelReset);
        QSignalSpy others(&child<RowTable>("tasksTable")->rows(), &QAbstractItemModel::modelReset);
        press(Qt::Key_B, Qt::ControlModifier);
        EXPECT_EQ(made.count(), 1) << static_cast<int>(from);
        EXPECT_EQ(others.count(), 0) << static_cast<int>(from);
        EXPECT_TRUE(garage_->workbench().chosen());
    }
}

}  // namespace
}  // namespace wm::ui

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// A machine that comes with a notebook has nothing that falls due until it has a schedule.
#include <algorithm>

#include "tests/ui/shell/notebook_window.h"
#include "ui/pages/bench/bench_grid.h"
#include "ui/pages/bench/bench_model.h"

namespace wm::ui {
namespace {

class NotebookSchedule : public NotebookWindow {
  protected:
    void chooseNew(const char* combo, const QString& words) {
        const int at = child<QComboBox>(combo)->findText(words);
        ASSERT_GE(at, 0) << words.toStdString();
        choose(combo, at);
        EXPECT_EQ(child<QComboBox>(combo)->currentText(), words);
    }
    std::size_t tasksOf(const char* machine) {
        return garage_->book().tasks(garage_->machine(machine)).size();
    }
    std::size_t jobsOfTasks() {
        const auto& records = garage_->book().ledger().all<upkeep::Record>();
        return static_cast<std::size_t>(std::count_if(
            records.begin(), records.end(), [](const auto& record) { return record.task.has_value(); }));
    }
    items::Machine card(const char* name) {
        return *garage_->book().ledger().find<items::Machine>(garage_->machine(name));
    }
};

TEST_F(NotebookSchedule, ANewMachineComesWithIt) {
    openGarage(false);
    takeAll("outings.csv");
    const items::Machine bare = card("Sorrel 450");
    const auto ran = garage_->book().life(bare.id).hours;
    EXPECT_EQ(tasksOf("Sorrel 450"), 0U);
    prompts_.agrees = true;  // the garage is to be empty again
    press(Qt::Key_Z, Qt::ControlModifier);
    prompts_.agrees = false;
    ASSERT_TRUE(garage_->book().machines().empty());
    const auto before = everything();

    ASSERT_NE(importSample("outings.csv"), nullptr);
    EXPECT_TRUE(words().contains("Heron 250, Sorrel 450 are new: choose their schedules"))
        << words().toStdString();
    chooseNew("notebook-machine-0", "new: Heron 250, four-stroke enduro");
    chooseNew("notebook-machine-1", "new: Sorrel 450, four-stroke motocross");
    EXPECT_EQ(child<QComboBox>("notebook-machine-2")->currentText(), "new: Sorrel 450, four-stroke motocross")
        << "the same machine in another spelling";
    EXPECT_FALSE(words().contains("schedule")) << words().toStdString();
    EXPECT_EQ(tabs(), (QStringList{"taken 72", "doubtful 6", "refused 0"})) << "judged as without";
    EXPECT_EQ(everything(), before) << "looking writes nothing";
    table()->setFocus();
    press(Qt::Key_A);
    press(Qt::Key_Return);
    back();
    EXPECT_GT(tasksOf("Heron 250"), tasksOf("Sorrel 450"));
    EXPECT_GT(tasksOf("Sorrel 450"), 60U);
    items::Machine with = card("Sorrel 450");
    EXPECT_EQ(with.starter, "four-stroke motocross");
    EXPECT_EQ(garage_->book().life(with.id).hours, ran);
    for (const auto* task : garage_->book().tasks(with.id))
        EXPECT_EQ(task->validFrom, with.since) << task->code;
    with.id = bare.id;
    with.starter.clear();
    EXPECT_EQ(with, bare) << "its card begins with the notebook, as without a schedule";
    prompts_.agrees = true;
    press(Qt::Key_Z, Qt::ControlModifier);
    prompts_.agrees = false;
    EXPECT_EQ(everything(), before) << "one step";
}

TEST_F(NotebookSchedule, ItsJobsCountForItsTasks) {
    openGarage(false);
    takeAll("jobs.csv");
    EXPECT_EQ(jobsOfTasks(), 0U);
    prompts_.agrees = true;  // the garage is to be empty again
    press(Qt::Key_Z, Qt::ControlModifier);
    prompts_.agrees = false;
    ASSERT_NE(importSample("jobs.csv"), nullptr);
    for (const char* combo : {"notebook-machine-0", "notebook-machine-1"}) {
        const QString name = child<QComboBox>(combo)->currentText();
        ASSERT_TRUE(name.startsWith("new: ")) << name.toStdString();
        chooseNew(combo, name + ", four-stroke motocross");
    }
    table()->setFocus();
    press(Qt::Key_A);
    press(Qt::Key_Return);
    back();
    const auto all = garage_->book().ledger().all<upkeep::Record>().size();
    EXPECT_GE(all, 42U) << "one line may say two jobs";
    EXPECT_GT(jobsOfTasks() * 10, all * 8) << jobsOfTasks();
    EXPECT_FALSE(garage_->book().due(garage_->machine("Heron 250")).empty());
}

TEST_F(NotebookSchedule, IsTakenBackByAnotherWord) {
    openGarage(true);
    ASSERT_NE(import(write("red.csv",
                           "date;machine;hours\n03.04.2026;red one;1,5\n04.04.2026;red one;1,0\n"
                           "05.04.2026;red one;2,0\n06.04.2026;red one;1,5\n")),
              nullptr);
    chooseNew("notebook-machine-0", "new: red one, two-stroke motocross");
    EXPECT_FALSE(words().contains("schedule"));
    chooseNew("notebook-machine-0", "new: red one");
    EXPECT_TRUE(words().contains("red one is new: choose its schedule")) << words().toStdString();
    chooseNew("notebook-machine-0", "new: red one, two-stroke motocross");
    chooseNew("notebook-machine-0", "Heron 250");
    table()->setFocus();
    press(Qt::Key_Return);
    back();
    EXPECT_EQ(garage_->book().machines().size(), 2U);
}

TEST_F(NotebookSchedule, IsOfferedWhereAMachineHasNoTasks) {
    openGarage(false);
    takeAll("outings.csv");
    const auto before = everything();
    auto* bench = child<BenchGrid>("bench-grid");
    auto* model = qobject_cast<BenchModel*>(bench->model());
    bench->setFocus();
    const auto first = bench->currentIndex();
    ASSERT_TRUE(first.isValid());
    EXPECT_EQ(model->cell(first).words, "no tasks yet: Enter chooses a schedule");
    press(Qt::Key_Return);
    ASSERT_EQ(garage_->workbench().chosen(), garage_->machine("Heron 250"));
    EXPECT_EQ(QApplication::focusWidget(), child<QComboBox>("schedule-which"));
    auto* which = child<QComboBox>("schedule-which");
    which->setCurrentIndex(which->findText("two-stroke motocross", Qt::MatchStartsWith));
    child<QPushButton>("schedule-begin")->click();
    EXPECT_GT(tasksOf("Heron 250"), 60U);
    EXPECT_EQ(tasksOf("Sorrel 450"), 0U);
    EXPECT_EQ(card("Heron 250").starter, "two-stroke motocross");
    EXPECT_FALSE(which->isVisible());
    press(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(everything(), before);
    EXPECT_TRUE(which->isVisible());
}

}  // namespace
}  // namespace wm::ui

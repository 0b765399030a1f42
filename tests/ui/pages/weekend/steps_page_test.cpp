// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// Access steps are written and changed by the keys alone. All minutes are invented.
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QToolButton>

#include "core/book/evening.h"
#include "tests/ui/window.h"
#include "ui/fields/fields_editor.h"
#include "ui/pages/weekend/step_rows.h"
#include "ui/tables/row_table.h"
#include "ui/words/figures.h"

namespace wm::ui {
namespace {

using upkeep::Deed;

class StepsPageTest : public WindowTest {
  protected:
    void SetUp() override {
        openOn(Garage::Fill::Season);
        heron_ = garage_->machine("Heron 250");
        garage_->workbench().choose(heron_);
        window_->goTo(PageId::Weekend, {.view = Aim::View::Steps, .step = step("rear-wheel-out").step});
        table_ = child<RowTable>("stepsTable");
    }
    const weekend::StepVersion& step(const char* code) {
        const auto* found = garage_->book().step(heron_, code);
        if (found == nullptr)
            qFatal("no step %s", code);
        return *found;
    }
    void choose(const char* code) {
        table_->choose(step(code).step.value());
        table_->setFocus();
    }
    QLineEdit* line(const char* name) { return child<QLineEdit>(name); }
    QComboBox* box(const QString& name) { return child<QComboBox>(qPrintable(name)); }
    QString preview() {
        QTest::qWait(200);  // a pause in typing
        return child<QLabel>("step-preview")->text();
    }
    QString focused() { return QApplication::focusWidget()->objectName(); }
    QString nameInList(const char* code) {
        for (const auto& row : table_->rows().rows())
            if (row.id == step(code).step.value())
                return row.cells.at(StepName).text;
        return {};
    }
    void kind(const QString& name, Deed deed) {
        auto* kinds = box(name);
        kinds->setCurrentIndex(static_cast<int>(deed));
        emit kinds->activated(static_cast<int>(deed));
    }
    void typeIn(const QString& name, const QString& words) {
        auto* field = box(name);
        field->setFocus();
        field->lineEdit()->selectAll();
        type(words);
    }
    std::size_t versions() { return garage_->book().ledger().all<weekend::StepVersion>().size(); }

    MachineId heron_;
    RowTable* table_ = nullptr;
};

TEST_F(StepsPageTest, MinutesAreChangedByTheKeysAndThePlanFollows) {
    EXPECT_EQ(table_->chosenId(), step("rear-wheel-out").step.value());
    EXPECT_EQ(QApplication::focusWidget(), table_);
    const auto before = step("rear-wheel-out");
    line("step-off_minutes")->setFocus();
    line("step-off_minutes")->selectAll();
    type(QStringLiteral("9"));
    const auto plan = book::planOfStep(garage_->book(), heron_, "rear-wheel-out");
    const auto longer = plan->work.count() + 9 - before.off.count();
    const QString foretold = preview();
    EXPECT_TRUE(foretold.contains(QStringLiteral("%1 → %2 min").arg(plan->work.count()).arg(longer)))
        << foretold.toStdString();
    EXPECT_EQ(step("rear-wheel-out").off, before.off) << "nothing is written before it is saved";
    press(Qt::Key_Return);
    EXPECT_EQ(step("rear-wheel-out").off.count(), 9);
    EXPECT_EQ(step("rear-wheel-out").step, before.step);
    EXPECT_EQ(step("rear-wheel-out").validFrom, garage_->book().today());
    EXPECT_EQ(book::planOfStep(garage_->book(), heron_, "rear-wheel-out")->work.count(), longer);
    EXPECT_EQ(QApplication::focusWidget(), table_);
    press(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(step("rear-wheel-out").off, before.off);
    EXPECT_EQ(line("step-off_minutes")->text(), QString::number(before.off.count()));
}

// One order more, from the list to the file: Alt+Ins, C, Tab, a part of a name, Tab, Tab, a part of a name,
// Enter.
TEST_F(StepsPageTest, AnOrderIsAddedByTheKeysAlone) {
    const auto before = step("tank-off");
    choose("tank-off");
    press(Qt::Key_Insert, Qt::AltModifier);
    const QString row = QStringLiteral("step-edges-%1-").arg(before.edges.size());
    ASSERT_EQ(focused(), row + QStringLiteral("earlier"));
    press(Qt::Key_C);  // crack loose
    press(Qt::Key_Tab);
    ASSERT_EQ(focused(), row + QStringLiteral("earlier_code"));
    type(QStringLiteral("seat bolts"));
    press(Qt::Key_Tab);
    press(Qt::Key_Tab);
    ASSERT_EQ(focused(), row + QStringLiteral("later_code"));
    type(QStringLiteral("tank and"));
    EXPECT_FALSE(preview().isEmpty());
    press(Qt::Key_Return);
    const auto& after = step("tank-off");
    ASSERT_EQ(after.edges.size(), before.edges.size() + 1) << preview().toStdString();
    EXPECT_EQ(after.edges.back(), (upkeep::Edge{{Deed::Crack, "seat-bolts"}, {Deed::Off, "tank-off"}}));
    EXPECT_EQ(QApplication::focusWidget(), table_);
    press(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(step("tank-off").edges, before.edges);
}

TEST_F(StepsPageTest, EnterGoesToTheOrderAndOneIsChanged) {
    const auto before = step("rear-wheel-out");
    ASSERT_FALSE(before.edges.empty());
    press(Qt::Key_Return);
    ASSERT_EQ(focused(), QStringLiteral("step-edges-0-earlier_code"));
    const QString shown = box(QStringLiteral("step-edges-0-earlier_code"))->currentText();
    EXPECT_NE(shown, text(before.edges[0].earlier.code)) << "named, not coded";
    EXPECT_FALSE(shown.isEmpty());
    child<QToolButton>("step-edges-0-out")->click();
    EXPECT_EQ(focused(), QStringLiteral("step-edges-add"));
    line("step-name")->setFocus();
    press(Qt::Key_Return);
    EXPECT_EQ(step("rear-wheel-out").edges.size(), before.edges.size() - 1);
}

TEST_F(StepsPageTest, WhatCanBeNamedFollowsTheAct) {
    choose("tank-off");
    press(Qt::Key_Insert, Qt::AltModifier);
    const QString row = QStringLiteral("step-edges-%1-").arg(step("tank-off").edges.size());
    const auto offered = [&] { return box(row + QStringLiteral("earlier_code"))->count(); };
    kind(row + QStringLiteral("earlier"), Deed::Torque);
    EXPECT_EQ(offered(), static_cast<int>(garage_->book().joints(heron_).size()));
    typeIn(row + QStringLiteral("earlier_code"), QStringLiteral("seat bolts"));
    kind(row + QStringLiteral("earlier"), Deed::Crack);
    EXPECT_FALSE(box(row + QStringLiteral("earlier_code"))->currentText().isEmpty()) << "the same joint";
    kind(row + QStringLiteral("earlier"), Deed::Off);
    EXPECT_EQ(offered(), static_cast<int>(garage_->book().steps(heron_).size()));
    EXPECT_TRUE(box(row + QStringLiteral("earlier_code"))->currentText().isEmpty());
    kind(row + QStringLiteral("earlier"), Deed::Job);
    EXPECT_EQ(offered(), static_cast<int>(garage_->book().tasks(heron_).size()));
}

TEST_F(StepsPageTest, AThingThatIsNotThereIsRefusedWithWhatMayBeMeant) {
    choose("tank-off");
    const auto before = versions();
    press(Qt::Key_Insert, Qt::AltModifier);
    const QString row = QStringLiteral("step-edges-%1-").arg(step("tank-off").edges.size());
    kind(row + QStringLiteral("earlier"), Deed::Torque);
    typeIn(row + QStringLiteral("earlier_code"), QStringLiteral("reer axel nutt"));
    typeIn(row + QStringLiteral("later_code"), QStringLiteral("tank and"));
    press(Qt::Key_Return);
    EXPECT_EQ(versions(), before);
    const auto* fault = child<QLabel>(qPrintable(row + QStringLiteral("earlier_code-fault")));
    EXPECT_TRUE(fault->isVisible());
    EXPECT_TRUE(fault->text().contains(text(garage_->book().joint(heron_, "rear-axle-nut")->name)))
        << fault->text().toStdString();
    EXPECT_EQ(focused(), row + QStringLiteral("earlier_code"));
    EXPECT_EQ(box(row + QStringLiteral("earlier_code"))->currentText(), QStringLiteral("reer axel nutt"));
}

TEST_F(StepsPageTest, ACircleIsNamedWithItsActsWhereItIsMade) {
    choose("tank-off");
    const auto before = versions();
    press(Qt::Key_Insert, Qt::AltModifier);
    const QString row = QStringLiteral("step-edges-%1-").arg(step("tank-off").edges.size());
    kind(row + QStringLiteral("earlier"), Deed::On);
    typeIn(row + QStringLiteral("earlier_code"), QStringLiteral("tank and"));
    typeIn(row + QStringLiteral("later_code"), QStringLiteral("tank and"));
    const QString words = preview();
    EXPECT_TRUE(words.contains(QStringLiteral("wait for each other"))) << words.toStdString();
    EXPECT_TRUE(words.contains(QStringLiteral("on “Tank and shrouds off” → off “Tank and shrouds off”")) ||
                words.contains(QStringLiteral("off “Tank and shrouds off” → on “Tank and shrouds off”")))
        << words.toStdString();
    EXPECT_TRUE(child<QLabel>(qPrintable(row + QStringLiteral("later_code-fault")))->isVisible())
        << "before it is saved";
    press(Qt::Key_Return);
    EXPECT_EQ(versions(), before);
    EXPECT_EQ(focused(), row + QStringLiteral("later_code"));
    kind(row + QStringLiteral("earlier"), Deed::Off);
    typeIn(row + QStringLiteral("later_code"), QStringLiteral("tank and"));
    EXPECT_TRUE(preview().contains(QStringLiteral("can't come before itself"))) << preview().toStdString();
}

TEST_F(StepsPageTest, MinutesThatCanNotBeAreRefusedAtTheirField) {
    choose("tank-off");
    const auto before = versions();
    for (const char* typed : {"-3", "nan", "1e9", "99999999999", "two", "3.5"}) {
        line("step-on_minutes")->setFocus();
        line("step-on_minutes")->selectAll();
        type(QLatin1String(typed));
        press(Qt::Key_Return);
        EXPECT_EQ(versions(), before) << typed;
        EXPECT_TRUE(child<QLabel>("step-on_minutes-fault")->isVisible()) << typed;
        EXPECT_EQ(line("step-on_minutes")->text(), QLatin1String(typed));
    }
    line("step-name")->setFocus();
    line("step-name")->clear();
    emit line("step-name")->textEdited(QString());
    child<QPushButton>("step-drop")->click();
    EXPECT_EQ(line("step-name")->text(), QStringLiteral("Tank and shrouds off"));
    EXPECT_EQ(versions(), before);
}

TEST_F(StepsPageTest, AStepWithoutANameOrWithOneThatIsTakenIsRefused) {
    table_->setFocus();
    const auto before = versions();
    press(Qt::Key_Insert);
    ASSERT_EQ(focused(), QStringLiteral("step-name"));
    press(Qt::Key_Return);
    line("step-off_minutes")->setFocus();
    type(QStringLiteral("3"));
    press(Qt::Key_Return);
    EXPECT_TRUE(child<QLabel>("step-name-fault")->isVisible());
    line("step-name")->setFocus();
    type(QStringLiteral("Seat off"));
    press(Qt::Key_Return);
    EXPECT_TRUE(child<QLabel>("step-name-fault")->isVisible());
    EXPECT_TRUE(child<QLabel>("step-name-fault")->text().contains(QStringLiteral("there already")));
    EXPECT_EQ(versions(), before);
    EXPECT_FALSE(window_->isHidden());
}

TEST_F(StepsPageTest, ANewStepIsWrittenWithWhatItNeedsAndUndoneInOneStep) {
    const auto before = garage_->book().steps(heron_).size();
    table_->setFocus();
    press(Qt::Key_Insert);
    type(QStringLiteral("Radiator guard off"));
    line("step-off_minutes")->setFocus();
    type(QStringLiteral("2"));
    child<QPushButton>("step-needs-add")->click();
    ASSERT_EQ(focused(), QStringLiteral("step-needs-0-code"));
    type(QStringLiteral("seat off"));
    child<QPushButton>("step-doings-add")->click();
    line("step-doings-0-what")->setFocus();
    type(QStringLiteral("Straighten the fins"));
    press(Qt::Key_Insert, Qt::AltModifier);
    kind(QStringLiteral("step-edges-0-earlier"), Deed::Off);
    typeIn(QStringLiteral("step-edges-0-earlier_code"), QStringLiteral("radiator guard"));
    kind(QStringLiteral("step-edges-0-later"), Deed::Do);
    typeIn(QStringLiteral("step-edges-0-later_code"), QStringLiteral("fins"));
    EXPECT_TRUE(preview().contains(QStringLiteral("min"))) << preview().toStdString();
    press(Qt::Key_Return);
    ASSERT_EQ(garage_->book().steps(heron_).size(), before + 1) << preview().toStdString();
    const auto& saved = step("radiator-guard-off");
    EXPECT_EQ(table_->chosenId(), saved.step.value());
    EXPECT_EQ(saved.off.count(), 2);
    ASSERT_EQ(saved.needs.size(), 1U);
    EXPECT_EQ(saved.needs[0].code, "seat-off");
    EXPECT_TRUE(saved.needs[0].applies);
    ASSERT_EQ(saved.doings.size(), 1U);
    EXPECT_EQ(saved.doings[0].code, "straighten-the-fins");
    EXPECT_EQ(saved.doings[0].comes, upkeep::Comes::After);
    ASSERT_EQ(saved.edges.size(), 1U);
    EXPECT_EQ(saved.edges[0],
              (upkeep::Edge{{Deed::Off, "radiator-guard-off"}, {Deed::Do, "straighten-the-fins"}}));
    garage_->workbench().undo();
    EXPECT_EQ(garage_->book().steps(heron_).size(), before);
}

TEST_F(StepsPageTest, AStepThatIsNeededStaysAndSaysByWhom) {
    choose("seat-off");
    const auto before = versions();
    press(Qt::Key_Delete);
    EXPECT_TRUE(preview().contains(QStringLiteral("can't be switched off, “"))) << preview().toStdString();
    ASSERT_EQ(focused(), QStringLiteral("step-save"));
    press(Qt::Key_Space);
    EXPECT_EQ(versions(), before);
    EXPECT_TRUE(step("seat-off").active);
    child<QPushButton>("step-drop")->click();
}

TEST_F(StepsPageTest, AStepIsSwitchedOffAndOnAndNeverDeleted) {
    table_->setFocus();
    press(Qt::Key_Insert);
    type(QStringLiteral("Radiator guard off"));
    press(Qt::Key_Return);
    const StepId guard = step("radiator-guard-off").step;
    press(Qt::Key_Delete);
    EXPECT_EQ(preview(), QStringLiteral("It leaves all plans."));
    press(Qt::Key_Space);
    EXPECT_EQ(garage_->book().step(heron_, "radiator-guard-off"), nullptr);
    EXPECT_FALSE(book::stepOf(garage_->book(), guard)->active);
    table_->choose(guard.value());
    table_->setFocus();
    press(Qt::Key_Delete);
    press(Qt::Key_Space);
    EXPECT_TRUE(book::stepOf(garage_->book(), guard)->active);
}

TEST_F(StepsPageTest, WhatWasTypedStaysWithItsStep) {
    choose("tank-off");
    line("step-off_minutes")->setFocus();
    line("step-off_minutes")->selectAll();
    type(QStringLiteral("twelve"));
    choose("seat-off");
    EXPECT_NE(line("step-off_minutes")->text(), QStringLiteral("twelve"));
    EXPECT_TRUE(nameInList("tank-off").endsWith(QStringLiteral("(not saved)")));
    window_->goTo(PageId::Bench);
    garage_->workbench().choose(garage_->machine("Sorrel 450"));
    window_->goTo(PageId::Weekend);
    garage_->workbench().choose(heron_);
    choose("tank-off");
    EXPECT_EQ(line("step-off_minutes")->text(), QStringLiteral("twelve"));
    prompts_.agrees = false;
    window_->close();
    EXPECT_TRUE(window_->isVisible());  // asked first: there is something not saved
    child<QPushButton>("step-drop")->click();
    EXPECT_FALSE(nameInList("tank-off").endsWith(QStringLiteral("(not saved)")));
}

TEST_F(StepsPageTest, AnotherOrderIsNotConfirmedUntilSomebodySaysSo) {
    auto confirmed = step("tank-off");
    confirmed.source = "service manual";
    confirmed.confirmed = true;
    garage_->say(
        [confirmed](const verbs::VerbContext& context) { return verbs::saveStep(context, confirmed); });
    choose("tank-off");
    child<QPushButton>("step-joints-add")->click();
    type(QStringLiteral("rear axle nut"));
    press(Qt::Key_Return);
    EXPECT_EQ(step("tank-off").joints.back().code, "rear-axle-nut");
    EXPECT_FALSE(step("tank-off").confirmed);
}

TEST_F(StepsPageTest, ATaskOpensTheStepThatItNeeds) {
    const TaskId task = garage_->task("Heron 250", "linkage-grease");
    const std::string code = garage_->book().task(task)->steps.front().code;
    window_->goTo(PageId::Tasks);
    child<RowTable>("tasksTable")->choose(task.value());
    child<QToolButton>("task-steps-0-open")->click();
    EXPECT_TRUE(table_->isVisible());
    EXPECT_EQ(table_->chosenId(), step(code.c_str()).step.value());
    EXPECT_EQ(QApplication::focusWidget(), table_);
}

TEST_F(StepsPageTest, ALineOfTheOrderOpensItsStep) {
    const TaskId task = garage_->task("Heron 250", "linkage-grease");
    if (!garage_->book().dueLine(task)->picked)
        garage_->say([this, task](const verbs::VerbContext& context) {
            return verbs::pick(context, heron_, task, std::nullopt, true);
        });
    window_->goTo(PageId::Weekend);
    press(Qt::Key_PageUp, Qt::ControlModifier);
    auto* order = child<RowTable>("weekendOrder");
    ASSERT_TRUE(order->isVisible());
    std::int64_t row = 0;
    for (const auto& each : order->rows().rows())
        if (each.cells.at(1).text == text(step("linkage-off").name))
            row = each.id;
    ASSERT_NE(row, 0);
    order->choose(row);
    order->setFocus();
    press(Qt::Key_Return);
    EXPECT_EQ(table_->chosenId(), step("linkage-off").step.value());
    EXPECT_TRUE(table_->isVisible());
}

TEST_F(StepsPageTest, TheFilterFindsAStep) {
    press(Qt::Key_F, Qt::ControlModifier);
    ASSERT_EQ(focused(), QStringLiteral("stepsFind"));
    type(QStringLiteral("rear wheel"));
    EXPECT_LT(table_->shownIds().size(), 4U);
    EXPECT_EQ(table_->chosenId(), step("rear-wheel-out").step.value());
    EXPECT_GT(child<RowTable>("stepOrder")->rows().rows().size(), 5U);
}

TEST_F(StepsPageTest, EscapeLeavesTheFieldsForTheList) {
    press(Qt::Key_Return);
    press(Qt::Key_Escape);
    EXPECT_EQ(QApplication::focusWidget(), table_);
    EXPECT_TRUE(garage_->workbench().chosen());
}

TEST_F(StepsPageTest, AMachineWithoutStepsIsToldWhatToDoFirst) {
    items::Machine bare;
    bare.name = "Bare";
    bare.since = garage_->book().today();
    bare.startedNew = true;
    bare.pastHigh = units::Hours{};
    garage_->say([bare](const verbs::VerbContext& context) { return verbs::saveMachine(context, bare); });
    garage_->workbench().choose(garage_->machine("Bare"));
    EXPECT_TRUE(child<QLabel>("steps-empty")->isVisible());
    EXPECT_FALSE(table_->isVisible());
    window_->goTo(PageId::Weekend, {.view = Aim::View::Steps});
    ASSERT_EQ(focused(), QStringLiteral("step-new"));
    press(Qt::Key_Space);
    ASSERT_EQ(focused(), QStringLiteral("step-name"));
    type(QStringLiteral("On the stand"));
    press(Qt::Key_Return);
    EXPECT_EQ(garage_->book().steps(garage_->machine("Bare")).size(), 1U);
    EXPECT_FALSE(child<QLabel>("steps-empty")->isVisible());
}

TEST(StepDraftTest, EveryVersionComesBackAsItWas) {
    Garage garage(Garage::Fill::Season);
    int seen = 0;
    for (weekend::StepVersion step : garage.book().ledger().all<weekend::StepVersion>()) {
        step.validFrom = garage.book().today();
        weekend::StepVersion bare;
        bare.id = step.id;
        bare.entered = step.entered;
        bare.step = step.step;
        bare.machine = step.machine;
        bare.code = step.code;
        const auto again = versionFrom(draftOf(step), bare, garage.book().today());
        ASSERT_TRUE(again.has_value()) << step.name;
        EXPECT_TRUE(*again == step) << step.name;
        ++seen;
    }
    EXPECT_GT(seen, 20);
}

}  // namespace
}  // namespace wm::ui

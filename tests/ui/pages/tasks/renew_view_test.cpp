// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/tasks/renew_view.h"

#include <QLabel>
#include <QPushButton>
#include <QTabBar>
#include <algorithm>

#include "core/verbs/verbs.h"
#include "tests/ui/window.h"
#include "ui/entry/starters.h"
#include "ui/pages/tasks/renew_words.h"
#include "ui/tables/row_table.h"

namespace wm::ui {
namespace {

constexpr int kView = 5;

class RenewViewTest : public WindowTest {
  protected:
    // A machine that was set up with older words: another way with the oil, no grips, more time for
    // the seat.
    void SetUp() override {
        openOn(Garage::Fill::OneMachine);
        auto all = starters();
        older_ = *std::find_if(all.begin(), all.end(),
                               [](const auto& each) { return each.name == "four-stroke motocross"; });
        for (auto& task : older_.tasks)
            if (task.code == "engine-oil")
                task.howTo = "Let it out, put it in.";
        std::erase_if(older_.tasks, [](const auto& task) { return task.code == "grips"; });
        for (auto& step : older_.steps)
            if (step.code == "seat-off")
                step.off = units::Minutes{7};
        garage_->say([](const verbs::VerbContext& context) {
            return verbs::saveMachine(
                context,
                {.name = "Plover 125", .starter = "four-stroke motocross", .since = day("2026-01-10")});
        });
        garage_->say(adoptStarter("Plover 125", older_));
        garage_->workbench().choose(garage_->machine("Plover 125"));
        window_->goTo(PageId::Tasks);
        child<QTabBar>("taskViews")->setCurrentIndex(kView);
        table_ = child<RowTable>("renewTable");
        table_->setFocus();
    }
    QString button(int key) { return child<QPushButton>(qPrintable(QString("renew-%1").arg(key)))->text(); }
    QString head() { return child<QLabel>("renew-head")->text(); }
    QString tab() { return child<QTabBar>("taskViews")->tabText(kView); }
    const upkeep::TaskVersion* task(const char* code) {
        for (const auto* each : garage_->book().tasks(garage_->machine("Plover 125")))
            if (each->code == code)
                return each;
        return nullptr;
    }

    exchange::Starter older_;
    RowTable* table_ = nullptr;
};

TEST_F(RenewViewTest, CountsWhatTheScheduleSaysByNow) {
    EXPECT_EQ(tab(), QStringLiteral("New in the schedule (3)"));
    EXPECT_EQ(button(1), QStringLiteral("order and joints: 1 (Alt+1)"));
    EXPECT_EQ(button(2), QStringLiteral("new tasks: 1 (Alt+2)"));
    EXPECT_FALSE(child<QPushButton>("renew-3")->isEnabled());
    EXPECT_EQ(button(4), QStringLiteral("words, kits, cautions: 1 (Alt+4)"));
}

TEST_F(RenewViewTest, AKeyTakesAGroupOverAndUndoTakesItBack) {
    ASSERT_EQ(task("grips"), nullptr);
    press(Qt::Key_2, Qt::AltModifier);
    EXPECT_NE(task("grips"), nullptr);
    EXPECT_EQ(task("engine-oil")->howTo, "Let it out, put it in.");
    press(Qt::Key_1, Qt::AltModifier);
    press(Qt::Key_4, Qt::AltModifier);
    EXPECT_NE(task("engine-oil")->howTo, "Let it out, put it in.");
    EXPECT_EQ(tab(), QStringLiteral("New in the schedule"));
    EXPECT_EQ(head(), QStringLiteral("Plover 125 has all that its schedule says, four-stroke motocross."));
    press(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(task("engine-oil")->howTo, "Let it out, put it in.");
    EXPECT_EQ(button(4), QStringLiteral("words, kits, cautions: 1 (Alt+4)"));
}

// A line alone takes nothing; Enter goes to the key that would take its group, and that takes it.
TEST_F(RenewViewTest, EnterGoesToTheKeyOfTheGroup) {
    table_->choose(2);
    press(Qt::Key_Return);
    EXPECT_EQ(task("engine-oil")->howTo, "Let it out, put it in.");
    const auto* key = qobject_cast<QPushButton*>(QApplication::focusWidget());
    ASSERT_NE(key, nullptr);
    EXPECT_EQ(key->text(), button(4));
    press(Qt::Key_Space);
    EXPECT_NE(task("engine-oil")->howTo, "Let it out, put it in.");
    EXPECT_EQ(task("grips"), nullptr);
}

// What a field is called is known for each that a schedule can change, and for no other.
TEST(RenewWords, NameWhatAScheduleCanChange) {
    const auto named = [](std::string_view field) { return !renewedWords(field).isEmpty(); };
    for (const char* own : {"id", "entered", "task", "machine", "valid_from", "code", "source", "page",
                            "confirmed", "active", "from_starter", "torque", "typed_by"})
        EXPECT_FALSE(named(own)) << own;
    const auto visit = [&](std::string_view field, const auto& /*value*/) {
        static const std::vector<std::string_view> kOwn{"id",      "entered",   "task",       "step",
                                                        "machine", "code",      "valid_from", "source",
                                                        "page",    "confirmed", "active",     "from_starter"};
        if (std::find(kOwn.begin(), kOwn.end(), field) == kOwn.end()) {
            EXPECT_TRUE(named(field)) << field;
        }
    };
    const upkeep::TaskVersion task;
    upkeep::TaskVersion::fields(task, visit);
    const weekend::StepVersion step;
    weekend::StepVersion::fields(step, visit);
}

}  // namespace
}  // namespace wm::ui

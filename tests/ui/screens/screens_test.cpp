// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// Writes every page as a picture, to be looked at; what it checks is that each page paints at all. The target
// `screens` runs it; in an ordinary run it does nothing.
#include <QApplication>
#include <QClipboard>
#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <QImage>
#include <QLineEdit>
#include <QRegularExpression>
#include <QScrollArea>
#include <QTabBar>
#include <QToolButton>

#include "tests/repository.h"
#include "tests/ui/window.h"
#include "ui/shell/notebook_dialog.h"
#include "ui/shell/notebook_lines.h"
#include "ui/shell/page_table.h"
#include "ui/tables/row_table.h"
#include "ui/theme/theme.h"

namespace wm::ui {
namespace {

class LongScreens : public WindowTest {
  protected:
    void SetUp() override {
        target_ = qEnvironmentVariable("WITNESSMARK_SCREENS");
        if (target_.isEmpty())
            GTEST_SKIP() << "set WITNESSMARK_SCREENS to a folder";
        QDir().mkpath(target_);
    }
    void TearDown() override { applyTheme(*qApp, ThemeChoice::Light); }

    void write(const QString& name) {
        QApplication::processEvents();
        const QImage image = window_->grab().toImage();
        const QString file =
            QStringLiteral("%1/%2-%3-%4.png").arg(target_, name, theme_).arg(window_->width());
        EXPECT_TRUE(image.save(file)) << file.toStdString();
    }
    template <class Each>
    void inEveryLook(Each each) {
        for (const auto choice : {ThemeChoice::Light, ThemeChoice::Dark}) {
            applyTheme(*qApp, choice);
            theme_ = choice == ThemeChoice::Light ? QStringLiteral("light") : QStringLiteral("dark");
            for (const QSize size : {QSize(1280, 800), QSize(1920, 1080)}) {
                window_->resize(size);
                QApplication::processEvents();
                each();
            }
        }
    }

    QString target_;
    QString theme_;
};

TEST_F(LongScreens, OfEveryPage) {
    openOn(Garage::Fill::Demo);
    inEveryLook([this] {
        for (const auto& page : pageTable()) {
            for (const bool one : {false, true}) {
                garage_->workbench().choose(one ? std::optional(garage_->machine("Heron 250"))
                                                : std::nullopt);
                window_->goTo(page.id);
                const QString name = QString(page.name).remove(QLatin1Char('&')).toLower();
                write(one ? name + QStringLiteral("-one") : name);
            }
        }
    });
}

TEST_F(LongScreens, OfTheViewsOfTorque) {
    openOn(Garage::Fill::Demo);
    garage_->workbench().choose(garage_->machine("Heron 250"));
    window_->goTo(PageId::Torque);
    auto* views = child<QTabBar>("torqueViews");
    QApplication::clipboard()->setText(
        QStringLiteral("joint;thread;torque;stages;page;manual\n"
                       "Clutch hub nut;M18x1.0;80;;5-12;service manual\n"
                       "Head bolts;M9x1.25;38;snug, 20, 38;5-20;\n"
                       "Crankcase bolts;M6x1.0;ten;;5-31;\n"));
    inEveryLook([this, views] {
        for (const auto& [at, name] : {std::pair(1, "torque-hand-tight"), std::pair(2, "torque-drawer"),
                                       std::pair(3, "torque-came-loose"), std::pair(4, "torque-chart"),
                                       std::pair(5, "torque-confirm")}) {
            views->setCurrentIndex(at);
            if (at == 4) {
                child<QAbstractButton>("chartClear")->click();
                child<QAbstractButton>("chartPaste")->click();
            }
            write(QLatin1String(name));
        }
        views->setCurrentIndex(0);
    });
}

TEST_F(LongScreens, OfTheViewsOfTasks) {
    openOn(Garage::Fill::OneMachine);
    press(Qt::Key_B, Qt::ControlModifier);
    press(Qt::Key_N);
    press(Qt::Key_F);
    press(Qt::Key_S);
    type(QStringLiteral("3 may 2025"));
    press(Qt::Key_Return);
    auto* views = child<QTabBar>("taskViews");
    const std::pair<const char*, const char*> typed[] = {
        {"used-meter-shown", "41"},     {"used-word-likely", "60"}, {"used-chain-as_new", "317,5"},
        {"used-chain-limit", "320"},    {"used-chain-now", "319"},  {"used-chain-life_low", "15"},
        {"used-chain-life_high", "30"}, {"used-bore-as_new", "76"}, {"used-bore-limit", "76,05"},
        {"used-bore-now", "75,9"},      {"used-rear-code", "2319"}, {"adjust-percent", "80"}};
    views->setCurrentIndex(3);
    for (const auto& [field, words] : typed) {
        if (QLatin1String(field).startsWith(QLatin1String("adjust")))
            views->setCurrentIndex(4);
        child<QLineEdit>(field)->setFocus();
        child<QLineEdit>(field)->selectAll();
        type(QLatin1String(words));
    }
    inEveryLook([this, views] {
        for (const auto& [at, name] : {std::pair(1, "tasks-known"), std::pair(2, "tasks-first-hours"),
                                       std::pair(3, "tasks-used"), std::pair(4, "tasks-adjust")}) {
            views->setCurrentIndex(at);
            write(QLatin1String(name));
        }
    });
}

// An access step as it stands, one that was changed, with what that does, and one that is refused.
TEST_F(LongScreens, OfAccessSteps) {
    openOn(Garage::Fill::Season);
    const MachineId heron = garage_->machine("Heron 250");
    garage_->workbench().choose(heron);
    const auto* rear = garage_->book().step(heron, "rear-wheel-out");
    ASSERT_NE(rear, nullptr);
    window_->goTo(PageId::Weekend, {.view = Aim::View::Steps, .step = rear->step});
    const auto look = [this](const QString& name) {
        QTest::qWait(250);
        inEveryLook([&] { write(name); });
    };
    look(QStringLiteral("steps"));
    child<QLineEdit>("step-off_minutes")->setFocus();
    child<QLineEdit>("step-off_minutes")->selectAll();
    type(QStringLiteral("9"));
    child<QAbstractButton>("step-edges-0-out")->click();
    look(QStringLiteral("steps-changed"));
    press(Qt::Key_Insert, Qt::AltModifier);
    press(Qt::Key_O);
    press(Qt::Key_Tab);
    type(QStringLiteral("reer whel"));
    look(QStringLiteral("steps-refused"));
    for (auto* fold : child<QWidget>("step-editor")->findChildren<QToolButton*>())
        if (fold->isCheckable())
            fold->click();
    child<QScrollArea>("step-scroll")->ensureVisible(0, 700);
    look(QStringLiteral("steps-unfolded"));
}

TEST_F(LongScreens, OfWhatWasWhere) {
    openOn(Garage::Fill::Demo);
    window_->goTo(PageId::Machine);
    press(Qt::Key_H);
    inEveryLook([this] {
        for (const bool one : {false, true}) {
            garage_->workbench().choose(one ? std::optional(garage_->machine("Heron 250")) : std::nullopt);
            write(one ? QStringLiteral("places-one") : QStringLiteral("places"));
        }
    });
}

TEST_F(LongScreens, OfTheEntries) {
    openOn(Garage::Fill::Demo);
    inEveryLook([this] {
        EntryRequest request;
        request.kind = EntryKind::Job;
        request.machine = garage_->machine("Sorrel 450");
        request.task = garage_->task("Sorrel 450", "linkage-grease");
        window_->enter(request);
        write(QStringLiteral("entry-job"));
        press(Qt::Key_Escape);
        request = {};
        request.kind = EntryKind::Outing;
        request.machine = garage_->machine("Sorrel 450");
        window_->enter(request);
        type(QStringLiteral("two"));
        press(Qt::Key_Return);
        write(QStringLiteral("entry-outing"));
        press(Qt::Key_Escape);
        request.kind = EntryKind::Machine;
        window_->enter(request);
        write(QStringLiteral("entry-machine"));
        press(Qt::Key_Escape);
        window_->action(ActionId::Why)->trigger();
        QApplication::processEvents();
        if (auto* why = QApplication::activePopupWidget())
            why->grab().save(QStringLiteral("%1/why-%2.png").arg(target_, theme_)), why->close();
    });
}

TEST_F(LongScreens, OfATaskThatIsChanged) {
    openOn(Garage::Fill::Demo);
    garage_->workbench().choose(garage_->machine("Heron 250"));
    window_->goTo(PageId::Tasks);
    auto* table = child<RowTable>("tasksTable");
    inEveryLook([this, table] {
        table->choose(garage_->task("Heron 250", "fork-oil").value());
        auto* every = child<QLineEdit>("task-limits-0-every");
        every->setFocus();
        every->selectAll();
        type(QStringLiteral("7,5"));
        QTest::qWait(200);
        write(QStringLiteral("tasks-changed"));
        child<QAbstractButton>("task-drop")->click();
        for (auto* fold : window_->findChildren<QToolButton*>(QRegularExpression("^task-fold-")))
            fold->setChecked(true);
        child<QWidget>("task-kit-add")->setFocus();
        QApplication::processEvents();
        child<QScrollArea>("task-scroll")->ensureWidgetVisible(child<QWidget>("task-follow_ups-add"));
        write(QStringLiteral("tasks-unfolded"));
        for (auto* fold : window_->findChildren<QToolButton*>(QRegularExpression("^task-fold-")))
            fold->setChecked(false);
        for (const auto& line : garage_->book().due(garage_->machine("Heron 250")))
            if (line.countdown.noRecord)
                table->choose(line.task->task.value());
        write(QStringLiteral("tasks-no-record"));
    });
}

TEST_F(LongScreens, OfANotebookBeforeItGoesIn) {
    openOn(Garage::Fill::Empty);
    garage_->say([](const verbs::VerbContext& context) {
        return verbs::nameGarage(context, "Alder Yard", day("2026-11-25"));
    });
    garage_->addMachine("Heron 250", "four-stroke-motocross", units::Hours{1250});
    garage_->addMachine("Sorrel 450", "four-stroke-motocross", units::Hours{8830});
    inEveryLook([this] {
        for (const char* name : {"outings", "jobs"}) {
            QFile file(QString::fromStdString(test::repositoryPath("tests/data/notebook/%1.csv"))
                           .arg(QLatin1String(name)));
            ASSERT_TRUE(file.open(QIODevice::ReadOnly));
            auto preview = std::make_unique<NotebookPreview>(file.readAll().toStdString(),
                                                             garage_->workbench().book(), *settings_);
            ASSERT_FALSE(preview->open());
            preview->judge();
            NotebookDialog dialog(garage_->workbench(), std::move(preview),
                                  QFileInfo(file.fileName()).fileName(), window_.get());
            dialog.show();
            auto* verdicts = dialog.findChild<QTabBar*>();
            auto* table = dialog.findChild<NotebookTable*>();
            for (const int tab : {verdicts->currentIndex(), 0}) {
                verdicts->setCurrentIndex(tab);
                if (tab != 0)
                    QTest::keyClick(table, Qt::Key_Space);
                QTest::keyClick(table, Qt::Key_Down);
                QApplication::processEvents();
                dialog.grab().save(QStringLiteral("%1/notebook-%2-%3-%4-%5.png")
                                       .arg(target_, QLatin1String(name), QString::number(tab), theme_)
                                       .arg(window_->width()));
            }
        }
    });
}

TEST_F(LongScreens, OfAnEmptyFile) {
    openOn(Garage::Fill::Empty);
    inEveryLook([this] { write(QStringLiteral("start-empty")); });
}

TEST_F(LongScreens, OfNoFile) {
    openOn(Garage::Fill::Empty);
    garage_->workbench().close();
    inEveryLook([this] { write(QStringLiteral("start-none")); });
}

}  // namespace
}  // namespace wm::ui

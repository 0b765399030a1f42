// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// Every page, form, dialog and tip on every screen that we promise, light or dark: what is off the window,
// cut, without a name or a way to reach it. What fails today stands in tests/data/window/known.txt.
#include <gtest/gtest.h>

#include <QApplication>
#include <QDirIterator>
#include <QFile>
#include <QRegularExpression>
#include <QScreen>
#include <QSettings>
#include <QTest>

#include "tests/repository.h"
#include "tests/ui/fake_prompts.h"
#include "tests/ui/garage.h"
#include "tests/ui/harness/known.h"
#include "tests/ui/harness/settings.h"
#include "tests/ui/harness/widgets.h"
#include "ui/shell/main_window.h"
#include "ui/theme/theme.h"

namespace wm::ui {
namespace {

// What the walk has met, so that nothing is built without being seen.
class Met {
  public:
    void meet(const Surface& surface) {
        QWidgetList all = surface.root->window()->findChildren<QWidget*>();
        all << surface.root->window();
        for (const auto* widget : all) {
            const QString name = widget->objectName();
            const bool isNamed = !name.isEmpty() && !isQtsOwn(*widget);
            if (isNamed)
                (widget->isVisible() ? seen_ : hidden_).insert(name);
            if (!widget->isVisible())
                continue;
            for (const auto* meta = widget->metaObject(); meta != nullptr; meta = meta->superClass())
                classes_.insert(QString::fromLatin1(meta->className()).section(QStringLiteral("::"), -1));
        }
    }
    [[nodiscard]] Findings unseen() const {
        Findings found;
        for (const QString& name : hidden_)
            if (!seen_.contains(name))
                found.emplace(Finding{QStringLiteral("unseen"), QStringLiteral("widget"), name},
                              QStringLiteral("no surface of everything.cpp shows it"));
        for (const QString& name : widgetClasses())
            if (!classes_.contains(name))
                found.emplace(Finding{QStringLiteral("unseen"), QStringLiteral("class"), name},
                              QStringLiteral("no surface of everything.cpp shows one"));
        return found;
    }

  private:
    // Every widget of ours that has a name for Qt, from the headers.
    static std::set<QString> widgetClasses() {
        static const QRegularExpression kClass(
            QStringLiteral(R"(^class (\w+) : public (\w+)[^\n]*\{\n\s*Q_OBJECT)"),
            QRegularExpression::MultilineOption);
        std::map<QString, QString> bases;
        for (QDirIterator at(QString::fromStdString(test::repositoryPath("ui")), {QStringLiteral("*.h")},
                             QDir::Files, QDirIterator::Subdirectories);
             at.hasNext();) {
            QFile file(at.next());
            EXPECT_TRUE(file.open(QIODevice::ReadOnly));
            for (auto each = kClass.globalMatch(QString::fromUtf8(file.readAll())); each.hasNext();) {
                const auto match = each.next();
                bases.emplace(match.captured(1), match.captured(2));
            }
        }
        std::set<QString> widgets;
        for (const auto& [name, base] : bases) {
            QString root = base;
            while (bases.contains(root))
                root = bases.at(root);
            static const QRegularExpression kNoWidget(
                QStringLiteral("^(QObject|Q\\w*Model|Q\\w*Delegate|Q\\w*Layout|QIconEngine)$"));
            if (!kNoWidget.match(root).hasMatch())
                widgets.insert(name);
        }
        EXPECT_GT(widgets.size(), 40U);
        return widgets;
    }

    std::set<QString> seen_;
    std::set<QString> hidden_;
    std::set<QString> classes_;
};

// "TasksDesk, one machine/TasksPage, unfolded" is told once, as "TasksDesk/TasksPage", whatever its state;
// and what the window shows of a page, with the page.
Findings onceAPlace(const Findings& all) {
    static const QRegularExpression kState(QStringLiteral(", [^/]*"));
    const QString window = QStringLiteral("MainWindow");
    Findings once;
    std::set<std::pair<QString, QString>> onPages;
    for (const auto& [finding, seen] : all) {
        Finding place = finding;
        place.surface.remove(kState);
        once.emplace(place, seen);
        if (place.surface != window)
            onPages.emplace(place.check, place.where);
    }
    std::erase_if(once, [&](const auto& each) {
        return each.first.surface == window && onPages.contains({each.first.check, each.first.where});
    });
    return once;
}

class WindowAt : public testing::TestWithParam<std::size_t> {
  protected:
    void SetUp() override {
        if (!isIn(setting()))
            return;
        if (setting().points > 0) {
            QFont font = QApplication::font();
            font.setPointSize(setting().points);
            QApplication::setFont(font);
        }
        applyTheme(*qApp, setting().isDark ? ThemeChoice::Dark : ThemeChoice::Light);
    }
    static const Setting& setting() { return settings().at(GetParam()); }
    // This very test, where its setting is.
    static void beThere() {
        const auto* test = testing::UnitTest::GetInstance()->current_test_info();
        const QString wrong = runIn(
            setting(),
            QStringLiteral("%1.%2").arg(QLatin1String(test->test_suite_name()), QLatin1String(test->name())));
        EXPECT_TRUE(wrong.isEmpty()) << wrong.toStdString();
    }
};

TEST_P(WindowAt, ShowsEverythingWholeAndWithinReach) {
    if (!isIn(setting()))
        return beThere();
    const bool isFirst = GetParam() == 0;
    Findings all;
    Met met;
    seeEverything({.size = QApplication::primaryScreen()->availableSize(), .retold = {}},
                  [&](const Surface& surface) {
                      all.merge(offTheWindow(surface));
                      all.merge(cutTexts(surface));
                      all.merge(notByMouse(surface));
                      if (!isFirst)
                          return;  // the rest does not depend on the room that there is
                      met.meet(surface);
                      all.merge(unspoken(surface));
                      all.merge(notByKeys(surface));
                  });
    if (isFirst)
        all.merge(met.unseen());
    const QStringList differs = againstTheList(setting().name, onceAPlace(all));
    EXPECT_TRUE(differs.isEmpty()) << differs.join(QLatin1Char('\n')).toStdString();
}

TEST_P(WindowAt, OpensWithinItsScreen) {
    if (!isIn(setting()))
        return beThere();
    Garage garage(Garage::Fill::OneMachine);
    FakePrompts prompts;
    QSettings stored(garage.in(QStringLiteral("settings.ini")), QSettings::IniFormat);
    MainWindow window(garage.workbench(), prompts, stored);
    window.show();
    ASSERT_TRUE(QTest::qWaitForWindowExposed(&window));
    const QRect screen = window.screen()->availableGeometry();
    const QRect frame = window.frameGeometry();
    EXPECT_TRUE(screen.contains(frame))
        << frame.width() << "x" << frame.height() << " on " << screen.width() << "x" << screen.height();
}

// So a page that is whole and within reach in one theme is so in the other: each screen is walked in one.
TEST(Themes, DifferInColoursAlone) {
    const auto shape = [](ThemeChoice theme) {
        // The signs are the same picture in the colour of either ink.
        static const QRegularExpression kColour(
            QStringLiteral("#[0-9a-fA-F]{3,8}|rgba?\\([^)]*\\)|(?<=-)(light|dark)(?=\\.svg)"));
        applyTheme(*qApp, theme);
        return qApp->styleSheet().replace(kColour, QStringLiteral("colour"));
    };
    const QString light = shape(ThemeChoice::Light);
    EXPECT_EQ(light, shape(ThemeChoice::Dark));
    EXPECT_GT(light.count(QStringLiteral("colour")), 10);
}

INSTANTIATE_TEST_SUITE_P(Long, WindowAt, testing::Range<std::size_t>(0, settings().size()),
                         [](const auto& setting) {
                             return "At" + settings().at(setting.param).name.toStdString();
                         });

}  // namespace
}  // namespace wm::ui

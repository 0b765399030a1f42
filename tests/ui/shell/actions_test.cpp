// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/shell/actions.h"

#include <QAction>
#include <QMenu>
#include <QToolButton>
#include <map>
#include <set>

#include "tests/ui/window.h"
#include "ui/shell/page_table.h"

namespace wm::ui {
namespace {

TEST(ActionTable, HasEveryIdAndNameOnce) {
    std::set<ActionId> ids;
    std::set<QString> names;
    for (const auto& entry : actionTable()) {
        EXPECT_TRUE(ids.insert(entry.id).second) << entry.name.toStdString();
        EXPECT_TRUE(names.insert(entry.name).second) << entry.name.toStdString();
        EXPECT_FALSE(entry.text.isEmpty()) << entry.name.toStdString();
    }
    EXPECT_EQ(ids.size(), static_cast<std::size_t>(ActionId::AllMachines) + 1);
}

TEST(ActionTable, NoTwoActionsShareAKey) {
    std::map<QString, QString> taken{{QStringLiteral("Alt+F"), QStringLiteral("file menu")}};
    const auto take = [&taken](const QString& keys, const QString& name) {
        if (keys.isEmpty())
            return;
        const auto [at, isNew] = taken.emplace(keys, name);
        EXPECT_TRUE(isNew) << keys.toStdString() << " is both " << at->second.toStdString() << " and "
                           << name.toStdString();
    };
    for (const auto& entry : actionTable())
        take(entry.keys.toString(), entry.name);
    for (const auto& page : pageTable())
        take(QKeySequence::mnemonic(page.name).toString(), page.name);
}

class Actions : public WindowTest {};

TEST_F(Actions, NoTwoLinesOfTheFileMenuShareALetter) {
    openOn(Garage::Fill::OneMachine);
    std::map<QString, QString> taken;
    for (const auto* action : child<QMenu>("file-menu")->actions()) {
        if (action->isSeparator())
            continue;
        const QString letter = QKeySequence::mnemonic(action->text()).toString();
        EXPECT_FALSE(letter.isEmpty()) << action->text().toStdString();
        const auto [at, isNew] = taken.emplace(letter, action->text());
        EXPECT_TRUE(isNew) << at->second.toStdString() << " and " << action->text().toStdString();
    }
}

TEST_F(Actions, AreReachedByKeyOrClick) {
    openOn(Garage::Fill::OneMachine);
    const auto* menu = child<QMenu>("file-menu");
    for (const auto& entry : actionTable()) {
        const auto* action = window_->action(entry.id);
        if (entry.place == Place::FileMenu)
            EXPECT_TRUE(menu->actions().contains(action)) << entry.name.toStdString();
        else
            EXPECT_FALSE(action->shortcut().isEmpty()) << entry.name.toStdString();
        EXPECT_TRUE(window_->actions().contains(action)) << entry.name.toStdString();
    }
    for (const auto& entry : actionTable())
        if (entry.place == Place::StatusLine && entry.id != ActionId::Undo && entry.id != ActionId::Redo) {
            EXPECT_NE(window_->findChild<QToolButton*>(entry.name + QStringLiteral("-key")), nullptr);
        }
}

TEST_F(Actions, WaitForWhatTheyNeed) {
    openOn(Garage::Fill::Empty);
    EXPECT_TRUE(window_->action(ActionId::AddMachine)->isEnabled());
    EXPECT_FALSE(window_->action(ActionId::Outing)->isEnabled());
    garage_->workbench().close();
    EXPECT_FALSE(window_->action(ActionId::AddMachine)->isEnabled());
    EXPECT_TRUE(window_->action(ActionId::NewFile)->isEnabled());
    garage_->workbench().open(garage_->path(), store::OpenFor::ReadingOnly);
    EXPECT_FALSE(window_->action(ActionId::AddMachine)->isEnabled());
    EXPECT_TRUE(window_->action(ActionId::ExportText)->isEnabled());
}

TEST_F(Actions, EveryPageOpensByItsLetter) {
    openOn(Garage::Fill::OneMachine);
    for (const auto& page : pageTable()) {
        const QKeySequence keys = QKeySequence::mnemonic(page.name);
        ASSERT_EQ(keys.count(), 1);
        press(keys[0].key(), keys[0].keyboardModifiers());
        EXPECT_EQ(window_->shownPage(), page.id) << page.name.toStdString();
        EXPECT_TRUE(window_->page(page.id)->isVisible());
    }
}

}  // namespace
}  // namespace wm::ui

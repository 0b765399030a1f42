// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// Where undo ends, as the window shows it.
#include <sys/stat.h>

#include <QAction>
#include <QFile>
#include <QLabel>
#include <QToolButton>

#include "core/exchange/json.h"
#include "tests/ui/window.h"
#include "ui/shell/actions.h"
#include "ui/workbench/workbench.h"

namespace wm::ui {
namespace {

class UndoInTheWindow : public WindowTest {
  protected:
    Workbench& bench() { return garage_->workbench(); }
    void wash(const std::string& note) {
        const auto machine = bench().book()->machines().front()->id;
        const auto today = bench().today();
        ASSERT_TRUE(bench().perform([=](const verbs::VerbContext& context) {
            return verbs::logWash(context, {.machine = machine, .date = today, .note = note});
        }));
    }
    void trigger(ActionId id) { window_->action(id)->trigger(); }
    QString write(const char* name, const QByteArray& bytes) {
        QFile file(garage_->in(QString::fromLatin1(name)));
        EXPECT_TRUE(file.open(QIODevice::WriteOnly));
        EXPECT_EQ(file.write(bytes), bytes.size());
        return file.fileName();
    }
};

TEST_F(UndoInTheWindow, TheButtonSaysWhatItWouldTakeBack) {
    openOn(Garage::Fill::Season);
    wash("mud");
    const auto* button = child<QToolButton>("undo-button");
    EXPECT_TRUE(button->isVisible());
    EXPECT_TRUE(button->text().contains(bench().undoText().left(8))) << button->text().toStdString();
    EXPECT_TRUE(button->text().contains(QStringLiteral("Ctrl+Z"))) << button->text().toStdString();
}

TEST_F(UndoInTheWindow, ItEndsWithTheSession) {
    openOn(Garage::Fill::Season);
    wash("before");
    const QString path = bench().path();
    bench().close();
    window_->openPath(path);
    EXPECT_EQ(bench().undoText(), "");
    EXPECT_FALSE(child<QToolButton>("undo-button")->isVisible());
    const auto machines = bench().book()->machines().size();
    for (int again = 0; again < 50; ++again)
        trigger(ActionId::Undo);
    EXPECT_EQ(bench().book()->machines().size(), machines);
}

TEST_F(UndoInTheWindow, AWholeFileThatCameInStays) {
    openOn(Garage::Fill::Season);
    prompts_.paths = {
        write("whole.json", QByteArray::fromStdString(exchange::toJson(bench().book()->ledger()))),
        garage_->in(QStringLiteral("taken.witnessmark"))};
    trigger(ActionId::ImportText);
    ASSERT_TRUE(bench().path().endsWith(QStringLiteral("taken.witnessmark")));
    const auto machines = bench().book()->machines().size();
    ASSERT_GT(machines, 0U);
    EXPECT_EQ(bench().undoText(), "");
    trigger(ActionId::Undo);
    EXPECT_EQ(bench().book()->machines().size(), machines);
}

TEST_F(UndoInTheWindow, TheOnlyMachineGoesOnlyAfterAYes) {
    openOn(Garage::Fill::Empty);
    const auto today = bench().today();
    ASSERT_TRUE(bench().perform([today](const verbs::VerbContext& context) {
        return verbs::saveMachine(context, {.name = "Plover 125", .since = today});
    }));
    trigger(ActionId::Undo);
    ASSERT_EQ(prompts_.asked.size(), 1);
    EXPECT_TRUE(prompts_.asked.front().contains(QStringLiteral("no machine is left")));
    EXPECT_EQ(bench().book()->machines().size(), 1U);
    prompts_.agrees = true;
    trigger(ActionId::Undo);
    EXPECT_TRUE(bench().book()->machines().empty());
    EXPECT_NE(bench().redoText(), "");
}

TEST_F(UndoInTheWindow, AFileThatWasReplacedIsNotCalledReadOnly) {
    openOn(Garage::Fill::OneMachine);
    wash("before");
    const QString path = bench().path();
    ASSERT_TRUE(QFile::copy(path, path + ".new"));
    ASSERT_TRUE(QFile::remove(path));
    ASSERT_TRUE(QFile::rename(path + ".new", path));
    trigger(ActionId::Undo);
    const QString words = child<QLabel>("status-words")->text();
    EXPECT_TRUE(words.contains(QStringLiteral("replaced or moved"))) << words.toStdString();
    EXPECT_TRUE(words.contains(QStringLiteral("Open it again"))) << words.toStdString();
}

TEST_F(UndoInTheWindow, APipeIsNoFileToTakeIn) {
    openOn(Garage::Fill::Season);
    const QString pipe = garage_->in(QStringLiteral("pipe"));
    ASSERT_EQ(mkfifo(pipe.toUtf8().constData(), 0600), 0);
    prompts_.paths = {pipe, pipe};
    trigger(ActionId::ImportText);
    trigger(ActionId::ImportNotebook);
    ASSERT_EQ(prompts_.reported.size(), 2);
    for (const QString& words : prompts_.reported)
        EXPECT_TRUE(words.contains(QStringLiteral("a pipe or a device"))) << words.toStdString();
}

}  // namespace
}  // namespace wm::ui

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// What is answered about the lines of a notebook before Enter takes them, and how a long import is stopped.
#include "tests/ui/shell/notebook_window.h"

namespace wm::ui {
namespace {

// Four keys and the choice of the file: Alt+F, T, then A and Enter.
TEST_F(NotebookWindow, TheSampleWithAllItsCuresIsFourKeys) {
    openGarage(true);
    ASSERT_NE(importSample("outings.csv"), nullptr);  // Alt+F and T
    press(Qt::Key_A);
    press(Qt::Key_Return);
    EXPECT_EQ(garage_->book().ledger().all<usage::Outing>().size(), 76U);
    back();
    ASSERT_NE(importSample("jobs.csv"), nullptr);
    press(Qt::Key_A);
    press(Qt::Key_Return);
    EXPECT_FALSE(garage_->book().ledger().all<upkeep::Record>().empty());
}

TEST_F(NotebookWindow, LinesAreLeftOutByAWordAndNotByTheWay) {
    openGarage(true);
    auto* dialog = importSample("outings.csv");
    ASSERT_NE(dialog, nullptr);
    press(Qt::Key_Left);  // the taken ones
    press(Qt::Key_Return);
    ASSERT_TRUE(dialog->isVisible());
    EXPECT_TRUE(garage_->book().ledger().all<usage::Outing>().empty());
    EXPECT_TRUE(words().startsWith("6 doubtful lines have no answer yet.")) << words().toStdString();
    EXPECT_EQ(importButton()->text(), "Take 72 lines; 6 doubtful stay out (Enter)");
    EXPECT_EQ(QApplication::focusWidget(), table());
    EXPECT_EQ(table()->model()->rowCount(), 6);
    EXPECT_EQ(table()->currentIndex().row(), 0);
    press(Qt::Key_Space);  // an answer: the next Enter asks about the others
    press(Qt::Key_Return);
    ASSERT_TRUE(dialog->isVisible());
    EXPECT_TRUE(words().startsWith("5 doubtful lines have no answer yet.")) << words().toStdString();
    EXPECT_EQ(table()->currentIndex().row(), 1) << "the first that is open";
    press(Qt::Key_Return);
    EXPECT_TRUE(status().contains("took over 73 lines")) << status().toStdString();
}

TEST_F(NotebookWindow, EnterAsksWhereverTheKeysAreAndTheButtonTakes) {
    openGarage(true);
    auto* dialog = importSample("outings.csv");
    ASSERT_NE(dialog, nullptr);
    child<QPushButton>("notebook-leave-out")->setFocus();
    press(Qt::Key_Return);
    ASSERT_TRUE(dialog->isVisible());
    EXPECT_EQ(QApplication::focusWidget(), table());
    EXPECT_TRUE(garage_->book().ledger().all<usage::Outing>().empty());
    leave(dialog);
    ASSERT_NE(importSample("outings.csv"), nullptr);
    QTest::mouseClick(importButton(), Qt::LeftButton);
    EXPECT_TRUE(status().contains("took over 72 lines")) << status().toStdString();
}

TEST_F(NotebookWindow, AChoiceThatWasWrongTakesNoAnswersBack) {
    openGarage(true);
    auto* dialog = importSample("outings.csv");
    ASSERT_NE(dialog, nullptr);
    press(Qt::Key_A);
    press(Qt::Key_Left);
    press(Qt::Key_L);
    ASSERT_EQ(importButton()->text(), "Take 76 lines (Enter)");
    for (const char* column :
         {"notebook-column-0", "notebook-column-4"}) {  // nothing to judge; judged otherwise
        const int right = child<QComboBox>(column)->currentIndex();
        choose(column, static_cast<int>(notebook::Column::Unused));
        EXPECT_NE(importButton()->text(), "Take 76 lines (Enter)") << column;
        choose(column, right);
        EXPECT_EQ(importButton()->text(), "Take 76 lines (Enter)") << column;
    }
    leave(dialog);
}

TEST_F(NotebookWindow, ALongReadingShowsHowFarItIsAndCanBeStopped) {
    openGarage(true);
    const auto before = everything();
    const QString path = write("long.csv", longNotebook(kLong));
    stopWhen("Reading");
    EXPECT_EQ(import(path), nullptr);
    EXPECT_TRUE(stopped_);
    EXPECT_TRUE(status().contains("Stopped")) << status().toStdString();
    EXPECT_EQ(everything(), before);
}

// Judging or writing: stopped midway, the file is as it was and the lines are still there to look at.
TEST_F(NotebookWindow, ALongImportCanBeStoppedInEveryPartOfIt) {
    openGarage(true);
    const auto before = everything();
    auto* dialog = import(write("long.csv", longNotebook(kLong)));
    ASSERT_NE(dialog, nullptr);
    ASSERT_EQ(importButton()->text(), "Take 20000 lines (Enter)");
    press(Qt::Key_L);
    ASSERT_EQ(importButton()->text(), "Take 19999 lines (Enter)");
    const int hours = child<QComboBox>("notebook-column-2")->currentIndex();
    stopWhen("Judging");
    choose("notebook-column-2", static_cast<int>(notebook::Column::Unused));
    EXPECT_TRUE(stopped_);
    EXPECT_TRUE(words().startsWith("Stopped")) << words().toStdString();
    choose("notebook-column-2", hours);
    ASSERT_EQ(importButton()->text(), "Take 19999 lines (Enter)");
    backTo(dialog);
    const auto asJudged = table()->model()->rowCount();
    stopWhen("Writing");
    press(Qt::Key_Return);
    ASSERT_TRUE(stopped_);
    EXPECT_TRUE(dialog->isVisible());
    EXPECT_TRUE(words().startsWith("Stopped")) << words().toStdString();
    EXPECT_EQ(everything(), before);
    EXPECT_EQ(inTheFile(), before);
    EXPECT_EQ(table()->model()->rowCount(), asJudged);
    backTo(dialog);
    press(Qt::Key_Return);
    EXPECT_TRUE(status().contains("took over 19999 lines")) << status().toStdString();
    EXPECT_EQ(garage_->book().ledger().all<usage::Outing>().size(), 19'999U);
}

TEST_F(NotebookWindow, AnswersAreNotLeftBehindByAWrongKey) {
    openGarage(true);
    auto* dialog = importSample("outings.csv");
    ASSERT_NE(dialog, nullptr);
    press(Qt::Key_Space);
    press(Qt::Key_Down);
    press(Qt::Key_L);
    press(Qt::Key_Escape);
    ASSERT_TRUE(dialog->isVisible());
    EXPECT_TRUE(words().startsWith("2 answers are not written")) << words().toStdString();
    press(Qt::Key_L);  // taken back; what is left is asked about anew
    press(Qt::Key_Escape);
    ASSERT_TRUE(dialog->isVisible());
    EXPECT_TRUE(words().startsWith("1 answer is not written")) << words().toStdString();
    press(Qt::Key_Escape);
    EXPECT_FALSE(dialog->isVisible());
    back();
    dialog = importSample("outings.csv");
    ASSERT_NE(dialog, nullptr);
    press(Qt::Key_Escape);
    EXPECT_FALSE(dialog->isVisible()) << "nothing was answered";
}

}  // namespace
}  // namespace wm::ui

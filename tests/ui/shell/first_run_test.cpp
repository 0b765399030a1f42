// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// From an empty screen to the first due list with keys alone, every one of them counted.
#include <QAbstractItemView>
#include <QComboBox>
#include <QLineEdit>

#include "core/book/unrecorded.h"
#include "tests/ui/window.h"
#include "ui/entry/entry_strip.h"

namespace wm::ui {
namespace {

constexpr int kMostKeys = 120;  ///< what a first run with one machine may cost

class FirstRun : public WindowTest {
  protected:
    void openOnNothing() {
        garage_ = std::make_unique<Garage>(Garage::Fill::Empty);
        garage_->workbench().close();
        showWindow();
    }
    void key(Qt::Key key, Qt::KeyboardModifiers modifiers = Qt::NoModifier) {
        ++keys_;
        press(key, modifiers);
    }
    void keys(const QString& words) {
        keys_ += static_cast<int>(words.size());
        type(words);
    }
    // The question for a file is the desktop's own: its name and Enter are counted as if they were typed
    // here.
    void newFile(const QString& name) {
        prompts_.paths.push_back(garage_->in(name + QStringLiteral(".witnessmark")));
        keys_ += static_cast<int>(name.size()) + 1;
        key(Qt::Key_Return);
    }
    QString focus() {
        const auto* at = QApplication::focusWidget();
        return at != nullptr ? at->objectName() : QStringLiteral("nothing");
    }
    void addMachine() {
        key(Qt::Key_Return);
        ASSERT_TRUE(child<EntryStrip>("entry-strip")->isOpen()) << focus().toStdString();
        keys(QStringLiteral("Plover 125"));
        key(Qt::Key_Tab);
        ASSERT_EQ(focus(), "starter");
        // The commonest stands there; a letter takes another.
        EXPECT_EQ(child<QComboBox>("starter")->currentText(), "four-stroke motocross");
        keys(QStringLiteral("t"));
        EXPECT_TRUE(child<QComboBox>("starter")->currentText().startsWith("two-stroke"));
        key(Qt::Key_Tab);
        ASSERT_EQ(focus(), "shown");
        keys(QStringLiteral("61,3"));
        key(Qt::Key_Return);
        ASSERT_FALSE(child<EntryStrip>("entry-strip")->isOpen());
    }

    // It is asked at once: what looking settles was looked at and is fine, one job was done at an hour
    // figure.
    void sayWhatIsKnown(MachineId machine) {
        ASSERT_EQ(focus(), "baselineTable");
        const auto unknown = book::unknownOf(garage_->book(), machine).size();
        key(Qt::Key_S);
        keys(QStringLiteral("55 h"));
        key(Qt::Key_Return);
        key(Qt::Key_A, Qt::ControlModifier);
        key(Qt::Key_F);
        key(Qt::Key_Return);
        EXPECT_GT(garage_->book().ledger().all<upkeep::Record>().size(), 20U);
        EXPECT_LT(book::unknownOf(garage_->book(), machine).size(), unknown - 20);
        key(Qt::Key_B, Qt::AltModifier);
    }

    int keys_ = 0;
};

TEST_F(FirstRun, LeadsToADueList) {
    openOnNothing();
    EXPECT_EQ(focus(), "start-new-file");
    newFile(QStringLiteral("season"));
    ASSERT_TRUE(garage_->workbench().hasFile());
    EXPECT_EQ(focus(), "start-add-machine") << "Enter goes on";
    addMachine();
    const auto machine = garage_->machine("Plover 125");
    EXPECT_EQ(garage_->book().meterNow(machine), units::Hours{6130});
    EXPECT_EQ(garage_->book().life(machine).hours.low, units::Hours{6130});
    EXPECT_GE(garage_->book().due(machine).size(), 30U);
    sayWhatIsKnown(machine);
    EXPECT_EQ(window_->shownPage(), PageId::Bench);
    const auto* grid = qobject_cast<QAbstractItemView*>(QApplication::focusWidget());
    ASSERT_NE(grid, nullptr) << "the keys go to the list, not to " << focus().toStdString();
    EXPECT_TRUE(grid->currentIndex().isValid());
    RecordProperty("keys_to_the_due_list", keys_);
    EXPECT_LE(keys_, kMostKeys);
}

}  // namespace
}  // namespace wm::ui

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// What the mechanic does with keys alone.
#include <QAbstractItemView>
#include <QCheckBox>
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>

#include "tests/ui/window.h"
#include "ui/entry/entry_strip.h"

namespace wm::ui {
namespace {

class Journey : public WindowTest {
  protected:
    QLabel* status() { return child<QLabel>("status-words"); }
    EntryStrip* strip() { return child<EntryStrip>("entry-strip"); }
    QLineEdit* field(const char* name) { return child<QLineEdit>(name); }
    QString faultAt(const char* name) {
        const auto* label = child<QLabel>(QByteArray(name).append("-fault").constData());
        return label != nullptr && label->isVisible() ? label->text() : QString();
    }
    std::size_t records() { return garage_->book().ledger().all<upkeep::Record>().size(); }
};

TEST_F(Journey, RecordsAJobByKeyboardAndTakesItBack) {
    openOn(Garage::Fill::OneMachine);
    press(Qt::Key_F3);
    ASSERT_TRUE(strip()->isOpen());
    type(QStringLiteral("fork oil"));
    press(Qt::Key_Return);
    EXPECT_FALSE(strip()->isOpen()) << faultAt("task").toStdString();
    ASSERT_EQ(records(), 1U);
    EXPECT_EQ(garage_->book().ledger().all<upkeep::Record>().front().code, "fork-oil");
    EXPECT_TRUE(status()->text().startsWith(QStringLiteral("saved 18:04"))) << status()->text().toStdString();
    press(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(records(), 0U);
    EXPECT_TRUE(status()->text().contains(QStringLiteral("taken back"))) << status()->text().toStdString();
    press(Qt::Key_Z, Qt::ControlModifier | Qt::ShiftModifier);
    EXPECT_EQ(records(), 1U);
}

TEST_F(Journey, LogsAnOutingWithADecimalComma) {
    openOn(Garage::Fill::OneMachine);
    press(Qt::Key_F2);
    type(QStringLiteral("2,25"));
    press(Qt::Key_Tab);
    type(QStringLiteral("14,3"));
    field("date")->setText(QStringLiteral("sat"));
    press(Qt::Key_Return);
    ASSERT_FALSE(strip()->isOpen()) << faultAt("hours").toStdString() << faultAt("meter").toStdString();
    const auto& outings = garage_->book().ledger().all<usage::Outing>();
    ASSERT_EQ(outings.size(), 1U);
    EXPECT_EQ(outings.front().hours, units::Hours{225});
    EXPECT_EQ(outings.front().date, day("2026-05-02"));
    EXPECT_EQ(garage_->book().meterNow(garage_->machine("Heron 250")), units::Hours{1430});
}

TEST_F(Journey, AnOutingOfUnknownLengthIsSaidExpressly) {
    openOn(Garage::Fill::OneMachine);
    press(Qt::Key_F2);
    press(Qt::Key_Return);
    EXPECT_TRUE(strip()->isOpen());
    EXPECT_TRUE(garage_->book().ledger().all<usage::Outing>().empty());
    EXPECT_TRUE(faultAt("hours").contains(QStringLiteral("or ? if nobody noted them")))
        << faultAt("hours").toStdString();
    EXPECT_EQ(QApplication::focusWidget(), field("hours"));
    type(QStringLiteral("?"));
    press(Qt::Key_Return);
    ASSERT_FALSE(strip()->isOpen()) << faultAt("hours").toStdString();
    ASSERT_EQ(garage_->book().ledger().all<usage::Outing>().size(), 1U);
    EXPECT_FALSE(garage_->book().ledger().all<usage::Outing>().front().hours.has_value());
}

TEST_F(Journey, SaysAtTheFieldWhatIsWrong) {
    openOn(Garage::Fill::OneMachine);
    press(Qt::Key_F2);
    type(QStringLiteral("two"));
    field("date")->setText(QStringLiteral("31.4."));
    press(Qt::Key_Return);
    EXPECT_TRUE(strip()->isOpen());
    EXPECT_TRUE(faultAt("hours").contains(QStringLiteral("two"))) << faultAt("hours").toStdString();
    EXPECT_TRUE(faultAt("date").contains(QStringLiteral("31.4."))) << faultAt("date").toStdString();
    EXPECT_EQ(QApplication::focusWidget(), field("date"));
    EXPECT_TRUE(garage_->book().ledger().all<usage::Outing>().empty());
    // What the verb itself refuses finds its field too.
    field("date")->setText(QStringLiteral("tomorrow"));
    field("hours")->setText(QStringLiteral("2"));
    press(Qt::Key_Return);
    EXPECT_FALSE(faultAt("date").isEmpty());
    EXPECT_TRUE(faultAt("hours").isEmpty());
    field("date")->setText(QStringLiteral("today"));
    press(Qt::Key_Return);
    EXPECT_FALSE(strip()->isOpen());
}

TEST_F(Journey, AFormThatIsOpenedAgainHoldsNoOldFault) {
    openOn(Garage::Fill::OneMachine);
    press(Qt::Key_F2);
    type(QStringLiteral("two"));
    press(Qt::Key_Return);
    ASSERT_FALSE(faultAt("hours").isEmpty());
    field("hours")->clear();
    field("hours")->setFocus();
    type(QStringLiteral("2"));
    press(Qt::Key_Escape);
    press(Qt::Key_F2);
    EXPECT_EQ(field("hours")->text(), QStringLiteral("2"));
    EXPECT_TRUE(faultAt("hours").isEmpty());
}

// The form grows upwards when it says what is wrong; where Save was clicked is Save, and not Leave.
TEST_F(Journey, TheButtonsStayWhenAFormGrows) {
    openOn(Garage::Fill::OneMachine);
    press(Qt::Key_F2);
    auto* save = child<QPushButton>("save-entry");
    const QPoint saved = save->mapTo(window_.get(), QPoint());
    const int height = strip()->height();
    type(QStringLiteral("two"));
    QTest::mouseClick(save, Qt::LeftButton);
    QTest::qWait(20);
    ASSERT_GT(strip()->height(), height);
    EXPECT_EQ(save->mapTo(window_.get(), QPoint()), saved);
}

TEST_F(Journey, EscapeShutsADropDownAndNothingElse) {
    openOn(Garage::Fill::Season);
    press(Qt::Key_F5);
    press(Qt::Key_F2);
    auto* ground = child<QComboBox>("ground");
    ground->setFocus();
    ground->showPopup();
    ASSERT_TRUE(ground->view()->isVisible());
    QTest::keyClick(window_->windowHandle(), Qt::Key_Escape);
    ASSERT_TRUE(strip()->isOpen());
    EXPECT_FALSE(ground->view()->isVisible());
    EXPECT_TRUE(garage_->workbench().chosen().has_value());
    EXPECT_EQ(QApplication::activePopupWidget(), nullptr);
}

TEST_F(Journey, KeepsWhatWasTyped) {
    openOn(Garage::Fill::OneMachine);
    press(Qt::Key_F4);
    type(QStringLiteral("left guard <b>bent</b>"));
    press(Qt::Key_Escape);
    EXPECT_FALSE(strip()->isOpen());
    EXPECT_EQ(strip()->unsaved().size(), 1);
    press(Qt::Key_F4);
    EXPECT_EQ(field("what")->text(), QStringLiteral("left guard <b>bent</b>"));
    window_->close();
    EXPECT_TRUE(window_->isVisible()) << "closing must ask while an entry is begun";
    EXPECT_EQ(prompts_.asked.size(), 1);
    press(Qt::Key_Return);
    ASSERT_EQ(garage_->book().snags(garage_->machine("Heron 250")).size(), 1U);
    EXPECT_TRUE(strip()->unsaved().isEmpty());
    window_->close();
    EXPECT_FALSE(window_->isVisible());
}

TEST_F(Journey, AsksBeforeAMachineIsLoggedHandTight) {
    openOn(Garage::Fill::Season);
    press(Qt::Key_F7);
    EXPECT_EQ(garage_->workbench().chosen(), garage_->machine("Sorrel 450"));
    press(Qt::Key_F2);
    type(QStringLiteral("1.5"));
    const auto before = garage_->book().ledger().all<usage::Outing>().size();
    press(Qt::Key_Return);
    EXPECT_TRUE(strip()->isOpen());
    EXPECT_EQ(garage_->book().ledger().all<usage::Outing>().size(), before);
    auto* joint = child<QCheckBox>("joint");
    EXPECT_EQ(QApplication::focusWidget(), joint);
    press(Qt::Key_Space);
    EXPECT_TRUE(joint->isChecked());
    press(Qt::Key_Return);
    EXPECT_FALSE(strip()->isOpen());
    EXPECT_EQ(garage_->book().ledger().all<usage::Outing>().size(), before + 1);
    EXPECT_TRUE(garage_->book().handTight(garage_->machine("Sorrel 450")).empty());
    // One action for the mechanic, one step for undo.
    press(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(garage_->book().ledger().all<usage::Outing>().size(), before);
    EXPECT_EQ(garage_->book().handTight(garage_->machine("Sorrel 450")).size(), 1U);
}

TEST_F(Journey, BeginsWithAMachineAndItsSchedule) {
    openOn(Garage::Fill::Empty);
    press(Qt::Key_Space);
    ASSERT_TRUE(strip()->isOpen()) << "the first step has the focus";
    type(QStringLiteral("Heron 250"));
    field("pastBest")->setText(QStringLiteral("40"));
    field("pastLow")->setText(QStringLiteral("30"));
    field("shown")->setText(QStringLiteral("12,5"));
    press(Qt::Key_Return);
    ASSERT_FALSE(strip()->isOpen());
    const auto machine = garage_->machine("Heron 250");
    EXPECT_GE(garage_->book().tasks(machine).size(), 40U);
    EXPECT_EQ(garage_->book().meterNow(machine), units::Hours{1250});
    EXPECT_EQ(garage_->book().life(machine).hours.low, units::Hours{3000});
    EXPECT_FALSE(garage_->book().life(machine).hours.high.has_value());
    EXPECT_TRUE(window_->page(PageId::Tasks)->isVisible());  // what was done to it before is asked at once
    prompts_.agrees = true;                                  // a garage is not emptied without asking
    press(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_TRUE(garage_->book().machines().empty());
}

TEST_F(Journey, ASecondWindowIsSeen) {
    openOn(Garage::Fill::OneMachine);
    Workbench other([] { return QDateTime(QDate(2026, 5, 7), QTime(18, 5)); });
    ASSERT_EQ(other.open(garage_->path()).outcome, store::OpenOutcome::Opened);
    upkeep::Snag snag;
    snag.machine = garage_->machine("Heron 250");
    snag.date = day("2026-05-07");
    snag.what = "seen elsewhere";
    ASSERT_TRUE(
        other.perform([snag](const verbs::VerbContext& context) { return verbs::addSnag(context, snag); }));
    EXPECT_TRUE(
        QTest::qWaitFor([this, &snag] { return !garage_->book().snags(snag.machine).empty(); }, 5000));
}

// The list of suggestions lies over the strip: it goes first.
TEST_F(Journey, EscapeShutsTheSuggestionsBeforeTheStrip) {
    openOn(Garage::Fill::Season);
    garage_->workbench().choose(garage_->machine("Heron 250"));
    press(Qt::Key_F3);
    ASSERT_TRUE(strip()->isOpen());
    type(QStringLiteral("oil"));
    QWidget* list = QApplication::activePopupWidget();
    ASSERT_NE(list, nullptr);
    QTest::keyClick(list, Qt::Key_Escape);
    EXPECT_FALSE(list->isVisible());
    EXPECT_TRUE(strip()->isOpen());
    EXPECT_TRUE(garage_->workbench().chosen());
    press(Qt::Key_Escape);
    EXPECT_FALSE(strip()->isOpen());
    EXPECT_EQ(QApplication::activePopupWidget(), nullptr);
    EXPECT_TRUE(garage_->workbench().chosen());
}

}  // namespace
}  // namespace wm::ui

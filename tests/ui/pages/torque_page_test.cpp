// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// The search line at the stand and its answers, by the keys.
#include <QCheckBox>
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>

#include "core/ledger/verbs.h"
#include "tests/ui/window.h"
#include "ui/pages/torque/big_figure.h"
#include "ui/tables/row_table.h"

namespace wm::ui {
namespace {

class TorquePageTest : public WindowTest {
  protected:
    void SetUp() override {
        openOn(Garage::Fill::Demo);
        garage_->workbench().choose(garage_->machine("Heron 250"));
        window_->goTo(PageId::Torque);
    }
    const ledger::Book& book() { return garage_->book(); }
    const fastening::JointVersion& joint(const char* code) {
        return *book().joint(garage_->machine("Heron 250"), code);
    }
    void ask(const QString& words) {
        auto* line = child<QLineEdit>("torqueFind");
        line->setFocus();
        line->clear();
        QTest::keyClicks(line, words);
    }
    QString said(const char* name) {
        auto* label = child<QLabel>(name);
        return label->isVisible() ? label->text() : QString();
    }
};

TEST_F(TorquePageTest, TheLineHasTheKeysAndTheAnswerIsLarge) {
    EXPECT_EQ(QApplication::focusWidget(), child<QLineEdit>("torqueFind"));
    ask(QStringLiteral("reer axel"));
    EXPECT_EQ(said("answerName"), QStringLiteral("Rear axle nut"));
    auto* figure = child<BigFigure>("jointFigure");
    EXPECT_TRUE(figure->isVisible());
    EXPECT_EQ(figure->text(), QStringLiteral("110\u00A0N·m"));
    EXPECT_FALSE(figure->isUnconfirmed());
    EXPECT_GE(figure->height(), 48);
    EXPECT_TRUE(said("answerSource").contains(QStringLiteral("p. 2-31, confirmed")));
    EXPECT_TRUE(said("answerNotes").contains(QStringLiteral("M20x1.5")));
}

TEST_F(TorquePageTest, TheUnitThatIsNamedIsTheUnitOfTheAnswer) {
    ask(QStringLiteral("rear axle ft lb"));
    EXPECT_EQ(child<BigFigure>("jointFigure")->text(), QStringLiteral("81.1\u00A0lbf·ft"));
    EXPECT_EQ(said("answerPrinted"), QStringLiteral("as printed: 110 N·m"));
}

TEST_F(TorquePageTest, ArrowsChooseAndEscapeBeginsAnewWhileTheLineKeepsTheKeys) {
    ask(QStringLiteral("shock"));
    const QString first = said("answerName");
    press(Qt::Key_Down);
    EXPECT_NE(said("answerName"), first);
    press(Qt::Key_Up);
    EXPECT_EQ(said("answerName"), first);
    EXPECT_EQ(QApplication::focusWidget(), child<QLineEdit>("torqueFind"));
    press(Qt::Key_Escape);
    EXPECT_TRUE(child<QLineEdit>("torqueFind")->text().isEmpty());
    EXPECT_TRUE(garage_->workbench().chosen());  // the window did not take the key
}

TEST_F(TorquePageTest, QuantitiesAndLimitsAnswerToo) {
    ask(QStringLiteral("chain slack"));
    EXPECT_EQ(child<BigFigure>("jointFigure")->text(), QStringLiteral("50 to 60\u00A0mm"));
    EXPECT_FALSE(child<QWidget>("jointConfirm")->isVisible());
    ask(QStringLiteral("how much fork oil"));
    EXPECT_EQ(said("answerName"), QStringLiteral("fork oil"));
    ask(QStringLiteral("<b>zzqq</b> nothing"));
    EXPECT_TRUE(said("torqueEmpty").contains(QStringLiteral("Nothing is called that")));
}

TEST_F(TorquePageTest, ControlAndArrowsGoThroughTheJointsOfAJob) {
    ask(QStringLiteral("link to frame"));
    ASSERT_EQ(said("answerName"), QStringLiteral("Linkage to frame bolt"));
    press(Qt::Key_Down, Qt::ControlModifier);
    EXPECT_EQ(said("answerName"), QStringLiteral("Linkage to swingarm bolt"));
    press(Qt::Key_Up, Qt::ControlModifier);
    EXPECT_EQ(said("answerName"), QStringLiteral("Linkage to frame bolt"));
}

TEST_F(TorquePageTest, F12ConfirmsAFigureAndGoesOn) {
    ask(QStringLiteral("rotor"));
    ASSERT_FALSE(joint("rotor-nut").confirmed);
    EXPECT_TRUE(child<BigFigure>("jointFigure")->isUnconfirmed());
    EXPECT_TRUE(said("answerSource").startsWith(QStringLiteral("NOT CONFIRMED")));
    press(Qt::Key_F12);
    EXPECT_TRUE(joint("rotor-nut").confirmed);
    garage_->workbench().undo();
    EXPECT_FALSE(joint("rotor-nut").confirmed);
}

TEST_F(TorquePageTest, ATorqueIsUnderstoodAsItIsTyped) {
    ask(QStringLiteral("seat bolts"));
    ASSERT_EQ(said("answerName"), QStringLiteral("Seat bolts"));
    press(Qt::Key_Return);  // nothing typed yet: Enter goes to where it is typed
    ASSERT_EQ(QApplication::focusWidget(), child<QLineEdit>("jointTorque"));
    type(QStringLiteral("6-8 ft lb"));
    child<QLineEdit>("jointSource")->setText(QStringLiteral("Heron 250 service manual (invented)"));
    press(Qt::Key_Return);
    ASSERT_TRUE(joint("seat-bolts").torque);
    EXPECT_EQ(joint("seat-bolts").torque->text(), "6");
    EXPECT_EQ(joint("seat-bolts").torqueHigh->text(), "8");
    EXPECT_EQ(joint("seat-bolts").unit, units::TorqueUnit::PoundForceFoot);
}

TEST_F(TorquePageTest, ASlipIsAskedAboutOnce) {
    ask(QStringLiteral("valve cover"));
    ASSERT_EQ(joint("valve-cover-bolts").torque->text(), "10");
    auto* torque = child<QLineEdit>("jointTorque");
    torque->setFocus();
    torque->selectAll();
    type(QStringLiteral("100"));
    press(Qt::Key_Return);
    EXPECT_EQ(joint("valve-cover-bolts").torque->text(), "10");
    EXPECT_TRUE(said("jointProblem").contains(QStringLiteral("Did you mean 10.0")));
    press(Qt::Key_Return);  // meant
    EXPECT_EQ(joint("valve-cover-bolts").torque->text(), "100");
}

TEST_F(TorquePageTest, AGenericBandIsRefusedWhereItCouldHurt) {
    ask(QStringLiteral("footpeg pins"));
    ASSERT_FALSE(joint("peg-pins").torque);
    EXPECT_TRUE(said("genericWords").contains(QStringLiteral("No generic figure")));
    EXPECT_TRUE(said("genericBand").isEmpty());
    EXPECT_FALSE(child<QWidget>("genericClass")->isVisible());
}

TEST_F(TorquePageTest, AGenericBandComesWithItsCautionAndIsNotSaved) {
    ask(QStringLiteral("clutch cover"));
    ASSERT_FALSE(joint("clutch-cover-bolts").torque);
    child<QLineEdit>("genericThread")->setText(QStringLiteral("M6"));
    auto* propertyClass = child<QComboBox>("genericClass");
    propertyClass->setCurrentText(QStringLiteral("8.8"));
    EXPECT_EQ(said("genericBand"), QStringLiteral("4.2 to 6.2 N·m"));
    EXPECT_TRUE(said("genericWords").contains(QStringLiteral("service manual goes before it")));
    child<QComboBox>("genericHole")->setCurrentIndex(2);
    EXPECT_TRUE(said("genericBand").isEmpty());
    EXPECT_TRUE(said("genericWords").contains(QStringLiteral("magnesium")));
    EXPECT_FALSE(joint("clutch-cover-bolts").torque);
}

}  // namespace
}  // namespace wm::ui

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// The search line at the stand and its answers, by the keys.
#include <QCheckBox>
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QScrollArea>
#include <QScrollBar>

#include "core/verbs/verbs.h"
#include "tests/ui/window.h"
#include "ui/pages/page.h"
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
    const book::Book& book() { return garage_->book(); }
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

TEST_F(TorquePageTest, ADoubtfulFigureIsAskedAboutOnce) {
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
    EXPECT_TRUE(said("genericCaution").contains(QStringLiteral("service manual goes before it")));
    EXPECT_TRUE(said("genericWords").contains(QStringLiteral("from memory")));
    child<QComboBox>("genericHole")->setCurrentIndex(2);
    EXPECT_TRUE(said("genericBand").isEmpty());
    EXPECT_TRUE(said("genericCaution").isEmpty());
    EXPECT_TRUE(said("genericWords").contains(QStringLiteral("magnesium")));
    EXPECT_FALSE(joint("clutch-cover-bolts").torque);
}

// Every word on the page has the height that it needs, whatever joint is chosen, however fast: a wrapped
// label that gets less is cut off.
TEST_F(TorquePageTest, NoWordsAreCutOff) {
    window_->resize(1280, 800);
    QApplication::processEvents();
    const auto expectWhole = [this](const QString& where) {
        for (const QLabel* label : window_->page(PageId::Torque)->findChildren<QLabel*>())
            if (label->isVisible() && label->wordWrap() && !label->text().isEmpty()) {
                EXPECT_GE(label->height(), label->heightForWidth(label->width()))
                    << where.toStdString() << ": " << label->text().toStdString();
            }
    };
    for (const char* asked : {"cover", "fork", "brake", "engine"}) {
        ask(QString::fromLatin1(asked));
        auto* joints = child<RowTable>("torqueJoints");
        for (const std::int64_t id : joints->shownIds()) {
            joints->choose(id);
            if (child<QWidget>("genericClass")->isVisible()) {
                child<QLineEdit>("genericThread")->setText(QStringLiteral("M6"));
                child<QComboBox>("genericClass")->setCurrentText(QStringLiteral("8.8"));
                joints->choose(joints->shownIds().front());
                joints->choose(id);
                child<QLineEdit>("genericThread")->setText(QStringLiteral("M6"));
                child<QComboBox>("genericClass")->setCurrentText(QStringLiteral("8.8"));
            }
            expectWhole(said("answerName"));
        }
    }
}

// At 1280 pixels a long name takes a second line.
TEST_F(TorquePageTest, NamesInTheListAreNotCutOff) {
    window_->resize(1280, 800);
    garage_->workbench().choose(std::nullopt);
    for (const char* asked : {"oil", "bearing", "gasket", "kit"}) {
        ask(QString::fromLatin1(asked));
        QApplication::processEvents();
        const auto* joints = child<RowTable>("torqueJoints");
        ASSERT_GT(joints->model()->rowCount(), 0) << asked;
        for (int row = 0; row < joints->model()->rowCount(); ++row) {
            const QString name = joints->model()->index(row, 0).data().toString();
            const QRect room(0, 0, joints->columnWidth(0) - 16, 10'000);
            const QRect needed = joints->fontMetrics().boundingRect(room, Qt::TextWordWrap, name);
            EXPECT_LE(needed.height(), joints->rowHeight(row)) << name.toStdString();
            EXPECT_LE(needed.width(), room.width()) << name.toStdString();
        }
    }
}

// A joint that the machines of a model share: the mechanic says for which of them the figure holds.
TEST_F(TorquePageTest, AFigureIsPutRightForOneMachineOrForAllOfItsModel) {
    const auto heron = garage_->machine("Heron 250");
    items::Machine card = *book().ledger().find<items::Machine>(heron);
    card.maker = "Brackwater";
    card.model = "MX 250";
    card.year = 2020;
    garage_->say([card](const verbs::VerbContext& context) { return verbs::saveMachine(context, card); });
    fastening::JointVersion shared = joint("rotor-nut");
    shared.sharedFrom = 2019;
    shared.sharedTo = 2021;
    garage_->say([shared](const verbs::VerbContext& context) { return verbs::saveJoint(context, shared); });
    card.id = MachineId{};
    card.name = "Kite 250";
    garage_->say([card](const verbs::VerbContext& context) { return verbs::saveMachine(context, card); });
    const auto kite = garage_->machine("Kite 250");
    const auto onKite = [&] { return book().joint(kite, "rotor-nut")->torque->text(); };
    const auto put = [this](const char* figure) {
        auto* torque = child<QLineEdit>("jointTorque");
        torque->setText(QString::fromLatin1(figure));
        torque->setFocus();
        press(Qt::Key_Return);
    };
    ask(QStringLiteral("seat bolts"));
    EXPECT_FALSE(child<QWidget>("jointSharing")->isVisible());
    ask(QStringLiteral("rotor"));
    auto* sharing = child<QComboBox>("jointSharing");
    ASSERT_TRUE(sharing->isVisible());
    EXPECT_EQ(sharing->currentText(), QStringLiteral("for all Brackwater MX 250 2019–2021"));
    put("61");
    EXPECT_EQ(onKite(), "61");
    sharing->setCurrentIndex(1);
    EXPECT_EQ(sharing->currentText(), QStringLiteral("for Heron 250 only"));
    put("62");
    EXPECT_EQ(joint("rotor-nut").torque->text(), "62");
    EXPECT_FALSE(joint("rotor-nut").sharedFrom);
    EXPECT_EQ(onKite(), "61");
    // It stays with this machine until that is said otherwise.
    EXPECT_EQ(sharing->currentIndex(), 1);
    put("63");
    EXPECT_EQ(onKite(), "61");
    sharing->setCurrentIndex(0);
    put("64");
    EXPECT_EQ(onKite(), "64");
}

// Where a joint sits decides whether it goes with an engine to another machine.
TEST_F(TorquePageTest, AJointIsSaidToSitInWhatItGoesWith) {
    ask(QStringLiteral("valve cover"));
    auto* place = child<QComboBox>("jointPosition");
    EXPECT_EQ(place->currentText(), QStringLiteral("engine"));
    const auto choose = [&](const QString& words) {
        place->setCurrentText(words);
        ASSERT_EQ(place->currentText(), words);
        emit place->activated(place->currentIndex());
    };
    choose(QStringLiteral("the machine itself"));
    EXPECT_EQ(joint("valve-cover-bolts").position, "");
    choose(QStringLiteral("nobody said"));
    EXPECT_EQ(joint("valve-cover-bolts").position, std::nullopt);
    choose(QStringLiteral("rear wheel"));
    EXPECT_EQ(joint("valve-cover-bolts").position, "rear wheel");
}

// Looked at another joint, or the joint was put right in another window: what was typed is not lost.
TEST_F(TorquePageTest, AFigureThatWasTypedAndNotSavedComesBack) {
    ask(QStringLiteral("rear axle"));
    auto* torque = child<QLineEdit>("jointTorque");
    torque->setFocus();
    torque->selectAll();
    QTest::keyClicks(torque, QStringLiteral("97"));
    ask(QStringLiteral("valve cover"));
    EXPECT_NE(torque->text(), QStringLiteral("97"));
    ask(QStringLiteral("rear axle"));
    EXPECT_EQ(torque->text(), QStringLiteral("97"));
    EXPECT_FALSE(child<QLabel>("jointProblem")->text().isEmpty());
    auto version = joint("rear-axle-nut");
    version.locking = "blue, medium";
    garage_->say([version](const verbs::VerbContext& context) { return verbs::saveJoint(context, version); });
    EXPECT_EQ(torque->text(), QStringLiteral("97"));
    torque->setFocus();
    press(Qt::Key_Return);
    EXPECT_EQ(joint("rear-axle-nut").torque->text(), "97");
    ask(QStringLiteral("valve cover"));
    ask(QStringLiteral("rear axle"));
    EXPECT_TRUE(child<QLabel>("jointProblem")->text().isEmpty());
}

TEST_F(TorquePageTest, NothingOfAJointStaysWhereThereIsNone) {
    ask(QStringLiteral("valve cover"));
    auto* form = child<QLineEdit>("jointTorque")->parentWidget();
    ASSERT_FALSE(child<QLineEdit>("jointTorque")->text().isEmpty());
    auto* sharing = child<QComboBox>("jointSharing");
    sharing->parentWidget()->show();
    sharing->addItem(QStringLiteral("for all"));
    ask(QStringLiteral("chain slack"));
    EXPECT_TRUE(child<QLineEdit>("jointTorque")->text().isEmpty());
    EXPECT_TRUE(child<QLineEdit>("jointSource")->text().isEmpty());
    EXPECT_FALSE(child<QCheckBox>("jointConfirmed")->isChecked());
    EXPECT_FALSE(sharing->isVisibleTo(form));
    EXPECT_EQ(sharing->count(), 0);
}

TEST_F(TorquePageTest, ANameIsNoPlaceForFigures) {
    auto task = *book().task(garage_->task("Heron 250", "linkage-grease"));
    task.name = "Linkage %2 %3";
    garage_->say([task](const verbs::VerbContext& context) { return verbs::saveTask(context, task); });
    ask(QStringLiteral("link to frame"));
    EXPECT_TRUE(said("torqueJob").startsWith(QStringLiteral("Linkage %2 %3: joint 1 of ")))
        << said("torqueJob").toStdString();
}

// The tick is for the figure that stood there, not for what is typed over it.
TEST_F(TorquePageTest, AnotherFigureIsNotConfirmedUntilSomebodySaysSo) {
    ask(QStringLiteral("rear axle"));
    ASSERT_TRUE(child<QCheckBox>("jointConfirmed")->isChecked());
    auto* torque = child<QLineEdit>("jointTorque");
    torque->setFocus();
    torque->selectAll();
    type(QStringLiteral("112"));
    EXPECT_FALSE(child<QCheckBox>("jointConfirmed")->isChecked());
    press(Qt::Key_Return);
    EXPECT_EQ(joint("rear-axle-nut").torque->text(), "112");
    EXPECT_FALSE(joint("rear-axle-nut").confirmed);
}

// A range that goes down is said before either end of it is held against its thread.
TEST_F(TorquePageTest, ARangeThatGoesDownIsSaidFirst) {
    ask(QStringLiteral("valve cover"));
    child<QLineEdit>("jointTorque")->setText(QStringLiteral("22"));
    auto* high = child<QLineEdit>("jointTorqueHigh");
    high->setText(QStringLiteral("18"));
    high->setFocus();
    press(Qt::Key_Return);
    EXPECT_TRUE(said("jointProblem").contains(QStringLiteral("put the earlier or smaller one first")))
        << said("jointProblem").toStdString();
    EXPECT_EQ(joint("valve-cover-bolts").torque->text(), "10");
}

// A name that a schedule brought is common practice; the torque that is typed for it is the manual's.
TEST_F(TorquePageTest, ATorqueThatIsTypedIntoItsBlankIsOfTheManual) {
    ASSERT_FALSE(joint("clutch-cover-bolts").torque);
    ASSERT_EQ(joint("clutch-cover-bolts").source, "common practice");
    ask(QStringLiteral("clutch cover"));
    EXPECT_TRUE(said("answerSource").isEmpty()) << "of a figure that is not there";
    auto* torque = child<QLineEdit>("jointTorque");
    torque->setFocus();
    torque->setText(QStringLiteral("10"));
    press(Qt::Key_Return);
    EXPECT_EQ(joint("clutch-cover-bolts").torque->text(), "10");
    EXPECT_EQ(joint("clutch-cover-bolts").source, "Heron 250 service manual (invented)");
}

// What is open is said above the figures, whichever joint is looked at, and goes when it is torqued.
TEST_F(TorquePageTest, WhatIsHandTightIsSaidAtOnce) {
    const auto heron = garage_->machine("Heron 250");
    ask(QStringLiteral("rear axle"));
    EXPECT_EQ(said("torqueHandTight"), QStringLiteral("HAND-TIGHT: Subframe bolts"));
    garage_->workbench().choose(std::nullopt);
    EXPECT_TRUE(said("torqueHandTight").contains(QStringLiteral(" (Sorrel 450)")));
    EXPECT_TRUE(said("torqueHandTight").endsWith(QStringLiteral(" more")));
    garage_->workbench().choose(heron);
    EXPECT_TRUE(said("answerHandTight").isEmpty()) << "of the rear axle";
    ask(QStringLiteral("subframe"));
    EXPECT_EQ(said("answerHandTight"), QStringLiteral("HAND-TIGHT since Tue 5 May: found moved"));
    const JointId open = book().handTight(heron).at(0).joint->joint;
    garage_->say([open](const verbs::VerbContext& context) {
        return verbs::markJoints(
            context, {{.joint = open, .date = context.book.today(), .kind = fastening::MarkKind::Confirmed}});
    });
    EXPECT_TRUE(said("torqueHandTight").isEmpty());
    EXPECT_TRUE(said("answerHandTight").isEmpty());
}

// Whatever is typed into the line or the thread, the answer is words, as plain text.
TEST_F(TorquePageTest, AStrangeQuestionIsAnsweredInWords) {
    auto* line = child<QLineEdit>("torqueFind");
    for (const QString& words : {QString(10'000, QLatin1Char('x')), QStringLiteral("   zzzz   "),
                                 QStringLiteral("'; DROP TABLE joint; --")}) {
        line->setText(words);
        EXPECT_TRUE(said("torqueEmpty").startsWith(QStringLiteral("Nothing is called that here")));
        EXPECT_FALSE(child<QWidget>("jointFigure")->isVisible());
        EXPECT_FALSE(child<QWidget>("jointTorque")->isVisible()) << "nothing to type a figure for";
    }
    line->setText(QStringLiteral("<b>rear</b> axle <script>"));
    EXPECT_EQ(said("answerName"), QStringLiteral("Rear axle nut"));
    ask(QStringLiteral("clutch cover"));
    child<QComboBox>("genericClass")->setCurrentText(QStringLiteral("8.8"));
    for (const char* thread : {"M7.3x9", "M0", "M8x0", "nan", "-1", "<b>M8</b>"}) {
        child<QLineEdit>("genericThread")->setText(QString::fromLatin1(thread));
        EXPECT_TRUE(said("genericBand").isEmpty()) << thread;
        EXPECT_TRUE(said("genericWords").contains(QStringLiteral("There is no metric thread"))) << thread;
        EXPECT_EQ(child<QLabel>("genericWords")->textFormat(), Qt::PlainText);
    }
}

// On the small screen the answer has its order, buttons and marks in view: only the marks scroll.
TEST_F(TorquePageTest, TheAnswerFitsTheSmallScreen) {
    window_->resize(1280, 800);
    garage_->workbench().choose(garage_->machine("Sorrel 450"));
    ask(QStringLiteral("axle pinch bolts, fixed leg"));
    ASSERT_EQ(said("answerName"), QStringLiteral("Axle pinch bolts, fixed leg"));
    QWidget* within = child<QWidget>("torqueMarks");
    while (qobject_cast<QScrollArea*>(within) == nullptr)
        within = within->parentWidget();
    EXPECT_EQ(qobject_cast<QScrollArea*>(within)->verticalScrollBar()->maximum(), 0);
}

// Who comes back with another question types it, and does not clear the line first.
TEST_F(TorquePageTest, TheNextQuestionIsTypedOverTheLastOne) {
    ask(QStringLiteral("rear axl"));
    window_->goTo(PageId::Bench);
    window_->goTo(PageId::Torque);
    ASSERT_EQ(QApplication::focusWidget(), child<QLineEdit>("torqueFind"));
    type(QStringLiteral("valve cover"));
    EXPECT_EQ(child<QLineEdit>("torqueFind")->text(), QStringLiteral("valve cover"));
    EXPECT_EQ(said("answerName"), QStringLiteral("Valve cover bolts"));
}

// The line below the page puts stages right with the torque, as leafing through the manual does.
TEST_F(TorquePageTest, StagesFollowATorqueThatIsPutRight) {
    fastening::JointVersion nut = joint("rotor-nut");
    nut.torque = units::Decimal{60, 0};
    nut.torqueHigh.reset();
    nut.stages = "30, 60";
    garage_->say([nut](const verbs::VerbContext& context) { return verbs::saveJoint(context, nut); });
    ask(QStringLiteral("rotor"));
    auto* torque = child<QLineEdit>("jointTorque");
    const auto put = [&](const char* figure) {
        torque->setText(QString::fromLatin1(figure));
        torque->setFocus();
        press(Qt::Key_Return);
    };
    put("45 ft lb");
    EXPECT_TRUE(said("jointProblem").contains(QStringLiteral("not plain what becomes of the stages")));
    EXPECT_EQ(joint("rotor-nut").torque->text(), "60");
    put("64");
    EXPECT_EQ(joint("rotor-nut").torque->text(), "64");
    EXPECT_EQ(joint("rotor-nut").stages, "30, 64");
}

}  // namespace
}  // namespace wm::ui

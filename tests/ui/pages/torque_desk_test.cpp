// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// The drawer, the hand-tight list and what came loose, by the keys.
#include <QClipboard>
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QPrintDialog>
#include <QPushButton>
#include <QTabBar>
#include <QTableWidget>
#include <QTimer>

#include "core/book/drawer_of_book.h"
#include "core/verbs/verbs.h"
#include "tests/ui/window.h"
#include "ui/entry/entry_strip.h"
#include "ui/pages/page.h"
#include "ui/tables/row_table.h"

namespace wm::ui {
namespace {

class TorqueDeskTest : public WindowTest {
  protected:
    void SetUp() override {
        openOn(Garage::Fill::Season);
        garage_->workbench().choose(garage_->machine("Heron 250"));
        window_->goTo(PageId::Torque);
    }
    const book::Book& book() { return garage_->book(); }
    void look(int view) { child<QTabBar>("torqueViews")->setCurrentIndex(view); }
    QString nameOf(int view) { return child<QTabBar>("torqueViews")->tabText(view); }
    QLineEdit* field(const char* name) {
        auto* found = child<EntryStrip>("entry-strip")->findChild<QLineEdit*>(QString::fromLatin1(name));
        EXPECT_NE(found, nullptr) << name;
        return found;
    }
    void addTool(const char* name, const char* low, const char* high) {
        child<QPushButton>("drawerAdd")->click();
        field("name")->setText(QString::fromUtf8(name));
        field("low")->setText(QString::fromUtf8(low));
        field("high")->setText(QString::fromUtf8(high));
        QTest::keyClick(field("high"), Qt::Key_Return);
    }
    void mark(fastening::MarkKind kind, std::optional<ToolId> tool) {
        const JointId joint = book().joints(garage_->machine("Heron 250")).front()->joint;
        garage_->say([=](const verbs::VerbContext& context) {
            return verbs::markJoints(
                context, {{.joint = joint, .date = context.book.today(), .kind = kind, .tool = tool}});
        });
    }
};

constexpr int kHandTight = 1;
constexpr int kDrawer = 2;
constexpr int kLoose = 3;
constexpr int kChart = 4;
constexpr int kConfirm = 5;

// Without a machine there is nothing to confirm: the keys are on the names of the views, where one sees them.
TEST_F(TorqueDeskTest, TheKeysHaveAPlaceWhereAViewIsEmpty) {
    garage_->workbench().choose(std::nullopt);
    look(kConfirm);
    EXPECT_EQ(window_->page(PageId::Torque)->firstFocus(), child<QTabBar>("torqueViews"));
    garage_->workbench().choose(garage_->machine("Heron 250"));
    EXPECT_EQ(window_->page(PageId::Torque)->firstFocus(), child<QLineEdit>("confirmFigure"));
}

TEST_F(TorqueDeskTest, AToolIsAddedAndAWrongOneIsSaidAtItsField) {
    look(kDrawer);
    addTool("Long red", "20", "ten");
    EXPECT_TRUE(book().ledger().all<fastening::Tool>().empty());
    field("high")->setText(QStringLiteral("200,0"));
    QTest::keyClick(field("high"), Qt::Key_Return);
    ASSERT_EQ(book().ledger().all<fastening::Tool>().size(), 1U);
    EXPECT_EQ(book().ledger().all<fastening::Tool>()[0].high.text(), "200.0");
    EXPECT_EQ(child<RowTable>("drawerTools")->rows().rowCount(), 1);
    garage_->workbench().undo();
    EXPECT_TRUE(book().ledger().all<fastening::Tool>().empty());
}

TEST_F(TorqueDeskTest, AFailedCheckListsWhatToReCheckUntilItIsAnswered) {
    look(kDrawer);
    addTool("Long red", "20", "200");
    const ToolId red = book().ledger().all<fastening::Tool>().at(0).id;
    mark(fastening::MarkKind::Confirmed, red);
    child<RowTable>("drawerTools")->choose(red.value());
    child<QPushButton>("drawerCheck")->click();
    child<EntryStrip>("entry-strip")
        ->findChild<QComboBox*>(QStringLiteral("left_within"))
        ->setCurrentIndex(1);
    QTest::keyClick(field("worst"), Qt::Key_Return);
    ASSERT_EQ(book().ledger().all<fastening::Calibration>().size(), 1U);
    EXPECT_EQ(child<RowTable>("drawerRecall")->rows().rowCount(), 1);
    EXPECT_TRUE(nameOf(kDrawer).contains(QStringLiteral("1 to re-check"))) << nameOf(kDrawer).toStdString();
    child<RowTable>("drawerRecall")->setFocus();
    child<QPushButton>("recallFine")->click();
    EXPECT_EQ(nameOf(kDrawer), QStringLiteral("Drawer"));
    EXPECT_EQ(book().ledger().all<upkeep::FollowUpAnswer>().back().origin,
              book().ledger().all<fastening::Calibration>()[0].id.value());
}

// A check that was typed for the wrong tool is struck with its reason, and what it put in doubt with it.
TEST_F(TorqueDeskTest, ACheckIsStruckWithAReason) {
    look(kDrawer);
    addTool("Long red", "20", "200");
    const ToolId red = book().ledger().all<fastening::Tool>().at(0).id;
    auto* strike = child<QPushButton>("drawerStrike");
    EXPECT_FALSE(strike->isVisible()) << "nothing to strike";
    mark(fastening::MarkKind::Confirmed, red);
    const fastening::Calibration check{.tool = red, .date = garage_->book().today(), .foundWithin = false};
    garage_->say(
        [check](const verbs::VerbContext& context) { return verbs::recordCalibration(context, check); });
    child<RowTable>("drawerTools")->choose(red.value());
    EXPECT_TRUE(nameOf(kDrawer).contains(QStringLiteral("1 to re-check")));
    ASSERT_TRUE(strike->isVisible());
    EXPECT_EQ(strike->text(), QStringLiteral("Strike the check of Thu 7 May…"));
    strike->click();
    QTest::keyClick(field("reason"), Qt::Key_Return);
    EXPECT_EQ(book().ledger().all<fastening::Calibration>().size(), 1U) << "without a reason it stays";
    field("reason")->setText(QStringLiteral("it was the other wrench"));
    QTest::keyClick(field("reason"), Qt::Key_Return);
    EXPECT_TRUE(book().ledger().all<fastening::Calibration>().empty());
    EXPECT_EQ(book().ledger().struck<fastening::Calibration>().size(), 1U) << "it stays readable";
    EXPECT_EQ(nameOf(kDrawer), QStringLiteral("Drawer"));
    EXPECT_FALSE(strike->isVisible());
    garage_->workbench().undo();
    EXPECT_EQ(book().ledger().all<fastening::Calibration>().size(), 1U);
}

// The card goes to the printer by the same question as a sheet.
TEST_F(TorqueDeskTest, TheCardForTheWallAsksForThePrinter) {
    const auto head = [this] {
        fastening::JointVersion joint = *book().joints(garage_->machine("Heron 250")).front();
        joint.torque = units::Decimal{20, 0};
        joint.source = "service manual";
        return joint;
    };
    look(kChart);
    child<QPushButton>("chartPrint")->click();
    EXPECT_TRUE(child<QLabel>("chartWords")->text().contains(QStringLiteral("no torque figure yet")));
    garage_->say(
        [joint = head()](const verbs::VerbContext& context) { return verbs::saveJoint(context, joint); });
    QString asked;
    QTimer::singleShot(0, window_.get(), [&asked] {
        auto* dialog = qobject_cast<QPrintDialog*>(QApplication::activeModalWidget());
        ASSERT_NE(dialog, nullptr);
        asked = dialog->windowTitle();
        dialog->reject();
    });
    child<QPushButton>("chartPrint")->click();
    EXPECT_EQ(asked, QStringLiteral("Torque card, Heron 250"));
    EXPECT_TRUE(prompts_.reported.isEmpty());
}

TEST_F(TorqueDeskTest, AHandTightJointIsConfirmedWithTheToolOfLastTime) {
    look(kDrawer);
    addTool("Long red", "20", "200");
    const ToolId red = book().ledger().all<fastening::Tool>().at(0).id;
    const auto before = book().handTight(garage_->machine("Heron 250")).size();
    mark(fastening::MarkKind::Confirmed, red);
    mark(fastening::MarkKind::MarkBroken, std::nullopt);
    look(kHandTight);
    ASSERT_EQ(book().handTight(garage_->machine("Heron 250")).size(), before + 1);
    const JointId joint = book().joints(garage_->machine("Heron 250")).front()->joint;
    child<RowTable>("handTightJoints")->choose(joint.value());
    child<QPushButton>("handTightConfirm")->click();
    EXPECT_EQ(field("tool")->text(), QStringLiteral("Long red"));
    QTest::keyClick(field("tool"), Qt::Key_Return);
    EXPECT_EQ(book().handTight(garage_->machine("Heron 250")).size(), before);
    EXPECT_EQ(book().ledger().all<fastening::JointMark>().back().tool, red);
}

TEST_F(TorqueDeskTest, SaysHowOftenAJointMoved) {
    look(kLoose);
    EXPECT_TRUE(child<QLabel>("looseWords")->text().contains(QStringLiteral("Nobody has re-checked")));
    mark(fastening::MarkKind::Confirmed, std::nullopt);
    mark(fastening::MarkKind::FoundMoved, std::nullopt);
    auto* joints = child<RowTable>("looseJoints");
    ASSERT_EQ(joints->rows().rowCount(), 1);
    EXPECT_EQ(joints->rows().rows()[0].cells[2].text, QStringLiteral("1"));
    joints->choose(joints->rows().rows()[0].id);
    child<QPushButton>("looseRecheck")->click();
    field("tool")->setText(QStringLiteral("no such wrench"));
    QTest::keyClick(field("tool"), Qt::Key_Return);
    EXPECT_TRUE(child<EntryStrip>("entry-strip")->isOpen()) << "a tool that is not in the drawer is said";
}

// A chart from a spreadsheet: what can't be read is said, nothing is written until all of it can and the
// mechanic says so, and it goes in one undo.
TEST_F(TorqueDeskTest, AChartIsPastedCheckedAndEnteredInOneStep) {
    look(kChart);
    auto* grid = child<QTableWidget>("chartGrid");
    auto* enter = child<QPushButton>("chartEnter");
    const auto before = book().ledger().all<fastening::JointVersion>().size();
    QApplication::clipboard()->setText(QStringLiteral(
        "Joint\tTorque\tPage\tManual\nDrain plug\t24,5\t2-11\tservice manual\nSump bolts\tten\t2-12\t\n"));
    grid->setFocus();
    QTest::keyClick(grid, Qt::Key_V, Qt::ControlModifier);
    EXPECT_EQ(grid->item(0, 3)->text(), QStringLiteral("24,5"));
    EXPECT_FALSE(enter->isEnabled());
    EXPECT_TRUE(child<QLabel>("chartWords")->text().startsWith(QStringLiteral("Row 2, Torque:")))
        << child<QLabel>("chartWords")->text().toStdString();
    EXPECT_FALSE(grid->item(1, 3)->toolTip().isEmpty());
    enter->click();
    EXPECT_EQ(book().ledger().all<fastening::JointVersion>().size(), before);
    EXPECT_EQ(window_->page(PageId::Torque)->unsaved().size(), 1);
    grid->item(1, 3)->setText(QStringLiteral("8-10"));
    ASSERT_TRUE(enter->isEnabled());
    EXPECT_EQ(enter->text(), QStringLiteral("Enter 2 joints"));
    enter->click();
    EXPECT_EQ(book().ledger().all<fastening::JointVersion>().size(), before + 2);
    const auto* plug = book().joint(garage_->machine("Heron 250"), "drain-plug");
    ASSERT_NE(plug, nullptr);
    EXPECT_EQ(plug->torque->text(), "24.5");
    EXPECT_FALSE(plug->confirmed);
    EXPECT_TRUE(window_->page(PageId::Torque)->unsaved().isEmpty());
    garage_->workbench().undo();
    EXPECT_EQ(book().ledger().all<fastening::JointVersion>().size(), before);
}

// A joint that the machines of a model share is overruled for this one from the chart as well.
TEST_F(TorqueDeskTest, AChartCanBeKeptToThisMachine) {
    const auto heron = garage_->machine("Heron 250");
    items::Machine card = *book().ledger().find<items::Machine>(heron);
    card.maker = "Brackwater";
    card.model = "MX 250";
    card.year = 2020;
    garage_->say([card](const verbs::VerbContext& context) { return verbs::saveMachine(context, card); });
    card.id = MachineId{};
    card.name = "Kite 250";
    garage_->say([card](const verbs::VerbContext& context) { return verbs::saveMachine(context, card); });
    const auto kite = garage_->machine("Kite 250");
    look(kChart);
    auto* sharing = child<QComboBox>("chartSharing");
    const auto paste = [this](const char* torque) {
        auto* grid = child<QTableWidget>("chartGrid");
        QApplication::clipboard()->setText(
            QStringLiteral("Joint\tTorque\tManual\nDrain plug\t%1\tmanual\n").arg(QLatin1String(torque)));
        grid->setCurrentCell(0, 0);
        grid->setFocus();
        QTest::keyClick(grid, Qt::Key_V, Qt::ControlModifier);
    };
    const auto torqueOf = [this](MachineId machine) {
        const auto* plug = book().joint(machine, "drain-plug");
        return plug == nullptr ? std::string() : plug->torque->text();
    };
    paste("24");
    EXPECT_FALSE(sharing->isVisible()) << "a new joint of no model year is this machine's";
    child<QLineEdit>("chartYearFrom")->setText(QStringLiteral("2019"));
    child<QLineEdit>("chartYearTo")->setText(QStringLiteral("2021"));
    child<QPushButton>("chartEnter")->click();
    EXPECT_EQ(torqueOf(kite), "24");
    child<QLineEdit>("chartYearFrom")->clear();
    child<QLineEdit>("chartYearTo")->clear();
    paste("25");
    ASSERT_TRUE(sharing->isVisible());
    auto* words = child<QLabel>("chartSharedWith");
    EXPECT_EQ(words->text(),
              QStringLiteral("One row is shared with Kite 250: what is typed goes there as well."));
    EXPECT_EQ(sharing->currentIndex(), 0) << "for all, as it was said";
    sharing->setCurrentIndex(1);
    EXPECT_EQ(sharing->currentText(), QStringLiteral("for Heron 250 only"));
    EXPECT_TRUE(words->text().endsWith(QStringLiteral("what stands there stays."))) << "said at once";
    EXPECT_FALSE(child<QLineEdit>("chartYearFrom")->isEnabled());
    child<QPushButton>("chartEnter")->click();
    EXPECT_EQ(torqueOf(heron), "25");
    EXPECT_EQ(torqueOf(kite), "24");
    EXPECT_EQ(sharing->currentIndex(), 0) << "the next chart is asked anew";
}

// One column never means two things: a joint is torqued, a figure is confirmed.
TEST_F(TorqueDeskTest, AJointIsTorquedAndAFigureIsConfirmed) {
    mark(fastening::MarkKind::Confirmed, std::nullopt);
    auto* joints = child<RowTable>("torqueJoints");
    joints->choose(book().joints(garage_->machine("Heron 250")).front()->joint.value());
    const auto marks = joints->rows().rows();
    EXPECT_TRUE(std::any_of(marks.begin(), marks.end(), [](const TableRow& row) {
        return row.cells.back().text.startsWith(QStringLiteral("torqued"));
    }));
    EXPECT_EQ(child<RowTable>("torqueMarks")->rows().rows()[0].cells[1].text, QStringLiteral("torqued"));
    EXPECT_EQ(child<QPushButton>("jointConfirm")->text(), QStringLiteral("Torqued and marked"));
    EXPECT_TRUE(child<QPushButton>("jointChecked")->text().startsWith(QStringLiteral("Figure confirmed")));
    mark(fastening::MarkKind::MarkBroken, std::nullopt);
    look(kHandTight);
    EXPECT_EQ(child<QPushButton>("handTightConfirm")->text(), QStringLiteral("Torqued and marked… (Enter)"));
    for (const QLabel* label : child<QWidget>("torqueViews")->parentWidget()->findChildren<QLabel*>())
        EXPECT_FALSE(label->isVisible() && label->text().contains(QStringLiteral("confirmed")))
            << label->text().toStdString();
}

// What of it no source but memory says is said where it is read.
TEST_F(TorqueDeskTest, SaysWhatOfTheStandardIsFromMemory) {
    const auto add = [this](const char* name, fastening::ToolType type) {
        const fastening::Tool tool{
            .name = name, .type = type, .low = units::Decimal{5, 0}, .high = units::Decimal{60, 0}};
        garage_->say([tool](const verbs::VerbContext& context) { return verbs::saveTool(context, tool); });
    };
    add("Click", fastening::ToolType::IIA);
    add("Dial", fastening::ToolType::IB);
    look(kDrawer);
    const auto tools = child<RowTable>("drawerTools")->rows().rows();
    ASSERT_EQ(tools.size(), 2U);
    EXPECT_EQ(tools[0].cells[3].text, QStringLiteral("II A ±4 %"));
    EXPECT_EQ(tools[1].cells[3].text, QStringLiteral("I B ±4 %, from memory"));
    auto* standard = child<QLabel>("drawerStandard");
    EXPECT_TRUE(standard->isVisible());
    EXPECT_TRUE(standard->text().contains(QStringLiteral("from memory of ISO 6789")));
}

}  // namespace
}  // namespace wm::ui

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// Leafing through the service manual, by the keys.
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QTabBar>
#include <QTranslator>
#include <map>

#include "core/definitions/confirming.h"
#include "tests/ui/window.h"
#include "ui/pages/page.h"
#include "ui/pages/torque/big_figure.h"
#include "ui/pages/torque/confirm_rows.h"
#include "ui/tables/row_table.h"

namespace wm::ui {
namespace {

class ConfirmViewTest : public WindowTest {
  protected:
    void SetUp() override {
        openOn(Garage::Fill::Demo);
        garage_->workbench().choose(garage_->machine("Heron 250"));
        window_->goTo(PageId::Torque);
        auto* views = child<QTabBar>("torqueViews");
        for (int at = 0; at < views->count(); ++at)
            if (views->tabText(at) == QStringLiteral("Confirm"))
                views->setCurrentIndex(at);
        figure()->setFocus();
    }
    QLineEdit* figure() { return child<QLineEdit>("confirmFigure"); }
    QLineEdit* page() { return child<QLineEdit>("confirmPage"); }
    RowTable* table() { return child<RowTable>("confirmFigures"); }
    QString said(const char* name) { return child<QLabel>(name)->text(); }
    std::vector<definitions::Printed> figures() {
        return definitions::printedFigures(garage_->book(), garage_->machine("Heron 250"));
    }
    definitions::Printed now(const QString& name) {
        for (const definitions::Printed& each : figures())
            if (QString::fromStdString(each.name) == name)
                return each;
        ADD_FAILURE() << "no figure " << name.toStdString();
        return {};
    }
    // The row of a figure that nobody confirmed.
    void choose(const QString& name) {
        for (const TableRow& row : table()->rows().rows())
            if (row.cells[1].text == name)
                return table()->choose(row.id);
        ADD_FAILURE() << "no row " << name.toStdString();
    }
    std::size_t confirmed() { return definitions::confirmedCount(figures()).confirmed; }
};

// The first time the page is asked; from then on Enter is enough.
TEST_F(ConfirmViewTest, EnterSaysThatItStandsThereSoAndKeepsThePage) {
    const auto before = confirmed();
    const QString first = said("confirmName");
    ASSERT_FALSE(figure()->text().isEmpty());
    page()->clear();
    press(Qt::Key_Return);
    EXPECT_EQ(confirmed(), before);
    EXPECT_EQ(QApplication::focusWidget(), page());
    EXPECT_TRUE(said("confirmProblem").contains(QStringLiteral("On which page")));
    type(QStringLiteral("2-9"));
    press(Qt::Key_Return);
    EXPECT_EQ(confirmed(), before + 1);
    EXPECT_EQ(now(first).page, "2-9");
    EXPECT_TRUE(now(first).confirmed);
    const QString second = said("confirmName");
    EXPECT_NE(second, first);
    EXPECT_EQ(QApplication::focusWidget(), figure());
    ASSERT_FALSE(figure()->text().isEmpty());
    press(Qt::Key_Return);
    EXPECT_EQ(confirmed(), before + 2);
    EXPECT_EQ(now(second).page, "2-9");
    garage_->workbench().undo();
    EXPECT_EQ(confirmed(), before + 1) << "one undo step each";
    garage_->workbench().undo();
    EXPECT_EQ(confirmed(), before);
}

TEST_F(ConfirmViewTest, SaysHowFarItIs) {
    const auto count = definitions::confirmedCount(figures());
    EXPECT_EQ(said("confirmProgress"),
              QStringLiteral("Heron 250: %1 of %2 confirmed").arg(count.confirmed).arg(count.all));
    EXPECT_EQ(table()->rows().rowCount(), static_cast<int>(count.all - count.confirmed));
    page()->setText(QStringLiteral("2-9"));
    press(Qt::Key_Return);
    EXPECT_TRUE(
        said("confirmProgress").startsWith(QStringLiteral("Heron 250: %1 of").arg(count.confirmed + 1)));
}

TEST_F(ConfirmViewTest, AnotherFigureTypedOverItPutsItRight) {
    choose(QStringLiteral("fork oil"));
    EXPECT_EQ(figure()->text(), QStringLiteral("1000 ml"));
    EXPECT_TRUE(child<BigFigure>("confirmStored")->isUnconfirmed());
    figure()->setFocus();
    figure()->selectAll();
    type(QStringLiteral("0,9 l"));
    page()->setText(QStringLiteral("4-2"));
    press(Qt::Key_Return);
    EXPECT_EQ(now(QStringLiteral("fork oil")).figure, "900 ml");
    EXPECT_TRUE(now(QStringLiteral("fork oil")).confirmed);
    garage_->workbench().undo();
    EXPECT_EQ(now(QStringLiteral("fork oil")).figure, "1000 ml");
    EXPECT_FALSE(now(QStringLiteral("fork oil")).confirmed);
}

TEST_F(ConfirmViewTest, ADoubtfulFigureIsAskedAboutOnce) {
    choose(QStringLiteral("fork oil"));
    figure()->setFocus();
    figure()->selectAll();
    type(QStringLiteral("500"));
    page()->setText(QStringLiteral("4-2"));
    press(Qt::Key_Return);
    EXPECT_EQ(now(QStringLiteral("fork oil")).figure, "1000 ml");
    EXPECT_TRUE(said("confirmProblem").contains(QStringLiteral("for one side, or for both")));
    press(Qt::Key_Return);  // meant
    EXPECT_EQ(now(QStringLiteral("fork oil")).figure, "500 ml");
}

// Stages that hold the torque are put right with it; where that is not plain, it is said what to do.
TEST_F(ConfirmViewTest, AStagedTorqueIsPutRightHere) {
    fastening::JointVersion nut = *garage_->book().joint(garage_->machine("Heron 250"), "rotor-nut");
    const QString name = QString::fromStdString(nut.name);
    nut.torque = units::Decimal{60, 0};
    nut.torqueHigh.reset();
    nut.unit = units::TorqueUnit::NewtonMetre;
    nut.stages = "30, 60";
    nut.confirmed = false;
    nut.sharedFrom = nut.sharedTo = std::nullopt;
    garage_->say([nut](const verbs::VerbContext& context) { return verbs::saveJoint(context, nut); });
    choose(name);
    const auto put = [this](const char* words) {
        figure()->setFocus();
        figure()->selectAll();
        type(QString::fromLatin1(words));
        page()->setText(QStringLiteral("4-2"));
        press(Qt::Key_Return);
    };
    put("45 ft lb");
    EXPECT_TRUE(
        said("confirmProblem").contains(QStringLiteral("not plain what becomes of the stages (30, 60)")))
        << said("confirmProblem").toStdString();
    put("25");
    EXPECT_TRUE(said("confirmProblem").contains(QStringLiteral("is 30 already")))
        << said("confirmProblem").toStdString();
    EXPECT_FALSE(now(name).confirmed);
    put("64");
    EXPECT_EQ(now(name).figure, "64 N·m");
    EXPECT_EQ(now(name).aside, "30, 64");
    EXPECT_TRUE(now(name).confirmed);
}

TEST_F(ConfirmViewTest, ABlankTorqueIsTypedStraightThere) {
    choose(QStringLiteral("Seat bolts"));
    EXPECT_TRUE(figure()->text().isEmpty());
    EXPECT_FALSE(child<BigFigure>("confirmStored")->isVisible());
    page()->setText(QStringLiteral("2-40"));
    figure()->setFocus();
    press(Qt::Key_Return);
    EXPECT_TRUE(said("confirmProblem").contains(QStringLiteral("Type the figure first")));
    type(QStringLiteral("ten"));
    press(Qt::Key_Return);
    EXPECT_FALSE(now(QStringLiteral("Seat bolts")).confirmed);
    EXPECT_TRUE(said("confirmProblem").contains(QStringLiteral("not a number")));
    figure()->selectAll();
    type(QStringLiteral("6-8 ft lb"));
    press(Qt::Key_Return);
    EXPECT_EQ(now(QStringLiteral("Seat bolts")).figure, "6 to 8 lbf·ft");
    EXPECT_TRUE(now(QStringLiteral("Seat bolts")).confirmed);
}

TEST_F(ConfirmViewTest, DownPassesOverAndItComesAgain) {
    const auto before = confirmed();
    const QString first = said("confirmName");
    const int rows = table()->rows().rowCount();
    press(Qt::Key_Down);
    EXPECT_NE(said("confirmName"), first);
    EXPECT_EQ(table()->rows().rowCount(), rows) << "it stays in the list";
    press(Qt::Key_Up);
    EXPECT_EQ(said("confirmName"), first);
    for (int at = 0; at < rows; ++at)
        press(Qt::Key_Down);
    EXPECT_EQ(said("confirmName"), first) << "the round begins again";
    EXPECT_EQ(confirmed(), before);
    EXPECT_EQ(QApplication::focusWidget(), figure());
}

TEST_F(ConfirmViewTest, WhatWasTypedStaysWhereverOneLooksMeanwhile) {
    const QString first = said("confirmName");
    figure()->selectAll();
    type(QStringLiteral("12 h or 6 mon"));
    press(Qt::Key_Down);
    EXPECT_NE(figure()->text(), QStringLiteral("12 h or 6 mon"));
    window_->goTo(PageId::Bench);
    EXPECT_EQ(window_->page(PageId::Torque)->unsaved().size(), 1);
    garage_->workbench().choose(garage_->machine("Sorrel 450"));
    window_->goTo(PageId::Torque);
    EXPECT_TRUE(said("confirmProgress").startsWith(QStringLiteral("Sorrel 450")));
    EXPECT_NE(figure()->text(), QStringLiteral("12 h or 6 mon"));
    garage_->workbench().choose(garage_->machine("Heron 250"));
    choose(first);
    EXPECT_EQ(figure()->text(), QStringLiteral("12 h or 6 mon"));
    figure()->setFocus();
    press(Qt::Key_Escape);
    EXPECT_NE(figure()->text(), QStringLiteral("12 h or 6 mon"));
    EXPECT_TRUE(garage_->workbench().chosen()) << "the window did not take the key";
    EXPECT_TRUE(window_->page(PageId::Torque)->unsaved().isEmpty());
}

TEST_F(ConfirmViewTest, AMachineIsChosenFirst) {
    garage_->workbench().choose(std::nullopt);
    EXPECT_TRUE(said("confirmHead").contains(QStringLiteral("Choose the machine")));
    EXPECT_FALSE(table()->isVisible());
    EXPECT_FALSE(figure()->isVisible());
}

// User text is never markup, and the list holds what the core says, in its order.
TEST_F(ConfirmViewTest, TheListIsInTheOrderOfAManual) {
    QStringList wanted;
    for (const definitions::Printed& each : figures())
        if (!each.confirmed)
            wanted << QString::fromStdString(each.name);
    QStringList seen;
    for (const TableRow& row : table()->rows().rows())
        seen << row.cells[1].text;
    EXPECT_EQ(seen, wanted);
    EXPECT_EQ(child<QLabel>("confirmName")->textFormat(), Qt::PlainText);
}

TEST_F(ConfirmViewTest, WhatChangesMeanwhileShowsBesideWhatIsTyped) {
    choose(QStringLiteral("fork oil"));
    ASSERT_EQ(child<BigFigure>("confirmStored")->text(), QStringLiteral("1000\u00A0ml"));
    figure()->setFocus();
    figure()->selectAll();
    type(QStringLiteral("0,9 l"));
    const auto key = now(QStringLiteral("fork oil")).key;
    auto task = *garage_->book().task(TaskId{key.of});
    task.kit.at(key.at).amount = 950;
    garage_->say([task](const verbs::VerbContext& context) { return verbs::saveTask(context, task); });
    EXPECT_EQ(child<BigFigure>("confirmStored")->text(), QStringLiteral("950\u00A0ml"));
    EXPECT_EQ(figure()->text(), QStringLiteral("0,9 l"));
}

TEST_F(ConfirmViewTest, APageTypedOverAStoredOneStays) {
    auto seat = *garage_->book().joint(garage_->machine("Heron 250"), "seat-bolts");
    seat.torque = units::Decimal{7, 0};
    seat.source = "Heron 250 service manual (invented)";
    seat.page = "2-40";
    garage_->say([seat](const verbs::VerbContext& context) { return verbs::saveJoint(context, seat); });
    choose(QStringLiteral("Seat bolts"));
    ASSERT_EQ(page()->text(), QStringLiteral("2-40"));
    page()->setFocus();
    page()->selectAll();
    type(QStringLiteral("2-41"));
    garage_->ride("Heron 250", "2026-05-06", 100, usage::OutingKind::Practice, usage::Ground::Sand, false);
    EXPECT_EQ(page()->text(), QStringLiteral("2-41"));
    EXPECT_EQ(QApplication::focusWidget(), page());
    press(Qt::Key_Return);
    EXPECT_EQ(now(QStringLiteral("Seat bolts")).page, "2-41");
}

TEST_F(ConfirmViewTest, NothingOfAnotherFileStays) {
    figure()->selectAll();
    type(QStringLiteral("12 h"));
    page()->setFocus();
    page()->selectAll();
    type(QStringLiteral("2-9"));
    EXPECT_EQ(window_->page(PageId::Torque)->unsaved(),
              QStringList{QStringLiteral("1 figure typed from the manual and not entered")});
    const Garage other(Garage::Fill::OneMachine);
    ASSERT_EQ(garage_->workbench().open(other.path()).outcome, store::OpenOutcome::Opened);
    EXPECT_TRUE(window_->page(PageId::Torque)->unsaved().isEmpty());
    EXPECT_NE(figure()->text(), QStringLiteral("12 h"));
    EXPECT_NE(page()->text(), QStringLiteral("2-9"));
}

TEST_F(ConfirmViewTest, ANameIsNoPlaceForFigures) {
    garage_->addMachine("Plover %2 %3", "four-stroke-motocross", units::Hours{100});
    garage_->workbench().choose(garage_->machine("Plover %2 %3"));
    const auto count = definitions::confirmedCount(
        definitions::printedFigures(garage_->book(), garage_->machine("Plover %2 %3")));
    EXPECT_EQ(said("confirmProgress"), QStringLiteral("Plover %2 %3: ") + QString::number(count.confirmed) +
                                           QStringLiteral(" of ") + QString::number(count.all) +
                                           QStringLiteral(" confirmed"));
}

// A language of a few words.
class FewWords : public QTranslator {
  public:
    QString translate(const char* /*context*/, const char* words, const char* /*meaning*/,
                      int /*n*/) const override {
        static const std::map<QString, QString> kWords{
            {QStringLiteral("or"), QStringLiteral("oder")},
            {QStringLiteral("first"), QStringLiteral("zuerst")},
            {QStringLiteral("then"), QStringLiteral("dann")},
            {QStringLiteral("months"), QStringLiteral("Monate")},
            {QStringLiteral("mud days"), QStringLiteral("Tage im Schlamm")}};
        const auto at = kWords.find(QString::fromUtf8(words));
        return at == kWords.end() ? QString() : at->second;
    }
    [[nodiscard]] bool isEmpty() const override { return false; }
};

TEST(ConfirmRows, AnIntervalIsSaidAndReadInTheLanguageOfTheWindow) {
    using definitions::PrintedKind;
    FewWords german;
    ASSERT_TRUE(QCoreApplication::installTranslator(&german));
    definitions::Printed figure;
    figure.key.kind = PrintedKind::Interval;
    figure.figure = "first 3 h, then 15 h or 6 months or 2 mud days";
    const QString said = figureWords(figure);
    EXPECT_EQ(said, QStringLiteral("zuerst 3 h, dann 15 h oder 6 Monate oder 2 Tage im Schlamm"));
    EXPECT_EQ(figureTyped(PrintedKind::Interval, said), figure.figure);
    EXPECT_EQ(figureTyped(PrintedKind::Interval, QStringLiteral("4 months or 5 Monate, orders")),
              "4 months or 5 months, orders");
    figure.key.kind = PrintedKind::Torque;
    EXPECT_EQ(figureWords(figure), QString::fromStdString(figure.figure)) << "a torque has no such words";
    QCoreApplication::removeTranslator(&german);
}

}  // namespace
}  // namespace wm::ui

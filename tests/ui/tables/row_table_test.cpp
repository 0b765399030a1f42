// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/tables/row_table.h"

#include <gtest/gtest.h>

#include <QAbstractItemModelTester>
#include <QApplication>
#include <QSignalSpy>
#include <QTest>

namespace wm::ui {
namespace {

std::vector<TableRow> oils() {
    return {
        {.id = 7,
         .cells = {{.text = QStringLiteral("fork oil")}, {.text = QStringLiteral("900"), .sort = 900}}},
        {.id = 3,
         .cells = {{.text = QStringLiteral("engine oil")}, {.text = QStringLiteral("1000"), .sort = 1000}}},
        {.id = 5,
         .cells = {{.text = QStringLiteral("<b>grease</b>")}, {.text = QStringLiteral("80"), .sort = 80}}}};
}

class RowTableTest : public testing::Test {
  protected:
    RowTableTest() : table_({QStringLiteral("What"), QStringLiteral("Left")}, 0, nullptr) {
        table_.resize(400, 300);
    }
    QString shown(int row) { return table_.model()->index(row, 0).data().toString(); }

    RowTable table_;
};

TEST_F(RowTableTest, ItsModelsKeepTheRulesOfQt) {
    TableModel model({QStringLiteral("What"), QStringLiteral("Left")});
    const QAbstractItemModelTester rules(&model, QAbstractItemModelTester::FailureReportingMode::Fatal);
    const QAbstractItemModelTester viewRules(table_.model(),
                                             QAbstractItemModelTester::FailureReportingMode::Fatal);
    model.setRows(oils());
    table_.show(oils());
    table_.filter(QStringLiteral("oil"));
    table_.show({});
    EXPECT_EQ(model.rowCount(), 3);
    EXPECT_EQ(table_.model()->rowCount(), 0);
}

TEST_F(RowTableTest, SortsByWhatAFigureIsAndNotByItsLetters) {
    table_.show(oils());
    table_.sortByColumn(1, Qt::AscendingOrder);
    EXPECT_EQ(shown(0), QStringLiteral("<b>grease</b>"));
    EXPECT_EQ(shown(2), QStringLiteral("engine oil"));
}

// So narrow that one of the two must give way: the words take more lines, the figure stays whole.
// "front s": the space is a part of what is looked for, and takes nothing in or out.
TEST_F(RowTableTest, ASpaceBelongsToTheNameThatIsTyped) {
    int toggled = 0;
    QObject::connect(&table_, &RowTable::toggledId, [&] { ++toggled; });
    table_.show(oils());
    QTest::keyClick(&table_, Qt::Key_Space);
    EXPECT_EQ(toggled, 1);
    QTest::keyClicks(&table_, QStringLiteral("a "));
    EXPECT_EQ(toggled, 1);
    QTest::qWait(QApplication::keyboardInputInterval() + 50);
    QTest::keyClick(&table_, Qt::Key_Space);
    EXPECT_EQ(toggled, 2);
}

TEST_F(RowTableTest, BreaksWordsAndNoFigures) {
    auto rows = oils();
    rows[0].cells[0].text = QStringLiteral("fork oil for the long fork with the soft springs");
    rows[0].cells[1] = {.text = QStringLiteral("1,000,000,000 ml"), .figure = true};
    table_.show(rows);
    const int oneLine = table_.rowHeight(0);
    table_.resize(220, 300);
    table_.grab();  // lays it out
    EXPECT_GE(table_.columnWidth(1), table_.fontMetrics().horizontalAdvance(rows[0].cells[1].text));
    EXPECT_GT(table_.rowHeight(0), oneLine);
    EXPECT_EQ(table_.rowHeight(1), oneLine);
    EXPECT_LE(table_.columnWidth(0) + table_.columnWidth(1), table_.viewport()->width());
    table_.resize(900, 300);
    table_.grab();
    EXPECT_EQ(table_.rowHeight(0), oneLine);
}

TEST_F(RowTableTest, ASearchChoosesTheFirstHitAndShowsIt) {
    std::vector<TableRow> rows;
    for (int id = 1; id <= 60; ++id)
        rows.push_back({.id = id, .cells = {{.text = id % 2 == 0 ? "fork oil" : "engine oil"}}});
    table_.show(std::move(rows));
    table_.QWidget::show();
    table_.choose(58);
    table_.filter(QStringLiteral("fork"));
    EXPECT_EQ(table_.chosenId(), 2);
    EXPECT_TRUE(table_.viewport()->rect().contains(table_.visualRect(table_.currentIndex())));
    table_.choose(40);
    table_.filter(QString());
    EXPECT_EQ(table_.chosenId(), 40) << "what was found stays when the words are gone";
    EXPECT_TRUE(table_.viewport()->rect().contains(table_.visualRect(table_.currentIndex())));
}

TEST_F(RowTableTest, FindsAllWordsInAnyOrderAndReadsNoneAsAPattern) {
    table_.show(oils());
    table_.filter(QStringLiteral("OIL fork"));
    ASSERT_EQ(table_.model()->rowCount(), 1);
    EXPECT_EQ(shown(0), QStringLiteral("fork oil"));
    table_.filter(QStringLiteral(".*"));
    EXPECT_EQ(table_.model()->rowCount(), 0);
}

TEST_F(RowTableTest, KeepsItsChoiceWhenTheRowsAreMadeAnew) {
    table_.show(oils());
    table_.choose(3);
    auto more = oils();
    more.insert(more.begin(), TableRow{.id = 11, .cells = {{.text = QStringLiteral("coolant")}}});
    table_.show(more);
    EXPECT_EQ(table_.chosenId(), 3);
}

TEST_F(RowTableTest, SaysWhichRowIsMeantByEnterAndBySpace) {
    table_.show(oils());
    table_.choose(5);
    QSignalSpy activated(&table_, &RowTable::activatedId);
    QSignalSpy toggled(&table_, &RowTable::toggledId);
    QTest::keyClick(&table_, Qt::Key_Return);
    QTest::keyClick(&table_, Qt::Key_Space);
    ASSERT_EQ(activated.count(), 1);
    ASSERT_EQ(toggled.count(), 1);
    EXPECT_EQ(activated.front().front().toLongLong(), 5);
    EXPECT_EQ(toggled.front().front().toLongLong(), 5);
}

TEST_F(RowTableTest, ReadsNoMarkupFromWhatWasTyped) {
    table_.show(oils());
    const auto tip = table_.model()->index(2, 0).data(Qt::ToolTipRole).toString();
    EXPECT_TRUE(tip.contains(QStringLiteral("&lt;b&gt;"))) << tip.toStdString();
}

}  // namespace
}  // namespace wm::ui

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// A notebook kept as CSV, from the File menu into the garage and back out by undo. What the sample adds up to
// is reckoned here from its cells, by nothing that the program uses.
#include <QAbstractItemModelTester>
#include <QStringEncoder>
#include <cmath>
#include <map>
#include <set>

#include "tests/ui/shell/notebook_window.h"

namespace wm::ui {
namespace {

// -- the notebook's own arithmetic

QList<QStringList> cellsOf(const QByteArray& bytes) {
    QList<QStringList> rows;
    for (const QString& line : QString::fromUtf8(bytes).split(QLatin1Char('\n'), Qt::SkipEmptyParts)) {
        QStringList cells{QString()};
        bool quoted = false;
        for (const QChar c : line) {
            if (c == QLatin1Char('"'))
                quoted = !quoted;
            else if (c == QLatin1Char(';') && !quoted)
                cells << QString();
            else if (c != QLatin1Char('\r'))
                cells.back() += c;
        }
        rows << cells;
    }
    rows.removeFirst();
    return rows;
}

long hundredths(QString cell) {
    return std::lround(cell.replace(QLatin1Char(','), QLatin1Char('.')).remove(QLatin1Char('h')).toDouble() *
                       100);
}

struct Sums {
    long noted = 0;
    long ran = 0;  ///< by the meter where it was read, by the notes where it was not
    long outings = 0;
    long washes = 0;
};

// The cells that a reader puts right on sight are put right by hand.
Sums sumsOf(const QString& machine) {
    Sums sums;
    long last = -1;
    long since = 0;
    std::set<QString> seen;
    for (QStringList row : cellsOf(sample("outings.csv"))) {
        row[1] = row[1] == QLatin1String("sorrel 450 ") ? QStringLiteral("Sorrel 450") : row[1];
        row[4] = row[4] == QLatin1String("016,9") ? QStringLiteral("106,9") : row[4];
        if (row[1] != machine || !seen.insert(row.join(QLatin1Char(';'))).second)
            continue;
        if (row[2] == QLatin1String("meter")) {
            last = hundredths(row[4]);
            since = 0;
            continue;
        }
        ++sums.outings;
        sums.noted += hundredths(row[3]);
        since += hundredths(row[3]);
        sums.washes += row[7].isEmpty() ? 0 : 1;
        if (row[4].isEmpty())
            continue;
        sums.ran += last < 0 ? since : hundredths(row[4]) - last;
        last = hundredths(row[4]);
        since = 0;
    }
    sums.ran += since;
    return sums;
}

TEST_F(NotebookWindow, TheSampleIsOneStepInAndOneStepOut) {
    openGarage(true);
    const auto before = everything();
    ASSERT_NE(importSample("outings.csv"), nullptr);
    EXPECT_EQ(tabs(), (QStringList{"taken 72", "doubtful 6", "refused 0"}));
    EXPECT_EQ(importButton()->text(), "Take 72 lines; 6 doubtful stay out (Enter twice)");
    EXPECT_TRUE(words().startsWith("6 doubtful lines wait")) << words().toStdString();
    EXPECT_EQ(everything(), before) << "looking writes nothing";
    press(Qt::Key_A);
    EXPECT_EQ(importButton()->text(), "Take 77 lines (Enter)")
        << "the line that stands there twice stays out";
    press(Qt::Key_Return);
    EXPECT_TRUE(status().contains("took over 77 lines of outings.csv: ")) << status().toStdString();
    EXPECT_EQ(garage_->book().ledger().all<usage::Outing>().size(), 76U);
    back();
    const auto after = everything();
    press(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(everything(), before);
    press(Qt::Key_Z, Qt::ControlModifier | Qt::ShiftModifier);
    EXPECT_EQ(everything(), after);
}

TEST_F(NotebookWindow, TheSameFileAgainIsNothingNew) {
    openGarage(true);
    takeAll("outings.csv");
    const auto after = everything();
    auto* dialog = importSample("outings.csv");
    ASSERT_NE(dialog, nullptr);
    EXPECT_TRUE(words().contains("is new to this file")) << words().toStdString();
    EXPECT_FALSE(importButton()->isEnabled());
    press(Qt::Key_A);
    press(Qt::Key_Return);
    EXPECT_TRUE(dialog->isVisible());
    EXPECT_EQ(everything(), after);
    leave(dialog);
}

TEST_F(NotebookWindow, TotalsAreThoseOfTheNotebookAndThenOfTheFile) {
    openGarage(true);
    ASSERT_NE(importSample("outings.csv"), nullptr);
    press(Qt::Key_A);
    const Sums heron = sumsOf("Heron 250");
    const Sums sorrel = sumsOf("Sorrel 450");
    for (const auto& [row, sums] : {std::pair(1, heron), std::pair(2, sorrel)}) {
        EXPECT_EQ(total(row, 2).toLong(), sums.outings) << row;
        EXPECT_EQ(hundredths(total(row, 3)), sums.noted) << row;
        EXPECT_EQ(total(row, 5).toLong(), sums.washes) << row;
    }
    EXPECT_EQ(hundredths(total(3, 3)), heron.noted + sorrel.noted);
    press(Qt::Key_Return);
    for (const auto& [name, sums] : {std::pair("Heron 250", heron), std::pair("Sorrel 450", sorrel)}) {
        const auto id = garage_->machine(name);
        const auto life = garage_->book().life(id);
        const auto past = garage_->book().ledger().find<items::Machine>(id)->pastBest;
        EXPECT_EQ((life.hours.best - past).count(), sums.ran) << name;
        EXPECT_EQ(life.washes, sums.washes) << name;
        EXPECT_EQ(life.outings, sums.outings) << name;
    }
    back();
    ASSERT_NE(importSample("jobs.csv"), nullptr);
    long minutes = 0;
    const auto jobs = cellsOf(sample("jobs.csv"));
    for (const QStringList& row : jobs)
        minutes += row[5].toLong();
    EXPECT_EQ(total(3, 6).toLong(), jobs.size());
    EXPECT_EQ(total(3, 7).toLong(), minutes);
    EXPECT_TRUE(words().contains("no joint hand-tight")) << words().toStdString();
    press(Qt::Key_Return);
    std::set<std::tuple<MachineId, calendar::Date, std::string>> done;
    long recorded = 0;
    for (const auto& record : garage_->book().ledger().all<upkeep::Record>()) {
        done.insert({record.machine, record.date, record.what});
        recorded += record.minutes ? static_cast<long>(record.minutes->count()) : 0;
    }
    EXPECT_EQ(static_cast<long>(done.size()), jobs.size());
    EXPECT_EQ(recorded, minutes);
    for (const char* name : {"Heron 250", "Sorrel 450"})
        EXPECT_TRUE(garage_->book().handTight(garage_->machine(name)).empty()) << name;
}

TEST_F(NotebookWindow, AnEmptyGarageGetsItsMachines) {
    openGarage(false);
    takeAll("outings.csv");
    EXPECT_EQ(garage_->book().machines().size(), 2U);
    press(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(garage_->book().machines().size(), 2U) << "a garage is not emptied without asking";
    prompts_.agrees = true;
    press(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_TRUE(garage_->book().machines().empty());
}

TEST_F(NotebookWindow, CuresAreAcceptedLineByLineOrByKind) {
    openGarage(true);
    auto* dialog = importSample("outings.csv");
    ASSERT_NE(dialog, nullptr);
    const QAbstractItemModelTester tester(table()->model());
    ASSERT_EQ(table()->model()->rowCount(), 6) << "the doubtful ones first";
    EXPECT_EQ(QApplication::focusWidget(), table());
    for (int down = 0; down < 2; ++down)
        press(Qt::Key_Down);
    EXPECT_EQ(cell(2, NotebookLines::LineAt), "21");
    EXPECT_EQ(cell(2, NotebookLines::CureAt), "meter 106,9");
    press(Qt::Key_Space);
    EXPECT_EQ(cell(2, NotebookLines::StateAt), "doubtful: cured");
    EXPECT_EQ(importButton()->text(), "Take 73 lines; 5 doubtful stay out (Enter twice)");
    press(Qt::Key_Space);
    EXPECT_EQ(cell(2, NotebookLines::StateAt), "doubtful");
    press(Qt::Key_K);
    EXPECT_EQ(importButton()->text(), "Take 73 lines; 5 doubtful stay out (Enter twice)")
        << "it is the only one of its kind";
    press(Qt::Key_L);
    EXPECT_EQ(cell(2, NotebookLines::StateAt), "left out");
    press(Qt::Key_Left);
    EXPECT_EQ(table()->model()->rowCount(), 72);
    press(Qt::Key_L);
    EXPECT_EQ(importButton()->text(), "Take 71 lines; 5 doubtful stay out (Enter twice)")
        << "a taken line can be left out too";
    leave(dialog);
    EXPECT_TRUE(garage_->book().ledger().all<usage::Outing>().empty());
}

TEST_F(NotebookWindow, AKindIsAcceptedAtOnce) {
    openGarage(true);
    QByteArray text = "date;machine;hours\n";
    for (int at = 1; at < 25; ++at)
        text += QByteArray::number(at) + ".03.2026;Heron 250;" + (at % 8 == 3 ? "2h" : "1,0") + "\n";
    text += "25.03.2026;Heron 250;90 min\n26.03.2026;heron;1,0\n";
    auto* dialog = import(write("kind.csv", text));
    ASSERT_NE(dialog, nullptr);
    EXPECT_EQ(tab(2), "doubtful 5") << tab(1).toStdString();
    press(Qt::Key_K);
    EXPECT_EQ(importButton()->text(), "Take 25 lines; 1 doubtful stays out (Enter twice)");
    leave(dialog);
}

TEST_F(NotebookWindow, WhatIsNoNotebookIsSaidAndNothingWritten) {
    openGarage(true);
    const auto before = everything();
    const QByteArray picture("\x89PNG\r\n\x1A\n\0\0\0\rIHDR", 16);
    EXPECT_EQ(import(write("photo.csv", picture)), nullptr);
    EXPECT_EQ(import(write("empty.csv", "")), nullptr);
    EXPECT_EQ(import(garage_->in("nowhere.csv")), nullptr);
    ASSERT_EQ(prompts_.reported.size(), 3);
    EXPECT_TRUE(prompts_.reported[0].contains("is no text")) << prompts_.reported[0].toStdString();
    EXPECT_TRUE(prompts_.reported[1].contains("is blank")) << prompts_.reported[1].toStdString();
    EXPECT_TRUE(prompts_.reported[2].contains("can't be read")) << prompts_.reported[2].toStdString();
    const std::map<const char*, const char*> missing{
        {"machine;hours\nHeron 250;1,0\nHeron 250;1,2\n", "no column of dates"},
        {"date;hours\n07.03.2026;1,0\n08.03.2026;1,2\n", "no column for the machine"},
        {"date;machine;colour\n07.03.2026;Heron 250;red\n08.03.2026;Heron 250;blue\n", "no column of hours"},
        {"just a line\nand another\n", "has no columns"}};
    for (const auto& [text, why] : missing) {
        auto* dialog = import(write("missing.csv", text));
        ASSERT_NE(dialog, nullptr) << text;
        EXPECT_TRUE(words().contains(why)) << words().toStdString();
        EXPECT_FALSE(importButton()->isEnabled());
        press(Qt::Key_Return);
        EXPECT_TRUE(dialog->isVisible());
        leave(dialog);
    }
    EXPECT_EQ(everything(), before);
}

TEST_F(NotebookWindow, WideTextIsReadAsWell) {
    openGarage(true);
    QStringEncoder wide(QStringConverter::Utf16LE, QStringConverter::Flag::WriteBom);
    const QByteArray bytes = wide.encode(QString::fromUtf8(sample("outings.csv")));
    auto* dialog = import(write("wide.csv", bytes));
    ASSERT_NE(dialog, nullptr);
    EXPECT_EQ(tabs(), (QStringList{"taken 72", "doubtful 6", "refused 0"}));
    leave(dialog);
}

TEST_F(NotebookWindow, AColumnSetByHandIsJudgedAgainAndRemembered) {
    openGarage(true);
    const QByteArray text =
        "date;machine;hours;at the end\n"
        "07.03.2026;Heron 250;1,0;14,5\n08.03.2026;Heron 250;1,2;15,7\n14.03.2026;Heron 250;1,0;16,7\n"
        "15.03.2026;Heron 250;1,1;17,8\n";
    auto* dialog = import(write("own.csv", text));
    ASSERT_NE(dialog, nullptr);
    const int readings = total(1, 4).toInt();
    const auto end = static_cast<int>(notebook::Column::Meter);
    const auto none = static_cast<int>(notebook::Column::Unused);
    choose("notebook-column-3", readings > 0 ? none : end);
    EXPECT_EQ(total(1, 4).toInt(), readings > 0 ? 0 : 4) << "judged again";
    choose("notebook-column-2", none);
    EXPECT_EQ(hundredths(total(1, 3)), 0) << words().toStdString();
    leave(dialog);
    dialog = import(write("next.csv", text + "21.03.2026;Heron 250;1,0;18,8\n"));
    ASSERT_NE(dialog, nullptr);
    EXPECT_EQ(child<QComboBox>("notebook-column-2")->currentIndex(), none) << "as for the last notebook";
    child<QPushButton>("notebook-as-found")->click();
    QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
    EXPECT_EQ(child<QComboBox>("notebook-column-2")->currentIndex(),
              static_cast<int>(notebook::Column::Hours));
    leave(dialog);
}

TEST_F(NotebookWindow, SeparatorsMarksDatesAndNamesCanBeSet) {
    openGarage(true);
    auto* dialog = import(write("forms.csv",
                                "date;machine;hours\n03/04/2026;the red one;1.5\n04/04/2026;the red one;1.0\n"
                                "05/04/2026;the red one;2.0\n06/04/2026;the red one;1.5\n"));
    ASSERT_NE(dialog, nullptr);
    EXPECT_EQ(total(1, 0), "the red one") << "a machine of its own, as found";
    auto* names = child<QComboBox>("notebook-machine-0");
    choose("notebook-machine-0", names->findText("Heron 250"));
    EXPECT_EQ(total(1, 0), "Heron 250");
    EXPECT_EQ(hundredths(total(1, 3)), 600);
    choose("notebook-dates", 1);
    press(Qt::Key_Escape);
    back();
    dialog = import(garage_->in("forms.csv"));
    ASSERT_NE(dialog, nullptr);
    EXPECT_EQ(child<QComboBox>("notebook-dates")->currentIndex(), 1);
    EXPECT_EQ(child<QComboBox>("notebook-machine-0")->currentText(), "Heron 250");
    press(Qt::Key_Return);
    const auto& outings = garage_->book().ledger().all<usage::Outing>();
    ASSERT_EQ(outings.size(), 4U);
    EXPECT_EQ(outings.front().date, day("2026-03-04")) << "month first, as set";
    EXPECT_EQ(garage_->book().machines().size(), 2U);
}

TEST_F(NotebookWindow, AListOfChoicesOpensInsteadOfChangingOnTheWay) {
    openGarage(true);
    auto* dialog = importSample("outings.csv");
    ASSERT_NE(dialog, nullptr);
    auto* hours = child<QComboBox>("notebook-column-3");
    ASSERT_EQ(hours->currentIndex(), static_cast<int>(notebook::Column::Hours));
    hours->setFocus();
    press(Qt::Key_Up);
    ASSERT_TRUE(hours->view()->isVisible());
    QTest::keyClick(hours->view(), Qt::Key_Down);
    QTest::keyClick(hours->view(), Qt::Key_Escape);
    EXPECT_EQ(child<QComboBox>("notebook-column-3")->currentIndex(),
              static_cast<int>(notebook::Column::Hours));
    EXPECT_EQ(child<QComboBox>("notebook-column-4")->currentIndex(),
              static_cast<int>(notebook::Column::Meter));
    leave(dialog);
}

TEST_F(NotebookWindow, AnotherWindowsWordComesBeforeTheImport) {
    openGarage(true);
    auto* dialog = importSample("outings.csv");
    ASSERT_NE(dialog, nullptr);
    Workbench other([] { return QDateTime(QDate(2026, 5, 7), QTime(18, 5)); });
    ASSERT_EQ(other.open(garage_->path()).outcome, store::OpenOutcome::Opened);
    verbs::OutingDraft draft;
    draft.outing.machine = garage_->machine("Heron 250");
    draft.outing.date = day("2026-03-07");
    draft.outing.hours = units::Hours{200};
    ASSERT_TRUE(other.perform(
        [draft](const verbs::VerbContext& context) { return verbs::logOuting(context, draft); }));
    press(Qt::Key_Return);  // to the doubtful lines
    press(Qt::Key_Return);
    EXPECT_TRUE(dialog->isVisible());
    EXPECT_TRUE(words().contains("changed meanwhile")) << words().toStdString();
    EXPECT_EQ(tab(4), "taken before 1");
    EXPECT_EQ(garage_->book().ledger().all<usage::Outing>().size(), 1U);
    press(Qt::Key_Return);
    press(Qt::Key_Return);
    EXPECT_EQ(garage_->book().ledger().all<usage::Outing>().size(), 71U)
        << "that one, and 70 of the 71 lines";
}

TEST_F(NotebookWindow, CellsAreNeverMarkup) {
    openGarage(true);
    auto* dialog = import(write("tags.csv",
                                "date;machine;hours;<b>note</b>\n"
                                "07.03.2026;<h1>Heron</h1>;1,0;<img src=x>\n"
                                "08.03.2026;<h1>Heron</h1>;1,0;&amp;\n09.03.2026;<h1>Heron</h1>;1,0;\n"));
    ASSERT_NE(dialog, nullptr);
    for (const auto* label : dialog->findChildren<QLabel*>())
        EXPECT_EQ(label->textFormat(), Qt::PlainText) << label->text().toStdString();
    EXPECT_TRUE(cell(0, NotebookLines::CellsAt).contains("<img src=x>"));
    const auto tip = table()->model()->index(0, NotebookLines::CellsAt).data(Qt::ToolTipRole).toString();
    EXPECT_TRUE(tip.contains("&lt;img")) << tip.toStdString();
    leave(dialog);
}

TEST_F(NotebookWindow, ANameIsNoPlaceForFigures) {
    openGarage(true);
    auto* dialog = import(write("names.csv",
                                "date;machine;hours\n07.03.2026;Heron %2;1,0\n08.03.2026;Heron %2;1,0\n"
                                "09.03.2026;Heron %2;1,0\n"));
    ASSERT_NE(dialog, nullptr);
    QStringList seen;
    for (const auto* label : dialog->findChildren<QLabel*>())
        seen << label->text();
    EXPECT_TRUE(seen.filter("Heron %2").join(QLatin1Char('\n')).contains(", 3 lines"))
        << seen.join(QLatin1Char('\n')).toStdString();
    leave(dialog);
}

}  // namespace
}  // namespace wm::ui

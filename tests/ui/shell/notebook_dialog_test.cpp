// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// A notebook kept as CSV, from the File menu into the garage and back out by undo. What the sample adds up to
// is reckoned here from its cells, by nothing that the program uses.
#include "ui/shell/notebook_dialog.h"

#include <QAbstractItemModelTester>
#include <QComboBox>
#include <QFile>
#include <QLabel>
#include <QProgressDialog>
#include <QPushButton>
#include <QStringEncoder>
#include <QTabBar>
#include <QTimer>
#include <array>
#include <cmath>
#include <map>
#include <set>

#include "core/exchange/json.h"
#include "tests/ui/window.h"

namespace wm::ui {
namespace {

QByteArray sample(const char* name) {
    QFile file(QStringLiteral(WM_SOURCE_DIR "/tests/data/notebook/") + QLatin1String(name));
    EXPECT_TRUE(file.open(QIODevice::ReadOnly)) << name;
    return file.readAll();
}

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

class NotebookWindow : public WindowTest {
  protected:
    void openGarage(bool withMachines) {
        openOn(Garage::Fill::Empty);
        garage_->say(
            [](const ledger::Pen& pen) { return ledger::nameGarage(pen, "Alder Yard", day("2026-11-25")); });
        if (withMachines) {
            garage_->addMachine("Heron 250", "four-stroke-motocross", units::Hours{1250});
            garage_->addMachine("Sorrel 450", "four-stroke-motocross", units::Hours{8830});
        }
    }
    QString write(const char* name, const QByteArray& bytes) {
        const QString path = garage_->in(QString::fromLatin1(name));
        QFile file(path);
        EXPECT_TRUE(file.open(QIODevice::WriteOnly));
        file.write(bytes);
        return path;
    }
    // The platform of the tests brings no window back by itself.
    void back() {
        QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
        window_->activateWindow();
        QTest::qWait(120);  // a key of the shell shows that it was pressed for a tenth of a second
        EXPECT_TRUE(QTest::qWaitForWindowActive(window_.get()));
    }
    // By the File menu and its letter, as the hands go.
    NotebookDialog* import(const QString& path) {
        back();
        prompts_.paths.push_back(path);
        QTimer::singleShot(0, window_.get(), [] {
            if (auto* menu = QApplication::activePopupWidget())
                QTest::keyClick(menu, Qt::Key_T);
        });
        press(Qt::Key_F, Qt::AltModifier);
        auto* dialog = window_->findChild<NotebookDialog*>();
        if (dialog != nullptr)
            dialog->activateWindow();
        EXPECT_TRUE(dialog == nullptr || QTest::qWaitForWindowActive(dialog));
        return dialog;
    }
    NotebookDialog* importSample(const char* name) { return import(write(name, sample(name))); }
    void leave(NotebookDialog* dialog) {
        QTest::keyClick(dialog, Qt::Key_Escape);
        back();
    }
    void takeAll(const char* name) {
        ASSERT_NE(importSample(name), nullptr);
        press(Qt::Key_A);
        press(Qt::Key_Return);
        back();
        ASSERT_EQ(window_->findChild<NotebookDialog*>(), nullptr);
    }
    QString words() { return child<QLabel>("notebook-words")->text(); }
    QString tab(int at) { return child<QTabBar>("notebook-verdicts")->tabText(at); }
    QStringList tabs() { return {tab(1), tab(2), tab(3)}; }
    QPushButton* importButton() { return child<QPushButton>("notebook-import"); }
    NotebookTable* table() { return child<NotebookTable>("notebook-lines"); }
    QString cell(int row, int column) { return table()->model()->index(row, column).data().toString(); }
    QString total(int row, int column) {
        return child<QLabel>(QStringLiteral("notebook-total-%1-%2").arg(row).arg(column).toLatin1())->text();
    }
    QString status() { return child<QLabel>("status-words")->text(); }
    /// Stands for the whole content of the file: a failure would else print all of it.
    std::size_t everything() { return std::hash<std::string>{}(exchange::toJson(garage_->book().ledger())); }
    void choose(const char* name, int index) {
        auto* choice = child<QComboBox>(name);
        choice->setFocus();
        choice->setCurrentIndex(index);
        emit choice->activated(index);
        QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
    }
};

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
    ledger::OutingDraft draft;
    draft.outing.machine = garage_->machine("Heron 250");
    draft.outing.date = day("2026-03-07");
    draft.outing.hours = units::Hours{200};
    ASSERT_TRUE(other.perform([draft](const ledger::Pen& pen) { return ledger::logOuting(pen, draft); }));
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

TEST_F(NotebookWindow, ALongReadingShowsHowFarItIsAndCanBeStopped) {
    openGarage(true);
    QByteArray text = "date;machine;hours;meter;note\n";
    for (int at = 0; at < 20'000; ++at)
        text += QDate(2020, 1, 1).addDays(at / 30).toString(Qt::ISODate).toLatin1() + ";Heron 250;0,1;;" +
                QByteArray::number(at) + "\n";
    const auto before = everything();
    const QString path = write("long.csv", text);
    bool stopped = false;
    QTimer watch;
    QObject::connect(&watch, &QTimer::timeout, window_.get(), [this, &stopped] {
        auto* work = window_->findChild<QProgressDialog*>("long-work");
        if (work == nullptr || !work->isVisible())
            return;
        stopped = true;
        QTest::keyClick(work, Qt::Key_Escape);
    });
    watch.start(5);
    EXPECT_EQ(import(path), nullptr);
    EXPECT_TRUE(stopped);
    EXPECT_TRUE(status().contains("Stopped")) << status().toStdString();
    EXPECT_EQ(everything(), before);
}

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

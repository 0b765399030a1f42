// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/notebook_words.h"

#include <QStringList>
#include <algorithm>
#include <array>

#include "ui/words/error_words.h"
#include "ui/words/figures.h"
#include "ui/words/tr.h"

namespace wm::ui {

namespace {

using notebook::Column;
using notebook::Cure;
using notebook::Defect;
using notebook::Line;
using notebook::Remark;

struct DefectWords {
    Defect defect;
    const char* reason;   ///< %1 what stands there, %2 what is likely
    const char* cure;     ///< with something likely; nothing: it has none of its own
    const char* without;  ///< the cure if nothing is likely
};

constexpr DefectWords kDefectWords[] = {
    DefectWords{Defect::InFile, QT_TR_NOOP("in the file already"), nullptr, nullptr},
    DefectWords{Defect::StruckInFile, QT_TR_NOOP("was in the file and has been struck: not taken again"),
                nullptr, nullptr},
    DefectWords{Defect::NewMeter, QT_TR_NOOP("read as a renewed meter"), nullptr, nullptr},
    DefectWords{Defect::Unlogged,
                QT_TR_NOOP("the meter ran %1 h more than was noted: kept as unlogged riding"), nullptr,
                nullptr},
    DefectWords{Defect::UnknownWord, QT_TR_NOOP("%1 is no word that is counted: kept in the note"), nullptr,
                nullptr},
    DefectWords{Defect::NoTask, QT_TR_NOOP("%1 is no task of this machine: kept in its own words"), nullptr,
                nullptr},
    DefectWords{Defect::DateForm, QT_TR_NOOP("the date %1 is written otherwise than on the other lines"),
                QT_TR_NOOP("date %2"), nullptr},
    DefectWords{Defect::DateFar, QT_TR_NOOP("the date %1 is far from the lines around it"),
                QT_TR_NOOP("date %2"), nullptr},
    DefectWords{Defect::DateOrder, QT_TR_NOOP("the date %1 is out of the order of the lines around it"),
                QT_TR_NOOP("date %2"), nullptr},
    DefectWords{Defect::NoYear, QT_TR_NOOP("the date %1 has no year"), QT_TR_NOOP("date %2"), nullptr},
    DefectWords{Defect::DateMissing, QT_TR_NOOP("there is no date"),
                QT_TR_NOOP("date %2, as on the line above"), nullptr},
    DefectWords{Defect::NameOtherwise, QT_TR_NOOP("the machine is written otherwise: %1"),
                QT_TR_NOOP("machine %2"), nullptr},
    DefectWords{Defect::NameNear, QT_TR_NOOP("there is no machine %1"), QT_TR_NOOP("machine %2"), nullptr},
    DefectWords{Defect::NameRare,
                QT_TR_NOOP("hardly any line speaks of a machine %1, and the file doesn't know it"),
                QT_TR_NOOP("add the machine %2"), nullptr},
    DefectWords{Defect::NameMissing, QT_TR_NOOP("there is no machine"),
                QT_TR_NOOP("machine %2, as on the line above"), nullptr},
    DefectWords{Defect::TwoMachines, QT_TR_NOOP("two machines on one line: %1"),
                QT_TR_NOOP("one entry each for %2"), nullptr},
    DefectWords{Defect::WrongMachine, QT_TR_NOOP("the meter figure is not that of %1"),
                QT_TR_NOOP("machine %2, whose meter it fits"), nullptr},
    DefectWords{Defect::HoursForm, QT_TR_NOOP("the hours %1 are written otherwise than on the other lines"),
                QT_TR_NOOP("hours %2"), nullptr},
    DefectWords{Defect::HoursUnit,
                QT_TR_NOOP("the hours %1 don't fit: minutes, or the mark at another place"),
                QT_TR_NOOP("hours %2"), nullptr},
    DefectWords{Defect::HoursTooMany, QT_TR_NOOP("the hours %1 are more than the meter ran or a day holds"),
                QT_TR_NOOP("hours %2"), QT_TR_NOOP("take it without its hours")},
    DefectWords{Defect::HoursUnreadable, QT_TR_NOOP("the hours %1 can't be read"), nullptr,
                QT_TR_NOOP("take it without its hours")},
    DefectWords{Defect::MeterRunsBack, QT_TR_NOOP("the meter reading %1 is lower than the one before"),
                QT_TR_NOOP("meter %2"), QT_TR_NOOP("take it without its reading")},
    DefectWords{Defect::MeterJumps, QT_TR_NOOP("the meter reading %1 does not fit the ones around it"),
                QT_TR_NOOP("meter %2"), QT_TR_NOOP("take it without its reading")},
    DefectWords{Defect::MeterReplaced, QT_TR_NOOP("the meter begins anew at %1 after %2, without a word why"),
                QT_TR_NOOP("the meter was renewed before this reading"), nullptr},
    DefectWords{Defect::MeterUnreadable, QT_TR_NOOP("the meter reading %1 can't be read"), nullptr,
                QT_TR_NOOP("take it without its reading")},
    DefectWords{Defect::Twice, QT_TR_NOOP("the same line stands further up already"), nullptr,
                QT_TR_NOOP("leave it out")},
    DefectWords{Defect::OtherwiseInFile, QT_TR_NOOP("the file has other figures for this machine and day"),
                nullptr, QT_TR_NOOP("leave it out")},
    DefectWords{Defect::MinutesUnit, QT_TR_NOOP("%1 minutes look like hours"), QT_TR_NOOP("%2 minutes"),
                nullptr},
    DefectWords{Defect::UsedUnit, QT_TR_NOOP("%1 is a thousand times off what is usual"), QT_TR_NOOP("%2"),
                nullptr},
    DefectWords{Defect::UsedUnreadable, QT_TR_NOOP("what was used, %1, can't be read as amounts"), nullptr,
                QT_TR_NOOP("keep it in the note, take nothing off the shelf")},
    DefectWords{Defect::CellsTooMany, QT_TR_NOOP("there are %1 cells on a line of %2"), nullptr, nullptr},
    DefectWords{Defect::DateUnreadable, QT_TR_NOOP("the date %1 can't be read"), nullptr, nullptr},
    DefectWords{Defect::DateImpossible, QT_TR_NOOP("the date %1 lies after today"), nullptr, nullptr},
    DefectWords{Defect::NameUnknown, QT_TR_NOOP("no machine can be made out of %1"), nullptr, nullptr},
    DefectWords{Defect::BeforeGone, QT_TR_NOOP("on %1 the machine had gone: its last day was %2"), nullptr,
                nullptr},
    DefectWords{Defect::Negative, QT_TR_NOOP("the hours %1 are below zero"), nullptr, nullptr},
    DefectWords{Defect::NothingSaid, QT_TR_NOOP("it says nothing that could be noted"), nullptr, nullptr},
    DefectWords{Defect::Formula, QT_TR_NOOP("there is a formula, not its figure: %1"), nullptr, nullptr},
    DefectWords{Defect::Total, QT_TR_NOOP("it adds up other lines"), nullptr, nullptr}};

const DefectWords& wordsOf(Defect defect) {
    return *std::find_if(std::begin(kDefectWords), std::end(kDefectWords),
                         [defect](const DefectWords& words) { return words.defect == defect; });
}

QString filled(const char* words, const Remark& remark, bool quotes) {
    const QString given = QString::fromStdString(remark.given);
    const QString likely = QString::fromStdString(remark.likely).simplified();
    const bool figure = remark.defect == Defect::Unlogged || remark.defect == Defect::CellsTooMany;
    const QString all = tr(words);
    const QString first = quotes && !figure ? quoted(given) : given.simplified();
    return all.contains(QLatin1String("%2")) ? all.arg(first, likely) : all.arg(first);
}

}  // namespace

QString verdictWord(notebook::Verdict verdict) {
    switch (verdict) {
        case notebook::Verdict::Taken:
            return tr("taken");
        case notebook::Verdict::Doubtful:
            return tr("doubtful");
        case notebook::Verdict::Refused:
            break;
    }
    return tr("refused");
}

QString reasonFor(const Line& line) {
    QStringList reasons;
    for (const Remark& remark : line.remarks) {
        const QString words = tr(wordsOf(remark.defect).reason);
        reasons << (words.contains(QLatin1String("%1")) ? filled(wordsOf(remark.defect).reason, remark, true)
                                                        : words);
        if (remark.defect == Defect::NewMeter && !remark.likely.empty())
            reasons.back() += tr(", the old one showed %1").arg(QString::fromStdString(remark.likely));
    }
    return reasons.join(QStringLiteral("; "));
}

QString cureFor(const Line& line) {
    if (line.verdict != notebook::Verdict::Doubtful || line.cure == Cure::None)
        return {};
    if (line.cure == Cure::LeaveOut)
        return tr("leave it out");
    QStringList cures;
    for (const Remark& remark : line.remarks) {
        const DefectWords& words = wordsOf(remark.defect);
        if (words.cure != nullptr && !remark.likely.empty())
            cures << tr(words.cure).replace(QLatin1String("%2"), QString::fromStdString(remark.likely));
        else if (words.without != nullptr)
            cures << tr(words.without);
    }
    return cures.join(QStringLiteral("; "));
}

namespace {

QString tooLargeWords(const base::Error& error, const QString& file) {
    const QString place = QString::fromStdString(error.field.text());
    const QString most = QString::fromStdString(error.wanted);
    if (place == QLatin1String("bytes"))
        return tr("%1 is larger than a notebook can be (%2 MB): check that it is the right file, or part it "
                  "into several.")
            .arg(file)
            .arg(most.toLongLong() / (1024 * 1024));
    if (place == QLatin1String("lines"))
        return tr("%1 has more than %2 lines: check that it is the right file, or part it into several.")
            .arg(file, most);
    if (place == QLatin1String("cells"))
        return tr("%1 has more than %2 cells: check that it is the right file, or part it into several.")
            .arg(file, most);
    return tr("%1 has more than %2 cells on %3: check that it is the right file.").arg(file, most, place);
}

}  // namespace

QString notebookRefusal(const base::Error& error, const QString& fileName) {
    const QString file = quoted(fileName);
    using base::Fault;
    if (error.fault == Fault::NotText)
        return tr("%1 is no text but a picture, a workbook or the like: save the sheet as CSV and choose "
                  "that "
                  "file.")
            .arg(file);
    if (error.fault == Fault::TooLarge)
        return tooLargeWords(error, file);
    if (error.fault == Fault::NoColumns)
        return tr("%1 has no columns: save the sheet as CSV, its cells parted by semicolons, commas or tabs.")
            .arg(file);
    if (error.fault == Fault::NothingNew)
        return tr("Nothing in %1 is new to this file.").arg(file);
    if (error.fault == Fault::Stopped)
        return tr("Stopped; nothing was taken from %1.").arg(file);
    if (error.fault == Fault::NoDates)
        return tr("%1 has no column of dates: say which one it is, or add it.").arg(file);
    if (error.fault == Fault::NoMachine)
        return tr("%1 has no column for the machine: say which one it is, or which machine all of it is "
                  "about.")
            .arg(file);
    if (error.fault == Fault::NoFigures)
        return tr("%1 has no column of hours, readings, kilometres, washes or jobs: say which one it is.")
            .arg(file);
    if (error.fault == Fault::Empty)
        return tr("%1 is blank: choose the file with the notebook in it.").arg(file);
    return wordsFor(error);
}

QString columnWord(Column column) {
    switch (column) {
        case Column::Unused:
            return tr("not used");
        case Column::What:
            return tr("what it was");
        case Column::Meter:
            return tr("meter shows");
        case Column::Hours:
            return tr("hours ridden");
        case Column::Distance:
            return tr("kilometres");
        case Column::Date:
            return tr("date");
        case Column::Machine:
            return tr("machine");
        case Column::Starts:
            return tr("starts");
        case Column::Ground:
            return tr("ground");
        case Column::Wash:
            return tr("wash");
        case Column::Crash:
            return tr("crash");
        case Column::Rider:
            return tr("rider");
        case Column::Job:
            return tr("job");
        case Column::Used:
            return tr("used");
        case Column::Minutes:
            return tr("minutes");
        case Column::Note:
            break;
    }
    return tr("note");
}

QString countsOf(const notebook::Notebook& notebook) {
    using notebook::Verdict;
    const auto known = std::count_if(notebook.lines.begin(), notebook.lines.end(),
                                     [](const Line& line) { return line.inFile; });
    const auto cures = std::count_if(notebook.lines.begin(), notebook.lines.end(), [](const Line& line) {
        return line.verdict == Verdict::Doubtful && line.cure != Cure::None;
    });
    QString words = tr("%1 taken").arg(notebook.count(Verdict::Taken) - static_cast<std::size_t>(known));
    if (known > 0)
        words += tr(", %1 in the file already").arg(known);
    words += tr(", %1 doubtful").arg(notebook.count(Verdict::Doubtful));
    if (cures > 0)
        words += tr(" (%1 with a cure)").arg(cures);
    return words + tr(", %1 refused").arg(notebook.count(Verdict::Refused));
}

QString separatorWord(char separator) {
    switch (separator) {
        case ';':
            return tr("semicolon");
        case ',':
            return tr("comma");
        case '\t':
            return tr("tab");
        case '|':
            return tr("upright bar");
        default:
            return QString(QLatin1Char(separator));
    }
}

QString decimalWord(char decimal) {
    return decimal == ',' ? tr("comma: 1,5") : tr("point: 1.5");
}

QString dateFormWord(notebook::DateForm form) {
    switch (form) {
        case notebook::DateForm::YearFirst:
            return tr("year first: 2026-03-07");
        case notebook::DateForm::DayFirst:
            return tr("day first: 7.3.2026");
        case notebook::DateForm::MonthFirst:
            return tr("month first: 3/7/2026");
        case notebook::DateForm::Serial:
            break;
    }
    return tr("days counted: 46088");
}

QString totalsWords(const notebook::Totals& totals) {
    QStringList words;
    const auto add = [&words](std::size_t count, QString (*said)(int)) {
        if (count > 0)
            words << said(static_cast<int>(count));
    };
    add(totals.outings, [](int n) { return tr("%n outing(s)", nullptr, n); });
    if (totals.hours.count() > 0)
        words << tr("%1 as noted").arg(hoursWords(totals.hours));
    add(totals.readings, [](int n) { return tr("%n reading(s)", nullptr, n); });
    add(totals.washes, [](int n) { return tr("%n wash(es)", nullptr, n); });
    add(totals.crashes, [](int n) { return tr("%n crash(es)", nullptr, n); });
    add(totals.jobs, [](int n) { return tr("%n job(s)", nullptr, n); });
    return words.join(QStringLiteral(", "));
}

QString cellsInWords(const std::vector<std::string>& cells) {
    QStringList filled;
    for (const std::string& cell : cells)
        if (QString words = QString::fromStdString(cell).simplified(); !words.isEmpty())
            filled << words;
    QString all = filled.join(QStringLiteral(" · "));
    for (QChar& c : all)
        if (c.category() == QChar::Other_Control || c.category() == QChar::Other_Format)
            c = QChar(0xFFFD);
    return all;
}

}  // namespace wm::ui

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/drawer_words.h"

#include <cmath>

#include "ui/words/figures.h"
#include "ui/words/name_words.h"
#include "ui/words/tr.h"

namespace wm::ui {

using fastening::ToolState;

namespace {

QString plain(const units::Decimal& value) {
    return text(value.text(decimalMark()));
}

QString unitWords(units::TorqueUnit unit) {
    const auto name = base::nameOf(unit);
    return QString::fromUtf8(name.data(), static_cast<qsizetype>(name.size()));
}

QString timesWords(std::int64_t times) {
    return times == 1   ? tr("once")
           : times == 2 ? tr("twice")
                        : tr("%n time(s)", nullptr, static_cast<int>(times));
}

}  // namespace

QString rangeWords(const fastening::Tool& tool) {
    return tr("%1 to %2 %3").arg(plain(tool.low), plain(tool.high), unitWords(tool.unit));
}

QString typeWords(const fastening::Tool& tool) {
    const auto permitted = fastening::permittedPercent(tool);
    if (!permitted)
        return {};
    const auto name = base::nameOf(tool.type);
    const QString words = tr("%1 ±%2 %")
                              .arg(QString::fromUtf8(name.data(), static_cast<qsizetype>(name.size())))
                              .arg(*permitted);
    return fastening::permittedFromMemory(tool) ? tr("%1, from memory").arg(words) : words;
}

QString standingWords(const fastening::ToolStanding& standing, calendar::Date today) {
    const QString cycles = tr("%1 of %2 cycles").arg(standing.cycles).arg(standing.cyclesAllowed);
    switch (standing.state) {
        case ToolState::Unknown:
            return tr("never checked, %n cycle(s) on record", nullptr, static_cast<int>(standing.cycles));
        case ToolState::Out:
            return tr("OUT OF TOLERANCE since %1, not for use").arg(dayWords(standing.last->date, today));
        case ToolState::DueByDate:
            return tr("check was due on %1, %2").arg(dayWords(*standing.nextOn, today), cycles);
        case ToolState::DueByCycles:
            return tr("check is due: %1").arg(cycles);
        case ToolState::InHand:
            break;
    }
    return tr("checked until %1, %2").arg(dayWords(*standing.nextOn, today), cycles);
}

bool wantsCheck(const fastening::ToolStanding& standing) {
    return standing.state != ToolState::InHand;
}

QString fitWords(const fastening::Fit& fit) {
    const int share = static_cast<int>(std::lround(100 * fit.share));
    if (fit.reach == fastening::Reach::Outside)
        return tr("doesn't reach it");
    if (fit.bottomFifth)
        return tr("at the edge: %1 % of its capacity, and under a fifth it isn't checked").arg(share);
    if (fit.betweenSteps)
        return tr("at the edge: its scale has no such step");
    return tr("serves it, at %1 % of its capacity").arg(share);
}

QString recallWords(const book::ToolRecall& recall, calendar::Date today) {
    const fastening::Calibration& failed = *recall.recall.failed;
    const QString name = text(recall.tool->name);
    const QString when = dayWords(failed.date, today);
    QString words = failed.worst ? tr("%1 was found out of tolerance on %2: %3 % at the worst.")
                                       .arg(name, when, plain(*failed.worst))
                                 : tr("%1 was found out of tolerance on %2.").arg(name, when);
    words += QLatin1Char(' ');
    words +=
        recall.recall.lastGood != nullptr
            ? tr("It was last known to be good on %1.").arg(dayWords(recall.recall.lastGood->date, today))
            : tr("It was never checked before.");
    return words;
}

QString recallLineWords(const book::Book& book, const book::ToolRecall& recall,
                        const fastening::RecallLine& line) {
    const auto* joint = book.joint(line.tightened->joint);
    if (joint == nullptr)
        return {};
    const auto doubt = book::stillDoubted(book, recall, line);
    const auto* machine = book.ledger().find<items::Machine>(doubt ? doubt->machine : joint->machine);
    const auto* by = line.tightened->by ? book.ledger().find<items::Person>(*line.tightened->by) : nullptr;
    QString words = tr("%1, %2: torqued %3")
                        .arg(text(joint->name), machine == nullptr ? QString() : text(machine->name),
                             timesWords(static_cast<std::int64_t>(line.times)));
    words += (line.times == 1 ? tr(", on %1") : tr(", last on %1"))
                 .arg(dayWords(line.tightened->date, book.today()));
    if (by != nullptr)
        words += tr(" by %1").arg(text(by->name));
    if (line.since != nullptr)
        words += line.since->kind == fastening::MarkKind::Confirmed
                     ? tr("; torqued again on %1").arg(dayWords(line.since->date, book.today()))
                     : tr("; loosened since, on %1").arg(dayWords(line.since->date, book.today()));
    else if (!doubt)
        words += tr("; re-checked");
    if (doubt && line.since != nullptr)
        words += tr(", but not with a tool that was checked and reaches it");
    if (doubt)
        words += tr("; TO RE-CHECK");
    return words;
}

QString looseningWords(const fastening::Loosening& figures) {
    QString words =
        tr("moved %1 in %2, %3 ridden between")
            .arg(timesWords(figures.moved), tr("%n check(s)", nullptr, static_cast<int>(figures.checks)),
                 hoursWords(figures.ridden));
    if (figures.degrees > 0)
        words += tr(", furthest %1\u00B0").arg(figures.degrees);
    return words;
}

QString comparisonWords(const book::CameLoose& line) {
    if (!line.comparison || !line.comparison->stands)
        return {};
    const fastening::Comparison& found = *line.comparison;
    const auto oneIn = static_cast<qlonglong>(std::floor(1 / found.chance));
    return tr("%1: loosens more often than its kind, %2 in %3 against %4 in %5 of the other %6 joints. "
              "If it were like them, that would happen in 1 of %7 cases (exact conditional test of two "
              "rates; "
              "%8 joints compared). Look at bolt, locking, washer and seat, not at the habit of tightening "
              "it.")
        .arg(text(line.joint->name), timesWords(found.moved), hoursWords(found.ridden),
             found.othersMoved == 0 ? tr("never") : timesWords(found.othersMoved),
             hoursWords(found.othersRidden), nameWords(line.joint->kind), QString::number(oneIn),
             QString::number(found.compared));
}

}  // namespace wm::ui

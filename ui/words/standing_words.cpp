// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/standing_words.h"

#include <algorithm>
#include <cmath>

#include "core/book/narrowing.h"
#include "core/explain/why.h"
#include "ui/words/figures.h"
#include "ui/words/tr.h"
#include "ui/words/why_words.h"

namespace wm::ui {

namespace {

using outlook::StandingKind;

QString happeningWords(upkeep::Happening happening) {
    using upkeep::Happening;
    switch (happening) {
        case Happening::Wash:
            return tr("washed");
        case Happening::PressureWash:
            return tr("pressure-washed");
        case Happening::MudDay:
            return tr("ridden in mud");
        case Happening::Crash:
            return tr("crashed");
        case Happening::BeforeRace:
            return tr("before each race");
        case Happening::Job:
            break;
    }
    return tr("after a job,");
}

QString doneWords(const book::Book& book, const upkeep::Record& record) {
    QString words = dayWords(record.date, book.today());
    if (record.meter)
        words += tr(" at %1").arg(hoursWords(*record.meter));
    if (const auto* person = record.by ? book.ledger().find<items::Person>(*record.by) : nullptr)
        words += tr(", by %1").arg(text(person->name));
    return words;
}

QString overWords(const upkeep::LimitState& limit, std::int64_t by, upkeep::Counter counter) {
    // Without a high end nobody knows how much more.
    const QString words =
        (limit.behind.high ? tr("over %1") : tr("over %1 or more")).arg(countWords(by, counter));
    return limit.leftWithAllowance >= 0 ? tr("%1, allowed").arg(words) : words;
}

QString dueWords(const book::DueLine& line, calendar::Date today) {
    const auto& standing = line.standing;
    if (standing.kind == StandingKind::Overdue)
        return tr("now");
    if (standing.kind == StandingKind::MayBeOver)
        return tr("now, or later");
    if (!standing.likely)
        return tr("not within two years");
    QString words = dayWords(*standing.likely, today);
    if (standing.early && standing.late && *standing.early != *standing.late)
        words += tr(" (%1 to %2)").arg(dayWords(*standing.early, today), dayWords(*standing.late, today));
    return words;
}

// Months are counted out in days.
QString spanOf(std::int64_t amount, const upkeep::LimitState& limit) {
    const auto counter = limit.limit.counter;
    return countWords(amount, counter == upkeep::Counter::Months ? upkeep::Counter::Days : counter);
}

// "may be over, 12 to 31 h of 20 h"
QString mayBeOverWords(const upkeep::LimitState& limit) {
    const auto& behind = limit.behind;
    const QString amount = spanOf(limit.amount, limit);
    return behind.high ? tr("may be over, %1 to %2 of %3")
                             .arg(spanOf(behind.low, limit), spanOf(*behind.high, limit), amount)
                       : tr("may be over, %1 or more of %2").arg(spanOf(behind.low, limit), amount);
}

// "0.09 mm, limit 0.09 (inlet right)": where it is cut, the figures stay.
QString reachedWords(const upkeep::ReachedValue& reached) {
    const auto figure = [](const units::Decimal& value) { return text(value.text(decimalMark())); };
    const QString unit = reached.unit.empty() ? QString() : QChar(0x00A0) + text(reached.unit);
    return tr("%1%2, limit %3 (%4)")
        .arg(figure(reached.value), unit, figure(reached.limit), text(reached.name));
}

}  // namespace

QString howFar(const upkeep::LimitState& limit, calendar::Date today) {
    using upkeep::Reached;
    if (limit.reached == Reached::NobodyKnows)
        return limit.behind.low == 0
                   ? tr("%1 not known").arg(counterWords(limit.limit.counter))
                   : tr("%1 or more of %2").arg(spanOf(limit.behind.low, limit), spanOf(limit.amount, limit));
    if (limit.reached == Reached::MayBe)
        return mayBeOverWords(limit);
    if (limit.dueOn) {
        const int days = *limit.dueOn - today;
        return days < 0 ? overWords(limit, -days, upkeep::Counter::Days)
                        : tr("%1 left").arg(countWords(days, upkeep::Counter::Days));
    }
    const auto counter = limit.limit.counter;
    const std::int64_t likely = limit.behind.best.value_or(0) - limit.amount;
    // Reckoned from the most, as safety is; what the meter leaves open is not worth a word.
    const bool isAtMost = limit.behind.best && 20 * (-limit.left - likely) > limit.amount;
    const QString far =
        limit.left < 0 && isAtMost
            ? (likely > 0 ? tr("over %1, at most %2")
                                .arg(countWords(likely, counter), countWords(-limit.left, counter))
                          : tr("over by %1 at most").arg(countWords(-limit.left, counter)))
        : limit.left < 0              ? overWords(limit, -limit.left, counter)
        : limit.left > 0              ? tr("%1 left").arg(countWords(limit.left, counter))
        : limit.leftWithAllowance > 0 ? tr("run out, allowed")
                                      : tr("due now");
    // Never a weighted figure alone.
    const bool isWeighted = limit.raw && limit.raw->best && limit.raw->best != limit.behind.best;
    if (!isWeighted)
        return far;
    const QString ridden = countWords(*limit.raw->best, counter);
    return limit.raw->high ? tr("%1, %2 as ridden").arg(far, ridden)
                           : tr("%1, %2 or more as ridden").arg(far, ridden);
}

namespace {

QString howFarAlone(const book::DueLine& line, calendar::Date today) {
    const auto& countdown = line.countdown;
    if (countdown.value)
        return reachedWords(*countdown.value);
    if (countdown.triggered) {
        if (*countdown.triggered == upkeep::Happening::BeforeRace && line.standing.event)
            return tr("before %1").arg(dayWords(line.standing.event->first, today));
        return countdown.triggeredOn ? tr("%1 %2").arg(happeningWords(*countdown.triggered),
                                                       dayWords(*countdown.triggeredOn, today))
                                     : happeningWords(*countdown.triggered);
    }
    if (line.empty)
        return tr("%1 off since %2").arg(text(line.empty->position), dayWords(line.empty->since.date, today));
    if (countdown.noRecord)
        return line.standing.kind == StandingKind::Overdue       ? tr("due, no record")
               : line.standing.kind == StandingKind::BeforeEvent ? tr("before each race, no record")
                                                                 : tr("no record");
    if (const upkeep::LimitState* limit = book::decidingLimit(line))
        return howFar(*limit, today);
    return countdown.over ? tr("due now") : tr("when it happens");
}

}  // namespace

QString howFar(const book::DueLine& line, calendar::Date today) {
    const QString far = howFarAlone(line, today);
    return line.waitsFor && !line.empty ? tr("%1; waits, the %2 is off").arg(far, text(*line.waitsFor)) : far;
}

QString chanceWords(double chance) {
    // Neither 0 nor 100: what comes of riding still ahead is never certain.
    if (chance < 0.01)
        return tr("under 1 %");
    return chance > 0.99 ? tr("over 99 %") : tr("%1 %").arg(std::lround(100 * chance));
}

QString standingWords(const book::DueLine& line) {
    switch (line.standing.kind) {
        case StandingKind::InHand:
            return tr("in hand");
        case StandingKind::BeforeEvent:
            return line.standing.event ? tr("before %1").arg(text(line.standing.event->name))
                                       : tr("within two weeks");
        case StandingKind::MayBeOver:
            return tr("may be over");
        case StandingKind::Overdue:
            return tr("overdue");
        case StandingKind::NothingFitted:
            return tr("nothing fitted");
        case StandingKind::NoRecord:
            break;
    }
    return line.countdown.noRecord ? tr("no record") : tr("not known");
}

QString narrowingWords(const book::DueLine& line, calendar::Date today) {
    const auto asked = book::narrowingOf(line);
    if (!asked)
        return {};
    const QString day = asked->since ? dayWords(*asked->since, today) : QString();
    switch (asked->by) {
        case book::NarrowedBy::MeterThen:
            return tr("What did the meter show on %1?").arg(day);
        case book::NarrowedBy::HoursSince:
            return tr("How many hours ago, more closely?");
        case book::NarrowedBy::Past:
            return tr("How much had it done before, more closely?");
        case book::NarrowedBy::CountSince:
            return asked->since ? tr("How many %1 since %2?").arg(counterWords(asked->counter), day)
                                : tr("How many %1 so far?").arg(counterWords(asked->counter));
        case book::NarrowedBy::Day:
            break;
    }
    return tr("On which day, more closely?");
}

Why whyOf(const book::Book& book, const book::DueLine& line) {
    const auto today = book.today();
    Why why;
    why.title = tr("%1: %2").arg(text(line.task->name), howFar(line, today));
    why.tree = whyTree(explain::why(book, line), today).children;
    auto& lines = why.lines;
    if (line.last != nullptr)
        lines.emplace_back(tr("last done"), doneWords(book, *line.last));
    lines.emplace_back(tr("falls due"), line.standing.kind == StandingKind::NoRecord ? tr("nobody can say")
                                                                                     : dueWords(line, today));
    if (const QString question = narrowingWords(line, today); !question.isEmpty())
        lines.emplace_back(tr("would settle it"), question);
    if (line.standing.chance && line.standing.kind != StandingKind::Overdue)
        lines.emplace_back(line.standing.event ? tr("before the flag") : tr("within two weeks"),
                           chanceWords(*line.standing.chance));
    lines.emplace_back(tr("left undone"), consequenceWords(line.task->consequence));
    if (line.deferral != nullptr)
        lines.emplace_back(tr("put off"), text(line.deferral->reason));
    const QString page = line.task->page.empty() ? QString() : tr(" p. %1").arg(text(line.task->page));
    why.footnote =
        line.task->confirmed
            ? tr("Interval: %1%2, confirmed.").arg(text(line.task->source), page)
            : tr("Interval: %1%2, not confirmed against the manual.").arg(text(line.task->source), page);
    return why;
}

}  // namespace wm::ui

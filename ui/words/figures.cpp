// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/figures.h"

#include <QDate>
#include <QLocale>

#include "ui/words/languages.h"
#include "ui/words/tr.h"

namespace wm::ui {

namespace {

QDate qDate(calendar::Date day) {
    return QDate(day.year(), day.month(), day.day());
}

QString timesWords(upkeep::Counter counter, int n) {
    using Counter = upkeep::Counter;
    switch (counter) {
        case Counter::Outings:
            return tr("%n outing(s)", nullptr, n);
        case Counter::Starts:
            return tr("%n start(s)", nullptr, n);
        case Counter::Washes:
            return tr("%n wash(es)", nullptr, n);
        case Counter::MudDays:
            return tr("%n mud day(s)", nullptr, n);
        case Counter::Crashes:
            return tr("%n crash(es)", nullptr, n);
        case Counter::Months:
            return tr("%n month(s)", nullptr, n);
        case Counter::Hours:
        case Counter::Metres:
        case Counter::Days:
            break;
    }
    return tr("%n day(s)", nullptr, n);
}

QString hoursFigure(units::Hours hours) {
    return text(units::hoursText(hours, decimalMark()));
}

}  // namespace

char decimalMark() {
    return QLocale().decimalPoint() == QLatin1String(",") ? ',' : '.';
}

QString dayWords(calendar::Date day, calendar::Date today) {
    // The form of a day is the translation's own: in it ' encloses what is no part of the date.
    const QString form =
        day.year() == today.year() ? tr("ddd d MMM", "form of a day") : tr("ddd d MMM yyyy", "form of a day");
    return spokenLocale().toString(qDate(day), form);
}

QString awayWords(calendar::Date day, calendar::Date today) {
    const int days = day - today;
    if (days == 0)
        return tr("today");
    if (days == 1)
        return tr("tomorrow");
    if (days == -1)
        return tr("yesterday");
    return days > 0 ? tr("in %n day(s)", nullptr, days) : tr("%n day(s) ago", nullptr, -days);
}

QString hoursWords(units::Hours hours) {
    return hoursFigure(hours) + QStringLiteral(" h");
}

QString hoursWords(const usage::HoursBracket& hours) {
    if (hours.isExact())
        return hoursWords(hours.best);
    if (!hours.high && hours.low == hours.best)
        return tr("%1 or more").arg(hoursWords(hours.low));
    if (!hours.high)
        return tr("%1 h (%2 or more)").arg(hoursFigure(hours.best), hoursFigure(hours.low));
    return tr("%1 h (%2 to %3)")
        .arg(hoursFigure(hours.best), hoursFigure(hours.low), hoursFigure(*hours.high));
}

// What nobody read is not said to the minute, and "0.0 h or more" says nothing at all.
QString shortHoursWords(const usage::HoursBracket& hours) {
    if (hours.isExact())
        return hoursWords(hours.best);
    if (!hours.high && (hours.low > units::Hours{0} || hours.best == hours.low))
        return tr("%1 or more").arg(hoursWords(hours.low));
    return QStringLiteral("~") + hoursWords(units::Hours{(hours.best.count() + 5) / 10 * 10});
}

QString bracketWords(const upkeep::CountBracket& bracket, upkeep::Counter counter) {
    const auto words = [counter](std::int64_t count) { return countWords(count, counter); };
    if (bracket.high && bracket.low == *bracket.high)
        return words(bracket.low);
    if (!bracket.best || (!bracket.high && bracket.low == *bracket.best))
        return bracket.high ? tr("%1 to %2").arg(words(bracket.low), words(*bracket.high))
                            : tr("%1 or more").arg(words(bracket.low));
    return bracket.high
               ? tr("%1 (%2 to %3)").arg(words(*bracket.best), words(bracket.low), words(*bracket.high))
               : tr("%1 (%2 or more)").arg(words(*bracket.best), words(bracket.low));
}

QString countWords(std::int64_t amount, upkeep::Counter counter) {
    if (counter == upkeep::Counter::Hours)
        return hoursWords(units::Hours{amount});
    if (counter == upkeep::Counter::Metres)
        return text(units::kilometresText(units::Metres{amount}, decimalMark())) + QStringLiteral(" km");
    return timesWords(counter, static_cast<int>(amount));
}

QString counterWords(upkeep::Counter counter) {
    using Counter = upkeep::Counter;
    switch (counter) {
        case Counter::Hours:
            return tr("hours");
        case Counter::Metres:
            return tr("km");  // typed and shown in km everywhere
        case Counter::Outings:
            return tr("outings");
        case Counter::Starts:
            return tr("starts");
        case Counter::Washes:
            return tr("washes");
        case Counter::MudDays:
            return tr("mud days");
        case Counter::Crashes:
            return tr("crashes");
        case Counter::Days:
            return tr("days");
        case Counter::Months:
            break;
    }
    return tr("months");
}

QString amountWords(std::int64_t amount, upkeep::Unit unit) {
    switch (unit) {
        case upkeep::Unit::Millilitre:
            return QStringLiteral("%1 ml").arg(amount);
        case upkeep::Unit::Gram:
            return QStringLiteral("%1 g").arg(amount);
        case upkeep::Unit::Piece:
            break;
    }
    return QString::number(amount);
}

QString consequenceWords(upkeep::Consequence consequence) {
    using upkeep::Consequence;
    switch (consequence) {
        case Consequence::SafetyEvident:
            return tr("safety");
        case Consequence::SafetyHidden:
            return tr("safety, can't be felt");
        case Consequence::EndsRace:
            return tr("ends a race");
        case Consequence::CostsMoney:
            return tr("costs money");
        case Consequence::HiddenWear:
            break;
    }
    return tr("hidden wear");
}

}  // namespace wm::ui

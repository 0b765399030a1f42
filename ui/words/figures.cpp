// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/figures.h"

#include <QCoreApplication>
#include <QDate>
#include <QLocale>
#include <array>

namespace wm::ui {

namespace {

QString tr(const char* words, int n = -1) {
    return QCoreApplication::translate("Figures", words, nullptr, n);
}

QDate qDate(calendar::Date day) {
    return QDate(day.year(), day.month(), day.day());
}

struct Counted {
    const char* one;
    const char* many;
};

Counted wordsOf(upkeep::Counter counter) {
    using Counter = upkeep::Counter;
    switch (counter) {
        case Counter::Outings:
            return {QT_TRANSLATE_NOOP("Figures", "outing"), QT_TRANSLATE_NOOP("Figures", "outings")};
        case Counter::Starts:
            return {QT_TRANSLATE_NOOP("Figures", "start"), QT_TRANSLATE_NOOP("Figures", "starts")};
        case Counter::Washes:
            return {QT_TRANSLATE_NOOP("Figures", "wash"), QT_TRANSLATE_NOOP("Figures", "washes")};
        case Counter::MudDays:
            return {QT_TRANSLATE_NOOP("Figures", "mud day"), QT_TRANSLATE_NOOP("Figures", "mud days")};
        case Counter::Crashes:
            return {QT_TRANSLATE_NOOP("Figures", "crash"), QT_TRANSLATE_NOOP("Figures", "crashes")};
        case Counter::Months:
            return {QT_TRANSLATE_NOOP("Figures", "month"), QT_TRANSLATE_NOOP("Figures", "months")};
        case Counter::Hours:
        case Counter::Metres:
        case Counter::Days:
            break;
    }
    return {QT_TRANSLATE_NOOP("Figures", "day"), QT_TRANSLATE_NOOP("Figures", "days")};
}

QString hoursFigure(units::Hours hours) {
    return text(units::hoursText(hours, decimalMark()));
}

}  // namespace

char decimalMark() {
    return QLocale().decimalPoint() == QLatin1String(",") ? ',' : '.';
}

QString dayWords(calendar::Date day, calendar::Date today) {
    const QLocale english(QLocale::English, QLocale::UnitedKingdom);
    const QString shape =
        day.year() == today.year() ? QStringLiteral("ddd d MMM") : QStringLiteral("ddd d MMM yyyy");
    return english.toString(qDate(day), shape);
}

QString awayWords(calendar::Date day, calendar::Date today) {
    const int days = day - today;
    if (days == 0)
        return tr("today");
    if (days == 1)
        return tr("tomorrow");
    if (days == -1)
        return tr("yesterday");
    return days > 0 ? tr("in %1 days").arg(days) : tr("%1 days ago").arg(-days);
}

QString hoursWords(units::Hours hours) {
    return hoursFigure(hours) + QStringLiteral(" h");
}

QString hoursWords(const usage::HoursBracket& hours) {
    if (hours.isExact())
        return hoursWords(hours.best);
    if (!hours.high)
        return tr("%1 h (%2 or more)").arg(hoursFigure(hours.best), hoursFigure(hours.low));
    return tr("%1 h (%2 to %3)")
        .arg(hoursFigure(hours.best), hoursFigure(hours.low), hoursFigure(*hours.high));
}

QString shortHoursWords(const usage::HoursBracket& hours) {
    return (hours.isExact() ? QString() : QStringLiteral("~")) + hoursWords(hours.best);
}

QString countWords(std::int64_t amount, upkeep::Counter counter) {
    if (counter == upkeep::Counter::Hours)
        return hoursWords(units::Hours{amount});
    if (counter == upkeep::Counter::Metres)
        return text(units::kilometresText(units::Metres{amount}, decimalMark())) + QStringLiteral(" km");
    const Counted words = wordsOf(counter);
    return QStringLiteral("%1 %2").arg(amount).arg(tr(amount == 1 ? words.one : words.many));
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

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/entry/day_words.h"

#include <QLocale>
#include <QRegularExpression>
#include <QStringList>
#include <algorithm>

#include "ui/words/languages.h"
#include "ui/words/tr.h"

namespace wm::ui {

namespace {

using calendar::Date;

constexpr int kFurthest = 3660;  ///< days from today that a signed number may reach
constexpr int kDaysOfYear = 366;

constexpr int kDaysOfWeek = 7;
constexpr int kMonthsOfYear = 12;

// In English, which every file and every habit may bring along, and in the language that is spoken.
QStringList weekdays() {
    QStringList names;
    for (const QLocale& locale : {QLocale::c(), spokenLocale()})
        for (int day = 1; day <= kDaysOfWeek; ++day)
            names << locale.dayName(day).toLower();
    return names;
}

QStringList months() {
    QStringList names;
    for (const QLocale& locale : {QLocale::c(), spokenLocale()})
        for (int month = 1; month <= kMonthsOfYear; ++month)
            names << locale.monthName(month).toLower();
    return names;
}

// The place of the first name that begins with `typed`, from 1, in its round of so many; at least three
// letters.
std::optional<int> namedBy(const QStringList& names, int round, const QString& typed) {
    if (typed.size() < 3)
        return std::nullopt;
    for (int at = 0; at < names.size(); ++at)
        if (names[at].startsWith(typed))
            return at % round + 1;
    return std::nullopt;
}

bool begins(const QString& typed, const QString& english, const QString& spoken, int leastLetters) {
    return typed.size() >= leastLetters && (english.startsWith(typed) || spoken.toLower().startsWith(typed));
}

std::optional<Date> ofWeekday(const QString& typed, Date today, Lean lean) {
    const auto weekday = namedBy(weekdays(), kDaysOfWeek, typed);
    if (!weekday)
        return std::nullopt;
    if (lean == Lean::Past)
        return today.plusDays(-((today.isoWeekday() - *weekday + 7) % 7));
    return today.plusDays((*weekday - today.isoWeekday() + 7) % 7);
}

std::optional<Date> ofDistance(const QString& typed, Date today) {
    static const QRegularExpression shape(QStringLiteral("^([+-])\\s?(\\d{1,4})$"));
    const auto match = shape.match(typed);
    if (!match.hasMatch())
        return std::nullopt;
    const int days = match.captured(2).toInt();
    if (days > kFurthest)
        return std::nullopt;
    return today.plusDays(match.captured(1) == QLatin1String("-") ? -days : days);
}

// Without a year: the one on the side of today that `lean` names.
std::optional<Date> ofDayAndMonth(int day, int month, Date today, Lean lean) {
    auto date = calendar::makeDate(today.year(), month, day);
    if (!date)
        return std::nullopt;
    const int away = *date - today;
    const int turn = lean == Lean::Past ? (away > 0 ? -1 : 0) : (away < -kDaysOfYear / 2 ? 1 : 0);
    if (turn == 0)
        return *date;
    date = calendar::makeDate(today.year() + turn, month, day);
    return date ? std::optional(*date) : std::nullopt;
}

std::optional<Date> ofFigures(const QString& typed, Date today, Lean lean) {
    static const QRegularExpression dotted(
        QStringLiteral("^(\\d{1,2})\\.\\s?(\\d{1,2})(?:\\.\\s?(\\d{4})?)?$"));
    static const QRegularExpression named(
        QStringLiteral("^(\\d{1,2})\\.?\\s?(\\p{L}+)\\.?(?:\\s(\\d{4}))?$"));
    auto match = dotted.match(typed);
    std::optional<int> month;
    if (match.hasMatch()) {
        month = match.captured(2).toInt();
    } else {
        match = named.match(typed);
        if (match.hasMatch())
            month = namedBy(months(), kMonthsOfYear, match.captured(2));
    }
    if (!month)
        return std::nullopt;
    const int day = match.captured(1).toInt();
    if (match.captured(3).isEmpty())
        return ofDayAndMonth(day, *month, today, lean);
    const auto date = calendar::makeDate(match.captured(3).toInt(), *month, day);
    return date ? std::optional(*date) : std::nullopt;
}

}  // namespace

base::Result<Date> parseDay(std::string_view field, const QString& typed, Date today, Lean lean) {
    const QString words = typed.simplified().toLower();
    if (words.isEmpty())
        return base::refuse(base::Fault::Empty, std::string(field));
    if (words == QLatin1String("t") || words == QLatin1String("today") || words == tr("today").toLower())
        return today;
    if (begins(words, QLatin1String("yesterday"), tr("yesterday"), 2))
        return today.plusDays(-1);
    if (begins(words, QLatin1String("tomorrow"), tr("tomorrow"), 3))
        return today.plusDays(1);
    for (const auto& found :
         {ofDistance(words, today), ofWeekday(words, today, lean), ofFigures(words, today, lean)})
        if (found)
            return *found;
    const auto written = calendar::parseDate(field, words.toStdString());
    if (written || written.error().fault == base::Fault::Malformed)
        return written;
    return base::refuse(base::Fault::NotADate, std::string(field), typed.toStdString(),
                        lean == Lean::Past ? QT_TR_NOOP("today, -1, sat, 3 May or 2026-05-03")
                                           : QT_TR_NOOP("today, +7, sat, 3 May or 2026-05-03"));
}

std::optional<std::pair<Date, Date>> parseMonth(const QString& typed, Date today) {
    static const QRegularExpression shape(QStringLiteral("^(\\p{L}+)\\.?(?:\\s(\\d{4}))?$"));
    const auto match = shape.match(typed.simplified().toLower());
    const auto month = match.hasMatch() ? namedBy(months(), kMonthsOfYear, match.captured(1)) : std::nullopt;
    if (!month)
        return std::nullopt;
    const bool isBegun = *month <= today.month();
    const int year =
        match.captured(2).isEmpty() ? today.year() - (isBegun ? 0 : 1) : match.captured(2).toInt();
    const auto first = calendar::makeDate(year, *month, 1);
    if (!first || *first > today)
        return std::nullopt;
    return std::pair(*first, std::min(first->plusMonths(1).plusDays(-1), today));
}

}  // namespace wm::ui

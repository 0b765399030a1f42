// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/entry/day_words.h"

#include <QRegularExpression>
#include <QStringList>
#include <optional>

namespace wm::ui {

namespace {

using calendar::Date;

constexpr int kFurthest = 3660;  ///< days from today that a signed number may reach
constexpr int kDaysOfYear = 366;

const QStringList& weekdays() {
    static const QStringList names{"monday", "tuesday",  "wednesday", "thursday",
                                   "friday", "saturday", "sunday"};
    return names;
}

const QStringList& months() {
    static const QStringList names{"january", "february", "march",     "april",   "may",      "june",
                                   "july",    "august",   "september", "october", "november", "december"};
    return names;
}

// The place of the one name that begins with `typed`, from 1; at least three letters.
std::optional<int> namedBy(const QStringList& names, const QString& typed) {
    if (typed.size() < 3)
        return std::nullopt;
    for (int at = 0; at < names.size(); ++at)
        if (names[at].startsWith(typed))
            return at + 1;
    return std::nullopt;
}

std::optional<Date> ofWeekday(const QString& typed, Date today, Lean lean) {
    const auto weekday = namedBy(weekdays(), typed);
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
    static const QRegularExpression named(QStringLiteral("^(\\d{1,2})\\.?\\s?([a-z]+)\\.?(?:\\s(\\d{4}))?$"));
    auto match = dotted.match(typed);
    std::optional<int> month;
    if (match.hasMatch()) {
        month = match.captured(2).toInt();
    } else {
        match = named.match(typed);
        if (match.hasMatch())
            month = namedBy(months(), match.captured(2));
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
    if (words == QLatin1String("t") || words == QLatin1String("today"))
        return today;
    if (words.size() >= 2 && QStringLiteral("yesterday").startsWith(words))
        return today.plusDays(-1);
    if (words.size() >= 3 && QStringLiteral("tomorrow").startsWith(words))
        return today.plusDays(1);
    for (const auto& found :
         {ofDistance(words, today), ofWeekday(words, today, lean), ofFigures(words, today, lean)})
        if (found)
            return *found;
    const auto written = calendar::parseDate(field, words.toStdString());
    if (written)
        return written;
    return base::refuse(base::Fault::NotADate, std::string(field), typed.toStdString(),
                        "today, -1, sat, 3 May or 2026-05-03");
}

}  // namespace wm::ui

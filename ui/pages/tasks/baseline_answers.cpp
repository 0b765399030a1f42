// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/tasks/baseline_answers.h"

#include <QRegularExpression>
#include <QStringList>

#include "core/upkeep/typed_bracket.h"
#include "core/upkeep/unknown.h"
#include "ui/entry/day_words.h"
#include "ui/pages/tasks/baseline_view.h"
#include "ui/words/figures.h"
#include "ui/words/tr.h"

namespace wm::ui {

namespace {

const QRegularExpression& between() {
    static const QRegularExpression marks(QStringLiteral("\\s*(?:\\.\\.+|\u2026)\\s*"));
    return marks;
}

// "about 10 h ago" without the "about".
QString withoutAbout(const QString& words) {
    const QRegularExpression about(
        QStringLiteral("^(?:about|ca\\.?|circa|~|%1)(?:\\s+|$)").arg(QRegularExpression::escape(tr("about"))),
        QRegularExpression::CaseInsensitiveOption);
    return QString(words).remove(about);
}

base::Result<When> withDay(When when, const QString& day, calendar::Date today) {
    if (day.isEmpty())
        return when;
    if (const auto month = parseMonth(day, today)) {
        when.day = verbs::RememberedDay{month->first, std::nullopt, month->second};
        return when;
    }
    std::vector<calendar::Date> days;
    for (const QString& each : day.split(between())) {
        const auto date = parseDay("date", each, today, Lean::Past);
        if (!date)
            return tl::unexpected(date.error());
        days.push_back(*date);
    }
    if (days.size() > 3)
        return base::refuse(base::Fault::Malformed, "date", day.toStdString());
    if (days.size() == 1)
        when.date = days.front();
    else
        when.day = verbs::RememberedDay{
            days.front(), days.size() == 3 ? std::optional(days[1]) : std::nullopt, days.back()};
    return when;
}

// "10..15..25" hours ago, or of the meter.
base::Result<upkeep::CountBracket> hoursOf(const QString& hours) {
    return upkeep::parseBracket("meter", hours.toStdString(), upkeep::Counter::Hours);
}

// "10..15..25" and no more: hours ago, or what the meter showed?
bool isBareBracket(const QString& words) {
    static const QRegularExpression bare(QStringLiteral(
        "^\\d+(?:[.,]\\d+)?(?:\\s*(?:\\.\\.+|\u2026|\u2013)\\s*(?:\\d+(?:[.,]\\d+)?|\\?)?){1,2}$"));
    return bare.match(words).hasMatch();
}

base::Result<When> whenOf(const QString& words, calendar::Date today) {
    // Nothing before the figure is tried first: the comma of "47,5 h" is a mark, not the end of a day.
    static const QRegularExpression hoursLast(
        QStringLiteral("^(?:|(.*?)[\\s,/]+)(\\d+(?:[.,]\\d*)?)\\s*h(?:ours?)?$"),
        QRegularExpression::CaseInsensitiveOption);
    static const QRegularExpression figure(QStringLiteral("^\\d+(?:,\\d*)?$"));
    // A dot between two figures is a decimal mark, two of them are not.
    static const QRegularExpression remembered(
        QStringLiteral("^(?:|(.*?)[\\s,/]+)(\\d+(?:[.,]\\d+)?(?:\\s*(?:\\.\\.+|\u2026|\u2013)\\s*"
                       "(?:\\d+(?:[.,]\\d+)?|\\?)?){0,2})\\s*h(?:ours?)?(\\s+ago)?$"),
        QRegularExpression::CaseInsensitiveOption);
    if (isBareBracket(words))
        return base::refuse(base::Fault::Malformed, "hours", words.toStdString(),
                            tr("%1 h ago, or %1 h of the meter").arg(words).toStdString());
    When when;
    QString day = words;
    QString hours;
    const auto told = remembered.match(words);
    const bool isTold =
        told.hasMatch() && (told.captured(2).contains(between()) ||
                            told.captured(2).contains(QChar(0x2013)) || !told.captured(3).isEmpty());
    if (const auto match = hoursLast.match(words); !isTold && match.hasMatch()) {
        day = match.captured(1);
        hours = match.captured(2);
    } else if (isTold) {
        const auto bracket = hoursOf(told.captured(2));
        if (!bracket)
            return tl::unexpected(bracket.error());
        (told.captured(3).isEmpty() ? when.meterThen : when.hoursAgo) = *bracket;
        day = told.captured(1);
    } else if (figure.match(words).hasMatch()) {
        day.clear();
        hours = words;
    }
    if (!hours.isEmpty()) {
        const auto meter = units::parseHours("meter", hours.toStdString());
        if (!meter)
            return tl::unexpected(meter.error());
        when.meter = *meter;
    }
    return withDay(when, day, today);
}

bool isExact(const When& when) {
    const auto isOne = [](const std::optional<upkeep::CountBracket>& bracket) {
        return bracket && bracket->high == bracket->low;
    };
    return when.date || when.meter || isOne(when.hoursAgo) || isOne(when.meterThen);
}

}  // namespace

base::Result<When> parseWhen(const QString& typed, calendar::Date today) {
    const QString words = typed.simplified();
    const QString figure = withoutAbout(words);
    auto when = whenOf(figure, today);
    // How far about? Nobody but the mechanic knows.
    if (when && figure != words && isExact(*when))
        return base::refuse(
            base::Fault::Malformed, "date", words.toStdString(),
            tr("from the least to the most: 8..10..12 h ago, 38..45 h, 20 apr..10 may").toStdString());
    return when;
}

QString whenWords(const When& when, calendar::Date today) {
    QStringList parts;
    if (when.date)
        parts << dayWords(*when.date, today);
    if (when.day)
        parts << QStringLiteral("%1…%2").arg(dayWords(when.day->first, today),
                                             dayWords(when.day->last, today));
    if (when.meter)
        parts << hoursWords(*when.meter);
    if (when.meterThen)
        parts << bracketWords(*when.meterThen, upkeep::Counter::Hours);
    if (when.hoursAgo)
        parts << BaselineView::tr("%1 ago").arg(bracketWords(*when.hoursAgo, upkeep::Counter::Hours));
    return parts.join(QStringLiteral(" · "));
}

bool canSay(const upkeep::TaskVersion& task, Said said, const When& when) {
    switch (said) {
        case Said::Fine:
            return upkeep::isALook(task);
        case Said::Serviced:
            return when.date || when.isRemembered() || (when.meter && upkeep::countsOnlyHours(task));
        case Said::New:
        case Said::NeverDone:
        case Said::Unknown:
            break;
    }
    return true;
}

calendar::Date dayMeant(const book::Book& book, const book::DueLine& line, Said said) {
    if (said != Said::New && said != Said::NeverDone)
        return book.today();
    const auto* machine = book.ledger().find<items::Machine>(line.machine);
    return machine != nullptr ? verbs::firstRidden(book, *machine, line.item).date : book.today();
}

namespace {

std::optional<verbs::Remembered> rememberedOf(const std::optional<upkeep::CountBracket>& bracket) {
    return bracket ? std::optional(verbs::Remembered{bracket->low, bracket->best, bracket->high})
                   : std::nullopt;
}

}  // namespace

tl::expected<std::vector<verbs::BaselineLine>, BaselineFault> linesOf(const BaselineAnswers& answers,
                                                                      const std::vector<TaskId>& tasks,
                                                                      calendar::Date today) {
    std::vector<verbs::BaselineLine> lines;
    for (const TaskId task : tasks) {
        const auto at = answers.find(task);
        if (at == answers.end() || at->second.said == Said::Unknown)
            continue;
        const auto when = parseWhen(at->second.when, today);
        if (!when)
            return tl::unexpected(BaselineFault{task, when.error()});
        verbs::BaselineLine line{.task = task, .date = when->date};
        switch (at->second.said) {
            case Said::Serviced:
                line.answer = verbs::BaselineAnswer::Serviced;
                line.meter = when->meter;
                line.hoursAgo = rememberedOf(when->hoursAgo);
                line.meterThen = rememberedOf(when->meterThen);
                line.day = when->day;
                break;
            case Said::NeverDone:
                line.answer = verbs::BaselineAnswer::NeverDone;
                break;
            case Said::Fine:
                line.answer = verbs::BaselineAnswer::LookedFine;
                break;
            case Said::New:
            case Said::Unknown:
                break;
        }
        lines.push_back(line);
    }
    return lines;
}

}  // namespace wm::ui

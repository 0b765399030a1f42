// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/why_words.h"

#include <algorithm>

#include <QStringList>

#include "ui/words/figures.h"
#include "ui/words/name_words.h"
#include "ui/words/tr.h"
#include "ui/words/weight_words.h"

namespace wm::ui {

namespace {

using explain::Step;
using explain::StepKind;
using upkeep::Counter;

QString counted(std::int64_t amount, const std::optional<Counter>& counter) {
    if (!counter)
        return amount == 1 ? tr("once") : tr("%n time(s)", nullptr, static_cast<int>(amount));
    return countWords(amount, *counter == Counter::Months ? Counter::Days : *counter);
}

QString bracketWords(const upkeep::CountBracket& count, const std::optional<Counter>& counter, bool fine) {
    // Weighted hours are rounded for the eye; the sum of them is rounded once.
    const auto words = [&](std::int64_t value) {
        return counted(fine ? (value + (value < 0 ? -500 : 500)) / 1000 : value, counter);
    };
    if (!count.best || (!count.high && count.low == *count.best))
        return count.high ? tr("%1 to %2").arg(words(count.low), words(*count.high))
                          : tr("%1 or more").arg(words(count.low));
    if (!count.high)
        return tr("%1 (%2 or more)").arg(words(*count.best), words(count.low));
    if (count.low == *count.high)
        return words(*count.best);
    return tr("%1 (%2 to %3)").arg(words(*count.best), words(count.low), words(*count.high));
}

QString figureWords(const Step& step) {
    if (!step.figure)
        return {};
    QString words = bracketWords(*step.figure, step.counter, step.fine);
    if (step.raw && step.permille != 1000)
        return tr("%1 x %2 = %3")
            .arg(bracketWords(*step.raw, step.counter, false))
            .arg(factorText(step.permille))
            .arg(words);
    if (step.raw && step.raw != step.figure && !step.fine)
        words += tr(", as ridden %1").arg(bracketWords(*step.raw, step.counter, false));
    return words;
}

// Nobody knows how much more is behind it.
bool isOpenEnded(const Step& step) {
    return std::any_of(step.children.begin(), step.children.end(), [](const Step& child) {
        return (child.kind == StepKind::Behind && child.figure && !child.figure->high) ||
               (child.kind == StepKind::Limit && child.governs && isOpenEnded(child));
    });
}

QString leftWords(const Step& step) {
    if (!step.figure)
        return {};
    if (step.reached == upkeep::Reached::MayBe)
        return tr("may be over");
    const std::int64_t left = step.figure->low;  // exact
    if (step.reached == upkeep::Reached::NobodyKnows && left <= 0)
        return tr("not known");
    if (left == 0)
        return tr("due now");
    const QString far = counted(left < 0 ? -left : left, step.counter);
    if (left > 0)
        return step.reached == upkeep::Reached::NobodyKnows ? tr("%1 left at the most").arg(far)
                                                            : tr("%1 left").arg(far);
    return isOpenEnded(step) ? tr("over %1 or more").arg(far) : tr("over %1").arg(far);
}

// "this time (every 3 times)"
QString extraWords(const Step& step) {
    if (step.count == 1)
        return tr("%1: each time").arg(text(step.name));
    const auto in = static_cast<int>(step.figure->low);
    const QString when = in <= 1 ? tr("this time") : tr("after %n more time(s)", nullptr, in - 1);
    return tr("%1: %2 (every %3)").arg(text(step.name), when, counted(step.count, std::nullopt));
}

// The figures of two readings that don't follow each other.
QString meterWords(const std::string& shown, const std::optional<Counter>& counter) {
    return text(shown) + (counter == Counter::Metres ? QStringLiteral(" km") : QStringLiteral(" h"));
}

QString oddWords(const Step& step) {
    const QString words =
        step.kind == StepKind::Jump
            ? tr("the meter went from %1 to %2: more than the days between can hold")
            : tr("not metered, as the meter went from %1 to %2 and nobody said why: what was "
                 "noted stands");
    return words.arg(meterWords(step.detail, step.counter), meterWords(step.name, step.counter));
}

QString spanWords(const Step& step, calendar::Date today) {
    if (!step.from)
        return step.to ? tr("until %1").arg(dayWords(*step.to, today)) : QString();
    if (!step.to)
        return tr("since %1").arg(dayWords(*step.from, today));
    if (*step.from == *step.to)
        return dayWords(*step.from, today);
    return tr("%1 to %2").arg(dayWords(*step.from, today), dayWords(*step.to, today));
}

QString knownWords(const Step& step) {
    using usage::Known;
    switch (step.known.value_or(Known::Noted)) {
        case Known::Noted:
            return tr("noted");
        case Known::Assumed:
            return tr("not noted: about the mean outing");
        case Known::Metered:
            return tr("by the meter");
        case Known::ScaledDown:
            return tr("noted, scaled down to the meter");
        case Known::ScaledUp:
            return tr("noted, scaled up to the meter");
        case Known::Unlogged:
            return tr("on the meter, in no note");
        case Known::AtMost:
            return tr("on the meter, in no note: riding or the van");
        case Known::Past:
            return tr("as stated");
    }
    return {};
}

QString inOrder(QStringList words, const QString& between = QStringLiteral(", ")) {
    words.removeAll(QString());
    return words.join(between);
}

QString versionWords(const Step& step, calendar::Date today) {
    const QString page = step.detail.empty() ? QString() : tr(" p. %1").arg(text(step.detail));
    return inOrder({spanWords(step, today), text(step.name) + page,
                    step.governs ? tr("confirmed") : tr("not confirmed against the manual")});
}

QString amountWords(const Step& step, calendar::Date today) {
    QString words = figureWords(step);
    if (step.to)
        words += tr(", to %1").arg(dayWords(*step.to, today));
    if (!step.limit)
        return words;
    const auto& limit = *step.limit;
    QStringList rules;
    if (step.isFirst)
        rules << tr("the first time");
    else if (limit.counter == Counter::Months || limit.every != step.figure->low)
        rules << tr("every %1").arg(countWords(limit.every, limit.counter));
    if (limit.hard)
        rules << tr("a life limit");
    if (limit.allowance > 0)
        rules << tr("%1 over allowed").arg(countWords(limit.allowance, limit.counter));
    return rules.isEmpty() ? words : tr("%1 (%2)").arg(words, rules.join(QStringLiteral(", ")));
}

QString placeName(const Step& step) {
    return step.name.empty() ? tr("in place") : tr("in %1").arg(text(step.name));
}

QString weightName(const Step& step) {
    return tr("an hour of %1")
        .arg(inOrder({nameWords(std::string_view(step.name)), nameWords(std::string_view(step.detail))}));
}

// "0.09 mm, limit 0.09, 3 May, until this job is recorded"
QString valueWords(const Step& step, calendar::Date today) {
    const auto figure = [](const std::optional<units::Decimal>& value) {
        return value ? text(value->text(decimalMark())) : QString();
    };
    const QString unit = step.detail.empty() ? QString() : QChar(0x00A0) + text(step.detail);
    return inOrder({figure(step.value) + unit, tr("limit %1").arg(figure(step.valueLimit)),
                    step.from ? dayWords(*step.from, today) : QString(), tr("until this job is recorded")});
}

QString limitName(const Step& step) {
    return step.governs ? tr("what decides") : tr("another limit");
}

QString namedWords(const Step& step) {
    if (step.kind == StepKind::Carried)
        return tr("on %1, %2").arg(text(step.name), text(step.detail));
    return step.kind == StepKind::Value ? tr("measured: %1").arg(text(step.name))
                                        : tr("done since: %1").arg(text(step.name));
}

// Where it counts from.
QString originWords(const Step& step, calendar::Date today) {
    if (step.kind == StepKind::NoRecord)
        return tr("nobody has ever recorded it");
    if (step.kind == StepKind::KnownStart)
        return tr("new %1, never done yet").arg(spanWords(step, today));
    if (step.kind == StepKind::NeverDone)
        return inOrder({tr("never done"), tr("by word")});
    return inOrder({dayWords(*step.from, today), text(step.name),
                    step.kind == StepKind::Baseline ? tr("by word") : QString()});
}

// How many facts a group holds.
QString groupWords(const Step& step) {
    const auto n = static_cast<int>(step.count);
    if (step.kind == StepKind::Outings)
        return tr("%n outing(s)", nullptr, n);
    if (step.kind == StepKind::Gaps)
        return tr("%n unlogged stretch(es)", nullptr, n);
    if (step.kind == StepKind::SharedGap)
        return tr("%n part(s) of one stretch", nullptr, n);
    if (step.kind == StepKind::Washes)
        return tr("%n wash(es)", nullptr, n);
    return step.kind == StepKind::Crashes ? tr("%n crash(es)", nullptr, n) : tr("%n mud day(s)", nullptr, n);
}

QString whatWords(const Step& step, calendar::Date today) {
    switch (step.kind) {
        case StepKind::Task:
            return text(step.name);
        case StepKind::Version:
            return tr("the task says");
        case StepKind::Weight:
            return weightName(step);
        case StepKind::Item:
            return tr("item");
        case StepKind::Record:
        case StepKind::Baseline:
        case StepKind::NeverDone:
        case StepKind::KnownStart:
        case StepKind::NoRecord:
            return tr("counted from");
        case StepKind::NothingFitted:
            return tr("nothing fitted");
        case StepKind::Limit:
            return limitName(step);
        case StepKind::Amount:
            return tr("limit");
        case StepKind::Mark:
            return tr("next fixed mark");
        case StepKind::StoodAt:
            return tr("less where it stood when done");
        case StepKind::Behind:
            return tr("behind it");
        case StepKind::Past:
            return tr("before the file");
        case StepKind::Told:
            return tr("as told, until %1").arg(dayWords(*step.to, today));
        case StepKind::Carried:
        case StepKind::Value:
        case StepKind::OtherJobs:
            return namedWords(step);
        case StepKind::Place:
            return placeName(step);
        case StepKind::Outings:
        case StepKind::Gaps:
        case StepKind::SharedGap:
        case StepKind::Washes:
        case StepKind::Crashes:
        case StepKind::MudDays:
            return groupWords(step);
        case StepKind::Outing:
        case StepKind::Gap:
        case StepKind::Wash:
        case StepKind::Crash:
        case StepKind::MudDay:
            return spanWords(step, today);
        case StepKind::Happened:
            return step.to ? tr("asked for") : tr("brought on by");
        case StepKind::Extra:
            return tr("as well");
        case StepKind::Unmetered:
        case StepKind::Jump:
            return spanWords(step, today);
    }
    return {};
}

QString happenedWords(const Step& step, calendar::Date today) {
    if (step.to)
        return tr("before each race, once it was ridden: %1").arg(dayWords(*step.to, today));
    const QString what = step.detail.empty() ? nameWords(std::string_view(step.name)) : text(step.detail);
    return inOrder({what, step.from ? dayWords(*step.from, today) : QString()});
}

QString limitWords(const Step& step) {
    return inOrder({leftWords(step), step.side == upkeep::From::High
                                         ? tr("reckoned from the most, as it is a safety job")
                                         : QString()});
}

// What made it due whatever the limits say goes before what the limits leave.
QString taskWords(const Step& step, calendar::Date today) {
    for (const Step& child : step.children) {
        if (child.kind == StepKind::Value)
            return inOrder({tr("due now"), text(child.name) + QLatin1Char(' ') + valueWords(child, today)});
        if (child.kind == StepKind::Happened)
            return child.to ? happenedWords(child, today)
                            : inOrder({tr("due now"), happenedWords(child, today)});
    }
    return limitWords(step);
}

QString sharedWords(const Step& step, calendar::Date today) {
    return tr("%1 to %2, together no more than the whole: %3")
        .arg(dayWords(*step.from, today), dayWords(*step.to, today), figureWords(step));
}

QString muchWords(const Step& step, calendar::Date today) {
    switch (step.kind) {
        case StepKind::Task:
            return taskWords(step, today);
        case StepKind::Limit:
            return limitWords(step);
        case StepKind::Version:
            return versionWords(step, today);
        case StepKind::Weight:
            return tr("counts %1").arg(factorText(step.permille));
        case StepKind::Item:
            return tr("%1 in %2, known %3").arg(text(step.name), text(step.detail), spanWords(step, today));
        case StepKind::Record:
        case StepKind::Baseline:
        case StepKind::NeverDone:
        case StepKind::KnownStart:
        case StepKind::NoRecord:
            return originWords(step, today);
        case StepKind::NothingFitted:
            return tr("%1 off since %2: %3")
                .arg(text(step.detail), dayWords(*step.from, today), text(step.name));
        case StepKind::Amount:
            return amountWords(step, today);
        case StepKind::StoodAt:
            return counted(-step.figure->low, step.counter);
        case StepKind::Carried:
            return inOrder({figureWords(step), spanWords(step, today)});
        case StepKind::Place:
            return inOrder({text(step.detail), spanWords(step, today)});
        case StepKind::Outing:
            return inOrder({figureWords(step), knownWords(step)});
        case StepKind::SharedGap:
            return sharedWords(step, today);
        case StepKind::Value:
            return valueWords(step, today);
        case StepKind::Happened:
            return happenedWords(step, today);
        case StepKind::Extra:
            return extraWords(step);
        case StepKind::Unmetered:
        case StepKind::Jump:
            return oddWords(step);
        case StepKind::Mark:
        case StepKind::Behind:
        case StepKind::Past:
        case StepKind::Told:
        case StepKind::Outings:
        case StepKind::Gaps:
        case StepKind::Gap:
        case StepKind::Washes:
        case StepKind::Wash:
        case StepKind::Crashes:
        case StepKind::Crash:
        case StepKind::MudDays:
        case StepKind::MudDay:
        case StepKind::OtherJobs:
            break;
    }
    return figureWords(step);
}

// What decides is seen at once; lists of facts are opened when they are asked for.
bool isOpen(const Step& step) {
    return step.kind == StepKind::Task || step.kind == StepKind::Behind ||
           (step.kind == StepKind::Limit && step.governs);
}

}  // namespace

WhyNode whyTree(const Step& step, calendar::Date today) {
    WhyNode node{whatWords(step, today), muchWords(step, today), isOpen(step), {}};
    if (step.kind == StepKind::Past)  // what it rests on, a line each
        for (const QString& line : text(step.detail).split(QLatin1Char('\n'), Qt::SkipEmptyParts))
            node.children.push_back({line, {}, false, {}});
    for (const Step& child : step.children)
        node.children.push_back(whyTree(child, today));
    const auto happened = [](const Step& child) {
        return child.kind == StepKind::Happened || child.kind == StepKind::Value;
    };
    if (std::any_of(step.children.begin(), step.children.end(), happened))  // then no limit decides
        for (std::size_t at = 0; at < step.children.size(); ++at)
            if (step.children[at].kind == StepKind::Limit)
                node.children[at].what = tr("by its interval");
    return node;
}

}  // namespace wm::ui

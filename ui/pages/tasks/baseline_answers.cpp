// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/tasks/baseline_answers.h"

#include <QRegularExpression>
#include <QStringList>

#include "core/upkeep/unknown.h"
#include "ui/entry/day_words.h"
#include "ui/words/figures.h"

namespace wm::ui {

base::Result<When> parseWhen(const QString& typed, calendar::Date today) {
    // Nothing before the figure is tried first: the comma of "47,5 h" is a mark, not the end of a day.
    static const QRegularExpression hoursLast(
        QStringLiteral("^(?:|(.*?)[\\s,/]+)(\\d+(?:[.,]\\d*)?)\\s*h(?:ours?)?$"),
        QRegularExpression::CaseInsensitiveOption);
    static const QRegularExpression figure(QStringLiteral("^\\d+(?:,\\d*)?$"));
    const QString words = typed.simplified();
    When when;
    QString day = words;
    QString hours;
    if (const auto match = hoursLast.match(words); match.hasMatch()) {
        day = match.captured(1);
        hours = match.captured(2);
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
    if (!day.isEmpty()) {
        const auto date = parseDay("date", day, today, Lean::Past);
        if (!date)
            return tl::unexpected(date.error());
        when.date = *date;
    }
    return when;
}

QString whenWords(const When& when, calendar::Date today) {
    QStringList parts;
    if (when.date)
        parts << dayWords(*when.date, today);
    if (when.meter)
        parts << hoursWords(*when.meter);
    return parts.join(QStringLiteral(" · "));
}

bool canSay(const upkeep::TaskVersion& task, Said said, const When& when) {
    switch (said) {
        case Said::Fine:
            return upkeep::isALook(task);
        case Said::Serviced:
            return when.date || (when.meter && upkeep::countsOnlyHours(task));
        case Said::New:
        case Said::Unknown:
            break;
    }
    return true;
}

calendar::Date dayMeant(const book::Book& book, const book::DueLine& line, Said said) {
    if (said != Said::New)
        return book.today();
    const auto* machine = book.ledger().find<items::Machine>(line.machine);
    return machine != nullptr ? verbs::firstRidden(book, *machine, line.item).date : book.today();
}

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

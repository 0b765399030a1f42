// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/due_change_words.h"

#include <QStringList>
#include <algorithm>

#include "ui/words/figures.h"
#include "ui/words/standing_words.h"
#include "ui/words/tr.h"

namespace wm::ui {

namespace {

void say(QStringList& parts, const QString& before, const QString& after) {
    if (before != after)
        parts << QStringLiteral("%1 → %2").arg(before, after);
}

QString likelyWords(const book::DueLine& line, calendar::Date today) {
    return line.standing.likely ? tr("due %1").arg(dayWords(*line.standing.likely, today))
                                : tr("not within two years");
}

QString changeWords(const book::DueLine& before, const book::DueLine& after, calendar::Date today) {
    QStringList parts;
    say(parts, standingWords(before), standingWords(after));
    say(parts, howFar(before, today), howFar(after, today));
    say(parts, consequenceWords(before.task->consequence), consequenceWords(after.task->consequence));
    if (parts.isEmpty())
        say(parts, likelyWords(before, today), likelyWords(after, today));
    return parts.isEmpty() ? tr("another limit counts") : parts.join(QStringLiteral("; "));
}

QString placeWords(const book::DueLine& line, calendar::Date today) {
    const QString standing = standingWords(line);
    const QString far = howFar(line, today);
    return standing == far ? standing : standing + QStringLiteral("; ") + far;
}

}  // namespace

QString dueMoveWords(const book::DueMove& move, calendar::Date today) {
    const auto& either = move.after ? *move.after : *move.before;
    const QString words = !move.before  ? tr("comes onto the list, %1").arg(placeWords(*move.after, today))
                          : !move.after ? tr("leaves the list (%1)").arg(placeWords(*move.before, today))
                                        : changeWords(*move.before, *move.after, today);
    return QStringLiteral("%1: %2").arg(text(either.task->name), words);
}

QString dueChangeWords(const std::vector<book::DueMove>& moves, calendar::Date today, std::size_t most) {
    if (moves.empty())
        return tr("Changes nothing in today's list.");
    QStringList lines;
    for (std::size_t at = 0; at < std::min(most, moves.size()); ++at)
        lines << dueMoveWords(moves[at], today);
    if (moves.size() > most)
        lines << tr("and %1 more").arg(moves.size() - most);
    return lines.join(QLatin1Char('\n'));
}

}  // namespace wm::ui

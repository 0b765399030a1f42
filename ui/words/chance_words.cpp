// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/chance_words.h"

#include <QStringList>

#include "ui/words/figures.h"
#include "ui/words/standing_words.h"
#include "ui/words/tr.h"

namespace wm::ui {

namespace {

QString beforeWords(const outlook::Chances& chances, std::int64_t count) {
    return chances.event ? tr("%1 before the flag").arg(count) : tr("%1 in 2 weeks").arg(count);
}

QStringList nowWords(const outlook::Chances& chances) {
    QStringList now;
    if (chances.dueNow > 0)
        now << tr("%1 due now").arg(chances.dueNow);
    if (chances.mayBeOver > 0)
        now << tr("%1 may be over").arg(chances.mayBeOver);
    return now;
}

}  // namespace

QString countedWords(const outlook::Chances& chances) {
    QStringList counted = nowWords(chances);
    if (chances.beforeEvent > 0)
        counted << beforeWords(chances, chances.beforeEvent);
    return counted.join(QStringLiteral(", "));
}

QString restWords(const outlook::Chances& chances) {
    const bool isAnyDue = chances.dueNow + chances.mayBeOver + chances.beforeEvent > 0;
    if (!chances.clearOfRest)
        return tr("too few outings known to say what comes");
    if (chances.inHand == 0)
        return isAnyDue               ? QString()
               : chances.noRecord > 0 ? tr("nothing recorded to go by")
                                      : tr("nothing is watched");
    const QString chance = chanceWords(*chances.clearOfRest);
    if (isAnyDue)
        return tr("with these done, nothing else: %1").arg(chance);
    return (chances.event ? tr("nothing due before the flag: %1") : tr("nothing due in 2 weeks: %1"))
        .arg(chance);
}

QString clearWords(const outlook::Chances& chances) {
    const QString counted = countedWords(chances);
    const QString ahead = restWords(chances);
    return counted.isEmpty() || ahead.isEmpty() ? counted + ahead : tr("%1; %2").arg(counted, ahead);
}

QString onTheWayWords(const outlook::Chances& chances) {
    if (!chances.clear || chances.inHand == 0)
        return clearWords(chances);
    const QString then = chances.event ? tr("before") : tr("in 2 weeks");
    const QString chance = chanceWords(*chances.clear);
    const QStringList now = nowWords(chances);
    return now.isEmpty()
               ? tr("nothing due %1: %2").arg(then, chance)
               : tr("%1; %2").arg(now.join(QStringLiteral(", ")), tr("no more due %1: %2").arg(then, chance));
}

QString pickedWords(const outlook::Chances& chances) {
    if (chances.picked == 0)
        return {};
    if (const auto left = chances.leftOver + chances.leftBefore; left > 0)
        return tr("%1 picked, %2 left to do").arg(chances.picked).arg(left);
    return chances.clearOfUnpicked ? tr("%1 picked, nothing else: %2")
                                         .arg(chances.picked)
                                         .arg(chanceWords(*chances.clearOfUnpicked))
                                   : QString();
}

namespace {

QString goesFirst(const book::Book& book, std::optional<TaskId> task) {
    const auto* first = task ? book.task(*task) : nullptr;
    return first == nullptr
               ? QString()
               : tr("first to go: %1").arg(text(first->shortName.empty() ? first->name : first->shortName));
}

}  // namespace

QString firstToGoWords(const book::Book& book, const outlook::Chances& chances) {
    return goesFirst(book, chances.firstOfRest);
}

QString firstOnTheWayWords(const book::Book& book, const outlook::Chances& chances) {
    return goesFirst(book, chances.first);
}

QString trustWords(outlook::Trust trust) {
    switch (trust) {
        case outlook::Trust::Changed:
            return tr("ridden otherwise of late: it may be further off");
        case outlook::Trust::Resting:
            return tr("as if riding went on today");
        case outlook::Trust::Steady:
        case outlook::Trust::Unknown:
            break;
    }
    return {};
}

}  // namespace wm::ui

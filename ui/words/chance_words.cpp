// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/chance_words.h"

#include <QStringList>

#include "ui/words/figures.h"
#include "ui/words/standing_words.h"
#include "ui/words/tr.h"

namespace wm::ui {

QString clearWords(const outlook::Chances& chances) {
    QStringList now;
    if (chances.dueNow > 0)
        now << tr("%1 due now").arg(chances.dueNow);
    if (chances.mayBeOver > 0)
        now << tr("%1 may be over").arg(chances.mayBeOver);
    const QString due = now.join(QStringLiteral(", "));
    const QString then = chances.event ? tr("before") : tr("in 2 weeks");
    QString ahead;
    if (!chances.clear)
        ahead = tr("too few outings known to say what comes");
    else if (chances.inHand == 0)
        ahead = !due.isEmpty()         ? QString()
                : chances.noRecord > 0 ? tr("nothing recorded to go by")
                                       : tr("nothing is watched");
    else
        ahead = (due.isEmpty() ? tr("nothing due %1: %2") : tr("no more due %1: %2"))
                    .arg(then, chanceWords(*chances.clear));
    return due.isEmpty() || ahead.isEmpty() ? due + ahead : tr("%1; %2").arg(due, ahead);
}

QString firstToGoWords(const book::Book& book, const outlook::Chances& chances) {
    const auto* first = chances.first ? book.task(*chances.first) : nullptr;
    return first == nullptr
               ? QString()
               : tr("first to go: %1 (%2)").arg(text(first->name), chanceWords(chances.firstShare));
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

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/chance_words.h"

#include <QCoreApplication>

#include "ui/words/figures.h"
#include "ui/words/standing_words.h"

namespace wm::ui {

namespace {

QString tr(const char* words) {
    return QCoreApplication::translate("ChanceWords", words);
}

}  // namespace

QString clearWords(const outlook::Chances& chances) {
    const QString end = chances.event ? tr("before the flag") : tr("within two weeks");
    const QString over = chances.dueNow > 0 ? tr("%1 due now; ").arg(chances.dueNow) : QString();
    if (!chances.clear)
        return over + tr("too few outings known to say what comes");
    if (chances.inHand == 0)
        return over + tr("nothing else is watched");
    const QString nothing = chances.dueNow > 0 ? tr("nothing more due") : tr("nothing due");
    return over + tr("%1 %2: %3").arg(nothing, end, chanceWords(*chances.clear));
}

QString firstToGoWords(const ledger::Book& book, const outlook::Chances& chances) {
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

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/chance_words.h"

#include <QCoreApplication>
#include <QStringList>

#include "ui/words/figures.h"
#include "ui/words/standing_words.h"

namespace wm::ui {

namespace {

QString tr(const char* words) {
    return QCoreApplication::translate("ChanceWords", words);
}

}  // namespace

QString clearWords(const outlook::Chances& chances) {
    if (!chances.clear)
        return tr("too few outings known to say what comes");
    if (chances.inHand == 0)
        return tr("nothing is watched");
    const QString nothing = chances.dueNow > 0 ? tr("nothing more due") : tr("nothing due");
    return tr("%1 %2: %3")
        .arg(nothing, chances.event ? tr("before") : tr("in two weeks"), chanceWords(*chances.clear));
}

QString firstToGoWords(const ledger::Book& book, const outlook::Chances& chances) {
    QStringList parts;
    if (chances.dueNow > 0)
        parts += tr("%1 due now").arg(chances.dueNow);
    if (const auto* first = chances.first ? book.task(*chances.first) : nullptr)
        parts += tr("first to go: %1 (%2)").arg(text(first->name), chanceWords(chances.firstShare));
    return parts.join(QStringLiteral("; "));
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

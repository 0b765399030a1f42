// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/oddity_words.h"

#include "ui/words/error_words.h"
#include "ui/words/figures.h"
#include "ui/words/tr.h"

namespace wm::ui {

namespace {

QString whatWords(const base::Error& error) {
    using base::Fault;
    const QString given = text(error.given);
    const QString wanted = text(error.wanted);
    if (error.fault == Fault::MeterJumps)
        return tr("the meter went from %1 to %2, more than the days between can hold.").arg(wanted, given);
    if (error.fault == Fault::MeterRunsBack)
        return tr("the meter went from %1 back to %2, and nobody said why.").arg(wanted, given);
    if (error.fault == Fault::MeterStood)
        return tr("%1 noted since the reading before, and the meter ran %2: has it stopped?")
            .arg(given, wanted);
    if (error.fault == Fault::WrongKind)
        return tr("%1 (%2) does not go there.").arg(given, wanted);
    return wordsFor(error);
}

}  // namespace

QString oddityWords(const book::Oddity& oddity, calendar::Date today) {
    return tr("%1, %2: %3").arg(text(oddity.where), dayWords(oddity.day, today), whatWords(oddity.error));
}

QStringList oddityLines(const book::Book& book) {
    QStringList lines;
    for (const book::Oddity& oddity : book::oddities(book))
        lines << oddityWords(oddity, book.today());
    return lines;
}

}  // namespace wm::ui

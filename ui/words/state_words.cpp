// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/state_words.h"

#include <QStringList>

#include "ui/words/figures.h"
#include "ui/words/tr.h"

namespace wm::ui {

QString gapWords(const book::Book& book, const book::Gap& gap) {
    const QString day = dayWords(gap.since, book.today());
    QString words = gap.isAway ? tr("%1, away since %2").arg(text(gap.position), day)
                               : tr("%1, off since %2").arg(text(gap.position), day);
    if (!gap.where.empty())
        words += QStringLiteral(" (%1)").arg(text(gap.where).simplified());
    return gap.isDoubtful ? tr("%1: is it needed?").arg(words) : words;
}

QString gapWords(const book::Book& book, const std::vector<book::Gap>& gaps) {
    QStringList all;
    for (const book::Gap& gap : gaps)
        all << gapWords(book, gap);
    return all.join(QStringLiteral("; "));
}

}  // namespace wm::ui

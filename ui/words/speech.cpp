// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/speech.h"

#include <QCoreApplication>
#include <QDate>
#include <QLocale>

#include "ui/words/figures.h"
#include "ui/words/languages.h"
#include "ui/words/tr.h"

namespace wm::ui {

namespace {

std::string translated(const base::Phrase& phrase) {
    return QCoreApplication::translate(phrase.context.c_str(), phrase.text.c_str(), nullptr,
                                       phrase.count ? static_cast<int>(*phrase.count) : -1)
        .toStdString();
}

QString dayInFull(calendar::Date day, bool weekday) {
    const QString form = weekday ? tr("ddd d MMM yyyy", "form of a day") : tr("d MMM yyyy", "form of a day");
    return spokenLocale().toString(QDate(day.year(), day.month(), day.day()), form);
}

}  // namespace

QString words(const base::Phrase& phrase) {
    return text(base::said(phrase, translated));
}

QString wordsOfKept(const std::string& kept) {
    return words(base::restored(kept));
}

sheet::Speech speech() {
    sheet::Speech speech(decimalMark());
    speech.words = translated;
    speech.day = [](calendar::Date day, bool weekday) { return dayInFull(day, weekday).toStdString(); };
    return speech;
}

}  // namespace wm::ui

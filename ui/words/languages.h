// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

class QCoreApplication;
class QLocale;

namespace wm::ui {

/// English is written in the code; what it needs beside it are the forms of its plurals. Headless verbs speak
/// it whatever the locale.
void speakEnglish(QCoreApplication& application);

/// The language of the user, if there is a translation, over English.
void speak(QCoreApplication& application, const QLocale& locale);

/// The locale of days and numbers within sentences: that of the language spoken, so that an English sentence
/// does not hold a French month.
QLocale spokenLocale();

}  // namespace wm::ui

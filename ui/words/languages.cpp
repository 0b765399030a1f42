// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/languages.h"

#include <QCoreApplication>
#include <QLibraryInfo>
#include <QLocale>
#include <QTranslator>
#include <memory>

#include "ui/words/tr.h"

// The translations sit in a static library: without this the linker leaves them out. It works at the global
// scope alone.
static void takeTranslationsAlong() {
    Q_INIT_RESOURCE(translations);
}

namespace wm::ui {

namespace {

void install(QCoreApplication& application, const QLocale& locale, const QString& name,
             const QString& folder) {
    auto translator = std::make_unique<QTranslator>(&application);
    if (translator->load(locale, name, QStringLiteral("_"), folder))
        QCoreApplication::installTranslator(translator.release());
}

}  // namespace

void speakEnglish(QCoreApplication& application) {
    takeTranslationsAlong();
    install(application, QLocale(QLocale::English), QStringLiteral("witnessmark"),
            QStringLiteral(":/translations"));
}

void speak(QCoreApplication& application, const QLocale& locale) {
    speakEnglish(application);
    if (locale.language() == QLocale::English)
        return;
    // Only together with ours: a window half in another language helps nobody.
    auto ours = std::make_unique<QTranslator>(&application);
    if (!ours->load(locale, QStringLiteral("witnessmark"), QStringLiteral("_"),
                    QStringLiteral(":/translations")))
        return;
    QCoreApplication::installTranslator(ours.release());
    install(application, locale, QStringLiteral("qtbase"),
            QLibraryInfo::path(QLibraryInfo::TranslationsPath));
}

QLocale spokenLocale() {
    return QLocale(tr("en_GB", "code of the language and country, for days and numbers"));
}

}  // namespace wm::ui

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/run.h"

#include <spdlog/spdlog.h>
#include <QApplication>
#include <QDate>
#include <QElapsedTimer>
#include <QFile>
#include <QLocale>
#include <memory>

#include "app/headless.h"
#include "app/run_window.h"
#include "app/version.h"
#include "ui/words/languages.h"

namespace wm::app {

namespace {

calendar::Date clockToday() {
    const QDate day = QDate::currentDate();
    return calendar::makeDate(day.year(), day.month(), day.day()).value_or(calendar::Date{});
}

QStringList plainArguments(int argc, char** argv) {
    QStringList arguments;
    for (int at = 1; at < argc; ++at)
        arguments << QString::fromLocal8Bit(argv[at]);
    return arguments;
}

// What Qt has to say is for --verbose; a script reads one line of ours.
void logQtMessage(QtMsgType /*type*/, const QMessageLogContext& /*context*/, const QString& message) {
    if (const auto logger = spdlog::get("app"))
        logger->info("{}", message.toStdString());
}

int runVerb(const QStringList& arguments) {
    QFile standardOut;
    QFile standardError;
    // Not buffered twice: a full disk behind the pipe must be noticed before we say that all went well.
    if (!standardOut.open(stdout, QIODevice::WriteOnly | QIODevice::Unbuffered) ||
        !standardError.open(stderr, QIODevice::WriteOnly | QIODevice::Unbuffered))
        return static_cast<int>(Exit::CannotWrite);
    QTextStream out(&standardOut);
    QTextStream err(&standardError);
    Console console{out, err, clockToday};
    return runHeadless(arguments, console);
}

}  // namespace

int run(int argc, char** argv) {
    QElapsedTimer sinceStart;
    sinceStart.start();
    const QStringList arguments = plainArguments(argc, argv);
    std::unique_ptr<QCoreApplication> application;
    const bool headless = isHeadless(arguments);
    if (headless)
        qInstallMessageHandler(logQtMessage);
    if (!headless) {
        application = std::make_unique<QApplication>(argc, argv);
    } else if (arguments.front() == "sheet" || arguments.front() == "card") {
        // Painting needs fonts, not a display.
        qputenv("QT_QPA_PLATFORM", "offscreen");
        application = std::make_unique<QGuiApplication>(argc, argv);
    } else {
        application = std::make_unique<QCoreApplication>(argc, argv);
    }
    QCoreApplication::setApplicationName("witnessmark");
    QCoreApplication::setApplicationVersion(fromUtf8(kVersion));
    if (headless)
        ui::speakEnglish(*application);
    else
        ui::speak(*application, QLocale());
    return headless ? runVerb(arguments) : runWindow(arguments, sinceStart);
}

}  // namespace wm::app

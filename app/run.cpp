// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/run.h"

#include <spdlog/spdlog.h>
#include <QApplication>
#include <QDate>
#include <QElapsedTimer>
#include <QFile>
#include <QLocale>
#include <QMessageBox>
#include <array>
#include <csignal>
#include <cstdio>
#include <exception>
#include <memory>
#include <utility>

#include "app/harmless_output.h"
#include "app/headless.h"
#include "app/run_window.h"
#include "app/version.h"
#include "core/store/store.h"
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
        arguments << store::pathOf(argv[at]);
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
    // Not buffered twice, by the system neither: a full disk behind the pipe must be noticed before we say
    // that all went well.
    (void)std::setvbuf(stdout, nullptr, _IONBF, 0);
    if (!standardOut.open(stdout, QIODevice::WriteOnly | QIODevice::Unbuffered) ||
        !standardError.open(stderr, QIODevice::WriteOnly | QIODevice::Unbuffered))
        return static_cast<int>(Exit::CannotWrite);
    HarmlessOutput harmlessOut(standardOut);
    HarmlessOutput harmlessError(standardError);
    QTextStream out(&harmlessOut);
    QTextStream err(&harmlessError);
    Console console{out, err, clockToday};
    return runHeadless(arguments, console);
}

// Qt must not be passed through by an exception: what nobody foresaw ends here, in words.
class WindowApplication : public QApplication {
  public:
    using QApplication::QApplication;

    bool notify(QObject* receiver, QEvent* event) override {
        try {
            return QApplication::notify(receiver, event);
        } catch (const std::exception& unforeseen) {
            end(unforeseenWords(unforeseen.what()));
        } catch (...) {
            end(unforeseenWords("unknown"));
        }
        return true;
    }

  private:
    void end(const QString& words) {
        if (std::exchange(ending_, true))
            return;
        fprintf(stderr, "witnessmark: %s\n", words.toUtf8().constData());
        auto* box = new QMessageBox(QMessageBox::Critical, QStringLiteral("Witnessmark"), words);
        box->setTextFormat(Qt::PlainText);
        connect(box, &QMessageBox::finished, this, [] { exit(static_cast<int>(Exit::Unforeseen)); });
        box->open();
    }

    bool ending_ = false;
};

}  // namespace

int run(int argc, char** argv) {
    // A limit on the size of files is a write that fails, with its words, and no end without any.
    std::signal(SIGXFSZ, SIG_IGN);
    QElapsedTimer sinceStart;
    sinceStart.start();
    const QStringList arguments = plainArguments(argc, argv);
    // Qt takes options of its own out of what it is given, and ends the program over some: what a verb is
    // told is none of its business.
    std::array<char*, 2> nameAlone{argv[0], nullptr};
    int one = 1;
    std::unique_ptr<QCoreApplication> application;
    const bool headless = isHeadless(arguments);
    if (headless)
        qInstallMessageHandler(logQtMessage);
    if (!headless) {
        application = std::make_unique<WindowApplication>(argc, argv);
    } else if (arguments.front() == "sheet" || arguments.front() == "card") {
        // Painting needs fonts, not a display.
        qputenv("QT_QPA_PLATFORM", "offscreen");
        application = std::make_unique<QGuiApplication>(one, nameAlone.data());
    } else {
        application = std::make_unique<QCoreApplication>(one, nameAlone.data());
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

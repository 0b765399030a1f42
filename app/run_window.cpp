// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/run_window.h"

#include <spdlog/spdlog.h>
#include <QApplication>
#include <QDateTime>
#include <QElapsedTimer>
#include <QEvent>
#include <QFileInfo>
#include <QSettings>
#include <QTimer>

#include "app/demo_file.h"
#include "app/headless.h"
#include "app/logging.h"
#include "ui/drawing/application_icon.h"
#include "ui/shell/dialog_prompts.h"
#include "ui/shell/main_window.h"
#include "ui/theme/theme.h"
#include "ui/workbench/workbench.h"

namespace wm::app {

namespace {

// Says once, for --verbose, when the first page stood on the screen.
class FirstPaint : public QObject {
  public:
    FirstPaint(QWidget& window, const QElapsedTimer& sinceStart) : window_(window), sinceStart_(sinceStart) {
        window.installEventFilter(this);
    }

  private:
    bool eventFilter(QObject* watched, QEvent* event) override {
        if (watched == &window_ && event->type() == QEvent::Paint) {
            window_.removeEventFilter(this);
            // The window comes first, then what stands in it; all of it is done when the loop comes round.
            QTimer::singleShot(0, this, [this] {
                if (const auto logger = spdlog::get("app"))
                    logger->info("the first page was painted {} ms after the start", sinceStart_.elapsed());
            });
        }
        return false;
    }

    QWidget& window_;
    const QElapsedTimer& sinceStart_;
};

}  // namespace

int runWindow(const QStringList& arguments, const QElapsedTimer& sinceStart) {
    const QStringList files = withoutVerbose(arguments);
    const Logging logging(files.size() != arguments.size());
    QSettings settings(QSettings::IniFormat, QSettings::UserScope, "witnessmark", "witnessmark");
    QApplication::setWindowIcon(ui::applicationIcon());
    const int theme = settings.value("theme", static_cast<int>(ui::ThemeChoice::System)).toInt();
    ui::applyTheme(*qApp, static_cast<ui::ThemeChoice>(theme));
    ui::DialogPrompts prompts;
    ui::Workbench workbench([] { return QDateTime::currentDateTime(); });
    ui::MainWindow window(workbench, prompts, settings, demoFile);
    window.show();
    if (!files.isEmpty())
        window.openPath(QFileInfo(files.front()).absoluteFilePath());
    const FirstPaint firstPaint(window, sinceStart);
    return QApplication::exec();
}

}  // namespace wm::app

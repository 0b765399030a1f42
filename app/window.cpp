// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window.h"

#include <QApplication>
#include <QDateTime>
#include <QFileInfo>
#include <QSettings>

#include "app/demo.h"
#include "app/logging.h"
#include "ui/drawing/application_icon.h"
#include "ui/shell/dialog_prompts.h"
#include "ui/shell/main_window.h"
#include "ui/theme/theme.h"
#include "ui/workbench.h"

namespace wm::app {

int runWindow(const QStringList& arguments) {
    const Logging logging(false);
    QSettings settings(QSettings::IniFormat, QSettings::UserScope, "witnessmark", "witnessmark");
    QApplication::setWindowIcon(ui::applicationIcon());
    const int theme = settings.value("theme", static_cast<int>(ui::ThemeChoice::System)).toInt();
    ui::applyTheme(*qApp, static_cast<ui::ThemeChoice>(theme));
    ui::DialogPrompts prompts;
    ui::Workbench workbench([] { return QDateTime::currentDateTime(); });
    ui::MainWindow window(workbench, prompts, settings, demoFile);
    window.show();
    if (!arguments.isEmpty())
        window.openPath(QFileInfo(arguments.front()).absoluteFilePath());
    return QApplication::exec();
}

}  // namespace wm::app

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QProcessEnvironment>
#include <QSize>
#include <QString>
#include <vector>

namespace wm::ui {

/// A screen and how large things stand on it.
struct Setting {
    QString name;  ///< "125"
    QSize pixels;  ///< of the screen
    double scale;  ///< what the desktop is set to
    bool isDark;
    int points;  ///< of the font, 0 for the desktop's own
};
const std::vector<Setting>& settings();

/// The environment in which a program meets that screen: Qt learns of it as it starts, so each setting has a
/// process of its own. Writes what the platform reads into `folder`.
QProcessEnvironment environmentOf(const Setting& setting, const QString& folder);

/// What another process of this program, running only `test`, printed; empty if all went well.
QString runIn(const Setting& setting, const QString& test);
/// Whether this process is the one that was begun for it.
bool isIn(const Setting& setting);

}  // namespace wm::ui

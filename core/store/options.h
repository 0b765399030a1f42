// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QDateTime>
#include <QString>
#include <functional>
#include <string>

#include "core/store/schema.h"

namespace wm::store {

/// How safe a write is. Anything but Full exists so that the tests can show that they notice.
enum class Durability { Full, NoSync, NoTransaction };

/// What a test may change about a file. The program uses it as it stands.
struct Options {
    std::string vfs{};  ///< SQLite's name of the file layer; empty for the system's
    std::function<QDateTime()> now = [] { return QDateTime::currentDateTime(); };
    Schema schema = currentSchema();
    Durability durability = Durability::Full;
    bool dailyBackup = true;
    int busyMilliseconds = 2000;
    /// After so many steps of SQLite's machine a statement is broken off. A check of a million rows takes a
    /// tenth of that.
    int mostSteps = 1'000'000'000;
};

}  // namespace wm::store

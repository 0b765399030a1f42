// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>

#include "ui/pages/tasks/baseline_asking.h"

namespace wm::ui {

QString saidWords(Said said);
/// "1 task", "12 tasks"
QString tasksWords(std::size_t count);
/// Empty if there is no fault; `task` is the name of the first one that is asked about.
QString faultWords(const BaselineAsking::Fault& fault, const QString& task);
/// What an answer left open; empty if nothing.
QString takenWords(const BaselineAsking::Taken& taken, const QString& task);

}  // namespace wm::ui

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>

#include "core/upkeep/deeds.h"

namespace wm::ui {

QString deedWords(upkeep::Deed deed);     ///< "crack loose", "off"
QString comesWords(upkeep::Comes comes);  ///< of a doing: "while it is off"

/// The acts or steps that wait for each other, as an error names them: “torque “Rear axle nut” → off
/// “Stand” → torque “Rear axle nut””.
QString cycleWords(const QString& given);

}  // namespace wm::ui

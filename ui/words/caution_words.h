// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>

#include "core/upkeep/task.h"

namespace wm::ui {

/// The words of a caution: what harms, what to do, who decides. Common practice; the manual, a qualified
/// workshop and local rules come first, and the words say so.
struct CautionWords {
    QString hazard;
    QString doThis;
    QString deferTo;
};

CautionWords cautionWords(upkeep::Hazard hazard);

}  // namespace wm::ui

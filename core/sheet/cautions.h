// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string_view>

#include "core/upkeep/task.h"

namespace wm::sheet {

/// The words of a caution: what harms, what to do, who decides. Common practice; the manual, a qualified
/// workshop and local rules come first, and the words say so.
struct CautionWords {
    std::string_view hazard;
    std::string_view doThis;
    std::string_view deferTo;
};

CautionWords cautionWords(upkeep::Hazard hazard);

}  // namespace wm::sheet

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <string_view>

#include "core/units/decimal.h"

namespace wm::units {

/// A figure as it reads in another unit (symbols of convert()), with no more digits than its source: 38
/// lbf·ft is "52" N·m, 2.5 kgf·m is "25" N·m. Digits are significant ones, a written zero at the end among
/// them. In its own unit, and where the units don't convert, the text stays as it was written.
std::string convertedText(const Decimal& value, std::string_view from, std::string_view to, char mark = '.');

}  // namespace wm::units

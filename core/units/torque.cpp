// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/units/torque.h"

#include "core/units/printed.h"

namespace wm::units {

std::string convertedTorqueText(const Decimal& value, TorqueUnit from, TorqueUnit to, char mark) {
    return convertedText(value, base::nameOf(from), base::nameOf(to), mark);
}

}  // namespace wm::units

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <QStringList>

#include "core/fastening/generic.h"

namespace wm::ui {

/// What stands over and under every generic figure, on screen and paper alike.
QString genericTitle();
QString genericCaution();

/// "4.2 to 6.2 N·m": two digits, the high end never rounded up.
QString genericBandText(const fastening::GenericBand& band, char mark);
/// What the band rests on, a line each.
QStringList genericAssumptions(const fastening::GenericBand& band, char mark);

/// Why there is no generic figure and what to do instead.
QString genericRefusalText(const fastening::GenericRefusal& refusal);

}  // namespace wm::ui

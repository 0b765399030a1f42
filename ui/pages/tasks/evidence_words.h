// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>

#include "core/items/evidence.h"

namespace wm::ui {

/// What a piece of evidence was: "hour meter 41.0 h, nobody knows when it was fitted".
QString evidenceWords(const items::Evidence& evidence);
/// What it says: "at least 41.0 h"; "60 % worn: 9 to 18 h behind the chain; the machine at least 9 h".
QString claimWords(const items::Evidence& evidence, const items::Claim& claim, calendar::Date today);
/// "41 h or more, likely 101 h"; "80 to 120 h, likely 101 h".
QString bracketWords(const usage::HoursBracket& hours);

}  // namespace wm::ui

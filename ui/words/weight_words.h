// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <vector>

#include "core/usage/rows.h"

namespace wm::ui {

/// "sand", "ground not stated"; "race pace", "pace not stated".
QString groundWords(usage::Ground ground);
QString paceWords(usage::Pace pace);

/// What an hour counts, without more digits than it needs: "1.5", "2".
QString factorText(std::int64_t permille);

/// "sand counts 1.5, race pace 1.2"; nothing without weights.
QString weightWords(const std::vector<usage::HourWeight>& weights);

}  // namespace wm::ui

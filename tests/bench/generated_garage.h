// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <vector>

#include "core/picture/ledger.h"

namespace wm::bench {

struct GarageSize {
    int machines = 12;
    int tasks = 80;  ///< on each machine
    int years = 20;
};

/// The last day of every generated garage.
inline constexpr int kLastYear = 2026;

/// The rows of a garage that grew over years at the rate of a busy one: about 415 facts a machine and year
/// (12 machines over 20 years: 100,000). The same size always gives the same rows.
std::vector<picture::Row> generatedGarage(const GarageSize& size);

}  // namespace wm::bench

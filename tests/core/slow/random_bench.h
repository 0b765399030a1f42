// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <vector>

#include "tests/core/slow/tale.h"

namespace wm::tale {

/// The bench of tests/data/state/moves.json over `days` days from 2026-03-01, worked at without much order:
/// jobs with all, some or none of their joints torqued, joints confirmed or found moved, wheels, engine and
/// tyre off and on (as work, or as moves that nobody asked about), wrenches that pass and fail, rides and
/// readings, told of any part of the day or of none; some of it struck. The same seed gives the same bench.
std::vector<Json> randomBench(std::uint64_t seed, int days);

/// Its first morning.
calendar::Date benchDay(int day);

}  // namespace wm::tale

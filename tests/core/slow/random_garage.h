// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <random>

#include "tests/core/slow/day_by_day.h"

namespace wm::slow {

/// A garage of two machines, two engines, three wheels and two pistons over `days` days, as careless as real
/// ones: notes that are wrong or missing, readings left out, meters that die, roll over, are replaced and
/// reset, items that move at all times of the day, through two levels. The same seed gives the same garage.
Garage randomGarage(std::uint64_t seed, int days);

/// Some moment within the garage's days, or just outside.
calendar::Moment randomMoment(const Garage& garage, std::mt19937_64& chance);

}  // namespace wm::slow

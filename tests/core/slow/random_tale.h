// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "tests/core/slow/tale.h"

namespace wm::tale {

/// A garage of two machines that share engines, pistons and wheels, over `days` days from 2026-01-01:
/// everything moves between machine, shelf and workshop at all times of the day, some of it is tracked late
/// (as new, as used, or with a fitting told afterwards), jobs are recorded on what sits there, on the spare,
/// or with no item at all, some are looks or baselines, some are struck or put right. What is told of one
/// part of a day is told in any order. In the words of tests/data/subject, so that one that fails can be
/// printed and read. The same seed gives the same garage.
std::vector<Json> randomTale(std::uint64_t seed, int days);

/// The codes of its jobs, the same on both machines.
const std::vector<std::string>& randomTasks();

}  // namespace wm::tale

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <vector>

#include "core/notebook/take.h"

namespace wm::notebook {

/// What the lines of a notebook add up to, so that the mechanic can compare with the sums under his columns.
struct Totals {
    std::size_t lines = 0;
    std::size_t outings = 0;
    units::Hours hours{};  ///< as noted, before any meter has its say
    std::size_t readings = 0;
    std::size_t washes = 0;
    std::size_t crashes = 0;
    std::size_t jobs = 0;
    units::Minutes minutes{};  ///< of the jobs

    Totals& operator+=(const Totals& more);
    friend bool operator==(const Totals&, const Totals&) = default;
};

/// What one line says, for each of its machines.
Totals totalsOf(const Line& line);
/// What would be written, by machine as in Notebook::machines. A line about two machines counts for both.
std::vector<Totals> totalsOf(const Notebook& notebook, const Agreement& agreement);

}  // namespace wm::notebook

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>

namespace wm::outlook {

/// Which draws, and how many: a value, so that the same question has the same answer anywhere. Of 4000 the
/// standard error of a chance is 0.8 points at most.
struct Draws {
    std::uint64_t seed = 20260507;
    std::int32_t count = 4000;
};

/// The random numbers of one draw: SplitMix64 (Steele, Lea and Flood 2014) from a start of its own. The
/// standard library's distributions differ from one to the next, these don't.
class Stream {
  public:
    Stream(std::uint64_t seed, std::uint64_t draw);

    double uniform();  ///< above 0, below 1
    double exponential();
    double normal();             ///< by Marsaglia's polar method
    double gamma(double shape);  ///< mean `shape`; by Marsaglia and Tsang 2000
    double beta(double yes, double no);

  private:
    std::uint64_t next();
    std::uint64_t state_;
};

}  // namespace wm::outlook

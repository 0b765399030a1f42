// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/outlook/draws.h"

#include <cmath>

namespace wm::outlook {

namespace {

constexpr std::uint64_t kStep = 0x9E3779B97F4A7C15U;

std::uint64_t mixed(std::uint64_t z) {
    z = (z ^ (z >> 30U)) * 0xBF58476D1CE4E5B9U;
    z = (z ^ (z >> 27U)) * 0x94D049BB133111EBU;
    return z ^ (z >> 31U);
}

}  // namespace

Stream::Stream(std::uint64_t seed, std::uint64_t draw) : state_(mixed(seed + mixed(draw + kStep))) {}

std::uint64_t Stream::next() {
    state_ += kStep;
    return mixed(state_);
}

double Stream::uniform() {
    return (static_cast<double>(next() >> 12U) + 0.5) * 0x1p-52;
}

double Stream::exponential() {
    return -std::log(uniform());
}

double Stream::normal() {
    for (;;) {
        const double x = 2 * uniform() - 1;
        const double y = 2 * uniform() - 1;
        const double square = x * x + y * y;
        if (square < 1 && square > 0)
            return x * std::sqrt(-2 * std::log(square) / square);
    }
}

double Stream::gamma(double shape) {
    if (shape < 1)
        return gamma(shape + 1) * std::pow(uniform(), 1 / shape);
    const double d = shape - 1.0 / 3;
    const double c = 1 / std::sqrt(9 * d);
    for (;;) {
        const double x = normal();
        const double v = 1 + c * x;
        if (v <= 0)
            continue;
        const double cube = v * v * v;
        if (std::log(uniform()) < 0.5 * x * x + d * (1 - cube + std::log(cube)))
            return d * cube;
    }
}

double Stream::beta(double yes, double no) {
    const double a = gamma(yes);
    return a / (a + gamma(no));
}

}  // namespace wm::outlook

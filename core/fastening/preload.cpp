// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/fastening/preload.h"

#include <cmath>
#include <numbers>

namespace wm::fastening {

namespace {

constexpr double kMillimetres = 1000;

}  // namespace

double bearingDiameter(const Thread& thread) {
    const double face = 1.45 * thread.diameter;
    const double hole = 1.1 * thread.diameter;
    return (face + hole) / 2;
}

double torqueFor(double preload, const Thread& thread, const Friction& friction, double bearing) {
    return preload *
           (0.16 * thread.pitch + 0.58 * thread.pitchDiameter() * friction.thread +
            bearing / 2 * friction.head) /
           kMillimetres;
}

double exactTorqueFor(double preload, const Thread& thread, const Friction& friction, double bearing) {
    const double flank = std::cos(std::numbers::pi / 6);
    return preload *
           (thread.pitch / (2 * std::numbers::pi) + thread.pitchDiameter() * friction.thread / (2 * flank) +
            bearing / 2 * friction.head) /
           kMillimetres;
}

double torqueByNutFactor(double preload, const Thread& thread, double nutFactor) {
    return nutFactor * thread.diameter * preload / kMillimetres;
}

}  // namespace wm::fastening

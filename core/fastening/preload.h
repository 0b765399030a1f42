// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/fastening/thread.h"

namespace wm::fastening {

/// Coefficients of friction in the thread and under the head.
struct Friction {
    double thread = 0;
    double head = 0;
};

/// Mean diameter of the bearing face under a hexagon head, mm: across flats 1.5 d, hole of medium fit; good
/// to about 2 % for M5 to M16 (ISO 4014 and ISO 273 sizes from memory).
double bearingDiameter(const Thread& thread);

/// The torque in N·m that stretches a bolt to `preload` N: T = F (0.16 P + 0.58 d2 µ + Dkm/2 µ), the form of
/// VDI 2230. M8, 17 kN, µ 0.12, Dkm 10.8 mm: 22.92.
double torqueFor(double preload, const Thread& thread, const Friction& friction, double bearingDiameter);

/// The same without rounded constants: 1/(2 pi) and 1/(2 cos 30°).
double exactTorqueFor(double preload, const Thread& thread, const Friction& friction, double bearingDiameter);

/// T = K d F in N·m, with one nut factor for all friction.
double torqueByNutFactor(double preload, const Thread& thread, double nutFactor);

}  // namespace wm::fastening

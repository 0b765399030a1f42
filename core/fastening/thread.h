// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <string_view>

#include "core/base/result.h"

namespace wm::fastening {

/// An ISO metric thread; lengths in mm. Basic profile of ISO 68-1 and ISO 724, stress area of ISO 898-1.
struct Thread {
    double diameter = 0;
    double pitch = 0;

    [[nodiscard]] double pitchDiameter() const;  ///< d2 = d - 3/4 H; M8: 7.188
    [[nodiscard]] double minorDiameter() const;  ///< d3 = d - 17/12 H, of the bolt; M8: 6.466
    /// As = pi/4 ((d2 + d3) / 2)^2 in mm²; M8: 36.61
    [[nodiscard]] double stressArea() const;
    /// The same with the three digits that ISO 898-1 prints and reckons loads from; M8: 36.6
    [[nodiscard]] double nominalStressArea() const;

    friend bool operator==(const Thread&, const Thread&) = default;
};

/// Reads "M8x1.25", "M8 x 1,25", "8x1.25" or "M8" (coarse pitch). Only sizes and pitches of ISO 261 up to
/// M64 and those of ISO 965 bearing nuts that bikes use: a typing error is a thread that isn't made.
/// Errors: Empty, Malformed (no thread at all), Implausible (no such thread: "M7.3x9"; `wanted` the coarse
/// pitch of the diameter, if there is one).
base::Result<Thread> parseThread(std::string_view field, std::string_view text);

/// "M8x1.25"
std::string threadText(const Thread& thread);

/// The stress under proof load in MPa of a property class of ISO 898-1 ("8.8"); it is 600 and not 580 for
/// 8.8 above 16 mm. Errors: Unknown (`wanted` the classes that are known).
base::Result<double> proofStress(std::string_view propertyClass, const Thread& thread);

/// Proof load in N as ISO 898-1 reckons it, before rounding for print: M8 8.8 is 21,228 (printed 21,200).
base::Result<double> proofLoad(std::string_view propertyClass, const Thread& thread);

/// "4.6, 4.8, ...": the property classes that have a proof stress here.
std::string propertyClasses();

}  // namespace wm::fastening

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <cstdint>
#include <string>
#include <tl/expected.hpp>

#include "core/base/names.h"
#include "core/fastening/danger.h"
#include "core/fastening/preload.h"
#include "core/fastening/rows.h"

namespace wm::fastening {

// A torque from a standard alone, for a joint of which the manual says nothing; mostly refused. In words:
// ui/words/generic_words.h.

/// What the bolt is screwed into: a nut or steel as strong as the bolt, cast aluminium (softer than any
/// bolt), or magnesium (refused).
enum class Hole : std::uint8_t { Steel, Aluminium, Magnesium };

/// What is on the threads, as a class of friction (VDI 2230, table A5, from memory): Unknown spans dry and
/// lubricated.
enum class Lubrication : std::uint8_t { Unknown, Dry, Lubricated, AntiSeize };

/// What is asked: the joint as far as it is known. Nothing is assumed for the mechanic but what stands here.
struct GenericAsk {
    JointKind kind = JointKind::Other;
    std::string name{};  ///< of a joint whose kind nobody stated: its name may still speak of a dangerous one
    std::string thread{};
    std::string propertyClass{};  ///< as on the bolt's head: "8.8"
    Hole hole = Hole::Steel;
    Lubrication lubrication = Lubrication::Unknown;
    double engagement = 1;   ///< length of thread in the hole, in diameters
    bool byAngle = false;    ///< the manual ends the joint with an angle
    bool hasFigure = false;  ///< the manual's own figure is known
};

/// Why there is no generic figure. The first three can't be argued with; the last ones say what is missing.
enum class GenericWhy : std::uint8_t {
    DangerousKind,  ///< one of the kinds that dangerousKind() lists
    Magnesium,
    ByAngle,
    HasFigure,        ///< nothing is silent here
    ShortEngagement,  ///< fewer than kLeastEngagement diameters: the hole decides, and nobody knows how
    NoSuchThread,
    TooSmallOrLarge,  ///< outside M4 to M16
    NoSuchClass,
    NotANumber  ///< an engagement that is no length
};

struct GenericRefusal {
    GenericWhy why = GenericWhy::DangerousKind;
    JointKind kind = JointKind::Other;
    std::string given{};

    friend bool operator==(const GenericRefusal&, const GenericRefusal&) = default;
};

/// A band in N·m and everything that was assumed for it. Its high end keeps bolt and hole under
/// kMostOfProof even if the joint is as slippery as its class of friction can be; its low end is two thirds
/// of that.
struct GenericBand {
    double low = 0;
    double high = 0;
    Thread thread{};
    std::string propertyClass{};
    Hole hole = Hole::Steel;
    double engagement = 1;
    Friction slippery{};       ///< the least friction of the class that was taken
    Friction rough{};          ///< the most
    double proof = 0;          ///< N, of the bolt
    double most = 0;           ///< N, of preload that bolt and hole may bear here
    bool holeDecides = false;  ///< the thread in the hole is the weaker one
    double leastShare = 0;     ///< of the proof load, at the low end in the roughest joint
};

inline constexpr double kMostOfProof = 0.75;     ///< common practice for joints that are undone again
inline constexpr double kLeastEngagement = 0.8;  ///< diameters
inline constexpr double kMostEngagement = 2.5;   ///< beyond it more thread bears nothing more

tl::expected<GenericBand, GenericRefusal> genericBand(const GenericAsk& ask);

}  // namespace wm::fastening

namespace wm::base {
template <>
struct Names<fastening::Hole> {
    static constexpr std::array<std::string_view, 3> names{"steel", "aluminium", "magnesium"};
};
template <>
struct Names<fastening::Lubrication> {
    static constexpr std::array<std::string_view, 4> names{"unknown", "dry", "lubricated", "anti-seize"};
};
template <>
struct Names<fastening::GenericWhy> {
    static constexpr std::array<std::string_view, 9> names{
        "dangerous kind", "magnesium",          "by angle",      "has figure",  "short engagement",
        "no such thread", "too small or large", "no such class", "not a number"};
};
}  // namespace wm::base

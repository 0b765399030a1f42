// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/fastening/kind_words.h"

#include <algorithm>
#include <array>

#include "core/base/text.h"

namespace wm::fastening {

namespace {

struct KindWord {
    std::string_view part;
    JointKind kind;
};

// The first that is in the name counts.
constexpr std::array<KindWord, 56> kKindWords{{
    {"pinch", JointKind::Pinch},
    {"axle", JointKind::Axle},
    {"spindle", JointKind::Axle},
    {"brake", JointKind::Brake},
    {"caliper", JointKind::Brake},
    {"calliper", JointKind::Brake},
    {"disc", JointKind::Brake},
    {"rotor", JointKind::Brake},
    {"banjo", JointKind::Brake},
    {"bleed", JointKind::Brake},
    {"master cyl", JointKind::Brake},
    {"spoke", JointKind::Spoke},
    {"nipple", JointKind::Spoke},
    {"sprocket", JointKind::Sprocket},
    {"swingarm", JointKind::Swingarm},
    {"swing arm", JointKind::Swingarm},
    {"linkage", JointKind::Linkage},
    {"link", JointKind::Linkage},
    {"rocker", JointKind::Linkage},
    {"dog bone", JointKind::Linkage},
    {"dogbone", JointKind::Linkage},
    {"shock", JointKind::Shock},
    {"fork", JointKind::Suspension},
    {"damper", JointKind::Suspension},
    {"cartridge", JointKind::Suspension},
    {"suspension", JointKind::Suspension},
    {"steering", JointKind::Steering},
    {"stem", JointKind::Steering},
    {"triple", JointKind::Steering},
    {"yoke", JointKind::Steering},
    {"top clamp", JointKind::Steering},
    {"bottom clamp", JointKind::Steering},
    {"bar clamp", JointKind::Steering},
    {"handlebar", JointKind::Steering},
    {"bar mount", JointKind::Steering},
    {"peg", JointKind::Peg},
    {"foot rest", JointKind::Peg},
    {"footrest", JointKind::Peg},
    {"pivot", JointKind::Pivot},
    {"wheel", JointKind::Wheel},
    {"rim", JointKind::Wheel},
    {"mount", JointKind::EngineMount},
    {"disk", JointKind::Brake},
    {"perch", JointKind::Brake},
    {"top nut", JointKind::Steering},
    {"rear set", JointKind::Peg},
    {"rearset", JointKind::Peg},
    {"front hub", JointKind::Wheel},
    {"rear hub", JointKind::Wheel},
    {"brems", JointKind::Brake},
    {"achs", JointKind::Axle},
    {"lenkkopf", JointKind::Steering},
    {"steuerkopf", JointKind::Steering},
    {"lenker", JointKind::Steering},
    {"schwinge", JointKind::Swingarm},
    {"speiche", JointKind::Spoke},
}};

// What holds the crank, the rod and the head: stretched or turned by an angle in the manuals of most (common
// practice, without a source).
constexpr std::array<std::string_view, 10> kStretched{"con rod",   "conrod",    "connecting rod", "rod bolt",
                                                      "rod cap",   "big end",   "cylinder head",  "head bolt",
                                                      "head stud", "crankshaft"};

}  // namespace

bool isStretchedByName(std::string_view name) {
    const std::string low = base::lowered(name);
    return std::any_of(kStretched.begin(), kStretched.end(),
                       [&low](std::string_view part) { return low.find(part) != std::string::npos; });
}

JointKind kindByName(std::string_view name) {
    const std::string low = base::lowered(name);
    const auto* const found =
        std::find_if(kKindWords.begin(), kKindWords.end(),
                     [&low](const KindWord& word) { return low.find(word.part) != std::string::npos; });
    return found == kKindWords.end() ? JointKind::Other : found->kind;
}

}  // namespace wm::fastening

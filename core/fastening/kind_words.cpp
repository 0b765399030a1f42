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
constexpr std::array<KindWord, 42> kKindWords{{
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
}};

}  // namespace

JointKind kindByName(std::string_view name) {
    const std::string low = base::lowered(name);
    const auto* const found =
        std::find_if(kKindWords.begin(), kKindWords.end(),
                     [&low](const KindWord& word) { return low.find(word.part) != std::string::npos; });
    return found == kKindWords.end() ? JointKind::Other : found->kind;
}

}  // namespace wm::fastening

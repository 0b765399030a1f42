// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/items/positions.h"

#include <algorithm>
#include <array>

#include "core/base/text.h"

namespace wm::items {

namespace {

constexpr std::array<std::string_view, 30> kNeeded{
    "axle",   "bars",           "brake caliper", "brake disc",     "carburettor",   "chain",
    "clutch", "connecting rod", "crank",         "cylinder",       "cylinder head", "ecu",
    "engine", "fork",           "front caliper", "front sprocket", "front tyre",    "front wheel",
    "piston", "radiator",       "rear caliper",  "rear sprocket",  "rear tyre",     "rear wheel",
    "shock",  "silencer",       "swingarm",      "tank",           "throttle body", "tyre"};
constexpr std::array<std::string_view, 10> kMayBeOff{
    "hand guards",  "headlamp", "indicators", "light",      "lights",
    "number plate", "mirrors",  "side stand", "skid plate", "tool bag"};

template <std::size_t N>
bool holds(const std::array<std::string_view, N>& words, std::string_view word) {
    return std::find(words.begin(), words.end(), word) != words.end();
}

}  // namespace

Need needOf(std::string_view path) {
    const auto slash = path.rfind('/');
    const std::string word =
        base::lowered(base::trimmed(slash == std::string_view::npos ? path : path.substr(slash + 1)));
    if (holds(kNeeded, word))
        return Need::Needed;
    return holds(kMayBeOff, word) ? Need::MayBeOff : Need::Unknown;
}

}  // namespace wm::items

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/items/positions.h"

#include <algorithm>
#include <array>

#include "core/base/text.h"

namespace wm::items {

namespace {

/// `also`: other words, with bars between them. `kinds`: what it takes besides its own code, likewise.
struct Position {
    std::string_view code;
    Need need;
    std::string_view also;
    std::string_view kinds;
};

constexpr std::array kPositions{
    Position{"axle", Need::Needed, "", "front axle|rear axle"},
    Position{"bars", Need::Needed, "bar|handlebar|handlebars", ""},
    Position{"brake caliper", Need::Needed, "caliper", "front caliper|rear caliper"},
    Position{"brake disc", Need::Needed, "disc|front disc|rear disc|front brake disc|rear brake disc", ""},
    Position{"carburettor", Need::Needed, "carb|carburetor", ""},
    Position{"chain", Need::Needed, "drive chain", ""},
    Position{"clutch", Need::Needed, "", ""},
    Position{"connecting rod", Need::Needed, "con rod|rod", ""},
    Position{"crank", Need::Needed, "crankshaft", ""},
    Position{"cylinder", Need::Needed, "barrel", ""},
    Position{"cylinder head", Need::Needed, "head", ""},
    Position{"ecu", Need::Needed, "ignition box", ""},
    Position{"engine", Need::Needed, "motor", ""},
    Position{"fork", Need::Needed, "forks|front fork|fork leg|fork legs", ""},
    Position{"front axle", Need::Needed, "", "axle"},
    Position{"front caliper", Need::Needed, "front brake caliper", "brake caliper"},
    Position{"front sprocket", Need::Needed, "countershaft sprocket", "sprocket"},
    Position{"front tyre", Need::Needed, "", "tyre"},
    Position{"front wheel", Need::Needed, "", "wheel"},
    Position{"piston", Need::Needed, "piston kit", ""},
    Position{"radiator", Need::Needed, "radiators|left radiator|right radiator", ""},
    Position{"rear axle", Need::Needed, "", "axle"},
    Position{"rear caliper", Need::Needed, "rear brake caliper", "brake caliper"},
    Position{"rear sprocket", Need::Needed, "", "sprocket"},
    Position{"rear tyre", Need::Needed, "back tyre", "tyre"},
    Position{"rear wheel", Need::Needed, "back wheel", "wheel"},
    Position{"shock", Need::Needed, "shock absorber|rear shock", ""},
    Position{"silencer", Need::Needed, "muffler", ""},
    Position{"swingarm", Need::Needed, "swing arm", ""},
    Position{"tank", Need::Needed, "fuel tank", ""},
    Position{"throttle body", Need::Needed, "", ""},
    Position{"tyre", Need::Needed, "tire", "front tyre|rear tyre"},
    Position{"hand guards", Need::MayBeOff, "hand guard|handguards", ""},
    Position{"headlamp", Need::MayBeOff, "headlight", ""},
    Position{"indicators", Need::MayBeOff, "indicator", ""},
    Position{"lights", Need::MayBeOff, "light", ""},
    Position{"mirrors", Need::MayBeOff, "mirror", ""},
    Position{"number plate", Need::MayBeOff, "plate", ""},
    Position{"side stand", Need::MayBeOff, "", ""},
    Position{"skid plate", Need::MayBeOff, "sump guard", ""},
    Position{"tool bag", Need::MayBeOff, "", ""}};

/// Kinds that are the code of no position.
constexpr std::string_view kOtherKinds = "wheel|sprocket";

bool isAmong(std::string_view list, std::string_view word) {
    while (!list.empty()) {
        const auto bar = list.find('|');
        if (list.substr(0, bar) == word)
            return true;
        list = bar == std::string_view::npos ? std::string_view{} : list.substr(bar + 1);
    }
    return false;
}

const Position* known(std::string_view word) {
    const auto* found = std::find_if(kPositions.begin(), kPositions.end(), [word](const Position& each) {
        return each.code == word || isAmong(each.also, word);
    });
    return found == kPositions.end() ? nullptr : &*found;
}

std::string codeOf(std::string_view words) {
    std::string word = base::lowered(base::trimmed(words));
    const Position* position = known(word);
    return position == nullptr ? word : std::string(position->code);
}

std::string_view lastOf(std::string_view path) {
    const auto slash = path.rfind('/');
    return slash == std::string_view::npos ? path : path.substr(slash + 1);
}

}  // namespace

Need needOf(std::string_view path) {
    const Position* position = known(codeOf(lastOf(path)));
    return position == nullptr ? Need::Unknown : position->need;
}

std::string codedPath(std::string_view path) {
    const auto slash = path.find('/');
    if (slash == std::string_view::npos)
        return codeOf(path);
    return codeOf(path.substr(0, slash)) + '/' + codedPath(path.substr(slash + 1));
}

bool accepts(std::string_view path, std::string_view kind) {
    const Position* position = known(codeOf(lastOf(path)));
    const std::string word = codeOf(kind);
    if (position == nullptr || word.empty() || (known(word) == nullptr && !isAmong(kOtherKinds, word)))
        return true;
    return word == position->code || isAmong(position->kinds, word);
}

}  // namespace wm::items

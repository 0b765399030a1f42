// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/words/synonyms.h"

#include <algorithm>
#include <array>
#include <map>

#include "core/base/text.h"
#include "core/words/folding.h"
#include "core/words/search_words.h"

namespace wm::words {

namespace {

// The one table of other words: a line is one thing, phrases apart by a bar, the one that the schedules use
// in front. Mechanics' English from both sides of the ocean, short forms, then what stands in German
// notebooks.
constexpr std::array kSame{
    "front|fr|frt|fwd|vorne",
    "rear|back|rr|hinten",
    "upper|top|upr",
    "lower|bottom|lwr|btm",
    "left|lh",
    "right|rh",
    "inlet|intake",
    "axle nut|spindle nut|wheel nut|axle",
    "axle|spindle|wheel axle",
    "pinch|clamp|fork leg pinch",
    "top clamp|upper triple clamp|upper triple tree|top yoke|upper yoke|upper clamp",
    "bottom clamp|lower triple clamp|lower triple tree|bottom yoke|lower yoke|lower clamp",
    "steering|headstock|steering head",
    "stem ring nut|adjuster nut",
    "steering bearing ring nut|steering adjuster|head bearing nut",
    "swingarm|swinging arm|swing arm|schwinge",
    "linkage|link|rocker|rising rate|umlenkung|umlenkhebel",
    "link rod|pull rod|dogbone|tie rod",
    "shock|damper|rear suspension unit",
    "fork|front suspension|gabel",
    "fork cap|fork top bolt|fork top cap",
    "fork base valve|fork bottom bolt|compression valve",
    "handlebar|bar|handle bar",
    "handlebar mount|bar riser|bar holder",
    "lever perch|lever bracket|lever holder",
    "footpeg|peg|footrest",
    "gear lever|shifter|shift lever|gear shift lever|gear pedal",
    "kick start|kickstarter|kicker",
    "caliper|calliper",
    "caliper slide pin|caliper guide pin",
    "pad pin|pad hanger|pad retaining pin",
    "disc|disk|brake rotor",
    "bleed screw|bleed nipple|bleeder",
    "banjo bolt|hose union|brake line bolt",
    "front sprocket|countershaft sprocket|output sprocket|gearbox sprocket|drive sprocket|engine sprocket",
    "rear sprocket|driven sprocket|final sprocket",
    "chain adjuster|axle adjuster|chain tensioner",
    "chain slider|swingarm buffer|chain pad",
    "rim lock|security bolt|bead lock",
    "spoke|nipple|speichen",
    "tyre|tire|reifen",
    "rear tyre|rear tire|hinterreifen",
    "front tyre|front tire|vorderreifen",
    "oil drain bolt|sump plug|oil drain plug|sump bolt",
    "coolant drain bolt|water drain plug|water pump drain",
    "drain bolt|drain plug",
    "oil filter cover|oil filter cap",
    "oil screen|oil strainer|sump screen",
    "gearbox oil|transmission oil|gear oil",
    "engine oil|motor oil|crankcase oil",
    "coolant|antifreeze|radiator fluid|water|kuhlmittel",
    "clutch cover|clutch side cover",
    "primary cover|right case|clutch case|inner clutch cover",
    "clutch hub|clutch centre|clutch center|inner hub",
    "clutch spring|pressure plate",
    "ignition cover|stator cover|flywheel cover|generator cover|magneto cover|alternator cover",
    "rotor|flywheel|magneto",
    "rotor nut|flywheel nut|crank nut",
    "primary gear|crank gear|primary drive",
    "valve cover|rocker cover|cam cover|tappet cover|cylinder head cover",
    "camshaft cap|cam cap|camshaft holder|cam bearing cap",
    "valve clearance|tappet|valve lash|valve gap|ventilspiel",
    "cylinder head|head",
    "head stay|head steady|top engine mount|upper engine mount",
    "cylinder base|barrel|jug",
    "cylinder crankcase|barrel",
    "cylinder|barrel",
    "engine mount|engine bolt|motor mount",
    "reed|reed valve|reed cage",
    "power valve|exhaust valve cover",
    "header|exhaust pipe|exhaust header|downpipe",
    "header flange|exhaust flange|manifold",
    "silencer|muffler|exhaust can|tailpipe",
    "expansion chamber|expansion pipe|exhaust pipe",
    "intake clamp|carb clamp|carburettor clamp|throttle body clamp|boot clamp",
    "carburettor|carb|carburetor",
    "tank|fuel tank|petrol tank|gas tank",
    "subframe|rear frame|seat rail",
    "side panel|number plate|side plate",
    "spark plug|sparking plug|ignition plug",
    "plug|sparkplug|zundkerze",
    "slack|sag|free play",
    "sag|ride height",
    "compression|comp|clicker compression",
    "rebound|reb|clicker rebound|tension damping",
    "piston clearance|skirt clearance|piston fit",
    "ring gap|ring end gap",
    "bore|cylinder bore",
    "run out|runout|true|warp",
    "thickness|wear limit",
    "starter motor|electric start",
    "threadlocker|thread lock|locking compound",
    "gearing|final drive|sprocket ratio",
    "sprocket|ritzel|kettenrad",
    "chain|kette",
    "chain sprocket|chainkit|kettensatz",
    "pad|brakepad|bremsbelage|belage",
    "valve|ventile",
    "piston|kolben",
    "clutch|kupplung",
    "oil|ol|motorol|olwechsel",
    "fork oil|forkoil|gabelol",
    "oil filter|oilfilter|olfilter",
    "air filter|airfilter|luftfilter",
    "grease|greased|gefettet|abgeschmiert",
    "lube|lubed",
    "packing|repack|repacked",
};

std::vector<SameThing> readTable() {
    std::vector<SameThing> things;
    for (const std::string_view line : kSame) {
        SameThing& thing = things.emplace_back();
        for (const std::string& phrase : base::split(line, '|'))
            thing.phrases.push_back(searchWords(phrase));
    }
    return things;
}

using Meanings = std::map<std::string, std::vector<std::string>, std::less<>>;

// A word that stands in one line alone and is no word of what stands in front there means that.
Meanings readMeanings() {
    std::map<std::string, std::size_t, std::less<>> lines;
    std::map<std::string, const SameThing*, std::less<>> in;
    for (const SameThing& thing : sameThings())
        for (const auto& phrase : thing.phrases)
            if (phrase.size() == 1) {
                ++lines[phrase.front()];
                in[phrase.front()] = &thing;
            }
    Meanings meanings;
    for (const auto& [word, count] : lines) {
        const auto& front = in.at(word)->phrases.front();
        if (count == 1 && std::find(front.begin(), front.end(), word) == front.end())
            meanings.emplace(word, front);
    }
    // "dogbone" is a link rod, and a link is a linkage.
    Meanings whole;
    for (const auto& [word, front] : meanings)
        for (const std::string& part : front) {
            const auto further = meanings.find(part);
            auto& into = whole[word];
            if (further == meanings.end())
                into.push_back(part);
            else
                into.insert(into.end(), further->second.begin(), further->second.end());
        }
    return whole;
}

}  // namespace

std::span<const SameThing> sameThings() {
    static const std::vector<SameThing> things = readTable();
    return things;
}

std::vector<std::string> meantBy(std::string_view word) {
    static const Meanings meanings = readMeanings();
    std::string bare = singular(std::string(word));
    const auto known = meanings.find(bare);
    return known == meanings.end() ? std::vector{std::move(bare)} : known->second;
}

}  // namespace wm::words

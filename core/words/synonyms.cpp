// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/fastening/trade_words.h"

#include <algorithm>
#include <array>

#include "core/base/text.h"

namespace wm::fastening {

namespace {

// The one table of other words: a line is one thing, phrases apart by a bar. Mechanics' English from both
// sides of the ocean, short forms last.
constexpr std::array kSame{
    "front|fr|frt|fwd",
    "rear|back|rr",
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
    "swingarm|swinging arm|swing arm",
    "linkage|link|rocker|rising rate",
    "link rod|pull rod|dogbone|tie rod",
    "shock|damper|rear suspension unit",
    "fork|front suspension",
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
    "spoke|nipple",
    "tyre|tire",
    "oil drain bolt|sump plug|oil drain plug|sump bolt",
    "coolant drain bolt|water drain plug|water pump drain",
    "drain bolt|drain plug",
    "oil filter cover|oil filter cap",
    "oil screen|oil strainer|sump screen",
    "gearbox oil|transmission oil|gear oil",
    "engine oil|motor oil|crankcase oil",
    "coolant|antifreeze|radiator fluid|water",
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
    "valve clearance|tappet|valve lash|valve gap",
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
};

// One letter for each of U+00C0 to U+00FF; a blank where there is none.
constexpr std::string_view kLatin =
    "aaaaaaaceeeeiiiidnoooooxouuuuyts"
    "aaaaaaaceeeeiiiidnooooo ouuuuyty";

constexpr std::array kSaysNothing{"the", "of",   "and", "or", "to", "for", "on", "a", "an",
                                  "is",  "what", "my",  "in", "at", "how", "do", "i", "with"};

bool isDigit(char c) {
    return c >= '0' && c <= '9';
}

bool isLetter(char c) {
    return c >= 'a' && c <= 'z';
}

// Lower case in single bytes: accents dropped, the sign of multiplication an x, all else that is no letter,
// digit or decimal mark a blank.
std::string plain(std::string_view text) {
    std::string out;
    out.reserve(text.size());
    for (std::size_t at = 0; at < text.size(); ++at) {
        const auto c = static_cast<unsigned char>(text[at]);
        if (c >= 'A' && c <= 'Z')
            out += static_cast<char>(c - 'A' + 'a');
        else if (c == 0xC3 && at + 1 < text.size())
            out += kLatin[static_cast<unsigned char>(text[++at]) & 0x3FU];
        else if (c == 0xC2 && at + 1 < text.size()) {
            ++at;  // a sign, no letter: middle dot, no-break space
            out += ' ';
        } else if (c >= 0x80 || isLetter(text[at]) || isDigit(text[at]) || c == '.')
            out += text[at];
        else
            out += c == ',' ? '.' : ' ';
    }
    return out;
}

std::size_t numberEnd(std::string_view text, std::size_t at) {
    while (at < text.size() &&
           (isDigit(text[at]) || (text[at] == '.' && at + 1 < text.size() && isDigit(text[at + 1]))))
        ++at;
    return at;
}

// "1.50" and "1.5" are one pitch.
std::string shortest(std::string_view number) {
    std::string digits(number);
    if (digits.find('.') != std::string::npos) {
        digits.erase(digits.find_last_not_of('0') + 1);
        if (digits.back() == '.')
            digits.pop_back();
    }
    return digits;
}

// Reads "m20x1.5", "m20 x 1.5", "20x1.5", "m8" at `at`; gives where it ends, or `at` if there is none.
std::size_t takeThread(std::string_view text, std::size_t at, std::vector<std::string>& words) {
    const bool named = text[at] == 'm';
    const std::size_t first = at + (named ? 1 : 0);
    const std::size_t size = numberEnd(text, first);
    if (size == first)
        return at;
    std::size_t next = size;
    while (next < text.size() && text[next] == ' ')
        ++next;
    std::size_t pitch = next + 1;
    while (pitch < text.size() && text[pitch] == ' ')
        ++pitch;
    const std::size_t end =
        next < text.size() && text[next] == 'x' && pitch < text.size() ? numberEnd(text, pitch) : pitch;
    if (next < text.size() && text[next] == 'x' && end > pitch) {
        words.push_back("m" + shortest(text.substr(first, size - first)));
        words.push_back("x" + shortest(text.substr(pitch, end - pitch)));
        return end;
    }
    if (!named || (size < text.size() && isLetter(text[size])))
        return at;
    words.push_back("m" + shortest(text.substr(first, size - first)));
    return size;
}

std::string singular(std::string word) {
    if (word.size() > 3 && word.back() == 's' && word[word.size() - 2] != 's')
        word.pop_back();
    return word;
}

std::vector<SameThing> readTable() {
    std::vector<SameThing> things;
    for (const std::string_view line : kSame) {
        SameThing& thing = things.emplace_back();
        for (const std::string& phrase : base::split(line, '|'))
            thing.phrases.push_back(searchWords(phrase));
    }
    return things;
}

}  // namespace

std::vector<std::string> searchWords(std::string_view text) {
    const std::string letters = plain(text);
    std::vector<std::string> words;
    std::size_t at = 0;
    while (at < letters.size()) {
        const char c = letters[at];
        if (c == ' ' || c == '.') {
            ++at;
            continue;
        }
        const bool begins = at == 0 || letters[at - 1] == ' ' || letters[at - 1] == '.';
        if (begins && (c == 'm' || isDigit(c))) {
            const std::size_t end = takeThread(letters, at, words);
            if (end > at) {
                at = end;
                continue;
            }
        }
        std::size_t end = isDigit(c) ? numberEnd(letters, at) : at;
        while (end < letters.size() && letters[end] != ' ' && letters[end] != '.')
            ++end;
        std::string word = singular(letters.substr(at, end - at));
        if (std::find(kSaysNothing.begin(), kSaysNothing.end(), word) == kSaysNothing.end())
            words.push_back(std::move(word));
        at = end;
    }
    return words;
}

std::span<const SameThing> sameThings() {
    static const std::vector<SameThing> things = readTable();
    return things;
}

std::optional<FigureKind> kindMeantBy(std::string_view searchWord) {
    struct Meaning {
        std::string_view word;
        FigureKind kind;
    };
    static constexpr std::array kMeanings{
        Meaning{"torque", FigureKind::Joint},      Meaning{"tighten", FigureKind::Joint},
        Meaning{"tight", FigureKind::Joint},       Meaning{"amount", FigureKind::Quantity},
        Meaning{"quantity", FigureKind::Quantity}, Meaning{"capacity", FigureKind::Quantity},
        Meaning{"volume", FigureKind::Quantity},   Meaning{"much", FigureKind::Quantity},
        Meaning{"many", FigureKind::Quantity},     Meaning{"limit", FigureKind::Limit},
        Meaning{"spec", FigureKind::Limit},        Meaning{"setting", FigureKind::Setting},
        Meaning{"click", FigureKind::Setting},     Meaning{"clicker", FigureKind::Setting},
    };
    const auto found = std::find_if(kMeanings.begin(), kMeanings.end(),
                                    [&](const Meaning& meaning) { return meaning.word == searchWord; });
    if (found == kMeanings.end())
        return std::nullopt;
    return found->kind;
}

}  // namespace wm::fastening

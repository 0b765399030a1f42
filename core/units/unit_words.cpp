// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/units/unit_words.h"

#include <algorithm>
#include <array>
#include <string>

#include "core/base/text.h"
#include "core/units/convert.h"

namespace wm::units {

using base::Fault;
using base::refuse;

namespace {

struct Spelling {
    std::string_view written;  ///< lower case, letters and digits alone
    std::string_view symbol;
};

// Manuals and mechanics write the pound-force foot in either order, with and without the f; "kgm", "mkg" and
// "kpm" are the kilogram-force metre of older manuals.
constexpr std::array kSpellings{
    Spelling{"nm", "N·m"},
    Spelling{"newtonmetre", "N·m"},
    Spelling{"newtonmeter", "N·m"},
    Spelling{"lbft", "lbf·ft"},
    Spelling{"lbfft", "lbf·ft"},
    Spelling{"ftlb", "lbf·ft"},
    Spelling{"ftlbf", "lbf·ft"},
    Spelling{"footpound", "lbf·ft"},
    Spelling{"footlb", "lbf·ft"},
    Spelling{"ftpound", "lbf·ft"},
    Spelling{"poundfoot", "lbf·ft"},
    Spelling{"poundfeet", "lbf·ft"},
    Spelling{"poundft", "lbf·ft"},
    Spelling{"lbin", "lbf·in"},
    Spelling{"lbfin", "lbf·in"},
    Spelling{"inlb", "lbf·in"},
    Spelling{"inlbf", "lbf·in"},
    Spelling{"inchpound", "lbf·in"},
    Spelling{"inchlb", "lbf·in"},
    Spelling{"inpound", "lbf·in"},
    Spelling{"poundinch", "lbf·in"},
    Spelling{"kgm", "kgf·m"},
    Spelling{"kgfm", "kgf·m"},
    Spelling{"mkg", "kgf·m"},
    Spelling{"mkgf", "kgf·m"},
    Spelling{"kpm", "kgf·m"},
    Spelling{"kgcm", "kgf·cm"},
    Spelling{"kgfcm", "kgf·cm"},
    Spelling{"cmkg", "kgf·cm"},
    Spelling{"cmkgf", "kgf·cm"},
    Spelling{"kpcm", "kgf·cm"},
    Spelling{"kpa", "kPa"},
    Spelling{"bar", "bar"},
    Spelling{"psi", "psi"},
    Spelling{"lbin2", "psi"},
    Spelling{"kgcm2", "kgf/cm²"},
    Spelling{"kgfcm2", "kgf/cm²"},
    Spelling{"ml", "ml"},
    Spelling{"millilitre", "ml"},
    Spelling{"milliliter", "ml"},
    Spelling{"cc", "cm³"},
    Spelling{"cm3", "cm³"},
    Spelling{"ccm", "cm³"},
    Spelling{"l", "l"},
    Spelling{"litre", "l"},
    Spelling{"liter", "l"},
    Spelling{"usfloz", "US fl oz"},
    Spelling{"usoz", "US fl oz"},
    Spelling{"uspt", "US pt"},
    Spelling{"usqt", "US qt"},
    Spelling{"usquart", "US qt"},
    Spelling{"usgal", "US gal"},
    Spelling{"impfloz", "imp fl oz"},
    Spelling{"imppt", "imp pt"},
    Spelling{"impqt", "imp qt"},
    Spelling{"impgal", "imp gal"},
    Spelling{"mm", "mm"},
    Spelling{"millimetre", "mm"},
    Spelling{"millimeter", "mm"},
    Spelling{"cm", "cm"},
    Spelling{"in", "in"},
    Spelling{"inch", "in"},
    Spelling{"inche", "in"},
    Spelling{"thou", "thou"},
    Spelling{"g", "g"},
    Spelling{"gram", "g"},
    Spelling{"kg", "kg"},
    Spelling{"degc", "°C"},
    Spelling{"degf", "°F"},
};

// Letters and digits in lower case; superscripts as digits; a plural's s dropped.
std::string bare(std::string_view spelled) {
    std::string letters;
    for (std::size_t at = 0; at < spelled.size(); ++at) {
        const char c = spelled[at];
        if (spelled.substr(at, 2) == "\xC2\xB2" || spelled.substr(at, 2) == "\xC2\xB3")
            letters += spelled[at + 1] == '\xB2' ? '2' : '3';
        else if (spelled.substr(at, 2) == "\xC2\xB0")
            letters += "deg";
        else if (c >= 'A' && c <= 'Z')
            letters += static_cast<char>(c - 'A' + 'a');
        else if ((c >= 'a' && c <= 'z') || (c >= '0' && c <= '9'))
            letters += c;
    }
    for (const std::string_view plural :
         {"pounds", "lbs", "metres", "meters", "litres", "liters", "inches", "thous", "quarts", "grams"}) {
        for (auto at = letters.find(plural); at != std::string::npos; at = letters.find(plural))
            letters.erase(at + plural.size() - 1, 1);
    }
    return letters;
}

bool isPartOfNumber(char c) {
    return (c >= '0' && c <= '9') || c == '.' || c == ',' || c == '+' || c == '-' || c == ' ' || c == '\t';
}

bool isTorque(std::string_view symbol) {
    return std::any_of(knownUnits().begin(), knownUnits().end(), [&](const UnitOf& unit) {
        return unit.symbol == symbol && unit.measure == Measure::Torque;
    });
}

}  // namespace

std::optional<std::string_view> unitNamed(std::string_view spelled) {
    const std::string letters = bare(spelled);
    const auto found = std::find_if(kSpellings.begin(), kSpellings.end(),
                                    [&](const Spelling& spelling) { return spelling.written == letters; });
    if (letters.empty() || found == kSpellings.end())
        return std::nullopt;
    return found->symbol;
}

std::optional<std::pair<std::size_t, std::size_t>> rangeMark(std::string_view text) {
    for (const std::string_view mark : {"\xE2\x80\x93", "..", " to ", "-", "~"}) {
        auto at = text.find(mark, 1);
        while (at != std::string_view::npos) {
            const auto after = text.find_first_not_of(' ', at + mark.size());
            const bool beforeNumber =
                after != std::string_view::npos && text[after] >= '0' && text[after] <= '9';
            if (beforeNumber)
                return std::pair(at, mark.size());
            at = text.find(mark, at + mark.size());
        }
    }
    return std::nullopt;
}

base::Result<Measured> parseMeasured(std::string_view field, std::string_view text) {
    const std::string_view all = base::trimmed(text);
    const auto split =
        static_cast<std::size_t>(std::find_if_not(all.begin(), all.end(), isPartOfNumber) - all.begin());
    const auto value = parseDecimal(field, all.substr(0, split));
    if (!value && split == 0 && !all.empty())
        return refuse(Fault::NotANumber, std::string(field), std::string(text));
    if (!value)
        return tl::unexpected(value.error());
    const std::string_view word = base::trimmed(all.substr(split));
    if (word.empty())
        return Measured{*value, {}};
    const auto unit = unitNamed(word);
    if (!unit)
        return refuse(Fault::WrongUnit, std::string(field), std::string(word));
    return Measured{*value, *unit};
}

std::string torqueUnits() {
    std::string all;
    for (const std::string_view name : base::Names<TorqueUnit>::names)
        all += (all.empty() ? "" : ", ") + std::string(name);
    return all;
}

base::Result<TypedTorque> parseTorque(std::string_view field, std::string_view text) {
    const auto measured = parseMeasured(field, text);
    if (!measured && measured.error().fault == Fault::WrongUnit)
        return refuse(Fault::WrongUnit, std::string(field), measured.error().given, torqueUnits());
    if (!measured)
        return tl::unexpected(measured.error());
    if (measured->value.digits() <= 0)
        return refuse(Fault::NotPositive, std::string(field), std::string(base::trimmed(text)));
    TypedTorque typed{measured->value, std::nullopt};
    if (measured->unit.empty())
        return typed;
    typed.unit = base::fromName<TorqueUnit>(measured->unit);
    if (!typed.unit || !isTorque(measured->unit))
        return refuse(Fault::WrongUnit, std::string(field), std::string(measured->unit), torqueUnits());
    return typed;
}

base::Result<TypedTorqueRange> parseTorqueRange(std::string_view field, std::string_view text) {
    const std::string_view all = base::trimmed(text);
    const auto mark = rangeMark(all);
    const auto low = parseTorque(field, mark ? all.substr(0, mark->first) : all);
    if (!low)
        return tl::unexpected(low.error());
    if (!mark)
        return TypedTorqueRange{low->value, std::nullopt, low->unit};
    const auto high = parseTorque(field, all.substr(mark->first + mark->second));
    if (!high)
        return tl::unexpected(high.error());
    if (low->unit && high->unit && low->unit != high->unit)
        return refuse(Fault::WrongUnit, std::string(field), std::string(base::nameOf(*high->unit)),
                      std::string(base::nameOf(*low->unit)));
    if (high->value < low->value)
        return refuse(Fault::OutOfOrder, std::string(field), high->value.text(), low->value.text());
    return TypedTorqueRange{low->value, high->value, high->unit ? high->unit : low->unit};
}

}  // namespace wm::units

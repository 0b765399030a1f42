// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>

#include "app/verb.h"
#include "core/fastening/drawer.h"
#include "core/fastening/generic.h"
#include "core/fastening/kind_words.h"
#include "core/fastening/wrench.h"
#include "core/units/unit_words.h"
#include "ui/words/error_words.h"
#include "ui/words/figures.h"
#include "ui/words/generic_words.h"

// What can be reckoned without a file: a wrench with an adapter, and a generic figure.

namespace wm::app {

namespace {

using nlohmann::ordered_json;

Answer<double> numberOf(const Call& call, const char* option, double otherwise) {
    if (!call.has(option))
        return otherwise;
    const auto value = units::parseDecimal(option, call.text(option));
    if (!value)
        return fail(value.error());
    return value->toDouble();
}

// One decimal more than the target was given with is all that a scale can be set to.
std::string settingText(double setting, const units::Decimal& target) {
    const int places = std::min(target.places() + 1, units::kMostPlaces);
    return units::Decimal{std::llround(setting * std::pow(10.0, places)), places}.text(ui::decimalMark());
}

Answer<void> runWrench(const Call& call) {
    for (const char* needed : {"torque", "length", "adapter"})
        if (!call.has(needed))
            return fail(Exit::Usage,
                        QString("Say the torque, the length of the wrench and that of the adapter: --%1 is "
                                "missing.")
                            .arg(needed));
    const auto torque = units::parseTorqueRange("torque", call.text("torque"));
    if (!torque)
        return fail(torque.error());
    const auto length = numberOf(call, "length", 0);
    const auto adapter = numberOf(call, "adapter", 0);
    const auto angle = numberOf(call, "angle", 0);
    const auto percent = numberOf(call, "percent", 4);
    for (const auto* each : {&length, &adapter, &angle, &percent})
        if (!*each)
            return tl::unexpected(each->error());
    if (*percent < 0 || *percent > 50)
        return fail(base::Error{base::Fault::TooLarge, "percent", call.text("percent"), "50"});
    // Of a range that the manual prints the middle is aimed at.
    const units::Decimal aim = fastening::aimOf(torque->low, torque->high);
    const auto setting = fastening::settingFor(aim.toDouble(), *length, {*adapter, *angle});
    if (!setting && setting.error().fault == base::Fault::Implausible)
        return fail(Exit::Refused,
                    "The adapter points back over the handle: what is left of the lever is less than half "
                    "of the wrench. Turn it square or straight on.");
    if (!setting)
        return fail(setting.error());
    const auto unit = base::nameOf(torque->unit.value_or(units::TorqueUnit::NewtonMetre));
    const auto reach = fastening::achieved(aim.toDouble(), *percent);
    if (call.has("json")) {
        print(call.console(), {{"torque", aim.toDouble()},
                               {"unit", unit},
                               {"set", *setting},
                               {"percent", *percent},
                               {"reaches", {{"low", reach.low}, {"high", reach.high}}}});
        return {};
    }
    call.console().out << "Set " << fromUtf8(settingText(*setting, aim)) << ' ' << fromUtf8(unit) << " for "
                       << fromUtf8(aim.text(ui::decimalMark()))
                       << (torque->high ? ", the middle of the range," : "") << " at the fastener (within "
                       << *percent << " %: " << fromUtf8(settingText(reach.low, aim)) << " to "
                       << fromUtf8(settingText(reach.high, aim)) << ")\n";
    return {};
}

Answer<fastening::GenericAsk> askOf(const Call& call) {
    fastening::GenericAsk ask;
    ask.thread = call.text("thread");
    ask.propertyClass = call.text("class");
    const auto kind = call.oneOf("kind", fastening::JointKind::Other);
    const auto hole = call.oneOf("hole", fastening::Hole::Steel);
    const auto lubrication = call.oneOf("friction", fastening::Lubrication::Unknown);
    const auto depth = numberOf(call, "depth", 1);
    if (!kind)
        return tl::unexpected(kind.error());
    if (!hole)
        return tl::unexpected(hole.error());
    if (!lubrication)
        return tl::unexpected(lubrication.error());
    if (!depth)
        return tl::unexpected(depth.error());
    ask.kind = *kind;
    ask.hole = *hole;
    ask.lubrication = *lubrication;
    ask.engagement = *depth;
    ask.byAngle = call.has("by-angle");
    ask.name = call.text("joint");
    // A name that speaks of a dangerous kind goes before the kind that was stated.
    if (const auto named = fastening::kindByName(ask.name); fastening::dangerousKind(named))
        ask.kind = named;
    return ask;
}

Answer<void> runGeneric(const Call& call) {
    const auto ask = askOf(call);
    if (!ask)
        return tl::unexpected(ask.error());
    const auto band = fastening::genericBand(*ask);
    if (!band)
        return fail(Exit::Refused, ui::genericRefusalText(band.error()));
    if (call.has("json")) {
        std::vector<std::string> assumptions;
        for (const QString& line : ui::genericAssumptions(*band, '.'))
            assumptions.push_back(line.toStdString());
        print(call.console(), {{"title", ui::genericTitle().toStdString()},
                               {"low", band->low},
                               {"high", band->high},
                               {"unit", "N·m"},
                               {"reads", ui::genericBandText(*band, '.').toStdString()},
                               {"assumptions", assumptions},
                               {"caution", ui::genericCaution().toStdString()}});
        return {};
    }
    call.console().out << ui::genericTitle() << ": " << ui::genericBandText(*band, ui::decimalMark()) << '\n';
    for (const QString& line : ui::genericAssumptions(*band, ui::decimalMark()))
        call.console().out << "  " << line << '\n';
    call.console().out << ui::genericCaution() << '\n';
    return {};
}

}  // namespace

VerbSpec wrenchVerb() {
    return {"wrench",
            "Say what to set on a torque wrench with an offset adapter.",
            {},
            {{"torque", "What the fastener is to get: 80, \"25 ft lb\", 18-22.", "torque"},
             {"length", "From the middle of the grip to the drive.", "length"},
             {"adapter", "From the drive to the fastener, in the same unit.", "length"},
             {"angle", "Between wrench and adapter: 0 straight on (otherwise), 90 square.", "degrees"},
             {"percent",
              "What the tool may be off; otherwise 4, that of a click wrench over 10 N·m (ISO 6789, II A).",
              "percent"},
             jsonOption()},
            "  witnessmark wrench --torque 80 --length 400 --adapter 50\n"
            "  witnessmark wrench --torque \"25 ft lb\" --length 18 --adapter 3 --angle 45 --json\n",
            runWrench};
}

VerbSpec genericVerb() {
    return {
        "generic",
        "Give a generic torque as a band with its assumptions, or say why there is none.",
        {},
        {{"thread", "M8x1.25, or M8 for the coarse pitch.", "thread"},
         {"class", "What stands on the bolt's head: 8.8.", "class"},
         {"hole", "steel (otherwise), aluminium or magnesium.", "material"},
         {"friction", "unknown (otherwise), dry, lubricated or anti-seize.", "how"},
         {"depth", "Thread in the hole, in bolt diameters; otherwise 1.", "diameters"},
         {"kind", "What it holds: other (otherwise), cover, engine, brake, axle ...", "kind"},
         {"joint", "What the joint is called: a name that speaks of a brake or an axle is refused.", "name"},
         {"by-angle", "The joint is tightened by an angle."},
         jsonOption()},
        "  witnessmark generic --thread M6 --class 8.8 --hole aluminium --kind cover\n"
        "  witnessmark generic --thread M6 --class 8.8 --joint \"clutch cover\"\n",
        runGeneric};
}

}  // namespace wm::app

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sheet/generic_words.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace wm::sheet {

namespace {

using fastening::GenericWhy;

std::string number(double value, int places, char mark) {
    std::string text = fmt::format("{:.{}f}", value, places);
    std::replace(text.begin(), text.end(), '.', mark);
    return text;
}

// Two digits are more than a band knows already.
std::string roughly(double torque, bool down, char mark) {
    const int place = static_cast<int>(std::floor(std::log10(torque))) - 1;
    const double step = std::pow(10.0, place);
    const double rounded = (down ? std::floor(torque / step) : std::ceil(torque / step)) * step;
    return number(rounded, std::max(0, -place), mark);
}

std::string frictionText(const fastening::GenericBand& band, char mark) {
    return fmt::format(
        "friction {} to {} in the thread and under the head (classes of VDI 2230, from memory)",
        number(band.slippery.thread, 2, mark), number(band.rough.thread, 2, mark));
}

constexpr std::string_view kLookUp = "Look it up in the service manual, or ask a qualified workshop.";

}  // namespace

std::string_view genericTitle() {
    return "GENERIC, not for this joint";
}

std::string_view genericCaution() {
    return "Reckoned from thread and bolt alone: a wrong torque strips a thread, or lets it come loose. The "
           "service "
           "manual goes before it; where that is silent ask a qualified workshop; local rules stand.";
}

std::string genericBandText(const fastening::GenericBand& band, char mark) {
    return roughly(band.low, false, mark) + " to " + roughly(band.high, true, mark) + " N·m";
}

std::vector<std::string> genericAssumptions(const fastening::GenericBand& band, char mark) {
    std::vector<std::string> lines;
    std::string thread = fastening::threadText(band.thread);
    std::replace(thread.begin(), thread.end(), '.', mark);
    lines.push_back(fmt::format("{} of class {}: proof load {:.0f} N (ISO 898-1)", thread, band.propertyClass,
                                band.proof));
    lines.push_back(frictionText(band, mark));
    if (band.holeDecides)
        lines.push_back(
            fmt::format("the thread in the hole sets the limit: cast aluminium, {} d deep, {:.0f} N",
                        number(band.engagement, 1, mark), band.most));
    else
        lines.push_back(fmt::format("at most {:.0f} % of the proof load, in the slipperiest case",
                                    100 * fastening::kMostOfProof));
    lines.push_back(fmt::format("at the low end, in the roughest case, the bolt holds with {:.0f} % of it",
                                100 * band.leastShare));
    lines.emplace_back("hexagon head, clean thread, no locking compound, nothing soft in between");
    return lines;
}

std::string genericRefusalText(const fastening::GenericRefusal& refusal) {
    const auto because = [](const std::string& why) { return why + " " + std::string(kLookUp); };
    switch (refusal.why) {
        case GenericWhy::DangerousKind:
            return because(
                fmt::format("No generic figure for a joint of this kind ({}): somebody can be hurt if it "
                            "is wrong.",
                            base::nameOf(refusal.kind)));
        case GenericWhy::Magnesium:
            return because("No generic figure for anything in magnesium: its thread gives way first.");
        case GenericWhy::ByAngle:
            return because(
                "No generic figure for a joint that is stretched or tightened by an angle, as crank, rod and "
                "head mostly are.");
        case GenericWhy::HasFigure:
            return "The manual's own figure is there: use that.";
        case GenericWhy::ShortEngagement:
            return because("Too little thread in the hole for any generic figure.");
        case GenericWhy::NoSuchThread:
            if (refusal.given.empty())
                return "Which thread? Write it like M8x1.25.";
            return fmt::format("There is no metric thread \"{}\": write it like M8x1.25.", refusal.given);
        case GenericWhy::TooSmallOrLarge:
            return because(fmt::format("Generic figures are for M4 to M16, not for {}.", refusal.given));
        case GenericWhy::NoSuchClass:
            if (refusal.given.empty())
                return fmt::format("Which class? Read it off the bolt's head: one of {}.",
                                   fastening::propertyClasses());
            return fmt::format(
                "The class \"{}\" is none of ISO 898-1: read it off the bolt's head, one of {}.",
                refusal.given, fastening::propertyClasses());
        case GenericWhy::NotANumber:
            break;
    }
    return "The depth of thread must be above zero, in bolt diameters.";
}

}  // namespace wm::sheet

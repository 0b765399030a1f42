// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sheet/cautions.h"

#include <array>

namespace wm::sheet {

using upkeep::Hazard;

namespace {

struct Entry {
    Hazard hazard;
    CautionWords words;
};

// In the order of the hazards.
constexpr std::array kWords{
    Entry{Hazard::GasCharged,
          {"Gas under high pressure in the shock or air fork",
           "Do not open, drill or heat it, never fill it with compressed air or oxygen. An air fork is "
           "let down at its valve, leg upright, before any wrench touches a cap. Take off and refit "
           "only.",
           "A suspension workshop decides about everything inside; the service manual comes first."}},
    Entry{Hazard::Spring,
          {"Loaded spring lets go",
           "Eyes covered. Use the proper compressor or puller, keep face and hands out of its line.",
           "The service manual says which tool and which order."}},
    Entry{Hazard::Fuel,
          {"Fuel vapour finds flame and spark",
           "Engine cold, door open, no heater, dryer, grinder or pilot flame near. Let injection "
           "pressure off first. Drain into a closed can, outside.",
           "The service manual and the fire rules of the place decide."}},
    Entry{Hazard::Solvent,
          {"Cleaner burns or poisons",
           "Gloves and moving air, away from sparks. Never a chlorinated cleaner on hot metal or before "
           "welding: the gas it makes can kill.",
           "The product's safety sheet decides."}},
    Entry{Hazard::BrakeFluid,
          {"Brake fluid harms eyes, skin and paint",
           "Gloves, eyes covered, spills off with water at once. Only the kind that the cap names, from "
           "a container that was kept shut; never mix glycol, silicone and mineral fluid.",
           "The cap and the service manual decide."}},
    Entry{Hazard::HotParts,
          {"Hot exhaust, oil and coolant",
           "Let it cool. Open the radiator cap only when it is cold to the hand. Warm oil: gloves, "
           "sleeves down.",
           "The service manual comes first."}},
    Entry{Hazard::Fibre,
          {"Fibre and dust of silencer packing",
           "Damp it, mask and gloves on, bag it at once. Do not blow it out.",
           "The product sheet and local rules on waste decide."}},
    Entry{Hazard::Lifting,
          {"The machine or a heavy part falls",
           "Level ground, strapped to the stand. A second person for the engine. Never under a machine "
           "that only a jack holds.",
           "The service manual says where it may be supported."}},
    Entry{Hazard::Pinch,
          {"Chain and sprocket take a finger",
           "Engine off before a hand comes near. Turn the wheel by the tyre. Never clean or lube a "
           "chain that the engine drives.",
           "No exception; the service manual comes first in all else."}},
    Entry{Hazard::Exhaust,
          {"Exhaust gas kills without a smell",
           "Run the engine outside only, never in a closed room, not for a minute.",
           "Local limits and a carbon monoxide alarm decide."}},
    Entry{Hazard::Electrical,
          {"Ignition shock, battery short or fire",
           "Ignition off, earth lead off first and on last. No metal across the poles. A swollen or hot "
           "battery goes outside.",
           "The battery maker and the service manual decide."}},
    Entry{Hazard::CompressedAir,
          {"Compressed air or a water jet enters the body",
           "Eyes covered, never at skin. Keep the jet off bearings, seals and plugs; do not spin a "
           "bearing with air.",
           "The tool's own rules decide."}},
    Entry{Hazard::UsedFluids,
          {"Used fluids harm ground and water",
           "Catch them all. Keep oil, coolant, brake fluid, solvent and fuel each in its own marked "
           "can.",
           "The collection site near you decides what it takes, and as what."}},
    Entry{Hazard::FirstRide,
          {"First ride after the work",
           "Pump the brakes until they are hard, free play and steering checked, two slow laps, then "
           "stop and look again at everything that was loose.",
           "Rider and mechanic both say yes, or it does not ride."}},
    Entry{Hazard::Brakes,
          {"Brakes that do not hold",
           "Pads and discs free of grease. Pump the lever until it is hard, then look for leaks with "
           "the lever held. A second person checks.",
           "The service manual decides; in doubt a qualified workshop."}},
    Entry{Hazard::Steering,
          {"Steering that binds or comes loose",
           "Lock to lock by a finger, no play fore and aft, cables and hoses free at both ends. A "
           "second person checks.",
           "The service manual gives order and torque; in doubt a qualified workshop."}},
    Entry{Hazard::Wheels,
          {"Wheel or axle comes loose",
           "Order and torque as the manual says, mark painted, brake pumped, wheel spun. Look again "
           "after the first laps.",
           "The service manual decides; in doubt a qualified workshop."}}};

constexpr bool isInOrder() {
    for (std::size_t at = 0; at < kWords.size(); ++at)
        if (static_cast<std::size_t>(kWords[at].hazard) != at)
            return false;
    return kWords.size() == base::Names<Hazard>::names.size();
}
static_assert(isInOrder());

}  // namespace

CautionWords cautionWords(Hazard hazard) {
    return kWords.at(static_cast<std::size_t>(hazard)).words;
}

}  // namespace wm::sheet

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/caution_words.h"

#include "ui/words/tr.h"

namespace wm::ui {

using upkeep::Hazard;

namespace {

struct Entry {
    Hazard of;
    const char* hazard;
    const char* doThis;
    const char* deferTo;
};

// In the order of the hazards.
constexpr Entry kWords[] = {
    Entry{
        Hazard::GasCharged, QT_TR_NOOP("Gas under high pressure in the shock or air fork"),
        QT_TR_NOOP(
            "The shock is never opened, drilled, heated or filled: take it off and refit it, no more. An "
            "air fork is opened only when all air is out at its valve, leg cold, wheel off the ground, "
            "before any wrench touches a cap; only a fork pump fills it."),
        QT_TR_NOOP("A suspension workshop decides about everything inside a shock; the service manual comes "
                   "first.")},
    Entry{
        Hazard::Spring, QT_TR_NOOP("Loaded spring lets go"),
        QT_TR_NOOP("Eyes covered. Use the proper compressor or puller, keep face and hands out of its line."),
        QT_TR_NOOP("The service manual says which tool and which order.")},
    Entry{Hazard::Fuel, QT_TR_NOOP("Fuel vapour finds flame and spark"),
          QT_TR_NOOP("Engine cold, door open, no heater, dryer, grinder or pilot flame near. Let injection "
                     "pressure off first. Drain into a closed can, outside."),
          QT_TR_NOOP("The service manual and the fire rules of the place decide.")},
    Entry{Hazard::Solvent, QT_TR_NOOP("Cleaner burns or poisons"),
          QT_TR_NOOP(
              "Gloves and moving air, away from sparks. Never a chlorinated cleaner on hot metal or before "
              "welding: the gas it makes can kill."),
          QT_TR_NOOP("The product's safety sheet decides.")},
    Entry{Hazard::BrakeFluid, QT_TR_NOOP("Brake fluid harms eyes, skin and paint"),
          QT_TR_NOOP(
              "Gloves, eyes covered, spills off with water at once. Only the kind that the cap names, from "
              "a container that was kept shut; never mix glycol, silicone and mineral fluid."),
          QT_TR_NOOP("The cap and the service manual decide.")},
    Entry{Hazard::HotParts, QT_TR_NOOP("Hot exhaust, oil and coolant"),
          QT_TR_NOOP("Let it cool. Open the radiator cap only when it is cold to the hand. Warm oil: gloves, "
                     "sleeves down."),
          QT_TR_NOOP("The service manual comes first.")},
    Entry{Hazard::Fibre, QT_TR_NOOP("Fibre and dust of silencer packing"),
          QT_TR_NOOP("Damp it, mask and gloves on, bag it at once. Do not blow it out."),
          QT_TR_NOOP("The product sheet and local rules on waste decide.")},
    Entry{Hazard::Lifting, QT_TR_NOOP("The machine or a heavy part falls"),
          QT_TR_NOOP(
              "Level ground, strapped to the stand. A second person for the engine. Never under a machine "
              "that only a jack holds."),
          QT_TR_NOOP("The service manual says where it may be supported.")},
    Entry{Hazard::Pinch, QT_TR_NOOP("Moving parts take a finger"),
          QT_TR_NOOP("Engine off before a hand comes near; the wheel is turned by the tyre, and no chain is "
                     "cleaned or lubed while the engine drives it. Cams, linkage, swingarm and a cover with "
                     "a magnet move by themselves: hands out of the gap."),
          QT_TR_NOOP("No exception; the service manual comes first in all else.")},
    Entry{Hazard::Exhaust, QT_TR_NOOP("Exhaust gas kills without a smell"),
          QT_TR_NOOP("Run the engine outside only, never in a closed room, not for a minute."),
          QT_TR_NOOP("Local limits and a carbon monoxide alarm decide.")},
    Entry{Hazard::Electrical, QT_TR_NOOP("Ignition shock, battery short or fire"),
          QT_TR_NOOP(
              "Ignition off, earth lead off first and on last. No metal across the poles. A swollen or hot "
              "battery goes outside."),
          QT_TR_NOOP("The battery maker and the service manual decide.")},
    Entry{Hazard::CompressedAir, QT_TR_NOOP("Compressed air or a water jet enters the body"),
          QT_TR_NOOP("Eyes covered, never at skin. Keep the jet off bearings, seals and plugs; do not spin a "
                     "bearing with air."),
          QT_TR_NOOP("The tool's own rules decide.")},
    Entry{
        Hazard::UsedFluids, QT_TR_NOOP("Used fluids harm ground and water"),
        QT_TR_NOOP("Catch them all. Keep oil, coolant, brake fluid, solvent and fuel each in its own marked "
                   "can."),
        QT_TR_NOOP("The collection site near you decides what it takes, and as what.")},
    Entry{
        Hazard::FirstRide, QT_TR_NOOP("First ride after the work"),
        QT_TR_NOOP("Pump the brakes until they are hard, free play and steering checked, two slow laps, then "
                   "stop and look again at everything that was loose."),
        QT_TR_NOOP("Rider and mechanic both say yes, or it does not ride.")},
    Entry{
        Hazard::Brakes, QT_TR_NOOP("Brakes that do not hold"),
        QT_TR_NOOP("Pads and discs free of grease. Pump the lever until it is hard, then look for leaks with "
                   "the lever held. A second person checks."),
        QT_TR_NOOP("The service manual decides; in doubt a qualified workshop.")},
    Entry{Hazard::Steering, QT_TR_NOOP("Steering that binds or comes loose"),
          QT_TR_NOOP("Lock to lock by a finger, no play fore and aft, cables and hoses free at both ends. A "
                     "second person checks."),
          QT_TR_NOOP("The service manual gives order and torque; in doubt a qualified workshop.")},
    Entry{
        Hazard::Wheels, QT_TR_NOOP("Wheel or axle comes loose"),
        QT_TR_NOOP("Order and torque as the manual says, mark painted, brake pumped, wheel spun. Look again "
                   "after the first laps."),
        QT_TR_NOOP("The service manual decides; in doubt a qualified workshop.")}};

constexpr bool isInOrder() {
    for (std::size_t at = 0; at < std::size(kWords); ++at)
        if (static_cast<std::size_t>(kWords[at].of) != at)
            return false;
    return std::size(kWords) == base::Names<Hazard>::names.size();
}
static_assert(isInOrder());

}  // namespace

CautionWords cautionWords(Hazard hazard) {
    const Entry& words = kWords[static_cast<std::size_t>(hazard)];
    return {tr(words.hazard), tr(words.doThis), tr(words.deferTo)};
}

}  // namespace wm::ui

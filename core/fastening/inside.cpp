// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/fastening/inside.h"

#include <array>

namespace wm::fastening {

namespace {

// Part of a schema step and of a format: never changed. What a starter says beyond it holds for garages that
// take that starter up.
constexpr std::array kSitsIn{SitsIn{"base-nuts", "engine"},
                             SitsIn{"cam-cap-bolts", "engine"},
                             SitsIn{"cam-sprocket-bolts", "engine"},
                             SitsIn{"clutch-cover-bolts", "engine"},
                             SitsIn{"clutch-hub-nut", "engine"},
                             SitsIn{"clutch-shoe-nut", "engine"},
                             SitsIn{"clutch-spring-bolts", "engine"},
                             SitsIn{"coolant-drain-bolt", "engine"},
                             SitsIn{"crankcase-bolts", "engine"},
                             SitsIn{"cylinder-bolts", "engine"},
                             SitsIn{"front-sprocket-nut", "engine"},
                             SitsIn{"head-bolts", "engine"},
                             SitsIn{"head-nuts", "engine"},
                             SitsIn{"ignition-cover-bolts", "engine"},
                             SitsIn{"kick-lever-bolt", "engine"},
                             SitsIn{"oil-drain-bolt", "engine"},
                             SitsIn{"oil-filter-bolts", "engine"},
                             SitsIn{"oil-screen-plug", "engine"},
                             SitsIn{"power-valve-bolts", "engine"},
                             SitsIn{"primary-cover-bolts", "engine"},
                             SitsIn{"primary-nut", "engine"},
                             SitsIn{"reed-block-bolts", "engine"},
                             SitsIn{"rotor-nut", "engine"},
                             SitsIn{"shift-lever-bolt", "engine"},
                             SitsIn{"spark-plug", "engine"},
                             SitsIn{"starter-bolts", "engine"},
                             SitsIn{"tensioner-bolts", "engine"},
                             SitsIn{"valve-cover-bolts", "engine"},
                             SitsIn{"fork-base-valves", "fork"},
                             SitsIn{"fork-caps", "fork"},
                             SitsIn{"fork-guard-bolts", "fork"},
                             SitsIn{"front-disc-bolts", "front wheel"},
                             SitsIn{"front-rim-lock", "front wheel"},
                             SitsIn{"front-spokes", "front wheel"},
                             SitsIn{"rear-disc-bolts", "rear wheel"},
                             SitsIn{"rear-rim-lock", "rear wheel"},
                             SitsIn{"rear-spokes", "rear wheel"},
                             SitsIn{"rear-sprocket-bolts", "rear wheel"},
                             SitsIn{"spark-arrestor-screws", "silencer"},
                             SitsIn{"bar-clamp-bolts", ""},
                             SitsIn{"bar-mount-nuts", ""},
                             SitsIn{"battery-terminals", ""},
                             SitsIn{"bottom-clamp-pinch", ""},
                             SitsIn{"brake-arm-bolts", ""},
                             SitsIn{"brake-pedal-bolt", ""},
                             SitsIn{"chain-adjuster-nuts", ""},
                             SitsIn{"chain-guard-bolts", ""},
                             SitsIn{"chain-guide-bolts", ""},
                             SitsIn{"chain-slider-screws", ""},
                             SitsIn{"chamber-mounts", ""},
                             SitsIn{"engine-mount-bolts", ""},
                             SitsIn{"fan-screws", ""},
                             SitsIn{"front-axle-nut", ""},
                             SitsIn{"front-axle-pinch-fixed", ""},
                             SitsIn{"front-axle-pinch-free", ""},
                             SitsIn{"front-banjo-bolts", ""},
                             SitsIn{"front-bleed-screw", ""},
                             SitsIn{"front-caliper-bolts", ""},
                             SitsIn{"front-pad-pin", ""},
                             SitsIn{"fuel-pump-screws", ""},
                             SitsIn{"hand-guard-bolts", ""},
                             SitsIn{"head-stay-bolts", ""},
                             SitsIn{"header-nuts", ""},
                             SitsIn{"headlamp-screws", ""},
                             SitsIn{"hose-clamps", ""},
                             SitsIn{"indicator-nuts", ""},
                             SitsIn{"intake-clamps", ""},
                             SitsIn{"lever-perch-bolts", ""},
                             SitsIn{"link-frame-bolt", ""},
                             SitsIn{"link-rod-bolt", ""},
                             SitsIn{"link-swingarm-bolt", ""},
                             SitsIn{"mirror-nuts", ""},
                             SitsIn{"panel-bolts", ""},
                             SitsIn{"peg-pins", ""},
                             SitsIn{"plate-bracket-bolts", ""},
                             SitsIn{"radiator-bolts", ""},
                             SitsIn{"rear-axle-nut", ""},
                             SitsIn{"rear-banjo-bolts", ""},
                             SitsIn{"rear-bleed-screw", ""},
                             SitsIn{"rear-caliper-pins", ""},
                             SitsIn{"rear-pad-pin", ""},
                             SitsIn{"seat-bolts", ""},
                             SitsIn{"shock-lower-bolt", ""},
                             SitsIn{"shock-upper-bolt", ""},
                             SitsIn{"side-stand-bolt", ""},
                             SitsIn{"silencer-bolts", ""},
                             SitsIn{"speed-sensor-screw", ""},
                             SitsIn{"stem-nut", ""},
                             SitsIn{"stem-ring-nut", ""},
                             SitsIn{"subframe-bolts", ""},
                             SitsIn{"sump-guard-bolts", ""},
                             SitsIn{"swingarm-pivot-nut", ""},
                             SitsIn{"tank-bolts", ""},
                             SitsIn{"throttle-stop-screw", ""},
                             SitsIn{"top-clamp-pinch", ""}};

}  // namespace

std::span<const SitsIn> sitsInByCode() {
    return kSitsIn;
}

std::optional<std::string_view> usualPosition(JointKind kind) {
    switch (kind) {
        case JointKind::Engine:
        case JointKind::Cover:
            return "engine";
        case JointKind::Axle:
        case JointKind::Pinch:
        case JointKind::Steering:
        case JointKind::Peg:
        case JointKind::Pivot:
        case JointKind::Linkage:
        case JointKind::Shock:
        case JointKind::Swingarm:
        case JointKind::EngineMount:
            return "";
        case JointKind::Other:
        case JointKind::Brake:
        case JointKind::Wheel:
        case JointKind::Spoke:
        case JointKind::Suspension:
        case JointKind::Sprocket:
            break;
    }
    return std::nullopt;
}

}  // namespace wm::fastening

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/weekend/freed.h"

#include <array>

namespace wm::weekend {

namespace {

// Part of a released step of the schema and of a released format: never changed. What a starter says beyond
// it holds for garages that take that starter up.
constexpr std::array kFreed{FreedByCode{"rear-wheel-out", 0, "rear wheel"},
                            FreedByCode{"rear-wheel-out", 1, "rear wheel/tyre"},
                            FreedByCode{"front-wheel-out", 0, "front wheel"},
                            FreedByCode{"front-wheel-out", 1, "front wheel/tyre"},
                            FreedByCode{"shock-out", 0, "shock"},
                            FreedByCode{"engine-out", 0, "engine"},
                            FreedByCode{"cylinder-off", 0, "engine/piston"},
                            FreedByCode{"fork-legs-out", 0, "fork"},
                            FreedByCode{"silencer-off", 0, "silencer"},
                            FreedByCode{"chain-off", 0, "chain"},
                            FreedByCode{"swingarm-off", 0, "swingarm"}};

}  // namespace

std::span<const FreedByCode> freedByCode() {
    return kFreed;
}

}  // namespace wm::weekend

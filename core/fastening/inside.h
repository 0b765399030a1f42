// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <span>
#include <string_view>

#include "core/fastening/rows.h"

namespace wm::fastening {

// A joint inside an engine or a wheel goes where that goes: at which position of the machine it sits. Common
// practice, no source.

/// Where a joint of this code sits in the starters (empty: it is the machine's own, and holds something to
/// it): for files that were written before a joint said so.
struct SitsIn {
    std::string_view joint;
    std::string_view position;
};
std::span<const SitsIn> sitsInByCode();

/// Where a joint of a kind usually sits; nothing where the kind does not tell: a disc bolt is a brake's as a
/// caliper's is, and spokes are those of either wheel.
std::optional<std::string_view> usualPosition(JointKind kind);

}  // namespace wm::fastening

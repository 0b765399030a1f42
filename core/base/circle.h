// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

namespace wm::base {

/// Between the acts or steps that a Cycle names, each before the next.
inline constexpr const char* kBefore = " → ";

}  // namespace wm::base

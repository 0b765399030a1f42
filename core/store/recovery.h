// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <cstdint>

#include "core/store/options.h"

namespace wm::store {

/// What a program that was killed, or a computer without power, left of its last write.
struct Recovery {
    enum class Outcome : std::uint8_t { NotNeeded, TakenBack, Impossible } outcome = Outcome::NotNeeded;
    QString detail{};  ///< the system's own words, where it is impossible
};

/// Takes an interrupted write back, whatever the file is to be opened for: a connection that only reads may
/// not do it, and so could not read at all. Touches no file but ours, and no journal that a live program is
/// writing.
Recovery takeBackInterrupted(const QString& path, const Options& options);

}  // namespace wm::store

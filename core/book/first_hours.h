// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <vector>

#include "core/book/book.h"

namespace wm::book {

/// When the tasks of a machine of unknown history are to be done, of those that nobody has recorded.
enum class FirstStage : std::uint8_t {
    AtOnce,     ///< a matter of safety: before the first ride
    WhileOpen,  ///< not that, but the openings of those give it away
    By5,        ///< within 5 h: it comes round that often
    By10,
    By20,      ///< all others that have an interval: nobody knows how far they are over already
    Later,     ///< not within 20 h, whatever its past was
    EachRide,  ///< comes with every ride or before each race
    WithAJob   ///< another job brings it
};

struct FirstGroup {
    FirstStage stage = FirstStage::AtOnce;
    std::vector<const DueLine*> jobs{};                 ///< most pressing first
    std::vector<const weekend::StepVersion*> opened{};  ///< what has to come off for them, each once
    units::Minutes work{};                              ///< jobs and openings, each opening once
    units::Minutes alone{};                             ///< what they would take one by one
};

/// The first 20 hours with a machine of unknown history: every task without a record once, groups in the
/// order of their stages, empty ones left out. Where a high end of the machine's past is known, a task that
/// counts hours alone stands where even that past leaves it: every 100 h, at most 30 behind it: 70 h off
/// (with a run-in: of that, if it is shorter; with weighted hours: if each were of the hardest). What
/// WhileOpen opens, AtOnce has opened before, so its work is that of the jobs alone. Pointers are into the
/// book.
std::vector<FirstGroup> firstHours(const Book& book, MachineId machine);

}  // namespace wm::book

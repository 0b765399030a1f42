// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <map>
#include <optional>
#include <string>

#include "tests/core/slow/places_then.h"
#include "tests/core/slow/tale.h"

// What the words of a fact say without naming it: when it was, and of which item.
namespace wm::tale {

/// What an emptied path of a machine held last, if it lies unfitted since: not at a workshop, not scrapped
/// and not on a machine; through any depth, and the whole where nobody tracked the part.
std::optional<ItemId> onBench(const PlacesThen& places, MachineId machine, const std::string& path,
                              calendar::Moment then);

/// The facts with that written out. A job whose meter figure is lower than what an outing of its day left was
/// done before the riding. A job at an emptied position that names no item is that of what lies on the
/// bench. One from before the file stands where the meter can have shown its lowest figure last.
picture::Ledger writtenOut(const picture::Ledger& told, const std::map<RecordId, MeterThen>& remembered);

/// The last reading of a machine that says something of a figure remembered on a day, or nullptr.
const usage::HourReading* readUpTo(const picture::Ledger& ledger, MachineId machine, calendar::Date day);

}  // namespace wm::tale

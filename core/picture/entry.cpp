// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/picture/entry.h"

#include <limits>

namespace wm::picture {

Entry::Entry(const Ledger& ledger, const base::IdSource& newId)
    : ledger_(ledger), source_(newId), nextEntered_(ledger.nextEntered()) {
    for (const auto& version : ledger.all<upkeep::TaskVersion>())
        taken_.insert(version.task.value());
    for (const auto& version : ledger.all<weekend::StepVersion>())
        taken_.insert(version.step.value());
    for (const auto& version : ledger.all<fastening::JointVersion>())
        taken_.insert(version.joint.value());
}

// Asks the source again as long as it names an id that is taken; a source that only ever does so is helped by
// the next number that is free.
std::int64_t Entry::freeId() {
    static constexpr int kTries = 100;
    const auto isFree = [this](std::int64_t id) {
        return id >= 1 && !taken_.contains(id) && !ledger_.knows(id);
    };
    std::int64_t id = source_();
    for (int tries = 1; !isFree(id) && tries < kTries; ++tries)
        id = source_();
    while (!isFree(id))
        id = id < 1 || id == std::numeric_limits<std::int64_t>::max() ? 1 : id + 1;
    taken_.insert(id);
    return id;
}

}  // namespace wm::picture

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/upkeep/sources.h"

#include <algorithm>

namespace wm::upkeep {

const std::string& sourceOf(const TaskVersion& task, const KitLine& line) {
    return line.source.empty() ? task.source : line.source;
}

void keepSources(const TaskVersion& stood, TaskVersion& version) {
    if (stood.source == version.source)
        return;
    for (KitLine& line : version.kit) {
        const bool stoodThere = std::any_of(stood.kit.begin(), stood.kit.end(), [&](const KitLine& old) {
            return old.what == line.what && old.amount == line.amount && old.unit == line.unit &&
                   old.source.empty();
        });
        if (line.source.empty() && stoodThere)
            line.source = stood.source.empty() ? std::string(kNoSource) : stood.source;
    }
}

}  // namespace wm::upkeep

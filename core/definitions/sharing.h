// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "core/book/book.h"

namespace wm::definitions {

/// True if a version of a joint was typed for the model and year of this machine.
bool isFor(const fastening::JointVersion& version, const items::Machine& typedOn,
           const items::Machine& machine);

/// The same words for the other machines that share them: new joints where a machine has none of this code,
/// new versions where its last one is shared. A machine that has its own words keeps them, and one that has
/// the very same needs none. Codes are filled in.
std::map<MachineId, std::vector<fastening::JointVersion>> forOthers(
    const book::Book& book, const std::vector<fastening::JointVersion>& versions);

/// The versions for their own machine alone: what the others of its model have stays.
std::vector<fastening::JointVersion> forThisOneOnly(std::vector<fastening::JointVersion> versions);

/// What a machine that is new (or whose model or year was put right) takes over from the others of its model:
/// the shared versions of today whose code it has not, in order of name.
std::vector<fastening::JointVersion> fromOthers(const book::Book& book, const items::Machine& machine);

struct ModelYears {
    std::int64_t from = 0;
    std::int64_t to = 0;
    friend bool operator==(const ModelYears&, const ModelYears&) = default;
};
/// For which model years a joint stands the same on every machine: those of its own version; where this
/// machine overrules it, those of the version that another machine of its model has. Nothing if it is not
/// shared.
std::optional<ModelYears> sharedYears(const book::Book& book, const fastening::JointVersion& joint);
/// "Brackwater Heron 250 2019–2021"
std::string sharedText(const items::Machine& machine, const ModelYears& years);

}  // namespace wm::definitions

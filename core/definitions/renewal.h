// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/book/book.h"
#include "core/definitions/definitions.h"

namespace wm::definitions {

// A starter schedule becomes better while machines stand on its older words. What it says now is shown beside
// what a machine has, in groups, and taken over a group at a time. Of each definition three wordings are
// compared: what the starter said when it was last taken over, what it says now, and what stands. What the
// mechanic changed, or confirmed against a manual, stays.

/// All that a starter says now, with its codes.
struct Schedule {
    std::vector<weekend::StepVersion> steps;
    std::vector<fastening::JointVersion> joints;
    std::vector<upkeep::TaskVersion> tasks;
};

/// What is taken over at once. Order: steps, joints, and what a task says of the order of work. NewTasks:
/// tasks that the machine has not. Intervals: when a task falls due. Words: all else.
enum class RenewalGroup : std::uint8_t { Order, NewTasks, Intervals, Words };

/// Of one definition, what would be taken over.
struct Difference {
    enum class Kind : std::uint8_t { Step, Joint, Task };
    RenewalGroup group = RenewalGroup::Order;
    Kind kind = Kind::Task;
    std::string code{};
    std::string name{};
    bool isNew = false;
    std::vector<std::string> fields{};  ///< what changes: field names; none if it is new
    std::vector<std::string> kept{};    ///< what the starter changed as well, and the mechanic before it
    std::optional<upkeep::TaskVersion> then{};  ///< a task as it will stand
};

/// What a starter says now and the machine does not: in the order of groups, and in each as the starter has
/// it. A definition that the machine put away is left alone, and so is one of the same code that is no
/// starter's. What names a task that the machine has not waits until it has.
std::vector<Difference> differences(const book::Book& book, MachineId machine, const Schedule& starter);

/// Takes a group over: the starter's words as a version of today, and what stands with the mechanic's own
/// changes as one after it. New steps and joints come with the first group that is taken.
void take(Definitions& definitions, const book::Book& book, MachineId machine, const Schedule& starter,
          RenewalGroup group);

}  // namespace wm::definitions

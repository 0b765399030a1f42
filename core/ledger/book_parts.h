// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <map>
#include <memory>
#include <optional>
#include <set>
#include <tuple>
#include <vector>

#include "core/ledger/book.h"

namespace wm::ledger {

/// What the book has looked up and worked out so far. For core/ledger/book*.cpp alone.
struct Book::Parts {
    Parts(std::shared_ptr<const Ledger> ledgerOf, calendar::Date todayOf);

    const std::vector<usage::Atom>& machineAtoms(MachineId machine);  ///< without the stated past
    [[nodiscard]] calendar::Moment now() const;

    std::shared_ptr<const Ledger> ledger;
    calendar::Date today;
    items::Fittings fittings;

    std::map<TaskId, std::vector<const upkeep::TaskVersion*>> taskVersions;
    std::map<JointId, std::vector<const fastening::JointVersion*>> jointVersions;
    std::map<StepId, std::vector<const weekend::StepVersion*>> stepVersions;
    std::map<MachineId, std::vector<const upkeep::Record*>> recordsOfMachine;
    std::map<ItemId, std::vector<const upkeep::Record*>> recordsOfItem;
    std::map<MachineId, usage::UseFacts> use;
    std::map<TaskId, std::vector<const upkeep::Deferral*>> deferralsOfTask;
    std::map<SnagId, std::vector<const upkeep::Deferral*>> deferralsOfSnag;
    std::set<TaskId> pickedTasks;
    std::set<SnagId> pickedSnags;

    std::map<MachineId, std::vector<usage::Atom>> atomsOfMachine;
    std::map<MachineId, std::vector<usage::Atom>> withPast;
    std::map<ItemId, std::vector<usage::Atom>> atomsOfItem;
    std::map<MachineId, outlook::Odds> odds;
    std::map<MachineId, std::vector<DueLine>> due;
    std::map<MachineId, outlook::Chances> chances;
    std::optional<std::vector<stock::OnHand>> shelf;
};

inline bool newestFirst(const upkeep::Record* a, const upkeep::Record* b) {
    return std::tuple(b->date, b->part, b->entered) < std::tuple(a->date, a->part, a->entered);
}

}  // namespace wm::ledger

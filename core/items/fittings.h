// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>
#include <map>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.h"
#include "core/items/rows.h"
#include "core/usage/exposure.h"

namespace wm::items {

/// A stretch of an item's life in one place: from its move up to (not including) `to`.
struct Spell {
    MoveKind kind = MoveKind::Removed;
    std::optional<MachineId> machine{};  ///< fitted straight to a machine
    std::optional<ItemId> parent{};      ///< or to another item
    std::string position{};
    calendar::Moment from{};
    std::optional<calendar::Moment> to{};
    std::int64_t move = 0;  ///< id of the move that began it
};

/// A stretch in which an item, through whatever it was fitted to, went with one machine.
struct MachineSpell {
    MachineId machine{};
    std::string path{};  ///< "engine/piston"
    calendar::Moment from{};
    std::optional<calendar::Moment> to{};
};

/// Where every item was, when. Built once from all moves that count.
class Fittings {
  public:
    explicit Fittings(std::span<const Move> moves);

    /// The item's places in order of time; empty if it never moved.
    [[nodiscard]] std::vector<Spell> spells(ItemId item) const;
    /// Where the item is at a moment (a move of that moment has happened); nothing before its first move.
    [[nodiscard]] std::optional<Spell> placeOf(ItemId item, calendar::Moment when) const;
    /// Children move with their parents: the machines that carried the item, through any depth.
    [[nodiscard]] std::vector<MachineSpell> machineSpells(ItemId item) const;
    /// The item at a path of a machine ("rear wheel", "engine/piston") at a moment.
    [[nodiscard]] std::optional<ItemId> at(MachineId machine, std::string_view path,
                                           calendar::Moment when) const;
    /// What sits straight on the machine, or on an item, at a moment, by position.
    [[nodiscard]] std::vector<std::pair<std::string, ItemId>> on(MachineId machine,
                                                                 calendar::Moment when) const;
    [[nodiscard]] std::vector<std::pair<std::string, ItemId>> on(ItemId parent, calendar::Moment when) const;

    /// May this move be made? Errors: PositionTaken, InTwoPlaces (fitted elsewhere at that moment), Cycle,
    /// Retired, NotFitted (removing what is not fitted), BeforeItsTime (earlier than the item's first day is
    /// the caller's check), OutOfOrder (a later move of the same item exists and contradicts it).
    [[nodiscard]] base::Result<void> check(const Move& move) const;

  private:
    std::map<ItemId, std::vector<Spell>> spells_;
};

/// The atoms that went through an item: those of the machines that carried it, while they did, and its stated
/// past as a Past atom. An Unlogged atom in which it was fitted or removed becomes a bracket from 0 to the
/// whole. `machineAtoms(machine)` gives a machine's atoms.
using AtomsOfMachine = std::function<std::span<const usage::Atom>(MachineId)>;
std::vector<usage::Atom> atomsOf(const Item& item, const Fittings& fittings,
                                 const AtomsOfMachine& machineAtoms);

/// A machine's own atoms with its stated past in front.
std::vector<usage::Atom> withPast(const Machine& machine, std::span<const usage::Atom> atoms);

}  // namespace wm::items

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

/// A stretch of an item's life in one place: from its move until the next. Use of the very moment of a move
/// (a wash of that evening, a race between whose motos it was made) went before it, so an item carries what
/// came after `from` and up to and including `to`.
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

    /// The item's places in order of time; empty if it never moved. Two moves of one moment leave a spell of
    /// no length.
    [[nodiscard]] std::span<const Spell> spells(ItemId item) const;
    /// Where the item is at a moment (a move of that moment has happened); nothing before its first move.
    [[nodiscard]] std::optional<Spell> placeOf(ItemId item, calendar::Moment when) const;
    /// Children move with their parents: the machines that carried the item, through any depth, in order.
    [[nodiscard]] std::vector<MachineSpell> machineSpells(ItemId item) const;
    /// The item at a path of a machine ("rear wheel", "engine/piston") at a moment.
    [[nodiscard]] std::optional<ItemId> at(MachineId machine, std::string_view path,
                                           calendar::Moment when) const;
    /// What sits straight on the machine, or on an item, at a moment, by position.
    [[nodiscard]] std::vector<std::pair<std::string, ItemId>> on(MachineId machine,
                                                                 calendar::Moment when) const;
    [[nodiscard]] std::vector<std::pair<std::string, ItemId>> on(ItemId parent, calendar::Moment when) const;

    /// What is missing on the way to a path, and since when the path stands empty. A place is empty if
    /// something sat there, on this machine or in this very item. Nothing if it holds something at `when`, or
    /// nobody ever tracked it.
    struct Left {
        ItemId item{};           ///< what sat there last
        std::string position{};  ///< "engine" of "engine/piston", if it is the engine that is out
        calendar::Moment since{};
    };
    [[nodiscard]] std::optional<Left> leftFrom(MachineId machine, std::string_view path,
                                               calendar::Moment when) const;
    /// What left a path that stands empty and lies unfitted since (the engine on the bench); of a part of it,
    /// that part, wherever it lies, or the whole if nobody ever tracked the part. Nothing if something sits
    /// at the path, or what left it is away, scrapped or fitted elsewhere.
    [[nodiscard]] std::optional<ItemId> lyingFrom(MachineId machine, std::string_view path,
                                                  calendar::Moment when) const;
    /// The positions of a machine that stand empty at `when`, and of what is fitted to it: each once, the
    /// whole before its parts, nothing below one that is empty.
    [[nodiscard]] std::vector<Left> emptied(MachineId machine, calendar::Moment when) const;
    /// True if something had sat at this very place before `when`.
    [[nodiscard]] bool wasTaken(const Spell& place, calendar::Moment when) const;

    /// May this move be made? Errors: PositionTaken (another item sits there, then or later while this one
    /// would), InTwoPlaces (fitted elsewhere at that moment), Cycle, Retired (the item or the parent),
    /// NotFitted (removing what is neither fitted nor away), OutOfOrder (a later move of the same item exists
    /// and contradicts it), Malformed (Fitted without a position, with a '/' in it, or not to exactly one of
    /// machine and parent). A move earlier than the item's first day is the caller's check.
    [[nodiscard]] base::Result<void> check(const Move& move) const;

  private:
    /// What positions belong to: a machine or an item.
    struct Host {
        std::optional<MachineId> machine;
        std::optional<ItemId> parent;
        friend auto operator<=>(const Host&, const Host&) = default;
    };
    struct Stay {
        ItemId item{};
        calendar::Moment from{};
        std::optional<calendar::Moment> to;
    };
    using Stays = std::vector<Stay>;  ///< of one position, in order of `from`
    using Positions = std::map<std::string, Stays, std::less<>>;
    struct Window {
        calendar::Moment from{};
        std::optional<calendar::Moment> to;  ///< nothing: for good
    };

    [[nodiscard]] std::optional<ItemId> at(const Host& host, std::string_view position,
                                           calendar::Moment when) const;
    /// What sits there, or sat there last.
    [[nodiscard]] std::optional<ItemId> lastAt(const Host& host, std::string_view position,
                                               calendar::Moment when) const;
    [[nodiscard]] bool liesFrom(ItemId item, const Host& host, std::string_view position,
                                calendar::Moment when) const;
    [[nodiscard]] std::vector<std::pair<std::string, ItemId>> on(const Host& host,
                                                                 calendar::Moment when) const;
    void collectEmptied(const Host& host, const std::string& way, calendar::Moment when,
                        std::vector<std::string>& paths) const;
    /// The first place down the path where nothing sits, if something did, as it is at `when`.
    [[nodiscard]] std::optional<Left> missingOn(MachineId machine, std::span<const std::string> path,
                                                calendar::Moment when) const;
    /// Calls `visit(spell, overlap)` for each spell in which the item was fitted inside the window.
    template <class Visit>
    void eachFitted(ItemId item, const Window& window, Visit&& visit) const;
    void collect(ItemId item, const Window& window, std::vector<ItemId>& chain,
                 std::vector<MachineSpell>& found) const;
    [[nodiscard]] bool isInside(ItemId item, ItemId host, const Window& window,
                                std::vector<ItemId>& chain) const;
    [[nodiscard]] base::Result<void> checkPlace(const Move& move, const Window& window) const;

    std::map<ItemId, std::vector<Spell>> spells_;
    std::map<Host, Positions> positions_;
    std::vector<calendar::Moment> moments_;  ///< of all moves, in order, each once
};

/// A stretch in which an item went with one machine: off and on again at one moment, or from one engine of a
/// machine into the next, is one stretch with it. `spells` says where in the machine it was.
struct Carriage {
    MachineId machine{};
    calendar::Moment from{};
    std::optional<calendar::Moment> to{};
    std::vector<MachineSpell> spells{};
};
/// In order of time.
std::vector<Carriage> carriagesOf(ItemId item, const Fittings& fittings);

/// The atoms that went through an item: those of the machines that carried it, while they did, and its stated
/// past as a Past atom, in order of `to`. Of an Unlogged atom in which it was fitted or removed it has the
/// part (usage::partOf), one for each stretch in which it was fitted; off and on again with no riding between
/// cuts nothing. `machineAtoms(machine)` gives a machine's atoms, its own stated past left out.
using AtomsOfMachine = std::function<std::span<const usage::Atom>(MachineId)>;
std::vector<usage::Atom> atomsOf(const Item& item, const Fittings& fittings,
                                 const AtomsOfMachine& machineAtoms);

/// What is left of a whole, neither end of it below 0: low - high, best - best, high - low.
usage::HoursBracket without(const usage::HoursBracket& whole, const usage::HoursBracket& part);

/// A machine's own atoms with its stated past in front. If its meter was read before its first day here, what
/// it ran from then on is told by the meter, and the past ends there, with the rest of what was stated.
std::vector<usage::Atom> withPast(const Machine& machine, std::span<const usage::Atom> atoms);

}  // namespace wm::items

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <string_view>

#include "core/items/fittings.h"
#include "core/upkeep/rows.h"

namespace wm::upkeep {

// Whose clock. The rules are in tests/data/subject/README.md, with a case for each.

/// What the clock of a task is asked of: the item that sits at its position, the position with nothing in it,
/// or the machine, where the position was never tracked or the task has none.
struct Subject {
    MachineId machine{};
    std::string position{};
    std::optional<ItemId> item{};
    std::optional<items::Fittings::Left> empty{};  ///< what went from the position, and since when
    [[nodiscard]] bool isEmpty() const { return empty.has_value(); }
};

/// Of a position of a machine at a moment. A part that was never tracked has the clock of what it sits in.
Subject subjectAt(const items::Fittings& fittings, MachineId machine, std::string_view position,
                  calendar::Moment when);

/// Where items were, also before anybody tracked them: an item that is not new was at its first known place
/// before, if it was fitted there on its first day here and nothing else is known to have sat there earlier.
class Whereabouts {
  public:
    using ItemOf = std::function<const items::Item*(ItemId)>;
    /// `fittings` must outlive it.
    Whereabouts(const items::Fittings& fittings, ItemOf itemOf);

    struct Place {
        MachineId machine{};
        std::string path{};
    };
    /// The machine that carried the item, and where on it.
    [[nodiscard]] std::optional<Place> of(ItemId item, calendar::Moment when) const;
    /// What the item sat in, if not straight on a machine.
    [[nodiscard]] std::optional<ItemId> wholeOf(ItemId item, calendar::Moment when) const;
    /// True for the item itself as well.
    [[nodiscard]] bool isPartOf(ItemId part, ItemId whole, calendar::Moment when) const;
    /// As Fittings::lyingFrom.
    [[nodiscard]] std::optional<ItemId> lyingFrom(MachineId machine, std::string_view position,
                                                  calendar::Moment when) const {
        return fittings_.lyingFrom(machine, position, when);
    }
    /// The place from which the item is tracked, if it is taken to have been there before.
    [[nodiscard]] std::optional<items::Spell> assumedBefore(ItemId item) const;
    /// Where it went with whatever it sat in from `after` until it was tracked, if it did.
    [[nodiscard]] std::optional<items::Carriage> untrackedSince(ItemId item, calendar::Moment after) const;

  private:
    [[nodiscard]] std::optional<items::Spell> placeOf(ItemId item, calendar::Moment when) const;

    const items::Fittings& fittings_;
    ItemOf itemOf_;
};

/// "engine/piston" is at or in "engine".
bool isAtOrIn(std::string_view path, std::string_view whole);

/// Does a record concern an item: does it name it, a part of it, a whole that it was in, or, naming none, was
/// the item at the place of that job (`position`, empty for a job on the machine as a whole) on that machine,
/// or did it lie beside that machine, that place being empty?
bool concerns(const Record& record, std::string_view position, ItemId item, const Whereabouts& whereabouts);

}  // namespace wm::upkeep

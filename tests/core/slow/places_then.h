// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "tests/core/slow/day_by_day.h"
#include "tests/core/slow/tale.h"

// What sat where at a moment, for the slow subject.
namespace wm::tale {

struct Spot {
    std::optional<MachineId> machine{};  ///< straight on a machine, or
    std::optional<ItemId> parent{};      ///< in another item
    std::string position{};
    friend bool operator==(const Spot&, const Spot&) = default;
};

struct RootPlace {
    MachineId machine{};
    std::string path{};
};

/// "engine/piston" in its parts.
std::vector<std::string> partsOf(const std::string& path);

class PlacesThen {
  public:
    explicit PlacesThen(const picture::Ledger& ledger) : ledger_(ledger) {}

    /// Where it was fitted by then, a move of that moment made. Of an item with a past, whose first known
    /// place nobody had tracked before and which was known from its first day, that place holds for the time
    /// before too: nothing says that it was put in that day.
    [[nodiscard]] std::optional<Spot> spotOf(ItemId item, calendar::Moment then) const;
    /// The same, of what was told alone.
    [[nodiscard]] std::optional<Spot> toldSpotOf(ItemId item, calendar::Moment then) const;
    /// Up to the machine, through any depth.
    [[nodiscard]] std::optional<RootPlace> rootOf(ItemId item, calendar::Moment then) const;
    [[nodiscard]] bool areRelated(ItemId one, ItemId other, calendar::Moment then) const;

    /// What a path of a machine holds: the item, the deepest thing that is tracked on the way (nothing: the
    /// machine), or that it is empty.
    struct Holds {
        std::optional<ItemId> item{};
        std::optional<ItemId> deepest{};
        bool isEmpty = false;
    };
    [[nodiscard]] Holds holds(MachineId machine, const std::string& path, calendar::Moment then) const;
    /// The day on which it became empty, if it is.
    [[nodiscard]] std::optional<calendar::Date> emptySince(MachineId machine, const std::string& path,
                                                           calendar::Moment then) const;
    [[nodiscard]] std::optional<ItemId> sitsAt(const Spot& spot, calendar::Moment then) const;
    /// The first move of an item, or nullptr.
    [[nodiscard]] const items::Move* firstMoveOf(ItemId item) const;
    /// True if it is told by its first move where it had been before.
    [[nodiscard]] bool wasThereBefore(ItemId item) const;
    [[nodiscard]] calendar::Date firstDay() const;
    [[nodiscard]] const picture::Ledger& ledger() const { return ledger_; }

  private:
    const picture::Ledger& ledger_;
};

/// The facts as day_by_day.h takes them.
slow::Garage slowGarage(const picture::Ledger& ledger, calendar::Date first, calendar::Date last);

}  // namespace wm::tale

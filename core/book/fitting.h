// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "core/book/book.h"

namespace wm::book {

// What may be fitted where, and whether a move was work.

/// What sits at the place that a move names, at its moment.
std::optional<ItemId> sitsAt(const Book& book, const items::Move& place);

enum class MayFit : std::uint8_t { Yes, WrongKind, Retired, Taken };

struct Fit {
    MayFit may = MayFit::Yes;
    std::optional<MachineId> from{};  ///< the other machine that it sits on now
};
/// May the item sit where `place` says (machine or parent, position), at its moment? What sits on another
/// machine may, and comes off there.
Fit mayFit(const Book& book, const items::Item& item, const items::Move& place);

struct Fitting {
    const items::Item* item = nullptr;
    std::optional<items::MoveKind>
        lies{};                     ///< on the shelf (Removed) or at a workshop (Away); nothing: fitted
    std::optional<MachineId> on{};  ///< the machine that it sits on
};
/// What could be fitted to a place, by kind: from the shelf, then from a workshop, then from elsewhere; by
/// name. `place` without a position: anything that is not scrapped.
std::vector<Fitting> whatFits(const Book& book, const items::Move& place);

/// Something on the shelf that could take the place of what sits in a task's position, or nullptr.
const items::Item* spareFor(const Book& book, const upkeep::TaskVersion& task);

/// Was the machine ridden after this moment, up to today?
bool riddenSince(const Book& book, MachineId machine, calendar::Moment when);

/// How a move is told that says no more: as it was, if something with a past comes to a place that nobody had
/// tracked; work otherwise. Of a day that was ridden since nobody can say it now (Unasked).
items::Told proposedTold(const Book& book, const items::Move& move);

}  // namespace wm::book

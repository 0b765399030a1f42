// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <memory>
#include <optional>
#include <vector>

#include "core/book/book.h"
#include "ui/drawing/dipstick.h"

namespace wm::ui {

/// A thing in its place: a machine, an item in a position, or a heading.
struct FittedNode {
    QString place;  ///< "rear wheel"; the machine's name; "on the shelf"
    QString item;
    QString life;
    QString governs;  ///< the task that ends this round, and how far it is
    std::optional<DipstickLevels> stick;
    std::optional<MachineId> machine;
    std::optional<ItemId> id;
    std::optional<TaskId> task;
    bool isFitted = false;
    bool isGap = false;  ///< a place of the machine where nothing sits now; `id` sat there last
    FittedNode* parent = nullptr;
    std::vector<std::unique_ptr<FittedNode>> children;
};

/// What is fitted to one machine or to all of them, and what lies on the shelf, under one root.
std::unique_ptr<FittedNode> fittedOn(const book::Book& book, std::optional<MachineId> machine);

/// What is left of the round that the limit governs, as heights on a stick as long as the limit and its
/// allowance.
DipstickLevels levelsOf(const upkeep::LimitState& limit);

}  // namespace wm::ui

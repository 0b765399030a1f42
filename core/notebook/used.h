// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/upkeep/task.h"

namespace wm::notebook {

/// "engine oil 1,0 l": what was used of one part or fluid.
struct UsedPart {
    std::string name{};
    std::int64_t amount = 1;  ///< pieces, millilitres or grams
    upkeep::Unit unit = upkeep::Unit::Piece;
    bool unitGuessed = false;  ///< more of it than anybody pours: read in the smaller unit
    friend bool operator==(const UsedPart&, const UsedPart&) = default;
};

/// Parts between semicolons, plus signs, line breaks, or commas that part no figure; each a name with an
/// amount before or behind it, or one piece. Nothing if an amount can't be read.
std::optional<std::vector<UsedPart>> readUsed(std::string_view cell, char decimal);
/// True if the cell is rather a list of parts than a sentence: some amount with a unit or a count.
bool readsAsUsed(std::string_view cell);

}  // namespace wm::notebook

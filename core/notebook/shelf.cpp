// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/notebook/shelf.h"

#include <algorithm>

#include "core/base/names.h"
#include "core/picture/shape.h"
#include "core/words/folding.h"

namespace wm::notebook {

namespace {

// Fluids are sold by the litre, grease by the tub; nobody said so of this one, and its card can be changed.
constexpr std::int64_t kUsualPack = 1000;

stock::StockLine newLine(const UsedPart& part) {
    return {.name = part.name,
            .unit = part.unit,
            .packAmount = part.unit == upkeep::Unit::Piece ? 1 : kUsualPack,
            .note = "from a notebook; pack size not yet known"};
}

}  // namespace

ShelfOfNotebook::ShelfOfNotebook(const book::Book& book) {
    for (const auto& line : book.ledger().all<stock::StockLine>())
        lines_.emplace(words::folded(line.name), Known{line.id, line.unit});
    for (const auto& move : book.ledger().all<stock::StockMove>()) {
        const auto [at, isNew] = firstMove_.try_emplace(move.line, move.date);
        if (!isNew)
            at->second = std::min(at->second, move.date);
    }
}

std::vector<upkeep::Use> ShelfOfNotebook::uses(picture::Checks& check, picture::Entry& entry,
                                               const std::vector<UsedPart>& parts, std::string& note) {
    std::vector<upkeep::Use> uses;
    for (const UsedPart& part : parts) {
        const auto [at, isNew] = lines_.try_emplace(words::folded(part.name), Known{{}, part.unit});
        Known& known = at->second;
        if (isNew) {
            stock::StockLine line = newLine(part);
            checkShape(check, line);
            known.id = entry.put(std::move(line));
        }
        if (known.unit != part.unit) {
            note += (note.empty() ? "used " : "; used ") + part.name + " " + std::to_string(part.amount) +
                    (part.unit == upkeep::Unit::Piece ? "" : " " + std::string(base::nameOf(part.unit)));
            continue;
        }
        const auto same = std::find_if(uses.begin(), uses.end(),
                                       [&](const upkeep::Use& use) { return use.line == known.id; });
        if (same != uses.end())
            same->amount += part.amount;
        else
            uses.push_back({.line = known.id, .amount = part.amount});
    }
    return uses;
}

bool ShelfOfNotebook::countsOn(StockLineId line, calendar::Date date) const {
    const auto first = firstMove_.find(line);
    return first == firstMove_.end() || first->second <= date;
}

}  // namespace wm::notebook

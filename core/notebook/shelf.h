// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <map>
#include <string>
#include <vector>

#include "core/book/book.h"
#include "core/notebook/used.h"
#include "core/picture/checks.h"
#include "core/picture/entry.h"

namespace wm::notebook {

/// The shelf as a notebook's jobs draw on it: lines by name, new ones for what is not there.
class ShelfOfNotebook {
  public:
    explicit ShelfOfNotebook(const book::Book& book);

    /// What a job used, as uses of shelf lines; a new line must pass `check`. What the shelf counts in
    /// another unit goes into the note.
    std::vector<upkeep::Use> uses(picture::Checks& check, picture::Entry& entry,
                                  const std::vector<UsedPart>& parts, std::string& note);
    /// False if the line was first counted after that day: what was used before is not in that count.
    [[nodiscard]] bool countsOn(StockLineId line, calendar::Date date) const;

  private:
    struct Known {
        StockLineId id{};
        upkeep::Unit unit = upkeep::Unit::Piece;
    };
    std::map<std::string, Known> lines_{};
    std::map<StockLineId, calendar::Date> firstMove_{};
};

}  // namespace wm::notebook

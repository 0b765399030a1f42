// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "core/book/book.h"

namespace wm::book {

/// Something that stands in the file and that no verb would have taken, or not without a question. It is
/// named and not refused: the file is the user's. Its words: ui/words/oddity_words.h.
struct Oddity {
    std::string where;  ///< the machine or item, and the position of a fitting
    calendar::Date day{};
    /// As the verb would say it: a reading that can't be (usage::checkReading), hours noted while the meter
    /// hardly ran (MeterStood), an item that does not go where it was fitted (WrongKind).
    base::Error error;
};

/// Of every machine, one that has gone too: by name, its readings, then its outings; then fittings by day.
std::vector<Oddity> oddities(const Book& book);

}  // namespace wm::book

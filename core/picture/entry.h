// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <set>
#include <string>
#include <utility>

#include "core/base/ids.h"
#include "core/base/phrase.h"
#include "core/picture/ledger.h"

namespace wm::picture {

/// The rows of one verb while they are put together: gives ids and the order of entry.
class Entry {
  public:
    Entry(const Ledger& ledger, const base::IdSource& newId);  ///< both must outlive it

    /// An id that nothing in the file or in this entry has.
    template <class IdType>
    [[nodiscard]] IdType newId() {
        return IdType{freeId()};
    }
    /// Adds a fact or version under a new id, as the next in order of entry.
    template <class R>
    decltype(R::id) add(R row) {
        static_assert(R::kKind != base::RowKind::Editable);
        row.id = newId<decltype(R::id)>();
        row.entered = nextEntered_++;
        const auto id = row.id;
        rows_.emplace_back(std::move(row));
        return id;
    }
    /// The same for a fact that is entered again: it stays where it stood in the order of entry.
    template <class R>
    decltype(R::id) addAgain(R row) {
        static_assert(R::kKind == base::RowKind::Fact);
        row.id = newId<decltype(R::id)>();
        const auto id = row.id;
        rows_.emplace_back(std::move(row));
        return id;
    }
    /// Writes an editable row, in place of the one with its id; without an id it is new and is given one.
    template <class R>
    decltype(R::id) put(R row) {
        static_assert(R::kKind == base::RowKind::Editable);
        if (row.id.isNothing())
            row.id = newId<decltype(R::id)>();
        const auto id = row.id;
        rows_.emplace_back(std::move(row));
        return id;
    }
    [[nodiscard]] Change change(std::string text) && { return {std::move(text), std::move(rows_)}; }
    /// The file keeps code and parts; the sentence is made where it is read.
    [[nodiscard]] Change change(const base::Phrase& text) && {
        return {base::stored(text), std::move(rows_)};
    }

  private:
    [[nodiscard]] std::int64_t freeId();

    const Ledger& ledger_;
    const base::IdSource& source_;
    base::Entered nextEntered_;
    std::set<std::int64_t> taken_;  ///< ids given here, and the ids that definitions keep over their versions
    std::vector<Row> rows_;
};

}  // namespace wm::picture

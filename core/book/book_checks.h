// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "core/book/book.h"
#include "core/picture/checks.h"

namespace wm::book {

/// Checks that ask the book: is the thing there, was it there on that day.
class BookChecks : public picture::Checks {
  public:
    explicit BookChecks(const Book& book) : book_(book) {}

    /// The row of this id that counts, or a fault Unknown and nullptr.
    template <class R, class IdType>
    const R* row(const base::Place& field, IdType id) {
        const R* found = book_.ledger().find<R>(id);
        if (found != nullptr && book_.ledger().strikeOf(id.value()) != nullptr)
            found = nullptr;
        that(found != nullptr, base::Fault::Unknown, field, std::to_string(id.value()));
        return found;
    }
    template <class R, class IdType>
    const R* row(const base::Place& field, const std::optional<IdType>& id) {
        return id ? row<R>(field, *id) : nullptr;
    }

    void fact(calendar::Date date);  ///< a day up to today
    void notBefore(calendar::Date date, calendar::Date first);
    /// A fact about a machine: known, not before it was there, not after it went.
    const items::Machine* machineOn(MachineId machine, calendar::Date date);
    /// The version of a task of this machine on a day; the first version if the day is before it.
    const upkeep::TaskVersion* taskOf(const base::Place& field, MachineId machine, TaskId task,
                                      calendar::Date date);
    /// A snag of this machine that counts; with `open`, NothingToDo if it has ended.
    const upkeep::Snag* snagOf(const base::Place& field, MachineId machine, SnagId snag, bool open);
    /// The container of a line, if one is named.
    void lotOf(const base::Place& field, const std::optional<LotId>& lot, StockLineId line);

  private:
    const Book& book_;
};

}  // namespace wm::book

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <map>
#include <memory>
#include <tuple>

#include "core/items/fittings.h"
#include "core/picture/ledger.h"

namespace wm::book {

/// Part of day and item of a record where it does not say them itself, worked out from the other facts.
/// A job whose meter figure is lower than what an outing of its day left was done before the riding, in
/// whatever order the two were told, and so was its reading; a plain reading says nothing of the riding.
/// A record at an emptied position that names no item is that of what lies on the bench.
class Placed {
  public:
    /// Shares with `before`, if there is one, where both place the same records alike.
    Placed(const picture::Ledger& ledger, const items::Fittings& fittings, const Placed* before);

    /// The record itself where it says all of that, else a copy that does.
    [[nodiscard]] const upkeep::Record& placed(const upkeep::Record& record) const;
    [[nodiscard]] usage::HourReading placed(const usage::HourReading& reading) const;
    /// The part of its day in which a record was made, one that is not in the ledger yet too.
    [[nodiscard]] calendar::DayPart partOf(const upkeep::Record& record) const;

    /// Whether both give the very same copies.
    [[nodiscard]] bool shares(const Placed& other) const { return moved_ == other.moved_; }

  private:
    using Records = std::map<RecordId, upkeep::Record>;
    std::map<std::tuple<MachineId, calendar::Date>, units::Hours> meterAfter_;  ///< the riding of a day
    std::shared_ptr<const Records> moved_;
};

}  // namespace wm::book

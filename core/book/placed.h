// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <map>
#include <memory>
#include <tuple>

#include "core/items/fittings.h"
#include "core/picture/ledger.h"

namespace wm::book {

/// What a fact says without naming it: in which part of its day a job was done, and on which item.
/// - A job whose figure of the meter is lower than what an outing of that day left was done before the
/// riding,
///   in whatever order the two were told, and so was its reading. A plain reading says nothing of the riding.
/// - A record at an emptied position that names no item is that of what lies on the bench.
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
    std::map<std::tuple<MachineId, calendar::Date>, units::Hours> left_;  ///< by the outings of the day
    std::shared_ptr<const Records> moved_;
};

}  // namespace wm::book

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

#include "core/calendar/date.h"

/// Which copies of a file are kept, and when the next one is due. Pure: a list of what there is goes in.
///
/// The clock of an old laptop may be wrong by years. What decides is the order in which copies were written;
/// the days that they bear only say which of them stand for the same week or month.
namespace wm::store {

inline constexpr std::size_t kNewestCopies = 10;
inline constexpr std::size_t kWeeklyCopies = 8;
inline constexpr std::size_t kMonthlyCopies = 12;
/// However the clock stands, after so many changes a copy is due.
inline constexpr std::int64_t kChangesBetweenCopies = 100;

struct LadderCopy {
    std::int64_t order = 0;     ///< counts up with each copy that is written
    std::int64_t revision = 0;  ///< of the file, when it was copied
    calendar::Date day;         ///< what the clock said then
    friend bool operator==(const LadderCopy&, const LadderCopy&) = default;
};

/// True if `a` was written after `b`.
bool writtenAfter(const LadderCopy& a, const LadderCopy& b);

/// Whether a copy is due before the next change to a file that stands at `revision`. One a day; a day that
/// one of the newest copies bears has had its own, so that a clock that jumps to and fro writes no more than
/// a copy for each day that it shows.
bool isCopyDue(const std::vector<LadderCopy>& newestFirst, std::int64_t revision, calendar::Date today);

/// For each copy whether it is kept: the newest ten whatever day they bear, of those before them the newest
/// of each week, eight times, of those before these the newest of each month, twelve times. Each new copy
/// costs at most one old one, and what goes is older than the one that stands for its week or month.
std::vector<bool> keptOnLadder(const std::vector<LadderCopy>& newestFirst);

}  // namespace wm::store

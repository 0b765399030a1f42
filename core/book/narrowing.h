// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <string_view>

#include "core/base/names.h"
#include "core/book/book.h"

namespace wm::book {

/// What would say more of a line that may be over, or of which not enough is known.
enum class NarrowedBy : std::uint8_t {
    MeterThen,   ///< what the hour meter showed on the day of the job
    HoursSince,  ///< how many hours ago it was
    Past,        ///< what the machine or item has behind it
    CountSince,  ///< how many washes (or the like) there were since
    Day          ///< on which day it was
};

struct Narrowing {
    NarrowedBy by = NarrowedBy::MeterThen;
    upkeep::Counter counter = upkeep::Counter::Hours;
    std::optional<calendar::Date> since{};  ///< the day of the job, if one is known
};

/// The answer that would narrow what is behind a line, by the limit that decides; nothing for a line that is
/// over, in hand or without a record.
std::optional<Narrowing> narrowingOf(const DueLine& line);

}  // namespace wm::book

namespace wm::base {
template <>
struct Names<book::NarrowedBy> {
    static constexpr std::array<std::string_view, 5> names{"meter then", "hours since", "past", "count since",
                                                           "day"};
};
}  // namespace wm::base

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/upkeep/stated.h"

#include <tuple>

#include "core/upkeep/counters.h"

namespace wm::upkeep {

namespace {

const Stated* statedOf(const Record& record, Counter counter) {
    for (const Stated& stated : record.stated)
        if (stated.counter == counter)
            return &stated;
    return nullptr;
}

CountBracket bracketOf(const Stated& stated) {
    return {stated.low, stated.best, stated.high};
}

// Of what lies after `told.date` as a whole, what lies after `last`.
CountBracket partOf(const Stated& stated, const Record& told, const Record& last) {
    const bool sameSide = wasNeverDone(told) == wasNeverDone(last);
    if (sameSide && (wasNeverDone(told) || told.date == last.date))
        return bracketOf(stated);
    if (sameSide ? last.date < told.date : wasNeverDone(last))
        return {stated.low, std::nullopt, std::nullopt};
    return {0, stated.high == 0 ? std::optional<std::int64_t>(0) : std::nullopt, stated.high};
}

}  // namespace

std::optional<StatedSince> statedSince(const Record& last, Counter counter,
                                       std::span<const Record* const> told) {
    if (const Stated* own = statedOf(last, counter))
        return StatedSince{bracketOf(*own), own->upTo};
    if (!traitsOf(counter).piece)
        return std::nullopt;
    const Record* newest = nullptr;
    for (const Record* each : told)
        if (statedOf(*each, counter) != nullptr && (newest == nullptr || newest->entered < each->entered))
            newest = each;
    if (newest == nullptr)
        return std::nullopt;
    const Stated& stated = *statedOf(*newest, counter);
    if (momentOf(last) >= calendar::Moment{stated.upTo, calendar::DayPart::AfterRiding})
        return std::nullopt;
    return StatedSince{partOf(stated, *newest, last), stated.upTo};
}

}  // namespace wm::upkeep

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/notebook/beginning.h"

#include <algorithm>

namespace wm::notebook {

namespace {

// The first figure of a meter and the first ride agree within what a meter's last figure can say.
constexpr std::int64_t kAsNew = 15;

void setPast(items::Machine& card, const std::optional<units::Hours>& meterBefore) {
    card.startedNew = false;
    card.pastLow = card.pastBest = meterBefore.value_or(units::Hours{});
    card.pastHigh.reset();
}

}  // namespace

Beginning beginningOf(const std::vector<const Line*>& lines, std::size_t machine) {
    Beginning beginning;
    bool any = false;
    bool unnoted = false;
    units::Hours ridden{};
    for (const Line* line : lines) {
        const Facts& facts = line->facts;
        if (std::find(facts.machines.begin(), facts.machines.end(), machine) == facts.machines.end())
            continue;
        beginning.first = any ? std::min(beginning.first, facts.date) : facts.date;
        any = true;
        if (facts.sort == FactSort::Outing) {
            unnoted = unnoted || !facts.hours;
            ridden += facts.hours.value_or(units::Hours{});
            beginning.ridden.emplace_back(facts.date, facts.hours.value_or(units::Hours{}));
        }
        if (facts.meter && facts.machines.size() == 1 && !beginning.meterBefore) {
            const units::Hours shown = facts.before.value_or(*facts.meter);
            beginning.meterBefore = std::max(units::Hours{}, unnoted ? units::Hours{} : shown - ridden);
        }
    }
    return beginning;
}

bool dateBack(items::Machine& card, bool begins, const Beginning& beginning) {
    if (!begins && card.since <= beginning.first)
        return false;
    const calendar::Date stated = card.since;
    card.since = beginning.first;
    const bool fromNew = beginning.meterBefore && beginning.meterBefore->count() <= kAsNew;
    if (begins) {
        setPast(card, beginning.meterBefore);
        card.startedNew = fromNew;
        if (fromNew) {
            card.pastLow = card.pastBest = units::Hours{};
            card.pastHigh = units::Hours{};
        }
        return true;
    }
    const bool saysNothing = card.pastBest == units::Hours{} && !card.startedNew;
    if (saysNothing || (card.startedNew && beginning.meterBefore && !fromNew)) {
        setPast(card, beginning.meterBefore);
        return true;
    }
    units::Hours since{};
    for (const auto& [date, hours] : beginning.ridden)
        if (date < stated)
            since += hours;
    const auto without = [&](units::Hours past) { return std::max(units::Hours{}, past - since); };
    card.pastLow = without(card.pastLow);
    card.pastBest = without(card.pastBest);
    if (card.pastHigh)
        card.pastHigh = without(*card.pastHigh);
    return true;
}

}  // namespace wm::notebook

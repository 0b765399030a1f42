// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "core/picture/shape.h"

// The shelf, and what lies ahead.

namespace wm::picture {

using base::Fault;

void checkShape(Checks& check, stock::StockLine& row) {
    check.name("name", row.name);
    check.word("part_number", row.partNumber);
    check.word("supersedes", row.supersedes);
    check.note("fits", row.fits);
    check.fromOne("pack_amount", row.packAmount, kMostAmount);
    check.money("pack_price", row.packPrice);
    if (row.leadDays)
        check.fromZero("lead_days", *row.leadDays, kMostDays);
    check.word("place", row.place);
    check.fromZero("keep", row.keep, kMostAmount);
    if (row.openedDays)
        check.fromOne("opened_days", *row.openedDays, kMostDays);
    check.note("note", row.note);
}

void checkShape(Checks& check, stock::Lot& row) {
    check.word("label", row.label);
    check.date("received", row.received);
    if (row.opened)
        check.ordered("opened", row.received, *row.opened);
    check.date("best_before", row.bestBefore);
}

void checkShape(Checks& check, stock::StockMove& row) {
    check.date("date", row.date);
    const std::string given = std::to_string(row.amount);
    check.that(row.amount >= -kMostAmount && row.amount <= kMostAmount, Fault::TooLarge, "amount", given,
               std::to_string(kMostAmount));
    check.that(row.amount != 0, Fault::NotPositive, "amount", given);
    const bool in = row.why == stock::StockWhy::Bought || row.why == stock::StockWhy::Counted;
    const bool out = row.why != stock::StockWhy::Bought;
    check.that(row.amount > 0 ? in : out, Fault::Negative, "amount", given);
    check.money("price", row.price);
    check.note("note", row.note);
}

void checkShape(Checks& check, stock::StockOrder& row) {
    check.date("date", row.date);
    check.fromOne("amount", row.amount, kMostAmount);
    if (row.expected)
        check.ordered("expected", row.date, *row.expected);
    check.note("note", row.note);
}

void checkShape(Checks& check, outlook::Event& row) {
    static constexpr std::int32_t kLongest = 60;
    check.name("name", row.name);
    check.word("place", row.place);
    check.ordered("last_day", row.first, row.last);
    if (!check.failed())
        check.that(row.last - row.first <= kLongest, Fault::TooLarge, "last_day", row.last.iso(),
                   row.first.plusDays(kLongest).iso());
    for (std::size_t at = 0; at < row.entries.size(); ++at) {
        const auto end = row.entries.begin() + static_cast<std::ptrdiff_t>(at);
        const bool again = std::any_of(row.entries.begin(), end, [&](const auto& other) {
            return other.machine == row.entries[at].machine;
        });
        check.that(!again, Fault::Duplicate, placeIn("entries", at, "machine"));
    }
    check.note("note", row.note);
}

void checkShape(Checks& check, weekend::WorkWindow& row) {
    static constexpr std::int64_t kMidnight = 24 * 60;
    static constexpr std::int64_t kMostHands = 20;
    check.date("date", row.date);
    check.fromZero("starts_at", row.startsAt.count(), kMidnight);
    check.fromZero("ends_at", row.endsAt.count(), kMidnight);
    check.that(row.startsAt < row.endsAt, Fault::OutOfOrder, "ends_at", std::to_string(row.endsAt.count()),
               std::to_string(row.startsAt.count()));
    check.fromOne("hands", row.hands, kMostHands);
}

void checkShape(Checks& check, weekend::Pick& row) {
    oneOf(check, "task", row.task, row.snag);
}

void checkShape(Checks& check, weekend::IssuedSheet& row) {
    check.date("date", row.date);
    check.fromOne("number", row.number, kMostAmount);
    check.word("target", row.target);
    check.that(!row.jobs.empty(), Fault::Empty, "jobs");
    for (std::size_t at = 0; at < row.jobs.size(); ++at)
        oneOf(check, placeIn("jobs", at, "task"), row.jobs[at].task, row.jobs[at].snag);
    check.note("note", row.note);
}

}  // namespace wm::picture

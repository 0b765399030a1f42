// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/stock/on_hand.h"

#include <algorithm>
#include <map>
#include <tuple>

namespace wm::stock {

namespace {

std::optional<calendar::Date> lastGoodDay(const StockLine& line, const Lot& lot, calendar::Date on) {
    std::optional<calendar::Date> last = lot.bestBefore;
    if (lot.opened && *lot.opened <= on && line.openedDays) {
        const auto opened = lot.opened->plusDays(static_cast<std::int32_t>(*line.openedDays));
        if (!last || opened < *last)
            last = opened;
    }
    return last;
}

LotOnHand describe(const StockLine& line, const Lot& lot, std::int64_t amount, calendar::Date on) {
    const auto last = lastGoodDay(line, lot, on);
    return {.lot = lot.id,
            .amount = amount,
            .opened = lot.opened && *lot.opened <= on,
            .tooOld = last && *last < on,
            .goodUntil = last};
}

// Opened first, then what ages first; what has no date, and what is in no container, last.
auto shelfOrder(const LotOnHand& lot) {
    return std::tuple(!lot.lot, !lot.opened, !lot.goodUntil, lot.goodUntil, lot.lot);
}

// Good containers in shelf order, then the loose ones, then what is too old.
auto drawOrder(const LotOnHand& lot) {
    return std::tuple(lot.tooOld, shelfOrder(lot));
}

}  // namespace

std::vector<OnHand> onHand(std::span<const StockLine> lines, std::span<const Lot> lots,
                           std::span<const StockMove> moves, std::span<const StockOrder> orders,
                           calendar::Date on) {
    std::map<StockLineId, std::map<std::optional<LotId>, std::int64_t>> amounts;
    std::map<StockOrderId, std::int64_t> came;
    for (const StockMove& move : moves) {
        if (move.date > on)
            continue;
        amounts[move.line][move.lot] += move.amount;
        if (move.order)
            came[*move.order] += move.amount;
    }
    std::map<LotId, const Lot*> cards;
    for (const Lot& lot : lots)
        cards[lot.id] = &lot;
    std::map<StockLineId, std::int64_t> toCome;
    for (const StockOrder& order : orders)
        if (order.date <= on)
            toCome[order.line] += std::max<std::int64_t>(order.amount - came[order.id], 0);

    std::vector<OnHand> result;
    result.reserve(lines.size());
    for (const StockLine& line : lines) {
        OnHand entry{.line = line.id, .onOrder = toCome[line.id]};
        for (const auto& [lot, amount] : amounts[line.id]) {
            if (amount == 0)
                continue;
            const auto card = lot ? cards.find(*lot) : cards.end();
            LotOnHand part = card == cards.end() ? LotOnHand{.lot = lot, .amount = amount}
                                                 : describe(line, *card->second, amount, on);
            entry.amount += amount;
            if (!part.tooOld)
                entry.usable += amount;
            entry.lots.push_back(part);
        }
        entry.usable = std::max<std::int64_t>(entry.usable, 0);
        std::sort(entry.lots.begin(), entry.lots.end(),
                  [](const LotOnHand& a, const LotOnHand& b) { return shelfOrder(a) < shelfOrder(b); });
        result.push_back(std::move(entry));
    }
    return result;
}

std::vector<std::pair<std::optional<LotId>, std::int64_t>> drawFrom(const OnHand& line, std::int64_t amount) {
    std::vector<LotOnHand> lots = line.lots;
    std::sort(lots.begin(), lots.end(),
              [](const LotOnHand& a, const LotOnHand& b) { return drawOrder(a) < drawOrder(b); });
    std::vector<std::pair<std::optional<LotId>, std::int64_t>> taken;
    for (const LotOnHand& lot : lots) {
        const std::int64_t part = std::min(amount, lot.amount);
        if (part <= 0)
            continue;
        taken.emplace_back(lot.lot, part);
        amount -= part;
    }
    if (amount <= 0)
        return taken;
    const auto loose = std::find_if(taken.begin(), taken.end(), [](const auto& part) { return !part.first; });
    if (loose == taken.end())
        taken.emplace_back(std::nullopt, amount);
    else
        loose->second += amount;
    return taken;
}

}  // namespace wm::stock

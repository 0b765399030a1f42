// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/items/moved_at.h"

#include <algorithm>
#include <map>
#include <set>
#include <tuple>

namespace wm::items {

namespace {

struct Place {
    std::optional<MachineId> machine{};
    std::optional<ItemId> parent{};
    std::string position{};
    friend auto operator<=>(const Place&, const Place&) = default;
};

Place placeOf(const Move& move) {
    return {move.machine, move.parent, move.position};
}

std::vector<const Move*> inOrder(std::span<const Move> moves, calendar::Date on) {
    std::vector<const Move*> sorted;
    for (const Move& move : moves)
        if (move.date <= on)
            sorted.push_back(&move);
    std::sort(sorted.begin(), sorted.end(), [](const Move* a, const Move* b) {
        return std::tie(a->date, a->part, a->entered, a->id) < std::tie(b->date, b->part, b->entered, b->id);
    });
    return sorted;
}

// Goes through the moves from the first to the last and knows where everything sits.
class Walk {
  public:
    Walk(std::vector<const Move*> moves, std::span<const Item> items) : moves_(std::move(moves)) {
        for (const Item& item : items)
            if (item.startedNew)
                new_.insert(item.id);
    }

    std::vector<MovedAt> all() {
        for (const Move* move : moves_) {
            see(*move);
            take(*move);
        }
        return std::move(seen_);
    }

  private:
    struct Root {
        MachineId machine{};
        std::string path{};
    };

    [[nodiscard]] std::optional<Root> rootOf(const Place& place) const {
        if (place.machine)
            return Root{*place.machine, place.position};
        const auto host = place.parent ? at_.find(*place.parent) : at_.end();
        auto root = host == at_.end() ? std::nullopt : rootOf(host->second);
        if (root)
            root->path += '/' + place.position;
        return root;
    }

    void see(const Move& move) {
        const bool isOutAndBack = isBackOn(move);
        if (const auto from = at_.find(move.item); from != at_.end())
            if (auto root = rootOf(from->second))
                seen_.push_back({.move = &move,
                                 .machine = root->machine,
                                 .path = std::move(root->path),
                                 .isOutAndBack = isOutAndBack});
        if (move.kind != MoveKind::Fitted)
            return;
        if (auto root = rootOf(placeOf(move)))
            seen_.push_back({.move = &move,
                             .machine = root->machine,
                             .path = std::move(root->path),
                             .came = true,
                             .isTracking = isTracking(move),
                             .isOutAndBack = isOutAndBack});
    }

    void take(const Move& move) {
        at_.erase(move.item);
        lastMoved_[move.item] = move.date;
        if (move.kind != MoveKind::Fitted)
            return;
        at_[move.item] = lastPlace_[move.item] = placeOf(move);
        tracked_.insert(placeOf(move));
    }

    [[nodiscard]] bool isTracking(const Move& move) const {
        return !lastMoved_.contains(move.item) && !tracked_.contains(placeOf(move)) &&
               !new_.contains(move.item);
    }

    // Where it sat before this move, or before it went off earlier that day.
    [[nodiscard]] std::optional<Place> wasAt(const Move& move) const {
        if (const auto now = at_.find(move.item); now != at_.end())
            return now->second;
        const auto moved = lastMoved_.find(move.item);
        const auto last = lastPlace_.find(move.item);
        const bool isToday = moved != lastMoved_.end() && moved->second == move.date;
        return isToday && last != lastPlace_.end() ? std::optional(last->second) : std::nullopt;
    }

    [[nodiscard]] bool isBackOn(const Move& move) const {
        const auto was = wasAt(move);
        if (!was)
            return false;
        bool wasOut = false;
        bool isBack = false;
        for (const Move* other : moves_) {
            if (other->date != move.date)
                continue;
            const bool isThere = other->kind == MoveKind::Fitted && placeOf(*other) == *was;
            if (other->item != move.item && isThere)
                return false;
            if (other->item != move.item)
                continue;
            // What a job sends out comes off within that job.
            wasOut = wasOut || (other->kind != MoveKind::Fitted && !other->record);
            isBack = isThere;
        }
        return wasOut && isBack;
    }

    std::vector<const Move*> moves_;
    std::set<ItemId> new_;
    std::map<ItemId, Place> at_;
    std::map<ItemId, Place> lastPlace_;
    std::map<ItemId, calendar::Date> lastMoved_;
    std::set<Place> tracked_;
    std::vector<MovedAt> seen_;
};

}  // namespace

std::vector<MovedAt> movedAt(std::span<const Move> moves, std::span<const Item> items, calendar::Date on) {
    return Walk(inOrder(moves, on), items).all();
}

}  // namespace wm::items

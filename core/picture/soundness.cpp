// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/picture/soundness.h"

#include <algorithm>
#include <tuple>
#include <unordered_map>

#include "core/picture/references.h"
#include "core/picture/shape.h"

namespace wm::picture {

using base::Fault;

namespace {

template <class Act>
void eachTable(Rows& rows, Act&& act) {
    std::apply([&](auto&... tables) { (act(tables), ...); }, rows);
}

template <class R>
void checkEntry(Checks& check, const R& row) {
    if constexpr (requires { row.entered; })
        check.fromOne("entered", row.entered, kMostEntered);
}

// Who sits in whom while the moves are gone through in order: the same walk as that of the fittings.
class Nesting {
  public:
    /// False if the part would sit in itself.
    bool make(const items::Move& move) {
        if (move.kind != items::MoveKind::Fitted || !move.parent) {
            hosts_.erase(move.item);
            return true;
        }
        hosts_[move.item] = *move.parent;
        return !isInside(*move.parent, move.item);
    }

  private:
    // Deeper than anything is built, and each step of the way counts.
    static constexpr int kDeepest = 1000;

    bool isInside(ItemId item, ItemId host) const {
        for (int depth = 0; depth < kDeepest; ++depth) {
            if (item == host)
                return true;
            const auto next = hosts_.find(item);
            if (next == hosts_.end())
                return false;
            item = next->second;
        }
        return true;
    }

    std::unordered_map<ItemId, ItemId> hosts_;
};

std::optional<Unsound> firstCircle(const std::vector<items::Move>& moves) {
    std::vector<const items::Move*> inOrder;
    for (const items::Move& move : moves)
        inOrder.push_back(&move);
    std::sort(inOrder.begin(), inOrder.end(), [](const items::Move* a, const items::Move* b) {
        return std::tie(a->date, a->part, a->entered) < std::tie(b->date, b->part, b->entered);
    });
    Nesting nesting;
    for (const items::Move* move : inOrder)
        if (!nesting.make(*move))
            return Unsound{items::Move::kTable, move->id.value(), {Fault::Cycle, "parent", {}, {}}};
    return std::nullopt;
}

}  // namespace

std::optional<Unsound> firstUnsound(Rows& rows) {
    References references;
    eachTable(rows, [&](const auto& table) {
        for (const auto& row : table)
            references.add(row);
    });
    references.close();
    std::optional<Unsound> found;
    Checks bounds = Checks::ofStored();
    Checks there;
    eachTable(rows, [&]<class R>(std::vector<R>& table) {
        for (R& row : table) {
            if (found)
                return;
            checkEntry(bounds, row);
            checkShape(bounds, row);
            references.check(there, row);
            if (const auto& error = bounds.failed() ? bounds.error() : there.error())
                found = Unsound{R::kTable, row.id.value(), *error};
        }
    });
    return found ? found : firstCircle(std::get<std::vector<items::Move>>(rows));
}

std::optional<base::Error> beyondBounds(std::vector<Row>& rows) {
    Checks check = Checks::ofStored();
    for (Row& row : rows)
        std::visit(
            [&check](auto& each) {
                checkEntry(check, each);
                checkShape(check, each);
            },
            row);
    return check.error();
}

}  // namespace wm::picture

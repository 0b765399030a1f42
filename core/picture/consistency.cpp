// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/picture/consistency.h"

#include <map>
#include <set>
#include <string>
#include <tuple>

#include "core/base/circle.h"

namespace wm::picture {

using base::Fault;
using items::MoveKind;

namespace {

template <class R>
concept DatedFact = R::kKind == base::RowKind::Fact&& requires(const R& row) {
    row.date;
};

bool isBaseline(const auto& row) {
    if constexpr (std::is_same_v<std::decay_t<decltype(row)>, upkeep::Record>)
        return row.kind == upkeep::RecordKind::Baseline;
    else
        return false;
}

bool names(const auto& row, MachineId machine) {
    if constexpr (requires { row.machine == machine; })
        return row.machine == machine;
    else
        return false;
}

bool names(const auto& row, ItemId item) {
    bool named = false;
    if constexpr (requires { row.item == item; })
        named = row.item == item;
    if constexpr (requires { row.parent == item; })
        named = named || row.parent == item;
    return named;
}

// A figure that was written down before the machine came here is of the time before, as a baseline is.
template <class R>
bool isOfBefore(const Ledger& ledger, const R& row) {
    if constexpr (std::is_same_v<R, usage::HourReading>) {
        const auto* machine = ledger.find<items::Machine>(row.machine);
        return machine != nullptr && !machine->startedNew && row.date < machine->since;
    } else {
        return isBaseline(row);
    }
}

template <class IdType>
std::optional<calendar::Date> firstOf(const Ledger& ledger, IdType id) {
    std::optional<calendar::Date> first;
    eachTable(ledger, [&]<class R>(RowsView<R> rows) {
        if constexpr (DatedFact<R>)
            for (const R& row : rows)
                if (names(row, id) && !isOfBefore(ledger, row) && (!first || row.date < *first))
                    first = row.date;
    });
    return first;
}

// Where every item is while the moves are gone through in order.
class Places {
  public:
    base::Result<void> make(const items::Move& move) {
        Place& now = places_[move.item];
        const bool fitted = now.kind == MoveKind::Fitted;
        if (now.kind == MoveKind::Retired)
            return no(Fault::Retired, move);
        if (move.kind != MoveKind::Fitted) {
            if (move.kind == MoveKind::Removed && !fitted && now.kind != MoveKind::Away)
                return no(Fault::NotFitted, move);
            if (fitted)
                held_.erase(keyOf(now.machine, now.parent, now.position));
            now = Place{.kind = move.kind};
            return {};
        }
        if (fitted)
            return no(Fault::InTwoPlaces, move);
        if (move.parent && isInside(*move.parent, move.item))
            return no(Fault::Cycle, move);
        if (move.parent && places_[*move.parent].kind == MoveKind::Retired)
            return no(Fault::Retired, move);
        if (!held_.insert(keyOf(move.machine, move.parent, move.position)).second)
            return no(Fault::PositionTaken, move);
        now = Place{MoveKind::Fitted, move.machine, move.parent, move.position};
        return {};
    }

  private:
    struct Place {
        std::optional<MoveKind> kind{};
        std::optional<MachineId> machine{};
        std::optional<ItemId> parent{};
        std::string position{};
    };
    using Key = std::tuple<std::optional<MachineId>, std::optional<ItemId>, std::string>;

    static Key keyOf(std::optional<MachineId> machine, std::optional<ItemId> parent, std::string position) {
        return {machine, parent, std::move(position)};
    }
    static tl::unexpected<base::Error> no(Fault fault, const items::Move& move) {
        return base::refuse(fault, "move", std::to_string(move.id.value()));
    }
    // True if `item` is `host` itself or sits in it, through any depth.
    bool isInside(ItemId item, ItemId host) const {
        std::optional<ItemId> at = item;
        while (at && *at != host) {
            const auto place = places_.find(*at);
            at = place == places_.end() ? std::nullopt : place->second.parent;
        }
        return at.has_value();
    }

    std::map<ItemId, Place> places_;
    std::set<Key> held_;
};

enum class Seen : std::uint8_t { Not, Open, Done };

using ByCode = std::map<std::string, const weekend::StepVersion*>;

// `path` leads from a step to what it needs; at a circle it ends where the circle began.
bool closesCircle(const weekend::StepVersion* step, const ByCode& steps, std::map<std::string, Seen>& seen,
                  std::vector<const weekend::StepVersion*>& path) {
    if (seen[step->code] == Seen::Done)
        return false;
    path.push_back(step);
    if (seen[step->code] == Seen::Open)
        return true;
    seen[step->code] = Seen::Open;
    for (const weekend::Need& need : step->needs)
        if (const auto needed = steps.find(need.code); needed != steps.end())
            if (closesCircle(needed->second, steps, seen, path))
                return true;
    seen[step->code] = Seen::Done;
    path.pop_back();
    return false;
}

}  // namespace

std::optional<calendar::Date> firstFact(const Ledger& ledger, MachineId machine) {
    return firstOf(ledger, machine);
}

std::optional<calendar::Date> firstFact(const Ledger& ledger, ItemId item) {
    return firstOf(ledger, item);
}

base::Result<void> checkMoves(std::span<const items::Move> all) {
    std::vector<items::Move> moves(all.begin(), all.end());
    std::sort(moves.begin(), moves.end(), [](const items::Move& a, const items::Move& b) {
        return std::tie(a.date, a.part, a.entered) < std::tie(b.date, b.part, b.entered);
    });
    Places places;
    for (const items::Move& move : moves)
        if (const auto made = places.make(move); !made)
            return made;
    return {};
}

std::vector<const weekend::StepVersion*> circleOfNeeds(std::span<const weekend::StepVersion* const> steps) {
    ByCode byCode;
    for (const auto* step : steps)
        byCode[step->code] = step;
    std::map<std::string, Seen> seen;
    std::vector<const weekend::StepVersion*> path;
    for (const auto& [code, step] : byCode)
        if (closesCircle(step, byCode, seen, path)) {
            path.erase(path.begin(), std::find(path.begin(), path.end(), path.back()));
            return {path.rbegin(), path.rend()};
        }
    return {};
}

base::Result<void> checkNeeds(std::span<const weekend::StepVersion* const> steps) {
    std::string names;
    for (const auto* step : circleOfNeeds(steps))
        names += (names.empty() ? "" : base::kBefore) + step->name;
    return names.empty() ? base::Result<void>{} : base::refuse(Fault::Cycle, "needs", names);
}

}  // namespace wm::picture

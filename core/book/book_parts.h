// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <map>
#include <memory>
#include <set>
#include <string_view>
#include <tuple>
#include <utility>
#include <vector>

#include "core/book/book.h"
#include "core/book/joints_then.h"
#include "core/book/placed.h"

namespace wm::book {

/// The cards and versions of a ledger by what they are about. Books of the same ones share this.
struct Groups {
    explicit Groups(const picture::Ledger& ledger);

    items::Fittings fittings;
    std::map<TaskId, std::vector<const upkeep::TaskVersion*>> taskVersions;
    std::map<JointId, std::vector<const fastening::JointVersion*>> jointVersions;
    std::map<StepId, std::vector<const weekend::StepVersion*>> stepVersions;
    std::map<TaskId, std::vector<const upkeep::Deferral*>> deferralsOfTask;
    std::map<SnagId, std::vector<const upkeep::Deferral*>> deferralsOfSnag;
    std::set<TaskId> pickedTasks;
    std::set<SnagId> pickedSnags;
    std::map<MachineId, std::set<ItemId>> carried;    ///< what each machine ever carried
    std::map<ItemId, std::set<MachineId>> carriedBy;  ///< and the other way round
};

/// The jobs done on one machine, in order of entry, and those of one task's code.
struct RecordsOfMachine {
    std::vector<const upkeep::Record*> all;
    std::map<std::string_view, std::vector<const upkeep::Record*>> ofJob;

    void add(const upkeep::Record& record);
};

/// What a map holds under a key; an empty one if there is no such key.
template <class Map, class Key>
const typename Map::mapped_type& under(const Map& map, const Key& key) {
    static const typename Map::mapped_type kNone{};
    const auto at = map.find(key);
    return at == map.end() ? kNone : at->second;
}

/// What was looked up or worked out once, by what it is about. Books share the values.
template <class Key, class Value>
class Memo {
  public:
    /// The kept value, made by `make` if it is not there yet.
    template <class Make>
    const Value& get(const Key& key, const Make& make) {
        const auto known = values_.find(key);
        if (known != values_.end())
            return *known->second;
        auto made = std::make_shared<Value>(make());  // may keep others on its way
        return *values_.emplace(key, std::move(made)).first->second;
    }
    /// All of `before` but what is about one of `keys`.
    template <class Keys>
    void takeOver(const Memo& before, const Keys& keys) {
        values_ = before.values_;
        for (const Key& key : keys)
            values_.erase(key);
    }
    void put(const Key& key, Value value) { values_[key] = std::make_shared<Value>(std::move(value)); }
    void forget(const Key& key) { values_.erase(key); }
    /// The value, for changing it: a copy if another book sees it too.
    Value& own(const Key& key) {
        auto& value = values_[key];
        if (value == nullptr)
            value = std::make_shared<Value>();
        else if (value.use_count() > 1)
            value = std::make_shared<Value>(*value);
        return *value;
    }

  private:
    std::map<Key, std::shared_ptr<Value>> values_;  ///< handed out to be read only
};

/// What the book has looked up and worked out so far. For core/book/book*.cpp alone.
struct Book::Parts {
    /// Takes over from `before`, if there is one, what the rows that came since leave as it was.
    Parts(std::shared_ptr<const picture::Ledger> ledgerOf, calendar::Date todayOf, const Parts* before);

    const std::vector<usage::Atom>& machineAtoms(MachineId machine);  ///< without the stated past
    const usage::UseFacts& use(MachineId machine);
    const RecordsOfMachine& records(MachineId machine);
    const std::vector<const upkeep::Record*>& records(ItemId item);
    [[nodiscard]] calendar::Moment now() const;

    std::shared_ptr<const picture::Ledger> ledger;
    calendar::Date today;
    std::shared_ptr<const Groups> groups;
    std::shared_ptr<const Placed> placed;

    Memo<MachineId, usage::UseFacts> useOfMachine;
    Memo<MachineId, RecordsOfMachine> recordsOfMachine;
    Memo<ItemId, std::vector<const upkeep::Record*>> recordsOfItem;
    Memo<MachineId, std::vector<usage::Atom>> atomsOfMachine;
    Memo<MachineId, std::vector<usage::Atom>> withPast;
    Memo<ItemId, std::vector<usage::Atom>> atomsOfItem;
    Memo<MachineId, outlook::Odds> odds;
    Memo<MachineId, std::vector<DueLine>> due;
    Memo<MachineId, outlook::Chances> chances;
    Memo<MachineId, JointsThen> joints;  ///< of this very ledger: it points into it
    std::shared_ptr<const std::vector<stock::OnHand>> shelf;

  private:
    void takeFigures(const Parts& before);
};

inline bool newestFirst(const upkeep::Record* a, const upkeep::Record* b) {
    return std::tuple(b->date, b->part, b->entered) < std::tuple(a->date, a->part, a->entered);
}

}  // namespace wm::book

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "core/book/book.h"
#include "core/book/book_parts.h"
#include "core/book/drawer_of_book.h"
#include "core/items/places.h"
#include "core/upkeep/demands.h"

// What earlier jobs ask for, and of whom: the rules are in tests/data/subject/README.md.

namespace wm::book {

using calendar::Moment;
using upkeep::Demand;
using upkeep::FollowUpRule;
using upkeep::momentOf;
using upkeep::Record;
using upkeep::Stretch;

// Gathers the demands that show on one machine: those that stay with it, and those of the items that it
// carries, wherever their jobs were done.
class DemandsOf {
  public:
    DemandsOf(const Book& book, MachineId machine)
        : book_(book), machine_(machine), whereabouts_(book.whereabouts()) {
        const auto& carried = under(book.parts_->groups->carried, machine);
        const std::vector<ItemId> items(carried.begin(), carried.end());
        for (auto& stay : items::staysOf(book.fittings(), items))
            if (stay.machine == machine)
                stays_.push_back(std::move(stay));
    }

    std::vector<Demand> gather() && {
        for (const items::Machine& card : book_.ledger().all<items::Machine>())
            for (const Record* record : book_.parts_->records(card.id).all)
                if (record->kind == upkeep::RecordKind::Done && record->date <= book_.today())
                    addRulesOf(*record);
        return std::move(demands_);
    }

  private:
    void addRulesOf(const Record& record) {
        const upkeep::TaskVersion* version =
            record.version ? book_.ledger().find<upkeep::TaskVersion>(*record.version) : nullptr;
        if (version != nullptr)
            for (const auto& rule : version->followUps)
                add(record, version->name, rule);
        for (const base::Code& code : record.steps)
            if (const weekend::StepVersion* refitted = book_.step(record.machine, code.code))
                for (const auto& rule : refitted->followUps)
                    add(record, refitted->name, rule);
    }

    void add(const Record& record, const std::string& because, const FollowUpRule& rule) {
        Demand demand{.origin = &record, .because = because, .rule = rule, .machine = machine_};
        demand.item = itemOf(record, rule);
        if (demand.item) {
            const auto place = whereabouts_.of(*demand.item, book_.parts_->now());
            if (!place || place->machine != machine_)
                return;
            demand.stands = {{momentOf(record), std::nullopt}};
            demand.atoms = book_.atoms(*demand.item);
        } else {
            if (record.machine != machine_)
                return;
            demand.stands = stretchesOf(record);
            demand.atoms = book_.atoms(machine_);
        }
        if (!rule.code.empty())
            demand.settling = settling(rule.code, demand.item);
        demands_.push_back(std::move(demand));
    }

    // Records of the task that the rule names, made on the item, or on this machine whatever sat in it.
    std::vector<const Record*> settling(const std::string& code, std::optional<ItemId> item) const {
        std::vector<const Record*> found;
        for (const items::Machine& card : book_.ledger().all<items::Machine>()) {
            if (!item && card.id != machine_)
                continue;
            for (const Record* record : under(book_.parts_->records(card.id).ofJob, code))
                if (!item || upkeep::concerns(*record, book_.placeOfJob(*record), *item, whereabouts_))
                    found.push_back(record);
        }
        return found;
    }

    // The item that a demand goes with; nothing if it stays with the machine.
    std::optional<ItemId> itemOf(const Record& record, const FollowUpRule& rule) const {
        const Moment when = momentOf(record);
        const auto* task = rule.code.empty() ? nullptr : taskNamed(record.machine, rule.code);
        if (task == nullptr)
            return record.item ? record.item : itemAt(record.machine, book_.placeOfJob(record), when);
        if (task->position.empty())
            return std::nullopt;
        if (record.item) {
            const auto place = whereabouts_.of(*record.item, when);
            if (!place || place->machine != record.machine)
                return wholeOf(*record.item, book_.placeOfJob(record), task->position, when);
        }
        return itemAt(record.machine, task->position, when);
    }

    // On a spare: the job on "engine/piston" asks for a task on "engine", which is what the piston sits in.
    std::optional<ItemId> wholeOf(ItemId item, std::string_view from, std::string_view to,
                                  Moment when) const {
        while (from.size() > to.size()) {
            const auto slash = from.rfind('/');
            const auto place = book_.fittings().placeOf(item, when);
            if (slash == std::string_view::npos || !place || !place->parent)
                break;
            from = from.substr(0, slash);
            item = *place->parent;
        }
        return item;
    }

    std::optional<ItemId> itemAt(MachineId machine, std::string_view position, Moment when) const {
        if (position.empty())
            return std::nullopt;
        if (const auto subject = upkeep::subjectAt(book_.fittings(), machine, position, when); subject.item)
            return subject.item;
        for (const ItemId item : under(book_.parts_->groups->carried, machine))
            if (const auto place = whereabouts_.of(item, when);
                place && place->machine == machine && place->path == position)
                return item;
        return std::nullopt;
    }

    const upkeep::TaskVersion* taskNamed(MachineId machine, std::string_view code) const {
        for (const auto& [id, versions] : book_.parts_->groups->taskVersions)
            if (versions.back()->machine == machine && versions.back()->code == code)
                return versions.back();
        return nullptr;
    }

    // What a job on a position asks of the machine ends when the position is emptied, and begins anew when
    // something is fitted there. A job on a spare asks nothing before that spare is fitted.
    std::vector<Stretch> stretchesOf(const Record& record) const {
        const Moment when = momentOf(record);
        const std::string_view path = book_.placeOfJob(record);
        std::vector<Stretch> all;
        bool isSpare = false;
        if (record.item) {
            const auto place = whereabouts_.of(*record.item, when);
            isSpare = !place || place->machine != machine_;
        }
        for (const items::Stay& stay : stays_) {
            if (stay.path != path || (stay.to && *stay.to <= when))
                continue;
            if (all.empty() && isSpare && stay.item != *record.item)
                continue;
            all.push_back({std::max(stay.from, when), stay.to});
        }
        // Never tracked there, or not yet.
        if (!isSpare && (all.empty() || all.front().from > when) &&
            !book_.fittings().leftFrom(machine_, path, when))
            all.insert(all.begin(), {when, all.empty() ? std::nullopt : std::optional(all.front().from)});
        return all;
    }

    const Book& book_;
    MachineId machine_;
    upkeep::Whereabouts whereabouts_;
    std::vector<items::Stay> stays_;
    std::vector<Demand> demands_;
};

std::vector<upkeep::FollowUp> Book::followUps(MachineId machine) const {
    std::vector<const upkeep::FollowUpAnswer*> answers;
    for (const auto& answer : ledger().all<upkeep::FollowUpAnswer>())
        answers.push_back(&answer);
    auto open = upkeep::openFollowUps(DemandsOf(*this, machine).gather(), answers, today());
    for (upkeep::FollowUp& recheck : upkeep::openDemands(recheckDemands(*this, machine), answers, today()))
        open.push_back(std::move(recheck));
    return open;
}

}  // namespace wm::book

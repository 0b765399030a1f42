// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <deque>
#include <set>
#include <tuple>

#include "core/base/text.h"
#include "core/book/book.h"
#include "core/book/book_parts.h"
#include "core/book/drawer_of_book.h"
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
        for (const items::Move& move : book.ledger().all<items::Move>()) {
            const Moment when{move.date, move.part};
            if (move.kind != items::MoveKind::Fitted || book.parts_->now() < when)
                continue;
            auto place = whereabouts_.of(move.item, when);
            if (place && place->machine == machine)
                refits_.push_back({when, std::move(place->path)});
        }
        std::stable_sort(refits_.begin(), refits_.end(),
                         [](const Refit& a, const Refit& b) { return a.when < b.when; });
    }

    /// The demands look at what this keeps.
    std::vector<Demand> gather() {
        std::vector<const Record*> done;
        for (const items::Machine& card : book_.ledger().all<items::Machine>())
            for (const Record* record : book_.parts_->records(card.id).all)
                if (record->kind == upkeep::RecordKind::Done && record->date <= book_.today())
                    done.push_back(record);
        std::sort(done.begin(), done.end(), newestFirst);
        for (const Record* record : done)
            addRulesOf(*record);
        return demands_;
    }

  private:
    struct Refit {
        Moment when{};
        std::string path{};
    };
    // Whose a demand is: an item's, or the machine's own. That one may be about a position.
    struct Owner {
        std::optional<ItemId> item{};
        std::string_view position{};
    };

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
        const Owner owner = ownerOf(record, rule);
        const auto key = std::tuple(because, rule.what, rule.code, owner.item);
        if (newer_.contains(key))
            return;
        Demand demand{.origin = &record, .because = because, .rule = rule, .machine = machine_};
        demand.item = owner.item;
        if (owner.item) {
            const auto place = whereabouts_.of(*owner.item, book_.parts_->now());
            if (!place || place->machine != machine_)
                return;
            demand.stands = {{momentOf(record), std::nullopt}};
            demand.atoms = atomsSince(*owner.item, record);
        } else {
            if (record.machine != machine_)
                return;
            demand.stands = stretchesOf(record, owner.position);
            demand.atoms = book_.atoms(machine_);
        }
        if (demand.stands.empty())
            return;
        newer_.insert(key);
        if (!rule.code.empty())
            demand.settling = settling(rule.code, owner.item);
        demands_.push_back(std::move(demand));
    }

    std::span<const usage::Atom> atomsSince(ItemId item, const Record& record) {
        if (!whereabouts_.untrackedSince(item, momentOf(record)))
            return book_.atoms(item);
        return untracked_.emplace_back(book_.atomsFor({.machine = machine_, .item = item}, &record));
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

    Owner ownerOf(const Record& record, const FollowUpRule& rule) const {
        const Moment when = momentOf(record);
        const std::string_view place = book_.placeOfJob(record);
        if (rule.code.empty())
            return {record.item ? record.item : itemAt(record.machine, place, when), {}};
        const auto* task = taskNamed(record.machine, rule.code);
        if (task == nullptr || task->position.empty()) {
            const bool isOnOne = record.item || itemAt(record.machine, place, when);
            return {std::nullopt, isOnOne ? place : std::string_view{}};
        }
        std::optional<ItemId> item;
        if (record.item && !place.empty())
            item = fromJobTo(*record.item, place, task->position, when);
        return {item ? item : itemAt(record.machine, task->position, when), {}};
    }

    // From what the job was on to the item at `to`: the whole that it was in, or a part of it; so also beside
    // the machine.
    std::optional<ItemId> fromJobTo(ItemId job, std::string_view from, std::string_view to,
                                    Moment when) const {
        auto way = base::split(from, '/');
        const auto goal = base::split(to, '/');
        std::optional<ItemId> item = job;
        for (; way.size() > goal.size() && item; way.pop_back())
            item = whereabouts_.wholeOf(*item, when);
        if (!std::equal(way.begin(), way.end(), goal.begin()))
            return std::nullopt;
        for (auto next = way.size(); next < goal.size() && item; ++next)
            item = partOf(*item, goal[next], when);
        return item;
    }

    std::optional<ItemId> partOf(ItemId whole, const std::string& position, Moment when) const {
        for (const auto& [place, part] : book_.fittings().on(whole, when))
            if (place == position)
                return part;
        return std::nullopt;
    }

    std::optional<ItemId> itemAt(MachineId machine, std::string_view position, Moment when) const {
        if (position.empty())
            return std::nullopt;
        if (const auto subject = upkeep::subjectAt(book_.fittings(), machine, position, when); subject.item)
            return subject.item;
        for (const items::Item& item : book_.ledger().all<items::Item>())
            if (const auto place = whereabouts_.of(item.id, when);
                place && place->machine == machine && place->path == position)
                return item.id;
        return std::nullopt;
    }

    const upkeep::TaskVersion* taskNamed(MachineId machine, std::string_view code) const {
        for (const auto& [id, versions] : book_.parts_->groups->taskVersions)
            if (versions.back()->machine == machine && versions.back()->code == code)
                return versions.back();
        return nullptr;
    }

    // What a job on a position asks of the machine ends when the position is emptied, and begins anew when
    // something is fitted on the way there. A job on a spare asks nothing before that spare is fitted.
    std::vector<Stretch> stretchesOf(const Record& record, std::string_view position) const {
        const Moment when = momentOf(record);
        if (position.empty())
            return {{when, std::nullopt}};
        std::vector<Stretch> all;
        if (!isOnASpare(record))
            all.push_back({when, std::nullopt});
        for (const Refit& refit : refits_) {
            if (refit.when <= when || !upkeep::isAtOrIn(position, refit.path))
                continue;
            if (all.empty() && !sitsAt(*record.item, position, refit.when))
                continue;
            if (!all.empty())
                all.back().to = refit.when;
            all.push_back({refit.when, std::nullopt});
        }
        if (!all.empty() && book_.fittings().leftFrom(machine_, position, book_.parts_->now()))
            all.back().to = book_.parts_->now();
        return all;
    }

    bool isOnASpare(const Record& record) const {
        if (!record.item)
            return false;
        const auto place = whereabouts_.of(*record.item, momentOf(record));
        return !place || place->machine != record.machine;
    }

    bool sitsAt(ItemId item, std::string_view position, Moment when) const {
        const auto place = whereabouts_.of(item, when);
        return place && place->machine == machine_ && place->path == position;
    }

    const Book& book_;
    MachineId machine_;
    upkeep::Whereabouts whereabouts_;
    std::vector<Refit> refits_;  ///< of this machine, in order of time
    // A newer demand of the same job on the same subject takes the older one's place.
    std::set<std::tuple<std::string, std::string, std::string, std::optional<ItemId>>> newer_;
    std::deque<std::vector<usage::Atom>> untracked_;
    std::vector<Demand> demands_;
};

std::vector<upkeep::FollowUp> Book::followUps(MachineId machine) const {
    std::vector<const upkeep::FollowUpAnswer*> answers;
    for (const auto& answer : ledger().all<upkeep::FollowUpAnswer>())
        answers.push_back(&answer);
    DemandsOf demands(*this, machine);
    auto open = upkeep::openFollowUps(demands.gather(), answers, today());
    for (upkeep::FollowUp& recheck : upkeep::openDemands(recheckDemands(*this, machine), answers, today()))
        open.push_back(std::move(recheck));
    return open;
}

}  // namespace wm::book

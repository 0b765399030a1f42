// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/book/joint_owners.h"

#include <algorithm>

#include "core/book/joints_then.h"
#include "core/items/positions.h"
#include "core/upkeep/subject.h"

namespace wm::book {

using calendar::DayPart;
using calendar::Moment;
using fastening::JointVersion;
using items::Fittings;

namespace {

Moment eveningOf(const Book& book) {
    return {book.today(), DayPart::AfterRiding};
}

// The part of an item down the way to a position; the item itself where nobody tracks that.
ItemId partIn(const Fittings& fittings, ItemId item, const std::string& wanted, const std::string& at,
              Moment when) {
    if (wanted == at)
        return item;
    for (const auto& [place, part] : fittings.on(item, when))
        if (const std::string path = at + '/' + items::codedPath(place); upkeep::isAtOrIn(wanted, path))
            return partIn(fittings, part, wanted, path, when);
    return item;
}

bool isOpenedFor(const Book& book, const JointVersion& joint, const std::string& empty, calendar::Date on) {
    const auto steps = stepsOn(book.ledger(), joint.machine, on);
    return std::any_of(steps.begin(), steps.end(), [&](const weekend::StepVersion* step) {
        const auto frees = [&](const base::Code& freed) {
            return upkeep::isAtOrIn(items::codedPath(freed.code), empty);
        };
        const auto opens = [&](const base::Code& opened) { return opened.code == joint.code; };
        return std::any_of(step->frees.begin(), step->frees.end(), frees) &&
               std::any_of(step->joints.begin(), step->joints.end(), opens);
    });
}

std::optional<std::string> outOn(const Book& book, const Fittings& fittings, const JointVersion& joint,
                                 Moment when) {
    for (const auto& left : fittings.emptied(joint.machine, when)) {
        const std::string empty = items::codedPath(left.position);
        if ((joint.position && upkeep::isAtOrIn(items::codedPath(*joint.position), empty)) ||
            isOpenedFor(book, joint, empty, when.date))
            return left.position;
    }
    return std::nullopt;
}

}  // namespace

JointOwners::JointOwners(const Book& book) : book_(book) {
    for (const items::Move& move : book.ledger().all<items::Move>())
        movedAt_[{move.date, move.part}] = std::max(movedAt_[{move.date, move.part}], move.entered);
}

std::optional<JointOwner> JointOwners::now(const JointVersion& joint) const {
    return ownerAt(book_.fittings(), joint, eveningOf(book_));
}

std::optional<JointOwner> JointOwners::then(const JointVersion& joint, Moment when, base::Entered entered,
                                            const upkeep::Record* record) const {
    if (record != nullptr && joint.position && !joint.position->empty())
        if (const auto item = itemOfJob(*record, *joint.position, when))
            return JointOwner{.item = item, .code = joint.code};
    return ownerAt(fittingsBefore(when, entered), joint, when);
}

std::optional<std::string> JointOwners::outThen(const JointVersion& joint, Moment when,
                                                base::Entered entered) const {
    return outOn(book_, fittingsBefore(when, entered), joint, when);
}

bool JointOwners::liesBeside(const JointVersion& joint, Moment when, base::Entered entered) const {
    return joint.position && !joint.position->empty() &&
           fittingsBefore(when, entered).lyingFrom(joint.machine, *joint.position, when).has_value();
}

// As the moves of that moment stood when the joint was touched.
const Fittings& JointOwners::fittingsBefore(Moment when, base::Entered entered) const {
    const auto last = movedAt_.find(when);
    if (last == movedAt_.end() || last->second <= entered)
        return book_.fittings();
    auto& known = before_[{when, entered}];
    if (known == nullptr) {
        std::vector<items::Move> moves;
        for (const items::Move& move : book_.ledger().all<items::Move>())
            if (Moment{move.date, move.part} != when || move.entered <= entered)
                moves.push_back(move);
        known = std::make_unique<Fittings>(moves);
    }
    return *known;
}

// Of what sits there; where nothing does, of what came out of there and lies beside the machine (the engine
// on the bench); where nobody had tracked anything, of the first item that is told of that place, else the
// machine's.
std::optional<JointOwner> JointOwners::ownerAt(const Fittings& fittings, const JointVersion& joint,
                                               Moment when) const {
    const JointOwner machines{.machine = joint.machine, .code = joint.code};
    if (!joint.position || joint.position->empty())
        return machines;
    const auto ofItem = [&](ItemId item) { return JointOwner{.item = item, .code = joint.code}; };
    const std::string wanted = items::codedPath(*joint.position);
    for (const auto& left : fittings.emptied(joint.machine, when)) {
        const std::string empty = items::codedPath(left.position);
        if (!upkeep::isAtOrIn(wanted, empty))
            continue;
        const auto place = fittings.placeOf(left.item, when);
        if (!place || (place->kind != items::MoveKind::Removed && place->kind != items::MoveKind::Away))
            return std::nullopt;
        return ofItem(partIn(fittings, left.item, wanted, empty, when));
    }
    if (const auto item = itemAt(fittings, joint.machine, wanted, when))
        return ofItem(*item);
    const auto first = firstToldOf(joint.machine, wanted, when);
    return first ? ofItem(*first) : machines;
}

// The item deepest down the way to the position: what nobody tracks in an engine goes with the engine.
std::optional<ItemId> JointOwners::itemAt(const Fittings& fittings, MachineId machine,
                                          const std::string& wanted, Moment when) const {
    const upkeep::Whereabouts whereabouts(
        fittings, [this](ItemId item) { return book_.ledger().find<items::Item>(item); });
    std::optional<ItemId> found;
    std::size_t depth = 0;
    for (const items::Item& item : book_.ledger().all<items::Item>()) {
        const auto place = whereabouts.of(item.id, when);
        if (!place || place->machine != machine)
            continue;
        const std::string path = items::codedPath(place->path);
        if (upkeep::isAtOrIn(wanted, path) && path.size() > depth) {
            found = item.id;
            depth = path.size();
        }
    }
    return found;
}

std::optional<ItemId> JointOwners::firstToldOf(MachineId machine, const std::string& wanted,
                                               Moment after) const {
    std::optional<ItemId> first;
    std::optional<Moment> since;
    for (const items::Item& item : book_.ledger().all<items::Item>()) {
        const auto spells = book_.fittings().machineSpells(item.id);
        if (spells.empty() || spells.front().machine != machine || spells.front().from < after ||
            !upkeep::isAtOrIn(wanted, items::codedPath(spells.front().path)) ||
            book_.fittings().spells(item.id).front().from != spells.front().from)
            continue;
        if (!since || spells.front().from < *since) {
            first = item.id;
            since = spells.front().from;
        }
    }
    return first;
}

// From what the job was on to the item at `position`: the whole that it was in; so also on the shelf.
std::optional<ItemId> JointOwners::itemOfJob(const upkeep::Record& record, const std::string& position,
                                             Moment when) const {
    const std::string wanted = items::codedPath(position);
    std::string place = items::codedPath(book_.placeOfJob(record));
    const auto whereabouts = book_.whereabouts();
    std::optional<ItemId> item = record.item;
    while (item && place != wanted) {
        const auto slash = place.rfind('/');
        if (slash == std::string::npos)
            return std::nullopt;
        item = whereabouts.wholeOf(*item, when);
        place.resize(slash);
    }
    return item;
}

std::optional<std::string> outWith(const Book& book, const JointVersion& joint, Moment when) {
    return outOn(book, book.fittings(), joint, when);
}

std::optional<std::string> outAtJob(const Book& book, const JointVersion& joint,
                                    const upkeep::Record& record) {
    const Moment when = upkeep::momentOf(record);
    const auto owner = JointOwners(book).then(joint, when, book.ledger().nextEntered(), &record);
    if (record.item && owner && owner->item)
        return std::nullopt;
    return outWith(book, joint, when);
}

std::vector<const JointVersion*> jointsToTorque(const Book& book, const upkeep::TaskVersion& task,
                                                const std::vector<std::string>& steps, Moment when) {
    upkeep::Record job{.machine = task.machine, .task = task.task, .date = when.date, .part = when.part};
    job.item = book.fittings().lyingFrom(task.machine, task.position, when);
    std::vector<const JointVersion*> joints = book.jointsOpened(task, steps);
    std::erase_if(joints, [&](const JointVersion* joint) { return outAtJob(book, *joint, job).has_value(); });
    return joints;
}

std::optional<std::string> waitsFor(const Book& book, const upkeep::TaskVersion& task) {
    for (const base::Code& code : task.joints) {
        const auto* joint = book.joint(task.machine, code.code);
        if (joint == nullptr)
            continue;
        if (auto position = outWith(book, *joint, eveningOf(book)))
            return position;
    }
    return std::nullopt;
}

}  // namespace wm::book

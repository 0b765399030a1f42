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

}  // namespace

JointOwners::JointOwners(const Book& book) : book_(book) {
    for (const items::Move& move : book.ledger().all<items::Move>())
        movedAt_.insert({move.date, move.part});
}

JointOwner JointOwners::now(const JointVersion& joint) const {
    JointOwner owner{.code = joint.code};
    if (joint.position && !joint.position->empty())
        owner.item = itemAt(book_.fittings(), joint.machine, *joint.position, eveningOf(book_));
    if (!owner.item)
        owner.machine = joint.machine;
    return owner;
}

JointOwner JointOwners::then(const JointVersion& joint, Moment when, base::Entered entered,
                             const upkeep::Record* record) const {
    JointOwner owner{.code = joint.code};
    if (joint.position && !joint.position->empty()) {
        if (record != nullptr)
            owner.item = itemOfJob(*record, *joint.position, when);
        if (!owner.item)
            owner.item = itemAt(fittingsBefore(when, entered), joint.machine, *joint.position, when);
    }
    if (!owner.item)
        owner.machine = joint.machine;
    return owner;
}

// As the moves of that moment stood when the joint was touched.
const Fittings& JointOwners::fittingsBefore(Moment when, base::Entered entered) const {
    if (!movedAt_.contains(when))
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

// The item deepest down the way to the position: what nobody tracks in an engine goes with the engine.
std::optional<ItemId> JointOwners::itemAt(const Fittings& fittings, MachineId machine,
                                          const std::string& position, Moment when) const {
    const upkeep::Whereabouts whereabouts(
        fittings, [this](ItemId item) { return book_.ledger().find<items::Item>(item); });
    const std::string wanted = items::codedPath(position);
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
    for (const auto& left : book.fittings().emptied(joint.machine, when)) {
        const std::string empty = items::codedPath(left.position);
        if (joint.position && upkeep::isAtOrIn(items::codedPath(*joint.position), empty))
            return left.position;
        for (const auto* step : stepsFreeing(book.ledger(), joint.machine, left.position, when.date))
            if (std::any_of(step->joints.begin(), step->joints.end(),
                            [&](const base::Code& opened) { return opened.code == joint.code; }))
                return left.position;
    }
    return std::nullopt;
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

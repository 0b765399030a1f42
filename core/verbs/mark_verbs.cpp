// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/verbs/fastening_verbs.h"

#include <algorithm>

#include "core/book/joint_owners.h"
#include "core/book/joints_then.h"
#include "core/picture/facts.h"
#include "core/verbs/names.h"

// What was found or done at the joints.

namespace wm::verbs {

using fastening::MarkKind;

namespace {

base::Phrase markText(const std::vector<fastening::JointMark>& marks) {
    const MarkKind kind = marks.front().kind;
    const bool same =
        std::all_of(marks.begin(), marks.end(), [kind](const auto& mark) { return mark.kind == kind; });
    if (!same)
        return phrase("Undo", "marked %1 on %2");
    switch (kind) {
        case MarkKind::Loosened:
            return phrase("Undo", "loosened %1 on %2");
        case MarkKind::Confirmed:
            return phrase("Undo", "torqued %1 on %2");
        case MarkKind::FoundFine:
            return phrase("Undo", "found %1 fine on %2");
        case MarkKind::MarkBroken:
            return phrase("Undo", "found the mark of %1 broken on %2");
        case MarkKind::RiddenOpen:
            return phrase("Undo", "rode with %1 open on %2");
        case MarkKind::FoundMoved:
            break;
    }
    return phrase("Undo", "found %1 moved on %2");
}

base::Phrase marksText(const Book& book, const std::vector<fastening::JointMark>& marks) {
    const auto* first = book.joint(marks.front().joint);
    const auto what = marks.size() == 1 ? base::Phrase{{}, first->name}
                                        : phrase("Undo", "%n joint(s)", nullptr, marks.size());
    return markText(marks).arg(what).arg(machineName(book.ledger(), first->machine));
}

// A joint that is loose on a machine whose schedule does not know it stands there under the one of the
// machine from which it came: what is said of it is about the item that brought it, unless its own machine's
// is loose as well.
std::optional<ItemId> cameInside(const Book& book, const fastening::JointVersion& joint) {
    const auto isLooseOn = [&](MachineId machine) {
        const auto& joints = book.jointsThen(machine).joints;
        const auto known = joints.find(joint.joint);
        return known != joints.end() && known->second.isLoose;
    };
    if (!joint.position || joint.position->empty() || isLooseOn(joint.machine))
        return std::nullopt;
    for (const items::Machine& machine : book.ledger().all<items::Machine>())
        if (machine.id != joint.machine && isLooseOn(machine.id))
            return book.jointsThen(machine.id).inside.at(joint.joint);
    return std::nullopt;
}

// A joint inside what came off the machine and lies beside it is that item's.
std::optional<ItemId> onTheBench(const Book& book, const fastening::JointVersion& joint, calendar::Date on) {
    if (!joint.position || joint.position->empty())
        return std::nullopt;
    return book.fittings().lyingFrom(joint.machine, *joint.position, {on, calendar::DayPart::AfterRiding});
}

}  // namespace

Result<Change> markJoints(const VerbContext& context, std::vector<fastening::JointMark> marks) {
    BookChecks check(context.book);
    check.that(!marks.empty(), Fault::NothingToDo, "marks");
    for (std::size_t at = 0; at < marks.size(); ++at) {
        fastening::JointMark& mark = marks[at];
        check.setPrefix(placeIn("marks", at, {}));
        const auto* joint = context.book.joint(mark.joint);
        check.that(joint != nullptr, Fault::Unknown, "joint", std::to_string(mark.joint.value()));
        if (joint != nullptr)
            check.machineOn(joint->machine, mark.date);
        check.row<items::Person>("by_person", mark.by);
        check.row<upkeep::Record>("record", mark.record);
        check.row<fastening::Tool>("tool", mark.tool);
        check.row<usage::Outing>("outing", mark.outing);
        check.row<items::Item>("item", mark.item);
        if (joint != nullptr && !mark.item)
            mark.item = cameInside(context.book, *joint);
        if (joint != nullptr && !mark.item && !mark.record)
            mark.item = onTheBench(context.book, *joint, mark.date);
        checkShape(check, mark);
        if (joint != nullptr && mark.kind == MarkKind::Confirmed && !mark.record && !mark.item) {
            const auto out = book::outWith(context.book, *joint, {mark.date, calendar::DayPart::AfterRiding});
            check.that(!out, Fault::IsOut, "joint", joint->name, out.value_or(""));
        }
        if (joint != nullptr && mark.movedCount)
            check.that(*mark.movedCount <= joint->count, Fault::TooLarge, "moved_count",
                       std::to_string(*mark.movedCount), std::to_string(joint->count));
    }
    if (check.failed())
        return check.refusal();
    const auto text = marksText(context.book, marks);
    Entry entry(context.book.ledger(), context.newId);
    for (fastening::JointMark& mark : marks)
        entry.add(std::move(mark));
    return std::move(entry).change(text);
}

}  // namespace wm::verbs

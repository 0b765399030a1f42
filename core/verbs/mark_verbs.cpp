// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/verbs/fastening_verbs.h"

#include <fmt/format.h>

#include <algorithm>

#include "core/book/book_checks.h"
#include "core/picture/entry.h"
#include "core/picture/facts.h"
#include "core/picture/shape.h"

// What was found or done at the joints.

namespace wm::verbs {

using base::Fault;
using base::Result;
using book::Book;
using book::BookChecks;
using fastening::MarkKind;
using picture::Change;
using picture::Entry;
using picture::placeIn;

namespace {

std::string phrase(const std::vector<fastening::JointMark>& marks, std::string_view what) {
    const MarkKind kind = marks.front().kind;
    const bool same =
        std::all_of(marks.begin(), marks.end(), [kind](const auto& mark) { return mark.kind == kind; });
    if (!same)
        return fmt::format("marked {}", what);
    switch (kind) {
        case MarkKind::Loosened:
            return fmt::format("loosened {}", what);
        case MarkKind::Confirmed:
            return fmt::format("torqued {}", what);
        case MarkKind::FoundFine:
            return fmt::format("found {} fine", what);
        case MarkKind::MarkBroken:
            return fmt::format("found the mark of {} broken", what);
        case MarkKind::RiddenOpen:
            return fmt::format("rode with {} open", what);
        case MarkKind::FoundMoved:
            break;
    }
    return fmt::format("found {} moved", what);
}

std::string marksText(const Book& book, const std::vector<fastening::JointMark>& marks) {
    const auto* first = book.joint(marks.front().joint);
    const std::string what = marks.size() == 1 ? first->name : fmt::format("{} joints", marks.size());
    return fmt::format("{} on {}", phrase(marks, what), machineName(book.ledger(), first->machine));
}

}  // namespace

Result<Change> markJoints(const Pen& pen, std::vector<fastening::JointMark> marks) {
    BookChecks check(pen.book);
    check.that(!marks.empty(), Fault::NothingToDo, "marks");
    for (std::size_t at = 0; at < marks.size(); ++at) {
        fastening::JointMark& mark = marks[at];
        check.setPrefix(placeIn("marks", at, {}));
        const auto* joint = pen.book.joint(mark.joint);
        check.that(joint != nullptr, Fault::Unknown, "joint", std::to_string(mark.joint.value()));
        if (joint != nullptr)
            check.machineOn(joint->machine, mark.date);
        check.row<items::Person>("by_person", mark.by);
        check.row<upkeep::Record>("record", mark.record);
        check.row<fastening::Tool>("tool", mark.tool);
        check.row<usage::Outing>("outing", mark.outing);
        checkShape(check, mark);
        if (joint != nullptr && mark.movedCount)
            check.that(*mark.movedCount <= joint->count, Fault::TooLarge, "moved_count",
                       std::to_string(*mark.movedCount), std::to_string(joint->count));
    }
    if (check.failed())
        return check.refusal();
    std::string text = marksText(pen.book, marks);
    Entry entry(pen.book.ledger(), pen.newId);
    for (fastening::JointMark& mark : marks)
        entry.add(std::move(mark));
    return std::move(entry).change(std::move(text));
}

}  // namespace wm::verbs

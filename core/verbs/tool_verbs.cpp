// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/verbs/fastening_verbs.h"

#include "core/verbs/names.h"

// The torque tools of the drawer and how they were found when they were checked.

namespace wm::verbs {

Result<Change> saveTool(const VerbContext& context, fastening::Tool tool) {
    const bool isNew = tool.id.isNothing();
    BookChecks check(context.book);
    checkShape(check, tool);
    if (!isNew) {
        const auto* old = check.row<fastening::Tool>("id", tool.id);
        if (!check.failed())
            check.that(!(*old == tool), Fault::NothingToDo, "id");
    }
    for (const auto& other : context.book.ledger().all<fastening::Tool>())
        check.that(!sameName(other.name, tool.name) || other.id == tool.id, Fault::Duplicate, "name",
                   tool.name);
    if (check.failed())
        return check.refusal();
    Entry entry(context.book.ledger(), context.newId);
    const auto text =
        (isNew ? phrase("Undo", "added %1 in the drawer") : phrase("Undo", "changed %1 in the drawer"))
            .arg(tool.name);
    entry.put(std::move(tool));
    return std::move(entry).change(text);
}

Result<Change> recordCalibration(const VerbContext& context, fastening::Calibration calibration) {
    BookChecks check(context.book);
    const auto* tool = check.row<fastening::Tool>("tool", calibration.tool);
    checkShape(check, calibration);
    check.fact(calibration.date);
    for (const auto& other : context.book.ledger().all<fastening::Calibration>())
        check.that(other.tool != calibration.tool || other.date != calibration.date, Fault::Duplicate, "date",
                   calibration.date.iso(), tool == nullptr ? std::string{} : tool->name);
    if (check.failed())
        return check.refusal();
    Entry entry(context.book.ledger(), context.newId);
    const auto text = (calibration.foundWithin ? phrase("Undo", "found %1 within tolerance")
                                               : phrase("Undo", "found %1 out of tolerance"))
                          .arg(tool->name);
    entry.add(std::move(calibration));
    return std::move(entry).change(text);
}

}  // namespace wm::verbs

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/verbs/fastening_verbs.h"

#include <algorithm>

#include "core/book/book_checks.h"
#include "core/definitions/definitions.h"
#include "core/definitions/sharing.h"
#include "core/fastening/stages.h"
#include "core/picture/entry.h"

// New wordings of joints, one or a whole chart, and for the other machines of a model.

namespace wm::verbs {

using base::Fault;
using base::phrase;
using base::Result;
using book::Book;
using book::BookChecks;
using definitions::Definitions;
using definitions::forOthers;
using fastening::JointVersion;
using picture::Change;
using picture::Checks;
using picture::Entry;
using picture::placeIn;

namespace {

// Words for a model need a machine that says which model and year it is.
void checkShared(Checks& check, const items::Machine& machine, const JointVersion& wording) {
    if (!wording.sharedFrom || !wording.sharedTo)
        return;
    check.that(!machine.model.empty(), Fault::Empty, "model", machine.name);
    check.that(machine.year.has_value(), Fault::Empty, "year", machine.name);
    if (machine.year)
        check.that(*machine.year >= *wording.sharedFrom && *machine.year <= *wording.sharedTo,
                   Fault::OutOfOrder, "shared_from", std::to_string(*wording.sharedFrom),
                   std::to_string(*machine.year));
}

// New stages must be such as can be read; what stands there from before stays as it was typed.
void checkStages(Checks& check, const Book& book, const JointVersion& wording) {
    const auto* known = book.joint(wording.joint);
    if (known != nullptr && known->stages == wording.stages)
        return;
    if (const auto stages = fastening::parseStages(wording.stages); !stages)
        check.that(false, stages.error().fault, stages.error().field, stages.error().given,
                   stages.error().wanted);
}

Result<Change> save(const VerbContext& context, MachineId machine, std::vector<JointVersion> wordings,
                    bool single) {
    BookChecks check(context.book);
    Entry entry(context.book.ledger(), context.newId);
    check.that(!wordings.empty(), Fault::NothingToDo, "joints");
    const auto* card = check.row<items::Machine>("machine", machine);
    if (check.failed())
        return check.refusal();
    const auto nameOf = [&](std::size_t at) { return single ? base::Place{} : placeIn("joints", at, {}); };
    Definitions own(check, context.book, entry, machine);
    for (std::size_t at = 0; at < wordings.size(); ++at) {
        wordings[at].machine = machine;
        check.setPrefix(nameOf(at));
        checkShared(check, *card, wordings[at]);
        checkStages(check, context.book, wordings[at]);
        own.add(wordings[at], context.book.today(), nameOf(at));
    }
    own.write();
    std::size_t others = 0;
    for (auto& [other, same] : forOthers(context.book, wordings)) {
        if (check.failed())
            break;
        Definitions definitions(check, context.book, entry, other);
        for (JointVersion& wording : same)
            definitions.add(std::move(wording), context.book.today(), {});
        definitions.write();
        ++others;
    }
    if (check.failed())
        return check.refusal();
    auto text = single
                    ? own.jointText()
                    : phrase("Undo", "entered %n joint(s) on %1", nullptr, wordings.size()).arg(card->name);
    if (others > 0)
        text = phrase("Undo", "%1 and %2 more of its model").arg(std::move(text)).arg(std::to_string(others));
    return std::move(entry).change(text);
}

}  // namespace

Result<Change> saveJoint(const VerbContext& context, JointVersion wording) {
    const MachineId machine = wording.machine;
    return save(context, machine, {std::move(wording)}, true);
}

Result<Change> saveJoints(const VerbContext& context, MachineId machine, std::vector<JointVersion> wordings) {
    return save(context, machine, std::move(wordings), false);
}

}  // namespace wm::verbs

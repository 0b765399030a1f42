// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/verbs/fastening_verbs.h"

#include <algorithm>

#include "core/definitions/definitions.h"
#include "core/definitions/sharing.h"
#include "core/fastening/stages.h"
#include "core/verbs/names.h"

// New versions of joints, one or a whole chart, and for the other machines of a model.

namespace wm::verbs {

using definitions::Definitions;
using definitions::forOthers;
using fastening::JointVersion;

namespace {

// Words for a model need a machine that says which model and year it is.
void checkShared(Checks& check, const items::Machine& machine, const JointVersion& version) {
    if (!version.sharedFrom || !version.sharedTo)
        return;
    check.that(!machine.model.empty(), Fault::Empty, "model", machine.name);
    check.that(machine.year.has_value(), Fault::Empty, "year", machine.name);
    if (machine.year)
        check.that(*machine.year >= *version.sharedFrom && *machine.year <= *version.sharedTo,
                   Fault::OutOfOrder, "shared_from", std::to_string(*version.sharedFrom),
                   std::to_string(*machine.year));
}

// New stages must be such as can be read; what stands there from before stays as it was typed.
void checkStages(Checks& check, const Book& book, const JointVersion& version) {
    const auto* known = book.joint(version.joint);
    if (known != nullptr && known->stages == version.stages)
        return;
    if (const auto stages = fastening::parseStages(version.stages); !stages)
        check.that(false, stages.error().fault, stages.error().field, stages.error().given,
                   stages.error().wanted);
}

Result<Change> save(const VerbContext& context, MachineId machine, std::vector<JointVersion> versions,
                    bool single) {
    BookChecks check(context.book);
    Entry entry(context.book.ledger(), context.newId);
    check.that(!versions.empty(), Fault::NothingToDo, "joints");
    const auto* card = check.row<items::Machine>("machine", machine);
    if (check.failed())
        return check.refusal();
    const auto nameOf = [&](std::size_t at) { return single ? base::Place{} : placeIn("joints", at, {}); };
    Definitions own(check, context.book, entry, machine);
    for (std::size_t at = 0; at < versions.size(); ++at) {
        versions[at].machine = machine;
        check.setPrefix(nameOf(at));
        checkShared(check, *card, versions[at]);
        checkStages(check, context.book, versions[at]);
        own.add(versions[at], context.book.today(), nameOf(at));
    }
    own.write();
    std::size_t others = 0;
    for (auto& [other, same] : forOthers(context.book, versions)) {
        if (check.failed())
            break;
        Definitions definitions(check, context.book, entry, other);
        for (JointVersion& version : same)
            definitions.add(std::move(version), context.book.today(), {});
        definitions.write();
        ++others;
    }
    if (check.failed())
        return check.refusal();
    auto text = single
                    ? own.jointText()
                    : phrase("Undo", "entered %n joint(s) on %1", nullptr, versions.size()).arg(card->name);
    if (others > 0)
        text = phrase("Undo", "%1 and %2 more of its model").arg(std::move(text)).arg(std::to_string(others));
    return std::move(entry).change(text);
}

}  // namespace

Result<Change> saveJoint(const VerbContext& context, JointVersion version) {
    const MachineId machine = version.machine;
    return save(context, machine, {std::move(version)}, true);
}

Result<Change> saveJoints(const VerbContext& context, MachineId machine, std::vector<JointVersion> versions) {
    return save(context, machine, std::move(versions), false);
}

}  // namespace wm::verbs

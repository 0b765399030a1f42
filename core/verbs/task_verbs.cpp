// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/verbs/task_verbs.h"

#include <algorithm>

#include "core/base/text.h"
#include "core/definitions/definitions.h"
#include "core/verbs/names.h"

// What is to be done and how it is reached: new versions of tasks and access steps, and whole schedules.

namespace wm::verbs {

using definitions::Definitions;

namespace {

template <class V>
Result<Change> saveVersion(const VerbContext& context, V version, base::Phrase (Definitions::*text)() const) {
    BookChecks check(context.book);
    Entry entry(context.book.ledger(), context.newId);
    Definitions definitions(check, context.book, entry, version.machine);
    definitions.add(std::move(version), context.book.today(), {});
    definitions.write();
    if (check.failed())
        return check.refusal();
    return std::move(entry).change((definitions.*text)());
}

template <class V>
void addAll(Definitions& definitions, std::vector<V> versions, calendar::Date from, std::string_view list) {
    for (std::size_t at = 0; at < versions.size(); ++at)
        definitions.add(std::move(versions[at]), from, placeIn(list, at, {}), Definitions::Words::OfStarter);
}

}  // namespace

Result<Change> saveTask(const VerbContext& context, upkeep::TaskVersion version) {
    return saveVersion(context, std::move(version), &Definitions::taskText);
}

Result<Change> saveStep(const VerbContext& context, weekend::StepVersion version) {
    return saveVersion(context, std::move(version), &Definitions::stepText);
}

Result<Change> adoptSchedule(const VerbContext& context, MachineId machine, std::string text,
                             std::vector<weekend::StepVersion> steps,
                             std::vector<fastening::JointVersion> joints,
                             std::vector<upkeep::TaskVersion> tasks) {
    BookChecks check(context.book);
    Entry entry(context.book.ledger(), context.newId);
    check.name("text", text);
    Definitions definitions(check, context.book, entry, machine);
    const auto* card = check.row<items::Machine>("machine", machine);
    check.that(!(steps.empty() && joints.empty() && tasks.empty()), Fault::NothingToDo, "tasks");
    if (check.failed())
        return check.refusal();
    addAll(definitions, std::move(steps), card->since, "steps");
    addAll(definitions, std::move(joints), card->since, "joints");
    addAll(definitions, std::move(tasks), card->since, "tasks");
    definitions.write();
    if (check.failed())
        return check.refusal();
    return std::move(entry).change(std::move(text));
}

Result<Change> renewSchedule(const VerbContext& context, MachineId machine,
                             const definitions::Schedule& starter, definitions::RenewalGroup group) {
    using definitions::RenewalGroup;
    BookChecks check(context.book);
    Entry entry(context.book.ledger(), context.newId);
    Definitions definitions(check, context.book, entry, machine);
    const auto* card = check.row<items::Machine>("machine", machine);
    if (check.failed())
        return check.refusal();
    const auto all = definitions::differences(context.book, machine, starter);
    check.that(std::any_of(all.begin(), all.end(), [&](const auto& each) { return each.group == group; }),
               Fault::NothingToDo, "group");
    if (!check.failed())
        definitions::take(definitions, context.book, machine, starter, group);
    definitions.write();
    if (check.failed())
        return check.refusal();
    auto text = group == RenewalGroup::Order      ? phrase("Undo", "took over the order of work on %1")
                : group == RenewalGroup::NewTasks ? phrase("Undo", "took over new tasks on %1")
                : group == RenewalGroup::Intervals
                    ? phrase("Undo", "took over intervals of the schedule on %1")
                    : phrase("Undo", "took over words of the schedule on %1");
    return std::move(entry).change(std::move(text).arg(card->name));
}

}  // namespace wm::verbs

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/verbs/ahead_verbs.h"

#include <algorithm>

#include "core/verbs/names.h"

// Events, work windows, what was picked for the weekend, and the sheets.

namespace wm::verbs {

namespace {

template <class Plan>
void checkReplaced(BookChecks& check, const Plan& plan) {
    if (plan.id.isNothing())
        return;
    const Plan* old = check.row<Plan>("id", plan.id);
    if (!check.failed())
        check.that(!(*old == plan), Fault::NothingToDo, "id");
}

void checkEntries(BookChecks& check, const outlook::Event& event) {
    for (std::size_t at = 0; at < event.entries.size(); ++at) {
        const auto* machine =
            check.row<items::Machine>(placeIn("entries", at, "machine"), event.entries[at].machine);
        if (machine != nullptr && machine->goneOn)
            check.that(event.first <= *machine->goneOn, Fault::Retired, placeIn("entries", at, "machine"),
                       machine->name, machine->goneOn->iso());
        check.row<items::Person>(placeIn("entries", at, "rider"), event.entries[at].rider);
    }
}

base::Phrase windowText(const weekend::WorkWindow& window, bool isNew) {
    auto text = isNew           ? phrase("Undo", "added the bench time on %1 from %2 to %3")
                : window.active ? phrase("Undo", "changed the bench time on %1 from %2 to %3")
                                : phrase("Undo", "dropped the bench time on %1 from %2 to %3");
    return std::move(text)
        .arg(window.date.iso())
        .arg(units::timeOfDayText(window.startsAt))
        .arg(units::timeOfDayText(window.endsAt));
}

// The name of the job, if it is one of this machine.
std::string jobName(BookChecks& check, const Book& book, const base::Place& field, MachineId machine,
                    const std::optional<TaskId>& task, const std::optional<SnagId>& snag, bool open) {
    if (task)
        if (const auto* version = check.taskOf(field, machine, *task, book.today()))
            return version->name;
    if (snag)
        if (const auto* found = check.snagOf(field, machine, *snag, open))
            return shortened(found->what);
    return {};
}

}  // namespace

std::int64_t nextSheetNumber(const Ledger& ledger) {
    std::int64_t last = 0;
    for (const auto& sheet : ledger.all<weekend::IssuedSheet>())
        last = std::max(last, sheet.number);
    for (const auto& sheet : ledger.struck<weekend::IssuedSheet>())
        last = std::max(last, sheet.number);
    return last + 1;
}

Result<Change> saveEvent(const VerbContext& context, outlook::Event event) {
    const bool isNew = event.id.isNothing();
    BookChecks check(context.book);
    checkShape(check, event);
    checkReplaced(check, event);
    checkEntries(check, event);
    for (const auto& other : context.book.ledger().all<outlook::Event>())
        check.that(other.id == event.id || other.calledOff || other.first != event.first ||
                       !sameName(other.name, event.name),
                   Fault::Duplicate, "name", event.name);
    if (check.failed())
        return check.refusal();
    Entry entry(context.book.ledger(), context.newId);
    auto text = isNew             ? phrase("Undo", "added %1 on %2")
                : event.calledOff ? phrase("Undo", "called off %1 on %2")
                                  : phrase("Undo", "changed %1 on %2");
    text = std::move(text).arg(event.name).arg(event.first.iso());
    entry.put(std::move(event));
    return std::move(entry).change(text);
}

Result<Change> saveWindow(const VerbContext& context, weekend::WorkWindow window) {
    const bool isNew = window.id.isNothing();
    BookChecks check(context.book);
    checkShape(check, window);
    checkReplaced(check, window);
    if (check.failed())
        return check.refusal();
    Entry entry(context.book.ledger(), context.newId);
    entry.put(window);
    return std::move(entry).change(windowText(window, isNew));
}

Result<Change> setCooling(const VerbContext& context, units::Minutes cool) {
    BookChecks check(context.book);
    picture::Garage garage = context.book.ledger().garage();
    check.that(garage.cool != cool, Fault::NothingToDo, "cool_minutes", units::timeOfDayText(cool));
    garage.cool = cool;
    if (!check.failed())
        checkShape(check, garage);
    if (check.failed())
        return check.refusal();
    Entry entry(context.book.ledger(), context.newId);
    entry.put(std::move(garage));
    return std::move(entry).change(
        phrase("Undo", "an engine is cold after %1").arg(units::timeOfDayText(cool)));
}

Result<Change> pick(const VerbContext& context, MachineId machine, std::optional<TaskId> task,
                    std::optional<SnagId> snag, bool picked) {
    const Ledger& ledger = context.book.ledger();
    BookChecks check(context.book);
    const auto* card = check.row<items::Machine>("machine", machine);
    oneOf(check, "task", task, snag);
    const base::Place field = task ? "task" : "snag";
    const std::string name =
        check.failed() ? "" : jobName(check, context.book, field, machine, task, snag, picked);
    const auto& picks = ledger.all<weekend::Pick>();
    const auto old = std::find_if(picks.begin(), picks.end(), [&](const weekend::Pick& other) {
        return other.machine == machine && other.task == task && other.snag == snag;
    });
    const bool before = old != picks.end() && old->picked;
    check.that(before != picked, Fault::NothingToDo, field, name);
    if (check.failed())
        return check.refusal();
    Entry entry(context.book.ledger(), context.newId);
    if (old == picks.end()) {
        entry.put(weekend::Pick{.machine = machine, .task = task, .snag = snag, .picked = picked});
    } else {
        weekend::Pick again = *old;
        again.picked = picked;
        entry.put(again);
    }
    return std::move(entry).change(
        (picked ? phrase("Undo", "picked \"%1\" on %2") : phrase("Undo", "left \"%1\" on %2 for later"))
            .arg(name)
            .arg(card->name));
}

Result<Change> issueSheet(const VerbContext& context, weekend::IssuedSheet sheet) {
    BookChecks check(context.book);
    const auto* machine = check.machineOn(sheet.machine, sheet.date);
    sheet.number = nextSheetNumber(context.book.ledger());
    checkShape(check, sheet);
    for (std::size_t at = 0; at < sheet.jobs.size(); ++at)
        jobName(check, context.book, placeIn("jobs", at, sheet.jobs[at].task ? "task" : "snag"),
                sheet.machine, sheet.jobs[at].task, sheet.jobs[at].snag, false);
    if (check.failed())
        return check.refusal();
    Entry entry(context.book.ledger(), context.newId);
    const auto text =
        phrase("Undo", "issued job sheet %1 for %2").arg(std::to_string(sheet.number)).arg(machine->name);
    entry.add(std::move(sheet));
    return std::move(entry).change(text);
}

}  // namespace wm::verbs

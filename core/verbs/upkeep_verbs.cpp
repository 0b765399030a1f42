// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/verbs/upkeep_verbs.h"

#include <algorithm>

#include "core/base/text.h"
#include "core/picture/facts.h"
#include "core/upkeep/countdown.h"
#include "core/verbs/job_parts.h"
#include "core/verbs/names.h"

// Snags, deferrals and the answers to follow-ups.

namespace wm::verbs {

using book::DueLine;

namespace {

// What a deferral puts off, and whether it is a matter of safety.
struct PutOff {
    std::string name;
    bool safety = false;
};

PutOff subjectOf(BookChecks& check, const upkeep::Deferral& deferral) {
    if (deferral.task)
        if (const auto* task = check.taskOf("task", deferral.machine, *deferral.task, deferral.date))
            return {task->name, upkeep::isSafety(task->consequence)};
    if (deferral.snag)
        if (const auto* snag = check.snagOf("snag", deferral.machine, *deferral.snag, true)) {
            check.notBefore(deferral.date, snag->date);
            return {shortened(snag->what), upkeep::isSafety(snag->consequence)};
        }
    return {};
}

// The last one that put the same thing off and that no job has answered, whether its time is over or not.
const upkeep::Deferral* unanswered(const Book& book, const upkeep::Deferral& deferral) {
    const DueLine* line = deferral.task ? book.dueLine(*deferral.task) : nullptr;
    const upkeep::Record* done = line != nullptr ? line->last : nullptr;
    const upkeep::Deferral* last = nullptr;
    for (const auto& other : book.ledger().all<upkeep::Deferral>()) {
        const bool same =
            (deferral.task && other.task == deferral.task) || (deferral.snag && other.snag == deferral.snag);
        if (same && (done == nullptr || done->date < other.date))
            last = &other;
    }
    return last;
}

// It must end, after today and after what the machine already has behind it.
void checkUntil(Checks& check, const Book& book, const upkeep::Deferral& deferral) {
    check.that(deferral.untilDate || deferral.untilHours, Fault::Empty, "until_date");
    if (check.failed())
        return;
    if (deferral.untilDate)
        check.that(*deferral.untilDate > book.today(), Fault::OutOfOrder, "until_date",
                   deferral.untilDate->iso(), book.today().iso());
    const auto now = book.life(deferral.machine).hours.best;
    if (deferral.untilHours)
        check.that(*deferral.untilHours > now, Fault::OutOfOrder, "until_hours",
                   units::hoursText(*deferral.untilHours), units::hoursText(now));
}

base::Phrase untilText(const upkeep::Deferral& deferral) {
    if (!deferral.untilHours)
        return {{}, deferral.untilDate->iso()};
    const std::string hours = units::hoursText(*deferral.untilHours) + " h";
    return deferral.untilDate ? phrase("Undo", "%1 or %2").arg(deferral.untilDate->iso()).arg(hours)
                              : base::Phrase{{}, hours};
}

}  // namespace

Result<Change> addSnag(const VerbContext& context, upkeep::Snag snag) {
    const Ledger& ledger = context.book.ledger();
    BookChecks check(context.book);
    const auto* machine = check.machineOn(snag.machine, snag.date);
    check.row<items::Item>("item", snag.item);
    if (snag.task)
        check.taskOf("task", snag.machine, *snag.task, snag.date);
    checkShape(check, snag);
    for (const auto& other : ledger.all<upkeep::Snag>())
        check.that(
            other.machine != snag.machine || !sameName(other.what, snag.what) || hasEnded(ledger, other.id),
            Fault::Duplicate, "what", shortened(snag.what));
    if (check.failed())
        return check.refusal();
    Entry entry(context.book.ledger(), context.newId);
    const auto text =
        phrase("Undo", "noted the snag \"%1\" on %2").arg(shortened(snag.what)).arg(machine->name);
    entry.add(std::move(snag));
    return std::move(entry).change(text);
}

Result<Change> endSnag(const VerbContext& context, upkeep::SnagEnd end) {
    const Ledger& ledger = context.book.ledger();
    BookChecks check(context.book);
    const auto* snag = check.row<upkeep::Snag>("snag", end.snag);
    check.that(!hasEnded(ledger, end.snag), Fault::NothingToDo, "snag",
               snag == nullptr ? std::string{} : shortened(snag->what));
    check.fact(end.date);
    if (snag != nullptr)
        check.notBefore(end.date, snag->date);
    if (const auto* record = check.row<upkeep::Record>("record", end.record); record != nullptr && snag)
        check.that(record->machine == snag->machine, Fault::Inconsistent, "record");
    checkShape(check, end);
    if (check.failed())
        return check.refusal();
    Entry entry(context.book.ledger(), context.newId);
    const auto text = phrase("Undo", "closed the snag \"%1\" on %2")
                          .arg(shortened(snag->what))
                          .arg(machineName(ledger, snag->machine));
    entry.add(std::move(end));
    unpick(entry, ledger, std::nullopt, snag->id);
    return std::move(entry).change(text);
}

Result<Change> defer(const VerbContext& context, upkeep::Deferral deferral) {
    BookChecks check(context.book);
    const auto* machine = check.machineOn(deferral.machine, deferral.date);
    check.row<items::Person>("by_person", deferral.by);
    checkShape(check, deferral);
    const PutOff subject = subjectOf(check, deferral);
    if (!check.failed())
        checkUntil(check, context.book, deferral);
    check.that(!subject.safety || !deferral.reason.empty(), Fault::ReasonNeeded, "reason");
    if (check.failed())
        return check.refusal();
    // The second time the same words are no reason any more, and would let it roll over in silence.
    if (const auto* before = unanswered(context.book, deferral); before != nullptr && subject.safety)
        check.that(!sameName(before->reason, deferral.reason), Fault::ReasonNeeded, "reason",
                   shortened(before->reason));
    if (check.failed())
        return check.refusal();
    Entry entry(context.book.ledger(), context.newId);
    const auto text = phrase("Undo", "put off \"%1\" on %2 until %3")
                          .arg(subject.name)
                          .arg(machine->name)
                          .arg(untilText(deferral));
    entry.add(std::move(deferral));
    return std::move(entry).change(text);
}

Result<Change> answerFollowUp(const VerbContext& context, upkeep::FollowUpAnswer answer) {
    const Ledger& ledger = context.book.ledger();
    BookChecks check(context.book);
    const auto* machine = check.machineOn(answer.machine, answer.date);
    answer.record.reset();
    checkShape(check, answer);
    check.that(bringsFollowUps(ledger, answer.machine, answer.origin), Fault::Unknown, "origin",
               std::to_string(answer.origin));
    check.that(!isAnswered(ledger, answer.origin, answer.what), Fault::NothingToDo, "what",
               shortened(answer.what));
    if (check.failed())
        return check.refusal();
    Entry entry(context.book.ledger(), context.newId);
    const auto text = phrase("Undo", "answered \"%1\" on %2").arg(shortened(answer.what)).arg(machine->name);
    entry.add(std::move(answer));
    return std::move(entry).change(text);
}

}  // namespace wm::verbs

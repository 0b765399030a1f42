// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/verbs/use_verbs.h"

#include <algorithm>
#include <memory>

#include "core/book/state.h"
#include "core/picture/facts.h"
#include "core/usage/meter_doubts.h"
#include "core/verbs/job_parts.h"
#include "core/verbs/names.h"

// How a machine was used: outings, readings, washes, crashes.

namespace wm::verbs {

using book::OpenJoint;

namespace {

// A day has 24 hours, whatever number of outings it held.
void checkDay(Checks& check, const Ledger& ledger, const usage::Outing& outing) {
    units::Hours sum = outing.hours.value_or(units::Hours{});
    for (const auto& other : ledger.all<usage::Outing>())
        if (other.machine == outing.machine && other.date == outing.date)
            sum += other.hours.value_or(units::Hours{});
    check.that(sum <= usage::kMostHoursADay, Fault::TooLarge, "hours", units::hoursText(sum), "24");
}

// Joints that were already loose on the day must have been looked at before the machine was ridden.
void checkHandTight(Checks& check, const Book& book, const OutingDraft& draft) {
    if (check.failed() || draft.handTightSeen)
        return;
    std::string loose;
    for (const OpenJoint& open : book::openWhenRidden(book, draft.outing.machine, draft.outing.date))
        loose += (loose.empty() ? "" : ", ") + open.joint->name;
    check.that(loose.empty(), Fault::MustAnswer, "hand_tight", shortened(loose));
}

// Nobody rides a machine with something off it that it needs, unless that is not so.
void checkGaps(Checks& check, const Book& book, const OutingDraft& draft) {
    if (check.failed() || draft.handTightSeen)
        return;
    std::string off;
    for (const book::Gap& gap : book::gapsOn(book, draft.outing.machine, draft.outing.date))
        if (!gap.isDoubtful)
            off += (off.empty() ? "" : ", ") + gap.position;
    check.that(off.empty(), Fault::MustAnswer, "not_fitted", shortened(off));
}

// What was put on and perhaps never torqued, or tightened with a tool that failed.
void checkDoubts(Checks& check, const Book& book, const OutingDraft& draft) {
    if (check.failed() || draft.handTightSeen)
        return;
    std::string doubtful;
    for (const book::Doubt& doubt : book::stateOf(book, draft.outing.machine).doubts) {
        const bool isAsked = doubt.why == book::Doubting::OutAndBack || doubt.why == book::Doubting::Wrench ||
                             doubt.why == book::Doubting::CameWith;
        if (!isAsked || doubt.since >= draft.outing.date)
            continue;
        for (const JointId joint : doubt.joints)
            doubtful += (doubtful.empty() ? "" : ", ") + book.joint(joint)->name;
    }
    check.that(doubtful.empty(), Fault::MustAnswer, "in_doubt", shortened(doubtful));
}

// More was noted than the meter ran by far, and it was not so before: has it stopped?
void checkMeterRan(Checks& check, const Book& before, const Change& change, MachineId machine) {
    const Book after(std::make_shared<const Ledger>(before.ledger().with(change)), before.today(), before);
    const auto known = usage::whereItStood(before.use(machine));
    for (const usage::MeterStood& stood : usage::whereItStood(after.use(machine)))
        if (std::find(known.begin(), known.end(), stood) == known.end())
            check.take(usage::questionOf(stood));
}

// What the mechanic answered stays with the joints: he knew, and it was ridden so.
void noteRiddenOpen(Entry& entry, const Book& book, const usage::Outing& outing, OutingId id) {
    for (const OpenJoint& open : book::openWhenRidden(book, outing.machine, outing.date))
        entry.add(fastening::JointMark{.joint = open.joint->joint,
                                       .date = outing.date,
                                       .kind = fastening::MarkKind::RiddenOpen,
                                       .by = outing.rider,
                                       .outing = id});
}

void checkEvent(BookChecks& check, const usage::Outing& outing) {
    const auto* event = check.row<outlook::Event>("event", outing.event);
    if (event == nullptr)
        return;
    check.that(outing.date >= event->first && outing.date <= event->last, Fault::OutOfOrder, "event",
               outing.date.iso(), event->first.iso());
}

base::Phrase outingText(const usage::Outing& outing, const std::string& machine) {
    if (outing.hours)
        return phrase("Undo", "logged an outing of %1 h on %2")
            .arg(units::hoursText(*outing.hours))
            .arg(machine);
    if (outing.distance)
        return phrase("Undo", "logged an outing of %1 km on %2")
            .arg(units::kilometresText(*outing.distance))
            .arg(machine);
    return phrase("Undo", "logged an outing on %1").arg(machine);
}

template <class Reading>
Result<Change> logAnyReading(const VerbContext& context, Reading reading, std::string_view unit,
                             std::string (*textOf)(decltype(Reading::shown), char)) {
    BookChecks check(context.book);
    const auto* machine = check.machineOn(reading.machine, reading.date);
    reading.entered = context.book.ledger().nextEntered();
    reading.outing.reset();
    reading.record.reset();
    checkShape(check, reading);
    if (!check.failed())
        check.take(usage::checkReading(readingsOf(context.book.ledger(), reading.machine), reading));
    if (check.failed())
        return check.refusal();
    Entry entry(context.book.ledger(), context.newId);
    const auto text = phrase("Undo", "read %1 %2 on %3")
                          .arg(textOf(reading.shown, '.'))
                          .arg(std::string(unit))
                          .arg(machine->name);
    entry.add(std::move(reading));
    return std::move(entry).change(text);
}

// The joints that were open while a meter ran on by itself: as the book would say it with the reading, if it
// does not say it without.
std::vector<JointId> openWhileItRan(const Book& before, const Change& change, MachineId machine) {
    const Book after(std::make_shared<const Ledger>(before.ledger().with(change)), before.today(), before);
    const auto known = book::riddenOpen(before, machine);
    std::vector<JointId> joints;
    for (const book::RiddenOpen& ridden : book::riddenOpen(after, machine)) {
        const bool isKnown = std::any_of(known.begin(), known.end(), [&](const book::RiddenOpen& other) {
            return other.isByMeter == ridden.isByMeter && other.day == ridden.day;
        });
        if (ridden.isByMeter && !isKnown)
            joints.insert(joints.end(), ridden.joints.begin(), ridden.joints.end());
    }
    return joints;
}

Change withKnownOpen(const VerbContext& context, Change change, const std::vector<JointId>& joints,
                     calendar::Date on) {
    const Ledger read = context.book.ledger().with(change);
    Entry entry(read, context.newId);
    for (const JointId joint : joints)
        entry.add(fastening::JointMark{.joint = joint, .date = on, .kind = fastening::MarkKind::RiddenOpen});
    for (auto& row : std::move(entry).change(std::string{}).rows)
        change.rows.push_back(std::move(row));
    return change;
}

}  // namespace

Result<Change> logOuting(const VerbContext& context, OutingDraft draft) {
    usage::Outing& outing = draft.outing;
    BookChecks check(context.book);
    const auto* machine = check.machineOn(outing.machine, outing.date);
    check.row<items::Person>("rider", outing.rider);
    checkEvent(check, outing);
    checkShape(check, outing);
    check.hours("meter", draft.meterAfter);
    if (!check.failed())
        checkDay(check, context.book.ledger(), outing);
    usage::HourReading reading{.entered = context.book.ledger().nextEntered(),
                               .machine = outing.machine,
                               .date = outing.date,
                               .shown = draft.meterAfter.value_or(units::Hours{})};
    if (!check.failed() && draft.meterAfter)
        reading = placed(context.book.ledger(), reading);
    if (!check.failed() && draft.meterAfter)
        check.takeMeter(usage::checkReading(readingsOf(context.book.ledger(), outing.machine), reading));
    checkGaps(check, context.book, draft);
    checkHandTight(check, context.book, draft);
    checkDoubts(check, context.book, draft);
    if (check.failed())
        return check.refusal();

    Entry entry(context.book.ledger(), context.newId);
    const OutingId id = entry.add(outing);
    if (draft.meterAfter) {
        reading.outing = id;
        entry.add(std::move(reading));
    }
    if (draft.washed || draft.pressureWashed)
        entry.add(usage::Wash{
            .machine = outing.machine, .date = outing.date, .pressure = draft.pressureWashed, .outing = id});
    if (draft.crashed)
        entry.add(usage::Crash{.machine = outing.machine, .date = outing.date, .outing = id});
    noteRiddenOpen(entry, context.book, outing, id);
    Change change = std::move(entry).change(outingText(outing, machine->name));
    if (!draft.meterIsRight)
        checkMeterRan(check, context.book, change, outing.machine);
    if (check.failed())
        return check.refusal();
    return change;
}

Result<Change> logReading(const VerbContext& context, usage::HourReading reading) {
    return logReadingSeen(context, std::move(reading), {});
}

Result<Change> logReadingSeen(const VerbContext& context, usage::HourReading reading, ReadingSeen seen) {
    const MachineId machine = reading.machine;
    const calendar::Date on = reading.date;
    auto change = logAnyReading(context, std::move(reading), "h", &units::hoursText);
    if (!change)
        return change;
    const auto open = openWhileItRan(context.book, *change, machine);
    std::string names;
    for (const JointId joint : open)
        names += (names.empty() ? "" : ", ") + context.book.joint(joint)->name;
    Checks check;
    check.that(names.empty() || seen.openJoints, Fault::MustAnswer, "hand_tight", shortened(names));
    if (!seen.meterIsRight)
        checkMeterRan(check, context.book, *change, machine);
    if (check.failed())
        return check.refusal();
    return withKnownOpen(context, std::move(*change), open, on);
}

Result<Change> logDistance(const VerbContext& context, usage::DistanceReading reading) {
    return logAnyReading(context, std::move(reading), "km", &units::kilometresText);
}

Result<Change> logWash(const VerbContext& context, usage::Wash wash) {
    BookChecks check(context.book);
    const auto* machine = check.machineOn(wash.machine, wash.date);
    wash.outing.reset();
    checkShape(check, wash);
    if (check.failed())
        return check.refusal();
    Entry entry(context.book.ledger(), context.newId);
    entry.add(std::move(wash));
    return std::move(entry).change(phrase("Undo", "washed %1").arg(machine->name));
}

Result<Change> logCrash(const VerbContext& context, usage::Crash crash) {
    BookChecks check(context.book);
    const auto* machine = check.machineOn(crash.machine, crash.date);
    crash.outing.reset();
    checkShape(check, crash);
    if (check.failed())
        return check.refusal();
    Entry entry(context.book.ledger(), context.newId);
    entry.add(std::move(crash));
    return std::move(entry).change(phrase("Undo", "noted a crash on %1").arg(machine->name));
}

}  // namespace wm::verbs

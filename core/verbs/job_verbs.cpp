// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/verbs/upkeep_verbs.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <set>
#include <tuple>

#include "core/base/text.h"
#include "core/book/joint_owners.h"
#include "core/book/joints_then.h"
#include "core/picture/facts.h"
#include "core/upkeep/measures.h"
#include "core/upkeep/unknown.h"
#include "core/verbs/fastening_verbs.h"
#include "core/verbs/job_parts.h"
#include "core/verbs/move_parts.h"
#include "core/verbs/names.h"
#include "core/weekend/looks.h"

// Recording a job done: the record, and everything that it brings.

namespace wm::verbs {

using upkeep::RecordKind;

namespace {

bool isBaseline(const upkeep::Record& record) {
    return record.kind == RecordKind::Baseline;
}

// What the job was on: the item in the task's position, as far back as the file knows.
void fillItem(const Book& book, upkeep::Record& record, const upkeep::TaskVersion* task,
              const items::Machine& machine) {
    if (task == nullptr || task->position.empty())
        return;
    calendar::Moment when{record.date, record.part};
    if (isBeforeTheFile(record, machine))
        when = {machine.since, calendar::DayPart::AfterRiding};
    if (const auto item = book.fittings().at(machine.id, task->position, when))
        record.item = item;
    else if (!record.item && !isBaseline(record))
        record.item = book.fittings().lyingFrom(machine.id, task->position, when);
}

// On an engine that is away nobody changes the oil.
void checkIsSomething(Checks& check, const Book& book, const upkeep::Record& record,
                      const upkeep::TaskVersion* task) {
    if (task == nullptr || task->position.empty() || record.item || isBaseline(record))
        return;
    const auto left = book.fittings().leftFrom(record.machine, task->position, upkeep::momentOf(record));
    check.that(!left, Fault::NothingThere, "task", task->name, left ? left->position : std::string{});
}

void fillWords(upkeep::Record& record, const upkeep::TaskVersion* task, const upkeep::Snag* snag) {
    record.task = task != nullptr ? std::optional(task->task) : std::nullopt;
    record.version = task != nullptr ? std::optional(task->id) : std::nullopt;
    record.code = task != nullptr ? task->code : std::string{};
    if (base::trimmed(record.what).empty())
        record.what = task != nullptr ? task->name : snag != nullptr ? snag->what : std::string{};
    if (task == nullptr || task->everyNth == 0)
        record.extraDone = false;
    std::vector<base::Code> once;
    for (const base::Code& step : record.steps)
        if (std::find(once.begin(), once.end(), step) == once.end())
            once.push_back(step);
    record.steps = std::move(once);
}

void fillStatedTime(const Book& book, upkeep::Record& record, const items::Machine& machine) {
    record.statedLow = record.statedBest = record.statedHigh = std::nullopt;
    if (isBeforeTheFile(record, machine))
        return;
    const calendar::Moment when{record.date, record.part};
    const auto life = record.item ? book.lifeAt(*record.item, when) : book.lifeAt(machine.id, when);
    record.statedLow = life.hours.low;
    record.statedBest = life.hours.best;
    record.statedHigh = life.hours.high;
}

void checkReferences(BookChecks& check, const Book& book, const upkeep::Record& record) {
    check.row<items::Item>("item", record.item);
    check.row<items::Person>("by_person", record.by);
    check.row<weekend::IssuedSheet>("sheet", record.sheet);
    for (std::size_t at = 0; at < record.uses.size(); ++at) {
        check.row<stock::StockLine>(placeIn("uses", at, "line"), record.uses[at].line);
        check.lotOf(placeIn("uses", at, "lot"), record.uses[at].lot, record.uses[at].line);
        check.that(record.uses[at].amount <= picture::kMostUsed, Fault::TooLarge,
                   placeIn("uses", at, "amount"), std::to_string(record.uses[at].amount),
                   std::to_string(picture::kMostUsed));
    }
    for (std::size_t at = 0; at < record.steps.size(); ++at)
        check.that(book.step(record.machine, record.steps[at].code) != nullptr, Fault::Unknown,
                   placeIn("steps", at, "code"), record.steps[at].code);
}

// A measurement that the task names must come in the task's unit.
void checkUnits(Checks& check, const upkeep::Record& record, const upkeep::TaskVersion* task) {
    if (task == nullptr)
        return;
    for (std::size_t at = 0; at < record.measured.size(); ++at)
        for (const upkeep::MeasurePoint& point : task->measures)
            if (point.name == record.measured[at].name)
                check.that(point.unit == record.measured[at].unit, Fault::WrongUnit,
                           placeIn("measured", at, "unit"), record.measured[at].unit, point.unit);
}

bool isTheSame(const upkeep::Record& record, const upkeep::Record& other) {
    return other.machine == record.machine && other.task == record.task && other.snag == record.snag &&
           other.kind == record.kind && other.date == record.date && other.part == record.part &&
           (!record.item || other.item == record.item) &&
           (record.task || record.snag || sameName(other.what, record.what));
}

void checkTwice(Checks& check, const Book& book, const upkeep::Record& record) {
    const auto& records = book.ledger().all<upkeep::Record>();
    const auto same = std::find_if(records.begin(), records.end(), [&](const upkeep::Record& other) {
        return isTheSame(record, book.placed(other)) && other.meter == record.meter &&
               other.stated == record.stated;
    });
    check.that(same == records.end(), Fault::Duplicate, "date", record.date.iso(), shortened(record.what));
}

// The job of that day that this one only adds torqued joints to, or nullptr.
const upkeep::Record* onlyConfirms(const Book& book, const JobDraft& draft) {
    const upkeep::Record& record = draft.record;
    if (draft.confirmed.empty() || !record.uses.empty() || !record.measured.empty() || draft.sends ||
        isBaseline(record))
        return nullptr;
    const upkeep::Record* found = nullptr;
    for (const upkeep::Record& other : book.ledger().all<upkeep::Record>())
        if (isTheSame(record, book.placed(other)) && (!record.meter || record.meter == other.meter))
            found = &other;
    return found;
}

usage::HourReading readingOf(const Book& book, const upkeep::Record& record) {
    return placed(book.ledger(), {.entered = book.ledger().nextEntered(),
                                  .machine = record.machine,
                                  .date = record.date,
                                  .part = record.part,
                                  .shown = record.meter.value_or(units::Hours{})});
}

// Newer than every reading there is, or the same evening with another figure.
bool isNews(const usage::UseFacts& facts, const usage::HourReading& reading) {
    const auto last = std::max_element(facts.hourReadings.begin(), facts.hourReadings.end(),
                                       [](const auto& a, const auto& b) { return usage::comesBefore(a, b); });
    if (last == facts.hourReadings.end())
        return true;
    const bool later = std::pair(reading.date, reading.part) > std::pair(last->date, last->part);
    return later || (usage::comesBefore(*last, reading) && reading.shown != last->shown);
}

std::vector<std::string> stepsOffAt(const JobDraft& draft) {
    std::vector<std::string> steps;
    for (const base::Code& step : draft.record.steps)
        steps.push_back(step.code);
    return steps;
}

// The joints that a job has to do with, with the access steps that were off.
std::vector<const fastening::JointVersion*> touchedBy(const Book& book, const JobDraft& draft,
                                                      const upkeep::TaskVersion* task) {
    upkeep::TaskVersion nothing;
    nothing.machine = draft.record.machine;
    return book.jointsOpened(task != nullptr ? *task : nothing, stepsOffAt(draft));
}

// Something must be fitted there.
void checkIsThere(BookChecks& check, const Book& book, const fastening::JointVersion& joint,
                  const upkeep::Record& record) {
    const auto position = book::outAtJob(book, joint, record);
    check.that(!position, Fault::IsOut, "torqued", joint.name, position.value_or(""));
}

void checkConfirmed(BookChecks& check, const Book& book, const JobDraft& draft,
                    const upkeep::TaskVersion* task) {
    check.row<fastening::Tool>("tool", draft.tool);
    const auto opened = touchedBy(book, draft, task);
    for (const JointId joint : draft.confirmed) {
        const auto* version = book.joint(joint);
        check.that(version != nullptr && version->machine == draft.record.machine, Fault::Unknown, "torqued",
                   std::to_string(joint.value()));
        if (version != nullptr && !opened.empty() && !draft.confirmsOthers)
            check.that(std::find(opened.begin(), opened.end(), version) != opened.end(), Fault::NotOpened,
                       "torqued", version->name);
        if (version != nullptr && !check.failed())
            checkIsThere(check, book, *version, draft.record);
    }
}

// What the job opened is loose by the job; one that does not take the item out loosens what holds it besides.
items::Told toldBySending(const Book& book, const JobDraft& draft) {
    const auto& record = draft.record;
    const auto freeing =
        book::stepsFreeing(book.ledger(), record.machine, book.placeOfJob(record), record.date);
    const bool isOpened = std::any_of(freeing.begin(), freeing.end(), [&](const weekend::StepVersion* step) {
        return std::any_of(record.steps.begin(), record.steps.end(),
                           [&](const base::Code& code) { return code.code == step->code; });
    });
    return freeing.empty() || isOpened ? items::Told::AsItWas : items::Told::Work;
}

items::Move sendingOf(const Book& book, const JobDraft& draft) {
    return {.item = draft.record.item.value_or(ItemId{}),
            .date = draft.record.date,
            .part = draft.record.part,
            .kind = items::MoveKind::Away,
            .note = draft.sends->where,
            .told = toldBySending(book, draft),
            .backOn = draft.sends->backOn};
}

void checkSending(BookChecks& check, const Book& book, const JobDraft& draft) {
    if (check.failed() || !draft.sends)
        return;
    check.that(draft.record.item.has_value() && draft.record.kind == RecordKind::Done, Fault::NotFitted,
               "sends");
    if (check.failed())
        return;
    items::Move away = sendingOf(book, draft);
    away.entered = book.ledger().nextEntered();
    checkMove(check, book, away, nullptr);
    if (!check.failed())
        check.take(book.fittings().check(away));
}

void checkAnswers(BookChecks& check, const Book& book, JobDraft& draft) {
    for (std::size_t at = 0; at < draft.answers.size(); ++at) {
        auto& [origin, words] = draft.answers[at];
        check.words(placeIn("answers", at, "what"), words);
        check.that(bringsFollowUps(book.ledger(), draft.record.machine, origin), Fault::Unknown,
                   placeIn("answers", at, "origin"), std::to_string(origin));
    }
}

using Drawn = std::vector<std::pair<std::optional<LotId>, std::int64_t>>;

// The containers that this very amount came from when the job was said before; empty if it came from none.
Drawn drawnBefore(const JobDraft& draft, const upkeep::Use& use) {
    Drawn parts;
    std::int64_t sum = 0;
    for (const stock::StockMove& move : draft.drawn)
        if (move.line == use.line) {
            parts.emplace_back(move.lot, -move.amount);
            sum -= move.amount;
        }
    return sum == use.amount ? parts : Drawn{};
}

// Takes what was used from the containers that it most likely came from, and opens those that were full.
void drawUses(Entry& entry, const Book& book, const JobDraft& draft, RecordId id) {
    const upkeep::Record& record = draft.record;
    std::map<StockLineId, stock::OnHand> left;
    std::set<LotId> opened;
    for (const upkeep::Use& use : record.uses) {
        const auto* there = book.onHand(use.line);
        auto& shelf = left.try_emplace(use.line, there == nullptr ? stock::OnHand{} : *there).first->second;
        auto parts = use.lot ? Drawn{{use.lot, use.amount}} : drawnBefore(draft, use);
        if (parts.empty())
            parts = stock::drawFrom(shelf, use.amount);
        for (const auto& [lot, amount] : parts) {
            for (auto& container : shelf.lots)
                if (container.lot == lot)
                    container.amount -= amount;
            entry.add(stock::StockMove{
                .line = use.line, .lot = lot, .date = record.date, .amount = -amount, .record = id});
            if (lot && opened.insert(*lot).second)
                openLot(entry, book, *lot, record.date);
        }
    }
}

void markOpened(Entry& entry, const Book& book, const JobDraft& draft, const upkeep::TaskVersion* task,
                RecordId id) {
    std::vector<JointId> confirmed;
    for (const JointId joint : draft.confirmed)
        if (std::find(confirmed.begin(), confirmed.end(), joint) == confirmed.end())
            confirmed.push_back(joint);
    const auto mark = [&](JointId joint, fastening::MarkKind kind) {
        const bool tightened = kind == fastening::MarkKind::Confirmed;
        entry.add(fastening::JointMark{.joint = joint,
                                       .date = draft.record.date,
                                       .kind = kind,
                                       .record = id,
                                       .by = draft.record.by,
                                       .tool = tightened ? draft.tool : std::nullopt});
    };
    const auto steps = book.steps(draft.record.machine);
    const auto off = stepsOffAt(draft);
    const auto isOpened = [&](const fastening::JointVersion& joint) {
        return task == nullptr || !weekend::looksAt(*task, joint.code, steps, off);
    };
    if (draft.opensJoints && !isBaseline(draft.record))
        for (const auto* joint : touchedBy(book, draft, task))
            if (std::find(confirmed.begin(), confirmed.end(), joint->joint) == confirmed.end() &&
                isOpened(*joint))
                mark(joint->joint, fastening::MarkKind::Loosened);
    for (const JointId joint : confirmed)
        mark(joint, fastening::MarkKind::Confirmed);
}

// "inlet left 0.31 mm", outside its limit or at it: it is recorded as it was found, and not passed over in
// silence.
struct BadValues {
    std::string outside;
    std::string at;
};

BadValues badValuesOf(const upkeep::Record& record, const upkeep::TaskVersion* task) {
    BadValues bad;
    for (const upkeep::Measured& each : record.measured) {
        const auto* point = task == nullptr ? nullptr : upkeep::pointNamed(*task, each.name);
        if (point == nullptr || !upkeep::limitReached(*point, each.value))
            continue;
        std::string& text = upkeep::isOutside(*point, each.value) ? bad.outside : bad.at;
        text += fmt::format("{}{} {} {}", text.empty() ? "" : ", ", each.name, each.value.text(), each.unit);
    }
    return bad;
}

base::Phrase jobText(const upkeep::Record& record, const upkeep::TaskVersion* task,
                     const std::string& machine) {
    const std::string what = shortened(record.what);
    switch (record.kind) {
        case RecordKind::LookedFine:
            return (task != nullptr && !upkeep::isALook(*task)
                        ? phrase("Undo",
                                 "noted \"%1\" as fine on %2; its count goes on, a look renews nothing")
                        : phrase("Undo", "noted \"%1\" as fine on %2"))
                .arg(what)
                .arg(machine);
        case RecordKind::Baseline:
            return phrase("Undo", "noted \"%1\" as done before on %2").arg(what).arg(machine);
        case RecordKind::Done:
            break;
    }
    auto text = phrase("Undo", "recorded \"%1\" on %2").arg(what).arg(machine);
    const BadValues bad = badValuesOf(record, task);
    if (!bad.outside.empty())
        text = phrase("Undo", "%1; OUTSIDE its limit: %2").arg(std::move(text)).arg(bad.outside);
    if (!bad.at.empty())
        text = phrase("Undo", "%1; AT its limit: %2").arg(std::move(text)).arg(bad.at);
    return text;
}

// Machine, task and snag of a record.
ReadyJob subjectOf(BookChecks& check, const upkeep::Record& record) {
    ReadyJob subject;
    if (isBaseline(record)) {
        subject.machine = check.row<items::Machine>("machine", record.machine);
        check.fact(record.date);
    } else {
        subject.machine = check.machineOn(record.machine, record.date);
    }
    if (record.task)
        subject.task = check.taskOf("task", record.machine, *record.task, record.date);
    if (record.snag)
        subject.snag = check.snagOf("snag", record.machine, *record.snag, true);
    if (subject.snag != nullptr)
        check.notBefore(record.date, subject.snag->date);
    return subject;
}

void checkMeter(Checks& check, const Book& book, const upkeep::Record& record,
                const items::Machine& machine) {
    if (record.meter && !isBeforeTheFile(record, machine))
        check.takeMeter(usage::checkReading(readingsOf(book.ledger(), machine.id), readingOf(book, record)));
}

void noteMeter(Entry& entry, const Book& book, const JobDraft& draft, RecordId id) {
    usage::HourReading reading = readingOf(book, draft.record);
    if (!draft.notesMeter && !isNews(readingsOf(book.ledger(), draft.record.machine), reading))
        return;
    reading.record = id;
    entry.add(std::move(reading));
}

}  // namespace

bool isBeforeTheFile(const upkeep::Record& record, const items::Machine& machine) {
    return isBaseline(record) && record.date < machine.since;
}

void addJob(Entry& entry, const Book& book, const ReadyJob& job) {
    const upkeep::Record& record = job.draft.record;
    const RecordId id = entry.add(record);
    if (!isBaseline(record))
        drawUses(entry, book, job.draft, id);
    markOpened(entry, book, job.draft, job.task, id);
    if (job.draft.sends) {
        items::Move away = sendingOf(book, job.draft);
        away.record = id;
        entry.add(std::move(away));
    }
    if (job.snag != nullptr)
        entry.add(
            upkeep::SnagEnd{.snag = job.snag->id, .date = record.date, .record = id, .how = record.what});
    for (const auto& [origin, words] : job.draft.answers)
        if (!isAnswered(book.ledger(), origin, words))
            entry.add(upkeep::FollowUpAnswer{.machine = record.machine,
                                             .origin = origin,
                                             .what = words,
                                             .date = record.date,
                                             .record = id});
    if (record.meter && !isBaseline(record))
        noteMeter(entry, book, job.draft, id);
    if (!isBaseline(record))
        unpick(entry, book.ledger(), record.task, record.snag);
}

Result<ReadyJob> checkJob(const VerbContext& context, JobDraft draft) {
    const Book& book = context.book;
    upkeep::Record& record = draft.record;
    BookChecks check(book);
    ReadyJob job = subjectOf(check, record);
    if (check.failed())
        return check.refusal();
    fillWords(record, job.task, job.snag);
    record.part = book.partByMeter(record);
    fillItem(book, record, job.task, *job.machine);
    checkShape(check, record);
    checkIsSomething(check, book, record, job.task);
    checkReferences(check, book, record);
    checkUnits(check, record, job.task);
    checkConfirmed(check, book, draft, job.task);
    checkAnswers(check, book, draft);
    if (!check.failed())
        checkMeter(check, book, record, *job.machine);
    if (!check.failed())
        checkTwice(check, book, record);
    checkSending(check, book, draft);
    if (check.failed())
        return check.refusal();
    fillStatedTime(book, record, *job.machine);
    job.draft = std::move(draft);
    return job;
}

namespace {

Result<Change> confirmMore(const VerbContext& context, const JobDraft& draft, const upkeep::Record& record) {
    std::vector<fastening::JointMark> marks;
    for (const JointId joint : draft.confirmed)
        marks.push_back({.joint = joint,
                         .date = record.date,
                         .kind = fastening::MarkKind::Confirmed,
                         .record = record.id,
                         .by = draft.record.by,
                         .tool = draft.tool});
    return markJoints(context, std::move(marks));
}

}  // namespace

Result<Change> recordJob(const VerbContext& context, JobDraft draft) {
    if (const auto* record = onlyConfirms(context.book, draft))
        return confirmMore(context, draft, *record);
    const auto job = checkJob(context, std::move(draft));
    if (!job)
        return tl::unexpected(job.error());
    Entry entry(context.book.ledger(), context.newId);
    addJob(entry, context.book, *job);
    return std::move(entry).change(jobText(job->draft.record, job->task, job->machine->name));
}

}  // namespace wm::verbs

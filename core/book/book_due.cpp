// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <set>
#include <tuple>

#include "core/book/book.h"
#include "core/book/book_parts.h"
#include "core/book/drawer_of_book.h"
#include "core/book/fitting.h"
#include "core/book/joint_owners.h"
#include "core/book/joints_then.h"
#include "core/picture/facts.h"
#include "core/upkeep/demands.h"

// What is due: the part of the book that asks upkeep and outlook.

namespace wm::book {

using calendar::Moment;
using outlook::StandingKind;

namespace {

// Of what nobody recorded: what can hurt somebody, then what can't be felt.
int harmOf(upkeep::Consequence consequence) {
    return (upkeep::isSafety(consequence) ? 0 : 2) + (upkeep::isHidden(consequence) ? 0 : 1);
}

// Overdue, with what may be over if safety hangs on it, then what may be over, then what falls due first,
// then what is in hand, then what nobody recorded.
auto urgency(const DueLine& line) {
    const auto rank = [&] {
        switch (line.standing.kind) {
            case StandingKind::Overdue:
                return 0;
            case StandingKind::MayBeOver:
                return upkeep::isSafety(line.task->consequence) ? 0 : 1;
            case StandingKind::BeforeEvent:
                return 2;
            case StandingKind::InHand:
                return 3;
            case StandingKind::NothingFitted:
                return 5;
            case StandingKind::NoRecord:
                break;
        }
        return 4;
    }();
    const bool inHand = line.standing.kind == StandingKind::InHand;
    const bool never = line.standing.kind == StandingKind::NoRecord;
    const auto consequence = static_cast<int>(line.task->consequence);
    const auto likely = line.standing.likely ? line.standing.likely->daysSinceEpoch() : 1'000'000;
    const int first = never ? harmOf(line.task->consequence) : inHand ? likely : consequence;
    const int second = never ? consequence : inHand ? consequence : likely;
    return std::tuple(rank, first, second, line.task->name);
}

upkeep::Subject subjectOf(const DueLine& line) {
    return {.machine = line.machine, .position = line.task->position, .item = line.item, .empty = line.empty};
}

// The codes of the other jobs that a task counts or waits for.
std::set<std::string_view> otherJobsOf(const upkeep::TaskVersion& task) {
    std::set<std::string_view> codes;
    if (!task.nthOf.empty())
        codes.insert(task.nthOf);
    for (const upkeep::Trigger& trigger : task.triggers)
        if (trigger.happening == upkeep::Happening::Job)
            codes.insert(trigger.code);
    codes.erase(task.code);
    return codes;
}

}  // namespace

const std::vector<DueLine>& Book::due(MachineId machine) const {
    return parts_->due.get(machine, [&] {
        std::vector<DueLine> lines;
        const Tasks all = tasks(machine);
        for (const upkeep::TaskVersion* task : all)
            lines.push_back(lineOf(*task, all));
        std::sort(lines.begin(), lines.end(),
                  [](const DueLine& a, const DueLine& b) { return urgency(a) < urgency(b); });
        return lines;
    });
}

// The place of a job on its machine, by the version that the record followed; empty for a job on the whole.
std::string_view Book::placeOfJob(const upkeep::Record& record) const {
    const upkeep::TaskVersion* version =
        record.version ? ledger().find<upkeep::TaskVersion>(*record.version) : nullptr;
    if (version == nullptr && record.task)
        version = picture::versionOn(ledger(), *record.task, record.date);
    return version == nullptr ? std::string_view{} : std::string_view(version->position);
}

bool Book::isCompletion(const upkeep::Record& record) const {
    static const std::vector<const upkeep::TaskVersion*> kNone;
    return upkeep::isCompletion(
        record, record.task ? under(parts_->groups->taskVersions, *record.task) : kNone, today());
}

// The records of a job that count for a subject, in any order.
std::vector<const upkeep::Record*> Book::recordsFor(const upkeep::Subject& subject,
                                                    std::string_view code) const {
    std::vector<const upkeep::Record*> found;
    if (code.empty() || subject.isEmpty())
        return found;
    if (!subject.item) {
        for (const upkeep::Record* record : under(parts_->records(subject.machine).ofJob, code))
            if (!record->item || subject.position.empty())
                found.push_back(record);
        return found;
    }
    const auto whereabouts = this->whereabouts();
    for (const items::Machine& machine : ledger().all<items::Machine>())
        for (const upkeep::Record* record : under(parts_->records(machine.id).ofJob, code))
            if (upkeep::concerns(*record, placeOfJob(*record), *subject.item, whereabouts))
                found.push_back(record);
    return found;
}

upkeep::Whereabouts Book::whereabouts() const {
    return {fittings(), [this](ItemId id) { return ledger().find<items::Item>(id); }};
}

// Where an item was before anybody tracked it, since its last record; of one that was never worked on its own
// past speaks.
std::optional<items::Carriage> Book::untrackedSince(ItemId item, const upkeep::Record& last) const {
    return upkeep::wasNeverDone(last) ? std::nullopt
                                      : whereabouts().untrackedSince(item, upkeep::momentOf(last));
}

std::vector<usage::Atom> Book::atomsFor(const upkeep::Subject& subject, const upkeep::Record* last) const {
    if (!subject.item)
        return atoms(subject.machine);
    const auto& own = atoms(*subject.item);
    const auto untracked = last == nullptr ? std::nullopt : untrackedSince(*subject.item, *last);
    if (!untracked)
        return own;
    std::vector<usage::Atom> joined;
    for (const usage::Atom& atom : atoms(untracked->machine)) {
        if (atom.to <= *untracked->to)
            joined.push_back(atom);
        else if (atom.from < *untracked->to && atom.kind == usage::AtomKind::Unlogged)
            if (const auto part = usage::partOf(atom, atom.from, *untracked->to))
                joined.push_back(*part);
    }
    for (const usage::Atom& atom : own)
        if (atom.kind != usage::AtomKind::Past)
            joined.push_back(atom);
    std::stable_sort(joined.begin(), joined.end(),
                     [](const usage::Atom& a, const usage::Atom& b) { return a.to < b.to; });
    return joined;
}

// What is stated of the machine, whichever job.
std::vector<const upkeep::Record*> Book::statedOf(MachineId machine) const {
    std::vector<const upkeep::Record*> stated;
    for (const upkeep::Record* record : under(parts_->records(machine).ofJob, std::string_view{}))
        if (record->kind == upkeep::RecordKind::Baseline && !record->stated.empty())
            stated.push_back(record);
    return stated;
}

// Before it came here nobody noted what the subject went through: an item by itself, or with the machine that
// it is taken to have been on since the job.
std::optional<Moment> Book::notedFrom(const upkeep::Subject& subject, const upkeep::Record* last) const {
    const auto firstDayOf = [](const auto* card) {
        return card == nullptr || card->startedNew
                   ? std::nullopt
                   : std::optional(Moment{card->since, calendar::DayPart::BeforeRiding});
    };
    if (!subject.item)
        return firstDayOf(ledger().find<items::Machine>(subject.machine));
    if (last != nullptr)
        if (const auto on = untrackedSince(*subject.item, *last))
            return firstDayOf(ledger().find<items::Machine>(on->machine));
    return firstDayOf(ledger().find<items::Item>(*subject.item));
}

std::vector<usage::Atom> Book::atomsOf(const DueLine& line) const {
    return atomsFor(subjectOf(line), line.last);
}

std::vector<items::Carriage> Book::carriagesOf(const DueLine& line) const {
    if (!line.item)
        return {};
    auto carriages = items::carriagesOf(*line.item, fittings());
    if (line.last != nullptr)
        if (auto before = untrackedSince(*line.item, *line.last))
            carriages.insert(carriages.begin(), std::move(*before));
    return carriages;
}

// What was measured of the subject by the tasks whose values make this one due.
std::vector<upkeep::MeasuredValue> Book::valuesFor(const upkeep::Subject& subject,
                                                   const upkeep::TaskVersion& task,
                                                   const Tasks& ofMachine) const {
    std::vector<upkeep::MeasuredValue> values;
    for (const upkeep::TaskVersion* look : ofMachine) {
        const auto isMeant = [&](const upkeep::MeasurePoint& point) {
            return (point.least || point.most) && upkeep::jobOf(*look, point) == task.code;
        };
        if (std::none_of(look->measures.begin(), look->measures.end(), isMeant))
            continue;
        // What was measured again once the job was done is written down with either.
        const std::set<std::string_view> codes{look->code, task.code};
        for (const std::string_view code : codes)
            for (const upkeep::Record* record : recordsFor(subject, code))
                for (const upkeep::Measured& value : record->measured)
                    if (const auto* point = upkeep::pointNamed(*look, value.name);
                        point != nullptr && isMeant(*point))
                        values.push_back({point, record, &value});
    }
    return values;
}

DueLine Book::lineOf(const upkeep::TaskVersion& task, const Tasks& ofMachine) const {
    DueLine line;
    line.machine = task.machine;
    line.task = &task;
    const auto subject = upkeep::subjectAt(fittings(), task.machine, task.position, parts_->now());
    line.item = subject.item;
    line.empty = subject.empty;
    line.waitsFor = line.empty ? std::optional(line.empty->position) : book::waitsFor(*this, task);
    const items::Item* item = line.item ? ledger().find<items::Item>(*line.item) : nullptr;
    const items::Machine* machine = ledger().find<items::Machine>(task.machine);
    const auto own = recordsFor(subject, task.code);
    std::vector<const upkeep::Record*> others;
    for (const std::string_view code : otherJobsOf(task))
        for (const upkeep::Record* record : recordsFor(subject, code))
            if (isCompletion(*record) && !upkeep::wasNeverDone(*record))
                others.push_back(record);
    const upkeep::Record* last = nullptr;
    for (const upkeep::Record* record : own)
        if (record->date <= today() && isCompletion(*record) &&
            (last == nullptr || newestFirst(record, last)))
            last = record;
    const auto behind = atomsFor(subject, last);
    const auto told = statedOf(task.machine);
    const auto values = valuesFor(subject, task, ofMachine);

    const auto& versions = under(parts_->groups->taskVersions, task.task);
    upkeep::TaskFacts facts{
        .versions = versions,
        .records = own,
        .others = others,
        .atoms = behind,
        .startedNew = item != nullptr ? item->startedNew : machine != nullptr && machine->startedNew,
        .since = item != nullptr      ? item->since
                 : machine != nullptr ? machine->since
                                      : today(),
        .nothingFitted = subject.isEmpty(),
        .told = told,
        .values = values,
        .notedFrom = notedFrom(subject, last)};
    line.countdown = upkeep::countdown(facts, today());
    line.standing = outlook::standingOf(task, line.countdown, odds(task.machine));
    if (line.countdown.last)
        line.last = ledger().find<upkeep::Record>(*line.countdown.last);
    if (const auto& deferrals = under(parts_->groups->deferralsOfTask, task.task); !deferrals.empty())
        line.deferral =
            upkeep::deferralInForce(deferrals, today(), life(task.machine).hours.best,
                                    line.last != nullptr ? std::optional(line.last->date) : std::nullopt);
    line.picked = parts_->groups->pickedTasks.contains(task.task);
    return line;
}

const upkeep::LimitState* decidingLimit(const DueLine& line) {
    const auto at = line.standing.limit ? line.standing.limit : line.countdown.governing;
    return at && *at < line.countdown.limits.size() ? &line.countdown.limits[*at] : nullptr;
}

const DueLine* Book::dueLine(TaskId task) const {
    const upkeep::TaskVersion* version = this->task(task);
    if (version == nullptr)
        return nullptr;
    for (const DueLine& line : due(version->machine))
        if (line.task->task == task)
            return &line;
    return nullptr;
}

const JointsThen& Book::jointsThen(MachineId machine) const {
    return parts_->joints.get(machine, [&] { return gatherJoints(*this, machine); });
}

std::vector<OpenJoint> Book::handTight(MachineId machine) const {
    std::vector<OpenJoint> result;
    for (const auto& open : book::handTight(jointsThen(machine)))
        result.push_back({joint(open.joint), open});
    return result;
}

std::vector<OpenSnag> Book::snags(MachineId machine) const {
    std::set<SnagId> ended;
    for (const auto& end : ledger().all<upkeep::SnagEnd>())
        ended.insert(end.snag);
    const units::Hours hours = life(machine).hours.best;
    std::vector<OpenSnag> result;
    for (const auto& snag : ledger().all<upkeep::Snag>()) {
        if (snag.machine != machine || ended.contains(snag.id))
            continue;
        const auto* deferral =
            upkeep::deferralInForce(under(parts_->groups->deferralsOfSnag, snag.id), today(), hours);
        result.push_back({&snag, deferral, parts_->groups->pickedSnags.contains(snag.id)});
    }
    std::sort(result.begin(), result.end(), [](const OpenSnag& a, const OpenSnag& b) {
        return std::tuple(a.snag->consequence, a.snag->date, a.snag->entered) <
               std::tuple(b.snag->consequence, b.snag->date, b.snag->entered);
    });
    return result;
}

std::vector<std::pair<const upkeep::Record*, const upkeep::Measured*>> Book::lastMeasured(
    TaskId task, std::string_view name, std::size_t most) const {
    std::vector<std::pair<const upkeep::Record*, const upkeep::Measured*>> result;
    const DueLine* line = dueLine(task);
    if (line == nullptr)
        return result;
    auto candidates = recordsFor(subjectOf(*line), line->task->code);
    std::sort(candidates.begin(), candidates.end(), newestFirst);
    for (const upkeep::Record* record : candidates) {
        for (const upkeep::Measured& measured : record->measured)
            if (measured.name == name && result.size() < most)
                result.emplace_back(record, &measured);
    }
    return result;
}

std::vector<weekend::Job> Book::pickedJobs(MachineId machine) const {
    std::vector<weekend::Job> jobs;
    for (const DueLine& line : due(machine)) {
        // Nobody works on what is not there.
        if (!line.picked || line.waitsFor)
            continue;
        weekend::Job job{.task = line.task->task,
                         .name = line.task->name,
                         .minutes = line.task->minutes,
                         .bodyState = line.task->bodyState,
                         .safety = upkeep::isSafety(line.task->consequence)};
        job.sendsOut = line.task->sendsOut && spareFor(*this, *line.task) == nullptr;
        job.definition = line.task;
        for (const base::Code& code : line.task->steps)
            job.steps.push_back(code.code);
        jobs.push_back(std::move(job));
    }
    for (const OpenSnag& open : snags(machine)) {
        if (!open.picked)
            continue;
        weekend::Job job{.snag = open.snag->id,
                         .name = open.snag->what,
                         .safety = upkeep::isSafety(open.snag->consequence)};
        // A snag with a task behind it takes as long as the task and needs the same things off.
        if (const auto* version = open.snag->task ? task(*open.snag->task) : nullptr) {
            job.minutes = version->minutes;
            job.definition = version;
            for (const base::Code& code : version->steps)
                job.steps.push_back(code.code);
        }
        jobs.push_back(std::move(job));
    }
    return jobs;
}

std::vector<const fastening::JointVersion*> Book::jointsOpened(const upkeep::TaskVersion& task,
                                                               const std::vector<std::string>& steps) const {
    std::vector<const fastening::JointVersion*> result;
    const auto add = [&](const std::vector<base::Code>& codes) {
        for (const base::Code& code : codes) {
            const auto* found = joint(task.machine, code.code);
            if (found != nullptr && std::find(result.begin(), result.end(), found) == result.end())
                result.push_back(found);
        }
    };
    add(task.joints);
    for (const std::string& code : steps)
        if (const auto* opened = step(task.machine, code))
            add(opened->joints);
    return result;
}

}  // namespace wm::book

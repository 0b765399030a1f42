// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <tuple>

#include "core/book/book.h"
#include "core/book/book_parts.h"
#include "core/book/drawer_of_book.h"
#include "core/book/round.h"
#include "core/upkeep/demands.h"

// What is due: the part of the book that asks upkeep and outlook.

namespace wm::book {

using calendar::Moment;
using outlook::StandingKind;

namespace {

// Overdue, then what falls due first, then what nobody recorded (hidden ones first), then what is in hand.
auto urgency(const DueLine& line) {
    const auto rank = [&] {
        switch (line.standing.kind) {
            case StandingKind::Overdue:
                return 0;
            case StandingKind::BeforeEvent:
                return 1;
            case StandingKind::InHand:
                return 2;
            case StandingKind::NoRecord:
                break;
        }
        return 3;
    }();
    const bool inHand = line.standing.kind == StandingKind::InHand;
    const bool never = line.standing.kind == StandingKind::NoRecord;
    const auto consequence = static_cast<int>(line.task->consequence);
    const auto likely = line.standing.likely ? line.standing.likely->daysSinceEpoch() : 1'000'000;
    const int first = never    ? (upkeep::isHidden(line.task->consequence) ? 0 : 1)
                      : inHand ? likely
                               : consequence;
    const int second = never ? consequence : inHand ? consequence : likely;
    return std::tuple(rank, first, second, line.task->name);
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

bool isPartOf(const items::Fittings& fittings, ItemId part, ItemId whole, Moment when) {
    for (std::optional<ItemId> at = part; at;) {
        if (*at == whole)
            return true;
        const auto place = fittings.placeOf(*at, when);
        at = place ? place->parent : std::nullopt;
    }
    return false;
}

bool isOn(const items::Fittings& fittings, MachineId machine, ItemId item, Moment when) {
    for (std::optional<ItemId> at = item; at;) {
        const auto place = fittings.placeOf(*at, when);
        if (place && place->machine)
            return *place->machine == machine;
        at = place ? place->parent : std::nullopt;
    }
    return false;
}

// A job on a part of the item, on what the item is a part of, or on the machine that carried it then: a new
// piston concerns the engine, new pads the disc of the wheel that was in.
bool concerns(const items::Fittings& fittings, const upkeep::Record& record, ItemId item) {
    const Moment when{record.date, record.part};
    if (!record.item)
        return isOn(fittings, record.machine, item, when);
    return *record.item != item &&
           (isPartOf(fittings, *record.item, item, when) || isPartOf(fittings, item, *record.item, when));
}

}  // namespace

const std::vector<DueLine>& Book::due(MachineId machine) const {
    return parts_->due.get(machine, [&] {
        std::vector<DueLine> lines;
        for (const upkeep::TaskVersion* task : tasks(machine))
            lines.push_back(lineOf(*task));
        std::sort(lines.begin(), lines.end(),
                  [](const DueLine& a, const DueLine& b) { return urgency(a) < urgency(b); });
        return lines;
    });
}

DueLine Book::lineOf(const upkeep::TaskVersion& task) const {
    DueLine line;
    line.machine = task.machine;
    line.task = &task;
    if (!task.position.empty())
        line.item = fittings().at(task.machine, task.position, parts_->now());
    const items::Item* item = line.item ? ledger().find<items::Item>(*line.item) : nullptr;
    const items::Machine* machine = ledger().find<items::Machine>(task.machine);

    const RecordsOfMachine& ofMachine = parts_->records(task.machine);
    const auto otherJobs = otherJobsOf(task);
    std::vector<const upkeep::Record*> own;
    std::vector<const upkeep::Record*> others;
    // The clock of an item goes with the item, over machines; where no item is known in the position, the
    // machine's own records of this task count, as long as they name no item either.
    if (item != nullptr) {
        for (const upkeep::Record* record : parts_->records(item->id))
            if (record->code == task.code && !task.code.empty())
                own.push_back(record);
            else if (otherJobs.contains(record->code))
                others.push_back(record);
        for (const std::string_view code : otherJobs)
            for (const upkeep::Record* record : under(ofMachine.ofJob, code))
                if (concerns(fittings(), *record, item->id))
                    others.push_back(record);
    } else {
        const auto take = [&](std::string_view code, std::vector<const upkeep::Record*>& into) {
            for (const upkeep::Record* record : under(ofMachine.ofJob, code))
                if (!record->item || task.position.empty())
                    into.push_back(record);
        };
        take(task.code, own);
        for (const std::string_view code : otherJobs)
            take(code, others);
    }

    const auto& versions = under(parts_->groups->taskVersions, task.task);
    upkeep::TaskFacts facts{
        .versions = versions,
        .records = own,
        .others = others,
        .atoms = item != nullptr ? atoms(item->id) : atoms(task.machine),
        .startedNew = item != nullptr ? item->startedNew : machine != nullptr && machine->startedNew,
        .since = item != nullptr      ? item->since
                 : machine != nullptr ? machine->since
                                      : today()};
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

const DueLine* Book::dueLine(TaskId task) const {
    const upkeep::TaskVersion* version = this->task(task);
    if (version == nullptr)
        return nullptr;
    for (const DueLine& line : due(version->machine))
        if (line.task->task == task)
            return &line;
    return nullptr;
}

const outlook::Chances& Book::chances(MachineId machine) const {
    return parts_->chances.get(machine, [&] { return chancesOf(machine); });
}

outlook::Chances Book::chancesOf(MachineId machine) const {
    outlook::Chances beside;
    std::vector<outlook::Watched> watched;
    for (const DueLine& line : due(machine)) {
        auto point = outlook::duePointOf(*line.task, line.countdown, ahead(machine));
        if (line.deferral != nullptr)
            ++beside.putOff;
        else if (isOnlyOfTheRound(line))
            ++beside.round;
        else if (line.standing.kind == StandingKind::Overdue || point.isNow)
            ++beside.dueNow;
        else if (line.standing.kind == StandingKind::NoRecord)
            ++beside.noRecord;
        else
            watched.push_back({line.task->task, line.task->consequence, std::move(point)});
    }
    auto chances = outlook::chancesOf(watched, odds(machine), outlook::flagOf(ahead(machine)));
    chances.putOff = beside.putOff;
    chances.round = beside.round;
    chances.dueNow = beside.dueNow;
    chances.noRecord = beside.noRecord;
    return chances;
}

std::vector<upkeep::FollowUp> Book::followUps(MachineId machine) const {
    const auto rulesOf = [this, machine](const upkeep::Record& record) {
        std::vector<std::pair<std::string, upkeep::FollowUpRule>> rules;
        const upkeep::TaskVersion* version =
            record.version ? ledger().find<upkeep::TaskVersion>(*record.version) : nullptr;
        if (version != nullptr)
            for (const auto& rule : version->followUps)
                rules.emplace_back(version->name, rule);
        for (const base::Code& code : record.steps)
            if (const weekend::StepVersion* refitted = step(machine, code.code))
                for (const auto& rule : refitted->followUps)
                    rules.emplace_back(refitted->name, rule);
        return rules;
    };
    std::vector<const upkeep::FollowUpAnswer*> answers;
    for (const auto& answer : ledger().all<upkeep::FollowUpAnswer>())
        if (answer.machine == machine)
            answers.push_back(&answer);
    auto open = upkeep::openFollowUps(machine, parts_->records(machine).all, rulesOf, answers, atoms(machine),
                                      today());
    for (upkeep::FollowUp& recheck : upkeep::openDemands(recheckDemands(*this, machine), answers, today()))
        open.push_back(std::move(recheck));
    return open;
}

std::vector<OpenJoint> Book::handTight(MachineId machine) const {
    std::vector<OpenJoint> result;
    for (const auto& open : fastening::handTight(ledger().all<fastening::JointMark>(), today()))
        if (const auto* version = joint(open.joint); version != nullptr && version->machine == machine)
            result.push_back({version, open});
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
    const auto candidates = line->item ? records(*line->item) : records(line->machine, false);
    for (const upkeep::Record* record : candidates) {
        if (record->code != line->task->code)
            continue;
        for (const upkeep::Measured& measured : record->measured)
            if (measured.name == name && result.size() < most)
                result.emplace_back(record, &measured);
    }
    return result;
}

std::vector<weekend::Job> Book::pickedJobs(MachineId machine) const {
    std::vector<weekend::Job> jobs;
    for (const DueLine& line : due(machine)) {
        if (!line.picked)
            continue;
        weekend::Job job{.task = line.task->task,
                         .name = line.task->name,
                         .minutes = line.task->minutes,
                         .bodyState = line.task->bodyState,
                         .safety = upkeep::isSafety(line.task->consequence)};
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

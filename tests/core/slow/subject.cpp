// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/slow/subject.h"

#include <algorithm>
#include <map>

#include "tests/core/slow/concerns.h"
#include "tests/core/slow/meaning.h"

namespace wm::tale {

using calendar::Date;
using calendar::DayPart;
using calendar::Moment;
using upkeep::Record;
using upkeep::TaskVersion;

namespace {

struct Past {
    bool startedNew = false;
    Moment since{};
    Behind hours{};
};

Moment eveningOf(Date day) {
    return {day, DayPart::AfterRiding};
}

Moment longAgo() {
    return {Date{-20'000}, DayPart::BeforeRiding};
}

const TaskVersion& taskOf(const Tale& tale, const std::string& machine, const std::string& code) {
    const TaskId task = tale.tasks.at(machine + "/" + code);
    for (const TaskVersion& version : tale.ledger.all<TaskVersion>())
        if (version.task == task)
            return version;
    throw std::runtime_error("no task " + code);
}

Subject subjectOf(const PlacesThen& places, MachineId machine, const std::string& path, Moment then) {
    Subject subject{machine, std::nullopt, path, false};
    if (path.empty())
        return subject;
    const auto holds = places.holds(machine, path, then);
    subject.isEmpty = holds.isEmpty;
    subject.item = holds.deepest;
    return subject;
}

std::string wordsFor(const Tale& tale, const PlacesThen& places, const Subject& subject, Moment then) {
    if (subject.isEmpty)
        return "empty " + subject.path + " since " +
               places.emptySince(subject.machine, subject.path, then)->iso();
    return subject.item ? "item " + tale.nameOf(subject.item->value())
                        : "machine " + tale.nameOf(subject.machine.value());
}

template <class Card>
Past pastOf(const Card& card) {
    return {card.startedNew,
            {card.since, DayPart::BeforeRiding},
            {card.pastLow.count(), card.pastBest.count(),
             card.pastHigh ? std::optional(card.pastHigh->count()) : std::nullopt}};
}

Past pastOf(const Tale& tale, const Subject& subject) {
    return subject.item ? pastOf(*tale.ledger.find<items::Item>(*subject.item))
                        : pastOf(*tale.ledger.find<items::Machine>(subject.machine));
}

Behind behindOf(const slow::Tally& tally, upkeep::Counter counter) {
    const auto pieces = [](std::int64_t count) { return Behind{count, count, count}; };
    switch (counter) {
        case upkeep::Counter::Hours:
            return {tally.low, tally.best, tally.high};
        case upkeep::Counter::Outings:
            return pieces(tally.outings);
        case upkeep::Counter::Starts:
            return pieces(tally.starts);
        case upkeep::Counter::Washes:
            return pieces(tally.washes);
        case upkeep::Counter::MudDays:
            return pieces(tally.mudDays);
        case upkeep::Counter::Crashes:
            return pieces(tally.crashes);
        case upkeep::Counter::Metres:
        case upkeep::Counter::Days:
        case upkeep::Counter::Months:
            break;
    }
    throw std::runtime_error("a counter that no tale counts");
}

// What of a stated past may lie behind a job done before it ended: with its total as stated then the rest,
// without it anything up to the whole.
Behind restOf(const Past& past, const Record& last) {
    const Behind& hours = past.hours;
    const auto less = [](std::int64_t a, const std::optional<units::Hours>& b) {
        return std::max<std::int64_t>(a - (b ? b->count() : 0), 0);
    };
    if (!last.statedBest)
        return {0, std::nullopt, hours.high};
    return {less(hours.low, last.statedHigh), less(*hours.best, last.statedBest),
            hours.high ? std::optional(less(*hours.high, last.statedLow)) : std::nullopt};
}

Behind sum(Behind a, const Behind& b) {
    a.low += b.low;
    a.best = a.best && b.best ? std::optional(*a.best + *b.best) : std::nullopt;
    a.high = a.high && b.high ? std::optional(*a.high + *b.high) : std::nullopt;
    return a;
}

// Was the item there, on a machine that was known, when the job was done?
bool isMetered(const Tale& tale, const PlacesThen& places, const Subject& subject, Moment after) {
    if (after >= pastOf(tale, subject).since)
        return true;
    if (!subject.item || !places.wasThereBefore(*subject.item))
        return false;
    const auto root = places.rootOf(*subject.item, after);
    return root && after >= pastOf(tale, {root->machine, std::nullopt, {}, false}).since;
}

// What the meter is remembered to have shown, and what was ridden since it was read.
Behind sinceShown(const Tale& tale, const PlacesThen& places, const Subject& subject, const Record& last,
                  Date on) {
    const MeterThen& then = tale.meterThen.at(last.id);
    const auto* read = readUpTo(places.ledger(), last.machine, then.toldOn);
    const auto since = ran(places, subject, Moment{read->date, read->part}, eveningOf(on));
    const std::int64_t shown = read->shown.count();
    return sum({since.low, since.best, since.high},
               {std::max<std::int64_t>(shown - then.high, 0), std::nullopt,
                std::max<std::int64_t>(shown - then.low, 0)});
}

Behind behindLimit(const Tale& tale, const PlacesThen& places, const Subject& subject,
                   upkeep::Counter counter, const Record* last, Date on) {
    const Moment now = eveningOf(on);
    if (last == nullptr)
        return behindOf(ran(places, subject, longAgo(), now), counter);
    if (tale.meterThen.contains(last->id) && counter == upkeep::Counter::Hours)
        return sinceShown(tale, places, subject, *last, on);
    if (isMetered(tale, places, subject, whenDone(*last)))
        return behindOf(ran(places, subject, cutAfter(*last), now), counter);
    const Past past = pastOf(tale, subject);
    Moment from = past.since;
    from = {from.date.plusDays(-1), DayPart::AfterRiding};
    const auto here = behindOf(ran(places, subject, from, now), counter);
    if (counter != upkeep::Counter::Hours)
        return {here.low, std::nullopt, std::nullopt};
    return sum(here, restOf(past, *last));
}

// What was done before the tale began says nothing of a task of which nothing is known.
bool provesSomething(const Tale& tale, const Subject& subject, const Record* last, const Record& other) {
    return last != nullptr || pastOf(tale, subject).startedNew || other.kind != upkeep::RecordKind::Baseline;
}

// In whatever order the two were told of one part of a day: they were done together.
void countOthers(const Tale& tale, const PlacesThen& places, const Subject& subject, const TaskVersion& task,
                 const Record* last, Date on, Answer& answer) {
    if (task.nth <= 0)
        return;
    const Moment since = last == nullptr ? longAgo() : whenDone(*last);
    for (const Record* other : recordsOf(places, task.nthOf, subject, false, on))
        answer.others += whenDone(*other) > since && provesSomething(tale, subject, last, *other) ? 1 : 0;
    answer.due = answer.due || answer.others >= task.nth;
}

bool hasHappened(const slow::Tally& tally, upkeep::Happening happening) {
    switch (happening) {
        case upkeep::Happening::Wash:
            return tally.washes > 0;
        case upkeep::Happening::MudDay:
            return tally.mudDays > 0;
        case upkeep::Happening::Crash:
            return tally.crashes > 0;
        case upkeep::Happening::Job:
        case upkeep::Happening::PressureWash:
        case upkeep::Happening::BeforeRace:
            break;
    }
    throw std::runtime_error("a happening that no tale tells");
}

// The first day by whose evening it has happened, by halves: once it has, it has on every later day.
std::optional<Date> firstDayOf(const PlacesThen& places, const Subject& subject, upkeep::Happening happening,
                               const slow::Cut& since, Date on) {
    const auto hasBy = [&](Date day) {
        return hasHappened(ran(places, subject, since, eveningOf(day)), happening);
    };
    if (!hasBy(on))
        return std::nullopt;
    Date without = places.firstDay().plusDays(-1);
    Date with = on;
    while (with - without > 1) {
        const Date half = without.plusDays((with - without) / 2);
        (hasBy(half) ? with : without) = half;
    }
    return with;
}

void findTrigger(const Tale& tale, const PlacesThen& places, const Subject& subject, const TaskVersion& task,
                 const Record* last, Date on, Answer& answer) {
    std::optional<Date> first;
    const auto note = [&](std::optional<Date> day) {
        if (day && (!first || *day < *first))
            first = day;
    };
    for (const auto& trigger : task.triggers) {
        if (trigger.happening != upkeep::Happening::Job) {
            note(firstDayOf(places, subject, trigger.happening,
                            last == nullptr ? slow::Cut{longAgo()} : cutAfter(*last), on));
            continue;
        }
        for (const Record* other : recordsOf(places, trigger.code, subject, false, on))
            if ((last == nullptr || isDoneAfter(*other, *last)) &&
                provesSomething(tale, subject, last, *other))
                note(other->date);
    }
    if (first)
        answer.triggered = first->iso();
    answer.due = answer.due || first.has_value();
}

// A value that was written down, and what it is held against.
struct Value {
    const Record* record = nullptr;
    const upkeep::Measured* measured = nullptr;
    const upkeep::MeasurePoint* point = nullptr;
};

// Of each thing that is measured the value that was told last, of those that speak of this job.
std::map<std::string, Value> lastValues(const PlacesThen& places, const Subject& subject,
                                        const TaskVersion& task, Date on) {
    std::map<std::string, Value> found;
    for (const Record& record : places.ledger().all<Record>()) {
        if (record.date > on || !concerns(places, record, subject, true))
            continue;
        const TaskVersion& by = versionOf(places, record);
        for (const auto& measured : record.measured)
            for (const auto& point : by.measures) {
                if (point.name != measured.name || (point.job.empty() ? by.code : point.job) != task.code)
                    continue;
                Value& last = found[by.code + "/" + point.name];
                if (last.record == nullptr || slow::Cut{whenDone(*last.record), last.record->entered} <
                                                  slow::Cut{whenDone(record), record.entered})
                    last = {&record, &measured, &point};
            }
    }
    return found;
}

bool isReached(const Value& value) {
    const auto& least = value.point->least;
    const auto& most = value.point->most;
    return (least && value.measured->value <= *least) || (most && value.measured->value >= *most);
}

// A value stands until the job that it asks for was done after it. What was written down with that job is
// what it left.
void findValue(const Tale& tale, const PlacesThen& places, const Subject& subject, const TaskVersion& task,
               const Record* last, Date on, Answer& answer) {
    const Value* first = nullptr;
    const auto values = lastValues(places, subject, task, on);
    for (const auto& [what, value] : values) {
        const bool wasEnded = last != nullptr && last != value.record && !isDoneAfter(*value.record, *last);
        if (!isReached(value) || wasEnded)
            continue;
        if (first == nullptr || cutAfter(*value.record) < cutAfter(*first->record))
            first = &value;
    }
    if (first == nullptr)
        return;
    answer.reached = first->measured->name + " " + first->measured->value.text() + " of " +
                     tale.nameOf(first->record->id.value());
    answer.due = true;
}

// The first position on a way that was emptied.
std::optional<std::string> emptiedOn(const PlacesThen& places, MachineId machine, const std::string& path,
                                     Moment then) {
    std::string way;
    for (const std::string& part : path.empty() ? std::vector<std::string>{} : partsOf(path)) {
        way += (way.empty() ? "" : "/") + part;
        if (places.holds(machine, way, then).isEmpty)
            return way;
    }
    return std::nullopt;
}

// With which position a joint is out: where it sits, or one that a step with it frees.
std::optional<std::string> outWith(const Tale& tale, const PlacesThen& places, MachineId machine,
                                   const base::Code& joint, Moment then) {
    const std::string& in = tale.jointIn.at(tale.nameOf(machine.value()) + "/" + joint.code);
    if (auto out = emptiedOn(places, machine, in, then))
        return out;
    for (const auto& step : tale.ledger.all<weekend::StepVersion>())
        if (step.machine == machine &&
            std::find(step.joints.begin(), step.joints.end(), joint) != step.joints.end())
            for (const auto& freed : step.frees)
                if (auto out = emptiedOn(places, machine, freed.code, then))
                    return out;
    return std::nullopt;
}

// What it waits for: its own position before that of a joint which it tightens.
std::string waitsFor(const Tale& tale, const PlacesThen& places, const TaskVersion& task, Moment then) {
    if (const auto own = emptiedOn(places, task.machine, task.position, then))
        return *own;
    for (const base::Code& joint : task.joints)
        if (const auto out = outWith(tale, places, task.machine, joint, then))
            return *out;
    return "no";
}

bool isExtraNext(const std::vector<const Record*>& completions, const TaskVersion& task) {
    std::int64_t since = 0;
    for (const Record* record : completions)
        since = record->extraDone ? 0 : since + 1;
    return task.everyNth > 0 && since + 1 >= task.everyNth;
}

}  // namespace

std::string slowMayRecord(const Tale& tale, const std::string& machine, const std::string& code, Date on) {
    const PlacesThen places(tale.asTold);
    const TaskVersion& task = taskOf(tale, machine, code);
    if (task.position.empty())
        return "yes";
    const Subject subject = subjectOf(places, task.machine, task.position, eveningOf(on));
    const auto item =
        subject.isEmpty ? onBench(places, task.machine, task.position, eveningOf(on)) : subject.item;
    if (item)
        return "yes, of " + tale.nameOf(item->value());
    return subject.isEmpty ? "no: nothing fitted there" : "yes";
}

Answer slowAnswer(const Tale& tale, const std::string& machine, const std::string& code, Date on) {
    const PlacesThen places(tale.asTold);
    const TaskVersion& task = taskOf(tale, machine, code);
    const Subject subject = subjectOf(places, task.machine, task.position, eveningOf(on));
    Answer answer;
    answer.subject = wordsFor(tale, places, subject, eveningOf(on));
    answer.waits = waitsFor(tale, places, task, eveningOf(on));
    if (subject.isEmpty)
        return answer;
    const auto completions = recordsOf(places, code, subject, true, on);
    const Record* last = completions.empty() ? nullptr : completions.back();
    answer.completions = static_cast<std::int64_t>(completions.size());
    answer.extra = isExtraNext(completions, task);
    answer.countsFrom = last != nullptr                    ? tale.nameOf(last->id.value())
                        : pastOf(tale, subject).startedNew ? "new"
                                                           : "nothing";
    if (!task.limits.empty() && answer.countsFrom != "nothing") {
        const auto& limit = task.limits.front();
        answer.inHours = limit.counter == upkeep::Counter::Hours;
        answer.behind = behindLimit(tale, places, subject, limit.counter, last, on);
        answer.due = std::max(answer.behind->low, answer.behind->best.value_or(0)) >= limit.every;
    }
    countOthers(tale, places, subject, task, last, on, answer);
    findTrigger(tale, places, subject, task, last, on, answer);
    findValue(tale, places, subject, task, last, on, answer);
    return answer;
}

}  // namespace wm::tale

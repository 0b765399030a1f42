// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <nlohmann/json.hpp>
#include <utility>

#include "app/by_name.h"
#include "app/open_garage.h"
#include "app/verb.h"
#include "core/book/evening.h"
#include "core/book/state.h"
#include "core/verbs/what_if.h"
#include "core/weekend/plan_words.h"
#include "core/weekend/step_words.h"
#include "ui/words/speech.h"
#include "ui/words/state_words.h"

namespace wm::app {

namespace {

using nlohmann::ordered_json;
using weekend::ActKind;

constexpr std::int64_t kLongestWindow = 10'000;

constexpr std::string_view actWord(ActKind kind) {
    switch (kind) {
        case ActKind::BreakLoose:
            return "break loose";
        case ActKind::Off:
            return "off";
        case ActKind::Job:
            return "job";
        case ActKind::On:
            return "on";
        case ActKind::SafeStop:
            return "safe stop";
        case ActKind::Run:
            return "run";
        case ActKind::Wait:
            return "wait";
        case ActKind::Crack:
            return "crack";
        case ActKind::Do:
            return "do";
        case ActKind::Torque:
            return "torque";
    }
    return "";
}

// A job by what it is called: a task of the machine, or one of its open snags.
struct Job {
    std::optional<TaskId> task;
    std::optional<SnagId> snag;
};

Answer<std::vector<Job>> findJobs(const book::Book& book, MachineId machine, const QStringList& texts) {
    std::vector<Job> jobs;
    for (const QString& text : texts)
        for (const QString& words : text.split(',', Qt::SkipEmptyParts)) {
            const auto task = findTask(book, machine, words.trimmed());
            if (task) {
                jobs.push_back({(*task)->task, std::nullopt});
                continue;
            }
            const auto snag = findSnag(book, machine, words.trimmed());
            if (!snag)
                return tl::unexpected(task.error());
            jobs.push_back({std::nullopt, (*snag)->id});
        }
    return jobs;
}

bool isPicked(const book::Book& book, MachineId machine, const Job& job) {
    for (const weekend::Job& picked : book.pickedJobs(machine))
        if (picked.task == job.task && picked.snag == job.snag)
            return true;
    return false;
}

// All picks of one call are one verb: undone together.
base::Result<picture::Change> choose(const verbs::VerbContext& context, MachineId machine,
                                     const std::vector<std::pair<Job, bool>>& jobs) {
    picture::Change all;
    std::size_t count = 0;
    for (const auto& [job, picked] : jobs) {
        auto change = verbs::pick(context, machine, job.task, job.snag, picked);
        if (!change)
            return change;
        all.text = std::move(change->text);
        all.rows.insert(all.rows.end(), change->rows.begin(), change->rows.end());
        ++count;
    }
    if (count > 1)
        all.text = base::stored(base::phrase("Undo", "chose %n job(s) for the weekend", nullptr, count));
    return all;
}

// What is to be written before the plan is made: found, tried, and nothing of it written yet.
struct Wanted {
    std::vector<std::pair<Job, bool>> jobs{};
    std::optional<units::Minutes> cool{};
};

Answer<void> findPicks(const Call& call, const book::Book& book, MachineId machine, Wanted& wanted) {
    for (const auto& [option, picked] : {std::pair("pick", true), std::pair("drop", false)}) {
        const auto found = findJobs(book, machine, call.values(option));
        if (!found)
            return tl::unexpected(found.error());
        for (const Job& job : *found)
            wanted.jobs.emplace_back(job, picked);
    }
    std::erase_if(wanted.jobs,
                  [&](const auto& each) { return isPicked(book, machine, each.first) == each.second; });
    if (wanted.jobs.empty())
        return {};  // all of it stands so already
    const auto seen = verbs::whatIf(
        book, [&](const verbs::VerbContext& context) { return choose(context, machine, wanted.jobs); },
        machine);
    if (!seen)
        return fail(seen.error());
    // Jobs that no order can hold are not put in; taking some out may be what mends it.
    if (call.has("pick"))
        for (const book::MachineWork& work : book::eveningOf(*seen->after, machine).machines)
            if (!work.plan)
                return fail(work.plan.error());
    return {};
}

Answer<void> findCooling(const Call& call, const book::Book& book, Wanted& wanted) {
    if (!call.has("cold-after"))
        return {};
    const auto cool = units::parseTimeOfDay("cool_minutes", call.text("cold-after"));
    if (!cool)
        return fail(cool.error());
    if (*cool != book.ledger().garage().cool)
        wanted.cool = *cool;
    return {};
}

Answer<void> write(Garage& garage, std::optional<MachineId> machine, const Wanted& wanted) {
    if (!wanted.jobs.empty())
        if (const auto change = garage.apply(
                [&](const verbs::VerbContext& context) { return choose(context, *machine, wanted.jobs); });
            !change)
            return tl::unexpected(change.error());
    if (wanted.cool)
        if (const auto change = garage.apply(
                [&](const verbs::VerbContext& context) { return verbs::setCooling(context, *wanted.cool); });
            !change)
            return tl::unexpected(change.error());
    return {};
}

ordered_json planJson(const book::Book& book, const book::MachineWork& work) {
    const auto* machine = book.ledger().find<items::Machine>(work.machine);
    auto jobs = ordered_json::array();
    for (const weekend::Job& job : work.jobs)
        jobs.push_back({{"name", job.name}, {"minutes", job.minutes.count()}, {"safety", job.safety}});
    auto acts = ordered_json::array();
    for (const weekend::Act& act : work.plan->acts)
        acts.push_back({{"kind", actWord(act.kind)},
                        {"text", act.text},
                        {"step", act.step.empty() ? ordered_json(nullptr) : ordered_json(act.step)},
                        {"job", act.job ? ordered_json(*act.job) : ordered_json(nullptr)},
                        {"starts", act.starts.count()},
                        {"minutes", act.minutes.count()}});
    auto open = ordered_json::array();
    for (const book::DueLine* line : work.alsoOpen)
        open.push_back(line->task->name);
    return {{"machine", machine != nullptr ? machine->name : ""},
            {"jobs", jobs},
            {"work_minutes", work.plan->work.count()},
            {"alone_minutes", work.plan->alone.count()},
            {"acts", acts},
            {"also_open", open}};
}

// A step is named by the state it leaves: what goes back on is called by its parts. In a condition nothing
// comes off: "ready: clean, cold, on the stand", and afterwards "off the stand".
bool isCondition(const weekend::Act& act) {
    return (act.kind == ActKind::Off || act.kind == ActKind::On) && !weekend::standingOf(act.text).empty();
}

QString kindText(const weekend::Act& act) {
    if (isCondition(act))
        return act.kind == ActKind::Off ? QString("ready") : QString("after");
    return fromUtf8(actWord(act.kind));
}

QString actText(const weekend::Act& act) {
    if (act.kind != ActKind::On)
        return ui::words(weekend::actPhrase(act));
    if (isCondition(act))
        return ui::words(weekend::refitPhrase(act.text));
    const std::string parts = weekend::partsOf(act.text);
    return fromUtf8(parts.empty() ? act.text : parts);
}

void printPlan(QTextStream& out, const book::Book& book, const book::MachineWork& work) {
    const auto* machine = book.ledger().find<items::Machine>(work.machine);
    out << fromUtf8(machine != nullptr ? machine->name : "") << ": " << work.jobs.size()
        << (work.jobs.size() == 1 ? " job, " : " jobs, ") << qlonglong{work.plan->work.count()}
        << " min (one by one " << qlonglong{work.plan->alone.count()} << ")\n";
    const book::State state = book::stateOf(book, work.machine);
    for (const book::Gap& gap : state.gaps)
        out << "  not fitted: " << ui::gapWords(book, gap) << '\n';
    if (!state.out.empty())
        out << "  " << ui::outWords(state.out) << '\n';
    for (const book::OpenJoint& open : state.handTight)
        out << "  hand-tight: " << fromUtf8(open.joint->name) << ", torque it first\n";
    for (const book::Doubt& doubt : state.doubts)
        out << "  in doubt: " << ui::inDoubtWords(book, doubt) << '\n';
    for (const weekend::Act& act : work.plan->acts) {
        out << "  +" << fromUtf8(units::timeOfDayText(act.starts)) << "  " << kindText(act).leftJustified(11)
            << "  " << actText(act);
        if (act.minutes.count() > 0)
            out << ", " << qlonglong{act.minutes.count()} << " min";
        out << '\n';
    }
    QStringList open;
    for (const book::DueLine* line : work.alsoOpen)
        open << fromUtf8(line->task->name);
    if (!open.isEmpty())
        out << "  open anyway: " << open.join(", ") << '\n';
}

ordered_json windowJson(const weekend::WorkWindow* window) {
    if (window == nullptr)
        return nullptr;
    return {{"date", window->date.iso()},
            {"from", units::timeOfDayText(window->startsAt)},
            {"to", units::timeOfDayText(window->endsAt)},
            {"hands", window->hands}};
}

void printLeft(QTextStream& out, const book::Evening& evening, const std::optional<units::Minutes>& left) {
    if (evening.window != nullptr)
        out << "Window " << fromUtf8(evening.window->date.iso()) << ' '
            << fromUtf8(units::timeOfDayText(evening.window->startsAt)) << " to "
            << fromUtf8(units::timeOfDayText(evening.window->endsAt)) << '\n';
    if (evening.elsewhere.count() > 0)
        out << "Picked on other machines as well: " << qlonglong{evening.elsewhere.count()} << " min\n";
    if (!left)
        return;
    const qlonglong minutes = left->count();
    out << (minutes >= 0 ? QString("%1 min left over\n").arg(minutes)
                         : QString("%1 min too long\n").arg(-minutes));
}

// The picked jobs that no plan holds, and why.
bool printWaiting(QTextStream& out, const book::Book& book, std::optional<MachineId> only) {
    bool isAny = false;
    for (const items::Machine* machine : book.machines())
        for (const book::DueLine& line : book.due(machine->id)) {
            if (!line.picked || !line.waitsFor || (only && machine->id != *only))
                continue;
            isAny = true;
            out << fromUtf8(machine->name) << ": " << fromUtf8(line.task->name)
                << " is picked, but waits: the " << fromUtf8(*line.waitsFor) << " is off\n";
        }
    return isAny;
}

Answer<void> report(const Call& call, const book::Book& book, std::optional<MachineId> only,
                    std::optional<units::Minutes> minutes) {
    const book::Evening evening = book::eveningOf(book, only);
    const auto left = minutes ? std::optional(*minutes - evening.work) : evening.left;
    auto machines = ordered_json::array();
    for (const book::MachineWork& work : evening.machines) {
        if (!work.plan)
            return fail(work.plan.error());
        if (call.has("json"))
            machines.push_back(planJson(book, work));
        else
            printPlan(call.console().out, book, work);
    }
    if (call.has("json")) {
        print(call.console(), {{"window", windowJson(evening.window)},
                               {"work_minutes", evening.work.count()},
                               {"other_machines_minutes", evening.elsewhere.count()},
                               {"left_minutes", left ? ordered_json(left->count()) : ordered_json(nullptr)},
                               {"machines", machines}});
        return {};
    }
    const bool waits = printWaiting(call.console().out, book, only);
    if (evening.machines.empty() && !waits)
        call.console().out << "No job is picked: choose some with --pick, by name or code.\n";
    if (!evening.machines.empty())
        printLeft(call.console().out, evening, left);
    return {};
}

Answer<void> runPlan(const Call& call) {
    const auto day = call.day("on");
    if (!day)
        return tl::unexpected(day.error());
    std::optional<units::Minutes> minutes;
    if (call.has("minutes")) {
        const auto count = call.count("minutes", kLongestWindow);
        if (!count)
            return tl::unexpected(count.error());
        minutes = units::Minutes{*count};
    }
    const bool chooses = call.has("pick") || call.has("drop");
    const bool writes = chooses || call.has("cold-after");
    auto garage = Garage::open(call, writes ? store::OpenFor::Writing : store::OpenFor::ReadingOnly);
    if (!garage)
        return tl::unexpected(garage.error());
    std::optional<MachineId> only;
    if (chooses || call.has("machine")) {
        const auto machine = findMachine(garage->book(), call.value("machine"));
        if (!machine)
            return tl::unexpected(machine.error());
        only = (*machine)->id;
    }
    Wanted wanted;
    if (chooses)
        if (auto found = findPicks(call, garage->book(), *only, wanted); !found)
            return found;
    if (auto found = findCooling(call, garage->book(), wanted); !found)
        return found;
    if (auto written = write(*garage, only, wanted); !written)
        return written;
    garage->lookOn(day->value_or(garage->today()));
    return report(call, garage->book(), only, minutes);
}

}  // namespace

VerbSpec planVerb() {
    return {
        "plan",
        "Say in which order the picked jobs are done, and how long it takes.",
        {{"FILE", "The file."}},
        {machineOption(), onOption("Plan as of this day, 2026-05-16; otherwise today."),
         QCommandLineOption("pick",
                            "Put these jobs into the weekend first: tasks or snags of the machine, with "
                            "commas. This is written to the file.",
                            "jobs"),
         QCommandLineOption("drop", "Take these jobs out of the weekend first. This is written to the file.",
                            "jobs"),
         QCommandLineOption("cold-after",
                            "After a run the engine is cold in so long, 4:00 if nothing was said. This is "
                            "written to the file.",
                            "h:mm"),
         QCommandLineOption("minutes", "Measure the work against this time instead of the next work window.",
                            "minutes"),
         jsonOption()},
        "  witnessmark plan garage.witnessmark\n"
        "  witnessmark plan garage.witnessmark --machine Heron --pick engine-oil,linkage-grease "
        "--minutes 180\n",
        runPlan};
}

}  // namespace wm::app

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// What was done in the garage.
#include <algorithm>

#include "core/book/joint_owners.h"
#include "core/exchange/demo_stage.h"
#include "core/weekend/plan.h"

namespace wm::exchange {

using base::Error;
using base::Fault;
using verbs::VerbContext;

namespace {

// "Engine oil 10W-40 1000": the last word is the amount.
std::vector<upkeep::Use> usesOf(const DemoStage& stage, DemoLine& line) {
    std::vector<upkeep::Use> uses;
    for (const std::string& part : line.parts("uses")) {
        const std::size_t blank = part.rfind(' ');
        const auto amount = line.taken(units::parseCount(
            "uses",
            blank == std::string::npos ? std::string_view{} : std::string_view(part).substr(blank + 1),
            1'000'000));
        if (amount)
            uses.push_back({.line = stage.shelfLine(line, part.substr(0, blank)), .amount = *amount});
    }
    return uses;
}

std::vector<upkeep::Use> kitOf(const upkeep::TaskVersion& task) {
    std::vector<upkeep::Use> uses;
    for (const upkeep::KitLine& kit : task.kit)
        if (kit.line && !kit.onlyIfNeeded)
            uses.push_back({.line = *kit.line, .amount = kit.amount});
    return uses;
}

std::vector<upkeep::Measured> measuredOf(DemoLine& line, const upkeep::TaskVersion& task) {
    std::vector<upkeep::Measured> measured;
    for (const auto& [name, value] : line.pairs("measured")) {
        const auto point = std::find_if(task.measures.begin(), task.measures.end(),
                                        [&n = name](const auto& each) { return each.name == n; });
        if (point == task.measures.end())
            line.fail(Error{Fault::Unknown, "measured", name, task.code});
        else if (const auto figure = line.taken(units::parseDecimal("measured", value)))
            measured.push_back({.name = name, .unit = point->unit, .value = *figure});
    }
    return measured;
}

struct Work {
    upkeep::TaskVersion task{};
    std::optional<SnagId> snag{};
    bool isFirst = true;
};

upkeep::Record recordOf(DemoStage& stage, DemoLine& line, const Work& work, MachineId machine) {
    upkeep::Record record{.machine = machine,
                          .snag = work.snag,
                          .kind = line.word("kind", upkeep::RecordKind::Done),
                          .date = line.day("day"),
                          .meter = line.hoursIf("meter"),
                          .by = stage.person(line, "by"),
                          .data = line.text("data"),
                          .note = line.text("note")};
    if (!work.snag)
        record.task = work.task.task;
    if (line.text("uses") == "kit")
        record.uses = kitOf(work.task);
    else if (work.isFirst)
        record.uses = usesOf(stage, line);
    if (work.isFirst) {
        record.minutes = line.minutesIf("minutes");
        record.measured = measuredOf(line, work.task);
    }
    return record;
}

// All that had to come off, unless the line says that nothing had.
std::vector<std::string> stepsOf(const book::Book& book, DemoLine& line, const Work& work) {
    if (line.text("steps") == "-" || line.word("kind", upkeep::RecordKind::Done) != upkeep::RecordKind::Done)
        return {};
    const auto known = book.steps(work.task.machine);
    std::vector<std::string> codes;
    for (const base::Code& step : work.task.steps)
        codes.push_back(step.code);
    const auto steps = line.taken(weekend::opening(known, codes));
    codes.clear();
    if (steps)
        for (const weekend::StepVersion* step : *steps)
            codes.push_back(step->code);
    return codes;
}

base::Result<picture::Change> record(const VerbContext& context, DemoLine& line, const Work& work,
                                     const upkeep::Record& base) {
    verbs::JobDraft draft;
    draft.record = base;
    const auto steps = stepsOf(context.book, line, work);
    if (line.fault())
        return tl::unexpected(*line.fault());
    for (const std::string& step : steps)
        draft.record.steps.push_back({step});
    draft.opensJoints = base.kind == upkeep::RecordKind::Done && !work.snag;
    const auto left = line.words("left_open");
    if (draft.opensJoints)
        for (const auto* joint : book::jointsToTorque(context.book, work.task, steps, upkeep::momentOf(base)))
            if (std::find(left.begin(), left.end(), joint->code) == left.end())
                draft.confirmed.push_back(joint->joint);
    return verbs::recordJob(context, std::move(draft));
}

}  // namespace

void sayJob(DemoStage& stage, DemoLine& line) {
    constexpr std::string_view kSnag = "snag: ";
    const MachineId machine = stage.machine(line, "machine");
    const std::string jobs = line.text("jobs");
    std::vector<Work> all;
    if (jobs.starts_with(kSnag))
        all.push_back({.snag = stage.openSnag(line, machine, std::string_view(jobs).substr(kSnag.size()))});
    else
        for (const std::string& code : line.words("jobs"))
            all.push_back({.task = stage.task(line, machine, code), .isFirst = all.empty()});
    if (all.empty())
        line.fail(Error{Fault::Empty, "jobs", {}, {}});
    for (const Work& work : all) {
        const upkeep::Record base = recordOf(stage, line, work, machine);
        stage.say(line, [&](const VerbContext& context) { return record(context, line, work, base); });
    }
}

}  // namespace wm::exchange

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// What is to be done in the garage, as its manuals say, and what was found.
#include <algorithm>
#include <set>

#include "core/exchange/amount.h"
#include "core/exchange/demo_stage.h"

namespace wm::exchange {

using base::Error;
using base::Fault;
using verbs::VerbContext;

namespace {

// What stands between the word and the next word of a limit: "6 h first 1.5 h allowance 1 h".
std::optional<std::string> cutOff(std::string& text, std::string_view word) {
    const std::size_t at = text.find(word);
    if (at == std::string::npos)
        return std::nullopt;
    std::string rest(base::trimmed(std::string_view(text).substr(at + word.size())));
    text = base::trimmed(std::string_view(text).substr(0, at));
    return rest;
}

std::optional<upkeep::Limit> readLimit(DemoLine& line, std::string text) {
    upkeep::Limit limit;
    if (text.ends_with(" hard")) {
        limit.hard = true;
        text.resize(text.size() - 5);
    }
    const auto allowance = cutOff(text, " allowance ");
    const auto first = cutOff(text, " first ");
    const auto every = line.taken(parseAmount(text));
    if (!every)
        return std::nullopt;
    limit.counter = every->counter;
    limit.every = every->count;
    const auto amountOf = [&](const std::optional<std::string>& words) -> std::int64_t {
        const auto amount = words ? line.taken(parseAmount(*words)) : std::nullopt;
        if (amount && amount->counter != limit.counter)
            line.fail(Error{Fault::WrongUnit, "limits", *words, std::string(base::nameOf(limit.counter))});
        return amount ? amount->count : 0;
    };
    if (first)
        limit.first = amountOf(first);
    limit.allowance = amountOf(allowance);
    return limit;
}

void saveTask(DemoStage& stage, DemoLine& line, upkeep::TaskVersion task) {
    task.validFrom = line.day("day");
    stage.say(line, [&](const VerbContext& context) { return verbs::saveTask(context, task); });
}

void fillText(DemoLine& line, std::string_view column, std::string& into) {
    if (line.has(column))
        into = line.text(column);
}

// Tasks to be done again under another heading are many; the demo's people answer them in one go.
std::vector<upkeep::FollowUpAnswer> answersOf(const book::Book& book, MachineId machine,
                                              const std::string& note) {
    std::vector<upkeep::FollowUpAnswer> answers;
    std::set<std::pair<std::int64_t, std::string>> once;
    for (const upkeep::FollowUp& followUp : book.followUps(machine))
        if (followUp.due && once.emplace(followUp.origin, followUp.rule.what).second)
            answers.push_back({.machine = machine,
                               .origin = followUp.origin,
                               .what = followUp.rule.what,
                               .date = book.today(),
                               .note = note});
    return answers;
}

}  // namespace

void sayJoint(DemoStage& stage, DemoLine& line) {
    fastening::JointVersion joint = stage.joint(line, stage.machine(line, "machine"), line.text("joint"));
    joint.validFrom = line.day("day");
    joint.torque = line.decimalIf("torque");
    joint.torqueHigh = line.decimalIf("to");
    joint.unit = line.word("unit", units::TorqueUnit::NewtonMetre);
    fillText(line, "thread", joint.thread);
    fillText(line, "stages", joint.stages);
    fillText(line, "condition", joint.condition);
    fillText(line, "locking", joint.locking);
    joint.source = line.text("source");
    joint.page = line.text("page");
    joint.confirmed = line.yes("confirmed");
    joint.typedBy = line.text("typed_by");
    joint.checkedBy = line.text("checked_by");
    stage.say(line, [&](const VerbContext& context) { return verbs::saveJoint(context, joint); });
}

void sayInterval(DemoStage& stage, DemoLine& line) {
    upkeep::TaskVersion task = stage.task(line, stage.machine(line, "machine"), line.text("task"));
    task.limits.clear();
    for (const std::string& part : line.parts("limits"))
        if (const auto limit = readLimit(line, part))
            task.limits.push_back(*limit);
    task.source = line.text("source");
    task.page = line.text("page");
    task.confirmed = line.yes("confirmed");
    saveTask(stage, line, std::move(task));
}

void sayLimit(DemoStage& stage, DemoLine& line) {
    upkeep::TaskVersion task = stage.task(line, stage.machine(line, "machine"), line.text("task"));
    const std::string name = line.text("measure");
    const auto point = std::find_if(task.measures.begin(), task.measures.end(),
                                    [&](const upkeep::MeasurePoint& each) { return each.name == name; });
    if (point == task.measures.end()) {
        line.fail(Error{Fault::Unknown, "measure", name, {}});
        return;
    }
    point->least = line.decimalIf("least");
    point->most = line.decimalIf("most");
    const std::string good = line.text("good");
    point->leastGood = good == "least" || good == "both";
    point->mostGood = good == "most" || good == "both";
    point->source = line.text("source");
    point->confirmed = line.yes("confirmed");
    saveTask(stage, line, std::move(task));
}

void sayCheck(DemoStage& stage, DemoLine& line) {
    const MachineId machine = stage.machine(line, "machine");
    std::vector<upkeep::FollowUpAnswer> answers;
    if (!line.fault())
        answers =
            stage.ask([&](const book::Book& book) { return answersOf(book, machine, line.text("note")); });
    for (const auto& answer : answers)
        stage.say(line, [&](const VerbContext& context) { return verbs::answerFollowUp(context, answer); });
}

void saySnag(DemoStage& stage, DemoLine& line) {
    upkeep::Snag snag{.machine = stage.machine(line, "machine"),
                      .item = stage.item(line, "item"),
                      .date = line.day("day"),
                      .what = line.text("what"),
                      .wish = line.word("wish", upkeep::SnagWish::DoIt),
                      .consequence = line.word("consequence", upkeep::Consequence::CostsMoney)};
    if (line.has("task"))
        snag.task = stage.task(line, snag.machine, line.text("task")).task;
    stage.say(line, [&](const VerbContext& context) { return verbs::addSnag(context, snag); });
}

void saySnagEnd(DemoStage& stage, DemoLine& line) {
    const auto snag = stage.openSnag(line, stage.machine(line, "machine"), line.text("snag"));
    const upkeep::SnagEnd end{
        .snag = snag.value_or(SnagId{}), .date = line.day("day"), .how = line.text("how")};
    stage.say(line, [&](const VerbContext& context) { return verbs::endSnag(context, end); });
}

void sayDeferral(DemoStage& stage, DemoLine& line) {
    upkeep::Deferral deferral{.machine = stage.machine(line, "machine"),
                              .date = line.day("day"),
                              .untilDate = line.dayIf("until"),
                              .untilHours = line.hoursIf("until_hours"),
                              .reason = line.text("reason"),
                              .by = stage.person(line, "by")};
    if (line.has("task"))
        deferral.task = stage.task(line, deferral.machine, line.text("task")).task;
    if (line.has("snag"))
        deferral.snag = stage.openSnag(line, deferral.machine, line.text("snag"));
    stage.say(line, [&](const VerbContext& context) { return verbs::defer(context, deferral); });
}

}  // namespace wm::exchange

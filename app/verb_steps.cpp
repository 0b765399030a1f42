// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <nlohmann/json.hpp>

#include "app/by_name.h"
#include "app/open_garage.h"
#include "app/verb.h"
#include "core/book/step_effect.h"
#include "ui/words/act_words.h"
#include "ui/words/error_words.h"

namespace wm::app {

namespace {

using nlohmann::ordered_json;

ordered_json codesOf(const std::vector<base::Code>& codes) {
    auto list = ordered_json::array();
    for (const base::Code& code : codes)
        list.push_back(code.code);
    return list;
}

ordered_json textOrNothing(const std::string& text) {
    return text.empty() ? ordered_json(nullptr) : ordered_json(text);
}

ordered_json deedJson(const book::Book& book, MachineId machine, const upkeep::ActRef& act) {
    return {{"act", base::nameOf(act.deed)}, {"code", act.code}, {"name", book::nameOf(book, machine, act)}};
}

ordered_json accessStepJson(const book::Book& book, const weekend::StepVersion& step) {
    auto needs = ordered_json::array();
    for (const weekend::Need& need : step.needs)
        if (need.applies)
            needs.push_back(need.code);
    auto doings = ordered_json::array();
    for (const upkeep::Doing& doing : step.doings)
        doings.push_back({{"code", doing.code},
                          {"what", doing.what},
                          {"minutes", doing.minutes.count()},
                          {"comes", base::nameOf(doing.comes)},
                          {"runs", doing.runs}});
    auto edges = ordered_json::array();
    for (const upkeep::Edge& edge : step.edges)
        edges.push_back({{"earlier", deedJson(book, step.machine, edge.earlier)},
                         {"later", deedJson(book, step.machine, edge.later)}});
    return {{"code", step.code},
            {"name", step.name},
            {"off_minutes", step.off.count()},
            {"on_minutes", step.on.count()},
            {"needs", std::move(needs)},
            {"loose", textOrNothing(step.breakLoose)},
            {"loose_before", codesOf(step.looseBefore)},
            {"joints", codesOf(step.joints)},
            {"frees", codesOf(step.frees)},
            {"doings", std::move(doings)},
            {"edges", std::move(edges)},
            {"needed_by", book::neededBy(book, step.machine, step.code)},
            {"source", textOrNothing(step.source)},
            {"confirmed", step.confirmed}};
}

QString actWords(const book::Book& book, MachineId machine, const upkeep::ActRef& act) {
    return ui::deedWords(act.deed) + ' ' + ui::quoted(fromUtf8(book::nameOf(book, machine, act)));
}

void printStep(QTextStream& out, const book::Book& book, const weekend::StepVersion& step) {
    out << fromUtf8(step.name) << ": " << qint64{step.off.count()} << " min off, " << qint64{step.on.count()}
        << " min on\n";
    for (const weekend::Need& need : step.needs)
        if (need.applies)
            out << "  after " << actWords(book, step.machine, {upkeep::Deed::Off, need.code}) << '\n';
    if (!step.breakLoose.empty())
        out << "  crack loose first: " << fromUtf8(step.breakLoose) << '\n';
    for (const upkeep::Doing& doing : step.doings)
        out << "  " << fromUtf8(doing.what) << ": " << ui::comesWords(doing.comes) << '\n';
    for (const upkeep::Edge& edge : step.edges)
        out << "  " << actWords(book, step.machine, edge.earlier) << " before "
            << actWords(book, step.machine, edge.later) << '\n';
}

Answer<void> runSteps(const Call& call) {
    auto garage = Garage::open(call, store::OpenFor::ReadingOnly);
    if (!garage)
        return tl::unexpected(garage.error());
    const auto machine = findMachine(garage->book(), call.value("machine"));
    if (!machine)
        return tl::unexpected(machine.error());
    const auto steps = garage->book().steps((*machine)->id);
    if (call.has("json")) {
        auto list = ordered_json::array();
        for (const auto* step : steps)
            list.push_back(accessStepJson(garage->book(), *step));
        print(call.console(), list);
        return {};
    }
    if (steps.empty())
        return fail(Exit::Refused,
                    fromUtf8((*machine)->name) +
                        " has no access steps yet: add them on the page Weekend, or begin with a "
                        "starter schedule.");
    for (const auto* step : steps)
        printStep(call.console().out, garage->book(), *step);
    return {};
}

}  // namespace

VerbSpec stepsVerb() {
    return {"steps",
            "List what comes off to reach a job, and which act comes before which.",
            {{"FILE", "The file."}},
            {machineOption(), jsonOption()},
            "  witnessmark steps garage.witnessmark --machine Heron\n"
            "  witnessmark steps garage.witnessmark --machine Heron --json\n",
            runSteps};
}

}  // namespace wm::app

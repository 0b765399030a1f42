// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <array>
#include <nlohmann/json.hpp>

#include "app/by_name.h"
#include "app/find_starter.h"
#include "app/open_garage.h"
#include "app/verb.h"
#include "core/verbs/task_verbs.h"

namespace wm::app {

namespace {

using definitions::Difference;
using definitions::RenewalGroup;
using nlohmann::ordered_json;

struct GroupName {
    RenewalGroup group;
    const char* word;
    const char* heading;
};
constexpr std::array kGroups{GroupName{RenewalGroup::Order, "order", "order and joints"},
                             GroupName{RenewalGroup::NewTasks, "tasks", "new tasks"},
                             GroupName{RenewalGroup::Intervals, "intervals", "intervals"},
                             GroupName{RenewalGroup::Words, "words", "words, kits, cautions"}};

const GroupName& nameOf(RenewalGroup group) {
    return kGroups.at(static_cast<std::size_t>(group));
}

Answer<RenewalGroup> groupIn(const Call& call) {
    std::string known;
    for (const GroupName& each : kGroups) {
        if (call.value("take") == QLatin1String(each.word))
            return each.group;
        known += (known.empty() ? "" : ", ") + std::string(each.word);
    }
    return fail(base::Error{base::Fault::Unknown, "take", call.text("take"), known});
}

constexpr const char* kindWord(Difference::Kind kind) {
    switch (kind) {
        case Difference::Kind::Step:
            return "access step";
        case Difference::Kind::Joint:
            return "joint";
        case Difference::Kind::Task:
            break;
    }
    return "task";
}

ordered_json differenceJson(const Difference& each) {
    return {{"group", nameOf(each.group).word},
            {"kind", kindWord(each.kind)},
            {"code", each.code},
            {"name", each.name},
            {"new", each.isNew},
            {"fields", each.fields},
            {"kept", each.kept}};
}

QString listed(std::vector<std::string> fields) {
    QStringList words;
    for (std::string& field : fields) {
        std::replace(field.begin(), field.end(), '_', ' ');
        words << fromUtf8(field);
    }
    return words.join(", ");
}

void printDifferences(QTextStream& out, const std::vector<Difference>& all) {
    for (const GroupName& group : kGroups) {
        const auto count = std::count_if(all.begin(), all.end(),
                                         [&](const auto& each) { return each.group == group.group; });
        if (count == 0)
            continue;
        out << "  " << group.heading << ", " << qlonglong{count} << " (--take " << group.word << "):\n";
        for (const Difference& each : all) {
            if (each.group != group.group)
                continue;
            out << "    " << fromUtf8(each.name) << ": "
                << (each.isNew ? QString("new ") + kindWord(each.kind) : listed(each.fields));
            if (!each.kept.empty())
                out << "; yours, stays: " << listed(each.kept);
            out << '\n';
        }
    }
}

Answer<void> takeOver(const Call& call, Garage& garage, MachineId machine,
                      const definitions::Schedule& schedule) {
    const auto group = groupIn(call);
    if (!group)
        return tl::unexpected(group.error());
    const auto change = garage.apply([&](const verbs::VerbContext& context) {
        return verbs::renewSchedule(context, machine, schedule, *group);
    });
    if (!change)
        return tl::unexpected(change.error());
    reportWritten(call, *change);
    return {};
}

Answer<void> runSchedule(const Call& call) {
    auto garage =
        Garage::open(call, call.has("take") ? store::OpenFor::Writing : store::OpenFor::ReadingOnly);
    if (!garage)
        return tl::unexpected(garage.error());
    const auto machine = findMachine(garage->book(), call.value("machine"));
    if (!machine)
        return tl::unexpected(machine.error());
    if ((*machine)->starter.empty())
        return fail(Exit::Refused,
                    fromUtf8((*machine)->name) +
                        " did not begin with a schedule of this program: its tasks are its own.");
    auto starter = findStarter(fromUtf8((*machine)->starter));
    if (!starter)
        return tl::unexpected(starter.error());
    const definitions::Schedule schedule{starter->steps, starter->joints, starter->tasks};
    if (call.has("take"))
        return takeOver(call, *garage, (*machine)->id, schedule);
    const auto all = definitions::differences(garage->book(), (*machine)->id, schedule);
    if (call.has("json")) {
        auto list = ordered_json::array();
        for (const Difference& each : all)
            list.push_back(differenceJson(each));
        print(call.console(),
              {{"machine", (*machine)->name}, {"starter", starter->name}, {"differences", list}});
        return {};
    }
    QTextStream& out = call.console().out;
    if (all.empty())
        out << fromUtf8((*machine)->name) << " has all that its schedule says, " << fromUtf8(starter->name)
            << ".\n";
    else
        out << "What the schedule " << fromUtf8(starter->name) << " says by now and "
            << fromUtf8((*machine)->name) << " does not:\n";
    printDifferences(out, all);
    return {};
}

}  // namespace

VerbSpec scheduleVerb() {
    return {"schedule",
            "Show what the schedule that a machine began with says by now, and take it over.",
            {{"FILE", "The file."}},
            {machineOption(),
             {"take",
              "Take a group over: order, tasks, intervals or words. What was changed on the machine, or "
              "confirmed against a manual, stays.",
              "group"},
             jsonOption()},
            "  witnessmark schedule garage.witnessmark --machine Heron\n"
            "  witnessmark schedule garage.witnessmark --machine Heron --take order\n",
            runSchedule};
}

}  // namespace wm::app

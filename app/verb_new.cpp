// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <QFile>
#include <optional>
#include <utility>

#include "app/demo_file.h"
#include "app/find_starter.h"
#include "app/open_garage.h"
#include "app/verb.h"

namespace wm::app {

namespace {

/// What stands in the new file from the start.
struct Beginnings {
    std::string garage;
    std::optional<items::Machine> machine;
    std::optional<exchange::Starter> starter;
};

Answer<items::Machine> readMachine(const Call& call, const std::optional<exchange::Starter>& starter) {
    items::Machine machine{};
    machine.name = call.has("machine") ? call.text("machine") : starter->name;
    machine.starter = starter ? starter->name : std::string{};
    const auto since = call.day("since");
    if (!since)
        return tl::unexpected(since.error());
    machine.since = since->value_or(call.console().today());
    machine.startedNew = call.has("started-new");
    if (machine.startedNew) {
        machine.pastHigh = units::Hours{};
        return machine;
    }
    const auto past = call.hours("past");
    if (!past)
        return tl::unexpected(past.error());
    machine.pastLow = past->value_or(units::Hours{});
    machine.pastBest = machine.pastLow;
    return machine;
}

Answer<Beginnings> readBeginnings(const Call& call) {
    Beginnings begin;
    begin.garage = call.text("garage");
    if (call.has("starter")) {
        auto starter = findStarter(call.value("starter"));
        if (!starter)
            return tl::unexpected(starter.error());
        begin.starter = std::move(*starter);
    }
    if (!call.has("machine") && !begin.starter)
        return begin;
    auto machine = readMachine(call, begin.starter);
    if (!machine)
        return tl::unexpected(machine.error());
    begin.machine = std::move(*machine);
    return begin;
}

Answer<void> write(Garage& garage, const Beginnings& begin) {
    if (!begin.garage.empty())
        if (const auto named = garage.apply([&](const verbs::VerbContext& context) {
                return verbs::nameGarage(context, begin.garage, std::nullopt);
            });
            !named)
            return tl::unexpected(named.error());
    if (!begin.machine)
        return {};
    if (const auto added = garage.apply(
            [&](const verbs::VerbContext& context) { return verbs::saveMachine(context, *begin.machine); });
        !added)
        return tl::unexpected(added.error());
    if (!begin.starter)
        return {};
    const MachineId machine = garage.book().machines().front()->id;
    const auto adopted = garage.apply([&](const verbs::VerbContext& context) {
        return verbs::adoptSchedule(context, machine, begin.starter->name, begin.starter->steps,
                                    begin.starter->joints, begin.starter->tasks);
    });
    if (!adopted)
        return tl::unexpected(adopted.error());
    return {};
}

Answer<void> makeDemo(const Call& call) {
    for (const char* option : {"starter", "machine", "since", "started-new", "past", "garage"})
        if (call.has(option))
            return fail(Exit::Usage, QString("--demo brings all of its garage: leave --%1 out.").arg(option));
    const auto garage = createDemo(call.word(0));
    if (!garage)
        return tl::unexpected(garage.error());
    call.console().out << "Made " << call.word(0) << " with the demo garage, "
                       << fromUtf8(garage->book().ledger().garage().name) << ", as of "
                       << fromUtf8(garage->today().iso()) << ".\n";
    return {};
}

Answer<void> runNew(const Call& call) {
    if (call.has("demo"))
        return makeDemo(call);
    const auto begin = readBeginnings(call);
    if (!begin)
        return tl::unexpected(begin.error());
    Answer<void> written;
    {
        auto garage = Garage::create(call);
        if (!garage)
            return tl::unexpected(garage.error());
        written = write(*garage, *begin);
    }
    if (!written) {
        store::File::discard(call.word(0));
        return written;
    }
    call.console().out << "Made " << call.word(0);
    if (begin->machine)
        call.console().out << " with the machine " << fromUtf8(begin->machine->name);
    if (begin->starter)
        call.console().out << " and " << begin->starter->tasks.size()
                           << " tasks of common practice, none confirmed against its manual";
    call.console().out << ".\n";
    return {};
}

}  // namespace

VerbSpec newVerb() {
    return {
        "new",
        "Make a new file.",
        {{"FILE", "The file; it must not be there yet."}},
        {QCommandLineOption("demo", "With an invented garage to try things out on; it stays on its own day."),
         QCommandLineOption("starter",
                            "With a machine and the jobs it usually needs: \"two-stroke motocross\", "
                            "\"four-stroke motocross\", \"four-stroke enduro\" or \"small-wheel youth\".",
                            "name"),
         QCommandLineOption("machine", "The name of the machine; otherwise that of the starter.", "name"),
         QCommandLineOption("since", "The first day with this machine, 2026-05-16; otherwise today.", "date"),
         QCommandLineOption("started-new", "The machine was new on that day."),
         QCommandLineOption("past", "Otherwise: the hours that it likely had behind it.", "hours"),
         QCommandLineOption("garage", "The name of the garage.", "name")},
        "  witnessmark new garage.witnessmark --starter \"four-stroke motocross\" --machine \"Heron 250\"\n"
        "  witnessmark new garage.witnessmark --demo\n",
        runNew};
}

}  // namespace wm::app

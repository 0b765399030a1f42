// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <array>
#include <nlohmann/json.hpp>

#include "app/garage.h"
#include "app/lookup.h"
#include "app/verb.h"
#include "core/ledger/drawer.h"
#include "ui/words/drawer_words.h"

namespace wm::app {

using nlohmann::ordered_json;

namespace {

ordered_json toolJson(const fastening::Choice& choice) {
    static constexpr std::array<const char*, 5> kStates{"in hand", "due by date", "due by cycles",
                                                        "never checked", "out of tolerance"};
    const fastening::ToolStanding& standing = choice.standing;
    ordered_json next = nullptr;
    if (standing.nextOn)
        next = standing.nextOn->iso();
    return {{"name", choice.tool->name},
            {"low", choice.tool->low.text()},
            {"high", choice.tool->high.text()},
            {"unit", std::string(base::nameOf(choice.tool->unit))},
            {"active", choice.tool->active},
            {"state", kStates.at(static_cast<std::size_t>(standing.state))},
            {"cycles", standing.cycles},
            {"cycles_allowed", standing.cyclesAllowed},
            {"next_check", next}};
}

ordered_json recallsJson(const ledger::Book& book) {
    auto list = ordered_json::array();
    for (const ledger::ToolRecall& recall : ledger::recallsOf(book)) {
        auto lines = ordered_json::array();
        for (const fastening::RecallLine& line : recall.recall.lines)
            if (const auto* joint = book.joint(line.tightened->joint))
                lines.push_back({{"machine", book.ledger().find<items::Machine>(joint->machine)->name},
                                 {"joint", joint->name},
                                 {"times", line.times},
                                 {"last", line.tightened->date.iso()},
                                 {"settled", ledger::isSettled(book, recall, line)}});
        list.push_back(
            {{"tool", recall.tool->name}, {"failed", recall.recall.failed->date.iso()}, {"joints", lines}});
    }
    return list;
}

ordered_json looseJson(const ledger::Book& book, std::optional<MachineId> machine) {
    auto list = ordered_json::array();
    for (const ledger::CameLoose& line : ledger::cameLoose(book, machine)) {
        ordered_json chance = nullptr;
        if (line.comparison)
            chance = line.comparison->chance;
        list.push_back({{"machine", book.ledger().find<items::Machine>(line.joint->machine)->name},
                        {"joint", line.joint->name},
                        {"checks", line.figures.checks},
                        {"moved", line.figures.moved},
                        {"hours", line.figures.ridden.count()},
                        {"chance", chance},
                        {"looser_than_its_kind", line.comparison && line.comparison->stands}});
    }
    return list;
}

void printTools(QTextStream& out, const ledger::Book& book) {
    const auto drawer = ledger::drawerOf(book);
    if (drawer.empty())
        out << "There is no torque tool in the drawer yet.\n";
    for (const fastening::Choice& choice : drawer)
        out << fromUtf8(choice.tool->name) << ", " << ui::rangeWords(*choice.tool) << ": "
            << (choice.tool->active ? ui::standingWords(choice.standing, book.today())
                                    : QString("out of the drawer"))
            << '\n';
}

void printRecalls(QTextStream& out, const ledger::Book& book) {
    for (const ledger::ToolRecall& recall : ledger::recallsOf(book)) {
        out << '\n' << ui::recallWords(recall, book.today()) << '\n';
        for (const fastening::RecallLine& line : recall.recall.lines)
            out << "  " << ui::recallLineWords(book, recall, line) << '\n';
        if (recall.recall.lines.empty())
            out << "  Nothing is on record as tightened with it in between.\n";
    }
}

void printLoose(QTextStream& out, const ledger::Book& book, std::optional<MachineId> machine) {
    for (const ledger::CameLoose& line : ledger::cameLoose(book, machine)) {
        if (line.figures.moved == 0)
            continue;
        out << "\n"
            << fromUtf8(line.joint->name) << ", "
            << fromUtf8(book.ledger().find<items::Machine>(line.joint->machine)->name) << ": "
            << ui::looseningWords(line.figures) << '\n';
        if (const QString statement = ui::comparisonWords(line); !statement.isEmpty())
            out << "  " << statement << '\n';
    }
}

Answer<void> run(const Call& call) {
    auto garage = Garage::open(call, store::OpenFor::ReadingOnly);
    if (!garage)
        return tl::unexpected(garage.error());
    const ledger::Book& book = garage->book();
    std::optional<MachineId> machine;
    if (call.has("machine")) {
        const auto found = findMachine(book, call.value("machine"));
        if (!found)
            return tl::unexpected(found.error());
        machine = (*found)->id;
    }
    if (call.has("json")) {
        auto tools = ordered_json::array();
        for (const fastening::Choice& choice : ledger::drawerOf(book))
            tools.push_back(toolJson(choice));
        print(call.console(),
              {{"tools", tools}, {"recalls", recallsJson(book)}, {"loosened", looseJson(book, machine)}});
        return {};
    }
    QTextStream& out = call.console().out;
    printTools(out, book);
    printRecalls(out, book);
    printLoose(out, book, machine);
    return {};
}

}  // namespace

VerbSpec drawerVerb() {
    return {"drawer",
            "Say how the torque tools stand, what a failed check put in doubt, and what came loose.",
            {{"FILE", "The file."}},
            {QCommandLineOption("machine", "What came loose on this machine alone.", "name"), jsonOption()},
            "  witnessmark drawer garage.witnessmark\n"
            "  witnessmark drawer garage.witnessmark --machine Heron --json\n",
            run};
}

}  // namespace wm::app

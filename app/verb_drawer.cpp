// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <array>
#include <nlohmann/json.hpp>

#include "app/by_name.h"
#include "app/open_garage.h"
#include "app/verb.h"
#include "core/book/drawer_of_book.h"
#include "core/units/unit_words.h"
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

ordered_json recallsJson(const book::Book& book) {
    auto list = ordered_json::array();
    for (const book::ToolRecall& recall : book::recallsOf(book)) {
        auto lines = ordered_json::array();
        for (const fastening::RecallLine& line : recall.recall.lines)
            if (const auto* joint = book.joint(line.tightened->joint)) {
                const auto doubt = book::stillDoubted(book, recall, line);
                const MachineId machine = doubt ? doubt->machine : joint->machine;
                lines.push_back({{"machine", book.ledger().find<items::Machine>(machine)->name},
                                 {"joint", joint->name},
                                 {"times", line.times},
                                 {"last", line.tightened->date.iso()},
                                 {"settled", !doubt}});
            }
        list.push_back(
            {{"tool", recall.tool->name}, {"failed", recall.recall.failed->date.iso()}, {"joints", lines}});
    }
    return list;
}

ordered_json looseJson(const book::Book& book, std::optional<MachineId> machine) {
    auto list = ordered_json::array();
    for (const book::CameLoose& line : book::cameLoose(book, machine)) {
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

void printTools(QTextStream& out, const book::Book& book) {
    const auto drawer = book::drawerOf(book);
    if (drawer.empty())
        out << "There is no torque tool in the drawer yet.\n";
    for (const fastening::Choice& choice : drawer)
        out << fromUtf8(choice.tool->name) << ", " << ui::rangeWords(*choice.tool) << ": "
            << (choice.tool->active ? ui::standingWords(choice.standing, book.today())
                                    : QString("out of the drawer"))
            << '\n';
}

void printRecalls(QTextStream& out, const book::Book& book) {
    for (const book::ToolRecall& recall : book::recallsOf(book)) {
        out << '\n' << ui::recallWords(recall, book.today()) << '\n';
        for (const fastening::RecallLine& line : recall.recall.lines)
            out << "  " << ui::recallLineWords(book, recall, line) << '\n';
        if (recall.recall.lines.empty())
            out << "  Nothing is on record as torqued with it in between.\n";
    }
}

void printLoose(QTextStream& out, const book::Book& book, std::optional<MachineId> machine) {
    for (const book::CameLoose& line : book::cameLoose(book, machine)) {
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

constexpr std::array<const char*, 3> kReaches{"serves", "edge", "outside"};

ordered_json forTorqueJson(const units::TypedTorqueRange& torque, units::TorqueUnit unit,
                           const std::vector<fastening::Choice>& choices) {
    auto tools = ordered_json::array();
    for (const fastening::Choice& choice : choices) {
        ordered_json tool = toolJson(choice);
        tool["reach"] = kReaches.at(static_cast<std::size_t>(choice.fit.reach));
        tool["share"] = choice.fit.share;
        tools.push_back(std::move(tool));
    }
    return {{"low", torque.low.text()},
            {"high", torque.high ? ordered_json(torque.high->text()) : ordered_json(nullptr)},
            {"unit", std::string(base::nameOf(unit))},
            {"tools", std::move(tools)}};
}

// Which tool of the drawer serves a torque best: that one first, then what would do as well.
Answer<void> sayForTorque(const Call& call, const book::Book& book) {
    const auto torque = units::parseTorqueRange("torque", call.text("torque"));
    if (!torque)
        return fail(torque.error());
    const auto unit = torque->unit.value_or(units::TorqueUnit::NewtonMetre);
    const auto drawer = book::drawerOf(book);
    const auto choices = fastening::toolsFor(fastening::aimOf(torque->low, torque->high), unit, drawer);
    if (call.has("json")) {
        print(call.console(), forTorqueJson(*torque, unit, choices));
        return {};
    }
    QTextStream& out = call.console().out;
    if (choices.empty() || choices.front().fit.reach == fastening::Reach::Outside)
        out << "No tool of the drawer reaches " << fromUtf8(call.text("torque")) << ".\n";
    for (const fastening::Choice& choice : choices)
        if (choice.fit.reach != fastening::Reach::Outside)
            out << fromUtf8(choice.tool->name) << ", " << ui::rangeWords(*choice.tool) << ": "
                << ui::fitWords(choice.fit) << "; " << ui::standingWords(choice.standing, book.today())
                << '\n';
    return {};
}

Answer<void> runDrawer(const Call& call) {
    auto garage = Garage::open(call, store::OpenFor::ReadingOnly);
    if (!garage)
        return tl::unexpected(garage.error());
    const book::Book& book = garage->book();
    std::optional<MachineId> machine;
    if (call.has("machine")) {
        const auto found = findMachine(book, call.value("machine"));
        if (!found)
            return tl::unexpected(found.error());
        machine = (*found)->id;
    }
    if (call.has("torque"))
        return sayForTorque(call, book);
    if (call.has("json")) {
        auto tools = ordered_json::array();
        for (const fastening::Choice& choice : book::drawerOf(book))
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
            {{"machine", "What came loose on this machine alone.", "name"},
             {"torque", "Which tool serves this torque best: 110, 18-22, \"25 ft lb\".", "torque"},
             jsonOption()},
            "  witnessmark drawer garage.witnessmark\n"
            "  witnessmark drawer garage.witnessmark --machine Heron --json\n"
            "  witnessmark drawer garage.witnessmark --torque \"25 ft lb\"\n",
            runDrawer};
}

}  // namespace wm::app

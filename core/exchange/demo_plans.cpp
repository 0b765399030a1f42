// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// The garage's shelf, and what lies ahead.
#include <algorithm>

#include "core/exchange/demo_stage.h"

namespace wm::exchange {

using base::Error;
using base::Fault;
using verbs::VerbContext;

namespace {

// The newest order of the line of which nothing has come in yet.
std::optional<StockOrderId> openOrder(const picture::Ledger& ledger, StockLineId line) {
    const auto& moves = ledger.all<stock::StockMove>();
    std::optional<StockOrderId> open;
    for (const auto& order : ledger.all<stock::StockOrder>())
        if (order.line == line && std::none_of(moves.begin(), moves.end(),
                                               [&](const auto& move) { return move.order == order.id; }))
            open = order.id;
    return open;
}

void buy(DemoStage& stage, DemoLine& line, StockLineId of) {
    const stock::StockMove move{.line = of,
                                .date = line.day("day"),
                                .amount = line.count("amount"),
                                .why = stock::StockWhy::Bought,
                                .order = openOrder(stage.ledger(), of),
                                .price = line.moneyIf("price"),
                                .note = line.text("note")};
    std::optional<stock::Lot> lot;
    if (line.has("container") || line.has("best_before"))
        lot = stock::Lot{
            .label = line.text("container"), .received = move.date, .bestBefore = line.dayIf("best_before")};
    stage.say(line, [&](const VerbContext& context) { return verbs::moveStock(context, move, lot); });
}

void open(DemoStage& stage, DemoLine& line, StockLineId of) {
    const auto id = stage.container(line, of, line.text("container"));
    if (!id)
        return;
    stock::Lot lot = *stage.ledger().find<stock::Lot>(*id);
    lot.opened = line.day("day");
    stage.say(line, [&](const VerbContext& context) { return verbs::saveLot(context, lot); });
}

}  // namespace

void sayShelfLine(DemoStage& stage, DemoLine& line) {
    const stock::StockLine card{.name = line.text("name"),
                                .partNumber = line.text("part"),
                                .supersedes = line.text("supersedes"),
                                .fits = line.text("fits"),
                                .unit = line.word("unit", stock::Unit::Piece),
                                .packAmount = line.count("pack"),
                                .packPrice = line.moneyIf("price"),
                                .leadDays = line.countIf("lead"),
                                .place = line.text("place"),
                                .keep = line.count("keep"),
                                .openedDays = line.countIf("opened_days"),
                                .note = line.text("note")};
    stage.say(line, [&](const VerbContext& context) { return verbs::saveStockLine(context, card); });
}

void sayKit(DemoStage& stage, DemoLine& line) {
    KitTie tie{line.text("machine"), line.text("what"), line.text("line")};
    static_cast<void>(stage.shelfLine(line, tie.line));
    stage.tie(std::move(tie));
}

void sayStock(DemoStage& stage, DemoLine& line) {
    const StockLineId of = stage.shelfLine(line, line.text("line"));
    const std::string what = line.text("what");
    const auto lot = line.has("container") && what != "bought"
                         ? stage.container(line, of, line.text("container"))
                         : std::nullopt;
    if (what == "bought") {
        buy(stage, line, of);
    } else if (what == "opened") {
        open(stage, line, of);
    } else if (what == "counted") {
        const std::int64_t counted = line.count("amount");
        stage.say(line, [&](const VerbContext& context) {
            return verbs::countStock(context, of, lot, counted, line.day("day"));
        });
    } else if (what == "lost") {
        const stock::StockMove move{.line = of,
                                    .lot = lot,
                                    .date = line.day("day"),
                                    .amount = line.count("amount"),
                                    .why = stock::StockWhy::Lost,
                                    .note = line.text("note")};
        stage.say(line,
                  [&](const VerbContext& context) { return verbs::moveStock(context, move, std::nullopt); });
    } else {
        line.fail(Error{Fault::Unknown, "what", what, "bought, opened, counted or lost"});
    }
}

void sayOrder(DemoStage& stage, DemoLine& line) {
    const stock::StockOrder order{.line = stage.shelfLine(line, line.text("line")),
                                  .date = line.day("day"),
                                  .amount = line.count("amount"),
                                  .expected = line.dayIf("expected"),
                                  .note = line.text("note")};
    stage.say(line, [&](const VerbContext& context) { return verbs::orderStock(context, order); });
}

void sayEvent(DemoStage& stage, DemoLine& line) {
    outlook::Event event{.name = line.text("name"),
                         .place = line.text("place"),
                         .kind = line.word("kind", outlook::EventKind::Race),
                         .first = line.day("first"),
                         .last = line.day("last"),
                         .note = line.text("note")};
    for (const auto& [machine, rider] : line.pairs("entries")) {
        const auto& people = stage.ledger().all<items::Person>();
        const auto person = std::find_if(people.begin(), people.end(),
                                         [&name = rider](const auto& each) { return each.name == name; });
        const auto id = stage.machineNamed(machine);
        if (!id || person == people.end()) {
            line.fail(Error{Fault::Unknown, "entries", id ? rider : machine, {}});
            return;
        }
        event.entries.push_back({*id, person->id});
    }
    stage.say(line, [&](const VerbContext& context) { return verbs::saveEvent(context, event); });
}

void sayWindow(DemoStage& stage, DemoLine& line) {
    const weekend::WorkWindow window{.date = line.day("date"),
                                     .startsAt = line.timeOfDay("from"),
                                     .endsAt = line.timeOfDay("to"),
                                     .hands = line.count("hands")};
    stage.say(line, [&](const VerbContext& context) { return verbs::saveWindow(context, window); });
}

void sayPick(DemoStage& stage, DemoLine& line) {
    const MachineId machine = stage.machine(line, "machine");
    const auto task = stage.task(line, machine, line.text("job"));
    stage.say(line, [&](const VerbContext& context) {
        return verbs::pick(context, machine, task.task, std::nullopt, true);
    });
}

void saySheet(DemoStage& stage, DemoLine& line) {
    weekend::IssuedSheet sheet{.machine = stage.machine(line, "machine"),
                               .date = line.day("day"),
                               .target = line.text("target"),
                               .note = line.text("note")};
    for (const std::string& code : line.words("jobs"))
        sheet.jobs.push_back({.task = stage.task(line, sheet.machine, code).task});
    stage.say(line, [&](const VerbContext& context) { return verbs::issueSheet(context, sheet); });
}

}  // namespace wm::exchange

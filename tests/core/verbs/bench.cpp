// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/verbs/bench.h"

namespace wm::verbs {

FurnishedBench::FurnishedBench() {
    const calendar::Date since = day("2026-01-10");
    must([&](const VerbContext& context) {
        return saveMachine(context, {.name = "Heron 250", .since = since, .startedNew = true});
    });
    heron = last<items::Machine>();
    must([](const VerbContext& context) { return savePerson(context, {.name = "Mara"}); });
    mara = last<items::Person>();
    const auto fit = [&](const char* name, const char* position) {
        must([&](const VerbContext& context) {
            return addItemFitted(
                context, {.name = name, .since = since, .startedNew = true},
                {.date = since, .machine = heron, .position = position, .told = items::Told::AsItWas});
        });
        return last<items::Item>();
    };
    engine = fit("engine A", "engine");
    wheel = fit("rear wheel", "rear wheel");
    must([&](const VerbContext& context) {
        return adoptSchedule(context, heron, "took over a schedule on Heron 250",
                             {{.code = "rear-wheel",
                               .name = "Rear wheel",
                               .off = units::Minutes{5},
                               .joints = {{"axle"}},
                               .frees = {{"rear wheel"}}}},
                             {{.code = "axle", .name = "rear axle nut", .kind = fastening::JointKind::Axle}},
                             {{.name = "Oil change",
                               .position = "engine",
                               .limits = {{.every = 600}},
                               .measures = {{.name = "metal on the magnet", .unit = "mm"}}},
                              {.name = "Brake pads",
                               .consequence = upkeep::Consequence::SafetyEvident,
                               .limits = {{.every = 1500}},
                               .steps = {{"rear-wheel"}}}});
    });
    oilChange = ledger().all<upkeep::TaskVersion>().at(0).task;
    pads = ledger().all<upkeep::TaskVersion>().at(1).task;
    axle = ledger().all<fastening::JointVersion>().at(0).joint;
    must([](const VerbContext& context) {
        return saveStockLine(
            context,
            {.name = "engine oil", .unit = stock::Unit::Millilitre, .packAmount = 1000, .openedDays = 180});
    });
    oil = last<stock::StockLine>();
    must([&](const VerbContext& context) {
        return moveStock(
            context, {.line = oil, .date = day("2026-02-01"), .amount = 1000, .why = stock::StockWhy::Bought},
            stock::Lot{.label = "A"});
    });
    bottle = last<stock::Lot>();
}

TaskId FurnishedBench::saveWheelBearings() {
    upkeep::TaskVersion bearings;
    bearings.machine = heron;
    bearings.validFrom = day("2026-01-10");
    bearings.name = "New wheel bearings";
    bearings.position = "rear wheel";
    bearings.limits = {{.every = 2000}};
    bearings.renews = true;
    must(saying(saveTask, bearings));
    return ledger().all<upkeep::TaskVersion>().back().task;
}

}  // namespace wm::verbs

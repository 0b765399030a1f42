// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/ui/garage.h"

#include <gtest/gtest.h>

#include <QFile>
#include <optional>
#include <utility>

#include "core/exchange/demo.h"
#include "core/exchange/starter.h"
#include "tests/memo.h"
#include "tests/repository.h"

namespace wm::ui {

namespace {

using units::Hours;

exchange::Starter starterNamed(const std::string& name) {
    QFile file(QString::fromStdString(test::repositoryPath("resources/starters/%1.json"))
                   .arg(QString::fromStdString(name)));
    EXPECT_TRUE(file.open(QIODevice::ReadOnly)) << name;
    auto starter = exchange::readStarter(file.readAll().toStdString());
    EXPECT_TRUE(starter.has_value()) << name;
    return starter ? *std::move(starter) : exchange::Starter{};
}

std::vector<std::string> codesOf(const std::vector<base::Code>& codes) {
    std::vector<std::string> words;
    for (const auto& code : codes)
        words.push_back(code.code);
    return words;
}

QByteArray contentOf(const QString& path) {
    QFile file(path);
    EXPECT_TRUE(file.open(QIODevice::ReadOnly)) << path.toStdString();
    return file.readAll();
}

exchange::DemoText demoText() {
    exchange::DemoText text;
    for (const auto& name : exchange::demoFiles())
        text.files.emplace(
            name, contentOf(QString::fromStdString(test::repositoryPath("demo-db/" + std::string(name))))
                      .toStdString());
    for (const char* starter : {"four-stroke-motocross", "two-stroke-motocross", "four-stroke-enduro"})
        text.starters.push_back(contentOf(QString::fromStdString(test::repositoryPath(
                                              "resources/starters/" + std::string(starter) + ".json")))
                                    .toStdString());
    return text;
}

// The file of the demo takes some thousand verbs to tell: once for all tests of a build.
test::Memo demoFile(const exchange::DemoText& text) {
    std::string all;
    for (const auto& [name, content] : text.files)
        all += name + content;
    for (const std::string& starter : text.starters)
        all += starter;
    return {"demo-in-window", all};
}

}  // namespace

calendar::Date day(const char* iso) {
    const auto date = calendar::parseDate("date", iso);
    EXPECT_TRUE(date.has_value()) << iso;
    return date.value_or(calendar::Date{});
}

Garage::Garage(Fill fill) {
    const QDateTime now(QDate(2026, 5, 7), QTime(18, 4));
    workbench_ = std::make_unique<Workbench>([now] { return now; });
    // Each garage is told once a process and copied for the tests that follow: telling one takes many verbs.
    static QTemporaryDir told;
    const QString before = told.filePath(QString::number(static_cast<int>(fill)));
    std::optional<test::Memo> kept;
    if (fill == Fill::Demo && !QFile::exists(before)) {
        kept.emplace(demoFile(demoText()));
        QFile file(before);
        if (const auto content = kept->text(); content && file.open(QIODevice::WriteOnly))
            file.write(QByteArray::fromStdString(*content));
    }
    if (QFile::copy(before, path())) {
        EXPECT_EQ(workbench_->open(path()).outcome, store::OpenOutcome::Opened);
        return;
    }
    EXPECT_EQ(workbench_->create(path()).outcome, store::OpenOutcome::Opened);
    tell(fill);
    EXPECT_TRUE(QFile::copy(path(), before));
    if (kept)
        kept->keep(contentOf(before).toStdString());
}

void Garage::tell(Fill fill) {
    if (fill == Fill::Demo)
        fillDemo();
    if (fill == Fill::OneMachine || fill == Fill::Season)
        addMachine("Heron 250", "four-stroke-motocross", Hours{1200});
    if (fill == Fill::Season)
        fillSeason();
}

void Garage::say(const store::Verb& verb) {
    const auto written = workbench_->attempt(verb);
    EXPECT_TRUE(written.has_value()) << static_cast<int>(written.error().error.fault) << " at "
                                     << written.error().error.field << ", given "
                                     << written.error().error.given << written.error().detail.toStdString();
}

MachineId Garage::machine(const std::string& name) const {
    for (const auto* machine : book().machines())
        if (machine->name == name)
            return machine->id;
    ADD_FAILURE() << "no machine " << name;
    return {};
}

TaskId Garage::task(const std::string& machineName, const std::string& code) const {
    for (const auto* task : book().tasks(machine(machineName)))
        if (task->code == code)
            return task->task;
    ADD_FAILURE() << "no task " << code;
    return {};
}

void Garage::addMachine(const std::string& name, const std::string& starter, Hours past) {
    items::Machine card;
    card.name = name;
    card.maker = name.substr(0, name.find(' '));
    card.since = day("2026-01-10");
    card.pastLow = past;
    card.pastBest = past;
    card.pastHigh = past;
    say([card](const verbs::VerbContext& context) { return verbs::saveMachine(context, card); });
    const auto id = machine(name);
    usage::HourReading reading;
    reading.machine = id;
    reading.date = card.since;
    reading.part = calendar::DayPart::BeforeRiding;
    reading.shown = past;
    say([reading](const verbs::VerbContext& context) { return verbs::logReading(context, reading); });
    const auto schedule = starterNamed(starter);
    say([id, schedule](const verbs::VerbContext& context) {
        return verbs::adoptSchedule(context, id, "take over the schedule", schedule.steps, schedule.joints,
                                    schedule.tasks);
    });
}

void Garage::ride(const std::string& name, const char* date, int hundredths, usage::OutingKind kind,
                  usage::Ground ground, bool washed) {
    verbs::OutingDraft draft;
    draft.outing.machine = machine(name);
    draft.outing.date = day(date);
    draft.outing.hours = Hours{hundredths};
    draft.outing.kind = kind;
    draft.outing.starts = kind == usage::OutingKind::Race ? 3 : 0;
    draft.outing.ground = ground;
    draft.washed = washed;
    draft.pressureWashed = washed && ground == usage::Ground::Mud;
    draft.handTightSeen = true;
    say([draft](const verbs::VerbContext& context) { return verbs::logOuting(context, draft); });
}

void Garage::record(const std::string& name, const std::string& code, const char* date,
                    upkeep::RecordKind kind) {
    verbs::JobDraft draft;
    draft.record.machine = machine(name);
    draft.record.task = task(name, code);
    draft.record.date = day(date);
    draft.record.kind = kind;
    draft.opensJoints = kind == upkeep::RecordKind::Done;
    const auto* version = book().task(*draft.record.task);
    for (const auto* joint : book().jointsOpened(*version, codesOf(version->steps)))
        draft.confirmed.push_back(joint->joint);
    draft.confirmsOthers = true;
    say([draft](const verbs::VerbContext& context) { return verbs::recordJob(context, draft); });
}

void Garage::fillDemo() {
    const auto demo = exchange::buildDemo(demoText());
    ASSERT_TRUE(demo.has_value()) << demo.error().field;
    const auto rows = demo->rows();
    say([&rows](const verbs::VerbContext& context) { return verbs::adoptAll(context, rows); });
}

void Garage::fillSeason() {
    say([](const verbs::VerbContext& context) {
        return verbs::nameGarage(context, "Alder Yard", std::nullopt);
    });
    items::Person person;
    for (const char* name : {"Odile", "Bram"}) {
        person.name = name;
        say([person](const verbs::VerbContext& context) { return verbs::savePerson(context, person); });
    }
    addMachine("Sorrel 450", "four-stroke-motocross", Hours{9100});
    addMachine("Plover 125", "two-stroke-motocross", Hours{0});
    fillItems();
    fillShelf();
    rideTheSeason();
    fillEvents();
}

void Garage::rideTheSeason() {
    using enum usage::OutingKind;
    using enum usage::Ground;
    for (const char* code :
         {"engine-oil", "fork-oil", "linkage-grease", "rear-pads", "front-pads", "valve-clearance",
          "chain-kit", "rear-tyre", "swingarm-grease", "steering-check", "spark-plug", "front-tyre"}) {
        record("Heron 250", code, "2026-01-20");
        record("Sorrel 450", code, "2026-02-02");
    }
    for (const char* code : {"gearbox-oil", "fork-oil", "reeds", "chain-kit"})
        record("Plover 125", code, "2026-02-10");
    const char* sundays[] = {"2026-02-15", "2026-03-01", "2026-03-15",
                             "2026-03-29", "2026-04-12", "2026-04-26"};
    int turn = 0;
    for (const char* sunday : sundays) {
        ride("Heron 250", sunday, 210 + 15 * turn, turn % 3 == 2 ? Race : Practice,
             turn % 2 == 0 ? Mud : Sand, true);
        ride("Sorrel 450", sunday, 250, turn % 2 == 1 ? Race : Practice, turn % 3 == 0 ? Mud : Hard,
             turn % 2 == 0);
        if (turn % 2 == 0)
            ride("Plover 125", sunday, 110, Practice, Dust, false);
        ++turn;
    }
    record("Sorrel 450", "engine-oil", "2026-04-14");
    record("Heron 250", "rear-tyre", "2026-03-20");
    verbs::JobDraft open;
    open.record.machine = machine("Sorrel 450");
    open.record.task = task("Sorrel 450", "swingarm-grease");
    open.record.date = day("2026-05-05");
    say([open](const verbs::VerbContext& context) { return verbs::recordJob(context, open); });
}

void Garage::fillShelf() {
    const std::tuple<const char*, upkeep::Unit, std::int64_t> lines[] = {
        {"engine oil 10W-40", upkeep::Unit::Millilitre, 3000},
        {"fork oil 5W", upkeep::Unit::Millilitre, 700},
        {"oil filter", upkeep::Unit::Piece, 2},
        {"rear pad pair", upkeep::Unit::Piece, 1},
        {"waterproof grease", upkeep::Unit::Gram, 400}};
    for (const auto& [name, unit, amount] : lines) {
        stock::StockLine line;
        line.name = name;
        line.unit = unit;
        line.leadDays = 3;
        say([line](const verbs::VerbContext& context) { return verbs::saveStockLine(context, line); });
        stock::StockMove move;
        move.line = book().ledger().all<stock::StockLine>().front().id;
        for (const auto& each : book().ledger().all<stock::StockLine>())
            if (each.name == name)
                move.line = each.id;
        move.date = day("2026-01-12");
        move.amount = amount;
        move.why = stock::StockWhy::Bought;
        say([move](const verbs::VerbContext& context) {
            return verbs::moveStock(context, move, std::nullopt);
        });
    }
}

void Garage::fillEvents() {
    const auto add = [this](const char* name, const char* first, const char* last,
                            std::vector<std::string> machines) {
        outlook::Event event;
        event.name = name;
        event.place = name;
        event.first = day(first);
        event.last = day(last);
        for (const auto& each : machines)
            event.entries.push_back({machine(each), std::nullopt});
        say([event](const verbs::VerbContext& context) { return verbs::saveEvent(context, event); });
    };
    add("Birch Hollow", "2026-05-16", "2026-05-16", {"Heron 250"});
    add("Tarn Ridge", "2026-05-24", "2026-05-24", {"Heron 250", "Sorrel 450"});
    add("Quarry Cup", "2026-06-13", "2026-06-14", {"Heron 250", "Sorrel 450"});
    upkeep::Snag snag;
    snag.machine = machine("Heron 250");
    snag.date = day("2026-04-26");
    snag.what = "left radiator guard bent";
    say([snag](const verbs::VerbContext& context) { return verbs::addSnag(context, snag); });
    snag.what = "fork seal weeps, right";
    snag.consequence = upkeep::Consequence::SafetyEvident;
    say([snag](const verbs::VerbContext& context) { return verbs::addSnag(context, snag); });
    upkeep::Deferral deferral;
    deferral.machine = snag.machine;
    for (const auto& open : book().snags(snag.machine))
        if (open.snag->what == snag.what)
            deferral.snag = open.snag->id;
    deferral.date = book().today();
    deferral.untilDate = day("2026-05-14");
    deferral.reason = "seals are in the post; wiped and watched";
    say([deferral](const verbs::VerbContext& context) { return verbs::defer(context, deferral); });
    const auto heron = machine("Heron 250");
    const auto linkage = task("Heron 250", "linkage-grease");
    say([heron, linkage](const verbs::VerbContext& context) {
        return verbs::pick(context, heron, linkage, std::nullopt, true);
    });
}

void Garage::fillItems() {
    const auto fit = [this](const std::string& on, const char* name, const char* kind, const char* position,
                            bool startedNew, int low, int best, int high) {
        items::Item item;
        item.name = name;
        item.kind = kind;
        item.since = day("2026-01-10");
        item.startedNew = startedNew;
        item.pastLow = Hours{low};
        item.pastBest = Hours{best};
        item.pastHigh = Hours{high};
        items::Move move;
        move.told = items::Told::AsItWas;
        move.date = day("2026-01-10");
        move.part = calendar::DayPart::BeforeRiding;
        move.position = position;
        const std::string path = position;
        const auto slash = path.rfind('/');
        if (slash == std::string::npos) {
            move.machine = machine(on);
        } else {
            move.parent =
                book().fittings().at(machine(on), path.substr(0, slash), calendar::Moment{book().today()});
            move.position = path.substr(slash + 1);
        }
        say([item, move](const verbs::VerbContext& context) {
            return verbs::addItemFitted(context, item, move);
        });
    };
    fit("Heron 250", "engine no. 1", "engine", "engine", false, 1200, 1200, 1200);
    fit("Heron 250", "piston B", "piston", "engine/piston", true, 0, 0, 0);
    fit("Heron 250", "fork set", "fork", "fork", false, 1200, 1200, 1200);
    fit("Heron 250", "race wheel, rear", "wheel", "rear wheel", false, 800, 1400, 2000);
    fit("Heron 250", "sand tyre", "tyre", "rear wheel/tyre", true, 0, 0, 0);
    fit("Heron 250", "chain 114", "chain", "chain", true, 0, 0, 0);
    fit("Sorrel 450", "engine of the Sorrel", "engine", "engine", false, 9100, 9100, 9100);
    fit("Sorrel 450", "shock, short", "shock", "shock", false, 4000, 6000, 9000);
}

}  // namespace wm::ui

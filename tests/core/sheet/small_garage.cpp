// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/sheet/small_garage.h"

namespace wm::sheet {

namespace {

using calendar::Date;
using units::Decimal;

Date day(int month, int dayOfMonth) {
    return *calendar::makeDate(2026, month, dayOfMonth);
}

class Rows {
  public:
    template <class R>
    void add(R row) {
        if constexpr (requires { row.entered; })
            row.entered = ++entered_;
        rows_.emplace_back(std::move(row));
    }
    std::vector<picture::Row> take() { return std::move(rows_); }

  private:
    std::vector<picture::Row> rows_;
    base::Entered entered_ = 0;
};

void addMachines(Rows& rows) {
    items::Machine heron;
    heron.id = kHeron;
    heron.name = "Heron 250";
    heron.since = day(1, 1);
    heron.startedNew = true;
    rows.add(heron);
    items::Machine plover = heron;
    plover.id = kPlover;
    plover.name = "Plover 125";
    rows.add(plover);
    items::Item engine;
    engine.id = ItemId{3};
    engine.name = "no. 2";
    engine.since = day(1, 1);
    engine.startedNew = true;
    rows.add(engine);
    items::Item wheel = engine;
    wheel.id = ItemId{4};
    wheel.name = "mud";
    rows.add(wheel);
    items::Item spare = engine;
    spare.id = ItemId{5};
    spare.name = "spare shock";
    rows.add(spare);
    items::Move fit;
    fit.date = day(1, 1);
    fit.machine = kHeron;
    fit.id = MoveId{6};
    fit.item = ItemId{3};
    fit.position = "engine";
    rows.add(fit);
    fit.id = MoveId{7};
    fit.item = ItemId{4};
    fit.position = "rear wheel";
    rows.add(fit);
}

void addUse(Rows& rows) {
    usage::HourReading reading;
    reading.id = ReadingId{8};
    reading.machine = kHeron;
    reading.date = day(1, 1);
    rows.add(reading);
    reading.id = ReadingId{9};
    reading.date = day(5, 9);
    reading.shown = units::Hours{6130};
    rows.add(reading);
    outlook::Event race;
    race.id = EventId{10};
    race.name = "Birch Hollow";
    race.first = race.last = day(5, 16);
    race.entries = {{kHeron, std::nullopt}};
    rows.add(race);
    weekend::WorkWindow window;
    window.id = WindowId{11};
    window.date = day(5, 15);
    window.startsAt = units::Minutes{18 * 60};
    window.endsAt = units::Minutes{20 * 60};
    rows.add(window);
}

weekend::StepVersion step(std::int64_t id, const char* code, const char* name, std::int64_t off,
                          std::int64_t on) {
    weekend::StepVersion version;
    version.id = StepVersionId{id};
    version.step = StepId{id + 100};
    version.machine = kHeron;
    version.validFrom = day(1, 1);
    version.code = code;
    version.name = name;
    version.off = units::Minutes{off};
    version.on = units::Minutes{on};
    return version;
}

void addSteps(Rows& rows) {
    rows.add(step(50, "stand", "Clean, on the stand", 3, 2));
    auto wheel = step(51, "rear-wheel-out", "Rear wheel out", 4, 7);
    wheel.needs = {{"stand"}};
    wheel.breakLoose = "Rear axle nut, wheel on the ground";
    wheel.looseBefore = {{"stand"}};
    wheel.refit = "Caliper hanger in its rail";
    wheel.joints = {{"rear-axle-nut"}, {"chain-adjusters"}};
    wheel.followUps = {{"Rear brake pumped until it is hard", "", upkeep::When::AtOnce, 0},
                       {"Spokes", "", upkeep::When::NextOuting, 0}};
    wheel.cautions = {{upkeep::Hazard::Lifting}, {upkeep::Hazard::Wheels}};
    rows.add(wheel);
    auto linkage = step(52, "linkage-off", "Linkage off", 10, 14);
    linkage.needs = {{"rear-wheel-out"}};
    linkage.joints = {{"link-bolt"}, {"gone-bolt"}};
    rows.add(linkage);
}

void addJoints(Rows& rows) {
    fastening::JointVersion axle;
    axle.id = JointVersionId{60};
    axle.joint = kAxleNut;
    axle.machine = kHeron;
    axle.validFrom = day(1, 1);
    axle.code = "rear-axle-nut";
    axle.name = "Rear axle nut";
    axle.kind = fastening::JointKind::Axle;
    axle.thread = "M20x1.5";
    axle.torque = Decimal{110, 0};
    axle.condition = "greased";
    axle.renew = "new cotter each time";
    axle.source = "service manual";
    axle.page = "2-31";
    axle.confirmed = true;
    rows.add(axle);
    fastening::JointVersion adjusters = axle;
    adjusters.id = JointVersionId{61};
    adjusters.joint = JointId{31};
    adjusters.code = "chain-adjusters";
    adjusters.name = "Chain adjusters";
    adjusters.count = 2;
    adjusters.torque = Decimal{150, 0};
    adjusters.torqueHigh = Decimal{177, 0};
    adjusters.unit = units::TorqueUnit::PoundForceInch;
    adjusters.renew = "";
    adjusters.confirmed = false;
    rows.add(adjusters);
    fastening::JointVersion link = axle;
    link.id = JointVersionId{62};
    link.joint = JointId{32};
    link.code = "link-bolt";
    link.name = "Linkage bolt";
    link.kind = fastening::JointKind::Linkage;
    link.torque.reset();
    link.renew = "";
    link.source = link.page = "";
    link.confirmed = false;
    rows.add(link);
    fastening::JointMark mark;
    mark.id = JointMarkId{63};
    mark.joint = JointId{32};
    mark.date = day(5, 9);
    rows.add(mark);
}

upkeep::TaskVersion task(TaskId id, const char* code, const char* name) {
    upkeep::TaskVersion version;
    version.id = TaskVersionId{id.value() + 50};
    version.task = id;
    version.machine = kHeron;
    version.validFrom = day(1, 1);
    version.code = code;
    version.name = name;
    version.minutes = units::Minutes{35};
    version.limits = {{upkeep::Counter::Hours, 1000}};
    return version;
}

void addTasks(Rows& rows) {
    auto tyre = task(kTyre, "rear-tyre", "Rear tyre");
    tyre.consequence = upkeep::Consequence::SafetyEvident;
    tyre.steps = {{"rear-wheel-out"}};
    tyre.joints = {{"rear-axle-nut"}};
    tyre.kit = {{"tyre", kTyreLine, 1}, {"grease", kGrease, 10, upkeep::Unit::Gram}};
    tyre.tools = "tyre levers, bead tool";
    rows.add(tyre);
    auto linkage = task(kLinkage, "linkage", "Linkage");
    linkage.steps = {{"linkage-off"}};
    linkage.kit = {{"linkage grease", kGrease, 25, upkeep::Unit::Gram},
                   {"bearing kit", std::nullopt, 1, upkeep::Unit::Piece, true},
                   {"rags", std::nullopt, 2}};
    linkage.tools = "Bead tool; press";
    linkage.howTo = "Every needle there.";
    linkage.bodyState = upkeep::BodyState::Cold;
    linkage.everyNth = 1;
    linkage.extra = "new seals";
    upkeep::MeasurePoint wear{"sleeve wear", "mm", std::nullopt, Decimal{10, 2}, "common practice", false};
    linkage.measures = {wear, {"pin wear", "mm"}};
    linkage.followUps = {{"Sag", "", upkeep::When::AfterHours, 200}};
    rows.add(linkage);
    upkeep::Record record;
    record.id = RecordId{80};
    record.machine = kHeron;
    record.task = kLinkage;
    record.version = TaskVersionId{kLinkage.value() + 50};
    record.code = "linkage";
    record.date = day(3, 12);
    record.meter = units::Hours{4890};
    record.measured = {{"sleeve wear", "mm", Decimal{4, 2}}};
    rows.add(record);
}

void addShelf(Rows& rows) {
    stock::StockLine grease;
    grease.id = kGrease;
    grease.name = "Waterproof grease";
    grease.unit = upkeep::Unit::Gram;
    grease.place = "drawer 3";
    rows.add(grease);
    stock::StockLine tyre;
    tyre.id = kTyreLine;
    tyre.name = "Rear tyre, intermediate";
    tyre.partNumber = "RT-18";
    tyre.place = "rack";
    rows.add(tyre);
    stock::StockMove bought;
    bought.id = StockMoveId{42};
    bought.line = kGrease;
    bought.date = day(2, 1);
    bought.amount = 20;
    bought.why = stock::StockWhy::Bought;
    rows.add(bought);
    bought.id = StockMoveId{43};
    bought.line = kTyreLine;
    bought.amount = 1;
    rows.add(bought);
}

void addRest(Rows& rows) {
    weekend::Pick pick;
    pick.id = PickId{90};
    pick.machine = kHeron;
    pick.task = kTyre;
    rows.add(pick);
    pick.id = PickId{91};
    pick.task = kLinkage;
    rows.add(pick);
    upkeep::Snag snag;
    snag.id = SnagId{92};
    snag.machine = kHeron;
    snag.date = day(4, 12);
    snag.what = "weeping fork seal, left";
    rows.add(snag);
    upkeep::Deferral deferral;
    deferral.id = DeferralId{93};
    deferral.machine = kHeron;
    deferral.snag = SnagId{92};
    deferral.date = day(4, 13);
    deferral.untilDate = day(5, 20);
    deferral.reason = "kit on order";
    rows.add(deferral);
    items::Setting setting;
    setting.id = SettingId{94};
    setting.machine = kHeron;
    setting.date = day(3, 1);
    setting.name = "fork compression";
    setting.value = "14 clicks";
    rows.add(setting);
    setting.id = SettingId{95};
    setting.date = day(5, 2);
    setting.value = "12 clicks";
    rows.add(setting);
    setting.id = SettingId{96};
    setting.item = ItemId{5};
    setting.name = "preload";
    rows.add(setting);
}

}  // namespace

Date smallToday() {
    return day(5, 14);
}

std::vector<picture::Row> smallGarage() {
    Rows rows;
    addMachines(rows);
    addUse(rows);
    addSteps(rows);
    addJoints(rows);
    addTasks(rows);
    addShelf(rows);
    addRest(rows);
    return rows.take();
}

book::Book bookOf(std::vector<picture::Row> rows) {
    return {std::make_shared<const picture::Ledger>(std::move(rows)), smallToday()};
}

}  // namespace wm::sheet

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/store/sample.h"

#include <sqlite3.h>

namespace wm::store::sample {

namespace {

using calendar::Date;
using calendar::DayPart;
using picture::Row;
using units::Decimal;
using units::Hours;
using units::Metres;
using units::Minutes;
using units::Money;

items::Machine machineCard() {
    items::Machine machine;
    machine.id = MachineId{kMachine};
    machine.name = "Number 27";
    machine.maker = "Brackwater";
    machine.model = "MX 250";
    machine.year = 2024;
    machine.starter = "two-stroke motocross";
    machine.since = day(1, 10);
    machine.pastLow = Hours{2000};
    machine.pastBest = Hours{2500};
    machine.pastHigh = Hours{4000};
    machine.startedNew = true;
    machine.meterCountsTransport = true;
    machine.goneOn = day(12, 1);
    machine.note = "bought used; <b>not</b> 'quoted' \"well\"; DROP TABLE wash;--";
    return machine;
}

void addCards(std::vector<Row>& rows) {
    rows.push_back(picture::Garage{GarageId{1}, "The lean-to", day(11, 25), Minutes{180}});
    rows.push_back(items::Person{PersonId{1}, "Ümit Ødegård 🏁"});
    rows.push_back(machineCard());
    rows.push_back(items::Item{ItemId{2}, "Wheel A", "wheel", "Brackwater", "WH-19", day(1, 10), false,
                               Hours{50}, Hours{100}, Hours{200}, "true to 0.5 mm"});
    rows.push_back(items::Item{ItemId{3}, "Hub", "hub", "", "", day(1, 10), true, {}, {}, {}, ""});
    outlook::Event event{EventId{4}, "Round 3", "Hollow Down", outlook::EventKind::Practice,
                         day(6, 6),  day(6, 7), true,          {},
                         "two days"};
    event.entries = {{MachineId{kMachine}, PersonId{1}}, {MachineId{kMachine}, std::nullopt}};
    rows.push_back(event);
    rows.push_back(weekend::WorkWindow{WindowId{5}, day(6, 5), Minutes{1080}, Minutes{1380}, 2, false});
    rows.push_back(stock::StockLine{StockLineId{6}, "Gear oil", "GO-1", "GO-0", "all",
                                    upkeep::Unit::Millilitre, 1000, Money{1290}, 4, "shelf 2", 500, 365,
                                    false, "10W"});
    rows.push_back(stock::Lot{LotId{7}, StockLineId{6}, "bottle 3", day(2, 1), day(3, 1), day(12, 31)});
}

upkeep::TaskVersion taskVersion() {
    upkeep::TaskVersion task;
    task.id = TaskVersionId{20};
    task.entered = 1;
    task.task = TaskId{21};
    task.machine = MachineId{kMachine};
    task.validFrom = day(1, 10);
    task.code = "gear-oil";
    task.name = "Change the gear oil";
    task.position = "engine/gearbox";
    task.consequence = upkeep::Consequence::HiddenWear;
    task.limits = {{upkeep::Counter::Hours, 1000, 200, 100, false},
                   {upkeep::Counter::MudDays, 3, {}, 0, true}};
    task.weights = {{usage::Ground::Mud, usage::Pace::Race, 1500}, {std::nullopt, std::nullopt, 900}};
    task.combine = upkeep::Combine::Last;
    task.countFrom = upkeep::CountFrom::FixedMarks;
    task.everyNth = 3;
    task.extra = "clean the magnet";
    task.nthOf = "clutch";
    task.nth = 2;
    task.triggers = {{upkeep::Happening::PressureWash, ""}, {upkeep::Happening::Job, "clutch"}};
    task.kit = {
        {"gear oil", StockLineId{6}, 800, upkeep::Unit::Millilitre, false, "service manual", "2-9", true},
        {"drain washer", std::nullopt, 1, upkeep::Unit::Piece, true}};
    task.measures = {{"plate", "mm", Decimal{250, 2}, Decimal{28, 1}, "service manual", true, "4-2",
                      "gear-oil-level", true, true},
                     {"play", "mm", std::nullopt, std::nullopt, "", false}};
    task.cautions = {{upkeep::Hazard::HotParts}, {upkeep::Hazard::UsedFluids}};
    task.steps = {{"skid-plate"}, {"tank"}};
    task.joints = {{"drain-plug"}, {"filler"}};
    task.followUps = {{"look for drips", "", upkeep::When::NextOuting, 0},
                      {"check the level", "gear-oil-level", upkeep::When::AfterHours, 200}};
    task.minutes = Minutes{25};
    task.tools = "8 mm";
    task.howTo = "warm engine,\nupright";
    task.bodyState = upkeep::BodyState::Warm;
    task.renews = true;
    task.felt = false;
    task.source = "common practice";
    task.page = "p. 3";
    task.confirmed = true;
    task.active = false;
    task.sendsOut = true;
    task.doings = {{"turn", "Turn it by hand", Minutes{1}, upkeep::Comes::After, false}};
    task.edges = {{{upkeep::Deed::Job, "gear-oil"}, {upkeep::Deed::On, "tank"}}};
    task.comesLast = true;
    task.shortName = "Gears";
    task.fromStarter = true;
    return task;
}

weekend::StepVersion stepVersion() {
    weekend::StepVersion step;
    step.id = StepVersionId{22};
    step.entered = 2;
    step.step = StepId{23};
    step.machine = MachineId{kMachine};
    step.validFrom = day(1, 10);
    step.code = "tank";
    step.name = "Tank off";
    step.off = Minutes{4};
    step.on = Minutes{6};
    step.needs = {{"seat", false, true}, {"shrouds", true, false}};
    step.breakLoose = "axle nut";
    step.looseBefore = {{"wheel"}, {"stand"}};
    step.refit = "hose first";
    step.joints = {{"tank-bolt"}, {"tap"}};
    step.followUps = {{"look for fuel", "", upkeep::When::AtOnce, 0},
                      {"again", "", upkeep::When::AfterDays, 1}};
    step.cautions = {{upkeep::Hazard::Fuel}, {upkeep::Hazard::Lifting}};
    step.leavesUnrideable = true;
    step.source = "common practice";
    step.confirmed = true;
    step.active = false;
    step.frees = {{"tank"}, {"tank/tap"}};
    step.doings = {{"drip", "Wait for the last drops", Minutes{2}, upkeep::Comes::Between, false},
                   {"run", "Run it", Minutes{5}, upkeep::Comes::After, true}};
    step.edges = {{{upkeep::Deed::Crack, "tank-bolt"}, {upkeep::Deed::Off, "seat"}},
                  {{upkeep::Deed::Do, "drip"}, {upkeep::Deed::Torque, "tap"}}};
    step.bodyState = upkeep::BodyState::Cold;
    step.fromStarter = true;
    return step;
}

fastening::JointVersion jointVersion() {
    fastening::JointVersion joint;
    joint.id = JointVersionId{24};
    joint.entered = 3;
    joint.joint = JointId{25};
    joint.machine = MachineId{kMachine};
    joint.validFrom = day(1, 10);
    joint.code = "drain-plug";
    joint.name = "Drain plug";
    joint.kind = fastening::JointKind::EngineMount;
    joint.thread = "M12x1.5";
    joint.count = 2;
    joint.torque = Decimal{2000, 2};
    joint.torqueHigh = Decimal{220, 1};
    joint.unit = units::TorqueUnit::PoundForceInch;
    joint.stages = "snug, 20";
    joint.condition = "dry";
    joint.locking = "none";
    joint.renew = "washer";
    joint.leftHand = true;
    joint.sequence = fastening::Sequence::EveryNth;
    joint.sequenceStep = 3;
    joint.sequenceNote = "from the valve";
    joint.source = "invented manual";
    joint.page = "2-31";
    joint.confirmed = true;
    joint.typedBy = "U";
    joint.checkedBy = "K";
    joint.active = false;
    joint.sharedFrom = 2023;
    joint.sharedTo = 2025;
    joint.position = "engine";
    joint.held = "hub in a holder";
    joint.fromStarter = true;
    return joint;
}

void addUse(std::vector<Row>& rows) {
    const MachineId machine{kMachine};
    rows.push_back(items::Move{MoveId{30},
                               4,
                               ItemId{2},
                               day(1, 11),
                               DayPart::BeforeRiding,
                               items::MoveKind::Fitted,
                               machine,
                               {},
                               "rear wheel",
                               "new bearings",
                               items::Told::AsItWas});
    rows.push_back(items::Move{MoveId{31},
                               5,
                               ItemId{3},
                               day(1, 11),
                               DayPart::Riding,
                               items::MoveKind::Fitted,
                               {},
                               ItemId{2},
                               "hub",
                               "",
                               items::Told::Work});
    rows.push_back(items::Setting{SettingId{32}, 6, machine, ItemId{2}, day(1, 12), "rear pressure",
                                  "0.85 bar", "sand"});
    rows.push_back(usage::HourReading{ReadingId{33}, 7, machine, day(1, 13), DayPart::BeforeRiding,
                                      Hours{6130}, usage::MeterEvent::RolledOver, Hours{99990}, Hours{100000},
                                      OutingId{35}, RecordId{42}, "dim"});
    rows.push_back(usage::DistanceReading{ReadingId{34}, 8, machine, day(1, 13), DayPart::Riding,
                                          Metres{1234567}, usage::MeterEvent::Replaced, Metres{99},
                                          Metres{1000000}, OutingId{35}, RecordId{42}, "new cable"});
    rows.push_back(usage::Outing{OutingId{35}, 9, machine, day(1, 14), PersonId{1}, EventId{4},
                                 usage::OutingKind::Race, Hours{137}, Metres{42000}, 3, usage::Ground::Mud,
                                 usage::Pace::Easy, "lost a boot in the mud"});
    rows.push_back(usage::Wash{WashId{36}, 10, machine, day(1, 14), true, OutingId{35}, "caked"});
    rows.push_back(usage::Crash{CrashId{37}, 11, machine, day(1, 14), OutingId{35}, "low side"});
}

upkeep::Record job() {
    upkeep::Record record;
    record.id = RecordId{42};
    record.entered = 14;
    record.machine = MachineId{kMachine};
    record.item = ItemId{2};
    record.task = TaskId{21};
    record.version = TaskVersionId{20};
    record.code = "gear-oil";
    record.snag = SnagId{40};
    record.kind = upkeep::RecordKind::Baseline;
    record.date = day(1, 16);
    record.part = DayPart::BeforeRiding;
    record.meter = Hours{6200};
    record.statedLow = Hours{8200};
    record.statedBest = Hours{8700};
    record.statedHigh = Hours{10200};
    record.by = PersonId{1};
    record.what = "Changed the gear oil";
    record.data = "service manual p. 2-31";
    record.minutes = Minutes{35};
    record.sheet = SheetId{41};
    record.uses = {{StockLineId{6}, LotId{7}, 800}, {StockLineId{6}, std::nullopt, 20}};
    record.measured = {{"plate", "mm", Decimal{270, 2}}, {"play", "mm", Decimal{-5, 1}}};
    record.steps = {{"tank"}, {"seat"}};
    record.extraDone = true;
    record.stated = {{upkeep::Counter::Washes, 2, 3, 5, day(1, 15)},
                     {upkeep::Counter::Hours, 900, std::nullopt, std::nullopt, day(1, 15)}};
    record.note = "smelt burnt";
    return record;
}

void addUpkeep(std::vector<Row>& rows) {
    const MachineId machine{kMachine};
    rows.push_back(upkeep::Snag{SnagId{40}, 12, machine, ItemId{2}, TaskId{21}, day(1, 15), "drip below",
                                upkeep::SnagWish::Watch, upkeep::Consequence::EndsRace});
    rows.push_back(weekend::IssuedSheet{SheetId{41},
                                        13,
                                        7,
                                        machine,
                                        day(1, 15),
                                        "Round 3",
                                        {{TaskId{21}, std::nullopt}, {std::nullopt, SnagId{40}}},
                                        "two copies"});
    rows.push_back(job());
    rows.push_back(upkeep::SnagEnd{SnagEndId{43}, 15, SnagId{40}, day(1, 16), RecordId{42}, "new washer"});
    rows.push_back(upkeep::Deferral{DeferralId{44},
                                    16,
                                    machine,
                                    TaskId{21},
                                    {},
                                    day(1, 17),
                                    day(2, 1),
                                    Hours{7000},
                                    "no oil",
                                    PersonId{1}});
    rows.push_back(upkeep::FollowUpAnswer{AnswerId{45}, 17, machine, 42, "look for drips", day(1, 18), false,
                                          RecordId{42}, "dry"});
    rows.push_back(fastening::JointMark{JointMarkId{46}, 18, JointId{25}, day(1, 16),
                                        fastening::MarkKind::FoundMoved, RecordId{42}, PersonId{1},
                                        Decimal{2010, 2}, units::TorqueUnit::KilogramForceCentimetre,
                                        "paint cracked", ToolId{8}, 2, 30, OutingId{35}, ItemId{3}});
    rows.push_back(
        stock::StockOrder{StockOrderId{47}, 19, StockLineId{6}, day(1, 19), 2000, day(1, 25), "by post"});
    rows.push_back(stock::StockMove{StockMoveId{48}, 20, StockLineId{6}, LotId{7}, day(1, 16), -800,
                                    stock::StockWhy::Used, RecordId{42}, StockOrderId{47}, Money{1032},
                                    "spilt some"});
    rows.push_back(items::Move{MoveId{52},
                               23,
                               ItemId{2},
                               day(1, 22),
                               DayPart::AfterRiding,
                               items::MoveKind::Retired,
                               {},
                               {},
                               "",
                               "cracked"});
    rows.push_back(
        upkeep::Deferral{DeferralId{53}, 24, machine, {}, SnagId{40}, day(1, 22), {}, {}, "no washer", {}});
    rows.push_back(stock::StockMove{
        StockMoveId{54}, 25, StockLineId{6}, {}, day(1, 23), 3, stock::StockWhy::Counted, {}, {}, {}, ""});
    rows.push_back(weekend::Pick{PickId{55}, machine, TaskId{21}, std::nullopt, true});
    rows.push_back(weekend::Pick{PickId{49}, machine, std::nullopt, SnagId{40}, false});
    rows.push_back(usage::Wash{WashId{50}, 21, machine, day(1, 20), false, std::nullopt, "entered twice"});
    rows.push_back(picture::Strike{StrikeId{51}, 22, 50, day(1, 21), "the same wash"});
}

void addDrawer(std::vector<Row>& rows) {
    fastening::Tool tool{ToolId{8}, "Long red", "1/2"};
    tool.type = fastening::ToolType::IIA;
    tool.low = Decimal{40, 0};
    tool.high = Decimal{2000, 1};
    tool.unit = units::TorqueUnit::PoundForceFoot;
    tool.resolution = Decimal{5, 1};
    tool.length = 465;
    tool.months = 6;
    tool.cycles = 2500;
    tool.active = false;
    tool.note = "dropped once";
    rows.push_back(tool);
    rows.push_back(items::Move{.id = MoveId{80},
                               .entered = 40,
                               .item = ItemId{3},
                               .date = day(1, 20),
                               .kind = items::MoveKind::Away,
                               .note = "Lane Wheels",
                               .told = items::Told::AsItWas,
                               .backOn = day(1, 30),
                               .record = RecordId{42}});
    fastening::Calibration calibration{CalibrationId{56}, 26, ToolId{8}, day(1, 24)};
    calibration.foundWithin = false;
    calibration.leftWithin = false;
    calibration.worst = Decimal{-75, 1};
    calibration.byWhom = "Tessel Metrology";
    calibration.months = 3;
    calibration.cycles = 1000;
    calibration.note = "spring tired";
    rows.push_back(calibration);
}

}  // namespace

Date day(int month, int dayOfMonth) {
    return calendar::makeDate(2026, month, dayOfMonth).value();
}

std::vector<Row> everyRow() {
    std::vector<Row> rows;
    addCards(rows);
    rows.push_back(taskVersion());
    rows.push_back(stepVersion());
    rows.push_back(jointVersion());
    addUse(rows);
    addUpkeep(rows);
    addDrawer(rows);
    return rows;
}

std::vector<Row> oneMachine() {
    stock::StockLine line;
    line.id = StockLineId{6};
    line.name = "Gear oil";
    return {machineCard(), line};
}

Verb writing(std::string text, std::vector<Row> rows) {
    return [text = std::move(text),
            rows = std::move(rows)](const verbs::VerbContext& context) -> base::Result<picture::Change> {
        picture::Change change{text, rows};
        base::Entered next = context.book.ledger().nextEntered();
        for (Row& row : change.rows)
            std::visit(
                [&next](auto& each) {
                    if constexpr (requires { each.entered; })
                        each.entered = next++;
                },
                row);
        return change;
    };
}

Verb wash(std::string note) {
    return [note = std::move(note)](const verbs::VerbContext& context) -> base::Result<picture::Change> {
        usage::Wash row;
        row.id = WashId{context.newId()};
        row.machine = MachineId{kMachine};
        row.date = day(5, 16);
        row.note = note;
        return writing("Wash: " + note, {row})(context);
    };
}

std::unique_ptr<File> fileWith(const QString& path, const std::vector<Row>& rows, const Options& options) {
    auto made = File::create(path, options);
    EXPECT_NE(made.file, nullptr) << made.report.detail.toStdString();
    if (made.file == nullptr)
        return nullptr;
    const auto written = made.file->apply(writing("Set up", rows), day(5, 16));
    EXPECT_TRUE(written.has_value()) << written.error().detail.toStdString();
    return std::move(made.file);
}

std::unique_ptr<File> opened(const QString& path, const Options& options) {
    auto answer = File::open(path, OpenFor::Writing, options);
    EXPECT_EQ(answer.report.outcome, OpenOutcome::Opened) << answer.report.detail.toStdString();
    return std::move(answer.file);
}

std::vector<std::string> washNotes(const File& file) {
    std::vector<std::string> notes;
    for (const usage::Wash& row : file.ledger()->all<usage::Wash>())
        notes.push_back(row.note);
    return notes;
}

void execute(const QString& path, const std::string& sql) {
    sqlite3* db = nullptr;
    ASSERT_EQ(sqlite3_open(path.toUtf8().constData(), &db), SQLITE_OK);
    char* error = nullptr;
    EXPECT_EQ(sqlite3_exec(db, sql.c_str(), nullptr, nullptr, &error), SQLITE_OK) << error;
    sqlite3_free(error);
    sqlite3_close(db);
}

std::string answer(const QString& path, const std::string& sql) {
    sqlite3* db = nullptr;
    EXPECT_EQ(sqlite3_open(path.toUtf8().constData(), &db), SQLITE_OK);
    std::string text;
    const auto take = [](void* into, int, char** values, char**) {
        *static_cast<std::string*>(into) += values[0] == nullptr ? "NULL" : values[0];
        return 0;
    };
    char* error = nullptr;
    EXPECT_EQ(sqlite3_exec(db, sql.c_str(), take, &text, &error), SQLITE_OK) << error;
    sqlite3_free(error);
    sqlite3_close(db);
    return text;
}

}  // namespace wm::store::sample

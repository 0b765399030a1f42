// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/ui/print/sample_sheet.h"

namespace wm::ui {

namespace {

using sheet::JobSheet;
using sheet::LineKind;
using sheet::MeasureLine;
using sheet::PullLine;
using sheet::SheetLine;
using sheet::TorqueLine;
using upkeep::Hazard;

SheetLine line(LineKind kind, const char* field, const char* clock, const char* text, const char* minutes) {
    SheetLine result;
    result.kind = kind;
    result.field = field;
    result.clock = clock;
    result.text = text;
    result.minutes = minutes;
    return result;
}

TorqueLine torque(const char* field, const char* joint, const char* figure, bool confirmed) {
    TorqueLine result;
    result.field = field;
    result.joint = joint;
    result.figure = {figure, "", *figure == '\0' ? "" : "service manual p. 2-31", confirmed};
    return result;
}

PullLine pull(const char* field, const char* what, const char* part, const char* amount, const char* place) {
    PullLine result;
    result.field = field;
    result.what = what;
    result.partNumber = part;
    result.amount = amount;
    result.place = place;
    result.onShelfList = *place != '\0';
    return result;
}

void addPull(JobSheet& sheet) {
    sheet.pull = {pull("P1", "Rear tyre, intermediate", "", "1", "rack"),
                  pull("P2", "Bearing kit, rear wheel", "HB-25-04", "1", "drawer 3"),
                  pull("P3", "Linkage bearing kit", "HL-25-11", "1", "drawer 3"),
                  pull("P4", "Fork oil, light", "", "850 ml", "oil shelf"),
                  pull("P5", "Threadlocker, medium", "", "1 ml", ""),
                  pull("P6", "Chain slider", "HS-25-02", "1", "drawer 5"),
                  pull("P7", "Rear axle nut: new cotter each time", "", "", "")};
    sheet.pull[3].enough = false;
    sheet.pull[3].shortBy = "short 150 ml";
    sheet.pull[5].onlyIfNeeded = true;
}

void addFront(JobSheet& sheet) {
    sheet.lines.push_back(line(LineKind::Off, "L14", "20:02", "Front wheel out", "4 min"));
    sheet.lines.push_back(line(LineKind::Off, "L15", "20:06", "Front caliper and fork guards off", "3 min"));
    sheet.lines.push_back(line(LineKind::BreakLoose, "L16", "20:09",
                               "Crack loose: Top pinch bolts slack, fork caps cracked while the lower clamp "
                               "still holds the leg",
                               ""));
    sheet.lines.push_back(line(LineKind::Off, "L17", "20:09", "Fork legs out", "6 min"));
    SheetLine oil = line(LineKind::Job, "L18", "20:15", "Fork oil, both legs", "60 min");
    oil.howTo = "Legs upright and empty overnight if there is time. Same air gap in both to 1 mm.";
    oil.quantities = {{.text = "fork oil, left leg 425 ml", .confirmed = true},
                      {.text = "fork oil, right leg 425 ml"}};
    oil.hazards = {Hazard::Spring};
    MeasureLine gap;
    gap.field = "M3";
    gap.name = "air gap";
    gap.unit = "mm";
    oil.measures = {gap};
    sheet.lines.push_back(oil);
    SheetLine legs = line(LineKind::On, "L19", "21:15", "Refit: Fork legs", "10 min");
    legs.howTo = "Both legs at the same height; lower clamp, then upper.";
    legs.hazards = {Hazard::Steering};
    legs.safety = true;
    TorqueLine clamp = torque("T7", "Bottom clamp pinch bolts", "20 to 25 N·m", true);
    clamp.count = 4;
    clamp.thread = "M8x1.25";
    clamp.condition = "threads clean and dry";
    clamp.sequence = fastening::Sequence::Listed;
    clamp.order = "turn about, in small steps, twice round";
    legs.torques = {clamp, torque("T8", "Top clamp pinch bolts", "", false)};
    sheet.lines.push_back(legs);
    SheetLine wheel = line(LineKind::On, "L20", "21:25", "Refit: Front wheel", "7 min");
    wheel.safety = true;
    wheel.hazards = {Hazard::Wheels, Hazard::Brakes};
    wheel.torques = {torque("T9", "Front axle nut", "", false)};
    sheet.lines.push_back(wheel);
    sheet.lines.push_back(line(LineKind::On, "L21", "21:32", "Off the stand", "2 min"));
    sheet.lines.push_back(
        line(LineKind::SafeStop, "", "21:34", "Safe to stop here: the machine is whole", ""));
}

SheetLine linkageJob() {
    SheetLine linkage =
        line(LineKind::Job, "L8", "19:37", "Linkage: clean, grease, look at every needle", "35 min");
    linkage.howTo =
        "Every needle there, sleeves without a groove. Grease that stands water. This time as well: new "
        "seals.";
    MeasureLine play;
    play.field = "M2";
    play.name = "sleeve wear";
    play.unit = "mm";
    play.limit = "at most 0.10 mm";
    play.last = "0.04 mm at 48.9 h, 12 Mar 2026";
    linkage.measures = {play};
    linkage.quantities = {{.text = "waterproof grease 25 g"}};
    return linkage;
}

SheetLine rearRefit() {
    SheetLine wheel = line(LineKind::On, "L12", "19:53", "Refit: Rear wheel, caliper hanger", "7 min");
    wheel.howTo = "Caliper hanger in its rail; adjusters alike.";
    wheel.hazards = {Hazard::Wheels};
    wheel.safety = true;
    TorqueLine nut = torque("T5", "Rear axle nut", "110 N·m", true);
    nut.thread = "M20x1.5";
    nut.condition = "axle greased, thread clean";
    nut.renew = "new cotter each time";
    nut.order =
        "chain slack and both adjusters first; wheel hard against the adjusters; nut; check slack again";
    TorqueLine adjusters = torque("T6", "Chain adjuster lock nuts", "177 lbf·in", false);
    adjusters.figure.converted = "20.0 N·m";
    adjusters.count = 2;
    wheel.torques = {nut, adjusters};
    return wheel;
}

void addRear(JobSheet& sheet) {
    sheet.lines.push_back(
        line(LineKind::BreakLoose, "L1", "18:00", "Crack loose: Rear axle nut, wheel on the ground", ""));
    sheet.lines.push_back(line(LineKind::BreakLoose, "L2", "18:00",
                               "Crack loose: Axle pinch bolts, then the axle nut, wheel on the ground", ""));
    sheet.lines.push_back(line(LineKind::Off, "L3", "18:00", "Clean, cold, on the stand, secured", "3 min"));
    sheet.lines.push_back(line(LineKind::Off, "L4", "18:03", "Rear wheel out, caliper hanger free", "4 min"));
    SheetLine tyre = line(LineKind::Job, "L5", "18:07", "Rear tyre", "35 min");
    tyre.safety = true;
    tyre.torques = {torque("T1", "Rim lock nut", "12 N·m", false)};
    sheet.lines.push_back(tyre);
    SheetLine bearings = line(LineKind::Job, "L6", "18:42", "Wheel bearings and seals, rear", "40 min");
    bearings.safety = true;
    MeasureLine runout;
    runout.field = "M1";
    runout.name = "axle runout";
    runout.unit = "mm";
    runout.limit = "at most 0.50 mm";
    runout.limitConfirmed = true;
    runout.last = "0.12 mm at 31.2 h, 2 Feb 2026";
    bearings.measures = {runout};
    sheet.lines.push_back(bearings);
    sheet.lines.push_back(line(LineKind::Off, "L7", "19:22", "Linkage off", "10 min"));
    sheet.lines.push_back(linkageJob());
    SheetLine link = line(LineKind::On, "L9", "19:39", "Refit: Linkage", "14 min");
    link.howTo = "Frame supported so that no pivot is loaded; bolts from the same side as before.";
    TorqueLine frame = torque("T2", "Linkage to frame", "79.5 N·m", true);
    frame.condition = "greased";
    TorqueLine head = torque("T4", "Cartridge base bolt", "8.5 N·m", true);
    head.leftHand = true;
    head.stages = "snug, 5, 8.5";
    TorqueLine cover = torque("T10", "Cover bolts", "10 N·m", true);
    cover.count = 6;
    cover.sequence = fastening::Sequence::CrissCross;
    cover.order = "criss-cross, from the middle out";
    link.torques = {frame, cover, torque("T3", "Linkage to swingarm", "79.5 N·m", true), head};
    sheet.lines.push_back(link);
    sheet.lines.push_back(rearRefit());
    sheet.lines.push_back(
        line(LineKind::SafeStop, "", "20:00",
             "You can stop here, on the stand only. Back on: Rear wheel, caliper hanger, Linkage. Cracked "
             "loose, not to be ridden or wheeled: Axle pinch bolts, then the axle nut, wheel on the ground.",
             ""));
}

}  // namespace

JobSheet sampleSheet() {
    JobSheet sheet;
    sheet.number = 14;
    sheet.machine = "Heron 250";
    sheet.configuration = "engine: no. 2 · front wheel: hard · rear wheel: mud · shock: spare";
    sheet.meter = "61.3 h";
    sheet.totalTime = "102.7 h";
    sheet.date = "Thu 14 May 2026";
    sheet.target = "Birch Hollow, Sat 16 May 2026 (2 days)";
    sheet.window = "Fri 15 May 2026 18:00 to 22:00, 1 pair of hands";
    sheet.workTime = "214 of 240 min";
    sheet.jobs = {"Rear tyre", "Wheel bearings and seals, rear",
                  "Linkage: clean, grease, look at every needle", "Fork oil, both legs"};
    sheet.cautions = {Hazard::Wheels, Hazard::Spring, Hazard::Steering, Hazard::Brakes, Hazard::FirstRide};
    addPull(sheet);
    sheet.tools = {"blind bearing puller",
                   "bead tool",
                   "fork cap wrench",
                   "torque wrench for 8.5 to 25 N·m",
                   "torque wrench for 79 to 110 N·m",
                   "service manual: 2 joints have no torque here yet"};
    addRear(sheet);
    addFront(sheet);
    sheet.settings = {{"fork compression", "12 clicks", "2 May 2026", "S1"},
                      {"rear shock: preload length", "246 mm", "12 Mar 2026", "S2"}};
    sheet.followUps = {
        {"Rear brake pumped until it is hard", "Rear wheel", "before it is ridden", true, "V1"},
        {"Chain slack", "Rear wheel", "before it is ridden", true, "V2"},
        {"Spokes, rear", "Rear wheel", "after the next outing", false, "V3"},
        {"Sag", "Linkage", "after 2.0 h", false, "V4"}};
    sheet.openSnags = {"weeping fork seal, left (12 Apr 2026), put off until 20 May 2026: kit on order"};
    sheet.handTight = {"Swingarm pivot nut (loosened 9 May 2026)"};
    sheet.writeBack = {{"date done", "", "W1"},
                       {"hour meter", "h", "W2"},
                       {"time it took", "min", "W3"},
                       {"done by", "", "W4"},
                       {"second person", "", "W5"},
                       {"parts or fluids other than listed", "", "W6"},
                       {"joints left hand-tight", "", "W7"},
                       {"snags found", "", "W8"}};
    sheet.anyUnconfirmed = true;
    return sheet;
}

}  // namespace wm::ui

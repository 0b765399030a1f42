// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/exchange/demo_stage.h"

// The torque tools of the demo, how they were found, and what was found at joints.

namespace wm::exchange {

using verbs::VerbContext;

void sayTool(DemoStage& stage, DemoLine& line) {
    fastening::Tool tool{.name = line.text("name"),
                         .drive = line.text("drive"),
                         .type = line.word("type", fastening::ToolType::Unstated),
                         .low = line.decimalIf("low").value_or(units::Decimal{}),
                         .high = line.decimalIf("high").value_or(units::Decimal{}),
                         .unit = line.word("unit", units::TorqueUnit::NewtonMetre),
                         .resolution = line.decimalIf("step"),
                         .length = line.countIf("length"),
                         .note = line.text("note")};
    stage.say(line, [&](const VerbContext& context) { return verbs::saveTool(context, tool); });
}

void sayCalibration(DemoStage& stage, DemoLine& line) {
    const fastening::Calibration calibration{.tool = stage.tool(line, "tool").value_or(ToolId{}),
                                             .date = line.day("day"),
                                             .foundWithin = line.yes("found_within"),
                                             .leftWithin = line.yes("left_within"),
                                             .worst = line.decimalIf("worst"),
                                             .byWhom = line.text("by_whom"),
                                             .note = line.text("note")};
    stage.say(line,
              [&](const VerbContext& context) { return verbs::recordCalibration(context, calibration); });
}

void sayMark(DemoStage& stage, DemoLine& line) {
    const fastening::JointMark mark{
        .joint = stage.joint(line, stage.machine(line, "machine"), line.text("joint")).joint,
        .date = line.day("day"),
        .kind = line.word("what", fastening::MarkKind::FoundFine),
        .by = stage.person(line, "by"),
        .torque = line.decimalIf("torque"),
        .note = line.text("note"),
        .tool = stage.tool(line, "tool"),
        .movedCount = line.countIf("count"),
        .movedDegrees = line.countIf("degrees")};
    stage.say(line, [&](const VerbContext& context) { return verbs::markJoints(context, {mark}); });
}

}  // namespace wm::exchange

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/weekend/step_fields.h"

#include <QKeySequence>

#include "ui/fields/work_fields.h"
#include "ui/words/tr.h"

namespace wm::ui {

namespace {

using enum InputKind;

GroupSpec theStep() {
    return {.title = tr("What comes off"),
            .fields = {{"name", tr("access step"), Words, 34},
                       {"off_minutes", tr("minutes off"), Figure, 6},
                       {"on_minutes", tr("minutes on"), Figure, 6},
                       {"body_state", tr("engine while it comes off"), Choice}}};
}

GroupSpec theNeeds() {
    return {.title = tr("Comes off before it"),
            .lists = {{.name = "needs",
                       .one = tr("access step"),
                       .columns = {{"code", tr("access step"), Search},
                                   {"only_some_models", tr("differs between models"), Tick},
                                   {.name = "applies",
                                    .label = tr("needed on this one"),
                                    .kind = Tick,
                                    .begins = kTicked}},
                       .isDoubted = true,
                       .isSentence = true,
                       .opens = tr("open this access step")}}};
}

GroupSpec theCrackingLoose() {
    return {.title = tr("Cracked loose before it comes off"),
            .folded = true,
            .lists = {{.name = "loose_before",
                       .title = tr("While these are still on"),
                       .one = tr("step that is still on"),
                       .columns = {{"code", tr("access step"), Search}},
                       .isDoubted = true,
                       .opens = tr("open this access step")}},
            .fields = {{"break_loose", tr("what, and how (axle nut, wheel on the ground)"), Words, 50}}};
}

GroupSpec theJoints() {
    return {
        .title = tr("Joints that it opens, positions that it frees"),
        .folded = true,
        .lists = {{.name = "joints",
                   .title = tr("Torqued as it goes back on, or where an order says so"),
                   .one = tr("joint"),
                   .columns = {{"code", tr("joint"), Search}},
                   .isDoubted = true},
                  {.name = "frees",
                   .title = tr("To take something off one of these, the step must be off (rear wheel/tyre)"),
                   .one = tr("position"),
                   .columns = {{"code", tr("position"), Suggested, 20}}}}};
}

GroupSpec theRefit() {
    return {.title = tr("When it goes back on"),
            .folded = true,
            .lists = {{.name = "follow_ups",
                       .title = tr("What it asks for afterwards"),
                       .one = tr("follow-up"),
                       .columns = {{"what", tr("what"), Words, 26},
                                   {"code", tr("which job"), Choice},
                                   {"due", tr("when"), Choice},
                                   {"amount", tr("how many"), Figure, 6}}}},
            .fields = {{"refit", tr("to be minded"), Lines, 50},
                       {"leaves_unrideable", tr("left off overnight, it is not ridden for longer"), Tick}}};
}

GroupSpec theCautions() {
    return {.title = tr("Cautions"),
            .folded = true,
            .lists = {
                {.name = "cautions", .one = tr("caution"), .columns = {{"hazard", tr("caution"), Choice}}}}};
}

GroupSpec theSource() {
    return {.title = tr("Where it comes from, in use"),
            .folded = true,
            .fields = {{"source", tr("source"), Suggested, 34},
                       {"confirmed", tr("confirmed against the manual"), Tick},
                       {"valid_from", tr("holds from"), Words, 12},
                       {"active", tr("in use"), Tick}}};
}

}  // namespace

SheetSpec stepSheet() {
    const QString oneMore = QKeySequence(Qt::ALT | Qt::Key_Insert).toString(QKeySequence::NativeText);
    return {.prefix = QStringLiteral("step"),
            .spoken = tr("the chosen access step"),
            .groups = {theStep(), theNeeds(), orderGroup(oneMore), theCrackingLoose(), theJoints(),
                       doingsGroup(), theRefit(), theCautions(), theSource()}};
}

}  // namespace wm::ui

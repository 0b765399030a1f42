// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/weekend/step_fields.h"

#include <QKeySequence>

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

GroupSpec theOrder() {
    return {.title = tr("Order of work"),
            .lists = {{.name = "edges",
                       .title = tr("What has to come before what, wherever a plan holds both"),
                       .one = tr("order"),
                       .columns = {{.name = "earlier",
                                    .label = tr("the earlier act"),
                                    .kind = Choice,
                                    .begins = QStringLiteral("torque")},
                                   {.name = "earlier_code",
                                    .label = tr("what is done first"),
                                    .kind = Search,
                                    .follows = "earlier"},
                                   {.name = "later",
                                    .label = tr("the later act"),
                                    .kind = Choice,
                                    .lead = tr("comes before"),
                                    .begins = QStringLiteral("off")},
                                   {.name = "later_code",
                                    .label = tr("what is done later"),
                                    .kind = Search,
                                    .follows = "later"}},
                       .isDoubted = true,
                       .isSentence = true,
                       .addKey = QKeySequence(Qt::ALT | Qt::Key_Insert).toString(QKeySequence::NativeText)}}};
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

GroupSpec theDoings() {
    return {
        .title = tr("Done besides"),
        .folded = true,
        .lists = {
            {.name = "doings",
             .title = tr("In a plan each stands once: what several steps ask for comes when all of "
                         "them allow it. Without a code of its own it gets one from its words."),
             .one = tr("doing"),
             .columns =
                 {{"what", tr("what (pump the brake until it is hard)"), Words, 38},
                  {"minutes", tr("minutes"), Figure, 6},
                  {.name = "comes", .label = tr("when"), .kind = Choice, .begins = QStringLiteral("after")},
                  {.name = "code", .label = tr("code"), .letters = 24, .below = true},
                  {.name = "runs", .label = tr("runs the engine"), .kind = Tick, .below = true}},
             .isDoubted = true}}};
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
    return {.prefix = QStringLiteral("step"),
            .spoken = tr("the chosen access step"),
            .groups = {theStep(), theNeeds(), theOrder(), theCrackingLoose(), theJoints(), theDoings(),
                       theRefit(), theCautions(), theSource()}};
}

}  // namespace wm::ui

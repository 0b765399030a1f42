// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/tasks/task_fields.h"

#include "ui/fields/work_fields.h"
#include "ui/words/tr.h"

namespace wm::ui {

namespace {

using enum InputKind;

GroupSpec theTask() {
    return {.title = tr("What"),
            .fields = {{"name", tr("task"), Words, 30},
                       {"short_name", tr("in narrow places"), Words, 18},
                       {"position", tr("about (engine/piston)"), Suggested, 20},
                       {"consequence", tr("if left undone"), Choice},
                       {"minutes", tr("minutes"), Figure, 5}}};
}

GroupSpec theInterval() {
    return {
        .title = tr("Interval"),
        .lists = {{.name = "limits",
                   .one = tr("limit"),
                   .columns = {{"every", tr("every"), Figure, 7},
                               {"counter", tr("of"), Choice},
                               {"first", tr("first at"), Figure, 7},
                               {"allowance", tr("may go over"), Figure, 7},
                               {"hard", tr("life limit"), Tick}},
                   .isDoubted = true}},
        .fields = {{"combine", tr("of several limits"), Choice}, {"count_from", tr("counted from"), Choice}}};
}

GroupSpec theWeights() {
    return {.title = tr("Hours that count more or less"),
            .folded = true,
            .lists = {{.name = "weights",
                       .title = tr(
                           "The first line that fits counts; where none fits, an hour is an hour. Figures as "
                           "ridden stand beside."),
                       .one = tr("weight"),
                       .columns = {{"ground", tr("on"), Choice},
                                   {"pace", tr("at"), Choice},
                                   {"permille", tr("an hour counts"), Figure, 6}}}}};
}

GroupSpec theSource() {
    return {.title = tr("Where the figure comes from"),
            .fields = {{"source", tr("source"), Suggested, 34},
                       {"page", tr("page"), Words, 8},
                       {"confirmed", tr("confirmed against the manual"), Tick},
                       {"valid_from", tr("holds from"), Words, 12}}};
}

GroupSpec theHappenings() {
    return {
        .title = tr("Set off by happenings and other jobs"),
        .folded = true,
        .lists = {{.name = "triggers",
                   .one = tr("happening"),
                   .columns = {{"happening", tr("due after"), Choice}, {"code", tr("which job"), Choice}}}},
        .fields = {{"nth", tr("due at every n-th time, n ="), Figure, 5},
                   {"nth_of", tr("of this job, instead of an interval"), Choice},
                   {"every_nth", tr("every n-th time also, n ="), Figure, 5},
                   {"extra", tr("the extra work"), Words, 34}}};
}

GroupSpec theKit() {
    return {
        .title = tr("Parts, fluids, measurements"),
        .folded = true,
        .lists = {{.name = "kit",
                   .title = tr("One go uses"),
                   .one = tr("part or fluid"),
                   .columns = {{"what", tr("what"), Words, 20},
                               {"line", tr("line of the shelf"), Choice},
                               {"amount", tr("amount"), Figure, 6},
                               {"unit", tr("in"), Choice},
                               {"only_if_needed", tr("only if needed"), Tick}}},
                  {.name = "measures",
                   .title = tr("Measured at the job; a limit stays blank until it is typed from the manual"),
                   .one = tr("measurement"),
                   .columns = {{"name", tr("what"), Words, 20},
                               {"unit", tr("unit"), Words, 6},
                               {"least", tr("at least"), Figure, 7},
                               {"most", tr("at most"), Figure, 7},
                               {"source", tr("source and page"), Words, 16},
                               {"confirmed", tr("confirmed"), Tick},
                               {"job", tr("a value at its limit makes due"), Choice, 0, true},
                               {"least_good", tr("the least itself is good"), Tick, 0, true},
                               {"most_good", tr("the most itself is good"), Tick, 0, true}}}}};
}

GroupSpec theWork() {
    return {.title = tr("How it is done"),
            .folded = true,
            .lists = {{.name = "cautions",
                       .title = tr("Cautions"),
                       .one = tr("caution"),
                       .columns = {{"hazard", tr("caution"), Choice}}},
                      {.name = "steps",
                       .title = tr("What must be off"),
                       .one = tr("access step"),
                       .columns = {{"code", tr("access step"), Choice}},
                       .opens = tr("open this access step")},
                      {.name = "joints",
                       .title = tr("Joints that the job itself opens"),
                       .one = tr("joint"),
                       .columns = {{"code", tr("joint"), Choice}}},
                      {.name = "follow_ups",
                       .title = tr("What it asks for afterwards"),
                       .one = tr("follow-up"),
                       .columns = {{"what", tr("what"), Words, 26},
                                   {"code", tr("which job"), Choice},
                                   {"due", tr("when"), Choice},
                                   {"amount", tr("how many"), Figure, 6}}}},
            .fields = {{"body_state", tr("engine"), Choice},
                       {"tools", tr("tools"), Words, 34},
                       {"how_to", tr("way to do it"), Lines, 50}}};
}

// What a task says of the order is no figure of a manual: it makes no interval doubtful.
GroupSpec foldedAway(GroupSpec group) {
    group.folded = true;
    for (ListSpec& list : group.lists)
        list.isDoubted = false;
    return group;
}

GroupSpec theKind() {
    return {.title = tr("Kind of task"),
            .folded = true,
            .fields = {{"renews", tr("the part is as new afterwards"), Tick},
                       {"felt", tr("the rider feels it when it is left undone"), Tick},
                       {"active", tr("in use"), Tick}}};
}

}  // namespace

std::vector<GroupSpec> taskGroups() {
    return {theTask(),
            theInterval(),
            theSource(),
            theWeights(),
            theHappenings(),
            theKit(),
            theWork(),
            foldedAway(orderGroup()),
            foldedAway(doingsGroup()),
            theKind()};
}

SheetSpec taskSheet() {
    return {.prefix = QStringLiteral("task"), .spoken = tr("the chosen task"), .groups = taskGroups()};
}

}  // namespace wm::ui

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/fields/work_fields.h"

#include "ui/words/tr.h"

namespace wm::ui {

GroupSpec orderGroup(const QString& addKey) {
    return {.title = tr("Order of work"),
            .lists = {{.name = "edges",
                       .title = tr("What has to come before what, wherever a plan holds both"),
                       .one = tr("order"),
                       .columns = {{.name = "earlier",
                                    .label = tr("the earlier act"),
                                    .kind = InputKind::Choice,
                                    .begins = QStringLiteral("torque")},
                                   {.name = "earlier_code",
                                    .label = tr("what is done first"),
                                    .kind = InputKind::Search,
                                    .follows = "earlier"},
                                   {.name = "later",
                                    .label = tr("the later act"),
                                    .kind = InputKind::Choice,
                                    .lead = tr("comes before"),
                                    .begins = QStringLiteral("off")},
                                   {.name = "later_code",
                                    .label = tr("what is done later"),
                                    .kind = InputKind::Search,
                                    .follows = "later"}},
                       .isDoubted = true,
                       .isSentence = true,
                       .addKey = addKey}}};
}

GroupSpec doingsGroup() {
    return {
        .title = tr("Done besides"),
        .folded = true,
        .lists = {
            {.name = "doings",
             .title = tr("In a plan each stands once: what several steps ask for comes when all of "
                         "them allow it. Without a code of its own it gets one from its words."),
             .one = tr("doing"),
             .columns =
                 {{"what", tr("what (pump the brake until it is hard)"), InputKind::Words, 38},
                  {"minutes", tr("minutes"), InputKind::Figure, 6},
                  {.name = "comes",
                   .label = tr("when"),
                   .kind = InputKind::Choice,
                   .begins = QStringLiteral("after")},
                  {.name = "code", .label = tr("code"), .letters = 24, .below = true},
                  {.name = "runs", .label = tr("runs the engine"), .kind = InputKind::Tick, .below = true}},
             .isDoubted = true}}};
}

}  // namespace wm::ui

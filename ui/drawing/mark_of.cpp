// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/drawing/mark_of.h"

namespace wm::ui {

using outlook::StandingKind;

MarkState markOf(const book::DueLine& line) {
    MarkState state;
    state.putOff = line.deferral != nullptr;
    switch (line.standing.kind) {
        case StandingKind::InHand:
            state.kind = MarkState::Kind::InHand;
            break;
        case StandingKind::BeforeEvent:
            state.kind = MarkState::Kind::BeforeEvent;
            state.turnDegrees = kLeastTurn + (kMostTurn - kLeastTurn) * line.standing.reach;
            break;
        case StandingKind::MayBeOver:
            state.kind = MarkState::Kind::MayBeOver;
            break;
        case StandingKind::Overdue:
            state.kind = MarkState::Kind::Overdue;
            break;
        case StandingKind::NoRecord:
        case StandingKind::NothingFitted:
            break;
    }
    return state;
}

}  // namespace wm::ui

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/book/urgency.h"

namespace wm::book {

Urgency urgencyOf(const DueLine& line) {
    if (line.deferral != nullptr)
        return Urgency::PutOff;
    switch (line.standing.kind) {
        case outlook::StandingKind::NoRecord:
            return Urgency::NeverRecorded;
        case outlook::StandingKind::InHand:
        case outlook::StandingKind::NothingFitted:
            return Urgency::CanWait;
        case outlook::StandingKind::BeforeEvent:
        case outlook::StandingKind::MayBeOver:
        case outlook::StandingKind::Overdue:
            break;
    }
    const auto consequence = line.task->consequence;
    return upkeep::isSafety(consequence) || consequence == upkeep::Consequence::EndsRace ? Urgency::Must
                                                                                         : Urgency::Should;
}

}  // namespace wm::book

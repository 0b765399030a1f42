// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/book/urgency.h"

#include <gtest/gtest.h>

namespace wm::book {
namespace {

using outlook::StandingKind;
using upkeep::Consequence;

Urgency urgencyOf(StandingKind kind, Consequence consequence, bool putOff = false) {
    upkeep::TaskVersion task;
    task.consequence = consequence;
    const upkeep::Deferral deferral;
    DueLine line;
    line.task = &task;
    line.standing.kind = kind;
    line.deferral = putOff ? &deferral : nullptr;
    return book::urgencyOf(line);
}

TEST(UrgencyTest, WhatFallsDueIsPressingByWhatItWouldCost) {
    for (const auto kind : {StandingKind::Overdue, StandingKind::MayBeOver, StandingKind::BeforeEvent}) {
        EXPECT_EQ(urgencyOf(kind, Consequence::SafetyEvident), Urgency::Must);
        EXPECT_EQ(urgencyOf(kind, Consequence::SafetyHidden), Urgency::Must);
        EXPECT_EQ(urgencyOf(kind, Consequence::EndsRace), Urgency::Must);
        EXPECT_EQ(urgencyOf(kind, Consequence::CostsMoney), Urgency::Should);
        EXPECT_EQ(urgencyOf(kind, Consequence::HiddenWear), Urgency::Should);
    }
}

TEST(UrgencyTest, WhatDoesNotFallDueCanWaitWhateverItIs) {
    EXPECT_EQ(urgencyOf(StandingKind::InHand, Consequence::SafetyHidden), Urgency::CanWait);
    EXPECT_EQ(urgencyOf(StandingKind::NoRecord, Consequence::SafetyHidden), Urgency::NeverRecorded);
}

TEST(UrgencyTest, PutOffOnPurposeComesBeforeAnythingElse) {
    for (const auto kind : {StandingKind::Overdue, StandingKind::InHand, StandingKind::NoRecord})
        EXPECT_EQ(urgencyOf(kind, Consequence::EndsRace, true), Urgency::PutOff);
}

}  // namespace
}  // namespace wm::book

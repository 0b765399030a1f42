// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/fastening/hand_tight.h"

#include <gtest/gtest.h>

#include <functional>

#include "tests/core/made.h"

namespace wm::fastening {
namespace {

using made::day;

Touch touch(std::int64_t joint, std::string_view date, MarkKind kind, std::int64_t entered,
            calendar::DayPart part = calendar::DayPart::AfterRiding) {
    return {.joint = JointId{joint},
            .when = {day(date), part},
            .entered = entered,
            .how = kind == MarkKind::Confirmed  ? Touching::Tightened
                   : kind == MarkKind::Loosened ? Touching::Opened
                                                : Touching::Loosened,
            .why = kind,
            .record = RecordId{entered * 10}};
}

bool neverRidden(calendar::Date) {
    return false;
}

// "joint since date"
std::vector<std::string> open(const std::vector<Touch>& touches,
                              const std::function<bool(calendar::Date)>& rodeOn = neverRidden) {
    std::vector<std::string> result;
    for (const HandTight& joint : handTight(jointsNow(touches, rodeOn)))
        result.push_back(std::to_string(joint.joint.value()) + " since " + joint.since.iso());
    return result;
}

using Lines = std::vector<std::string>;

TEST(HandTightTest, WhatWasLoosenedIsOpenUntilConfirmed) {
    std::vector touches{touch(1, "2026-05-01", MarkKind::Loosened, 1),
                        touch(2, "2026-05-01", MarkKind::Loosened, 2)};
    EXPECT_EQ(open({}), Lines{});
    EXPECT_EQ(open(touches), (Lines{"1 since 2026-05-01", "2 since 2026-05-01"}));
    touches.insert(touches.begin(), touch(1, "2026-05-03", MarkKind::Confirmed, 3));
    EXPECT_EQ(open(touches), (Lines{"2 since 2026-05-01"}));
}

TEST(HandTightTest, OfOneDayWhatWasEnteredLastCounts) {
    std::vector touches{touch(1, "2026-05-01", MarkKind::Confirmed, 2),
                        touch(1, "2026-05-01", MarkKind::Loosened, 1)};
    EXPECT_EQ(open(touches), Lines{});
    touches[0].entered = 0;
    EXPECT_EQ(open(touches), (Lines{"1 since 2026-05-01"}));
}

TEST(HandTightTest, AJointThatMovedIsOpen) {
    const std::vector touches{touch(1, "2026-05-01", MarkKind::FoundMoved, 1)};
    EXPECT_EQ(open(touches), (Lines{"1 since 2026-05-01"}));
    const auto state = handTight(jointsNow(touches, neverRidden)).front();
    EXPECT_EQ(state.why, MarkKind::FoundMoved);
    EXPECT_EQ(state.record, RecordId{10});
}

TEST(HandTightTest, OldestFirstSinceTheFirstLoosening) {
    const std::vector touches{touch(1, "2026-05-04", MarkKind::Loosened, 1),
                              touch(2, "2026-05-02", MarkKind::Loosened, 2),
                              touch(2, "2026-05-05", MarkKind::Loosened, 3)};
    EXPECT_EQ(open(touches), (Lines{"2 since 2026-05-02", "1 since 2026-05-04"}));
}

TEST(HandTightTest, WhatWasTorquedIsNotOpenedAgainByTheSameOpeningOfThatDay) {
    using calendar::DayPart;
    std::vector touches{touch(1, "2026-05-01", MarkKind::Loosened, 1, DayPart::BeforeRiding),
                        touch(1, "2026-05-01", MarkKind::Confirmed, 2, DayPart::BeforeRiding),
                        touch(1, "2026-05-01", MarkKind::Loosened, 3)};
    EXPECT_EQ(open(touches), Lines{});
    EXPECT_EQ(open(touches, [](calendar::Date) { return true; }), (Lines{"1 since 2026-05-01"}));
    touches[2].how = Touching::Loosened;
    EXPECT_EQ(open(touches), (Lines{"1 since 2026-05-01"}));
}

}  // namespace
}  // namespace wm::fastening

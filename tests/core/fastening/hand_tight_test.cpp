// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/fastening/hand_tight.h"

#include <gtest/gtest.h>

#include "tests/core/made.h"

namespace wm::fastening {
namespace {

using made::day;

JointMark mark(std::int64_t joint, std::string_view date, MarkKind kind, std::int64_t entered) {
    JointMark made;
    made.id = JointMarkId{entered};
    made.entered = entered;
    made.joint = JointId{joint};
    made.date = day(date);
    made.kind = kind;
    made.record = RecordId{entered * 10};
    return made;
}

// "joint since date"
std::vector<std::string> open(const std::vector<JointMark>& marks, std::string_view on) {
    std::vector<std::string> result;
    for (const HandTight& joint : handTight(marks, day(on)))
        result.push_back(std::to_string(joint.joint.value()) + " since " + joint.since.iso());
    return result;
}

using Lines = std::vector<std::string>;

TEST(HandTightTest, WhatWasLoosenedIsOpenUntilConfirmed) {
    const std::vector marks{mark(1, "2026-05-03", MarkKind::Confirmed, 3),
                            mark(1, "2026-05-01", MarkKind::Loosened, 1),
                            mark(2, "2026-05-01", MarkKind::Loosened, 2)};
    EXPECT_EQ(open(marks, "2026-04-30"), Lines{});
    EXPECT_EQ(open(marks, "2026-05-02"), (Lines{"1 since 2026-05-01", "2 since 2026-05-01"}));
    EXPECT_EQ(open(marks, "2026-05-03"), (Lines{"2 since 2026-05-01"}));
}

TEST(HandTightTest, OfOneDayTheMarkEnteredLastCounts) {
    std::vector marks{mark(1, "2026-05-01", MarkKind::Confirmed, 2),
                      mark(1, "2026-05-01", MarkKind::Loosened, 1)};
    EXPECT_EQ(open(marks, "2026-05-01"), Lines{});
    marks[0].entered = 0;
    EXPECT_EQ(open(marks, "2026-05-01"), (Lines{"1 since 2026-05-01"}));
}

TEST(HandTightTest, AJointThatMovedIsOpenAndALookNeitherOpensNorCloses) {
    std::vector marks{mark(1, "2026-05-01", MarkKind::FoundMoved, 1),
                      mark(2, "2026-05-01", MarkKind::FoundFine, 2),
                      mark(1, "2026-05-02", MarkKind::FoundFine, 3)};
    EXPECT_EQ(open(marks, "2026-05-02"), (Lines{"1 since 2026-05-01"}));
    const auto state = handTight(marks, day("2026-05-02")).front();
    EXPECT_EQ(state.why, MarkKind::FoundMoved);
    EXPECT_EQ(state.record, RecordId{10});
}

TEST(HandTightTest, OldestFirstSinceTheFirstLoosening) {
    const std::vector marks{mark(1, "2026-05-04", MarkKind::Loosened, 1),
                            mark(2, "2026-05-02", MarkKind::Loosened, 2),
                            mark(2, "2026-05-05", MarkKind::Loosened, 3)};
    EXPECT_EQ(open(marks, "2026-05-06"), (Lines{"2 since 2026-05-02", "1 since 2026-05-04"}));
}

}  // namespace
}  // namespace wm::fastening

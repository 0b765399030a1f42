// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/fastening/loosened.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>

#include "tests/core/made.h"

namespace wm::fastening {
namespace {

using made::day;
using units::Hours;

// Days of 2026-05 by number; each day is ridden for one hour.
Hours anHourADay(JointId, calendar::Date after, calendar::Date to) {
    return Hours{100 * static_cast<std::int64_t>(to - after)};
}

class Marks {
  public:
    void add(std::int64_t joint, int dayOfMay, MarkKind kind, std::optional<std::int64_t> degrees = {}) {
        JointMark mark{.id = JointMarkId{++last_}, .entered = last_, .joint = JointId{joint}};
        mark.date = day("2026-05-01").plusDays(dayOfMay - 1);
        mark.kind = kind;
        mark.movedDegrees = degrees;
        all.push_back(mark);
    }
    std::vector<JointMark> all;

  private:
    std::int64_t last_ = 0;
};

// By hand: tight on the 1st, moved 20 degrees on the 4th (3 h), tight on the 5th, fine on the 9th (4 h),
// paint broken on the 10th (1 h), which the wrench then confirms: the same loosening, not one more.
TEST(LoosenedTest, CountsChecksMovesAndTheHoursBetween) {
    Marks marks;
    marks.add(1, 1, MarkKind::Confirmed);
    marks.add(1, 4, MarkKind::FoundMoved, 20);
    marks.add(1, 5, MarkKind::Confirmed);
    marks.add(1, 9, MarkKind::FoundFine);
    marks.add(1, 10, MarkKind::MarkBroken);
    marks.add(1, 10, MarkKind::RiddenOpen);
    marks.add(1, 11, MarkKind::FoundMoved, 5);
    marks.add(1, 11, MarkKind::Confirmed);
    marks.add(2, 1, MarkKind::Loosened);
    marks.add(2, 1, MarkKind::Confirmed);
    marks.add(3, 2, MarkKind::FoundFine);
    marks.add(4, 2, MarkKind::FoundMoved);
    const auto lines = looseningsOf(marks.all, anHourADay, day("2026-05-20"));
    ASSERT_EQ(lines.size(), 3U) << "a joint that nobody re-checked has no line";
    EXPECT_EQ(lines[0].joint, JointId{1});
    EXPECT_EQ(lines[0].checks, 3);
    EXPECT_EQ(lines[0].moved, 2);
    EXPECT_EQ(lines[0].movedSince, 2);
    EXPECT_EQ(lines[0].ridden, Hours{800});
    EXPECT_EQ(lines[0].degrees, 20);
    EXPECT_EQ(lines[0].last, day("2026-05-10"));
    EXPECT_EQ(lines[1].joint, JointId{4});
    EXPECT_EQ(lines[1].moved, 1);
    EXPECT_EQ(lines[1].movedSince, 0) << "nobody knows in how many hours";
    EXPECT_EQ(lines[2].joint, JointId{3});
    EXPECT_EQ(lines[2].ridden, Hours{0}) << "nobody knows since when it was tight";
    EXPECT_EQ(looseningsOf(marks.all, anHourADay, day("2026-05-04"))[0].checks, 1);
}

// 11 events in 800 against 21 in 3011: the example of poisson.test in the documentation of R (package stats),
// whose two-sided p-value is 0.07967: the sum of all outcomes that are no likelier than this one. One-sided
// 0.0560086597877, by exact fractions.
TEST(LoosenedTest, TheChanceIsThatOfTheConditionalTest) {
    EXPECT_NEAR(*chanceOfAsMany(11, Hours{800}, 21, Hours{3011}), 0.0560086597877, 1e-12);
    const auto atLeast = [](int moved) {
        return *chanceOfAsMany(moved, Hours{800}, 32 - moved, Hours{3011});
    };
    double twoSided = 0;
    const double own = atLeast(11) - atLeast(12);
    for (int moved = 0; moved <= 32; ++moved) {
        const double likely = atLeast(moved) - (moved == 32 ? 0 : atLeast(moved + 1));
        if (likely <= own * (1 + 1e-7))
            twoSided += likely;
    }
    EXPECT_NEAR(twoSided, 0.07967, 5e-6);
    // By hand: 3 of 3 with a fifth of the hours: 1/5 cubed.
    EXPECT_NEAR(*chanceOfAsMany(3, Hours{100}, 0, Hours{400}), 0.008, 1e-12);
    EXPECT_EQ(chanceOfAsMany(0, Hours{100}, 3, Hours{400}), 1.0);
    EXPECT_EQ(chanceOfAsMany(3, Hours{}, 3, Hours{400}), std::nullopt);
    EXPECT_EQ(chanceOfAsMany(3, Hours{100}, 3, Hours{}), std::nullopt);
}

TEST(LoosenedTest, SaysThatAJointIsLooserThanItsKindOnlyIfItStands) {
    const std::vector<Loosening> lines{{JointId{1}, 6, 3, 3, Hours{1000}, {}, 0},
                                       {JointId{2}, 9, 1, 1, Hours{9000}, {}, 0},
                                       {JointId{3}, 9, 9, 9, Hours{500}, {}, 0}};
    const auto kindOf = [](JointId joint) {
        return joint == JointId{3} ? JointKind::Spoke : JointKind::Sprocket;
    };
    // 3 of 4 with a tenth of the hours: 4 x 0.001 x 0.9 + 0.0001 = 0.0037; three joints compared: 0.0111.
    const auto first = comparedWithKind(lines[0], lines, kindOf);
    ASSERT_TRUE(first);
    EXPECT_EQ(first->othersMoved, 1);
    EXPECT_EQ(first->compared, 3);
    EXPECT_NEAR(first->chance, 0.0037, 1e-12);
    EXPECT_TRUE(first->stands);
    EXPECT_FALSE(comparedWithKind(lines[1], lines, kindOf)->stands);
    EXPECT_EQ(comparedWithKind(lines[2], lines, kindOf), std::nullopt) << "there is no other spoke";
    // Once is no pattern, however rare.
    const std::vector<Loosening> once{{JointId{1}, 1, 1, 1, Hours{1}, {}, 0},
                                      {JointId{2}, 99, 0, 0, Hours{99999}, {}, 0}};
    EXPECT_LT(comparedWithKind(once[0], once, kindOf)->chance, 0.001);
    EXPECT_FALSE(comparedWithKind(once[0], once, kindOf)->stands);
}

// More moves make it less likely, more hours more likely; and it is a chance.
RC_GTEST_PROP(LoosenedTest, TheChanceIsMonotone, ()) {
    const auto moved = *rc::gen::inRange<std::int64_t>(0, 50);
    const auto others = *rc::gen::inRange<std::int64_t>(0, 50);
    const Hours ridden{*rc::gen::inRange<std::int64_t>(1, 100'000)};
    const Hours othersRidden{*rc::gen::inRange<std::int64_t>(1, 100'000)};
    const double chance = *chanceOfAsMany(moved, ridden, others, othersRidden);
    RC_ASSERT(chance >= 0.0 && chance <= 1.0);
    RC_ASSERT(*chanceOfAsMany(moved + 1, ridden, others, othersRidden) <= chance + 1e-9);
    RC_ASSERT(*chanceOfAsMany(moved, ridden + Hours{100}, others, othersRidden) >= chance - 1e-9);
}

}  // namespace
}  // namespace wm::fastening

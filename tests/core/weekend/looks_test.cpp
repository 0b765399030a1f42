// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/weekend/looks.h"

#include <gtest/gtest.h>

namespace wm::weekend {
namespace {

class LooksTest : public testing::Test {
  protected:
    [[nodiscard]] bool isLook(const std::string& joint, const std::vector<std::string>& off = {}) const {
        return looksAt(task_, joint, std::vector{&wheel_, &seat_}, off);
    }

    StepVersion wheel_{.code = "wheel", .joints = {{"axle"}}};
    StepVersion seat_{.code = "seat"};
    upkeep::TaskVersion task_{.joints = {{"axle"}, {"spokes"}}};
};

TEST_F(LooksTest, WhatAStepHoldsThatIsOnIsLookedAt) {
    EXPECT_TRUE(isLook("axle"));
    EXPECT_TRUE(isLook("axle", {"seat"}));
    EXPECT_FALSE(isLook("axle", {"seat", "wheel"})) << "the wheel is out for it";
}

TEST_F(LooksTest, WhatNoStepHoldsIsOpened) {
    EXPECT_FALSE(isLook("spokes"));
}

TEST_F(LooksTest, WhatRenewsOrUsesSomethingUpIsNoLook) {
    task_.kit = {{.what = "axle nut", .onlyIfNeeded = true}};
    EXPECT_TRUE(isLook("axle"));
    task_.kit = {{.what = "chain lube"}};
    EXPECT_FALSE(isLook("axle"));
    task_.kit.clear();
    task_.renews = true;
    EXPECT_FALSE(isLook("axle"));
}

TEST_F(LooksTest, WhatATaskSaysThatItCracksItOpens) {
    using upkeep::Deed;
    task_.edges = {{{Deed::Torque, "axle"}, {Deed::Do, "bounce"}}};
    EXPECT_TRUE(isLook("axle"));
    task_.edges.push_back({{Deed::Do, "hold"}, {Deed::Crack, "axle"}});
    EXPECT_FALSE(isLook("axle"));
}

}  // namespace
}  // namespace wm::weekend

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// What a changed access step does to plans. All minutes are invented.
#include "core/book/step_effect.h"

#include "core/verbs/what_if.h"
#include "tests/core/verbs/bench.h"

namespace wm::book {
namespace {

using upkeep::Deed;
using verbs::saveStep;
using verbs::saying;

class StepEffectTest : public testing::Test, public verbs::FurnishedBench {
  protected:
    void SetUp() override {
        must(saying(saveStep, weekend::StepVersion{.machine = heron,
                                                   .code = "seat",
                                                   .name = "Seat off",
                                                   .off = units::Minutes{2},
                                                   .on = units::Minutes{3}}));
        seat_ = ledger().all<weekend::StepVersion>().back();
    }
    StepEffect effectOfSaving(const weekend::StepVersion& step) {
        const Book now = book();
        const auto seen = verbs::whatIf(now, saying(saveStep, step), heron);
        if (!seen) {
            ADD_FAILURE() << "refused: " << seen.error().given;
            return {};
        }
        return effectOf(now, *seen->after, heron, step.code);
    }
    weekend::StepVersion seat_;
};

TEST_F(StepEffectTest, MinutesAreThoseOfOffAndOn) {
    EXPECT_EQ(planOfStep(book(), heron, "seat")->work.count(), 5);
    seat_.off = units::Minutes{4};
    const auto effect = effectOfSaving(seat_);
    EXPECT_TRUE(effect.alone.changesMinutes());
    EXPECT_FALSE(effect.alone.changesOrder());
    EXPECT_EQ(effect.alone.after->work.count(), 7);
    EXPECT_FALSE(effect.picked.now) << "nothing is picked";
}

TEST_F(StepEffectTest, WhatComesOffBeforeItIsInItsOrder) {
    seat_.needs = {{.code = "rear-wheel"}};
    const auto effect = effectOfSaving(seat_);
    EXPECT_TRUE(effect.alone.changesOrder());
    EXPECT_EQ(effect.alone.after->opened, (std::vector<std::string>{"rear-wheel", "seat"}));
}

TEST_F(StepEffectTest, PickedJobsSayWhatTheyWouldTake) {
    must(saying(verbs::pick, heron, pads, std::nullopt, true));
    auto rear = *book().step(heron, "rear-wheel");
    rear.on += units::Minutes{10};
    const auto effect = effectOfSaving(rear);
    ASSERT_TRUE(effect.picked.now && effect.picked.after);
    EXPECT_EQ((effect.picked.after->work - effect.picked.now->work).count(), 10);
    seat_.off = units::Minutes{9};
    EXPECT_FALSE(effectOfSaving(seat_).picked.changesMinutes()) << "no picked job needs it";
}

TEST_F(StepEffectTest, AStepThatIsPutAwayHasNoPlan) {
    seat_.active = false;
    const auto effect = effectOfSaving(seat_);
    EXPECT_TRUE(effect.alone.now);
    EXPECT_FALSE(effect.alone.after);
    EXPECT_EQ(planOfStep(book(), heron, "tank").error().fault, base::Fault::Unknown);
}

// Nothing opens the joint, so no plan has it; named once, however often the step speaks of it.
TEST_F(StepEffectTest, SaysOfWhichJointAnOrderHoldsNowhere) {
    must(saying(verbs::saveJoint,
                fastening::JointVersion{.machine = heron, .code = "panel-bolt", .name = "Panel bolt"}));
    seat_.edges = {{{Deed::On, "seat"}, {Deed::Torque, "panel-bolt"}},
                   {{Deed::Crack, "panel-bolt"}, {Deed::Off, "seat"}}};
    EXPECT_EQ(effectOfSaving(seat_).unopened, std::vector<std::string>{"Panel bolt"});
    seat_.joints = {{"panel-bolt"}};
    EXPECT_TRUE(effectOfSaving(seat_).unopened.empty());
}

TEST_F(StepEffectTest, SaysWhoNeedsIt) {
    EXPECT_EQ(neededBy(book(), heron, "rear-wheel"), std::vector<std::string>{"Brake pads"});
    seat_.needs = {{.code = "rear-wheel"}};
    must(saying(saveStep, seat_));
    EXPECT_EQ(neededBy(book(), heron, "rear-wheel"), (std::vector<std::string>{"Brake pads", "Seat off"}));
    EXPECT_TRUE(neededBy(book(), heron, "seat").empty());
}

}  // namespace
}  // namespace wm::book

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// What is asked and answered, without a window.
#include "ui/pages/tasks/baseline_asking.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "tests/ui/garage.h"

namespace wm::ui {
namespace {

using Kind = BaselineAsking::Fault::Kind;
using Leaving = BaselineAsking::Leaving;

class BaselineAskingTest : public testing::Test {
  protected:
    void SetUp() override {
        heron_ = garage_.machine("Heron 250");
        asking_.refresh(garage_.book(), heron_);
        ASSERT_GT(asking_.tasks().size(), 12U);
    }
    TaskId at(std::size_t place) { return asking_.tasks().at(place); }
    // A task of which looking settles nothing, or everything.
    TaskId thatTakes(Said said, bool takes) {
        const auto found = std::find_if(asking_.tasks().begin(), asking_.tasks().end(), [&](TaskId task) {
            return canSay(*garage_.book().dueLine(task)->task, said, When{}) == takes;
        });
        EXPECT_NE(found, asking_.tasks().end());
        return *found;
    }
    Kind fault(const char* typed) { return asking_.faultIn(garage_.book(), QString::fromUtf8(typed)).kind; }
    Leaving leaving(const char* typed) { return asking_.leaving(garage_.book(), QString::fromUtf8(typed)); }
    BaselineAsking::Taken take(const char* typed = "") {
        return asking_.take(garage_.book(), QString::fromUtf8(typed));
    }
    void answer(TaskId task, Said said) {
        asking_.begin(said, {task});
        take(said == Said::Serviced ? "3 may 2025" : "");
    }

    Garage garage_{Garage::Fill::OneMachine};
    MachineId heron_{};
    BaselineAsking asking_;
};

TEST_F(BaselineAskingTest, TenAreAskedAtATimeAndTheRestIsFolded) {
    auto shown = asking_.shown(garage_.book());
    EXPECT_EQ(shown.tasks.size(), 10U);
    EXPECT_EQ(shown.folded, static_cast<int>(asking_.tasks().size()) - 10);
    answer(at(0), Said::New);  // an answered one stays in sight, and another takes its place
    shown = asking_.shown(garage_.book());
    EXPECT_EQ(shown.tasks.size(), 11U);
    asking_.unfold();
    EXPECT_EQ(asking_.shown(garage_.book()).tasks, asking_.tasks());
    EXPECT_EQ(asking_.shown(garage_.book()).folded, 0);
}

TEST_F(BaselineAskingTest, ADayIsAskedForAServiceAndWhenNewIsSaidAgain) {
    EXPECT_TRUE(asking_.begin(Said::Serviced, {at(0)}));
    asking_.drop();
    EXPECT_FALSE(asking_.begin(Said::New, {at(0)}));
    take();
    EXPECT_TRUE(asking_.begin(Said::New, {at(0)}));
    EXPECT_FALSE(asking_.begin(Said::New, {at(0), at(1)}));
    EXPECT_FALSE(asking_.begin(Said::Unknown, {at(0)}));
}

TEST_F(BaselineAskingTest, SaysWhyADayCannotBeMeant) {
    asking_.begin(Said::Serviced, {at(0)});
    EXPECT_EQ(fault(""), Kind::NothingTyped);
    EXPECT_EQ(fault("soon"), Kind::Refused);
    EXPECT_EQ(fault("2026-05-08"), Kind::Refused);  // tomorrow
    EXPECT_EQ(fault("3 may 2025"), Kind::None);
    asking_.begin(Said::New, {at(0)});
    EXPECT_EQ(fault(""), Kind::None);
    EXPECT_EQ(fault("41 h"), Kind::HoursNotMeant);
}

TEST_F(BaselineAskingTest, OneKeyAnswersSeveralButNoneTwice) {
    answer(at(1), Said::Serviced);
    asking_.begin(Said::New, {at(0), at(1), at(2)});
    const auto taken = take();
    EXPECT_FALSE(taken.alone);
    EXPECT_EQ(taken.last, at(2));
    EXPECT_EQ(asking_.answerTo(at(0))->said, Said::New);
    EXPECT_EQ(asking_.answerTo(at(1))->said, Said::Serviced);
    asking_.begin(Said::Unknown, {at(0), at(1)});  // but that nobody knows may be said of all
    take();
    EXPECT_EQ(asking_.answerTo(at(1))->said, Said::Unknown);
}

TEST_F(BaselineAskingTest, WhatCannotBeSaidStaysOpen) {
    const TaskId renewed = thatTakes(Said::Fine, false);
    const TaskId lookedAt = thatTakes(Said::Fine, true);
    asking_.begin(Said::Fine, {renewed, lookedAt});
    EXPECT_EQ(take().left, 1U);
    EXPECT_EQ(asking_.answerTo(renewed), nullptr);
    ASSERT_NE(asking_.answerTo(lookedAt), nullptr);
    EXPECT_EQ(asking_.answerTo(lookedAt)->said, Said::Fine);
}

TEST_F(BaselineAskingTest, WhatWasTypedStaysWhenTheKeysGoElsewhere) {
    EXPECT_EQ(leaving("3 may 2025"), Leaving::Nothing);
    asking_.begin(Said::Serviced, {at(0)});
    EXPECT_EQ(leaving(""), Leaving::Drop);
    EXPECT_EQ(leaving("soon"), Leaving::Refuse);
    EXPECT_EQ(leaving("3 may 2025"), Leaving::Take);
    take("3 may 2025");
    EXPECT_FALSE(asking_.isAsking());
    asking_.goBackTo(at(0));
    EXPECT_EQ(asking_.typedBefore(), "3 may 2025");
    EXPECT_EQ(leaving("3 may 2025"), Leaving::Drop);  // it stands already
}

TEST_F(BaselineAskingTest, GoesOnToTheNextWithoutAnAnswerRoundTheEnd) {
    const std::vector<std::int64_t> shown{at(0).value(), at(1).value(), at(2).value()};
    EXPECT_EQ(asking_.nextOpen(shown, at(0)), at(1).value());
    answer(at(1), Said::New);
    EXPECT_EQ(asking_.nextOpen(shown, at(0)), at(2).value());
    EXPECT_EQ(asking_.nextOpen(shown, at(2)), at(0).value());
    answer(at(0), Said::New);
    answer(at(2), Said::New);
    EXPECT_EQ(asking_.nextOpen(shown, at(1)), at(1).value());
}

TEST_F(BaselineAskingTest, AnswersWaitForTheirMachineAndCountAsUnsaved) {
    answer(at(0), Said::New);
    asking_.begin(Said::Serviced, {at(1)});
    EXPECT_EQ(asking_.unsaved(QStringLiteral("3 m")), 2U);
    EXPECT_EQ(asking_.unsaved(QStringLiteral("  ")), 1U);
    asking_.drop();
    asking_.refresh(garage_.book(), std::nullopt);
    EXPECT_TRUE(asking_.answers().empty());
    EXPECT_EQ(asking_.unsaved({}), 1U);
    asking_.refresh(garage_.book(), heron_);
    EXPECT_EQ(asking_.answers().size(), 1U);
    asking_.clear();
    EXPECT_EQ(asking_.unsaved({}), 0U);
}

TEST_F(BaselineAskingTest, WhatHasARecordByNowIsNoQuestion) {
    const TaskId first = at(0);
    const auto before = asking_.tasks().size();
    answer(first, Said::New);
    garage_.record("Heron 250", garage_.book().task(first)->code, "2026-05-06");
    asking_.refresh(garage_.book(), heron_);
    EXPECT_LT(asking_.tasks().size(), before);
    EXPECT_EQ(asking_.answerTo(first), nullptr);
}

}  // namespace
}  // namespace wm::ui

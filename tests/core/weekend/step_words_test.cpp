// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/weekend/step_words.h"

#include <gtest/gtest.h>

namespace wm::weekend {
namespace {

std::string refitText(std::string_view stepName) {
    return base::said(refitPhrase(stepName));
}

TEST(StepWordsTest, NamesWhatGoesBackOn) {
    EXPECT_EQ(refitText("Seat off"), "Refit: Seat");
    EXPECT_EQ(refitText("Rear wheel out, caliper hanger free"), "Refit: Rear wheel, caliper hanger");
    EXPECT_EQ(refitText("Air filter out, intake plugged"), "Refit: Air filter");
    EXPECT_EQ(refitText("Bars and controls laid forward"), "Refit: Bars and controls");
    EXPECT_EQ(refitText("Engine out of the frame"), "Refit: Engine");
    EXPECT_EQ(refitText("Coolant drained; filled and bled on refit"), "Fill: Coolant");
}

TEST(StepWordsTest, ComesOffWhatItWasPutOn) {
    EXPECT_EQ(refitText("Clean, cold, on the stand, secured"), "Off the stand");
}

TEST(StepWordsTest, OnlyAConditionStandsOnSomething) {
    EXPECT_EQ(standingOf("Clean, cold, on the stand, secured"), "stand");
    EXPECT_EQ(standingOf("Clean, cold"), "");
    EXPECT_EQ(standingOf("Wheel off, hub on the bench"), "");
}

TEST(StepWordsTest, SaysUndoWhereTheNameIsOfAnotherKind) {
    EXPECT_EQ(refitText("Clean, cold"), "Undo: Clean, cold");
    EXPECT_EQ(refitText("off"), "Undo: off");
    EXPECT_EQ(partsOf(""), "");
}

}  // namespace
}  // namespace wm::weekend

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/weekend/plan_words.h"

#include <gtest/gtest.h>

namespace wm::weekend {
namespace {

std::string stopText(const Stop& stop) {
    return base::said(actPhrase({.kind = ActKind::SafeStop, .stop = stop}));
}

TEST(PlanWordsTest, AStopSaysWhatIsClosedAndWhatIsNot) {
    EXPECT_EQ(stopText({}), "Safe to stop here: the machine is whole");
    EXPECT_EQ(stopText({.isElseWhole = false}),
              "Safe to stop here: all that this work opened is closed; the machine is not whole");
    EXPECT_EQ(stopText({.closed = {"Rear wheel out, caliper hanger free", "Clean, on the stand"},
                        .off = {"Clean, on the stand", "Seat off"}}),
              "Safe to stop here. Back on: Rear wheel, caliper hanger. Still on the stand. Still: Seat off.");
    EXPECT_EQ(stopText({.off = {"Clean, on the stand"}, .cracked = {"Axle nut"}, .loose = {"Pinch", "Stem"}}),
              "You can stop here, on the stand only. Cracked loose, not to be ridden or wheeled: Axle nut. "
              "Loose, not to be ridden or wheeled: Pinch, Stem.");
    EXPECT_EQ(
        stopText({.off = {"Clean, on the stand", "Rear wheel out, hanger free", "Linkage off", "Shock out"}}),
        "Safe to stop here. Still on the stand. Still: Rear wheel out, hanger free; Linkage off; Shock out.");
    EXPECT_EQ(stopText({.off = {"Shock out"}, .left = {"Rear brake fluid"}}),
              "Safe to stop here. Still: Shock out. Not in this plan, for it waits for what is away: Rear "
              "brake fluid.");
}

TEST(PlanWordsTest, ThreadLockerIsASentenceOfItsOwn) {
    EXPECT_EQ(stopText({.cures = true}),
              "Safe to stop here: the machine is whole. Not ridden before the thread-locker has cured: 24 h, "
              "unless its label says less");
    EXPECT_EQ(stopText({.off = {"Seat off"}, .cures = true}),
              "Safe to stop here. Still: Seat off. Not ridden before the thread-locker has cured: 24 h, "
              "unless its label says less");
}

TEST(PlanWordsTest, ARunOfItsOwnAndAWaitAreSaid) {
    EXPECT_EQ(base::said(actPhrase({.kind = ActKind::Run})), "Run the engine until it is warm, outside");
    EXPECT_EQ(base::said(actPhrase({.kind = ActKind::Run, .stop = {.isElseWhole = false}})),
              "Run the engine until it is warm, outside; not before what else is off it or hand-tight is "
              "closed");
    EXPECT_EQ(base::said(actPhrase({.kind = ActKind::Run, .doing = "level", .text = "Run it for a minute"})),
              "Run it for a minute");
    EXPECT_EQ(base::said(actPhrase({.kind = ActKind::Wait})), "Wait until the engine is cold, hands off");
}

// Every word of the program can be said in another language; names stay what they are.
TEST(PlanWordsTest, CanBeSaidInAnotherLanguage) {
    const Act stop{.kind = ActKind::SafeStop,
                   .stop = {.closed = {"Rear wheel out"}, .off = {"Seat off"}, .cures = true}};
    const auto said = base::said(actPhrase(stop), [](const base::Phrase& phrase) {
        std::string text = phrase.text;
        for (char& letter : text)
            if (letter >= 'a' && letter <= 'z')
                letter = static_cast<char>(letter - 'a' + 'A');
        return text;
    });
    EXPECT_EQ(
        said,
        "SAFE TO STOP HERE. BACK ON: Rear wheel. STILL: Seat off. NOT RIDDEN BEFORE THE THREAD-LOCKER HAS "
        "CURED: 24 H, UNLESS ITS LABEL SAYS LESS");
}

}  // namespace
}  // namespace wm::weekend

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// What a used machine has behind it is stated, whole or for its parts.
#include "core/verbs/past_verb.h"

#include "tests/core/verbs/bench.h"

namespace wm::verbs {
namespace {

using base::Fault;
using units::Hours;
using usage::HoursBracket;

class PastTest : public testing::Test, public FurnishedBench {
  protected:
    [[nodiscard]] Verb stated(PastDraft draft) const { return saying(statePast, std::move(draft)); }
};

const HoursBracket kLikely{Hours{8000}, Hours{10000}, Hours{12000}};

TEST_F(PastTest, WhatWasRiddenHereIsTakenOff) {
    must(ride({.outing = outing("2026-02-01", 500)}));
    EXPECT_EQ(must(stated({.machine = heron, .hours = kLikely, .why = "the meter"})),
              "stated what Heron 250 had behind it");
    const auto* card = ledger().find<items::Machine>(heron);
    EXPECT_FALSE(card->startedNew);
    EXPECT_EQ(card->pastLow, Hours{7500});
    EXPECT_EQ(card->pastBest, Hours{9500});
    EXPECT_EQ(card->pastHigh, Hours{11500});
    EXPECT_EQ(card->note, "the meter");
    EXPECT_EQ(book().life(heron).hours, kLikely);
    // Stated again it takes the place of the first; its reason stands below.
    must(stated({.machine = heron,
                 .hours = HoursBracket{Hours{9000}, Hours{9000}, std::nullopt},
                 .why = "the chain"}));
    EXPECT_EQ(book().life(heron).hours, (HoursBracket{Hours{9000}, Hours{9000}, std::nullopt}));
    EXPECT_EQ(ledger().find<items::Machine>(heron)->note, "the meter\nthe chain");
}

TEST_F(PastTest, TheSameAgainIsNothingToDo) {
    const PastDraft draft{.machine = heron, .hours = kLikely, .why = "the meter "};
    must(stated(draft));
    EXPECT_EQ(refusedAt(stated(draft)), (At{Fault::NothingToDo, "past_best"}));
    // Another reason for the same hours is something; said after it, the first is again.
    must(stated({.machine = heron, .hours = kLikely, .why = "the chain"}));
    EXPECT_EQ(refusedAt(stated({.machine = heron, .hours = kLikely, .why = "the chain"})),
              (At{Fault::NothingToDo, "past_best"}));
    must(stated(draft));
    EXPECT_EQ(ledger().find<items::Machine>(heron)->note, "the meter\nthe chain\nthe meter");
    const PastDraft part{.machine = heron, .parts = {{engine, kLikely, "the bore"}}};
    must(stated(part));
    EXPECT_EQ(refusedAt(stated(part)), (At{Fault::NothingToDo, "parts[0].past_best"}));
    // A reason that is only the end of another one is not the same.
    must(stated({.machine = heron, .parts = {{engine, kLikely, "bore"}}}));
}

TEST_F(PastTest, PartsAreStatedInTheSameGo) {
    must(stated({.machine = heron, .hours = kLikely, .parts = {{engine, kLikely, "the bore"}}}));
    EXPECT_EQ(book().life(engine).hours, kLikely);
    EXPECT_EQ(ledger().find<items::Item>(engine)->note, "the bore");
    EXPECT_EQ(book().life(wheel).hours, HoursBracket::exactly(Hours{0}));
}

TEST_F(PastTest, MoreRiddenHereThanStatedLeavesNothingBefore) {
    must(ride({.outing = outing("2026-02-01", 500)}));
    EXPECT_EQ(pastOf(HoursBracket{Hours{300}, Hours{400}, Hours{600}}, HoursBracket::exactly(Hours{500})),
              (HoursBracket{Hours{0}, Hours{0}, Hours{100}}));
    // An unlogged stretch of 2 to 6 h widens what is left.
    EXPECT_EQ(pastOf(kLikely, {Hours{200}, Hours{300}, Hours{600}}),
              (HoursBracket{Hours{7400}, Hours{9700}, Hours{11800}}));
    EXPECT_EQ(pastOf(kLikely, {Hours{200}, Hours{300}, std::nullopt}).low, Hours{0});
}

TEST_F(PastTest, RefusesWhatIsNoBracket) {
    const auto at = [this](PastDraft draft) { return refusedAt(stated(std::move(draft))); };
    EXPECT_EQ(at({.machine = heron}), (At{Fault::NothingToDo, "past_best"}));
    EXPECT_EQ(at({.machine = MachineId{3}, .hours = kLikely}), (At{Fault::Unknown, "machine"}));
    EXPECT_EQ(at({.machine = heron, .hours = HoursBracket{Hours{200}, Hours{100}, Hours{300}}}),
              (At{Fault::OutOfOrder, "past_best"}));
    EXPECT_EQ(at({.machine = heron, .hours = HoursBracket{Hours{100}, Hours{200}, Hours{150}}}),
              (At{Fault::OutOfOrder, "past_high"}));
    EXPECT_EQ(at({.machine = heron, .hours = HoursBracket::exactly(Hours{10'000'001})}),
              (At{Fault::TooLarge, "past_low"}));
    EXPECT_EQ(at({.machine = heron, .hours = HoursBracket::exactly(Hours{-1})}),
              (At{Fault::Negative, "past_low"}));
    EXPECT_EQ(at({.machine = heron, .parts = {{engine, kLikely, ""}, {engine, kLikely, ""}}}),
              (At{Fault::Duplicate, "parts[1].item"}));
    EXPECT_EQ(at({.machine = heron, .parts = {{ItemId{3}, kLikely, ""}}}),
              (At{Fault::Unknown, "parts[0].item"}));
    EXPECT_EQ(at({.machine = heron, .hours = kLikely, .why = std::string("\xff")}),
              (At{Fault::NotText, "note"}));
    EXPECT_TRUE(ledger().find<items::Machine>(heron)->startedNew);
}

}  // namespace
}  // namespace wm::verbs

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// What a used machine has behind it. All figures are typed by somebody; every expectation is worked by hand.
#include "core/items/evidence.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include "tests/core/made.h"

namespace wm::items {
namespace {

using base::Fault;
using made::day;
using made::hours;
using units::Decimal;
using units::Hours;

const calendar::Date kToday = day("2026-05-20");

Claim must(const Evidence& evidence) {
    const auto claim = claimOf(evidence, kToday);
    EXPECT_TRUE(claim.has_value()) << claim.error().field;
    return claim.value_or(Claim{});
}
std::pair<Fault, std::string> refused(const Evidence& evidence) {
    const auto claim = claimOf(evidence, kToday);
    EXPECT_FALSE(claim.has_value());
    return claim ? std::pair(Fault::Empty, std::string("accepted"))
                 : std::pair(claim.error().fault, claim.error().field.text());
}
using Refused = std::pair<Fault, std::string>;

TEST(Evidence, AMeterIsALowEndUnlessItWasThereFromNew) {
    const auto unknown = must(MeterShows{hours("41")});
    EXPECT_EQ(unknown.low, hours("41"));
    EXPECT_EQ(unknown.best, std::nullopt);
    EXPECT_EQ(unknown.high, std::nullopt);
    const auto fromNew = must(MeterShows{hours("41"), MeterFitted::FromNew});
    EXPECT_EQ(fromNew.low, hours("41"));
    EXPECT_EQ(fromNew.high, hours("41"));
    // Fitted at about 60 h by somebody's word: likely 101 h, surely 41 h.
    const auto later = must(MeterShows{hours("41"), MeterFitted::Later, hours("60")});
    EXPECT_EQ(later.low, hours("41"));
    EXPECT_EQ(later.best, hours("101"));
    EXPECT_EQ(later.high, std::nullopt);
    EXPECT_EQ(refused(MeterShows{Hours{-1}}), (Refused{Fault::Negative, "shown"}));
    EXPECT_EQ(refused(MeterShows{Hours{10'000'001}}), (Refused{Fault::TooLarge, "shown"}));
    EXPECT_EQ(refused(MeterShows{hours("41"), MeterFitted::FromNew, hours("60")}),
              (Refused{Fault::Inconsistent, "before"}));
}

TEST(Evidence, TheSellersWordBoundsNothing) {
    EXPECT_EQ(must(SellersWord{hours("60")}), (Claim{.best = hours("60")}));
    EXPECT_EQ(refused(SellersWord{Hours{-100}}), (Refused{Fault::Negative, "likely"}));
}

TEST(Evidence, SeasonsTimesTheHabit) {
    // 2.5 seasons of 30 to 45 h: 75 to 112.5, in whole hours outward 113; the middle 93.75 is 94.
    const auto range = must(SeasonsRidden{Decimal{25, 1}, hours("30"), hours("45")});
    EXPECT_EQ(range.low, hours("75"));
    EXPECT_EQ(range.best, hours("94"));
    EXPECT_EQ(range.high, hours("113"));
    EXPECT_EQ(must(SeasonsRidden{Decimal{3, 0}, hours("40"), {}}), (Claim{.best = hours("120")}));
    EXPECT_EQ(refused(SeasonsRidden{Decimal{0, 0}, hours("40"), {}}),
              (Refused{Fault::NotPositive, "seasons"}));
    EXPECT_EQ(refused(SeasonsRidden{Decimal{101, 0}, hours("40"), {}}),
              (Refused{Fault::TooLarge, "seasons"}));
    EXPECT_EQ(refused(SeasonsRidden{Decimal{2, 0}, hours("40"), hours("30")}),
              (Refused{Fault::OutOfOrder, "season_high"}));
}

TEST(Evidence, AWornChainBoundsTheMachineFromBelowAlone) {
    // 317.5 as new, 320.0 at the limit, 319.0 now: 1.5 of 2.5 = 60 %. Of 15 to 30 h: 9 to 18,
    // middle 13.5: 14.
    const WearSeen chain{WornPart::Chain,  Decimal{3175, 1}, Decimal{3200, 1},
                         Decimal{3190, 1}, hours("15"),      hours("30")};
    const auto claim = must(chain);
    EXPECT_EQ(claim.wornPercent, 60);
    EXPECT_EQ(made::text(*claim.ofPart), "9.0..14.0..18.0");
    EXPECT_EQ(claim.low, hours("9"));
    EXPECT_EQ(claim.best, std::nullopt);
    EXPECT_EQ(claim.high, std::nullopt);
    auto elsewhere = chain;
    elsewhere.newHere = false;  // it came from another machine: nothing is said of this one
    EXPECT_EQ(must(elsewhere).low, std::nullopt);
    EXPECT_EQ(must(elsewhere).ofPart, claim.ofPart);
    auto noLife = chain;
    noLife.lifeLow = noLife.lifeHigh = std::nullopt;
    EXPECT_EQ(must(noLife).wornPercent, 60);
    EXPECT_EQ(must(noLife).ofPart, std::nullopt);
}

TEST(Evidence, ADiscGetsThinnerAndABoreWider) {
    // 4.0 new, 3.5 at the limit, 3.8 now: 40 %. Of 40 h or more: at least 16 h.
    const auto disc =
        must(WearSeen{WornPart::Disc, Decimal{40, 1}, Decimal{35, 1}, Decimal{38, 1}, hours("40"), {}});
    EXPECT_EQ(disc.wornPercent, 40);
    EXPECT_EQ(made::text(*disc.ofPart), "16.0..16.0..");
    EXPECT_EQ(disc.low, hours("16"));
    // 76.00 new, 76.05 limit, 76.02 now: 40 %.
    const WearSeen bore{WornPart::Bore, Decimal{7600, 2}, Decimal{7605, 2}, Decimal{7602, 2}, {},
                        hours("100")};
    EXPECT_EQ(must(bore).wornPercent, 40);
    EXPECT_EQ(made::text(*must(bore).ofPart), "0.0..40.0..40.0");
    EXPECT_EQ(must(bore).low, std::nullopt);
}

TEST(Evidence, AnImpossibleMeasurementIsQuestioned) {
    WearSeen bore{WornPart::Bore, Decimal{7600, 2}, Decimal{7605, 2}, Decimal{7599, 2}, {}, {}};
    EXPECT_EQ(refused(bore), (Refused{Fault::Implausible, "now"}));  // it shrank
    bore.now = Decimal{7621, 2};                                     // 420 % of the way
    EXPECT_EQ(refused(bore), (Refused{Fault::Implausible, "now"}));
    bore.now = Decimal{7606, 2};
    EXPECT_EQ(must(bore).wornPercent, 120);  // past its limit is real
    bore.limit = bore.asNew;
    EXPECT_EQ(refused(bore), (Refused{Fault::Inconsistent, "limit"}));
    bore.limit = Decimal{7605, 2};
    bore.lifeLow = hours("30");
    bore.lifeHigh = hours("20");
    EXPECT_EQ(refused(bore), (Refused{Fault::OutOfOrder, "life_high"}));
}

TEST(Evidence, ATyreStampIsAWeek) {
    // Week 1 of 2020 began on Monday, 30 December 2019; week 53 of 2020 on 28 December 2020.
    EXPECT_EQ(must(TyreStamp{"0120"}).madeIn, day("2019-12-30"));
    EXPECT_EQ(must(TyreStamp{"5320"}).madeIn, day("2020-12-28"));
    EXPECT_EQ(must(TyreStamp{"2319"}).madeIn, day("2019-06-03"));
    EXPECT_EQ(must(TyreStamp{"2319"}).low, std::nullopt);
    EXPECT_EQ(refused(TyreStamp{"2226"}), (Refused{Fault::InFuture, "code"}));
    for (const char* bad : {"", "231", "23199", "0019", "5419", "23l9", "23-19", "\xff\xff\xff\xff"})
        EXPECT_EQ(refused(TyreStamp{bad}), (Refused{Fault::Malformed, "code"})) << bad;
}

TEST(Weigh, TheMostOfTheLowsAndTheLeastOfTheHighs) {
    // Meter 41, fitted at 60 by word; seller says 80; two seasons of 40 to 60 h: 80 to 120, middle 100; the
    // chain holds 9 h for the least. 80 to 120; likely 101, the most that anybody holds likely.
    const std::vector<Claim> claims{
        must(MeterShows{hours("41"), MeterFitted::Later, hours("60")}), must(SellersWord{hours("80")}),
        must(SeasonsRidden{Decimal{2, 0}, hours("40"), hours("60")}), Claim{.low = hours("9")}};
    const auto verdict = weigh(claims);
    ASSERT_TRUE(verdict.machine);
    EXPECT_EQ(made::text(*verdict.machine), "80.0..101.0..120.0");
    EXPECT_EQ(verdict.lowBy, 2U);
    EXPECT_EQ(verdict.bestBy, 0U);
    EXPECT_EQ(verdict.highBy, 2U);
    EXPECT_TRUE(verdict.contradictions.empty());
    EXPECT_TRUE(verdict.outside.empty());
}

TEST(Weigh, AMeterAloneHasAnOpenEnd) {
    const std::vector<Claim> claims{must(MeterShows{hours("41")})};
    EXPECT_EQ(made::text(*weigh(claims).machine), "41.0..41.0..");
    EXPECT_FALSE(weigh({}).machine);
    const std::vector<Claim> age{must(TyreStamp{"2319"})};
    EXPECT_FALSE(weigh(age).machine);  // an age is no hours
}

TEST(Weigh, AContradictionIsNamedAndNotAveraged) {
    // Fitted from new and 41 h, but the disc alone holds 48 h.
    const std::vector<Claim> claims{must(SellersWord{hours("45")}),
                                    must(MeterShows{hours("41"), MeterFitted::FromNew}),
                                    Claim{.low = hours("48")}};
    const auto verdict = weigh(claims);
    EXPECT_FALSE(verdict.machine);
    EXPECT_EQ(verdict.contradictions, (std::vector<Contradiction>{{2, 1}}));
}

TEST(Weigh, AWordOutsideTheBracketIsNamed) {
    const std::vector<Claim> claims{must(SellersWord{hours("20")}), must(MeterShows{hours("41")})};
    const auto verdict = weigh(claims);
    EXPECT_EQ(made::text(*verdict.machine), "41.0..41.0..");
    EXPECT_EQ(verdict.outside, (std::vector<std::size_t>{0}));
}

rc::Gen<std::optional<Hours>> someHours() {
    return rc::gen::map(rc::gen::inRange<std::int64_t>(-20, 60), [](std::int64_t count) {
        return count < 0 ? std::nullopt : std::optional(Hours{count * 100});
    });
}

rc::Gen<Claim> someClaim() {
    return rc::gen::map(rc::gen::tuple(someHours(), someHours(), someHours()), [](const auto& t) {
        const auto [a, b, c] = t;
        Claim claim{.low = a, .best = b, .high = c};
        if (claim.low && claim.high && *claim.low > *claim.high)
            std::swap(claim.low, claim.high);
        return claim;
    });
}

TEST(WeighProperties, MoreEvidenceNeverWidens) {
    EXPECT_TRUE(rc::check("never wider", [] {
        const auto claims = *rc::gen::container<std::vector<Claim>>(someClaim());
        auto more = claims;
        more.push_back(*someClaim());
        const auto before = weigh(claims);
        const auto after = weigh(more);
        if (!before.contradictions.empty())
            RC_ASSERT(!after.machine);  // a contradiction does not go away
        if (!before.machine || !after.machine)
            return;
        RC_ASSERT(after.machine->low >= before.machine->low);
        if (before.machine->high)
            RC_ASSERT(after.machine->high && *after.machine->high <= *before.machine->high);
    }));
}

// Every hour that all claims allow, and none else, lies in the bracket; no such hour is a contradiction.
TEST(WeighProperties, TheBracketHoldsExactlyWhatAllAllow) {
    EXPECT_TRUE(rc::check("what all allow", [] {
        const auto claims = *rc::gen::container<std::vector<Claim>>(someClaim());
        const auto verdict = weigh(claims);
        const auto allowed = [&](Hours hour) {
            for (const Claim& claim : claims)
                if ((claim.low && hour < *claim.low) || (claim.high && hour > *claim.high))
                    return false;
            return true;
        };
        bool any = false;
        for (std::int64_t count = 0; count <= 6'000; count += 50) {
            const bool isAllowed = allowed(Hours{count});
            any = any || isAllowed;
            if (verdict.machine)
                RC_ASSERT(isAllowed == (verdict.machine->low <= Hours{count} &&
                                        (!verdict.machine->high || Hours{count} <= *verdict.machine->high)));
        }
        RC_ASSERT(any == verdict.contradictions.empty());
        if (!verdict.machine)
            return;
        RC_ASSERT(allowed(verdict.machine->best));
        for (const Claim& claim : claims)
            if (claim.best && allowed(*claim.best))
                RC_ASSERT(verdict.machine->best >= *claim.best);
    }));
}

}  // namespace
}  // namespace wm::items

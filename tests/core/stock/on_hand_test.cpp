// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/stock/on_hand.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace wm::stock {
namespace {

calendar::Date day(const char* iso) {
    return *calendar::parseDate("date", iso);
}

// Brake fluid: an opened bottle with 120 ml of 500, a full one that ages in June, a full one that has aged,
// and 30 ml that nobody put into a bottle.
class OnHandTest : public testing::Test {
  protected:
    const StockLineId fluid{1};
    const LotId openedBottle{11};
    const LotId full{12};
    const LotId aged{13};
    std::vector<StockLine> lines{
        {.id = fluid, .name = "brake fluid", .unit = Unit::Millilitre, .packAmount = 500, .openedDays = 90}};
    std::vector<Lot> lots{
        {.id = openedBottle,
         .line = fluid,
         .received = day("2026-01-05"),
         .opened = day("2026-03-01"),
         .bestBefore = day("2027-01-01")},
        {.id = full, .line = fluid, .received = day("2026-01-05"), .bestBefore = day("2026-06-30")},
        {.id = aged, .line = fluid, .received = day("2024-01-05"), .bestBefore = day("2026-01-01")}};
    std::vector<StockMove> moves{in(openedBottle, "2026-01-05", 500), in(openedBottle, "2026-03-01", -380),
                                 in(full, "2026-01-05", 500), in(aged, "2024-01-05", 500),
                                 in(std::nullopt, "2026-02-01", 30)};
    std::vector<StockOrder> orders;

    [[nodiscard]] StockMove in(std::optional<LotId> lot, const char* on, std::int64_t amount) const {
        return {.line = fluid, .lot = lot, .date = day(on), .amount = amount};
    }
    [[nodiscard]] OnHand shelf(const char* on) const {
        return onHand(lines, lots, moves, orders, day(on)).at(0);
    }
    [[nodiscard]] static std::vector<std::optional<LotId>> order(const OnHand& line) {
        std::vector<std::optional<LotId>> ids;
        for (const LotOnHand& lot : line.lots)
            ids.push_back(lot.lot);
        return ids;
    }
};

using Taken = std::vector<std::pair<std::optional<LotId>, std::int64_t>>;

TEST_F(OnHandTest, CountsWhatIsThereAndWhatIsGood) {
    const OnHand line = shelf("2026-04-01");
    EXPECT_EQ(line.amount, 120 + 500 + 500 + 30);
    EXPECT_EQ(line.usable, 120 + 500 + 30);
    EXPECT_EQ(order(line), (std::vector<std::optional<LotId>>{openedBottle, aged, full, std::nullopt}));
    EXPECT_TRUE(line.lots[0].opened);
    EXPECT_EQ(line.lots[0].goodUntil, day("2026-05-30"));  // 90 days after it was opened
    EXPECT_TRUE(line.lots[1].tooOld);
    EXPECT_EQ(line.lots[2].goodUntil, day("2026-06-30"));
    EXPECT_EQ(line.lots[3].goodUntil, std::nullopt);
}

TEST_F(OnHandTest, IsGoodThroughItsLastDay) {
    EXPECT_FALSE(shelf("2026-05-30").lots[0].tooOld);
    EXPECT_TRUE(shelf("2026-05-31").lots[0].tooOld);
    EXPECT_EQ(shelf("2026-05-31").usable, 530);
    EXPECT_EQ(shelf("2026-07-01").usable, 30);
}

TEST_F(OnHandTest, LooksBackWithoutWhatCameLater) {
    const OnHand line = shelf("2026-02-10");
    EXPECT_EQ(line.amount, 1530);
    const auto full500 = [&](const LotOnHand& lot) { return lot.lot == openedBottle; };
    const auto bottle = std::find_if(line.lots.begin(), line.lots.end(), full500);
    EXPECT_FALSE(bottle->opened);
    EXPECT_EQ(bottle->amount, 500);
    EXPECT_EQ(bottle->goodUntil, day("2027-01-01"));
    EXPECT_TRUE(shelf("2020-01-01").lots.empty());
}

TEST_F(OnHandTest, DrawsFromTheOpenedBottleFirst) {
    const OnHand line = shelf("2026-04-01");
    EXPECT_EQ(drawFrom(line, 50), (Taken{{openedBottle, 50}}));
    EXPECT_EQ(drawFrom(line, 200), (Taken{{openedBottle, 120}, {full, 80}}));
    EXPECT_EQ(drawFrom(line, 640), (Taken{{openedBottle, 120}, {full, 500}, {std::nullopt, 20}}));
    EXPECT_EQ(drawFrom(line, 700), (Taken{{openedBottle, 120}, {full, 500}, {std::nullopt, 30}, {aged, 50}}));
    EXPECT_TRUE(drawFrom(line, 0).empty());
}

TEST_F(OnHandTest, TakesMoreThanThereIsFromNoContainer) {
    const OnHand line = shelf("2026-04-01");
    EXPECT_EQ(drawFrom(line, 1200),
              (Taken{{openedBottle, 120}, {full, 500}, {std::nullopt, 30 + 50}, {aged, 500}}));
    EXPECT_EQ(drawFrom({.line = fluid}, 7), (Taken{{std::nullopt, 7}}));
}

TEST_F(OnHandTest, MayBeLessThanNothing) {
    moves = {in(std::nullopt, "2026-01-01", -40)};
    OnHand line = shelf("2026-04-01");
    EXPECT_EQ(line.amount, -40);
    EXPECT_EQ(line.usable, 0);
    EXPECT_EQ(drawFrom(line, 10), (Taken{{std::nullopt, 10}}));
    // Full again: what was used before it was booked in is taken off.
    moves.push_back(in(full, "2026-02-01", 500));
    line = shelf("2026-04-01");
    EXPECT_EQ(line.amount, 460);
    EXPECT_EQ(line.usable, 460);
    EXPECT_EQ(drawFrom(line, 480), (Taken{{full, 480}}));
}

TEST_F(OnHandTest, AnOrderIsWorkedOffByItsPurchases) {
    orders = {{.id = StockOrderId{21}, .line = fluid, .date = day("2026-03-01"), .amount = 1500},
              {.id = StockOrderId{22}, .line = fluid, .date = day("2026-03-20"), .amount = 500}};
    EXPECT_EQ(shelf("2026-02-28").onOrder, 0);
    EXPECT_EQ(shelf("2026-03-01").onOrder, 1500);
    EXPECT_EQ(shelf("2026-04-01").onOrder, 2000);
    StockMove part = in(full, "2026-03-25", 1000);
    part.order = StockOrderId{21};
    moves.push_back(part);
    EXPECT_EQ(shelf("2026-04-01").onOrder, 1000);
    part.amount = 900;  // more than was ordered: nothing more to come
    moves.push_back(part);
    EXPECT_EQ(shelf("2026-04-01").onOrder, 500);
}

TEST_F(OnHandTest, HasOneEntryALineInTheirOrder) {
    lines.push_back({.id = StockLineId{2}, .name = "spark plug"});
    const auto all = onHand(lines, lots, moves, orders, day("2026-04-01"));
    ASSERT_EQ(all.size(), 2U);
    EXPECT_EQ(all[1].line, StockLineId{2});
    EXPECT_EQ(all[1].amount, 0);
    EXPECT_TRUE(all[1].lots.empty());
}

}  // namespace
}  // namespace wm::stock

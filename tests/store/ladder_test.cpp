// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/store/ladder.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <random>

namespace wm::store {
namespace {

using calendar::Date;
using Copies = std::vector<LadderCopy>;

const Date kStart = *calendar::makeDate(2026, 5, 16);

Copies keptOf(const Copies& newestFirst) {
    const std::vector<bool> kept = keptOnLadder(newestFirst);
    Copies stay;
    for (std::size_t at = 0; at < newestFirst.size(); ++at)
        if (kept.at(at))
            stay.push_back(newestFirst[at]);
    return stay;
}

/// A garage through the years: a copy where one is due, thinned out after each.
class Ladder {
  public:
    void change(Date today) {
        ++revision_;
        if (!isCopyDue(copies_, revision_, today))
            return;
        Copies before = copies_;
        before.insert(before.begin(), {++written_, revision_, today});
        copies_ = keptOf(before);
        lost_ = before.size() - copies_.size();
        expectNothingNewerGone(before);
    }
    [[nodiscard]] const Copies& copies() const { return copies_; }
    [[nodiscard]] std::size_t lost() const { return lost_; }
    [[nodiscard]] std::int64_t written() const { return written_; }
    [[nodiscard]] bool has(Date day) const {
        return std::any_of(copies_.begin(), copies_.end(),
                           [day](const LadderCopy& copy) { return copy.day == day; });
    }

  private:
    // What goes is older than a copy of its own week or month that stays, or than all that stays.
    void expectNothingNewerGone(const Copies& before) const {
        for (const LadderCopy& gone : before) {
            if (std::find(copies_.begin(), copies_.end(), gone) != copies_.end())
                continue;
            const bool isStoodFor = std::any_of(copies_.begin(), copies_.end(), [&](const LadderCopy& kept) {
                return writtenAfter(kept, gone) &&
                       (calendar::isoWeek(kept.day) == calendar::isoWeek(gone.day) ||
                        (kept.day.year() == gone.day.year() && kept.day.month() == gone.day.month()));
            });
            EXPECT_TRUE(isStoodFor || writtenAfter(copies_.back(), gone)) << gone.order;
        }
    }

    Copies copies_;
    std::int64_t revision_ = 0;
    std::int64_t written_ = 0;
    std::size_t lost_ = 0;
};

TEST(LadderTest, KeepsTenDaysThenWeeksThenMonths) {
    Ladder ladder;
    for (int day = 0; day <= 1000; ++day)
        ladder.change(kStart.plusDays(day));
    const Copies& copies = ladder.copies();
    ASSERT_EQ(copies.size(), 30U);
    for (int i = 0; i < 10; ++i)
        EXPECT_EQ(copies[static_cast<std::size_t>(i)].day, kStart.plusDays(1000 - i));
    for (std::size_t i = 11; i < 18; ++i)
        EXPECT_EQ(copies[i].day.isoWeekday(), 7) << "the last of its week";
    for (std::size_t i = 19; i < 30; ++i) {
        const int months = (copies[i - 1].day.year() - copies[i].day.year()) * 12 +
                           copies[i - 1].day.month() - copies[i].day.month();
        EXPECT_EQ(months, 1) << i;
    }
    EXPECT_GT(kStart.plusDays(1000) - copies.back().day, 365);
}

TEST(LadderTest, CountsDaysWithChangesNotDays) {
    Ladder ladder;
    for (int i = 0; i < 10; ++i)
        ladder.change(kStart.plusDays(i * 40));
    EXPECT_EQ(ladder.copies().size(), 10U);
}

TEST(LadderTest, CopiesOncePerDayHoweverOftenItChanges) {
    Ladder ladder;
    for (int i = 0; i < 60; ++i)
        ladder.change(kStart);
    EXPECT_EQ(ladder.written(), 1);
}

// Garages of any rhythm, clocks that run wild: each new copy costs one old one at most, the ten last are
// there, the number is bounded.
TEST(LadderTest, LosesLittleWhateverTheClockSays) {
    std::mt19937 chance(20260516);
    const auto roll = [&chance](int low, int high) {
        return std::uniform_int_distribution(low, high)(chance);
    };
    for (int garage = 0; garage < 60; ++garage) {
        Ladder ladder;
        std::vector<std::int64_t> written;
        Date today = kStart;
        const int wildness = garage % 3;
        for (int i = 0; i < 500; ++i) {
            today = today.plusDays(roll(0, 1 + garage % 9));
            Date shown = today;
            if (wildness > 0 && roll(0, 9) < wildness * 3)
                shown = today.plusDays(roll(-4000, 4000));
            const std::int64_t before = ladder.written();
            ladder.change(shown);
            if (ladder.written() == before)
                continue;
            written.push_back(ladder.written());
            EXPECT_LE(ladder.lost(), 1U);
            EXPECT_LE(ladder.copies().size(), kNewestCopies + kWeeklyCopies + kMonthlyCopies);
            for (std::size_t k = 0; k < std::min(written.size(), kNewestCopies); ++k)
                EXPECT_EQ(ladder.copies().at(k).order, written[written.size() - 1 - k]);
        }
    }
}

TEST(LadderTest, AYearAheadAndBackCostsNoMoreThanTwoCopiesWould) {
    for (int years : {-30, -1, 1, 10}) {
        Ladder ladder;
        Ladder right;
        for (int day = 0; day < 700; ++day) {
            ladder.change(kStart.plusDays(day));
            right.change(kStart.plusDays(day));
        }
        const Copies before = ladder.copies();
        const Date today = kStart.plusDays(700);
        ladder.change(today.plusDays(365 * years));
        EXPECT_LE(ladder.lost(), 1U);
        for (int i = 0; i < 20; ++i)
            ladder.change(today);
        EXPECT_EQ(ladder.written(), right.written() + 2) << "one for the wrong day, one for the right one";
        std::size_t gone = 0;
        for (const LadderCopy& copy : before)
            gone += ladder.has(copy.day) ? 0 : 1;
        EXPECT_LE(gone, 2U);
    }
}

TEST(LadderTest, AnEarlierStatePutInTheFilesPlaceIsCopied) {
    EXPECT_FALSE(isCopyDue({{7, 40, kStart}}, 41, kStart));
    EXPECT_TRUE(isCopyDue({{7, 40, kStart}}, 12, kStart));
    EXPECT_TRUE(isCopyDue({{7, 40, kStart}}, 140, kStart));
    EXPECT_TRUE(isCopyDue({}, 1, kStart));
}

TEST(LadderTest, CopiesOfEarlierProgramsComeBeforeTheCountedOnes) {
    EXPECT_TRUE(writtenAfter({1, 3, kStart}, {0, 900, kStart.plusDays(900)}));
    EXPECT_TRUE(writtenAfter({0, 41, kStart}, {0, 40, kStart.plusDays(900)}));
}

}  // namespace
}  // namespace wm::store

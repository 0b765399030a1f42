// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/book/placed.h"

#include "tests/core/verbs/bench.h"

namespace wm::book {

using namespace verbs;
using calendar::DayPart;

namespace {

class PlacedTest : public testing::Test, public FurnishedBench {
  protected:
    // Oil at 10.0 h by the meter, told in the morning of a day.
    void changeOilAt(std::int64_t meter) {
        auto draft = JobDraft{.record = job(oilChange, "2026-03-02")};
        draft.record.meter = units::Hours{meter};
        must(record(draft));
    }
    void rideTo(std::int64_t meter) {
        must(ride(
            {.outing = outing("2026-03-02", 130), .meterAfter = units::Hours{meter}, .handTightSeen = true}));
    }
    [[nodiscard]] std::int64_t behindOil() const {
        return *book().dueLine(oilChange)->countdown.limits.front().behind.best;
    }
};

TEST_F(PlacedTest, AJobToldInTheMorningHasTheRideOfThatDayBehindIt) {
    must(ride({.outing = outing("2026-03-01", 100), .meterAfter = units::Hours{1000}}));
    changeOilAt(1000);
    EXPECT_EQ(behindOil(), 0);
    rideTo(1130);
    EXPECT_EQ(behindOil(), 130);
    const auto now = book();
    const auto& told = now.ledger().all<upkeep::Record>().back();
    EXPECT_EQ(told.part, DayPart::AfterRiding) << "what was told stands as it was told";
    EXPECT_EQ(now.placed(told).part, DayPart::BeforeRiding);
    EXPECT_EQ(now.records(heron, false).front()->part, DayPart::BeforeRiding);
    // Its reading was the morning's too: nothing on that meter ran backwards.
    EXPECT_EQ(now.meterNow(heron), units::Hours{1130});
}

TEST_F(PlacedTest, AFigureThatTheRideLeftIsOfTheEvening) {
    rideTo(1130);
    changeOilAt(1130);
    EXPECT_EQ(behindOil(), 0);
    EXPECT_EQ(book().placed(ledger().all<upkeep::Record>().back()).part, DayPart::AfterRiding);
}

TEST_F(PlacedTest, AReadingWithoutARideSaysNothingOfTheRiding) {
    changeOilAt(1000);
    must(saying(logReading, usage::HourReading{
                                .machine = heron, .date = day("2026-03-02"), .shown = units::Hours{1130}}));
    EXPECT_EQ(book().placed(ledger().all<upkeep::Record>().back()).part, DayPart::AfterRiding);
}

// A file of before the rule, in which the record of a job on the bench names no item.
TEST_F(PlacedTest, AJobAtAnEmptiedPositionIsOfWhatLiesOnTheBench) {
    const TaskId task = saveWheelBearings();
    must(saying(moveItem,
                items::Move{.item = wheel, .date = day("2026-03-01"), .kind = items::MoveKind::Removed}));
    upkeep::Record record = job(task, "2026-03-02");
    record.version = ledger().all<upkeep::TaskVersion>().back().id;
    const Placed placed(picture::Ledger({record, ledger().all<upkeep::TaskVersion>().back()}),
                        book().fittings(), nullptr);
    EXPECT_EQ(placed.placed(record).item, wheel);
    record.date = day("2026-02-01");  // it was fitted then
    const Placed earlier(picture::Ledger({record, ledger().all<upkeep::TaskVersion>().back()}),
                         book().fittings(), nullptr);
    EXPECT_EQ(earlier.placed(record).item, std::nullopt);
}

}  // namespace
}  // namespace wm::book

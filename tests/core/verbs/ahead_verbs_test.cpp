// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/verbs/bench.h"

namespace wm::verbs {
namespace {

using base::Fault;
using units::Minutes;

class AheadVerbsTest : public testing::Test, public FurnishedBench {
  protected:
    const std::optional<TaskId> noTask{};
    const std::optional<SnagId> noSnag{};
    [[nodiscard]] outlook::Event sandDay() const {
        return {.name = "Sand day",
                .first = day("2026-06-06"),
                .last = day("2026-06-07"),
                .entries = {{.machine = heron, .rider = mara}}};
    }
    At eventWith(const std::function<void(outlook::Event&)>& spoil) {
        auto event = sandDay();
        event.name = "Mud day";
        spoil(event);
        return refusedAt(saying(saveEvent, event));
    }
    At windowWith(const std::function<void(weekend::WorkWindow&)>& spoil) {
        weekend::WorkWindow window{.date = today, .startsAt = Minutes{1110}, .endsAt = Minutes{1260}};
        spoil(window);
        return refusedAt(saying(saveWindow, window));
    }
};

TEST_F(AheadVerbsTest, SavesAnEvent) {
    auto event = sandDay();
    EXPECT_EQ(must(saying(saveEvent, event)), "added Sand day on 2026-06-06");
    event.id = last<outlook::Event>();
    event.place = "Kvarnmon";
    EXPECT_EQ(must(saying(saveEvent, event)), "changed Sand day on 2026-06-06");
    EXPECT_EQ(refusedAt(saying(saveEvent, event)), At(Fault::NothingToDo, "id"));
    EXPECT_EQ(refusedAt(saying(saveEvent, sandDay())), At(Fault::Duplicate, "name"));
    event.calledOff = true;
    EXPECT_EQ(must(saying(saveEvent, event)), "called off Sand day on 2026-06-06");
    must(saying(saveEvent, sandDay()));
    event.id = EventId{1};
    EXPECT_EQ(refusedAt(saying(saveEvent, event)), At(Fault::Unknown, "id"));
}

TEST_F(AheadVerbsTest, RefusesAnEventThatCannotBe) {
    EXPECT_EQ(eventWith([](auto& e) { e.name = " "; }), At(Fault::Empty, "name"));
    EXPECT_EQ(eventWith([](auto& e) { e.place = "\xff"; }), At(Fault::NotText, "place"));
    EXPECT_EQ(eventWith([](auto& e) { e.last = day("2026-06-05"); }), At(Fault::OutOfOrder, "last_day"));
    EXPECT_EQ(eventWith([](auto& e) { e.last = day("2026-08-06"); }), At(Fault::TooLarge, "last_day"));
    EXPECT_EQ(eventWith([](auto& e) { e.first = calendar::Date{-100'000}; }),
              At(Fault::NotADate, "last_day"));
    EXPECT_EQ(eventWith([](auto& e) { e.entries[0].machine = MachineId{1}; }),
              At(Fault::Unknown, "entries[0].machine"));
    EXPECT_EQ(eventWith([](auto& e) { e.entries[0].rider = PersonId{1}; }),
              At(Fault::Unknown, "entries[0].rider"));
    EXPECT_EQ(eventWith([](auto& e) { e.entries.push_back(e.entries[0]); }),
              At(Fault::Duplicate, "entries[1].machine"));
    items::Machine card = *ledger().find<items::Machine>(heron);
    card.goneOn = day("2026-06-01");
    must(saying(saveMachine, card));
    EXPECT_EQ(eventWith([](auto&) {}), At(Fault::Retired, "entries[0].machine"));
}

TEST_F(AheadVerbsTest, SaysHowLongAnEngineTakesToBeCold) {
    EXPECT_EQ(ledger().garage().cool, Minutes{240}) << "a habit of the trade";
    EXPECT_EQ(must(saying(setCooling, Minutes{150})), "an engine is cold after 2:30");
    EXPECT_EQ(ledger().garage().cool, Minutes{150});
    EXPECT_EQ(refusedAt(saying(setCooling, Minutes{150})), At(Fault::NothingToDo, "cool_minutes"));
    EXPECT_EQ(refusedAt(saying(setCooling, Minutes{-1})), At(Fault::Negative, "cool_minutes"));
    EXPECT_EQ(refusedAt(saying(setCooling, Minutes{1441})), At(Fault::TooLarge, "cool_minutes"));
    must(saying(nameGarage, "The lean-to", std::nullopt));
    EXPECT_EQ(ledger().garage().cool, Minutes{150}) << "a name changes nothing of it";
}

TEST_F(AheadVerbsTest, SavesBenchTime) {
    weekend::WorkWindow window{.date = today, .startsAt = Minutes{1110}, .endsAt = Minutes{1260}};
    EXPECT_EQ(must(saying(saveWindow, window)), "added the bench time on 2026-05-20 from 18:30 to 21:00");
    window.id = last<weekend::WorkWindow>();
    EXPECT_EQ(book().nextWindow()->id, window.id);
    window.active = false;
    EXPECT_EQ(must(saying(saveWindow, window)), "dropped the bench time on 2026-05-20 from 18:30 to 21:00");
    EXPECT_EQ(windowWith([](auto& w) { w.endsAt = w.startsAt; }), At(Fault::OutOfOrder, "ends_at"));
    EXPECT_EQ(windowWith([](auto& w) { w.startsAt = Minutes{-1}; }), At(Fault::Negative, "starts_at"));
    EXPECT_EQ(windowWith([](auto& w) { w.endsAt = Minutes{1441}; }), At(Fault::TooLarge, "ends_at"));
    EXPECT_EQ(windowWith([](auto& w) { w.hands = 0; }), At(Fault::NotPositive, "hands"));
    EXPECT_EQ(windowWith([](auto& w) { w.hands = 21; }), At(Fault::TooLarge, "hands"));
    window.id = WindowId{1};
    EXPECT_EQ(refusedAt(saying(saveWindow, window)), At(Fault::Unknown, "id"));
}

TEST_F(AheadVerbsTest, PicksAJobAndLeavesItAgain) {
    EXPECT_EQ(must(saying(pick, heron, std::optional(pads), noSnag, true)),
              "picked \"Brake pads\" on Heron 250");
    ASSERT_EQ(book().pickedJobs(heron).size(), 1U);
    EXPECT_EQ(refusedAt(saying(pick, heron, std::optional(pads), noSnag, true)),
              At(Fault::NothingToDo, "task"));
    EXPECT_EQ(must(saying(pick, heron, std::optional(pads), noSnag, false)),
              "left \"Brake pads\" on Heron 250 for later");
    must(saying(pick, heron, std::optional(pads), noSnag, true));
    EXPECT_EQ(ledger().all<weekend::Pick>().size(), 1U);
    must(record({.record = job(pads, "2026-05-19")}));
    EXPECT_TRUE(book().pickedJobs(heron).empty());
    EXPECT_EQ(refusedAt(saying(pick, heron, noTask, noSnag, true)), At(Fault::Empty, "task"));
    EXPECT_EQ(refusedAt(saying(pick, heron, std::optional(pads), std::optional(SnagId{1}), true)),
              At(Fault::Inconsistent, "task"));
    EXPECT_EQ(refusedAt(saying(pick, heron, std::optional(TaskId{1}), noSnag, true)),
              At(Fault::Unknown, "task"));
    EXPECT_EQ(refusedAt(saying(pick, heron, noTask, std::optional(SnagId{1}), true)),
              At(Fault::Unknown, "snag"));
    EXPECT_EQ(refusedAt(saying(pick, MachineId{1}, std::optional(pads), noSnag, true)),
              At(Fault::Unknown, "machine"));
}

TEST_F(AheadVerbsTest, NumbersTheSheets) {
    weekend::IssuedSheet paper{.machine = heron, .date = today, .jobs = {{.task = pads}}};
    EXPECT_EQ(must(saying(issueSheet, paper)), "issued job sheet 1 for Heron 250");
    EXPECT_EQ(must(saying(issueSheet, paper)), "issued job sheet 2 for Heron 250");
    must(saying(strike, last<weekend::IssuedSheet>().value(), "jammed in the printer"));
    EXPECT_EQ(must(saying(issueSheet, paper)), "issued job sheet 3 for Heron 250");
    const auto at = [&](auto&& spoil) {
        auto other = paper;
        spoil(other);
        return refusedAt(saying(issueSheet, other));
    };
    EXPECT_EQ(at([](auto& s) { s.jobs.clear(); }), At(Fault::Empty, "jobs"));
    EXPECT_EQ(at([](auto& s) { s.jobs = {{}}; }), At(Fault::Empty, "jobs[0].task"));
    EXPECT_EQ(at([](auto& s) { s.jobs[0].task = TaskId{1}; }), At(Fault::Unknown, "jobs[0].task"));
    EXPECT_EQ(at([](auto& s) { s.jobs = {{.snag = SnagId{1}}}; }), At(Fault::Unknown, "jobs[0].snag"));
    EXPECT_EQ(at([](auto& s) { s.machine = MachineId{1}; }), At(Fault::Unknown, "machine"));
    EXPECT_EQ(at([](auto& s) { s.date = day("2026-05-21"); }), At(Fault::InFuture, "date"));
    EXPECT_EQ(at([](auto& s) { s.target = "\xff"; }), At(Fault::NotText, "target"));
}

}  // namespace
}  // namespace wm::verbs

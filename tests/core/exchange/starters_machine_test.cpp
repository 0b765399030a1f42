// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// A new machine from each starter schedule that comes with the program: it is taken over whole, comes back
// from a text, and its list opens.
#include <gtest/gtest.h>

#include <algorithm>
#include <map>
#include <memory>
#include <set>

#include "core/book/book.h"
#include "core/exchange/json.h"
#include "core/exchange/starter.h"
#include "core/verbs/verbs.h"
#include "tests/core/exchange/shipped.h"

namespace wm::exchange {
namespace {

using book::Book;
using calendar::Date;
using outlook::StandingKind;
using picture::Ledger;
using test::kShippedStarters;
using test::shippedStarter;
using test::withCode;
using verbs::VerbContext;

const Date kBought = *calendar::makeDate(2026, 3, 2);

// An hour and a half on hard ground.
bool isOverAfterOneRide(const upkeep::Limit& limit) {
    const auto most = limit.first.value_or(limit.every) + limit.allowance;
    return (limit.counter == upkeep::Counter::Outings && most <= 1) ||
           (limit.counter == upkeep::Counter::Hours && most <= 150);
}

class StarterMachineTest : public testing::TestWithParam<const char*> {
  protected:
    void SetUp() override {
        items::Machine machine{
            .name = "Dunlin", .starter = starter_.name, .since = kBought, .startedNew = true};
        machine.pastHigh = units::Hours{0};
        must([&](const VerbContext& context) { return verbs::saveMachine(context, machine); });
        machine_ = ledger_->all<items::Machine>().front().id;
        must([&](const VerbContext& context) {
            return verbs::adoptSchedule(context, machine_, starter_.name, starter_.steps, starter_.joints,
                                        starter_.tasks);
        });
    }

    template <class Verb>
    void must(Verb&& verb) {
        const auto change = verb(VerbContext{book(today_), [this] { return ++lastId_; }});
        ASSERT_TRUE(change) << change.error().field << " given " << change.error().given;
        ledger_ = std::make_shared<const Ledger>(ledger_->with(*change));
    }

    void ride(int days, usage::Ground ground, bool crashed = false) {
        today_ = kBought.plusDays(days);
        verbs::OutingDraft draft;
        draft.outing.machine = machine_;
        draft.outing.date = today_;
        draft.outing.hours = units::Hours{150};
        draft.outing.ground = ground;
        draft.crashed = crashed;
        must([&](const VerbContext& context) { return verbs::logOuting(context, draft); });
    }

    [[nodiscard]] Book book(Date today) const { return {ledger_, today}; }
    [[nodiscard]] std::set<std::string> overdue() const {
        std::set<std::string> codes;
        const Book now = book(today_);
        for (const auto& line : now.due(machine_))
            if (line.standing.kind == StandingKind::Overdue)
                codes.insert(line.task->code);
        return codes;
    }

    const Starter starter_ = shippedStarter(GetParam());
    std::shared_ptr<const Ledger> ledger_ = std::make_shared<const Ledger>();
    std::int64_t lastId_ = 0;
    MachineId machine_{};
    Date today_ = kBought;
};

INSTANTIATE_TEST_SUITE_P(All, StarterMachineTest, testing::ValuesIn(kShippedStarters), [](const auto& file) {
    std::string name(file.param);
    name.resize(name.find('.'));
    std::erase(name, '-');
    return name;
});

TEST_P(StarterMachineTest, IsTakenOverWhole) {
    const auto tasks = ledger_->all<upkeep::TaskVersion>();
    ASSERT_EQ(tasks.size(), starter_.tasks.size());
    for (const auto& task : tasks) {
        const auto* told = withCode(starter_.tasks, task.code);
        ASSERT_NE(told, nullptr) << task.code;
        EXPECT_EQ(task.active, told->active) << task.code;
        EXPECT_EQ(task.limits, told->limits) << task.code;
        EXPECT_EQ(task.cautions, told->cautions) << task.code;
        EXPECT_EQ(task.kit, told->kit) << task.code;
    }
    EXPECT_EQ(ledger_->all<fastening::JointVersion>().size(), starter_.joints.size());
    EXPECT_EQ(ledger_->all<weekend::StepVersion>().size(), starter_.steps.size());
}

TEST_P(StarterMachineTest, ComesBackFromATextAndIntoAnEmptyFile) {
    ride(3, usage::Ground::Mud);
    const auto read = fromJson(toJson(*ledger_));
    ASSERT_TRUE(read) << read.error().field;
    EXPECT_EQ(Ledger(*read).rows(), ledger_->rows());
    const Book empty(std::make_shared<const Ledger>(), today_);
    const auto taken = verbs::adoptAll({empty, [] { return 1; }}, *read);
    ASSERT_TRUE(taken) << taken.error().field << " given " << taken.error().given;
    EXPECT_EQ(Ledger{}.with(*taken).rows(), ledger_->rows());
}

TEST_P(StarterMachineTest, OpensWithItsDueList) {
    const Book now = book(today_);
    std::set<std::string> inUse;
    for (const auto& task : starter_.tasks)
        if (task.active)
            inUse.insert(task.code);
    std::set<std::string> listed;
    for (const auto& line : now.due(machine_)) {
        listed.insert(line.task->code);
        EXPECT_NE(line.standing.kind, StandingKind::NoRecord)
            << line.task->code << ": the machine is new, nothing behind it is unknown";
        EXPECT_NE(line.standing.kind, StandingKind::Overdue) << line.task->code;
    }
    EXPECT_EQ(listed, inUse);
}

// A machine that is ridden without an odometer: what stands in kilometres alone brings nothing on.
TEST_P(StarterMachineTest, AMuddyDayAndACrashBringWhatTheyMust) {
    ride(3, usage::Ground::Hard);
    const auto afterOne = overdue();
    for (const auto& task : starter_.tasks)
        EXPECT_EQ(afterOne.contains(task.code),
                  task.active && std::any_of(task.limits.begin(), task.limits.end(), isOverAfterOneRide))
            << task.code;
    ride(4, usage::Ground::Mud, true);
    const auto afterCrash = overdue();
    for (const auto& task : starter_.tasks)
        for (const auto& trigger : task.triggers)
            if (task.active && (trigger.happening == upkeep::Happening::Crash ||
                                trigger.happening == upkeep::Happening::MudDay)) {
                EXPECT_TRUE(afterCrash.contains(task.code)) << task.code;
            }
    EXPECT_TRUE(afterCrash.contains("fork-seals-clean")) << "one mud day, or five hours and a day";
}

}  // namespace
}  // namespace wm::exchange

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// Which of the tasks that nobody has recorded is to be looked at first.
#include <gtest/gtest.h>
#include <rapidcheck.h>

#include "core/upkeep/unknown.h"
#include "tests/core/made.h"

namespace wm::upkeep {
namespace {

using made::day;

TaskVersion named(std::string name, Consequence consequence, std::vector<Limit> limits = {}) {
    TaskVersion task = made::task(std::move(limits), consequence);
    task.name = std::move(name);
    return task;
}

usage::Exposure life(const char* best, const char* high) {
    usage::Exposure life;
    life.hours.best = made::hours(best);
    life.hours.high = *high == '\0' ? std::nullopt : std::optional(made::hours(high));
    return life;
}

TEST(Unknown, HoursAreReckonedFromTheHighEnd) {
    const auto task = named("pads", Consequence::SafetyEvident, {made::every("15")});
    // 41 / 15 and, where nobody knows a high end, 30 / 15.
    EXPECT_NEAR(intervalsBehind({&task, life("30", "41"), day("2026-01-01")}, day("2026-03-01")), 2.733,
                0.001);
    EXPECT_DOUBLE_EQ(intervalsBehind({&task, life("30", ""), day("2026-01-01")}, day("2026-03-01")), 2);
}

TEST(Unknown, TheCalendarIsReckonedFromTheOldestAge) {
    auto task =
        named("fluid", Consequence::SafetyEvident, {made::every(9, Counter::Months), made::every("25")});
    // Six years of nine months each: 8; 41 / 25 h is less.
    EXPECT_NEAR(intervalsBehind({&task, life("30", "41"), day("2020-03-01")}, day("2026-03-01")), 8, 0.01);
    task.combine = Combine::Last;
    EXPECT_DOUBLE_EQ(intervalsBehind({&task, life("30", "41"), day("2020-03-01")}, day("2026-03-01")), 1.64);
    const auto bare = named("when needed", Consequence::SafetyEvident);
    EXPECT_DOUBLE_EQ(intervalsBehind({&bare, life("30", "41"), day("2020-03-01")}, day("2026-03-01")), 0);
}

TEST(Unknown, HiddenAndSafetyComeFirst) {
    const std::vector<TaskVersion> tasks{named("grips", Consequence::CostsMoney, {made::every("1")}),
                                         named("chain", Consequence::EndsRace, {made::every("1")}),
                                         named("linkage", Consequence::HiddenWear, {made::every("10")}),
                                         named("pads", Consequence::SafetyEvident, {made::every("20")}),
                                         named("discs", Consequence::SafetyEvident, {made::every("15")}),
                                         named("frame", Consequence::SafetyHidden, {made::every("40")})};
    std::vector<Unknown> unknowns;
    for (const auto& task : tasks)
        unknowns.push_back({&task, life("80", "120"), day("2026-01-01")});
    EXPECT_EQ(rankUnknown(unknowns, day("2026-03-01")), (std::vector<std::size_t>{5, 4, 3, 2, 1, 0}));
}

TEST(Unknown, LookingSettlesWhatUsesNothing) {
    TaskVersion task = named("bearings", Consequence::SafetyEvident);
    EXPECT_TRUE(isALook(task));
    task.kit = {{.what = "bearing", .onlyIfNeeded = true}};
    EXPECT_TRUE(isALook(task));
    task.kit.push_back({.what = "grease"});
    EXPECT_FALSE(isALook(task));
    task.kit.clear();
    task.renews = true;
    EXPECT_FALSE(isALook(task));
}

// The order by another way: pick the worst of the rest, one at a time, comparing fractions in whole numbers.
struct Fraction {
    std::int64_t over;
    std::int64_t under;
};
bool isMore(const Fraction& a, const Fraction& b) {
    return a.over * b.under > b.over * a.under;
}
int classOf(Consequence c) {
    if (isSafety(c))
        return isHidden(c) ? 1 : 2;
    return isHidden(c) ? 3 : c == Consequence::EndsRace ? 4 : 5;
}

TEST(UnknownProperties, TheOrderIsThatOfPickingTheWorstEachTime) {
    EXPECT_TRUE(rc::check("order", [] {
        const auto size = *rc::gen::inRange<std::size_t>(0, 12);
        std::vector<TaskVersion> tasks;
        std::vector<Fraction> most;
        std::vector<Unknown> unknowns;
        for (std::size_t at = 0; at < size; ++at) {
            const auto every = *rc::gen::inRange<std::int64_t>(1, 12);
            const auto behind = *rc::gen::inRange<std::int64_t>(0, 12);
            const bool open = *rc::gen::arbitrary<bool>();
            const bool days = *rc::gen::arbitrary<bool>();
            auto task = named(std::string(1, static_cast<char>('a' + *rc::gen::inRange(0, 4))),
                              static_cast<Consequence>(*rc::gen::inRange(0, 5)),
                              {{.counter = days ? Counter::Days : Counter::Hours, .every = every}});
            task.task = TaskId{static_cast<std::int64_t>(at) + 1};
            tasks.push_back(task);
            most.push_back({behind, every});
            Unknown unknown{nullptr, {}, day("2026-03-01").plusDays(static_cast<std::int32_t>(-behind))};
            unknown.life.hours = {units::Hours{0}, units::Hours{open ? behind : behind / 2},
                                  open ? std::nullopt : std::optional(units::Hours{behind})};
            unknowns.push_back(unknown);
        }
        for (std::size_t at = 0; at < size; ++at)
            unknowns[at].task = &tasks[at];
        std::vector<std::size_t> rest(size);
        for (std::size_t at = 0; at < size; ++at)
            rest[at] = at;
        std::vector<std::size_t> expected;
        while (!rest.empty()) {
            std::size_t worst = 0;
            for (std::size_t at = 1; at < rest.size(); ++at) {
                const auto& a = tasks[rest[at]];
                const auto& b = tasks[rest[worst]];
                const bool sameClass = classOf(a.consequence) == classOf(b.consequence);
                const bool more = isMore(most[rest[at]], most[rest[worst]]);
                const bool less = isMore(most[rest[worst]], most[rest[at]]);
                if (!sameClass ? classOf(a.consequence) < classOf(b.consequence)
                    : more     ? true
                    : less     ? false
                               : a.name < b.name || (a.name == b.name && a.task < b.task))
                    worst = at;
            }
            expected.push_back(rest[worst]);
            rest.erase(rest.begin() + static_cast<std::ptrdiff_t>(worst));
        }
        RC_ASSERT(rankUnknown(unknowns, day("2026-03-01")) == expected);
    }));
}

}  // namespace
}  // namespace wm::upkeep

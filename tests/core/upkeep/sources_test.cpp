// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// Where an amount comes from, and what a task's new source does to it.
#include "core/upkeep/sources.h"

#include <gtest/gtest.h>

namespace wm::upkeep {
namespace {

TaskVersion taskWith(KitLine line, std::string source) {
    return {.kit = {std::move(line)}, .source = std::move(source)};
}

// The source of the only line, if the task comes from the manual by now.
std::string kept(const TaskVersion& stood, KitLine line) {
    TaskVersion version = taskWith(std::move(line), "manual");
    keepSources(stood, version);
    return version.kit.front().source;
}

const KitLine kOil{.what = "oil", .amount = 850, .unit = Unit::Millilitre};

TEST(SourcesTest, AnAmountComesFromWhereItSaysElseFromWhereItsTaskDoes) {
    KitLine own = kOil;
    own.source = "seller";
    EXPECT_EQ(sourceOf(taskWith(kOil, "manual"), kOil), "manual");
    EXPECT_EQ(sourceOf(taskWith(own, "manual"), own), "seller");
}

TEST(SourcesTest, WhatStoodThereKeepsTheOldOne) {
    EXPECT_EQ(kept(taskWith(kOil, "practice"), kOil), "practice");
    EXPECT_EQ(kept(taskWith(kOil, ""), kOil), kNoSource);
    EXPECT_EQ(kept(taskWith(kOil, "manual"), kOil), "") << "the same source as before";
}

TEST(SourcesTest, WhatWasSaidAnewIsTheNewOnes) {
    const TaskVersion stood = taskWith(kOil, "practice");
    KitLine line = kOil;
    line.amount = 900;
    EXPECT_EQ(kept(stood, line), "");
    line = kOil;
    line.unit = Unit::Gram;
    EXPECT_EQ(kept(stood, line), "");
    line = kOil;
    line.what = "fork oil";
    EXPECT_EQ(kept(stood, line), "");
    line = kOil;
    line.source = "seller";
    EXPECT_EQ(kept(stood, line), "seller");
    EXPECT_EQ(kept(taskWith(line, "practice"), kOil), "") << "its own one was taken off by hand";
}

}  // namespace
}  // namespace wm::upkeep

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// steps, as it is said at a shell.
#include <gtest/gtest.h>

#include "tests/app/shell.h"

namespace wm::test {
namespace {

using app::Exit;

class StepsTest : public GarageTest {};

TEST_F(StepsTest, EveryStepSaysItsOrderByCodeAndByName) {
    const Said said = say({"steps", file_, "--json"});
    ASSERT_EQ(said.exit, 0) << said.err.toStdString();
    const auto steps = said.json();
    expectKeepsTo("steps", steps);
    ASSERT_GT(steps.size(), 5U);
    std::size_t edges = 0;
    for (const auto& step : steps)
        for (const auto& edge : step.at("edges"))
            for (const char* side : {"earlier", "later"}) {
                ++edges;
                EXPECT_NE(edge.at(side).at("name"), edge.at(side).at("code")) << edge.dump();
            }
    EXPECT_GT(edges, 0U);
}

TEST_F(StepsTest, ReadsAsSentences) {
    const Said said = say({"steps", file_});
    ASSERT_EQ(said.exit, 0) << said.err.toStdString();
    EXPECT_TRUE(said.out.contains(QStringLiteral(" min off, "))) << said.out.toStdString();
    EXPECT_TRUE(said.out.contains(QStringLiteral("” before "))) << said.out.toStdString();
}

TEST_F(StepsTest, AMachineThatIsNotThereIsRefused) {
    expectRefusal(say({"steps", file_, "--machine", "nobody"}), Exit::Refused, "machine");
}

}  // namespace
}  // namespace wm::test

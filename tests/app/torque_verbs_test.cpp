// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// torque, wrench and generic, as they are said at a shell.
#include <gtest/gtest.h>

#include "tests/app/shell.h"

namespace wm::test {
namespace {

using app::Exit;

class TorqueVerbsTest : public GarageTest {};

TEST_F(TorqueVerbsTest, AFigureIsFoundWithATypingError) {
    const Said said = say({"torque", file_, "reer axel nut", "--json"});
    ASSERT_EQ(said.exit, 0) << said.err.toStdString();
    expectKeepsTo("torque", said.json());
    EXPECT_EQ(said.json()[0].at("code"), "rear-axle-nut");
    EXPECT_TRUE(said.json()[0].at("reads").is_null());  // nobody has typed it
    EXPECT_TRUE(say({"torque", file_, "rear axle"}).out.contains("not typed yet"));
    EXPECT_TRUE(say({"torque", file_, "fork oil amount"}).out.contains("1000 ml"));
    EXPECT_TRUE(
        say({"torque", file_, "engine oil amount", "--unit", "l"}).out.contains("l, as printed 1000 ml"));
}

TEST_F(TorqueVerbsTest, WhatCannotBeFoundIsSaid) {
    expectRefusal(say({"torque", file_, "xqzvw"}), Exit::Refused, "Nothing is called");
    expectRefusal(say({"torque", file_, ""}), Exit::Refused, "query");
    expectRefusal(say({"torque", file_, "axle", "--unit", "bananas"}), Exit::Refused,
                  "The unit “bananas” is not known here: choose one of these: N·m, lbf·ft");
    expectRefusal(say({"torque", file_, "axle", "--machine", "nobody"}), Exit::Refused, "machine");
    const Said none = say({"torque", file_, "xqzvw", "--json"});
    EXPECT_EQ(none.exit, 0);
    EXPECT_TRUE(none.json().empty());
}

// 80 x 40 / 45, as worked on a public page: see tests/reference/torque.json F48.
TEST_F(TorqueVerbsTest, AWrenchIsSetForItsAdapter) {
    const Said said = say({"wrench", "--torque", "80", "--length", "40", "--adapter", "5", "--json"});
    ASSERT_EQ(said.exit, 0) << said.err.toStdString();
    expectKeepsTo("wrench", said.json());
    EXPECT_NEAR(said.json().at("set").get<double>(), 71.1111, 1e-3);
    EXPECT_TRUE(say({"wrench", "--torque", "80 ft lb", "--length", "40", "--adapter", "5"})
                    .out.startsWith("Set 71.1 lbf·ft for 80"));
    expectRefusal(say({"wrench", "--torque", "50", "--length", "300", "--adapter", "300", "--angle", "180"}),
                  Exit::Refused, "points back");
    expectRefusal(say({"wrench", "--torque", "0", "--length", "300", "--adapter", "40"}), Exit::Refused,
                  "torque");
    EXPECT_TRUE(say({"wrench", "--torque", "18-22", "--length", "300", "--adapter", "0"})
                    .out.startsWith("Set 20.0 N·m for 20, the middle of the range, at the fastener"));
    expectRefusal(say({"wrench", "--torque", "22-18", "--length", "300", "--adapter", "0"}), Exit::Refused,
                  "smaller one first");
    expectRefusal(say({"wrench", "--torque", "50 bananas", "--length", "300", "--adapter", "40"}),
                  Exit::Refused, "“bananas” has a unit that does not fit: choose one of these: N·m, lbf·ft");
    expectRefusal(say({"wrench", "--torque", "50", "--length", "0", "--adapter", "40"}), Exit::Refused,
                  "length");
    expectRefusal(say({"wrench", "--torque", "50", "--length", "300"}), Exit::Usage, "adapter");
}

TEST_F(TorqueVerbsTest, AGenericBandHasItsCautionAndMostlyThereIsNone) {
    const Said said = say({"generic", "--thread", "M6", "--class", "8.8", "--kind", "cover", "--json"});
    ASSERT_EQ(said.exit, 0) << said.err.toStdString();
    expectKeepsTo("generic", said.json());
    const Said plain = say({"generic", "--thread", "M6", "--class", "8.8"});
    EXPECT_TRUE(plain.out.startsWith("GENERIC, not for this joint: 4.2 to 6.2 N·m"));
    EXPECT_TRUE(plain.out.contains("service manual goes before it"));
    expectRefusal(say({"generic", "--thread", "M8", "--class", "8.8", "--kind", "axle"}), Exit::Refused,
                  "axle");
    // A name that speaks of a dangerous kind is refused, whatever kind was stated; another one is not.
    for (const char* kind : {"other", "cover"})
        expectRefusal(say({"generic", "--thread", "M8", "--class", "8.8", "--joint", "front caliper bolts",
                           "--kind", kind}),
                      Exit::Refused, "brake");
    EXPECT_EQ(say({"generic", "--thread", "M6", "--class", "8.8", "--joint", "clutch cover bolts"}).out,
              plain.out);
    expectRefusal(say({"generic", "--thread", "M8", "--class", "8.8", "--hole", "magnesium"}), Exit::Refused,
                  "magnesium");
    expectRefusal(say({"generic", "--thread", "M7.3x9", "--class", "8.8"}), Exit::Refused, "M7.3x9");
    expectRefusal(say({"generic", "--class", "8.8"}), Exit::Refused, "Which thread?");
    expectRefusal(say({"generic", "--thread", "M8"}), Exit::Refused, "Which class?");
    expectRefusal(say({"generic", "--thread", "M8", "--class", "8.9"}), Exit::Refused, "8.9");
    expectRefusal(say({"generic", "--thread", "M8", "--class", "8.8", "--by-angle"}), Exit::Refused, "angle");
}

}  // namespace
}  // namespace wm::test

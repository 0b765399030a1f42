// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sheet/torque_card.h"

#include <gtest/gtest.h>

#include "core/verbs/verbs.h"
#include "tests/core/verbs/bench.h"

namespace wm::sheet {
namespace {

using units::Decimal;

class TorqueCardTest : public testing::Test, public verbs::FurnishedBench {
  protected:
    void addJoint(fastening::JointVersion joint) {
        joint.machine = heron;
        joint.source = "service manual";
        must(verbs::saying(verbs::saveJoint, joint));
    }
};

TEST_F(TorqueCardTest, WithoutAFigureThereIsNoCard) {
    EXPECT_EQ(torqueCard(book(), heron).error(),
              (base::Error{base::Fault::NothingToDo, "torque", "Heron 250", ""}));
    EXPECT_EQ(torqueCard(book(), MachineId{1}).error().fault, base::Fault::Unknown);
}

TEST_F(TorqueCardTest, HasEveryFigureAsPrintedWithWhatItHoldsFor) {
    addJoint({.name = "Drain plug",
              .kind = fastening::JointKind::Engine,
              .thread = "M12x1.5",
              .torque = Decimal{25, 0},
              .unit = units::TorqueUnit::PoundForceFoot,
              .condition = "dry",
              .renew = "washer",
              .confirmed = true});
    addJoint({.name = "Spokes",
              .kind = fastening::JointKind::Spoke,
              .count = 36,
              .torque = Decimal{40, 1},
              .torqueHigh = Decimal{46, 1},
              .leftHand = true});
    fastening::Tool tool{.name = "Long red"};
    tool.low = Decimal{20, 0};
    tool.high = Decimal{200, 0};
    must(verbs::saying(verbs::saveTool, tool));
    const auto card = torqueCard(book(), heron, ',').value();
    EXPECT_EQ(card.machine, "Heron 250");
    EXPECT_EQ(card.date, "20 May 2026");
    EXPECT_EQ(card.blank, 1U) << "the axle";
    EXPECT_EQ(card.unconfirmed, 1U);
    ASSERT_EQ(card.groups.size(), 2U);
    EXPECT_EQ(card.groups[0].title, "Wheels and axles");
    const CardLine& spokes = card.groups[0].lines.at(0);
    EXPECT_EQ(spokes.torque, "4,0 to 4,6 N·m");
    EXPECT_EQ(spokes.thread, "36 pieces");
    EXPECT_EQ(spokes.how, "LEFT-HAND THREAD");
    EXPECT_EQ(spokes.tool, "") << "nothing in the drawer reaches so low";
    EXPECT_FALSE(spokes.confirmed);
    const CardLine& plug = card.groups[1].lines.at(0);
    EXPECT_EQ(plug.torque, "25 lbf·ft");
    EXPECT_EQ(plug.metric, "34 N·m");
    EXPECT_EQ(plug.how, "dry · new each time: washer");
    EXPECT_EQ(plug.tool, "Long red") << "34 of 200 N·m is its edge, but it reaches";
    EXPECT_TRUE(plug.confirmed);
}

}  // namespace
}  // namespace wm::sheet

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// Where the caution of a load is said: before it can let go.
#include <gtest/gtest.h>

#include "core/weekend/loaded.h"

namespace wm::weekend {
namespace {

using upkeep::Comes;
using upkeep::Hazard;

upkeep::TaskVersion forkOil() {
    upkeep::TaskVersion task;
    task.code = "fork-oil";
    task.joints = {{"fork-caps"}};
    task.cautions = {{Hazard::UsedFluids}, {Hazard::Spring}, {Hazard::GasCharged}};
    task.doings = {{.code = "fork-air-out", .what = "air out", .comes = Comes::Before},
                   {.code = "level", .what = "look at the level", .comes = Comes::After}};
    return task;
}

Act crackOf(const std::string& joint) {
    Act act{.kind = ActKind::Crack};
    act.joint = joint;
    return act;
}

Act doingOf(const std::string& code) {
    Act act{.kind = ActKind::Do};
    act.doing = code;
    return act;
}

TEST(LoadedTest, IsSaidWhereTheJobCracksItsOwnJoint) {
    EXPECT_EQ(loadsAt(crackOf("fork-caps"), forkOil()),
              (std::vector<Hazard>{Hazard::Spring, Hazard::GasCharged}));
    EXPECT_TRUE(loadsAt(crackOf("top-clamp-pinch"), forkOil()).empty());
}

TEST(LoadedTest, IsSaidAtWhatIsDoneBeforeTheJobAndNotAfterIt) {
    EXPECT_EQ(loadsAt(doingOf("fork-air-out"), forkOil()),
              (std::vector<Hazard>{Hazard::Spring, Hazard::GasCharged}));
    EXPECT_TRUE(loadsAt(doingOf("level"), forkOil()).empty());
}

TEST(LoadedTest, IsNotSaidWhereTheJointIsTorqued) {
    Act torque = crackOf("fork-caps");
    torque.kind = ActKind::Torque;
    EXPECT_TRUE(loadsAt(torque, forkOil()).empty());
}

}  // namespace
}  // namespace wm::weekend

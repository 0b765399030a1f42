// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/drawer_words.h"

#include <gtest/gtest.h>

#include "core/verbs/verbs.h"
#include "tests/ui/garage.h"

namespace wm::ui {
namespace {

// Names are the mechanic's: nothing in them is a place for a day.
TEST(RecallLineWords, KeepTheNameAsItIs) {
    Garage garage(Garage::Fill::OneMachine);
    auto axle = *garage.book().joints(garage.machine("Heron 250")).front();
    axle.name = "Axle %1 nut";
    garage.say([axle](const verbs::VerbContext& context) { return verbs::saveJoint(context, axle); });
    fastening::Calibration failed;
    book::ToolRecall recall;
    recall.recall.failed = &failed;
    fastening::JointMark tightened;
    tightened.joint = axle.joint;
    tightened.date = day("2026-05-03");
    const QString words = recallLineWords(garage.book(), recall, {.tightened = &tightened, .times = 1});
    EXPECT_TRUE(words.startsWith(QStringLiteral("Axle %1 nut, Heron 250: torqued "))) << words.toStdString();
    EXPECT_TRUE(words.contains(QStringLiteral(", on "))) << words.toStdString();
    EXPECT_TRUE(words.contains(QStringLiteral("3 May"))) << words.toStdString();
}

}  // namespace
}  // namespace wm::ui

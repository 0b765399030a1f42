// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <QSignalSpy>

#include "tests/ui/garage.h"

namespace wm::ui {
namespace {

// A long write lets the window live: a timer that comes meanwhile, on a new day, shows no half of it.
TEST(Workbench, LooksForNothingWhileItWrites) {
    const Garage garage(Garage::Fill::OneMachine);
    QDateTime now(QDate(2026, 5, 7), QTime(23, 59));
    Workbench workbench([&now] { return now; });
    ASSERT_EQ(workbench.open(garage.path()).outcome, store::OpenOutcome::Opened);
    const auto person = [](const verbs::VerbContext& context) {
        items::Person odile;
        odile.name = "Odile";
        return verbs::savePerson(context, odile);
    };
    QSignalSpy changed(&workbench, &Workbench::changed);
    const auto look = [&](std::size_t, std::size_t) {
        now = QDateTime(QDate(2026, 5, 8), QTime(0, 1));
        workbench.refresh();
        EXPECT_EQ(changed.count(), 0);
        return true;
    };
    ASSERT_TRUE(workbench.attempt(person, look).has_value());
    EXPECT_EQ(changed.count(), 1);
    EXPECT_EQ(workbench.book()->today(), day("2026-05-08"));
}

}  // namespace
}  // namespace wm::ui

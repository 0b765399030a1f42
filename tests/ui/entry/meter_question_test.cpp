// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <QCheckBox>
#include <QLineEdit>

#include "tests/ui/garage.h"
#include "ui/entry/entry_form.h"
#include "ui/entry/form_table.h"

// Far more noted than the meter ran: the form asks whether it has stopped, and takes the answer.

namespace wm::ui {
namespace {

class MeterQuestionTest : public testing::Test {
  protected:
    void SetUp() override {
        request_.machine = garage_.book().machines().front()->id;
        read(6250, "2026-05-01");
    }
    void read(int hundredths, const char* date) {
        usage::HourReading reading;
        reading.machine = *request_.machine;
        reading.date = day(date);
        reading.shown = units::Hours{hundredths};
        garage_.say(
            [reading](const verbs::VerbContext& context) { return verbs::logReading(context, reading); });
    }
    // What Enter does; true if it was written.
    bool enter(EntryForm& form) {
        const auto verb = form.verb();
        EXPECT_TRUE(verb.has_value());
        const auto said = garage_.workbench().attempt(*verb);
        if (!said)
            form.showFaults({said.error().error});
        return said.has_value();
    }
    static void type(const EntryForm& form, const char* field, const char* text) {
        form.findChild<QLineEdit*>(QLatin1String(field))->setText(QLatin1String(text));
    }

    Garage garage_{Garage::Fill::OneMachine};
    EntryRequest request_;
};

TEST_F(MeterQuestionTest, AnOutingIsAskedAbout) {
    request_.kind = EntryKind::Outing;
    const auto form = makeForm(garage_.workbench(), request_);
    type(*form, "hours", "10");
    type(*form, "meter", "63.7");
    EXPECT_EQ(form->findChild<QCheckBox*>(QStringLiteral("meterIsRight")), nullptr)
        << "not before it is asked";
    EXPECT_FALSE(enter(*form));
    auto* right = form->findChild<QCheckBox*>(QStringLiteral("meterIsRight"));
    ASSERT_NE(right, nullptr);
    right->setChecked(true);
    EXPECT_TRUE(enter(*form));
}

TEST_F(MeterQuestionTest, AReadingIsAskedAbout) {
    garage_.ride(garage_.book().machines().front()->name, "2026-05-03", 150, usage::OutingKind::Practice,
                 usage::Ground::Hard, false);
    request_.kind = EntryKind::Reading;
    const auto form = makeForm(garage_.workbench(), request_);
    type(*form, "shown", "62.5");
    EXPECT_FALSE(enter(*form));
    auto* right = form->findChild<QCheckBox*>(QStringLiteral("meterIsRight"));
    ASSERT_NE(right, nullptr);
    right->setChecked(true);
    EXPECT_TRUE(enter(*form));
}

}  // namespace
}  // namespace wm::ui

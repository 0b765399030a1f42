// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// What Enter and Escape lead to while a notebook is agreed to, without a window.
#include "ui/shell/notebook_standing.h"

#include <gtest/gtest.h>

#include <QFile>
#include <QSettings>
#include <algorithm>

#include "tests/repository.h"
#include "tests/ui/garage.h"

namespace wm::ui {
namespace {

using Enter = NotebookStanding::Enter;

// Outings of two machines that the garage knows: 72 lines are taken, 6 are doubtful, each with a cure.
class NotebookStandingTest : public testing::Test {
  protected:
    void SetUp() override {
        garage_.say([](const verbs::VerbContext& context) {
            return verbs::nameGarage(context, "Alder Yard", day("2026-11-25"));
        });
        garage_.addMachine("Heron 250", "four-stroke-motocross", units::Hours{1250});
        garage_.addMachine("Sorrel 450", "four-stroke-motocross", units::Hours{8830});
        QFile file(QString::fromStdString(test::repositoryPath("tests/data/notebook/outings.csv")));
        ASSERT_TRUE(file.open(QIODevice::ReadOnly));
        preview_ = std::make_unique<NotebookPreview>(file.readAll().toStdString(), garage_.workbench().book(),
                                                     settings_);
        ASSERT_FALSE(preview_->open());
        preview_->judge();
        standing_.count(*preview_);
        ASSERT_TRUE(standing_.isJudged());
    }
    const notebook::Line& firstOpen() {
        const auto& lines = preview_->notebook()->lines;
        const auto found = std::find_if(lines.begin(), lines.end(), [&](const notebook::Line& line) {
            return preview_->stateOf(line) == LineState::Open;
        });
        EXPECT_NE(found, lines.end());
        return *found;
    }

    Garage garage_{Garage::Fill::Empty};
    QSettings settings_{garage_.in(QStringLiteral("settings.ini")), QSettings::IniFormat};
    std::unique_ptr<NotebookPreview> preview_;
    NotebookStanding standing_;
};

TEST_F(NotebookStandingTest, CountsWhatGoesInAndWhatWaits) {
    EXPECT_EQ(standing_.goesIn().lines, 72U);
    EXPECT_EQ(standing_.open(), 6U);
    EXPECT_EQ(standing_.curable(), 6U);
    EXPECT_TRUE(standing_.hasNew());
    EXPECT_FALSE(standing_.hasJobs());
    notebook::Totals sum;
    for (const auto& [name, of] : standing_.byMachine())
        sum += of;
    EXPECT_EQ(sum, standing_.goesIn());
    preview_->turnCure(firstOpen());
    standing_.count(*preview_);
    EXPECT_EQ(standing_.goesIn().lines, 73U);
    EXPECT_EQ(standing_.open(), 5U);
    EXPECT_EQ(standing_.answers(), 1U);
}

TEST_F(NotebookStandingTest, TheFirstEnterLeadsToWhatIsOpenAndTheNextGoesOn) {
    EXPECT_EQ(standing_.enter(), Enter::AskAboutOpen);
    EXPECT_TRUE(standing_.hasAsked());
    EXPECT_EQ(standing_.enter(), Enter::Import);
    preview_->turnLeftOut(firstOpen());  // an answer: what is still open is asked about again
    standing_.count(*preview_);
    EXPECT_EQ(standing_.enter(), Enter::AskAboutOpen);
}

TEST_F(NotebookStandingTest, NothingIsAskedWhenNothingIsOpen) {
    preview_->cureAll();
    standing_.count(*preview_);
    EXPECT_EQ(standing_.open(), 0U);
    EXPECT_EQ(standing_.enter(), Enter::Import);
}

TEST_F(NotebookStandingTest, NothingHappensWhileItIsBusy) {
    standing_.setBusy(true);
    EXPECT_EQ(standing_.enter(), Enter::Nothing);
    standing_.count(*preview_);  // and counting does not end that
    EXPECT_EQ(standing_.enter(), Enter::Nothing);
    standing_.setBusy(false);
    EXPECT_EQ(standing_.enter(), Enter::AskAboutOpen);
}

TEST_F(NotebookStandingTest, AnswersAreNotThrownAwayByOneEscape) {
    EXPECT_TRUE(standing_.mayLeave());
    preview_->turnCure(firstOpen());
    standing_.count(*preview_);
    EXPECT_FALSE(standing_.mayLeave());
    EXPECT_TRUE(standing_.mayLeave());
    standing_.count(*preview_);
    EXPECT_FALSE(standing_.mayLeave());
}

}  // namespace
}  // namespace wm::ui

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <QApplication>
#include <memory>

#include "ui/words/languages.h"

namespace {

// One QApplication for the whole binary, made before the first test and gone after the last. Offscreen unless
// the caller chose a platform, so that the tests run where there is no display.
class ApplicationEnvironment : public testing::Environment {
  public:
    void SetUp() override {
        if (!qEnvironmentVariableIsSet("QT_QPA_PLATFORM")) {
            qputenv("QT_QPA_PLATFORM", "offscreen");
        }
        application_ = std::make_unique<QApplication>(argumentCount_, arguments_);
        wm::ui::speakEnglish(*application_);
    }
    void TearDown() override { application_.reset(); }

  private:
    char name_[9] = "ui_tests";
    char* arguments_[2] = {name_, nullptr};
    int argumentCount_ = 1;
    std::unique_ptr<QApplication> application_;
};

[[maybe_unused]] const testing::Environment* const kEnvironment =
    testing::AddGlobalTestEnvironment(std::make_unique<ApplicationEnvironment>().release());

}  // namespace

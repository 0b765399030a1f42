// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <QCoreApplication>
#include <memory>

namespace wm::store {
namespace {

// Qt's database drivers are plug-ins: they are found through the application object.
class ApplicationEnvironment : public testing::Environment {
  public:
    void SetUp() override { application_ = std::make_unique<QCoreApplication>(count_, &name_); }
    void TearDown() override { application_.reset(); }

  private:
    int count_ = 1;
    char text_[12] = "store_tests";
    char* name_ = text_;
    std::unique_ptr<QCoreApplication> application_;
};

[[maybe_unused]] const auto* const kEnvironment =
    testing::AddGlobalTestEnvironment(new ApplicationEnvironment);

}  // namespace
}  // namespace wm::store

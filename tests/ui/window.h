// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <gtest/gtest.h>

#include <QSettings>
#include <QTest>
#include <memory>

#include "tests/ui/fake_prompts.h"
#include "tests/ui/garage.h"
#include "ui/shell/main_window.h"

namespace wm::ui {

/// A fresh window on a fresh garage for each test; gone afterwards.
class WindowTest : public testing::Test {
  protected:
    void openOn(Garage::Fill fill) {
        garage_ = std::make_unique<Garage>(fill);
        showWindow();
    }
    void showWindow() {
        settings_ =
            std::make_unique<QSettings>(garage_->in(QStringLiteral("settings.ini")), QSettings::IniFormat);
        window_ = std::make_unique<MainWindow>(garage_->workbench(), prompts_, *settings_);
        window_->show();
        window_->activateWindow();
        ASSERT_TRUE(QTest::qWaitForWindowActive(window_.get()));
    }
    /// A key where the keys go now.
    void press(Qt::Key key, Qt::KeyboardModifiers modifiers = Qt::NoModifier) {
        QWidget* at = QApplication::focusWidget();
        QTest::keyClick(at != nullptr ? at : window_.get(), key, modifiers);
    }
    void type(const QString& words) { QTest::keyClicks(QApplication::focusWidget(), words); }
    template <class W = QWidget>
    W* child(const char* name) {
        auto* found = window_->findChild<W*>(QString::fromLatin1(name));
        EXPECT_NE(found, nullptr) << name;
        return found;
    }

    FakePrompts prompts_;
    std::unique_ptr<Garage> garage_;
    std::unique_ptr<QSettings> settings_;
    std::unique_ptr<MainWindow> window_;
};

}  // namespace wm::ui

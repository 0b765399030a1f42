// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// On a small screen nothing pushes the window, or its last line, off the edge.
#include "tests/ui/window.h"
#include "ui/entry/entry_strip.h"
#include "ui/shell/page_table.h"

namespace wm::ui {
namespace {

constexpr QSize kSmall{1280, 700};

class SmallWindow : public WindowTest {
  protected:
    void SetUp() override {
        openOn(Garage::Fill::Demo);
        garage_->workbench().choose(garage_->machine("Heron 250"));
        window_->resize(kSmall);
        QApplication::processEvents();
    }
    EntryStrip* strip() { return window_->findChild<EntryStrip*>(); }
    void expectInside(const char* after) {
        QApplication::processEvents();
        EXPECT_EQ(window_->height(), kSmall.height()) << after;
        const QRect all = window_->rect();
        for (const auto* field : window_->findChildren<QWidget*>()) {
            const bool takesKeys = field->focusPolicy() != Qt::NoFocus && field->isVisible();
            if (!takesKeys || !strip()->isAncestorOf(field))
                continue;
            const QRect place(field->mapTo(window_.get(), QPoint()), field->size());
            EXPECT_TRUE(all.contains(place)) << after << ": " << field->objectName().toStdString();
        }
    }
};

TEST_F(SmallWindow, StaysAsItIsOnEveryPageAndWithEveryStrip) {
    for (const auto& page : pageTable()) {
        window_->goTo(page.id);
        expectInside("page");
        for (const Qt::Key key : {Qt::Key_F2, Qt::Key_F3, Qt::Key_F4}) {
            press(key);
            EXPECT_TRUE(strip()->isOpen());
            expectInside("strip");
            press(Qt::Key_Escape);
            EXPECT_FALSE(strip()->isOpen());
        }
    }
}

}  // namespace
}  // namespace wm::ui

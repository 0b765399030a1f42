// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>

#include "ui/pages/page.h"

namespace wm::ui {

/// A page that has nothing to show yet: its title and one honest sentence.
class PlainPage : public Page {
    Q_OBJECT

  public:
    PlainPage(const PageTools& tools, const QString& title, const QString& sentence, QWidget* parent);
    void refresh() override {}
};

}  // namespace wm::ui

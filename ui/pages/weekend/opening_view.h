// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QScrollArea>
#include <vector>

#include "ui/drawing/opening_picture.h"

namespace wm::ui {

/// The opening picture on a page; scrolls down where it is longer than its place.
class OpeningView : public QScrollArea {
    Q_OBJECT

  public:
    explicit OpeningView(QWidget* parent);
    void setOpening(std::vector<OpeningStep> steps);

  protected:
    void resizeEvent(QResizeEvent* event) override;

  private:
    class Canvas;
    Canvas* canvas_;
};

}  // namespace wm::ui

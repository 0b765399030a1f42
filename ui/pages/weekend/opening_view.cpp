// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/weekend/opening_view.h"

#include <QPainter>
#include <algorithm>
#include <utility>

#include "ui/theme/tokens.h"

namespace wm::ui {

class OpeningView::Canvas : public QWidget {
  public:
    using QWidget::QWidget;

    void setOpening(std::vector<OpeningStep> steps) {
        steps_ = std::move(steps);
        update();
    }
    [[nodiscard]] int heightFor(int width) const {
        return static_cast<int>(layOutOpening(steps_, width, font()).size.height()) + 1;
    }

  protected:
    void paintEvent(QPaintEvent*) override {
        QPainter painter(this);
        painter.setRenderHint(QPainter::Antialiasing);
        paintOpening(painter, QPointF(0, 0), steps_, layOutOpening(steps_, width(), font()), font(),
                     tokensFor(palette()));
    }

  private:
    std::vector<OpeningStep> steps_;
};

OpeningView::OpeningView(QWidget* parent) : QScrollArea(parent), canvas_(new Canvas) {
    setFrameShape(QFrame::NoFrame);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    canvas_->setObjectName(QStringLiteral("opening-picture"));
    setWidget(canvas_);
    viewport()->setAutoFillBackground(false);
    canvas_->setAutoFillBackground(false);
}

void OpeningView::setOpening(std::vector<OpeningStep> steps) {
    QStringList words;
    for (const OpeningStep& step : steps)
        words += step.label;
    setAccessibleDescription(words.join(QStringLiteral(", ")));
    canvas_->setOpening(std::move(steps));
    canvas_->resize(viewport()->width(), std::max(canvas_->heightFor(viewport()->width()), 1));
}

void OpeningView::resizeEvent(QResizeEvent* event) {
    QScrollArea::resizeEvent(event);
    canvas_->resize(viewport()->width(), std::max(canvas_->heightFor(viewport()->width()), 1));
}

}  // namespace wm::ui

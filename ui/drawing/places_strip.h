// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <optional>

#include "ui/drawing/place_picture.h"

namespace wm::ui {

/// Which item was where, when, over the full width of a page. Arrow keys walk along a place and from place to
/// place; the sentence of the stay that is reached shows on hovering and is read out.
class PlacesStrip : public QWidget {
    Q_OBJECT

  public:
    explicit PlacesStrip(QWidget* parent = nullptr);
    void setPlaces(Places places);
    [[nodiscard]] std::optional<PlaceStayId> current() const { return current_; }

    [[nodiscard]] bool hasHeightForWidth() const override { return true; }
    [[nodiscard]] int heightForWidth(int width) const override;
    [[nodiscard]] QSize sizeHint() const override;

  signals:
    void currentChanged(const QString& words);

  protected:
    void paintEvent(QPaintEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    bool event(QEvent* event) override;

  private:
    void setCurrent(std::optional<PlaceStayId> current);
    void walkAlong(int steps);
    void walkRows(int steps);
    [[nodiscard]] QString wordsAt(std::optional<PlaceStayId> id) const;
    [[nodiscard]] PlacesLayout layoutNow() const;

    Places places_;
    std::optional<PlaceStayId> current_;
};

}  // namespace wm::ui

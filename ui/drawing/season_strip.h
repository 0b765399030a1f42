// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <optional>

#include "ui/drawing/season.h"

namespace wm::ui {

/// The season over the full width of a page. Arrow keys walk from bar to bar by date; its
/// sentence shows on hovering and is read out.
class SeasonStrip : public QWidget {
    Q_OBJECT

  public:
    explicit SeasonStrip(QWidget* parent = nullptr);
    void setSeason(Season season);
    [[nodiscard]] std::optional<SeasonBarId> current() const { return current_; }

    [[nodiscard]] bool hasHeightForWidth() const override { return true; }
    [[nodiscard]] int heightForWidth(int width) const override;
    [[nodiscard]] QSize sizeHint() const override;

  signals:
    void currentChanged();

  protected:
    void paintEvent(QPaintEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    bool event(QEvent* event) override;

  private:
    void setCurrent(std::optional<SeasonBarId> current);
    void walk(int steps);
    [[nodiscard]] SeasonLayout layoutNow() const;

    std::optional<Season> season_;
    std::optional<SeasonBarId> current_;
};

}  // namespace wm::ui

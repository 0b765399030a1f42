// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QLayout>
#include <vector>

namespace wm::ui {

/// Lays widgets side by side and goes on in a new row where the width ends. Row heights follow their tallest.
class Flow : public QLayout {
  public:
    Flow(int across, int down);
    ~Flow() override;

    void addItem(QLayoutItem* item) override;
    [[nodiscard]] int count() const override;
    [[nodiscard]] QLayoutItem* itemAt(int index) const override;
    QLayoutItem* takeAt(int index) override;
    [[nodiscard]] Qt::Orientations expandingDirections() const override { return {}; }
    [[nodiscard]] bool hasHeightForWidth() const override { return true; }
    [[nodiscard]] int heightForWidth(int width) const override;
    [[nodiscard]] QSize minimumSize() const override;
    [[nodiscard]] QSize sizeHint() const override { return minimumSize(); }
    void setGeometry(const QRect& rect) override;

  private:
    int arrange(const QRect& rect, bool reallyMove) const;

    std::vector<QLayoutItem*> items_;
    int across_;
    int down_;
};

}  // namespace wm::ui

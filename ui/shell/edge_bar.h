// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <map>

#include "ui/workbench/guide.h"

class QButtonGroup;
class QToolButton;

namespace wm::ui {

/// The pages' names along the bench's front edge, with what belongs to the whole file at its right end.
class EdgeBar : public QWidget {
    Q_OBJECT

  public:
    explicit EdgeBar(QWidget* parent = nullptr);

    void show(PageId page);
    void enablePages(bool canBeOpened);
    /// The file's menu and the search, made by the window.
    void add(QWidget* atTheRight);

  signals:
    void pageAsked(PageId page);

  protected:
    void paintEvent(QPaintEvent* event) override;

  private:
    QButtonGroup* group_;
    std::map<PageId, class PageKey*> keys_;
};

}  // namespace wm::ui

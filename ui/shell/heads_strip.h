// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QStringList>
#include <QWidget>
#include <vector>

#include "core/base/ids.h"

class QButtonGroup;

namespace wm::ui {

class Head;
class Workbench;

/// The heads of the machines' columns, from edge to edge: name, hours, next event. The first head is the day
/// and stands for all machines. The chosen one carries a stroke of paint.
class HeadsStrip : public QWidget {
    Q_OBJECT

  public:
    /// `keys` choose all machines, the first, the second and so on.
    HeadsStrip(Workbench& workbench, QStringList keys, QWidget* parent = nullptr);

    void refresh();
    /// The machine at a place from 0, if there are that many.
    void chooseAt(std::size_t place);

  protected:
    void resizeEvent(QResizeEvent* event) override;
    void paintEvent(QPaintEvent* event) override;

  private:
    void layOut();
    void followChosen();

    Workbench& workbench_;
    QStringList keys_;
    QButtonGroup* group_;
    Head* all_;
    std::vector<std::pair<MachineId, Head*>> heads_;
};

}  // namespace wm::ui

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <QWidget>

#include "ui/pages/page.h"
#include "ui/theme/plain.h"

namespace wm::ui {

/// One of the views that share the page Torque with the figures; the page calls refresh() when it is seen.
class TorqueView : public QWidget {
    Q_OBJECT

  public:
    explicit TorqueView(const PageTools& tools, QWidget* parent) : QWidget(parent), tools_(tools) {}

    virtual void refresh() = 0;
    [[nodiscard]] virtual QWidget* firstFocus() { return this; }
    [[nodiscard]] virtual QStringList unsaved() const { return {}; }

  protected:
    [[nodiscard]] Workbench& workbench() const { return tools_.workbench; }
    [[nodiscard]] Prompts& prompts() const { return tools_.prompts; }
    [[nodiscard]] Guide& guide() const { return tools_.guide; }

  private:
    PageTools tools_;
};

}  // namespace wm::ui

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ui/workbench/prompts.h"

namespace wm::ui {

/// Asks on the screen.
class DialogPrompts : public Prompts {
  public:
    bool confirm(const QString& question, const QString& yes) override;
    using Prompts::chooseFile;
    std::optional<QString> chooseFile(FileUse use, const QString& title, const QString& filter,
                                      const QString& suggested) override;
    void report(const QString& words, const QString& detail) override;
};

}  // namespace wm::ui

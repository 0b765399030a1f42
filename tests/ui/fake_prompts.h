// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QStringList>
#include <deque>

#include "ui/workbench/prompts.h"

namespace wm::ui {

/// Answers as the test said beforehand, and remembers what was asked.
class FakePrompts : public Prompts {
  public:
    bool agrees = false;
    std::deque<QString> paths;
    QStringList asked;
    QStringList suggestions;
    QStringList reported;

    bool confirm(const QString& question, const QString&) override {
        asked << question;
        return agrees;
    }
    using Prompts::chooseFile;
    std::optional<QString> chooseFile(FileUse, const QString& title, const QString&,
                                      const QString& suggested) override {
        asked << title;
        suggestions << suggested;
        if (paths.empty())
            return std::nullopt;
        QString path = paths.front();
        paths.pop_front();
        return path;
    }
    void report(const QString& words, const QString& detail) override {
        reported << (detail.isEmpty() ? words : words + QLatin1Char('\n') + detail);
    }
};

}  // namespace wm::ui

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QObject>
#include <QStringList>
#include <functional>
#include <optional>

class QSettings;
class QWidget;

namespace wm::ui {

class Prompts;
class Workbench;

/// Builds the demo file, or answers nothing if it can't; brought by the application.
using DemoSource = std::function<std::optional<QString>()>;

/// What is done with whole files: new, open, the demo, the exchange text, backups.
class FileDesk : public QObject {
    Q_OBJECT

  public:
    FileDesk(Workbench& workbench, Prompts& prompts, QSettings& settings, DemoSource demo, QWidget* window);

    void makeNew();
    void chooseAndOpen();
    void openPath(const QString& path);
    void openDemo();
    void importText();
    void exportText();
    /// Shows what a notebook kept as CSV would add to the open file, and adds what is agreed to.
    void importNotebook();
    void showBackups();

    [[nodiscard]] bool hasDemo() const { return static_cast<bool>(demo_); }
    [[nodiscard]] QStringList recent() const;

  signals:
    void recentChanged();
    /// A message for the status line.
    void said(const QString& words);

  private:
    void remember(const QString& path);

    Workbench& workbench_;
    Prompts& prompts_;
    QSettings& settings_;
    DemoSource demo_;
    QWidget* window_;
};

}  // namespace wm::ui

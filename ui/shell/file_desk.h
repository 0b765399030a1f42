// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QObject>
#include <QStringList>
#include <functional>
#include <optional>
#include <vector>

#include "core/store/store.h"

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
    /// Makes a new file, asked for under `title`, and writes all rows of a whole file into it; false if not.
    bool adopt(const std::vector<picture::Row>& rows, const QString& title);
    /// For a file that was refused because something else changed it, its rows or how it is made.
    void offerItsFacts(const store::OpenReport& report);
    void leaveEmptyFile(const QString& before);

    Workbench& workbench_;
    Prompts& prompts_;
    QSettings& settings_;
    DemoSource demo_;
    QWidget* window_;
};

}  // namespace wm::ui

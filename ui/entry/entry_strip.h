// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QPointer>
#include <QWidget>
#include <map>
#include <optional>

#include "core/picture/ledger.h"
#include "ui/workbench/guide.h"

class QLabel;
class QPushButton;
class QStackedWidget;

namespace wm::ui {

class EntryForm;
class Workbench;

/// The strip above the bottom lines in which everything is entered. Enter saves and closes, Escape leaves;
/// what was typed stays and is there again when the same entry is opened the next time.
class EntryStrip : public QWidget {
    Q_OBJECT

  public:
    explicit EntryStrip(Workbench& workbench, QWidget* parent = nullptr);

    void openFor(const EntryRequest& request);
    /// Opens a form from elsewhere and owns it from here on; a touched one of the same title comes back
    /// instead.
    void openForm(EntryForm* form);
    void leave();
    [[nodiscard]] bool isOpen() const { return !isHidden(); }
    /// The titles of entries that were begun and not saved.
    [[nodiscard]] QStringList unsaved() const;

  signals:
    void left();
    /// What was entered is in the file and the strip is shut.
    void written(const wm::picture::Change& change);

  protected:
    bool eventFilter(QObject* watched, QEvent* event) override;
    void paintEvent(QPaintEvent* event) override;

  private:
    void show(EntryForm* form);
    void save();
    void drop(EntryForm* form);
    void dropAll();
    [[nodiscard]] EntryForm* current() const;

    Workbench& workbench_;
    QLabel* title_;
    QStackedWidget* forms_;
    QPushButton* saveButton_;
    QPushButton* leaveButton_;
    std::map<QString, EntryForm*> open_;  ///< by what they are for
    QPointer<QWidget> before_;            ///< where the keys went before the strip opened
};

}  // namespace wm::ui

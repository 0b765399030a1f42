// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <QWidget>

class QLabel;
class QPushButton;

namespace wm::ui {

/// What saving would do, before it is done, with the keys that save or give up.
class Outcome : public QWidget {
    Q_OBJECT

  public:
    /// Its parts are named under `prefix` ("task"). `rest` is what it says where nothing was begun.
    Outcome(const QString& prefix, QString rest, QWidget* parent);
    /// Shows that nothing was begun.
    void rest();
    void foretell(const QString& words);
    /// Shows what is in the way of saving.
    void complain(const QString& words);
    void focusSave();

  signals:
    void saveAsked();
    void dropAsked();

  protected:
    void changeEvent(QEvent* event) override;

  private:
    void say(const QString& words, bool isTrouble, bool canSave);

    QString rest_;
    bool isTrouble_ = false;
    QLabel* title_;
    QLabel* words_;
    QPushButton* save_;
    QPushButton* drop_;
};

}  // namespace wm::ui

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QIODevice>

namespace wm::app {

/// What is written to it goes on to `to` with U+FFFD in the place of what could make a terminal do something
/// or turn the words around: a path or a line of an old file may hold it. Line breaks and tabs are left
/// alone.
class HarmlessOutput : public QIODevice {
  public:
    explicit HarmlessOutput(QIODevice& to);

  protected:
    qint64 readData(char* into, qint64 most) override;
    qint64 writeData(const char* bytes, qint64 size) override;

  private:
    QIODevice& to_;
};

}  // namespace wm::app

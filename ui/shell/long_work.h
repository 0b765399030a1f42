// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <functional>
#include <memory>

class QProgressDialog;
class QWidget;

namespace wm::ui {

/// Work that may take long: shows how far it is once it has taken a third of a second, with a way to stop it.
/// While it is shown, the window behind takes no keys.
class LongWork {
  public:
    LongWork(const QString& words, QWidget* window);
    ~LongWork();

    /// `done` of `of`; false once the mechanic has stopped it.
    bool goesOn(std::size_t done, std::size_t of);
    /// The same as a function; this object must outlive it.
    [[nodiscard]] std::function<bool(std::size_t, std::size_t)> steps();
    /// The next part of the work; the bar begins anew with it.
    void next(const QString& words);
    /// From here on it can't be stopped: `words` say what is done.
    void last(const QString& words);

  private:
    std::unique_ptr<QProgressDialog> shown_;
};

}  // namespace wm::ui

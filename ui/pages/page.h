// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QStringList>
#include <QWidget>
#include <optional>

#include "core/base/ids.h"

namespace wm::ui {

class Workbench;
class Prompts;
class Guide;
struct Aim;

/// What a page works with; all three outlive it.
struct PageTools {
    Workbench& workbench;
    Prompts& prompts;
    Guide& guide;
};

/// One page of the window. The shell calls refresh() when the page is about to be seen and the book, the day
/// or the chosen machine changed since it last was, and again at each change while it is seen; a hidden page
/// does no work. There is always a file with at least one machine then. Pages keep their own selection
/// through refresh().
class Page : public QWidget {
    Q_OBJECT

  public:
    explicit Page(const PageTools& tools, QWidget* parent = nullptr) : QWidget(parent), tools_(tools) {}

    virtual void refresh() = 0;
    /// What is to be seen from the next refresh() on.
    virtual void aimAt(const Aim& /*aim*/) {}
    /// Where the keys go when the page is opened.
    [[nodiscard]] virtual QWidget* firstFocus() { return this; }
    /// Ctrl+F on this page; false hands it to the history of Machine.
    virtual bool find() { return false; }
    /// The machine that the page's cursor is on, where the page shows all of them: what is entered is about
    /// it.
    [[nodiscard]] virtual std::optional<MachineId> machineHere() const { return std::nullopt; }
    /// What was begun here and not saved, for a question before the window closes.
    [[nodiscard]] virtual QStringList unsaved() const { return {}; }
    /// F1: explains the figure under the page's cursor, by guide().explain().
    virtual void why() {}

  protected:
    [[nodiscard]] Workbench& workbench() const { return tools_.workbench; }
    [[nodiscard]] Prompts& prompts() const { return tools_.prompts; }
    [[nodiscard]] Guide& guide() const { return tools_.guide; }

  private:
    PageTools tools_;
};

}  // namespace wm::ui

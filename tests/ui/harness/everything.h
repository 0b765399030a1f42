// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <QWidget>
#include <cstdint>
#include <functional>
#include <vector>

#include "core/picture/rows.h"

namespace wm::ui {

/// One thing that the window can show, laid out as the user sees it.
struct Surface {
    enum class Kind : std::uint8_t { Window, Page, Form, Dialog, Menu };
    Kind kind = Kind::Page;
    QString name{};           ///< made of the names of classes: the same in every language
    QWidget* root = nullptr;  ///< what is new on it; the window around a page or form is seen once, alone
};
using See = std::function<void(const Surface&)>;

/// What everything is seen with.
struct Stage {
    QSize size{1280, 720};  ///< of the window, as widgets count
    /// Changes the rows of the demo's garage before they are seen.
    std::function<void(std::vector<picture::Row>& rows)> retold{};
};

/// Shows one surface after another and calls `see` with each: the shell, every page of pageTable() with every
/// view and fold, for all machines and for one; every entry of EntryKind and the forms of the pages, plain
/// and refused; every dialog, popup and menu; the start without a file and with an empty one. Each is shown,
/// active and at rest while it is seen.
void seeEverything(const Stage& stage, const See& see);

/// A tip that hangs on a surface: of a control, or of a cell that is in view.
struct Tip {
    QWidget* at = nullptr;
    QString text{};
};
std::vector<Tip> tipsOf(const Surface& surface);

}  // namespace wm::ui

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <functional>
#include <vector>

#include "ui/workbench/guide.h"

class QWidget;

namespace wm::ui {

class Page;
struct PageTools;

/// One entry a page, in the order of the work. `name` marks its Alt letter with '&'. To add a page, give its
/// class here and its PageId in ui/workbench/guide.h.
struct PageEntry {
    PageId id;
    const char* code;  ///< the same in every language: "bench"
    QString name;
    std::function<Page*(const PageTools&, QWidget* parent)> make;
};

std::vector<PageEntry> pageTable();

}  // namespace wm::ui

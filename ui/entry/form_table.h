// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <memory>

#include "ui/workbench/guide.h"

namespace wm::ui {

class EntryForm;
class Workbench;

/// The form for a request, filled in as far as the book knows.
std::unique_ptr<EntryForm> makeForm(Workbench& workbench, const EntryRequest& request);

/// Two requests with the same key share what was typed.
QString draftKey(const EntryRequest& request);

}  // namespace wm::ui

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QStringList>
#include <optional>

#include "core/book/book.h"

namespace wm::ui {

/// The torque tools that lie in the drawer, by name, to choose from.
QStringList toolNames(const book::Book& book);

/// The tool that was typed; nothing for an empty field. Unknown "tool" for one that is not in the drawer.
base::Result<std::optional<ToolId>> toolNamed(const book::Book& book, const QString& typed);

}  // namespace wm::ui

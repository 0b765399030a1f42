// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/entry/tool_names.h"

#include "ui/words/figures.h"

namespace wm::ui {

QStringList toolNames(const book::Book& book) {
    QStringList names;
    for (const auto& tool : book.ledger().all<fastening::Tool>())
        if (tool.active)
            names << text(tool.name);
    return names;
}

base::Result<std::optional<ToolId>> toolNamed(const book::Book& book, const QString& typed) {
    const QString name = typed.trimmed();
    if (name.isEmpty())
        return std::optional<ToolId>();
    for (const auto& tool : book.ledger().all<fastening::Tool>())
        if (text(tool.name).compare(name, Qt::CaseInsensitive) == 0)
            return std::optional(tool.id);
    return base::refuse(base::Fault::Unknown, "tool", name.toStdString(),
                        "a torque tool of the drawer; add it there first");
}

}  // namespace wm::ui

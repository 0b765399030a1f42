// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/workbench/prompts.h"

#include <QFileInfo>

#include "ui/words/error_words.h"
#include "ui/words/tr.h"
#include "ui/workbench/file_names.h"

namespace wm::ui {

std::optional<QString> Prompts::choosePdf(const QString& title, const QString& suggested) {
    const QString ending = QStringLiteral(".pdf");
    const auto chosen =
        chooseFile(FileUse::Save, title, ui::tr("PDF (*.pdf)"), asFileName(suggested) + ending);
    if (!chosen)
        return std::nullopt;
    // The dialog asked about the name that was typed, if it asked at all.
    const QString path = withEnding(*chosen, ending);
    if (path != *chosen && QFileInfo::exists(path) &&
        !confirm(ui::tr("%1 is there already.").arg(quoted(QFileInfo(path).fileName())),
                 ui::tr("Replace it")))
        return std::nullopt;
    return path;
}

}  // namespace wm::ui

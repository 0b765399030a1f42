// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>

#include "core/base/result.h"
#include "core/notebook/lines.h"

namespace wm::ui {

/// "taken", "doubtful", "refused".
QString verdictWord(notebook::Verdict verdict);
/// Why, or what was seen: all remarks about the line in one sentence without a full stop; empty if there are
/// none.
QString reasonFor(const notebook::Line& line);
/// What a yes would do, "read it as 106,9"; empty if nothing is likely.
QString cureFor(const notebook::Line& line);
/// Why a file can't be read as a notebook at all, and what to do.
QString notebookRefusal(const base::Error& error, const QString& fileName);
/// What a column is called above the preview.
QString columnWord(notebook::Column column);
/// "72 taken, 6 doubtful (5 with a cure), 0 refused".
QString countsOf(const notebook::Notebook& notebook);

}  // namespace wm::ui

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>

#include "core/base/result.h"
#include "core/notebook/lines.h"
#include "core/notebook/totals.h"

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

QString separatorWord(char separator);                ///< "semicolon"
QString decimalWord(char decimal);                    ///< "comma: 1,5"
QString dateFormWord(notebook::DateForm form);        ///< "day first: 7.3.2026"
QString totalsWords(const notebook::Totals& totals);  ///< "61 outings, 118.4 h as noted, 40 washes, 42 jobs"
/// Cells as they stand, with a dot between them, on one line; what would disturb the words around is U+FFFD.
QString cellsInWords(const std::vector<std::string>& cells);

}  // namespace wm::ui

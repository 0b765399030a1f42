// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QLatin1String>
#include <QString>

#include "core/store/store.h"

namespace wm::ui {

/// The detail of a ReadOnly where nobody forbids writing: another file has the place of the one that was
/// opened.
inline constexpr QLatin1String kMovedAway{"moved away"};
/// Why nothing can be entered, and what helps.
QString readOnlyWords();

/// What the mechanic reads when a verb was not written: what is wrong and what helps.
QString wordsFor(const store::ApplyError& error);
/// What he reads when a change was saved, but without a copy of the file as it was before.
QString wordsFor(const store::BackupTrouble& trouble);
/// What he reads when a write that was interrupted has been taken back.
QString takenBackWords(const QString& path);
/// What he reads when a file did not open as asked; empty if it simply opened.
QString wordsFor(const store::OpenReport& report);

}  // namespace wm::ui

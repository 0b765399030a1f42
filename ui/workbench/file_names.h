// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>

namespace wm::ui {

/// "sheet" as "sheet.pdf"; a name that ends in a dot and letters stays as it is.
QString withEnding(const QString& path, const QString& ending);

/// What was typed, as part of a file's name on any system: "Heron/2: race" as "Heron-2- race".
QString asFileName(const QString& words);

/// The ending of the first kind that a dialog's filter names: "pdf" of "PDF (*.pdf)"; empty for any file.
QString endingOf(const QString& filter);

/// Also of a name with bytes that are no text, for which Qt has no way.
bool isThere(const QString& path);

/// True if a garage can be made under this name: nothing is there, or what is left of one whose making was
/// broken off.
bool isFree(const QString& path);

/// The file that a link leads to; a plain path as it is. By whichever name a garage was opened, its backups
/// stand beside the file itself, as its journal does.
QString whereItLies(const QString& path);

/// Takes back what a program wrote that was killed as it made this garage: then nothing is in the file, and
/// File::create takes it.
void takeBackUnfinished(const QString& path);

}  // namespace wm::ui

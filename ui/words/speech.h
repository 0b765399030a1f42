// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <string>

#include "core/sheet/speech.h"

namespace wm::ui {

/// What core has to say, in the language that is spoken.
QString words(const base::Phrase& phrase);

/// The sentence that a file keeps for undo and in its log.
QString wordsOfKept(const std::string& kept);

/// With the language that is spoken, its days and its decimal mark: for a sheet.
sheet::Speech speech();

}  // namespace wm::ui

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/phrase.h"
#include "core/weekend/plan.h"

namespace wm::weekend {

/// What an act says: of a stop, of a wait and of a run that no step asks for a sentence of the program, to be
/// said in any language; of all others the words of its step, joint, doing or job.
base::Phrase actPhrase(const Act& act);

}  // namespace wm::weekend

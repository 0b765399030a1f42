// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <vector>

#include "core/book/state.h"

namespace wm::ui {

/// "away since Sat 2 May"
QString gapSinceWords(const book::Book& book, const book::Gap& gap);
/// "engine, off since Mon 15 Jun", "shock, away since Sat 2 May (Lowmoor)".
QString gapWords(const book::Book& book, const book::Gap& gap);
/// "rear wheel, off and back on Tue 3 Mar: torqued?"
QString inDoubtWords(const book::Book& book, const book::Doubt& doubt);
/// What is doubted, and why, apart.
QString doubtedWords(const book::Book& book, const book::Doubt& doubt);
QString whyDoubtedWords(const book::Book& book, const book::Doubt& doubt);
/// The same in two or three words.
QString shortDoubtWords(const book::Doubt& doubt);
/// "Not whole: shock, away since Sat 2 May; 5 hand-tight; 1 in doubt", or that it is whole.
QString stateWords(const book::Book& book, MachineId machine);
/// "undone, to torque once the rear wheel is back: Rear axle nut": what is out, on one line.
QString outWords(const std::vector<book::JointOut>& out);
/// All of them on one line.
QString gapWords(const book::Book& book, const std::vector<book::Gap>& gaps);

}  // namespace wm::ui

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>

#include "core/book/drawer_of_book.h"

namespace wm::ui {

// The drawer, a recall and what came loose in words; the same on the screen and on the command line.

/// "20 to 200 N·m"
QString rangeWords(const fastening::Tool& tool);
/// "II A ±4 %"; "I C ±4 %, from memory" where no source but memory of ISO 6789 says so; empty if unstated.
QString typeWords(const fastening::Tool& tool);
/// "checked until 3 Mar 2027, 12 of 5000 cycles"; "never checked"; "OUT OF TOLERANCE, not for use".
QString standingWords(const fastening::ToolStanding& standing, calendar::Date today);
/// Whether its time has come or it must not be used.
bool wantsCheck(const fastening::ToolStanding& standing);
/// "serves it, at 55 % of its capacity", "at the edge: in the bottom fifth of its capacity ...", "doesn't
/// reach it".
QString fitWords(const fastening::Fit& fit);

/// "Middle click was found 7.2 % out of tolerance on 14 May; last found good on 14 Oct."
QString recallWords(const book::ToolRecall& recall, calendar::Date today);
/// "Rear axle nut, Heron 250: torqued 3 times, last on 2 May by Odile"; with what was done since.
QString recallLineWords(const book::Book& book, const book::ToolRecall& recall,
                        const fastening::RecallLine& line);

/// "moved 3 times in 5 checks, 31 h between, furthest 90°"
QString looseningWords(const fastening::Loosening& figures);
/// The plain statement that a joint loosens more often than its kind, with its statistics; empty if it can't
/// be said.
QString comparisonWords(const book::CameLoose& line);

}  // namespace wm::ui

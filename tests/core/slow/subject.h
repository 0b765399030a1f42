// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "tests/core/slow/answer.h"

// Whose clock a task asks for, reckoned from the words of tests/data/subject/README.md alone: everything is
// looked up by going through all facts, and time is walked through morning, noon and evening. Slow, and
// written apart from core/book and core/upkeep, to be compared with them. Hours are those of day_by_day.h.
namespace wm::tale {

Answer slowAnswer(const Tale& tale, const std::string& machine, const std::string& task, calendar::Date on);
/// "yes, of E1", "yes" (the machine's own), "no: nothing fitted there".
std::string slowMayRecord(const Tale& tale, const std::string& machine, const std::string& task,
                          calendar::Date on);
std::vector<Demand> slowFollowUps(const Tale& tale, const std::string& machine, calendar::Date on);

}  // namespace wm::tale

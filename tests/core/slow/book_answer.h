// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "tests/core/slow/answer.h"

// The same questions, answered by the program itself (core/book).
namespace wm::tale {

Answer bookAnswer(const Tale& tale, const std::string& machine, const std::string& task, calendar::Date on);
std::vector<Demand> bookFollowUps(const Tale& tale, const std::string& machine, calendar::Date on);

}  // namespace wm::tale

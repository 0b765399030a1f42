// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "tests/core/slow/state.h"

// The program's answers in the words of tests/data/state.
namespace wm::tale {

State stateByBook(const Tale& tale, const std::string& machine, calendar::Date on);
std::string mayConfirmByBook(const Tale& tale, const std::string& machine, const std::string& joint,
                             calendar::Date on);
std::string mayFitByBook(const Tale& tale, const std::string& item, const std::string& to,
                         const std::string& at, calendar::Date on);

}  // namespace wm::tale

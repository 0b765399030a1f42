// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <string_view>

namespace wm::ui {

/// What the user calls an input: "first_day" is "first day", "by_person" is "person".
QString fieldWords(std::string_view field);

/// What the last part of a place is called: "tasks[3].limits[0].every" -> "every".
std::string_view lastPart(std::string_view place);

}  // namespace wm::ui

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <nlohmann/json.hpp>
#include <string>

namespace wm::reference {

/// One case of tests/reference/<file>.json with its input, expected values and source.
nlohmann::json caseOf(const std::string& file, const std::string& id);

}  // namespace wm::reference

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <nlohmann/json.hpp>

namespace wm::exchange {

/// The version of the exchange text; resources/exchange.schema.json describes it.
int newestFormat();

/// Gives a parsed text of an earlier format the tables and keys that came later, with the values that say
/// what it said: no weights (format 1), no torque tools and no joints shared by a model (formats 1 and 2). A
/// text of the present format, and whatever is of the wrong form, stays as it is.
void bringUpToDate(nlohmann::json& root);

}  // namespace wm::exchange

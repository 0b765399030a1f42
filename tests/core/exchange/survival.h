// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <string_view>

namespace wm::test {

/// Reads any bytes as an exchange text and as a starter schedule. What is accepted must come back the same
/// from a second round; what is refused must be refused in valid UTF-8. The words of the first breach, or
/// nothing. Also the body of a fuzz target, with tests/data/exchange as its seeds.
std::string breachOfReading(std::string_view bytes);

}  // namespace wm::test

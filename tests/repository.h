// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <string_view>

namespace wm::test {

/// The whole path of a file of the repository, given by its path from the top. Only here does a test know
/// where the repository lies, so that the compiler cache serves other clones too.
std::string repositoryPath(std::string_view fromTop);

}  // namespace wm::test

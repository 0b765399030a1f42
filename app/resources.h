// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

namespace wm::app {

struct Resource {
    std::string name;  ///< "two-stroke-motocross.json"
    std::string text;
};

/// The files in a folder of what the program brings along ("/starters"), by name.
std::vector<Resource> resources(const char* folder, const char* pattern);

}  // namespace wm::app

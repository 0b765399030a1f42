// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <map>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "tests/arch/source_tree.h"

namespace wm::arch {

using Arrow = std::pair<std::string, std::string>;  ///< who includes, who is included

struct Folder {
    std::string name;
    int files = 0;
    std::size_t lines = 0;
    std::size_t height = 0;  ///< 0 knows no other folder; else one more than the highest that it knows
};

/// Who includes whom, folder by folder.
struct Includes {
    std::vector<Folder> folders{};  ///< from the highest down, by name within a height
    std::map<Arrow, int> arrows{};  ///< with the number of include lines
    std::set<Arrow> up{};           ///< those that close a circle, the lightest of it each time
    [[nodiscard]] bool isImplied(const Arrow& arrow) const;  ///< there is a longer way down as well
};

Includes includesOf(const std::vector<SourceFile>& files);

/// A drawing, folders as boxes by height, and a table with each number. Arrows up are red.
std::string svgOf(const Includes& includes);
/// The same for Graphviz.
std::string dotOf(const Includes& includes);

}  // namespace wm::arch

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

namespace wm::arch {

/// One of our own source files, as text. `path` is relative to the top of the tree.
struct SourceFile {
    std::string path;
    std::vector<std::string> lines;
};

/// All .h and .cpp files under the named top folders, of this tree or of the one at `top`.
std::vector<SourceFile> sourceFiles(const std::vector<std::string>& folders, const std::string& top = {});

/// A text of the tree by its path: empty if it is not there.
SourceFile document(const std::string& path);

/// README.md, DEVELOPERS.md and the README.md of each folder.
std::vector<SourceFile> documents();
/// True if a file or folder of the tree has this path, or begins with it: "core/outlook/hab".
bool beginsAPath(const std::string& path);

/// The repo paths in `#include "..."` lines.
std::vector<std::string> ownIncludes(const SourceFile& file);
/// What stands in `#include <...>` lines.
std::vector<std::string> systemIncludes(const SourceFile& file);

bool startsWith(const std::string& text, const std::string& beginning);
bool endsWith(const std::string& text, const std::string& ending);

}  // namespace wm::arch

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/arch/source_tree.h"
#include "tests/repository.h"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <stdexcept>

namespace wm::arch {

namespace fs = std::filesystem;

bool startsWith(const std::string& text, const std::string& beginning) {
    return text.rfind(beginning, 0) == 0;
}

bool endsWith(const std::string& text, const std::string& ending) {
    return text.size() >= ending.size() &&
           text.compare(text.size() - ending.size(), ending.size(), ending) == 0;
}

namespace {

SourceFile read(const fs::path& top, const std::string& path) {
    SourceFile file{path, {}};
    std::ifstream in(top / path);
    for (std::string line; std::getline(in, line);)
        file.lines.push_back(line);
    return file;
}

}  // namespace

SourceFile document(const std::string& path) {
    return read(test::repositoryPath(""), path);
}

std::vector<SourceFile> documents() {
    std::vector<SourceFile> found{document("README.md"), document("DEVELOPERS.md")};
    const fs::path top = test::repositoryPath("");
    for (const char* folder : {"core", "ui", "app", "tests", "resources", "demo-db"})
        for (const auto& entry : fs::recursive_directory_iterator(top / folder))
            if (entry.path().filename() == "README.md")
                found.push_back(document(fs::relative(entry.path(), top).generic_string()));
    return found;
}

bool beginsAPath(const std::string& path) {
    const fs::path whole = fs::path(test::repositoryPath(path));
    if (fs::exists(whole))
        return true;
    if (!fs::is_directory(whole.parent_path()))
        return false;
    const auto entries = fs::directory_iterator(whole.parent_path());
    return std::any_of(begin(entries), end(entries), [&](const fs::directory_entry& entry) {
        return startsWith(entry.path().filename().string(), whole.filename().string());
    });
}

std::vector<SourceFile> sourceFiles(const std::vector<std::string>& folders, const std::string& tree) {
    std::vector<SourceFile> files;
    const fs::path top = tree.empty() ? test::repositoryPath("") : tree;
    for (const std::string& folder : folders) {
        if (tree.empty() && !fs::is_directory(top / folder))
            throw std::runtime_error("no folder " + folder + ": a rule over it would hold of nothing");
        if (!fs::exists(top / folder))
            continue;
        for (const auto& entry : fs::recursive_directory_iterator(top / folder)) {
            const std::string path = fs::relative(entry.path(), top).generic_string();
            if (!entry.is_regular_file() || !(endsWith(path, ".h") || endsWith(path, ".cpp")))
                continue;
            files.push_back(read(top, path));
        }
    }
    std::sort(files.begin(), files.end(), [](const auto& a, const auto& b) { return a.path < b.path; });
    return files;
}

namespace {

std::vector<std::string> includes(const SourceFile& file, char open, char close) {
    std::vector<std::string> found;
    const std::string beginning = std::string("#include ") + open;
    for (const std::string& line : file.lines)
        if (startsWith(line, beginning))
            found.push_back(
                line.substr(beginning.size(), line.find(close, beginning.size()) - beginning.size()));
    return found;
}

}  // namespace

std::vector<std::string> ownIncludes(const SourceFile& file) {
    return includes(file, '"', '"');
}
std::vector<std::string> systemIncludes(const SourceFile& file) {
    return includes(file, '<', '>');
}

}  // namespace wm::arch

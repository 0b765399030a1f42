// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// What the documents of the tree say of the tree is true.
#include <gtest/gtest.h>

#include <regex>
#include <set>
#include <string>

#include "tests/arch/source_tree.h"

namespace wm::arch {
namespace {

// "Suite.Name" of every test, however it is declared: TEST, TEST_F, TEST_P, RC_GTEST_PROP.
std::set<std::string> namesOfTests() {
    const std::regex declared(
        R"(^(?:TEST|TEST_F|TEST_P|RC_GTEST_PROP|RC_GTEST_FIXTURE_PROP)\((\w+),\s*(\w+))");
    std::set<std::string> names;
    for (const SourceFile& file : sourceFiles({"tests"}))
        for (const std::string& line : file.lines)
            if (std::smatch match; std::regex_search(line, match, declared))
                names.insert(match[1].str() + "." + match[2].str());
    return names;
}

// Everything between backticks that `pattern` matches as a whole.
std::vector<std::string> quoted(const SourceFile& text, const std::regex& pattern) {
    static const std::regex ticks("`([^`]+)`");
    std::vector<std::string> found;
    for (const std::string& line : text.lines)
        for (auto at = std::sregex_iterator(line.begin(), line.end(), ticks); at != std::sregex_iterator();
             ++at)
            if (const std::string words = (*at)[1]; std::regex_match(words, pattern))
                found.push_back(words);
    return found;
}

TEST(DocumentsTest, EveryWorkedExampleIsHeldByATest) {
    const std::set<std::string> tests = namesOfTests();
    const auto named = quoted(document("core/README.md"), std::regex(R"([A-Z]\w+\.[A-Z]\w+)"));
    EXPECT_GE(named.size(), 40U) << "core/README.md names the tests of its examples";
    for (const std::string& name : named)
        EXPECT_TRUE(tests.contains(name)) << "core/README.md cites " << name << ", which is no test";
}

// Where to begin reading, and what has to be known before something is changed.
TEST(DocumentsTest, EveryFolderOfTheCoreSaysWhatItHolds) {
    std::set<std::string> folders;
    for (const SourceFile& file : sourceFiles({"core"}))
        folders.insert(file.path.substr(0, file.path.rfind('/')));
    EXPECT_GE(folders.size(), 15U);
    for (const std::string& folder : folders)
        EXPECT_FALSE(document(folder + "/README.md").lines.empty()) << folder << " has no README.md";
}

// The READMEs and DEVELOPERS.md. A path is named as a file, a folder, a pattern (`demo*.cpp`) or without its
// ending where header and source are meant.
TEST(DocumentsTest, EveryPathThatIsNamedIsThere) {
    const std::regex path(R"((core|ui|app|tests|resources|demo-db)/[\w./*-]*)");
    for (const SourceFile& text : documents())
        for (std::string named : quoted(text, path)) {
            named = named.substr(0, named.find('*'));
            EXPECT_TRUE(beginsAPath(named)) << text.path << " names " << named << ", which is not there";
        }
}

// A file of a folder is named in the folder's README without its path, and without its ending where header
// and source are meant.
TEST(DocumentsTest, EveryFileThatAFolderNamesIsThere) {
    const std::regex file(R"([a-z]\w*_\w+(\.(h|cpp))?|[a-z]\w*\.(h|cpp))");
    std::size_t named = 0;
    for (const SourceFile& text : documents()) {
        if (!startsWith(text.path, "core/") && !startsWith(text.path, "ui/"))
            continue;
        const std::string folder = text.path.substr(0, text.path.rfind('/') + 1);
        if (folder == "core/" || folder == "ui/")
            continue;
        for (const std::string& name : quoted(text, file)) {
            ++named;
            EXPECT_TRUE(beginsAPath(folder + name))
                << text.path << " names " << name << ", which is not there";
        }
    }
    EXPECT_GE(named, 20U);
}

// A line that no longer applies would be an error of the list only once somebody runs the target.
TEST(DocumentsTest, EveryMutantAppliesOnce) {
    const std::regex parts("([^\t]+)\t([^\t]+)\t([^\t]+)");
    std::size_t mutants = 0;
    for (const std::string& line : document("tests/core/mutants/mutants.list").lines) {
        std::smatch part;
        if (line.empty() || line.front() == '#')
            continue;
        ASSERT_TRUE(std::regex_match(line, part, parts)) << line;
        ++mutants;
        const std::string old = part[2];
        std::size_t found = 0;
        for (const std::string& source : document(part[1]).lines)
            for (auto at = source.find(old); at != std::string::npos; at = source.find(old, at + old.size()))
                ++found;
        EXPECT_EQ(found, 1U) << part[1] << " holds \"" << old << '"';
    }
    EXPECT_GE(mutants, 70U);
}

}  // namespace
}  // namespace wm::arch

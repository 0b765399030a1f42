// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// The shape of the code: sizes, names, headers, no hidden state. Limits are in DEVELOPERS.md.
#include <gtest/gtest.h>

#include <filesystem>
#include <map>
#include <regex>
#include <set>

#include "tests/arch/source_tree.h"
#include "tests/repository.h"

namespace wm::arch {
namespace {

constexpr std::size_t kLongestSource = 600;
constexpr std::size_t kLongestHeader = 250;
constexpr std::size_t kLongestFunction = 60;

// Over the limit for a reason.
const std::map<std::string, std::string> kMayBeLonger{
    {"core/upkeep/task.h", "the list of fields of the one wide row type"},
};

std::vector<SourceFile> all() {
    return sourceFiles({"core", "ui", "app", "tests"});
}

TEST(ShapeTest, FilesStaySmall) {
    for (const SourceFile& file : all()) {
        const std::size_t limit = endsWith(file.path, ".h") ? kLongestHeader : kLongestSource;
        if (kMayBeLonger.contains(file.path))
            continue;
        EXPECT_LE(file.lines.size(), limit) << file.path << ": what is the second idea in it?";
    }
}

// In this style a function ends with a "}" at the indent of the line that opened it.
TEST(ShapeTest, FunctionsStayShort) {
    const std::regex opening(R"(^ {0,4}([A-Za-z_].*)?\)( const)?( noexcept)?( override)? \{$)");
    const std::regex notFunction(R"(^ *(if|for|while|switch|else|\}).*)");
    for (const SourceFile& file : sourceFiles({"core", "ui", "app"})) {
        // Lists of SQL statements, one table after another: data, not steps.
        if (startsWith(file.path, "core/store/schema_"))
            continue;
        for (std::size_t at = 0; at < file.lines.size(); ++at) {
            const std::string& line = file.lines[at];
            if (!std::regex_match(line, opening) || std::regex_match(line, notFunction))
                continue;
            // The signature may have been broken: the body then stands one level in from its first line's
            // indent.
            const std::string indent(line.find_first_not_of(' ') <= 4 ? line.find_first_not_of(' ') : 0, ' ');
            std::size_t end = at + 1;
            while (end < file.lines.size() && file.lines[end] != indent + "}" && file.lines[end] != "}")
                ++end;
            EXPECT_LE(end - at, kLongestFunction) << file.path << ":" << at + 1 << ": " << line;
        }
    }
}

TEST(ShapeTest, EveryFileCarriesItsLicence) {
    for (const SourceFile& file : all()) {
        ASSERT_GE(file.lines.size(), 3U) << file.path;
        EXPECT_EQ(file.lines[0], "// SPDX-FileCopyrightText: Witnessmark contributors") << file.path;
        EXPECT_EQ(file.lines[1], "// SPDX-License-Identifier: GPL-3.0-or-later") << file.path;
        if (endsWith(file.path, ".h")) {
            EXPECT_EQ(file.lines[2], "#pragma once") << file.path;
        }
    }
}

TEST(ShapeTest, NoHiddenState) {
    const std::regex mutableGlobal(
        R"(^(static |inline |thread_local )(?!.*(const|\())[A-Za-z_:<>]+ [a-z]\w*( = .*|\{.*\})?;$)");
    for (const SourceFile& file : sourceFiles({"core", "ui", "app"})) {
        for (const std::string& line : file.lines) {
            EXPECT_EQ(line.find("::instance()"), std::string::npos)
                << file.path << ": " << line << "\nPass it to the constructor; app/ wires everything.";
            EXPECT_FALSE(std::regex_match(line, mutableGlobal))
                << file.path << ": a global that can change: " << line;
        }
    }
}

TEST(ShapeTest, NamesSayWhatTheyHold) {
    for (const SourceFile& file : all())
        for (const char* word : {"manager", "utils", "helper", "misc"})
            EXPECT_EQ(file.path.find(word), std::string::npos) << file.path << ": name what it does";
}

TEST(ShapeTest, CommentsGiveReasons) {
    const std::regex idle(R"(^\s*//+ The \w+ class.*)");
    for (const SourceFile& file : all())
        for (const std::string& line : file.lines)
            EXPECT_FALSE(std::regex_match(line, idle)) << file.path << ": " << line;
}

TEST(ShapeTest, TestsAreNamedByBehaviour) {
    const std::regex test(R"(^(TEST|TEST_F|TEST_P|RC_GTEST_PROP)\((\w+), ?(\w+).*)");
    for (const SourceFile& file : sourceFiles({"tests"})) {
        for (const std::string& line : file.lines) {
            std::smatch match;
            if (std::regex_match(line, match, test)) {
                EXPECT_EQ(match[2].str().find('_'), std::string::npos) << file.path << ": " << line;
                EXPECT_EQ(match[3].str().find('_'), std::string::npos) << file.path << ": " << line;
            }
        }
    }
}

TEST(ShapeTest, TheTopOfTheTreeIsAsAgreed) {
    const std::set<std::string> agreed{
        "CMakeLists.txt", "CMakePresets.json", "README.md", "DEVELOPERS.md", "app", "core", "ui", "resources",
        "tests",          "demo-db",           "build"};
    for (const auto& entry : std::filesystem::directory_iterator(test::repositoryPath(""))) {
        const std::string name = entry.path().filename().string();
        EXPECT_TRUE(agreed.contains(name) || startsWith(name, ".")) << name;
    }
}

}  // namespace
}  // namespace wm::arch

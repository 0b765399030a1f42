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

std::size_t indentOf(const std::string& line) {
    const auto at = line.find_first_not_of(' ');
    return at == std::string::npos ? 0 : at;
}

// How many brackets of the line stay open, going down its text.
int open(const std::string& line) {
    int count = 0;
    for (const char sign : line)
        count += sign == '(' ? 1 : sign == ')' ? -1 : 0;
    return count;
}

// The line on which the statement begins that ends on line `at` with a brace: a signature may be broken, and
// the list of members of a constructor may follow it.
std::size_t beginOf(const std::vector<std::string>& lines, std::size_t at) {
    static const std::regex goesOn(R"(^ *(:|,|requires\b).*)");
    int balance = open(lines[at]);
    while (at > 0 && (balance < 0 || std::regex_match(lines[at], goesOn) || endsWith(lines[at - 1], ",")))
        balance += open(lines[--at]);
    return at;
}

struct Function {
    std::size_t line = 0;
    std::size_t length = 0;
};

// In this style a function ends with a "}" at the indent of the line that opened it.
std::vector<Function> functionsOf(const std::vector<std::string>& lines) {
    static const std::regex opening(R"(^.*\)( const)?( noexcept)?( override)?( ->.*)?( requires .*)? \{$)");
    static const std::regex noFunction(R"(^ *((if|for|while|switch|else|do|catch|return)\b|\}).*)");
    static const std::regex lambda(R"(\[[^\]"]*\][(<])");
    std::vector<Function> found;
    for (std::size_t at = 0; at < lines.size(); ++at) {
        if (!std::regex_match(lines[at], opening))
            continue;
        const std::size_t first = beginOf(lines, at);
        // What stands within another function, and what is handed to one, is part of it.
        std::string whole;
        for (std::size_t each = first; each <= at; ++each)
            whole += lines[each];
        if (std::regex_search(whole, lambda) || std::regex_match(lines[first], noFunction))
            continue;
        const std::string closing = std::string(indentOf(lines[first]), ' ') + "}";
        std::size_t end = at + 1;
        while (end < lines.size() && lines[end] != closing && lines[end] != closing + ";")
            ++end;
        found.push_back({first, end - at});
    }
    return found;
}

TEST(ShapeTest, FunctionsStayShort) {
    std::size_t functions = 0;
    for (const SourceFile& file : sourceFiles({"core", "ui", "app"})) {
        // Lists of SQL statements, one table after another: data, not steps.
        if (startsWith(file.path, "core/store/schema_"))
            continue;
        for (const Function& function : functionsOf(file.lines)) {
            ++functions;
            EXPECT_LE(function.length, kLongestFunction)
                << file.path << ":" << function.line + 1 << ": " << file.lines[function.line];
        }
    }
    EXPECT_GE(functions, 3000U) << "the pattern no longer finds the functions";
}

TEST(ShapeTest, FindsFunctionsOfEachForm) {
    const auto lengths = [](std::vector<std::string> lines) {
        std::vector<std::size_t> found;
        for (const Function& function : functionsOf(lines))
            found.push_back(function.length);
        return found;
    };
    using Lengths = std::vector<std::size_t>;
    EXPECT_EQ(lengths({"int f() {", "    return 1;", "}"}), Lengths{2});
    EXPECT_EQ(lengths({"bool Form::isAt(int a,", "                int b) const {", "    a;", "    b;", "}"}),
              Lengths{3});
    EXPECT_EQ(lengths({"Form::Form(int a)", "    : a_(a), b_(f(a)) {", "}"}), Lengths{1});
    EXPECT_EQ(lengths({"Form::Form(int a)", "    : a_(a),", "      b_(f(a)) {", "}"}), Lengths{1});
    EXPECT_EQ(lengths({"int forEach() {", "    while (f()) {", "    }", "}"}), Lengths{3});
    EXPECT_EQ(lengths({"class A {", "    int f() {", "        return 1;", "    }", "};"}), Lengths{2});
    EXPECT_EQ(lengths({"const auto f = [](int a) {", "    return a;", "};"}), Lengths{});
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

// A variable that outlives its function and can change: at the edge of a file, or static within.
bool isHiddenState(const std::string& line) {
    static const std::regex global(
        R"(^((static|inline|thread_local|constinit) )*(?!const|using|namespace|return|typedef|extern|friend|struct|class|enum|union|template|static|inline|thread_local|goto|break)[A-Za-z_][\w:<>, *&]* \*?[a-z]\w*( = .*|\{.*\})?;$)");
    static const std::regex local(
        R"(^ +(static|thread_local)( static| thread_local)? (?!const|constexpr)[^()=]* \*?[a-z]\w*(;| = .*|\{.*)$)");
    return std::regex_match(line, global) || std::regex_match(line, local);
}

TEST(ShapeTest, KnowsHiddenStateWhenItSeesIt) {
    for (const char* line :
         {"int counter = 0;", "static int counter;", "std::map<int, std::string> names;",
          "inline bool seen{};", "    static int calls = 0;", "    static std::set<int> known;",
          "thread_local Book* book = nullptr;", "    thread_local int depth{0};"})
        EXPECT_TRUE(isHiddenState(line)) << line;
    for (const char* line :
         {"constexpr int kMost = 3;", "const std::regex kWord(\"a\");", "class Book;", "struct sqlite3;",
          "using Row = int;", "enum class Pace : std::uint8_t;",
          "    static const QRegularExpression shape(text);", "    int count = 0;",
          "    static constexpr int kMost = 3;", "    static Opened open(const QString& path);",
          "inline constexpr double kSpace = 1.0;", "std::string name(const Book& book);",
          "namespace fs = std::filesystem;"})
        EXPECT_FALSE(isHiddenState(line)) << line;
}

TEST(ShapeTest, NoHiddenState) {
    for (const SourceFile& file : sourceFiles({"core", "ui", "app"})) {
        for (const std::string& line : file.lines) {
            EXPECT_EQ(line.find("::instance()"), std::string::npos)
                << file.path << ": " << line << "\nPass it to the constructor; app/ wires everything.";
            EXPECT_FALSE(isHiddenState(line)) << file.path << ": a global that can change: " << line;
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

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// Who may include whom: the table of DEVELOPERS.md, checked against the #include lines.
#include <gtest/gtest.h>

#include <map>
#include <optional>
#include <set>

#include "tests/arch/source_tree.h"

namespace wm::arch {
namespace {

// A part of the tree and the parts right below it: it may include those, and what they may.
const std::map<std::string, std::set<std::string>> kBelow{
    {"core/base", {}},
    {"core/units", {"core/base"}},
    {"core/words", {"core/units"}},
    {"core/calendar", {"core/units"}},
    {"core/usage", {"core/calendar"}},
    {"core/items", {"core/usage"}},
    {"core/upkeep", {"core/items"}},
    {"core/outlook", {"core/upkeep"}},
    {"core/fastening", {"core/calendar", "core/words"}},
    {"core/stock", {"core/upkeep"}},
    {"core/weekend", {"core/upkeep"}},
    {"core/picture", {"core/outlook", "core/fastening", "core/stock", "core/weekend"}},
    {"core/book", {"core/picture"}},
    {"core/definitions", {"core/book"}},
    {"core/verbs", {"core/definitions"}},
    {"core/sheet", {"core/verbs"}},
    {"core/explain", {"core/verbs"}},
    {"core/exchange", {"core/verbs"}},
    {"core/notebook", {"core/verbs"}},
    {"core/store", {"core"}},
    {"ui", {"core", "core/store/store.h"}},
    {"app", {"core", "core/store/store.h", "ui"}},
};

// The window's folders from the bottom up: each may include what stands on the lines before its own. A page
// is a folder of its own in ui/pages and knows no other page.
const std::vector<std::set<std::string>> kWindow{
    {"ui/theme", "ui/words"},
    {"ui/drawing", "ui/workbench"},
    {"ui/tables"},
    {"ui/entry", "ui/print"},
    {"ui/fields"},
    {"ui/pages"},
    {"ui/pages/*"},
    {"ui/shell"},
};

// The line of a folder of the window, or nothing if it stands on none.
std::optional<std::size_t> heightOf(const std::string& folder) {
    const std::string name = startsWith(folder, "ui/pages/") ? "ui/pages/*" : folder;
    for (std::size_t at = 0; at < kWindow.size(); ++at)
        if (kWindow[at].contains(name))
            return at;
    return std::nullopt;
}

std::string partOf(const std::string& path) {
    if (startsWith(path, "core/"))
        return path.substr(0, path.find('/', 5));
    if (startsWith(path, "ui/"))
        return path.substr(0, path.rfind('/'));
    return path.substr(0, path.find('/'));
}

std::set<std::string> mayInclude(const std::string& part) {
    std::set<std::string> may;
    const auto below = kBelow.find(part);
    if (below == kBelow.end())
        return may;
    for (const std::string& next : below->second) {
        may.insert(next);
        may.merge(mayInclude(next));
    }
    return may;
}

bool allowed(const std::string& from, const std::string& included) {
    const std::string part = partOf(from);
    const std::string target = partOf(included);
    if (target == part)
        return true;
    const auto height = heightOf(part);
    const auto targetHeight = heightOf(target);
    if (height && targetHeight)
        return *targetHeight < *height;
    const auto may = mayInclude(height ? "ui" : part);
    const bool core = startsWith(target, "core/") && target != "core/store";
    return may.contains(target) || may.contains(included) || (core && may.contains("core")) ||
           (targetHeight && may.contains("ui"));
}

TEST(LayersTest, EveryIncludeIsInTheTable) {
    for (const SourceFile& file : sourceFiles({"core", "ui", "app"})) {
        const std::string part = partOf(file.path);
        ASSERT_TRUE(startsWith(part, "ui") ? heightOf(part).has_value() : kBelow.contains(part))
            << file.path << ": this folder is not in the table of layers";
        for (const std::string& included : ownIncludes(file))
            EXPECT_TRUE(allowed(file.path, included))
                << file.path << " includes " << included << ", but " << partOf(file.path) << " must not know "
                << partOf(included)
                << ". Facts go down and figures come up, one way: move what is needed to the lower folder, "
                   "or take it as "
                   "an argument.";
    }
}

// To add a page is to add it to the table of pages.
TEST(LayersTest, TheShellKnowsPagesByTheirTableAlone) {
    for (const SourceFile& file : sourceFiles({"ui/shell", "app"}))
        for (const std::string& included : ownIncludes(file))
            EXPECT_TRUE(!startsWith(partOf(included), "ui/pages/") || file.path == "ui/shell/page_table.cpp")
                << file.path << " includes " << included
                << ": ask the page through Page, and go to it with Guide::goTo and an Aim.";
}

TEST(LayersTest, TheCoreIsPure) {
    const std::set<std::string> banned{"iostream", "fstream", "cstdio",    "filesystem", "random",
                                       "thread",   "mutex",   "sqlite3.h", "cstdlib",    "ctime"};
    for (const SourceFile& file : sourceFiles({"core"})) {
        if (startsWith(file.path, "core/store/"))
            continue;
        for (const std::string& included : systemIncludes(file)) {
            EXPECT_FALSE(banned.contains(included) || startsWith(included, "Q") ||
                         startsWith(included, "spdlog"))
                << file.path << " includes <" << included
                << ">. The core has no Qt, no input or output, no clock and no chance: take the value as an "
                   "argument.";
            EXPECT_TRUE(!startsWith(included, "nlohmann/") || startsWith(file.path, "core/exchange/"))
                << file.path << ": JSON belongs to core/exchange alone.";
        }
        for (const std::string& line : file.lines)
            EXPECT_EQ(line.find("_clock"), std::string::npos)
                << file.path << " reads a clock: take the date as an argument.";
    }
}

TEST(LayersTest, SqliteStaysBehindTheStore) {
    auto files = sourceFiles({"ui", "app"});
    for (const SourceFile& file : sourceFiles({"core/store"}))
        if (file.path == "core/store/store.h")
            files.push_back(file);
    for (const SourceFile& file : files)
        for (const std::string& included : systemIncludes(file))
            EXPECT_TRUE(included != "sqlite3.h" && !startsWith(included, "QSql") &&
                        !startsWith(included, "QtSql"))
                << file.path << " sees the database itself: ask the book, or write a verb.";
}

TEST(LayersTest, TheTableWouldRefuse) {
    EXPECT_FALSE(allowed("core/usage/atoms.cpp", "core/upkeep/countdown.h"));
    EXPECT_FALSE(allowed("core/book/book.cpp", "core/store/store.h"));
    EXPECT_FALSE(allowed("ui/pages/bench.cpp", "core/store/schema.h"));
    EXPECT_FALSE(allowed("core/store/open.cpp", "ui/words/error_words.h"));
    EXPECT_TRUE(allowed("ui/pages/bench.cpp", "core/store/store.h"));
    EXPECT_TRUE(allowed("app/run_window.cpp", "ui/shell/main_window.h"));
    EXPECT_TRUE(allowed("ui/pages/bench/bench_page.cpp", "ui/pages/page.h"));
    EXPECT_FALSE(allowed("ui/pages/page.h", "ui/pages/bench/bench_page.h"));
    EXPECT_FALSE(allowed("ui/pages/bench/bench_page.cpp", "ui/pages/tasks/tasks_desk.h"));
    EXPECT_FALSE(allowed("ui/pages/bench/bench_grid.cpp", "ui/shell/actions.h"));
    EXPECT_FALSE(allowed("ui/words/figures.h", "ui/drawing/glyph.h"));
    EXPECT_FALSE(allowed("ui/words/figures.h", "ui/theme/tokens.h"));
    EXPECT_FALSE(heightOf(partOf("ui/guide.h")).has_value());
    EXPECT_TRUE(allowed("core/picture/rows.h", "core/weekend/rows.h"));
    EXPECT_FALSE(allowed("core/usage/rows.h", "core/items/rows.h"));
    EXPECT_FALSE(allowed("core/units/unit_words.cpp", "core/words/folding.h"));
    EXPECT_FALSE(allowed("core/picture/rows.h", "core/sheet/job_sheet.h"));
    EXPECT_FALSE(allowed("core/book/book.cpp", "core/verbs/verbs.h"));
    EXPECT_FALSE(allowed("core/definitions/chart.cpp", "core/verbs/verbs.h"));
    EXPECT_FALSE(allowed("core/picture/entry.h", "core/book/book.h"));
    EXPECT_TRUE(allowed("core/verbs/task_verbs.cpp", "core/definitions/definitions.h"));
}

}  // namespace
}  // namespace wm::arch

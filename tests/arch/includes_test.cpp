// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/arch/includes.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace wm::arch {
namespace {

SourceFile file(const std::string& path, const std::vector<std::string>& included) {
    SourceFile made{path, {"// a file"}};
    for (const std::string& each : included)
        made.lines.push_back("#include \"" + each + "\"");
    return made;
}

std::size_t heightOf(const Includes& includes, const std::string& name) {
    return std::find_if(includes.folders.begin(), includes.folders.end(),
                        [&](const Folder& folder) { return folder.name == name; })
        ->height;
}

TEST(IncludesTest, CountsLinesBetweenFoldersAndStacksThem) {
    const auto includes = includesOf({file("low/a.h", {}), file("middle/b.h", {"low/a.h"}),
                                      file("middle/b.cpp", {"middle/b.h", "low/a.h"}),
                                      file("high/c.cpp", {"middle/b.h", "low/a.h"})});
    EXPECT_EQ(includes.arrows.at({"middle", "low"}), 2);
    EXPECT_EQ(includes.arrows.size(), 3U);
    EXPECT_TRUE(includes.up.empty());
    EXPECT_EQ(heightOf(includes, "low"), 0U);
    EXPECT_EQ(heightOf(includes, "high"), 2U);
    EXPECT_TRUE(includes.isImplied({"high", "low"}));
    EXPECT_FALSE(includes.isImplied({"high", "middle"}));
}

TEST(IncludesTest, TheLightestArrowOfACirclePointsUp) {
    const auto includes = includesOf(
        {file("low/a.h", {"high/c.h"}), file("high/c.h", {"low/a.h"}), file("high/c.cpp", {"low/a.h"})});
    EXPECT_EQ(includes.up, (std::set<Arrow>{{"low", "high"}}));
    EXPECT_NE(svgOf(includes).find("#d00000"), std::string::npos);
    EXPECT_NE(dotOf(includes).find("\"low\" -> \"high\" [label=1 color=red"), std::string::npos);
}

// Beyond the table of layers: folders that stand side by side there know each other in one direction at most.
TEST(IncludesTest, NoTwoFoldersKnowEachOther) {
    for (const Arrow& arrow : includesOf(sourceFiles({"core", "ui", "app"})).up)
        ADD_FAILURE() << arrow.first << " includes " << arrow.second
                      << ", and in the end the other way round";
}

}  // namespace
}  // namespace wm::arch

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// The search line at the stand. tests/data/lookup/queries.json was written before the search was.
#include "core/fastening/lookup.h"

#include <gtest/gtest.h>

#include <rapidcheck/gtest.h>
#include <algorithm>

#include "core/book/stand_figures.h"
#include "tests/core/fastening/stand.h"

namespace wm::fastening {
namespace {

constexpr double kFirstShare = 0.95;

class LookupTest : public testing::Test {
  protected:
    static const Lookup& lookup() {
        static const Lookup all(book::figuresOf(standBook(), std::nullopt));
        return all;
    }
    static std::optional<MachineId> machine(const std::string& name) {
        for (const Figure& figure : lookup().figures())
            if (figure.machineName == name)
                return figure.machine;
        return std::nullopt;
    }
    static std::vector<std::string> points(std::string_view query, std::optional<MachineId> on = std::nullopt,
                                           std::size_t most = 5) {
        std::vector<std::string> names;
        for (const Found::Hit& hit : lookup().find(query, on, most).hits)
            names.push_back(pointName(lookup().figures()[hit.figure]));
        return names;
    }
    static std::string first(std::string_view query, const std::string& on = "Heron 250") {
        const auto names = points(query, machine(on));
        return names.empty() ? std::string() : names.front();
    }
};

TEST_F(LookupTest, TheListOfQueriesFindsItsPointFirst) {
    const auto asked = askedFor();
    ASSERT_GE(asked.size(), 80U);
    int right = 0;
    std::string missed;
    for (const AskedFor& each : asked) {
        ASSERT_TRUE(machine(each.machine)) << each.machine;
        const auto names = points(each.query, machine(each.machine));
        const std::string found = names.empty() ? "nothing" : names.front();
        if (std::find(each.find.begin(), each.find.end(), found) != each.find.end())
            ++right;
        else
            missed += "\n  \"" + each.query + "\" wants " + each.find.front() + ", finds " + found;
        if (!each.unit.empty()) {
            EXPECT_EQ(lookup().find(each.query, machine(each.machine), 1).unit, each.unit) << each.query;
        }
    }
    RecordProperty("first", right);
    EXPECT_GE(right, kFirstShare * static_cast<double>(asked.size()))
        << right << " of " << asked.size() << " first; not" << missed;
}

TEST_F(LookupTest, EachJointIsFoundByItsOwnName) {
    for (const Figure& figure : lookup().figures())
        if (figure.kind == FigureKind::Joint) {
            EXPECT_EQ(first(figure.name, figure.machineName), "joint:" + figure.code);
        }
}

// No list of queries was tuned to these: one typing error at every place of every name.
using LongLookup = LookupTest;

TEST_F(LongLookup, OneTypingErrorAnywhereInANameStillFindsIt) {
    int right = 0;
    int all = 0;
    for (const Figure& figure : lookup().figures()) {
        if (figure.kind != FigureKind::Joint || figure.machineName != "Heron 250")
            continue;
        for (std::size_t at = 0; at + 1 < figure.name.size(); ++at) {
            std::string turned = figure.name;
            std::swap(turned[at], turned[at + 1]);
            std::string missed = figure.name;
            missed.erase(at, 1);
            std::string other = figure.name;
            other[at] = 'e';
            for (const std::string& typed : {turned, missed, other}) {
                right += first(typed) == "joint:" + figure.code ? 1 : 0;
                ++all;
            }
        }
    }
    EXPECT_GE(right, 0.97 * all) << right << " of " << all;
}

TEST_F(LookupTest, TheFirstLettersOfANameFindItWhileItIsTyped) {
    for (const char* typed : {"swingarm p", "swingarm pi", "swingarm piv", "swing ar piv", "piv"})
        EXPECT_EQ(first(typed), "joint:swingarm-pivot-nut") << typed;
}

TEST_F(LookupTest, ASizeIsNeverGuessedAt) {
    for (const std::string& found : points("m7", machine("Heron 250"), 50))
        ADD_FAILURE() << "M7 is not on this machine, but finds " << found;
    for (const Found::Hit& hit : lookup().find("m8", machine("Heron 250"), 50).hits)
        EXPECT_EQ(lookup().figures()[hit.figure].thread.substr(0, 2), "M8");
}

TEST_F(LookupTest, OverAllMachinesTheNameOfOneDecides) {
    EXPECT_GE(points("rear axle nut").size(), 2U);
    const auto hits = lookup().find("plover rear axle", std::nullopt, 1).hits;
    ASSERT_EQ(hits.size(), 1U);
    EXPECT_EQ(lookup().figures()[hits.front().figure].machineName, "Plover 125");
}

TEST_F(LookupTest, TheUnitThatWasNamedComesWithTheAnswer) {
    const auto found = lookup().find("rear axle nut in ft-lb", machine("Heron 250"), 1);
    ASSERT_EQ(found.hits.size(), 1U);
    const Figure& figure = lookup().figures()[found.hits.front().figure];
    EXPECT_EQ(figureText(figure), "110 N·m");
    EXPECT_EQ(figureText(figure, ',', found.unit), "81,1 lbf·ft");
}

TEST_F(LookupTest, NothingIsFoundForNothing) {
    for (const char* typed : {"", " ", "\t", "?!", "the", "xqzvw", "N·m", "ft lb", "\xC3", "\xFF\xFE"})
        EXPECT_TRUE(points(typed).empty()) << typed;
}

TEST_F(LookupTest, MarkupAndVeryLongTextAreTextLikeAnyOther) {
    EXPECT_EQ(first("<b>rear axle</b>"), "joint:rear-axle-nut");
    EXPECT_EQ(first("rear axle nut'; DROP TABLE joint; --"), "joint:rear-axle-nut");
    EXPECT_LE(points(std::string(10'000, 'a')).size(), 5U);
    EXPECT_EQ(first("rear axle nut" + std::string(10'000, ' ')), "joint:rear-axle-nut");
    std::string many;
    for (int at = 0; at < 2'000; ++at)
        many += "axle ";
    EXPECT_LE(points(many).size(), 5U);
}

RC_GTEST_FIXTURE_PROP(LookupTest, AnyTextGivesAnOrderOfItsFigures, (const std::string& text)) {
    const auto found = lookup().find(text, machine("Heron 250"), 20);
    RC_ASSERT(found.hits.size() <= 20U);
    double last = 10;
    for (const Found::Hit& hit : found.hits) {
        RC_ASSERT(lookup().figures()[hit.figure].machineName == "Heron 250");
        RC_ASSERT(hit.score <= last + 1e-6);
        RC_ASSERT(hit.score > 0);
        last = hit.score;
    }
}

// Any text seldom holds a word that is there: these are words of the figures themselves, with a typing error
// or two.
RC_GTEST_FIXTURE_PROP(LookupTest, TheirOwnWordsWithTypingErrorsGiveAnOrderOfThem, ()) {
    const auto& figures = lookup().figures();
    std::string text;
    const auto words = *rc::gen::inRange(1, 4);
    for (int at = 0; at < words; ++at)
        text += figures[*rc::gen::inRange<std::size_t>(0, figures.size())].name + ' ';
    for (int errors = *rc::gen::inRange(0, 4); errors > 0; --errors)
        text[*rc::gen::inRange<std::size_t>(0, text.size())] = *rc::gen::inRange('a', 'z');
    const auto found = lookup().find(text, machine("Heron 250"), 20);
    RC_ASSERT(found.hits.size() <= 20U);
    double last = 10;
    for (const Found::Hit& hit : found.hits) {
        RC_ASSERT(figures[hit.figure].machineName == "Heron 250");
        RC_ASSERT(hit.score <= last + 1e-6);
        last = hit.score;
    }
    const auto again = lookup().find(text, machine("Heron 250"), 20);
    RC_ASSERT(again.hits.size() == found.hits.size());
    RC_TAG(found.hits.empty() ? "nothing" : "found");
}

}  // namespace
}  // namespace wm::fastening

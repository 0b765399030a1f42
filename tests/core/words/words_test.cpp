// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// Words as they are folded, compared and taken for one another.
#include <gtest/gtest.h>

#include <rapidcheck/gtest.h>

#include "core/words/edit_distance.h"
#include "core/words/folding.h"
#include "core/words/nearest.h"
#include "core/words/search_words.h"
#include "core/words/synonyms.h"

namespace wm::words {
namespace {

using Words = std::vector<std::string>;

TEST(FoldingTest, LeavesLettersWithoutCaseAndAccents) {
    EXPECT_EQ(withoutAccents("Ölfilter Größe"), "olfilter grosse");
    EXPECT_EQ(withoutAccents("Œil ČŘž × 5 µm"), "oeil crz × 5 µm");
    EXPECT_EQ(folded(" Öl-Filter "), "ol filter");
    EXPECT_EQ(folded("M20×1.5"), "m20 1 5");
    EXPECT_EQ(folded("шайба"), "шайба");
    EXPECT_EQ(wordsOf("Reifen, vorne"), (Words{"reifen", "vorne"}));
    EXPECT_TRUE(wordsOf(" - ").empty());
    EXPECT_EQ(withoutAccents("\xC3"), "\xC3");
    EXPECT_EQ(withoutAccents("\xFF\xFE"), "\xFF\xFE");
}

RC_GTEST_PROP(FoldingTest, IsDoneOnce, (const std::string& text)) {
    RC_ASSERT(folded(folded(text)) == folded(text));
}

TEST(SearchWordsTest, ReadThreadsHoweverTheyAreWritten) {
    for (const char* text : {"M20 x 1,50", "M20×1.5", "m20x1.50"})
        EXPECT_EQ(searchWords(text), (Words{"m20", "x1.5"})) << text;
    EXPECT_EQ(searchWords("the bolts of the Kühler"), (Words{"bolt", "kuhler"}));
}

TEST(SynonymsTest, GiveTheWordsOfTheSchedules) {
    EXPECT_EQ(meantBy("muffler"), Words{"silencer"});
    EXPECT_EQ(meantBy("olfilter"), (Words{"oil", "filter"}));
    EXPECT_EQ(meantBy("hinterreifen"), (Words{"rear", "tyre"}));
    EXPECT_EQ(meantBy("tyres"), Words{"tyre"});
    EXPECT_EQ(meantBy("barrel"), Words{"barrel"}) << "means three things";
    EXPECT_EQ(meantBy("head"), Words{"head"}) << "not the cylinder's alone";
    EXPECT_EQ(meantBy("kingpin"), Words{"kingpin"});
}

TEST(SynonymsTest, MeanTheSameHoweverOftenAsked) {
    for (const SameThing& thing : sameThings()) {
        EXPECT_GE(thing.phrases.size(), 2U);
        for (const auto& phrase : thing.phrases) {
            EXPECT_FALSE(phrase.empty());
            for (const std::string& word : phrase)
                for (const std::string& meant : meantBy(word))
                    EXPECT_EQ(meantBy(meant), Words{meant}) << word;
        }
    }
}

TEST(EditDistanceTest, CountsEachErrorOnce) {
    EXPECT_EQ(errorsBetween("heron", "heron", 2), 0U);
    EXPECT_EQ(errorsBetween("heron", "ehron", 2), 1U);
    EXPECT_EQ(errorsBetween("heron", "herron", 2), 1U);
    EXPECT_EQ(errorsBetween("heron", "hern", 2), 1U);
    EXPECT_EQ(errorsBetween("heron", "haren", 2), 2U);
    EXPECT_EQ(errorsBetween("heron", "plover", 2), 3U) << "more than was asked about";
    EXPECT_EQ(errorsBetween("", "ab", 2), 2U);
}

// Two words of nothing but chance have too little in common to tell.
RC_GTEST_PROP(EditDistanceTest, IsTheSameBothWaysAndNoMoreThanTheEditsMade, ()) {
    const auto letter = rc::gen::inRange('a', 'e');
    const auto word = *rc::gen::container<std::string>(letter);
    const auto edits = *rc::gen::inRange<std::size_t>(0, 4);
    auto edited = word;
    for (std::size_t edit = 0; edit < edits; ++edit) {
        const auto at = *rc::gen::inRange<std::size_t>(0, edited.size() + 1);
        if (at == edited.size() || *rc::gen::arbitrary<bool>())
            edited.insert(at, 1, *letter);
        else
            edited.erase(at, 1);
    }
    const std::size_t errors = errorsBetween(word, edited, 9);
    RC_ASSERT(errors == errorsBetween(edited, word, 9));
    RC_ASSERT(errors <= edits);
    RC_ASSERT((errors == 0U) == (word == edited));
}

TEST(EditDistanceTest, FollowsWhatTheHandDoes) {
    const auto like = [](std::string_view typed, std::string_view word) {
        return likeness(lettersOf(typed), lettersOf(word));
    };
    EXPECT_EQ(like("axle", "axle"), 1);
    EXPECT_NEAR(like("acle", "axle"), 0.825, 1e-6);  // the examples of the header
    EXPECT_NEAR(like("reer", "rear"), 0.75, 1e-6);
    EXPECT_GT(like("axl", "axle"), 0.85);
    EXPECT_GT(like("dork", "fork"), like("work", "fork"));  // d is beside f, w is not
    EXPECT_GT(like("seta", "seat"), like("sexx", "seat"));
    EXPECT_EQ(like("m6", "m8"), 0);
    EXPECT_EQ(like("x1.25", "x1.5"), 0);
    EXPECT_EQ(like("", "axle"), 0);
    EXPECT_EQ(like("brake", "spoke"), 0);
}

RC_GTEST_PROP(EditDistanceTest, LikenessIsAShare, (const std::string& typed, const std::string& word)) {
    const double alike = likeness(lettersOf(typed), lettersOf(word));
    RC_ASSERT(alike >= 0);
    RC_ASSERT(alike <= 1);
    RC_ASSERT(likeness(lettersOf(word), lettersOf(word)) == 1);
}

TEST(NearestTest, NamesWhatMayHaveBeenMeant) {
    const Words names{"Rear axle nut", "Front axle", "Pinch bolts, left", "Steering stem nut"};
    EXPECT_EQ(nearest("rear-axel-nut", names, 1), Words{"Rear axle nut"});
    EXPECT_EQ(nearest("pinch bolt", names, 3), Words{"Pinch bolts, left"});
    EXPECT_TRUE(nearest("carburettor", names, 3).empty());
    EXPECT_TRUE(nearest("", names, 3).empty());
    EXPECT_TRUE(nearest("axle", {}, 3).empty());
}

}  // namespace
}  // namespace wm::words

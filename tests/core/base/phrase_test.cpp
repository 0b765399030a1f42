// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/base/phrase.h"

#include <gtest/gtest.h>

#include <string>

namespace wm::base {
namespace {

// A language that says the parts the other way round.
std::string backwards(const Phrase& phrase) {
    return phrase.text == "%1 on %2" ? "%2: %1" : phrase.text == "%n day(s)" ? "%n dni" : phrase.text;
}

TEST(PhraseTest, PutsItsPartsInAtOnce) {
    EXPECT_EQ(said(phrase("Undo", "%1 on %2").arg("100 %2").arg("Heron")), "100 %2 on Heron");
    EXPECT_EQ(said(phrase("Undo", "%1 on %2").arg("a")), "a on %2") << "a part that nobody gave";
}

TEST(PhraseTest, SaysEnglishPlurals) {
    EXPECT_EQ(said(phrase("Sheet", "after %n day(s)", nullptr, 1)), "after 1 day");
    EXPECT_EQ(said(phrase("Sheet", "after %n day(s)", nullptr, 0)), "after 0 days");
    EXPECT_EQ(said(phrase("Sheet", "%n wash(es)", nullptr, 2)), "2 washes");
    EXPECT_EQ(said(phrase("Sheet", "%n joint(s) has/have none", nullptr, 1)), "1 joint has none");
    EXPECT_EQ(said(phrase("Sheet", "%n joint(s) has/have none", nullptr, 3)), "3 joints have none");
}

TEST(PhraseTest, LeavesWordsAndTheirOrderToTheLanguage) {
    const auto days = phrase("Undo", "%n day(s)", nullptr, 2);
    EXPECT_EQ(said(phrase("Undo", "%1 on %2").arg(days).arg("Heron"), backwards), "Heron: 2 dni");
}

TEST(PhraseTest, ComesBackFromAFileWithItsParts) {
    const auto inner =
        phrase("Undo", "%1 on %2").arg(phrase("Undo", "%n joint(s)", nullptr, 2)).arg("Möwe 250");
    const auto struck = phrase("Undo", "struck %1").arg(inner).arg("");
    const Phrase again = restored(stored(struck));
    EXPECT_EQ(stored(again), stored(struck));
    EXPECT_EQ(said(again), "struck 2 joints on Möwe 250");
    EXPECT_EQ(again.parts.size(), 2U);
}

TEST(PhraseTest, SaysAnOlderSentenceAsItStands) {
    const std::string old = "logged an outing of 1.5 h on Heron 250";
    EXPECT_EQ(said(restored(old)), old);
    EXPECT_EQ(said(restored(old), backwards), old);
    EXPECT_EQ(said(restored("")), "");
}

// What was kept may have been cut or changed by something else; it is read to its end, whatever it holds.
TEST(PhraseTest, ReadsWhatIsDamaged) {
    const auto read = [](const std::string& kept) { return said(restored(kept)); };
    const std::string kept =
        stored(phrase("Undo", "struck %1").arg(phrase("Undo", "%n joint(s)", nullptr, 2)));
    for (std::size_t length = 0; length <= kept.size(); ++length)
        EXPECT_LE(read(kept.substr(0, length)).size(), kept.size());
    EXPECT_EQ(read(std::string(10'000, '\x02')), "");
    EXPECT_EQ(read("\x02"
                   "Undo\x1f%n days\x1f"
                   "99999999999999999999\x03"),
              "%n days")
        << "no such count";
}

}  // namespace
}  // namespace wm::base

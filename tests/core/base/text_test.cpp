// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/base/text.h"

#include <gtest/gtest.h>

#include "core/picture/shape.h"
#include "tests/core/base/hostile_texts.h"

namespace wm::base {
namespace {

TEST(Text, ANameHoldsNothingThatDisturbs) {
    for (const std::string& text : test::kHostileTexts) {
        const auto name = parseName("name", text);
        ASSERT_FALSE(name) << text;
        EXPECT_EQ(name.error(), (Error{Fault::NotText, "name", {}, {}})) << text;
    }
    EXPECT_EQ(parseName("name", std::string_view("a\0z", 3)).error().fault, Fault::NotText);
    EXPECT_EQ(parseName("name", "a\nz").error().fault, Fault::NotText);
}

// A tab and a line break of another system are what they look like; all else is refused.
TEST(Text, ANoteHoldsNothingThatDisturbs) {
    for (const std::string& text : test::kHostileTexts)
        if (const auto note = parseNote("note", text)) {
            EXPECT_FALSE(test::disturbs(*note)) << text;
        } else {
            EXPECT_EQ(note.error().fault, Fault::NotText) << text;
        }
    EXPECT_EQ(parseNote("note", "a\tb").value(), "a b");
    EXPECT_EQ(parseNote("note", "one\r\ntwo\rthree\nfour").value(), "one\ntwo\nthree\nfour");
    EXPECT_EQ(parseNote("note", "one\xC2\x85two\xE2\x80\xA8three\xE2\x80\xA9").value(), "one\ntwo\nthree");
    EXPECT_FALSE(parseNote("note", std::string_view("a\0z", 3)));
}

// Scripts that run from right to left, letters that join and pictures of several signs stay as they are.
TEST(Text, LeavesWhatPeopleWrite) {
    for (const char* text :
         {"Ümit Ødegård 🏁", "\xE2\x80\x8F\xD7\xA9\xD7\x9C\xD7\x95\xD7\x9D", "می‌خواهم",
          "👨‍🔧", "½ µm “x” – ’", "<b>&amp;", "a\xC2\xA0z", "\xE2\x81\xAF"}) {
        EXPECT_EQ(parseName("name", text).value(), text);
        EXPECT_EQ(parseNote("note", text).value(), text);
        EXPECT_FALSE(test::disturbs(text)) << text;
    }
}

// Whether a text went through the check shows by its blanks: they are gone.
template <class T>
void collect(T& row, std::vector<std::string*>& into) {
    T::fields(row, [&](std::string_view /*name*/, auto& member) {
        using M = std::decay_t<decltype(member)>;
        if constexpr (std::is_same_v<M, std::string>)
            into.push_back(&member);
        else if constexpr (requires { member.front().fields(member.front(), [](auto, auto&) {}); }) {
            if (member.empty())
                member.emplace_back();
            collect(member.front(), into);
        }
    });
}

// A code that stands where there must be none is refused without a look at it.
template <class R>
void makeRoomForText(R& /*row*/) {}
void makeRoomForText(upkeep::Record& row) {
    row.task = TaskId{1};
}
void makeRoomForText(upkeep::TaskVersion& row) {
    row.triggers.front().happening = upkeep::Happening::Job;
}

template <class... Rows>
struct EveryText {
    static void check() { (of<Rows>(), ...); }
    template <class R>
    static void of() {
        R row{};
        std::vector<std::string*> texts;
        collect(row, texts);
        makeRoomForText(row);
        for (std::string* text : texts)
            *text = " word ";
        picture::Checks checks;
        checkShape(checks, row);
        for (std::size_t at = 0; at < texts.size(); ++at)
            EXPECT_EQ(*texts[at], "word") << "text " << at << " of " << R::kTable << " is not looked at";
    }
};

TEST(Text, EveryTextOfEveryRowIsChecked) {
    picture::ForEachRow<EveryText>::check();
}

}  // namespace
}  // namespace wm::base

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/words/folding.h"

#include <algorithm>
#include <array>
#include <utility>

#include "core/base/text.h"

namespace wm::words {

namespace {

// Latin-1 letters from U+00C0 on, without case and accents; a blank is a sign and no letter.
constexpr std::string_view kLatin =
    "aaaaaaaceeeeiiiidnooooo ouuuuyts"
    "aaaaaaaceeeeiiiidnooooo ouuuuyty";

// The rest of the European letters that headers and names are written with.
constexpr std::array<std::pair<std::string_view, std::string_view>, 75> kMore{
    {{"ß", "ss"}, {"ẞ", "ss"}, {"ı", "i"}, {"İ", "i"}, {"œ", "oe"}, {"Œ", "oe"}, {"Ÿ", "y"}, {"ā", "a"},
     {"ă", "a"},  {"ą", "a"},  {"ć", "c"}, {"č", "c"}, {"ď", "d"},  {"đ", "d"},  {"ē", "e"}, {"ę", "e"},
     {"ě", "e"},  {"ė", "e"},  {"ğ", "g"}, {"ģ", "g"}, {"ī", "i"},  {"į", "i"},  {"ķ", "k"}, {"ļ", "l"},
     {"ł", "l"},  {"ń", "n"},  {"ň", "n"}, {"ņ", "n"}, {"ő", "o"},  {"ř", "r"},  {"ś", "s"}, {"ş", "s"},
     {"š", "s"},  {"ť", "t"},  {"ţ", "t"}, {"ű", "u"}, {"ů", "u"},  {"ū", "u"},  {"ź", "z"}, {"ž", "z"},
     {"ż", "z"},  {"Ā", "a"},  {"Ă", "a"}, {"Ą", "a"}, {"Ć", "c"},  {"Č", "c"},  {"Ď", "d"}, {"Đ", "d"},
     {"Ē", "e"},  {"Ę", "e"},  {"Ě", "e"}, {"Ė", "e"}, {"Ğ", "g"},  {"Ģ", "g"},  {"Ī", "i"}, {"Į", "i"},
     {"Ķ", "k"},  {"Ļ", "l"},  {"Ł", "l"}, {"Ń", "n"}, {"Ň", "n"},  {"Ņ", "n"},  {"Ő", "o"}, {"Ř", "r"},
     {"Ś", "s"},  {"Ş", "s"},  {"Š", "s"}, {"Ť", "t"}, {"Ţ", "t"},  {"Ű", "u"},  {"Ů", "u"}, {"Ū", "u"},
     {"Ź", "z"},  {"Ž", "z"},  {"Ż", "z"}}};

std::size_t lengthOf(unsigned char first) {
    return first >= 0xF0 ? 4 : first >= 0xE0 ? 3 : first >= 0xC2 ? 2 : 1;
}

// A letter beyond ASCII in plain ones; empty for a sign or an unknown letter.
std::string_view plainOf(std::string_view letter) {
    const auto more =
        std::find_if(kMore.begin(), kMore.end(), [&](const auto& one) { return one.first == letter; });
    if (more != kMore.end())
        return more->second;
    if (letter.size() != 2 || static_cast<unsigned char>(letter[0]) != 0xC3 ||
        (static_cast<unsigned char>(letter[1]) & 0xC0U) != 0x80U)
        return {};
    const std::string_view plain = kLatin.substr(static_cast<unsigned char>(letter[1]) & 0x3FU, 1);
    return plain == " " ? std::string_view{} : plain;
}

// Calls `letter` with each plain letter or digit, and `other` with what is neither: one byte of ASCII or one
// code point beyond it.
template <class Letter, class Other>
void walk(std::string_view text, const Letter& letter, const Other& other) {
    for (std::size_t at = 0; at < text.size();) {
        const char c = text[at];
        const std::string_view here = text.substr(at, lengthOf(static_cast<unsigned char>(c)));
        at += here.size();
        if ((c >= 'a' && c <= 'z') || (c >= '0' && c <= '9'))
            letter(here);
        else if (c >= 'A' && c <= 'Z')
            letter(std::string(1, static_cast<char>(c - 'A' + 'a')));
        else if (const auto plain = plainOf(here); !plain.empty())
            letter(plain);
        else
            other(here);
    }
}

// Signs: no-break blanks, dashes, quotes, and those that stand among the Latin letters.
bool isSign(std::string_view point) {
    const auto first = static_cast<unsigned char>(point[0]);
    return first < 0x80 || first == 0xC2 || first == 0xC3 || first == 0xE2;
}

}  // namespace

std::string withoutAccents(std::string_view text) {
    std::string out;
    out.reserve(text.size());
    const auto add = [&out](std::string_view part) { out += part; };
    walk(text, add, add);
    return out;
}

std::string folded(std::string_view text) {
    std::string out;
    walk(
        text, [&out](std::string_view letter) { out += letter; },
        [&out](std::string_view other) {
            if (!isSign(other))
                out += other;
            else if (!out.empty() && out.back() != ' ')
                out += ' ';
        });
    if (!out.empty() && out.back() == ' ')
        out.pop_back();
    return out;
}

std::vector<std::string> wordsOf(std::string_view text) {
    std::vector<std::string> words;
    for (std::string& word : base::split(folded(text), ' '))
        if (!word.empty())
            words.push_back(std::move(word));
    return words;
}

std::string singular(std::string word) {
    if (word.size() > 3 && word.back() == 's' && word[word.size() - 2] != 's')
        word.pop_back();
    return word;
}

}  // namespace wm::words

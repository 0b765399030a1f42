// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/words/search_words.h"

#include <algorithm>
#include <array>

#include "core/words/folding.h"

namespace wm::words {

namespace {

constexpr std::array kSaysNothing{"the", "of",   "and", "or", "to", "for", "on", "a", "an",
                                  "is",  "what", "my",  "in", "at", "how", "do", "i", "with"};

bool isDigit(char c) {
    return c >= '0' && c <= '9';
}

bool isLetter(char c) {
    return c >= 'a' && c <= 'z';
}

// Letters, digits and decimal marks; the sign of multiplication an x, every other sign a blank.
std::string plain(std::string_view text) {
    const std::string bare = withoutAccents(text);
    std::string out;
    out.reserve(bare.size());
    for (std::size_t at = 0; at < bare.size(); ++at) {
        const auto c = static_cast<unsigned char>(bare[at]);
        if (bare.compare(at, 2, "×") == 0) {
            ++at;
            out += 'x';
        } else if ((c == 0xC2 || c == 0xC3) && at + 1 < bare.size()) {
            ++at;  // middle dot, no-break blank, the sign of division
            out += ' ';
        } else if (c >= 0x80 || isLetter(bare[at]) || isDigit(bare[at]) || c == '.') {
            out += bare[at];
        } else {
            out += c == ',' ? '.' : ' ';
        }
    }
    return out;
}

std::size_t numberEnd(std::string_view text, std::size_t at) {
    while (at < text.size() &&
           (isDigit(text[at]) || (text[at] == '.' && at + 1 < text.size() && isDigit(text[at + 1]))))
        ++at;
    return at;
}

// "1.50" and "1.5" are one pitch.
std::string shortest(std::string_view number) {
    std::string digits(number);
    if (digits.find('.') != std::string::npos) {
        digits.erase(digits.find_last_not_of('0') + 1);
        if (digits.back() == '.')
            digits.pop_back();
    }
    return digits;
}

// Reads "m20x1.5", "m20 x 1.5", "20x1.5", "m8" at `at`; gives where it ends, or `at` if there is none.
std::size_t takeThread(std::string_view text, std::size_t at, std::vector<std::string>& words) {
    const bool named = text[at] == 'm';
    const std::size_t first = at + (named ? 1 : 0);
    const std::size_t size = numberEnd(text, first);
    if (size == first)
        return at;
    std::size_t next = size;
    while (next < text.size() && text[next] == ' ')
        ++next;
    std::size_t pitch = next + 1;
    while (pitch < text.size() && text[pitch] == ' ')
        ++pitch;
    const std::size_t end =
        next < text.size() && text[next] == 'x' && pitch < text.size() ? numberEnd(text, pitch) : pitch;
    if (next < text.size() && text[next] == 'x' && end > pitch) {
        words.push_back("m" + shortest(text.substr(first, size - first)));
        words.push_back("x" + shortest(text.substr(pitch, end - pitch)));
        return end;
    }
    if (!named || (size < text.size() && isLetter(text[size])))
        return at;
    words.push_back("m" + shortest(text.substr(first, size - first)));
    return size;
}

}  // namespace

std::vector<std::string> searchWords(std::string_view text) {
    const std::string letters = plain(text);
    std::vector<std::string> words;
    std::size_t at = 0;
    while (at < letters.size()) {
        const char c = letters[at];
        if (c == ' ' || c == '.') {
            ++at;
            continue;
        }
        const bool begins = at == 0 || letters[at - 1] == ' ' || letters[at - 1] == '.';
        if (begins && (c == 'm' || isDigit(c))) {
            const std::size_t end = takeThread(letters, at, words);
            if (end > at) {
                at = end;
                continue;
            }
        }
        std::size_t end = isDigit(c) ? numberEnd(letters, at) : at;
        while (end < letters.size() && letters[end] != ' ' && letters[end] != '.')
            ++end;
        std::string word = singular(letters.substr(at, end - at));
        if (std::find(kSaysNothing.begin(), kSaysNothing.end(), word) == kSaysNothing.end())
            words.push_back(std::move(word));
        at = end;
    }
    return words;
}

}  // namespace wm::words

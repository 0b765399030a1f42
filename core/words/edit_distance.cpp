// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/words/edit_distance.h"

#include <algorithm>
#include <array>
#include <bit>
#include <cmath>
#include <cstddef>
#include <span>
#include <vector>

namespace wm::words {

namespace {

constexpr std::size_t kLongestWord = 24;  // more letters than that tell nothing new
constexpr std::uint64_t kDigits = 0x3FFULL << 26U;

// What an error costs, in whole letters.
struct Costs {
    float turned = 1;   // two neighbours swapped
    float beside = 1;   // the key beside it
    float doubled = 1;  // once too many, or once too few of two
    float missed = 1;
    float other = 1;
};
constexpr Costs kEachOne{};
constexpr Costs kByHand{.turned = 0.7F, .beside = 0.7F, .doubled = 0.5F, .missed = 0.9F, .other = 1};

constexpr std::array<std::string_view, 3> kRows{"qwertyuiop", "asdfghjkl", "zxcvbnm"};

constexpr auto makeBeside() {
    std::array<std::uint32_t, 26> beside{};
    const auto tie = [&](char a, char b) {
        beside[static_cast<std::size_t>(a - 'a')] |= 1U << static_cast<unsigned>(b - 'a');
        beside[static_cast<std::size_t>(b - 'a')] |= 1U << static_cast<unsigned>(a - 'a');
    };
    for (std::size_t row = 0; row < kRows.size(); ++row) {
        for (std::size_t at = 0; at < kRows[row].size(); ++at) {
            if (at + 1 < kRows[row].size())
                tie(kRows[row][at], kRows[row][at + 1]);
            // The row below stands half a key to the right.
            if (row + 1 < kRows.size()) {
                if (at < kRows[row + 1].size())
                    tie(kRows[row][at], kRows[row + 1][at]);
                if (at > 0 && at - 1 < kRows[row + 1].size())
                    tie(kRows[row][at], kRows[row + 1][at - 1]);
            }
        }
    }
    return beside;
}
constexpr auto kNeighbours = makeBeside();

bool areBeside(char a, char b) {
    return a >= 'a' && a <= 'z' && b >= 'a' && b <= 'z' &&
           ((kNeighbours[static_cast<std::size_t>(a - 'a')] >> static_cast<unsigned>(b - 'a')) & 1U) != 0;
}

float mostErrors(std::size_t letters) {
    if (letters < 3)
        return 0;
    if (letters < 5)
        return 1;
    return letters < 8 ? 1.9F : 2.6F;
}

struct Distances {
    float whole = 0;      ///< to the word
    float beginning = 0;  ///< to the beginning of it that fits best
    std::size_t begins = 0;
};

// The one edit distance: optimal string alignment, a row at a time, given up once it is beyond `most`.
// `memory` holds three rows of one letter more than the word has.
Distances distances(std::string_view typed, std::string_view word, const Costs& costs, float most,
                    std::span<float> memory) {
    const std::size_t width = word.size();
    const auto rowOf = [&](std::size_t at) { return memory.subspan((at % 3) * (width + 1), width + 1); };
    for (std::size_t j = 0; j <= width; ++j)
        rowOf(0)[j] = static_cast<float>(j) * costs.missed;
    for (std::size_t i = 1; i <= typed.size(); ++i) {
        const auto row = rowOf(i);
        const auto above = rowOf(i + 2);
        const auto twoAbove = rowOf(i + 1);
        row[0] = static_cast<float>(i) * costs.other;
        float least = row[0];
        for (std::size_t j = 1; j <= width; ++j) {
            const char t = typed[i - 1];
            const char w = word[j - 1];
            const float change = t == w ? 0.0F : (areBeside(t, w) ? costs.beside : costs.other);
            const bool again = i > 1 && typed[i - 2] == t;
            const bool twice = j > 1 && word[j - 2] == w;
            float best = std::min({above[j - 1] + change, above[j] + (again ? costs.doubled : costs.other),
                                   row[j - 1] + (twice ? costs.doubled : costs.missed)});
            if (i > 1 && j > 1 && t == word[j - 2] && typed[i - 2] == w)
                best = std::min(best, twoAbove[j - 2] + costs.turned);
            row[j] = best;
            least = std::min(least, best);
        }
        if (least > most)
            return {most + 1, most + 1, 0};
    }
    const auto last = rowOf(typed.size());
    const auto best = std::min_element(last.begin(), last.end());
    return {last[width], *best, static_cast<std::size_t>(best - last.begin())};
}

// What is still to be typed of a word makes it a little less likely that it is meant.
double unfinished(std::size_t typed, std::size_t all) {
    return all > typed ? 0.3 * static_cast<double>(all - typed) / static_cast<double>(all) : 0.0;
}

}  // namespace

std::size_t errorsBetween(std::string_view a, std::string_view b, std::size_t most) {
    const std::size_t apart = a.size() > b.size() ? a.size() - b.size() : b.size() - a.size();
    if (apart > most)
        return most + 1;
    std::vector<float> memory(3 * (b.size() + 1));
    const auto errors = distances(a, b, kEachOne, static_cast<float>(most), memory).whole;
    return std::min(static_cast<std::size_t>(errors), most + 1);
}

Letters lettersOf(std::string_view word) {
    Letters letters{word.substr(0, kLongestWord), 0};
    for (const char c : letters.text) {
        if (c >= 'a' && c <= 'z')
            letters.which |= 1ULL << static_cast<unsigned>(c - 'a');
        else if (c >= '0' && c <= '9')
            letters.which |= 1ULL << (26U + static_cast<unsigned>(c - '0'));
        else
            letters.which |= 1ULL << (36U + (static_cast<unsigned char>(c) & 15U));
    }
    return letters;
}

double likeness(const Letters& typed, const Letters& word) {
    if (typed.text == word.text)
        return 1;
    if (typed.text.empty())
        return 0;
    if (word.text.starts_with(typed.text))
        return 0.97 - unfinished(typed.text.size(), word.text.size());
    if (((typed.which | word.which) & kDigits) != 0)
        return 0;
    const float most = mostErrors(typed.text.size());
    // Each letter that the word has not at all is an error of its own.
    if (most == 0 || static_cast<float>(std::popcount(typed.which & ~word.which)) * kByHand.beside > most ||
        static_cast<float>(typed.text.size()) - static_cast<float>(word.text.size()) > most)
        return 0;
    std::array<float, 3 * (kLongestWord + 1)> memory;
    const Distances errors = distances(typed.text, word.text, kByHand, most, memory);
    const auto length = static_cast<double>(typed.text.size());
    double best = 0;
    if (errors.whole <= most)
        best = 1 - errors.whole / length;
    if (errors.beginning <= most && errors.begins > 2)
        best = std::max(best,
                        0.95 * (1 - errors.beginning / length) - unfinished(errors.begins, word.text.size()));
    return best > 0.5 ? best : 0;
}

}  // namespace wm::words

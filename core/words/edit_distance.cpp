// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/fastening/slips.h"

#include <algorithm>
#include <array>
#include <bit>
#include <cmath>
#include <cstddef>

namespace wm::fastening {

namespace {

constexpr std::size_t kLongestWord = 24;  // more letters than that tell nothing new
constexpr std::uint64_t kDigits = 0x3FFULL << 26U;

// What a slip costs, in whole letters.
constexpr float kTurned = 0.7F;
constexpr float kBeside = 0.7F;
constexpr float kDoubled = 0.5F;
constexpr float kMissed = 0.9F;
constexpr float kOther = 1.0F;

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

float mostSlips(std::size_t letters) {
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

// Edit distance with turned neighbours, a row at a time, given up once it is beyond `most`.
Distances distances(std::string_view typed, std::string_view word, float most) {
    std::array<float, kLongestWord + 1> rows[3];
    const std::size_t width = word.size();
    for (std::size_t j = 0; j <= width; ++j)
        rows[0][j] = static_cast<float>(j) * kMissed;
    for (std::size_t i = 1; i <= typed.size(); ++i) {
        auto& row = rows[i % 3];
        const auto& above = rows[(i + 2) % 3];
        const auto& twoAbove = rows[(i + 1) % 3];
        row[0] = static_cast<float>(i) * kOther;
        float least = row[0];
        for (std::size_t j = 1; j <= width; ++j) {
            const char t = typed[i - 1];
            const char w = word[j - 1];
            const float change = t == w ? 0.0F : (areBeside(t, w) ? kBeside : kOther);
            const bool again = i > 1 && typed[i - 2] == t;
            const bool twice = j > 1 && word[j - 2] == w;
            float best = std::min({above[j - 1] + change, above[j] + (again ? kDoubled : kOther),
                                   row[j - 1] + (twice ? kDoubled : kMissed)});
            if (i > 1 && j > 1 && t == word[j - 2] && typed[i - 2] == w)
                best = std::min(best, twoAbove[j - 2] + kTurned);
            row[j] = best;
            least = std::min(least, best);
        }
        if (least > most)
            return {most + 1, most + 1, 0};
    }
    const auto& last = rows[typed.size() % 3];
    const auto* best = std::min_element(last.data(), last.data() + width + 1);
    return {last[width], *best, static_cast<std::size_t>(best - last.data())};
}

// What is still to be typed of a word makes it a little less likely that it is meant.
double unfinished(std::size_t typed, std::size_t all) {
    return all > typed ? 0.3 * static_cast<double>(all - typed) / static_cast<double>(all) : 0.0;
}

}  // namespace

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
    const float most = mostSlips(typed.text.size());
    // Each letter that the word has not at all is a slip of its own.
    if (most == 0 || static_cast<float>(std::popcount(typed.which & ~word.which)) * kBeside > most ||
        static_cast<float>(typed.text.size()) - static_cast<float>(word.text.size()) > most)
        return 0;
    const Distances slips = distances(typed.text, word.text, most);
    const auto length = static_cast<double>(typed.text.size());
    double best = 0;
    if (slips.whole <= most)
        best = 1 - slips.whole / length;
    if (slips.beginning <= most && slips.begins > 2)
        best = std::max(best,
                        0.95 * (1 - slips.beginning / length) - unfinished(slips.begins, word.text.size()));
    return best > 0.5 ? best : 0;
}

}  // namespace wm::fastening

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/words/nearest.h"

#include <algorithm>
#include <utility>

#include "core/words/edit_distance.h"
#include "core/words/folding.h"

namespace wm::words {

namespace {

constexpr double kLikeEnough = 0.5;

double bestOf(const Letters& word, const std::vector<std::string>& among) {
    double best = 0;
    for (const std::string& other : among)
        best = std::max({best, likeness(word, lettersOf(other)), likeness(lettersOf(other), word)});
    return best;
}

double meanIn(const std::vector<std::string>& words, const std::vector<std::string>& others) {
    double sum = 0;
    for (const std::string& word : words)
        sum += bestOf(lettersOf(word), others);
    return sum / static_cast<double>(words.size());
}

// What was typed should be in the name; of two names that have it, the one with less besides is meant.
double likeness(const std::vector<std::string>& typed, const std::vector<std::string>& name) {
    constexpr double kBesides = 0.25;
    if (typed.empty() || name.empty())
        return 0;
    return (1 - kBesides) * meanIn(typed, name) + kBesides * meanIn(name, typed);
}

}  // namespace

std::vector<std::string> nearest(std::string_view typed, std::span<const std::string> names,
                                 std::size_t most) {
    const auto words = wordsOf(typed);
    std::vector<std::pair<double, std::string>> found;
    for (const std::string& name : names)
        if (const double like = likeness(words, wordsOf(name)); like >= kLikeEnough)
            found.emplace_back(like, name);
    std::stable_sort(found.begin(), found.end(),
                     [](const auto& a, const auto& b) { return a.first > b.first; });
    std::vector<std::string> result;
    for (auto& [like, name] : found)
        if (result.size() < most && std::find(result.begin(), result.end(), name) == result.end())
            result.push_back(std::move(name));
    return result;
}

}  // namespace wm::words

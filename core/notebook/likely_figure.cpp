// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/notebook/likely_figure.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "core/notebook/typed_figures.h"

namespace wm::notebook {

std::vector<Likely> likelyFigures(std::string_view text, char decimal) {
    std::vector<Likely> likely;
    const auto add = [&](const std::string& changed, TypingError error) {
        if (const auto read = readNumber(changed, decimal, 2); read && *read >= 0)
            likely.push_back({*read, error});
    };
    const std::string own(text);
    const auto isDigit = [](char c) { return c >= '0' && c <= '9'; };
    for (std::size_t at = 0; at + 1 < own.size(); ++at) {
        std::string changed = own;
        std::swap(changed[at], changed[at + 1]);
        add(changed, isDigit(own[at]) && isDigit(own[at + 1]) ? TypingError::Swapped : TypingError::Mark);
    }
    for (std::size_t at = 0; at <= own.size(); ++at) {
        std::string bare = own;
        std::erase_if(bare, [&](char c) { return !isDigit(c); });
        if (at > 0 && at <= bare.size()) {
            bare.insert(at, 1, decimal);
            add(bare, TypingError::Mark);
        }
        for (char digit = '0'; digit <= '9'; ++digit) {
            std::string more = own;
            more.insert(at, 1, digit);
            add(more, TypingError::OneMissing);
            if (at < own.size() && isDigit(own[at])) {
                std::string other = own;
                other[at] = digit;
                add(other, TypingError::OneWrong);
            }
        }
        if (at < own.size() && isDigit(own[at])) {
            std::string less = own;
            less.erase(at, 1);
            add(less, TypingError::OneTooMany);
        }
    }
    return likely;
}

std::optional<std::int64_t> bestLikely(std::string_view text, char decimal, const Fit& fit) {
    // Lower is better: near and plain, then plain, then near.
    const auto rankOf = [](const Likely& one, bool near) {
        constexpr int kFar = 10;
        const bool plain = one.error <= TypingError::Mark;
        return static_cast<int>(one.error) + (!plain ? 2 * kFar : near ? 0 : kFar);
    };
    std::optional<std::pair<int, std::int64_t>> best;  // rank, and how far off
    std::optional<std::int64_t> figure;
    const std::int64_t aim = fit.near.value_or(fit.least);
    for (const Likely& one : likelyFigures(text, decimal)) {
        const bool plain = one.error <= TypingError::Mark;
        const bool inside = one.hundredths >= fit.least && (!fit.most || one.hundredths <= *fit.most);
        const std::int64_t off = std::abs(one.hundredths - aim);
        const bool near = fit.near && off <= fit.tolerance;
        if (!inside || (!near && (!plain || !fit.most)) || (fit.plainOnly && !plain))
            continue;
        const std::pair candidate(rankOf(one, near), off);
        if (best && *best <= candidate)
            continue;
        best = candidate;
        figure = one.hundredths;
    }
    return figure;
}

}  // namespace wm::notebook

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/notebook/slip_of_hand.h"

#include <algorithm>
#include <cmath>

#include "core/notebook/figures.h"

namespace wm::notebook {

std::vector<Likely> likelyFigures(std::string_view text, char decimal) {
    std::vector<Likely> likely;
    const auto add = [&](const std::string& changed, int slip) {
        if (const auto read = readNumber(changed, decimal, 2); read && *read >= 0)
            likely.push_back({*read, slip});
    };
    const std::string own(text);
    const auto isDigit = [](char c) { return c >= '0' && c <= '9'; };
    for (std::size_t at = 0; at + 1 < own.size(); ++at) {
        std::string changed = own;
        std::swap(changed[at], changed[at + 1]);
        add(changed, isDigit(own[at]) && isDigit(own[at + 1]) ? 0 : 1);
    }
    for (std::size_t at = 0; at <= own.size(); ++at) {
        std::string bare = own;
        std::erase_if(bare, [&](char c) { return !isDigit(c); });
        if (at > 0 && at <= bare.size()) {
            bare.insert(at, 1, decimal);
            add(bare, 1);
        }
        for (char digit = '0'; digit <= '9'; ++digit) {
            std::string more = own;
            more.insert(at, 1, digit);
            add(more, 4);
            if (at < own.size() && isDigit(own[at])) {
                std::string other = own;
                other[at] = digit;
                add(other, 3);
            }
        }
        if (at < own.size() && isDigit(own[at])) {
            std::string less = own;
            less.erase(at, 1);
            add(less, 2);
        }
    }
    return likely;
}

std::optional<std::int64_t> bestLikely(std::string_view text, char decimal, const Fit& fit) {
    constexpr int kPlain = 1;
    constexpr int kFar = 10;
    std::optional<Likely> best;
    const std::int64_t aim = fit.near.value_or(fit.least);
    for (Likely one : likelyFigures(text, decimal)) {
        const bool inside = one.hundredths >= fit.least && (!fit.most || one.hundredths <= *fit.most);
        const std::int64_t off = std::abs(one.hundredths - aim);
        const bool near = fit.near && off <= fit.tolerance;
        if (!inside || (!near && (one.slip > kPlain || !fit.most)) || (fit.plainOnly && one.slip > kPlain))
            continue;
        // Near and plain, then plain, then near.
        one.slip += one.slip > kPlain ? 2 * kFar : near ? 0 : kFar;
        if (!best || one.slip < best->slip ||
            (one.slip == best->slip && off < std::abs(best->hundredths - aim)))
            best = one;
    }
    return best ? std::optional(best->hundredths) : std::nullopt;
}

}  // namespace wm::notebook

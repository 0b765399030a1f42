// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cstdlib>

#include "ui/drawing/joint_order.h"

namespace wm::ui {

namespace {

using fastening::Sequence;

constexpr int kMostFasteners = 72;

// Opposite pairs; the next pair is the one furthest from all before it, the first of those if there are
// several.
std::vector<int> evenCrissCross(int count) {
    const int pairs = count / 2;
    std::vector<int> chosen;
    while (static_cast<int>(chosen.size()) < pairs) {
        int best = 0;
        int bestGap = -1;
        for (int pair = 0; pair < pairs; ++pair) {
            int gap = pairs;
            for (const int other : chosen) {
                const int apart = std::abs(pair - other);
                gap = std::min({gap, apart, pairs - apart});
            }
            if (gap > bestGap) {
                best = pair;
                bestGap = gap;
            }
        }
        chosen.push_back(best);
    }
    std::vector<int> places;
    for (const int pair : chosen) {
        places.push_back(pair);
        places.push_back(pair + pairs);
    }
    return places;
}

// A star: nearly across each time. (count - 1) / 2 and an odd count have no common divisor, so all are met.
std::vector<int> oddCrissCross(int count) {
    std::vector<int> places;
    for (int i = 0; i < count; ++i) {
        places.push_back(i * ((count - 1) / 2) % count);
    }
    return places;
}

// Around the middle, clockwise, each turn a column further out.
std::vector<int> spiral(int count) {
    const int columns = (count + 1) / 2;
    std::vector<int> places;
    const auto visit = [&](int column, bool lower) {
        const int place = lower ? columns + column : column;
        if (column >= 0 && column < columns && place < count) {
            places.push_back(place);
        }
    };
    int left = (columns - 1) / 2;
    int right = columns / 2;
    visit(left, false);
    if (right != left) {
        visit(right, false);
        visit(right, true);
    }
    visit(left, true);
    while (--left, ++right, left >= 0 || right < columns) {
        visit(left, true);
        visit(left, false);
        visit(right, false);
        visit(right, true);
    }
    return places;
}

std::vector<int> laps(int count, int step) {
    std::vector<int> places;
    for (int first = 0; first < step; ++first) {
        for (int place = first; place < count; place += step) {
            places.push_back(place);
        }
    }
    return places;
}

}  // namespace

std::vector<int> tighteningSequence(const JointOrder& order) {
    const int count = std::clamp(order.count, 0, kMostFasteners);
    if (count == 0) {
        return {};
    }
    switch (order.sequence) {
        case Sequence::CrissCross:
            return count % 2 == 0 ? evenCrissCross(count) : oddCrissCross(count);
        case Sequence::Spiral:
            return spiral(count);
        case Sequence::EveryNth:
            return laps(count, std::clamp(order.step, 1, count));
        case Sequence::Listed:
            return laps(static_cast<int>(order.names.size()), 1);
        case Sequence::Any:
            break;
    }
    return {};
}

}  // namespace wm::ui

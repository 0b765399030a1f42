// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/notebook/lines.h"

#include <algorithm>
#include <set>

namespace wm::notebook {

Verdict verdictOf(Slip slip) {
    if (slip < Slip::DateForm)
        return Verdict::Taken;
    return slip < Slip::DateUnreadable ? Verdict::Doubtful : Verdict::Refused;
}

bool Line::has(Slip slip) const {
    return std::any_of(remarks.begin(), remarks.end(), [slip](const Remark& r) { return r.slip == slip; });
}

std::vector<Slip> Line::doubts() const {
    std::set<Slip> doubts;
    for (const Remark& remark : remarks)
        if (verdictOf(remark.slip) == Verdict::Doubtful)
            doubts.insert(remark.slip);
    return {doubts.begin(), doubts.end()};
}

void Line::remark(Slip slip, std::string given, std::string likely) {
    remarks.push_back({slip, std::move(given), std::move(likely)});
    verdict = std::max(verdict, verdictOf(slip));
}

std::size_t Notebook::count(Verdict verdict) const {
    return static_cast<std::size_t>(std::count_if(
        lines.begin(), lines.end(), [verdict](const Line& line) { return line.verdict == verdict; }));
}

}  // namespace wm::notebook

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/notebook/lines.h"

#include <algorithm>
#include <set>

namespace wm::notebook {

Verdict verdictOf(Defect defect) {
    if (defect < Defect::DateForm)
        return Verdict::Taken;
    return defect < Defect::DateUnreadable ? Verdict::Doubtful : Verdict::Refused;
}

bool Line::has(Defect defect) const {
    return std::any_of(remarks.begin(), remarks.end(),
                       [defect](const Remark& r) { return r.defect == defect; });
}

std::vector<Defect> Line::doubts() const {
    std::set<Defect> doubts;
    for (const Remark& remark : remarks)
        if (verdictOf(remark.defect) == Verdict::Doubtful)
            doubts.insert(remark.defect);
    return {doubts.begin(), doubts.end()};
}

void Line::remark(Defect defect, std::string given, std::string likely) {
    remarks.push_back({defect, std::move(given), std::move(likely)});
    verdict = std::max(verdict, verdictOf(defect));
}

std::size_t Notebook::count(Verdict verdict) const {
    return static_cast<std::size_t>(std::count_if(
        lines.begin(), lines.end(), [verdict](const Line& line) { return line.verdict == verdict; }));
}

}  // namespace wm::notebook

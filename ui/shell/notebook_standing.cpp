// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/shell/notebook_standing.h"

#include <algorithm>
#include <utility>

namespace wm::ui {

void NotebookStanding::count(const NotebookPreview& preview) {
    const bool busy = busy_;
    *this = {};
    busy_ = busy;
    const auto& said = preview.agreement().lines;
    answers_ = static_cast<std::size_t>(std::count_if(
        said.begin(), said.end(), [](const auto& each) { return each.second != notebook::Choice::Open; }));
    judged_ = preview.notebook() != nullptr;
    if (judged_)
        countLines(preview);
}

void NotebookStanding::countLines(const NotebookPreview& preview) {
    const notebook::Notebook& notebook = *preview.notebook();
    for (const notebook::Line& line : notebook.lines) {
        const bool isOpen = preview.stateOf(line) == LineState::Open;
        open_ += isOpen ? 1U : 0U;
        curable_ += isOpen && line.cure != notebook::Cure::None ? 1U : 0U;
        hasNew_ = hasNew_ || notebook::isAgreed(line, {.allCures = true});
        hasJobs_ =
            hasJobs_ || (line.facts.sort == notebook::FactSort::Job && line.readable() && !line.inFile);
    }
    const auto totals = notebook::totalsOf(notebook, preview.agreement());
    for (std::size_t at = 0; at < totals.size(); ++at) {
        goesIn_ += totals[at];
        if (totals[at].lines > 0)
            byMachine_[notebook.machines[at].name] += totals[at];
    }
}

NotebookStanding::Enter NotebookStanding::enter() {
    if (busy_ || !judged_)
        return Enter::Nothing;
    if (open_ > 0 && !std::exchange(asked_, true))
        return Enter::AskAboutOpen;
    return Enter::Import;
}

bool NotebookStanding::mayLeave() {
    return answers_ == 0 || std::exchange(leaves_, true);
}

}  // namespace wm::ui

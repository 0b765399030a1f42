// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <map>
#include <string>

#include "core/notebook/totals.h"
#include "ui/shell/notebook_preview.h"

namespace wm::ui {

/// What of a notebook goes in as it stands, what waits for a word, and what Enter and Escape lead to: lines
/// are left out and answers thrown away by a word, never by a habit of the hand.
class NotebookStanding {
  public:
    enum class Enter : std::uint8_t { Nothing, AskAboutOpen, Import };

    /// Something was judged or agreed to: counts anew, and what was asked is asked again.
    void count(const NotebookPreview& preview);

    [[nodiscard]] bool isJudged() const { return judged_; }
    [[nodiscard]] std::size_t open() const { return open_; }        ///< doubtful lines without an answer
    [[nodiscard]] std::size_t curable() const { return curable_; }  ///< those of them that have a cure
    [[nodiscard]] bool hasNew() const { return hasNew_; }           ///< a line could go in
    [[nodiscard]] bool hasJobs() const { return hasJobs_; }
    [[nodiscard]] const notebook::Totals& goesIn() const { return goesIn_; }
    /// The same by the name of each machine that has lines.
    [[nodiscard]] const std::map<std::string, notebook::Totals>& byMachine() const { return byMachine_; }
    /// What was said of lines and would be lost.
    [[nodiscard]] std::size_t answers() const { return answers_; }
    /// Enter was pressed while lines were open, and nothing was answered since.
    [[nodiscard]] bool hasAsked() const { return asked_; }

    /// The first leads to the lines that wait, the next one imports.
    Enter enter();
    /// True if leaving loses nothing, or was asked for twice.
    bool mayLeave();

    /// Judging or writing: what changes meanwhile is looked at afterwards.
    [[nodiscard]] bool isBusy() const { return busy_; }
    void setBusy(bool busy) { busy_ = busy; }

  private:
    void countLines(const NotebookPreview& preview);

    bool judged_ = false;
    std::size_t open_ = 0;
    std::size_t curable_ = 0;
    bool hasNew_ = false;
    bool hasJobs_ = false;
    notebook::Totals goesIn_{};
    std::map<std::string, notebook::Totals> byMachine_{};
    std::size_t answers_ = 0;
    bool asked_ = false;
    bool leaves_ = false;  ///< asked the same of leaving
    bool busy_ = false;
};

}  // namespace wm::ui

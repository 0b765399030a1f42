// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "core/sheet/job_sheet.h"

// The parts of a job sheet, each built by itself. `jobSheet` puts them together.

namespace wm::sheet {

/// What a sheet is made from.
struct SheetSource {
    const book::Book& book;
    MachineId machine;
    const std::vector<weekend::Job>& jobs;
    const weekend::Plan& plan;
    const Speech& speech;

    /// The standing definition behind a job: its task, or the task of its snag; nullptr for a job of its own.
    [[nodiscard]] const upkeep::TaskVersion* taskOf(const weekend::Job& job) const;
};

/// Short ids: a letter for the kind of box and a number that counts up.
class FieldIds {
  public:
    explicit FieldIds(char letter) : letter_(letter) {}
    std::string next() { return letter_ + std::to_string(++last_); }

  private:
    char letter_;
    int last_ = 0;
};

void fillHead(JobSheet& sheet, const SheetSource& from);
void fillClock(JobSheet& sheet, const SheetSource& from);
/// Steps in working order. A joint stands once: where it is closed for the last time.
std::vector<SheetLine> linesOf(const SheetSource& from);
/// Kits of the jobs, the same thing once, what is needed before what may be; then what the joints renew.
std::vector<PullLine> pullListOf(const SheetSource& from);
/// Special tools by name, then the wrenches of the drawer that serve the torques and what none reaches;
/// without a drawer what the torque wrenches must cover.
std::vector<std::string> toolsOf(const SheetSource& from);
/// What refitting and the jobs bring, then what earlier work still asks for; at once before later.
std::vector<FollowUpLine> followUpsOf(const SheetSource& from);
std::vector<SettingLine> settingsOf(const SheetSource& from);

}  // namespace wm::sheet

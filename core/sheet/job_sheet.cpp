// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sheet/job_sheet.h"

#include <algorithm>

#include "core/book/evening.h"
#include "core/sheet/sheet_parts.h"

namespace wm::sheet {

using base::Fault;
using base::refuse;
using upkeep::Hazard;

namespace {

void addOnce(std::vector<Hazard>& list, Hazard hazard) {
    if (std::find(list.begin(), list.end(), hazard) == list.end())
        list.push_back(hazard);
}

// Each caution of the sheet once; the first ride closes the list wherever something was taken apart.
std::vector<Hazard> cautionsOf(const JobSheet& sheet, const weekend::Plan& plan) {
    std::vector<Hazard> cautions;
    bool safety = false;
    for (const SheetLine& line : sheet.lines) {
        safety = safety || line.safety;
        for (const Hazard hazard : line.hazards)
            addOnce(cautions, hazard);
    }
    if (safety || !plan.opened.empty()) {
        std::erase(cautions, Hazard::FirstRide);
        cautions.push_back(Hazard::FirstRide);
    }
    return cautions;
}

bool isUnconfirmed(const SheetLine& line) {
    const bool torque = std::any_of(line.torques.begin(), line.torques.end(), [](const TorqueLine& t) {
        return !t.figure.confirmed && !(t.figure.text.empty() && t.stages.empty());
    });
    const bool limit = std::any_of(line.measures.begin(), line.measures.end(), [](const MeasureLine& m) {
        return !m.limitConfirmed && !m.limit.empty();
    });
    const bool amount = std::any_of(line.quantities.begin(), line.quantities.end(),
                                    [](const Figure& quantity) { return !quantity.confirmed; });
    return torque || limit || amount;
}

std::vector<WriteBackLine> writeBackOf(const Speech& speech) {
    FieldIds ids('W');
    std::vector<WriteBackLine> lines;
    const auto add = [&](const base::Phrase& what, const char* unit = "") {
        lines.push_back({speech(what), unit, ids.next()});
    };
    add(base::phrase("Sheet", "date done"));
    add(base::phrase("Sheet", "hour meter"), "h");
    add(base::phrase("Sheet", "time it took"), "min");
    add(base::phrase("Sheet", "done by"));
    add(base::phrase("Sheet", "second person"));
    add(base::phrase("Sheet", "parts or fluids other than listed"));
    add(base::phrase("Sheet", "joints left hand-tight"));
    add(base::phrase("Sheet", "snags found"));
    return lines;
}

}  // namespace

const upkeep::TaskVersion* SheetSource::taskOf(const weekend::Job& job) const {
    if (job.task)
        return book.task(*job.task);
    const auto* snag = job.snag ? book.ledger().find<upkeep::Snag>(*job.snag) : nullptr;
    return snag != nullptr && snag->task ? book.task(*snag->task) : nullptr;
}

base::Result<JobSheet> jobSheet(const book::Book& book, MachineId machine, std::int64_t number,
                                const Speech& speech) {
    if (book.ledger().find<items::Machine>(machine) == nullptr)
        return refuse(Fault::Unknown, "machine");
    const std::vector<weekend::Job> jobs = book.pickedJobs(machine);
    if (jobs.empty())
        return refuse(Fault::NothingToDo, "picks");
    const auto plan = book::planFor(book, machine, jobs);
    if (!plan)
        return tl::unexpected(plan.error());
    const SheetSource from{book, machine, jobs, *plan, speech};
    JobSheet sheet;
    sheet.number = number;
    fillHead(sheet, from);
    sheet.lines = linesOf(from);
    fillClock(sheet, from);
    sheet.pull = pullListOf(from);
    sheet.tools = toolsOf(from);
    sheet.followUps = followUpsOf(from);
    sheet.settings = settingsOf(from);
    sheet.writeBack = writeBackOf(speech);
    sheet.cautions = cautionsOf(sheet, *plan);
    sheet.anyUnconfirmed = std::any_of(sheet.lines.begin(), sheet.lines.end(), isUnconfirmed);
    return sheet;
}

}  // namespace wm::sheet

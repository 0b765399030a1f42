// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <set>
#include <string>
#include <vector>

#include "core/sheet/job_sheet.h"
#include "ui/print/print_rows.h"

namespace wm::ui {

inline QString fromCore(const std::string& text) {
    return QString::fromStdString(text);
}

/// What the sheet is for, what to mind and what to lay ready.
std::vector<Section> coverSections(const sheet::JobSheet& sheet, double width);
/// The work, a section for each stage; its refit is a section of its own.
std::vector<Section> workSections(const sheet::JobSheet& sheet, double width);
/// What to check afterwards, what was found, what to type back.
std::vector<Section> closingSections(const sheet::JobSheet& sheet, double width);

/// How much of a caution is said: its name alone where it stood in full before, with who decides on the first
/// page.
enum class CautionDetail : std::uint8_t { Name, WhatToDo, WhoDecides };

/// One step with its torques, measurements and boxes. Cautions not yet in `said` are given in full.
Group stepGroup(const sheet::SheetLine& line, double width, std::set<upkeep::Hazard>& said);
void addCaution(Group& group, upkeep::Hazard hazard, double x, double width, CautionDetail detail);
/// The boxes for initials and for a second person.
Row initialsRow(double width);

}  // namespace wm::ui

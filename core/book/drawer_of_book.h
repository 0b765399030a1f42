// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "core/book/book.h"
#include "core/fastening/drawer.h"
#include "core/fastening/loosened.h"
#include "core/fastening/recall.h"

namespace wm::book {

// The drawer and the loosening ledger as they follow from a book. Pointers are into its ledger.

/// How often a tool clicked for a mark: the joint's fasteners, times the torques of its stages if it was
/// tightened (at least one).
std::int64_t cyclesOf(const Book& book, const fastening::JointMark& mark);

/// Every tool with its standing, those in the drawer first, by name.
std::vector<fastening::Choice> drawerOf(const Book& book);
/// The tools for a joint, best first; none if its torque is blank.
std::vector<fastening::Choice> toolsFor(const Book& book, const fastening::JointVersion& joint);
/// The tool to propose: the one used last for this joint, if it still may be used; else the best, if one
/// reaches. Or nullptr.
const fastening::Tool* usualTool(const Book& book, const fastening::JointVersion& joint);

struct ToolRecall {
    const fastening::Tool* tool = nullptr;
    fastening::Recall recall{};
};
/// What every failed check put in doubt, newest check first.
std::vector<ToolRecall> recallsOf(const Book& book);
/// A joint that a failed check puts in doubt as it stands now, on the machine that has it.
struct DoubtedJoint {
    MachineId machine{};
    JointId joint{};
    const fastening::Calibration* failed = nullptr;
    fastening::Touch tightened{};  ///< with the tool that failed
};
/// What was tightened with a tool that failed a check, and since then neither loosened nor tightened with one
/// that was checked, reaches that far and is not in doubt itself. What is out is left out.
std::vector<DoubtedJoint> doubtedByTools(const Book& book, MachineId machine);
/// The joint that a line of a recall still asks for, on whatever machine it is by now; nothing if it was
/// loosened or rightly tightened since, or the follow-up was answered.
std::optional<DoubtedJoint> stillDoubted(const Book& book, const ToolRecall& recall,
                                         const fastening::RecallLine& line);
/// The words of the re-check that a recall makes of a joint.
std::string recheckText(const fastening::JointVersion& joint);
/// The re-checks that recalls ask of one machine; upkeep::openDemands leaves the answered ones out.
std::vector<upkeep::FollowUp> recheckDemands(const Book& book, MachineId machine);

struct CameLoose {
    const fastening::JointVersion* joint = nullptr;
    fastening::Loosening figures{};
    std::optional<fastening::Comparison> comparison{};
};
/// Every joint that was ever re-checked, those that moved most often first; of one machine or of all. The
/// comparison is with the joints of its kind on all machines. Hours are best ones; a day's riding counts for
/// what was tightened on an earlier day.
std::vector<CameLoose> cameLoose(const Book& book, std::optional<MachineId> machine);

}  // namespace wm::book

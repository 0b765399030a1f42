// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <map>
#include <set>
#include <string>
#include <vector>

#include "core/book/book.h"
#include "core/fastening/hand_tight.h"
#include "core/items/moved_at.h"

namespace wm::book {

/// The access steps of a machine as they were defined on a day; the first version of one that came later.
std::vector<const weekend::StepVersion*> stepsOn(const picture::Ledger& ledger, MachineId machine,
                                                 calendar::Date on);
/// Those of them that free a position.
std::vector<const weekend::StepVersion*> stepsFreeing(const picture::Ledger& ledger, MachineId machine,
                                                      std::string_view path, calendar::Date on);
/// The joints that a record's own job and its access steps open; not those that the job only looks at.
std::set<JointId> jointsOpenedBy(const Book& book, const upkeep::Record& record);

/// The joints of one machine as work, looks and moves left them on the evening of the book's day, and the
/// moves that leave a question.
struct JointsThen {
    /// Those of the machine, and by the joint of another machine where they came loose inside something that
    /// came from there and this machine's schedule does not know them.
    std::map<JointId, fastening::JointNow> joints{};
    /// The item in which each of them sits; not of the machine's own.
    std::map<JointId, ItemId> inside{};
    /// The loose ones of them that nothing holds now, with the position that stands empty: there is nothing
    /// to torque.
    std::map<JointId, std::string> out{};
    /// Off and back on one day, told as work: was it torqued?
    std::vector<items::MovedAt> outAndBack{};
    /// Nobody asked whether it was work.
    std::vector<items::MovedAt> unasked{};
};
/// Worked out anew; Book::jointsThen keeps it.
JointsThen gatherJoints(const Book& book, MachineId machine);
/// What is loose and can be torqued, oldest first.
std::vector<fastening::HandTight> handTight(const JointsThen& then);

/// Was there an outing of the machine on this day?
bool rodeOn(const Book& book, MachineId machine, calendar::Date day);

/// The joints that hold what was moved there.
std::set<JointId> jointsHolding(const Book& book, const items::MovedAt& moved);

}  // namespace wm::book

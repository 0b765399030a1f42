// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <optional>
#include <vector>

#include "core/book/book.h"
#include "core/fastening/lookup.h"
#include "ui/tables/table_model.h"

namespace wm::ui {

/// "110 N·m", "8 to 10 N·m" as the manual prints it; empty if nobody has typed it yet.
QString torqueWords(const fastening::JointVersion& joint);

/// Joints of a machine, or of all. Columns: joint, machine, torque, thread, condition, source, mark.
std::vector<TableRow> jointRows(const book::Book& book, std::optional<MachineId> machine);

/// What a search found, best first, in the same columns. Rows of joints have their id, others the place of
/// their figure as a negative number, from -1.
std::vector<TableRow> foundRows(const book::Book& book, const fastening::Lookup& lookup,
                                const fastening::Found& found);

/// "last done Sat 2 May, by Odile", with what it was done with; empty if it never was.
QString lastWords(const book::Book& book, JointId joint);

/// "wrench: long red, 20 to 200 N·m"; what is missing if none of the drawer reaches; empty without a drawer
/// or without a figure.
QString wrenchWords(const book::Book& book, const fastening::JointVersion& joint);

/// The joints of the job that this one belongs to, the shortest such job, in the job's order; and its name.
struct JobJoints {
    QString job{};
    std::vector<JointId> joints{};
};
JobJoints jobOf(const book::Book& book, const fastening::JointVersion& joint);

/// What else has to be known at this joint: pieces, stages, thread condition, locking, what is renewed,
/// order.
std::vector<QString> jointNotes(const fastening::JointVersion& joint);

/// "HAND-TIGHT: Subframe bolts, Rear axle nut and 3 more"; empty if nothing is.
QString handTightWords(const book::Book& book, std::optional<MachineId> machine);
/// "HAND-TIGHT since Wed 6 May: loosened"; empty if it is tight.
QString openWords(const book::Book& book, const fastening::JointVersion& joint);
/// When and by whom it was last torqued, loosened, looked at; newest first.
std::vector<TableRow> markRows(const book::Book& book, JointId joint);

}  // namespace wm::ui

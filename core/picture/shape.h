// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/picture/checks.h"
#include "core/picture/rows.h"

namespace wm::picture {

// What a row must be by itself, whatever else is in the file: texts that can be read, figures within bounds,
// dates in order, one of two references and not both. The verbs ask it of what they are given, and adoptAll
// of every row of a file. Texts are trimmed; nothing else is changed.

void checkShape(Checks& check, Garage& row);
void checkShape(Checks& check, items::Person& row);
void checkShape(Checks& check, items::Machine& row);
void checkShape(Checks& check, items::Item& row);
void checkShape(Checks& check, items::Move& row);
void checkShape(Checks& check, items::Setting& row);
void checkShape(Checks& check, usage::HourReading& row);
void checkShape(Checks& check, usage::DistanceReading& row);
void checkShape(Checks& check, usage::Outing& row);
void checkShape(Checks& check, usage::Wash& row);
void checkShape(Checks& check, usage::Crash& row);
void checkShape(Checks& check, upkeep::TaskVersion& row);
void checkShape(Checks& check, weekend::StepVersion& row);
void checkShape(Checks& check, fastening::JointVersion& row);
void checkShape(Checks& check, fastening::JointMark& row);
void checkShape(Checks& check, fastening::Tool& row);
void checkShape(Checks& check, fastening::Calibration& row);
void checkShape(Checks& check, upkeep::Record& row);
void checkShape(Checks& check, upkeep::Snag& row);
void checkShape(Checks& check, upkeep::SnagEnd& row);
void checkShape(Checks& check, upkeep::Deferral& row);
void checkShape(Checks& check, upkeep::FollowUpAnswer& row);
void checkShape(Checks& check, stock::StockLine& row);
void checkShape(Checks& check, stock::Lot& row);
void checkShape(Checks& check, stock::StockMove& row);
void checkShape(Checks& check, stock::StockOrder& row);
void checkShape(Checks& check, outlook::Event& row);
void checkShape(Checks& check, weekend::WorkWindow& row);
void checkShape(Checks& check, weekend::Pick& row);
void checkShape(Checks& check, weekend::IssuedSheet& row);
void checkShape(Checks& check, Strike& row);

/// Beyond it a torque is a typing error.
inline constexpr units::Decimal kMostTorque{100'000, 0};

/// Exactly one of two references: Empty if there is none, Inconsistent if there are both.
template <class A, class B>
void oneOf(Checks& check, const base::Place& field, const std::optional<A>& a, const std::optional<B>& b) {
    check.that(a || b, base::Fault::Empty, field);
    check.that(!(a && b), base::Fault::Inconsistent, field);
}

}  // namespace wm::picture

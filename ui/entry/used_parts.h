// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <vector>

#include "core/book/book.h"

namespace wm::ui {

/// Parts and fluids as they are typed: "engine oil 850 ml; oil filter 1; drain washer". An amount left out is
/// one piece; "1,0 l" is 1000 ml and "0.2 kg" 200 g. A name is a line of the shelf: the whole of it, or any
/// part that only one line has. Errors on field "uses": Unknown (no such line), Duplicate (several lines
/// could be meant), WrongUnit, NotPositive, NotANumber.
base::Result<std::vector<upkeep::Use>> parseUses(const book::Book& book, const QString& typed);

QString usesText(const book::Book& book, const std::vector<upkeep::Use>& uses);
/// What its kit names without a line of the shelf, as a reminder; empty if nothing.
QString untiedKitText(const upkeep::TaskVersion& task);
/// What one go of a task uses, as far as its kit is tied to the shelf; "only if needed" is left out.
QString kitText(const book::Book& book, const upkeep::TaskVersion& task);

}  // namespace wm::ui

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "app/console.h"
#include "core/book/book.h"

namespace wm::app {

// Things by what the mechanic calls them: the whole name or code in any case, or a part of it that fits one
// alone. Refused with the names that would have fitted.

/// `words` empty: the only machine there is.
Answer<const items::Machine*> findMachine(const book::Book& book, const QString& words);
Answer<const upkeep::TaskVersion*> findTask(const book::Book& book, MachineId machine, const QString& words);
Answer<const upkeep::Snag*> findSnag(const book::Book& book, MachineId machine, const QString& words);
Answer<const fastening::JointVersion*> findJoint(const book::Book& book, MachineId machine,
                                                 const QString& words);
Answer<const fastening::Tool*> findTool(const book::Book& book, const QString& words);
Answer<const stock::StockLine*> findStockLine(const book::Book& book, const QString& words);
Answer<const items::Person*> findPerson(const book::Book& book, const QString& words);
Answer<const outlook::Event*> findEvent(const book::Book& book, const QString& words);

}  // namespace wm::app

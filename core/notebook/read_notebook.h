// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/notebook/lines.h"
#include "core/notebook/table.h"

namespace wm::notebook {

struct ReadingWishes {
    std::optional<Layout> layout{};      ///< as set by hand or remembered; else guessed
    std::optional<MachineId> machine{};  ///< of every line, for a notebook about one machine
    MeantNames meant{};                  ///< what was said of the names in the machine column
};

/// Reads every line of a table and judges it against what the file knows on `book.today()`: what can be read,
/// what is in the file already, what stands there twice, whether the meter can have shown that. Nothing is
/// written. Every line of the table comes back, in order.
/// Errors: NoDates, NoMachine, NoFigures, Stopped.
base::Result<Notebook> readNotebook(Table table, const book::Book& book, const ReadingWishes& wishes = {},
                                    const Progress& progress = {});

}  // namespace wm::notebook

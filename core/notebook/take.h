// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <map>
#include <set>

#include "core/notebook/lines.h"
#include "core/verbs/verbs.h"

namespace wm::notebook {

/// What is to be done with one line; a taken one can only be left out.
enum class Choice : std::uint8_t { Open, Cured, LeftOut };

/// What the mechanic agreed to: the lines that are taken anyway, the cures, all or by the line.
struct Agreement {
    bool allCures = false;
    std::map<std::size_t, Choice> lines{};  ///< by Line::line; goes before `allCures`
    std::set<MachineId>
        newcomers{};  ///< machines of the book that come with the notebook: it begins their cards
};

/// True if this line would be written.
bool isAgreed(const Line& line, const Agreement& agreement);

struct Taken {
    picture::Change change{};
    std::size_t lines = 0;    ///< that became facts
    std::size_t waiting = 0;  ///< readings left out because a renewed meter before them was not agreed to
};

/// The facts of all agreed lines as one change, in order of time: outings with their readings, washes and
/// crashes; readings; jobs with what they used. Machines, persons and shelf lines that are not there yet are
/// added; a machine's card is dated back to its first line, with what the meter showed before as its past. A
/// shelf line that was first counted after a job keeps its count: the record says what was used. Jobs done
/// long ago leave no joint hand-tight. Errors: NothingNew if no line is; the shape of a row, with
/// "line 12" in front of its field; Stopped.
base::Result<Taken> takeNotebook(const verbs::VerbContext& context, const Notebook& notebook,
                                 const Agreement& agreement, std::string_view name,
                                 const Progress& progress = {});

}  // namespace wm::notebook

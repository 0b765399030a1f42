// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <map>
#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/picture/ledger.h"

namespace wm::exchange {

/// An invented garage as text. `files`: name ("outings.csv") and content of everything in demo-db/;
/// `starters`: the texts of the starter schedules that its machines name.
struct DemoText {
    std::map<std::string, std::string, std::less<>> files{};
    std::vector<std::string> starters{};
};

/// The names of the files that a garage consists of, in the order in which lines of the same day are said.
std::vector<std::string> demoFiles();

/// Says every line, day by day, as if somebody had typed it on that day: each goes through its verb and is
/// checked as such. The same text always gives the same ledger, ids included.
/// Errors: those of the verbs and of single cells, `field` with file, line and column ("jobs.csv line 12,
/// meter"); Inconsistent for a file that is missing or one too many; NewerFormat and the like of a starter.
base::Result<picture::Ledger> buildDemo(const DemoText& text);

}  // namespace wm::exchange

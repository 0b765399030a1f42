// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/ledger/book.h"
#include "core/sheet/cautions.h"

namespace wm::sheet {

/// A figure with where it comes from; printed with the wedge if it was not confirmed against the manual.
struct Figure {
    std::string text;  ///< "110 N·m", or empty: then a blank to write on is printed
    std::string source;
    bool confirmed = false;
};

struct TorqueLine {
    std::string joint;
    std::string thread;
    std::int64_t count = 1;
    Figure figure;  ///< empty text: "torque ____ N·m, manual p. ____"
    std::string stages;
    std::string condition;
    std::string locking;
    std::string renew;
    bool leftHand = false;
    fastening::Sequence sequence = fastening::Sequence::Any;
    std::int64_t sequenceStep = 0;
    std::string sequenceNote;
    std::string field;  ///< id under which the box is typed back
};

struct PullLine {
    std::string what;
    std::string partNumber;
    std::string amount;  ///< "2", "850 ml"
    std::string place;
    bool enough = true;
    std::string shortBy;  ///< "short 150 ml"
    bool onlyIfNeeded = false;
    std::string field;
};

struct MeasureLine {
    std::string name;
    std::string unit;
    std::string limit;  ///< "0.10 to 0.15", or empty: blank
    bool limitConfirmed = false;
    std::string last;  ///< "0.14 at 31.2 h, 2 May"
    std::string field;
};

enum class LineKind : std::uint8_t { BreakLoose, Off, Job, On, SafeStop };

struct SheetLine {
    LineKind kind = LineKind::Job;
    std::string clock;  ///< "18:04", or "+0:04" without a work window
    std::string text;
    std::string howTo;
    std::string minutes;
    std::vector<upkeep::Hazard> hazards;
    std::vector<TorqueLine> torques;  ///< at refit and at the job
    std::vector<MeasureLine> measures;
    std::vector<std::string> quantities;  ///< "engine oil 850 ml"
    bool safety = false;                  ///< initials, and a second person's box
    std::string field;
};

struct FollowUpLine {
    std::string what;
    std::string when;  ///< "at once", "after the first outing" ...
    std::string field;
};

/// What stands on a job sheet: content, not paint. `ui/print` draws it, on A4 and Letter.
struct JobSheet {
    std::int64_t number = 0;  ///< 0 = a proof, not issued
    std::string machine;
    std::string configuration;  ///< what is fitted today: "engine no. 2, mud wheels"
    std::string meter;          ///< "61.3 h"
    std::string totalTime;
    std::string date;
    std::string target;                    ///< "Sat 16 May, Birch Hollow (9 days)"
    std::string window;                    ///< "Fri 18:00 to 21:00, 1 pair of hands"
    std::string workTime;                  ///< "168 of 180 min"
    std::vector<std::string> jobs;         ///< the jobs by name
    std::vector<upkeep::Hazard> cautions;  ///< of the whole sheet, each once
    std::vector<PullLine> pull;
    std::vector<std::string> tools;
    std::vector<SheetLine> lines;
    std::vector<std::string> settings;  ///< to note on removal and restore on refit
    std::vector<FollowUpLine> followUps;
    std::vector<std::string> openSnags;
    std::vector<std::string> handTight;
    bool anyUnconfirmed = false;
};

/// The sheet for what is picked on one machine. Errors: NothingToDo (nothing picked), those of planWork.
base::Result<JobSheet> jobSheet(const ledger::Book& book, MachineId machine, std::int64_t number);

}  // namespace wm::sheet

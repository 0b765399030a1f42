// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/book/book.h"
#include "core/sheet/speech.h"

namespace wm::sheet {

/// Everything here is text that is ready to print; numbers carry their unit ("110 N·m", "850 ml"). `field` is
/// the short id under which a box is typed back, one letter for the kind and a number: P parts, L lines,
/// T torque, M measurements, V verify after, S settings, W write back. The same picks on the same book give
/// the same ids.

/// A figure with where it comes from; printed with the wedge if it was not confirmed against the manual.
struct Figure {
    std::string text{};  ///< as the manual prints it: "110 N·m", "81 lbf·ft"; empty: a blank to write on
    std::string converted{};  ///< "110 N·m", if it was not printed in N·m
    std::string source{};     ///< "service manual p. 2-31"
    bool confirmed = false;
};

struct TorqueLine {
    std::optional<JointId> jointId{};  ///< nothing: a code that no joint of the machine has
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
    std::string order;  ///< the order in words, "criss-cross, from the middle out", or empty
    std::string field;
};

struct PullLine {
    std::optional<StockLineId> line{};
    std::string what;
    std::string partNumber;
    std::string amount;  ///< "2", "850 ml"; empty where nobody has said how many
    std::string place;
    bool onShelfList = true;  ///< false: not tied to a line of the shelf, so nobody knows if it is there
    bool enough = true;
    std::string shortBy;  ///< "short 150 ml"
    bool onlyIfNeeded = false;
    std::string field;
};

struct MeasureLine {
    std::optional<TaskId> task{};
    std::string name;
    std::string unit;
    std::string limit;  ///< "0.10 to 0.15 mm", "at most 0.80 mm", or empty: blank
    bool limitConfirmed = false;
    std::string last;  ///< "0.14 mm at 31.2 h, 2 May 2026", or empty
    std::string field;
};

enum class LineKind : std::uint8_t { BreakLoose, Off, Job, On, SafeStop, Run, Wait, Do, Torque };

struct SheetLine {
    LineKind kind = LineKind::Job;
    std::string step{};            ///< code of the access step (BreakLoose, Off, On)
    std::optional<TaskId> task{};  ///< a job is one of task and snag
    std::optional<SnagId> snag{};
    std::string clock;  ///< "18:04", or "+0:04" without a work window
    std::string text;
    std::string howTo;
    std::string minutes;
    std::vector<upkeep::Hazard> hazards;
    std::vector<TorqueLine> torques;  ///< at refit and at the job
    std::vector<MeasureLine> measures;
    std::vector<Figure> quantities;  ///< "fork oil 850 ml"
    bool safety = false;             ///< initials, and a second person's box
    std::string field;
};

struct FollowUpLine {
    std::string what;
    std::string because;  ///< the access step or job that brings it
    std::string when;     ///< "at once", "after the next outing" ...
    bool atOnce = false;  ///< before the machine is ridden
    std::string field;
};

/// A setting as it was last noted, to restore; and a blank for how it is left.
struct SettingLine {
    std::string name;   ///< "fork compression", with the item if it is about one
    std::string value;  ///< "12 clicks"
    std::string noted;  ///< "2 May 2026"
    std::string field;
};

/// What has to be typed back in the end.
struct WriteBackLine {
    std::string what;  ///< "date done", "hour meter" ...
    std::string unit;
    std::string field;
};

/// What stands on a job sheet: content, not paint. `ui/print` draws it, on A4 and Letter.
struct JobSheet {
    std::int64_t number = 0;  ///< 0 = a proof, not issued
    std::string machine;
    std::string configuration;  ///< what is fitted today: "engine: no. 2 · rear wheel: mud"
    std::string meter;          ///< "61.3 h"
    std::string totalTime;
    std::string date;                      ///< of printing
    std::string target;                    ///< "Birch Hollow, Sat 16 May 2026 (9 days)"
    std::string window;                    ///< "Fri 15 May 2026 18:00 to 21:00, 1 pair of hands"
    std::string workTime;                  ///< "168 of 180 min"
    std::vector<std::string> jobs;         ///< the jobs by name
    std::vector<upkeep::Hazard> cautions;  ///< of the whole sheet, each once
    std::vector<PullLine> pull;
    std::vector<std::string> tools;
    std::vector<SheetLine> lines;
    std::vector<SettingLine> settings;
    std::vector<FollowUpLine> followUps;
    std::vector<std::string> openSnags;
    std::vector<std::string> notFitted;
    std::vector<std::string> handTight;
    std::vector<std::string> inDoubt;  ///< what nobody can vouch for until it is looked at
    std::vector<WriteBackLine> writeBack;
    bool anyUnconfirmed = false;
};

/// The sheet for what is picked on one machine; `speech` chooses the words. Errors: Unknown (the machine),
/// NothingToDo (nothing picked), those of planWork.
base::Result<JobSheet> jobSheet(const book::Book& book, MachineId machine, std::int64_t number,
                                const Speech& speech = {});

}  // namespace wm::sheet

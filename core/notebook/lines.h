// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "core/book/book.h"
#include "core/notebook/layout.h"
#include "core/notebook/matching.h"
#include "core/notebook/used.h"
#include "core/usage/rows.h"

namespace wm::notebook {

/// Taken: as it stands, or in the one way that it can be read. Doubtful: something about it wants a look;
/// most bring a cure that needs a yes. Refused: can't be read or can't be.
enum class Verdict : std::uint8_t { Taken, Doubtful, Refused };

/// What was seen about a line.
enum class Defect : std::uint8_t {
    // worth a word, no doubt
    InFile,        ///< the file holds it already: nothing to add
    StruckInFile,  ///< it was there and has been struck: not taken again
    NewMeter,      ///< read as a renewed meter; `likely` what the old one showed
    Unlogged,      ///< the meter ran `given` more than anybody noted
    UnknownWord,   ///< kept in the note
    NoTask,        ///< a job that is no task of the machine: kept in its own words
    // doubt
    DateForm,         ///< written otherwise than the other lines
    DateFar,          ///< after today, or far from its neighbours
    DateOrder,        ///< out of the order of the lines around it
    NoYear,           ///< of the lines around it
    DateMissing,      ///< of the lines around it
    NameOtherwise,    ///< written otherwise than on the other lines
    NameNear,         ///< one or two letters off from a name
    NameRare,         ///< a machine that only this line or two speak of
    NameMissing,      ///< the one above
    TwoMachines,      ///< once for each
    WrongMachine,     ///< the meter is another machine's
    HoursForm,        ///< with a unit, or in another form than the other lines
    HoursUnit,        ///< minutes in a column of hours, or the mark at another place
    HoursTooMany,     ///< more than the meter ran, or than a day's riding
    HoursUnreadable,  ///< without them
    MeterRunsBack,    ///< lower than before
    MeterJumps,       ///< more than the days between can hold, or than was ridden
    MeterReplaced,    ///< begins anew without a word
    MeterUnreadable,  ///< without it
    Twice,            ///< the same line again
    OtherwiseInFile,  ///< the file has other figures for that day
    MinutesUnit,      ///< hours in a column of minutes
    UsedUnit,         ///< a thousand times too much or too little
    UsedUnreadable,   ///< kept in the note
    CellsTooMany,     ///< more cells than the notebook has columns
    // no
    DateUnreadable,
    DateImpossible,  ///< after today and no other day likely
    NameUnknown,
    BeforeGone,  ///< after the machine had gone
    Negative,
    NothingSaid,
    Formula,
    Total
};

/// One thing about a line: the text that it is about, and what it likely means.
struct Remark {
    Defect defect = Defect::InFile;
    std::string given{};
    std::string likely{};
    friend bool operator==(const Remark&, const Remark&) = default;
};

Verdict verdictOf(Defect defect);

/// What taking a doubtful line does.
enum class Cure : std::uint8_t {
    None,      ///< nothing likely: by hand
    AsLikely,  ///< `facts` as they then are
    LeaveOut   ///< the line is not needed
};

enum class FactSort : std::uint8_t { Outing, Reading, Wash, Crash, Job };

/// What a line says, cures already applied.
struct Facts {
    FactSort sort = FactSort::Outing;
    calendar::Date date{};
    std::vector<std::size_t> machines{};  ///< into Notebook::machines; one, but for TwoMachines
    usage::OutingKind kind = usage::OutingKind::Practice;
    std::optional<units::Hours> hours{};
    std::optional<units::Metres> distance{};
    std::int64_t starts = 0;
    usage::Ground ground = usage::Ground::Unstated;
    std::string rider{};
    std::optional<units::Hours> meter{};
    usage::MeterEvent event = usage::MeterEvent::Plain;
    std::optional<units::Hours> before{};  ///< what the old meter showed
    bool washed = false;
    bool pressure = false;
    bool crashed = false;
    std::string job{};
    std::vector<TaskId> tasks{};
    std::optional<units::Minutes> minutes{};
    std::vector<UsedPart> used{};
    std::string note{};
};

struct Line {
    std::size_t line = 0;  ///< of the file; the header is 1
    std::vector<std::string> cells{};
    Verdict verdict = Verdict::Taken;
    std::vector<Remark> remarks{};
    Cure cure = Cure::None;
    bool inFile = false;
    Facts facts{};

    [[nodiscard]] bool has(Defect defect) const;
    /// What makes the line doubtful, without repeats, in the order of Defect: lines with the same doubts are
    /// of a kind.
    [[nodiscard]] std::vector<Defect> doubts() const;
    /// Adds a remark; the verdict becomes the graver of the two.
    void remark(Defect defect, std::string given = {}, std::string likely = {});
    [[nodiscard]] bool readable() const { return verdict != Verdict::Refused; }
};

/// A whole notebook, read and judged against a file on one day.
struct Notebook {
    Encoding encoding = Encoding::Utf8;
    char separator = ';';
    std::vector<std::string> header{};
    std::string headerKey{};
    Layout layout{};
    std::vector<NamedMachine> machines{};
    std::vector<NameSpelling> spellings{};  ///< of the machine column, the commonest first
    std::vector<Line> lines{};

    [[nodiscard]] std::size_t count(Verdict verdict) const;
};

}  // namespace wm::notebook

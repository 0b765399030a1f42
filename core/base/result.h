// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <string>
#include <tl/expected.hpp>
#include <utility>

#include "core/base/names.h"
#include "core/base/place.h"

namespace wm::base {

/// What was wrong with an input or a demand. The interface alone turns these into sentences
/// (ui/words/error_words.h); the core only says which, where and with what.
enum class Fault {
    Empty,          ///< a field that must be filled is blank
    NotANumber,     ///< text that is no number
    NotADate,       ///< text that is no calendar date
    Negative,       ///< below zero where that has no sense
    NotPositive,    ///< zero or less where more than zero is needed
    TooLarge,       ///< beyond what the field can hold or what can be real
    TooLong,        ///< text longer than the field takes
    NotText,        ///< invalid UTF-8 or control characters
    InFuture,       ///< a fact dated after today
    BeforeItsTime,  ///< dated before the machine or item existed
    Unknown,        ///< no such machine, item, task ...
    Duplicate,      ///< the name is taken
    MeterRunsBack,  ///< a lower reading without a word why
    MeterJumps,     ///< more use than the days between can hold
    MeterStood,     ///< far more noted than the meter ran: a question (has it stopped?)
    PositionTaken,  ///< another item sits there
    Cycle,          ///< an item inside itself
    InTwoPlaces,    ///< an item that is fitted elsewhere at that time
    WrongKind,      ///< a kind of item that the position does not take
    NotOpened,      ///< a joint that the job never touches
    IsOut,          ///< a joint that nothing is there to be tightened against
    NothingThere,   ///< a job on what was taken off, which lies nowhere near
    RidesSoon,      ///< a job that would leave a machine apart that is to be ridden
    NotFitted,      ///< removed from where it was not
    Retired,        ///< an item that has been scrapped, a machine that has gone
    ReasonNeeded,   ///< a deferral of a safety task needs its reason
    WrongUnit,      ///< units of different kinds, or a unit that is not known
    OutOfOrder,     ///< an end before its beginning, a maximum under its minimum
    AlreadyStruck,  ///< struck before
    NotEnough,      ///< more taken than is there
    Malformed,      ///< a text (JSON, line) that cannot be read
    NewerFormat,    ///< text written by a newer program
    Inconsistent,   ///< a reference to something that is not there
    NothingToDo,    ///< a demand that would change nothing
    MustAnswer,     ///< an open question stands before this (a hand-tight list)
    Implausible,    ///< a figure far from anything real; wants a second look
    NotEmpty,       ///< a whole file's rows for a file that already holds some
    Stopped,        ///< by the user, on the way; nothing was done
    Outdated,       ///< judged against a file that has changed meanwhile
    NoColumns,      ///< a table whose cells nothing parts
    NoDates,        ///< a notebook without a column of dates,
    NoMachine,      ///< ... that does not say which machine it is about
    NoFigures,      ///< ... with neither hours, readings, distances, washes nor jobs
    NothingNew,     ///< ... all of which is in the file already
};
inline constexpr std::size_t kFaults = enumerators<Fault>();

/// One refusal: `fault` says what, `field` which input ("hours", "date", the third line of a list),
/// `given` the input itself, `wanted` what would have been right (a bound, a name, a version).
struct Error {
    Fault fault;
    Place field;
    std::string given;
    std::string wanted;

    friend bool operator==(const Error&, const Error&) = default;
};

template <class T>
using Result = tl::expected<T, Error>;

inline tl::unexpected<Error> refuse(Fault fault, Place field, std::string given = {},
                                    std::string wanted = {}) {
    return tl::unexpected<Error>{Error{fault, std::move(field), std::move(given), std::move(wanted)}};
}

}  // namespace wm::base

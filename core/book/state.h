// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "core/book/book.h"

namespace wm::book {

/// A position of a machine from which something was taken and where nothing sits now.
struct Gap {
    std::string position{};  ///< "engine", "engine/piston"
    ItemId item{};           ///< what sat there last
    calendar::Date since{};
    bool isAway = false;  ///< that is at a workshop
    calendar::Date awaySince{};
    std::string where{};                     ///< at which, as the move was noted
    std::optional<calendar::Date> backOn{};  ///< when it was promised
    bool isDoubtful = false;                 ///< nobody can say whether the machine needs it
};

enum class Doubting : std::uint8_t {
    OutAndBack,  ///< off and on again on one day, told as work: was it torqued?
    OlderMoves,  ///< put on, and nobody asked whether it was torqued; all such moves of a machine in one
    Wrench,      ///< tightened with a tool that failed a check
    CameWith,    ///< came from a machine with joints loose of which nobody said where they sit
    Impossible   ///< something sits where it can't
};

/// Something that nobody can vouch for until it is looked at.
struct Doubt {
    Doubting why = Doubting::OutAndBack;
    std::vector<std::string> positions{};  ///< OutAndBack, OlderMoves, CameWith, Impossible
    calendar::Date since{};                ///< the day of it; of OlderMoves the first one
    std::vector<JointId> joints{};         ///< what settles it, confirmed
    std::optional<ToolId> tool{};          ///< Wrench
    std::optional<ItemId> item{};          ///< CameWith, Impossible
    std::optional<MachineId> from{};       ///< CameWith
};

/// A joint that is undone and that nothing is there to torque against: out with what sat at a position.
struct JointOut {
    const fastening::JointVersion* joint = nullptr;
    std::string position{};
};

/// What keeps a machine from being whole on the evening of the book's day. A position that nobody ever
/// tracked is taken to be filled; one that a machine can be ridden without is no gap. Below a gap nothing is
/// missed.
struct State {
    std::vector<const weekend::StepVersion*> open{};  ///< access steps that can't be closed with what is off
    std::vector<OpenJoint> handTight{};
    std::vector<JointOut> out{};  ///< with gaps, or with what a machine may be without
    std::vector<Gap> gaps{};
    std::vector<Doubt> doubts{};
    [[nodiscard]] bool isWhole() const { return gaps.empty() && handTight.empty() && doubts.empty(); }
};

State stateOf(const Book& book, MachineId machine);

/// The joints that a confirmation would settle: what is hand-tight, then what is in doubt, each once.
std::vector<JointId> toConfirm(const Book& book, MachineId machine);

/// True if the machine is whole once these jobs are done: what is hand-tight now is torqued by them, and
/// what is in doubt is opened by them and torqued as they are closed.
bool isWholeAfter(const Book& book, MachineId machine, const std::vector<weekend::Job>& jobs);

/// The gaps that there were after the riding of a day.
std::vector<Gap> gapsOn(const Book& book, MachineId machine, calendar::Date day);

/// Ridden, by a noted outing or by what the meter ran beside the notes, while joints were open that are open
/// still, and nobody said that he knew.
struct RiddenOpen {
    calendar::Date day{};    ///< of the outing, or of the reading
    bool isByMeter = false;  ///< some time up to that day
    std::vector<JointId> joints{};
};
std::vector<RiddenOpen> riddenOpen(const Book& book, MachineId machine);

/// The joints of a machine that were open when it was ridden on a day, and are open still. What was loosened
/// that day counts only if it was told to be before the riding.
std::vector<OpenJoint> openWhenRidden(const Book& book, MachineId machine, calendar::Date day);

}  // namespace wm::book

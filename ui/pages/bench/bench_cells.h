// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <cstdint>
#include <optional>
#include <vector>

#include "core/book/book.h"
#include "ui/drawing/glyph.h"

namespace wm::ui {

/// The bands of the Bench, from the top.
enum class Band : std::uint8_t {
    UntilThen,  ///< how surely nothing falls due before the next event, and what goes first
    NotFitted,  ///< what is off the machine: it can't be ridden at all
    HandTight,  ///< before all jobs: nobody rides off on a loose axle
    InDoubt,    ///< what nobody can vouch for until it is looked at
    Must,
    CheckAgain,  ///< follow-ups whose time has come
    Should,
    Round,  ///< the checks that come with every outing or before each race
    CanWait,
    NeverRecorded,
    PutOff,
    Snags,
    ToOrder
};
inline constexpr int kBands = 13;

QString bandWords(Band band);

/// What stands in one place of the Bench.
struct BenchCell {
    enum class Kind : std::uint8_t { Nothing, Words, Job, Snag, FollowUp, Joint, NoTasks, More };
    /// Whether anybody rides off before it is done: nobody does, in red; not before it was looked at.
    enum class Ride : std::uint8_t { Yes, NotUnseen, No };
    Kind kind = Kind::Nothing;
    MachineId machine{};
    QString words;
    QString shortWords;  ///< for where the words don't fit; may be empty
    QString far;         ///< how far, or until when
    QString beside;      ///< what gives way to the name: the chance, since when
    QString when;        ///< the date that it comes to, where there is room
    QString why;         ///< what it is a matter of, where there is room
    std::optional<MarkState> mark;
    bool picked = false;
    Ride ride = Ride::Yes;
    bool unconfirmed = false;  ///< its interval is not confirmed against the manual
    std::optional<TaskId> task;
    std::optional<SnagId> snag;
    std::optional<JointId> joint;
    std::int64_t origin = 0;  ///< FollowUp: what brought it
    [[nodiscard]] QString farAndBeside() const {
        return far + (far.isEmpty() || beside.isEmpty() ? QString() : QStringLiteral(", ")) + beside;
    }
    [[nodiscard]] bool canBeChosen() const { return kind != Kind::Nothing && kind != Kind::Words; }
};

/// All that one machine has to show, band by band, nothing left out.
using BenchColumn = std::vector<std::vector<BenchCell>>;

/// The column of one machine. `all` are the machines whose needs are counted together against the shelf.
BenchColumn benchColumn(const book::Book& book, MachineId machine, const std::vector<MachineId>& all);

}  // namespace wm::ui

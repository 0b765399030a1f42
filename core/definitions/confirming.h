// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <compare>
#include <cstdint>
#include <string>
#include <vector>

#include "core/book/book.h"

namespace wm::definitions {

// Leafing through the service manual: each figure of a machine that a manual prints is said to stand there,
// put right, or passed over.

/// In the order of a manual: the chart of intervals in front, what goes in, what it may wear to, the torques.
enum class PrintedKind : std::uint8_t { Interval, Quantity, Limit, Torque };

/// Which figure it is: the joint or the task, and the place in the task's kit or measurements.
struct PrintedKey {
    PrintedKind kind = PrintedKind::Torque;
    std::int64_t of = 0;
    std::size_t at = 0;
    friend auto operator<=>(const PrintedKey&, const PrintedKey&) = default;
};

struct Printed {
    PrintedKey key{};
    std::string name{};    ///< the job of an interval, the part or fluid, the measurement, the joint
    std::string about{};   ///< the job of a quantity or limit, the system of a joint, the position of a task
    std::string figure{};  ///< as it could be typed again: "15 h or 6 months", "850 ml"; empty: not typed yet
    std::string aside{};   ///< what goes with the figure and is confirmed with it: stages of a torque
    std::string source{};
    std::string page{};
    bool confirmed = false;
    std::string sharedWith{};  ///< "Heron 250, 2019 to 2021": another version goes to all of them
};

/// Every figure of the machine that a manual prints, typed or still blank, so that somebody who leafs can
/// follow: kind after kind; in each what has a page in the order of pages (2-9 before 2-31), then by system,
/// job and name. A task that only happenings set off has no figure.
std::vector<Printed> printedFigures(const book::Book& book, MachineId machine, char mark = '.');

struct ConfirmedCount {
    std::size_t confirmed = 0;
    std::size_t all = 0;
    friend bool operator==(const ConfirmedCount&, const ConfirmedCount&) = default;
};
ConfirmedCount confirmedCount(const std::vector<Printed>& figures);

/// The manual that figures of a machine were last confirmed against; "service manual" if none was.
std::string manualOf(const book::Book& book, MachineId machine);

}  // namespace wm::definitions

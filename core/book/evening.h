// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/book/book.h"
#include "core/weekend/plan.h"

namespace wm::book {

/// What a job's kit lacks on the shelf. Lines that are not tied to the shelf are not known to be there or
/// missing.
struct KitState {
    struct Short {
        std::string what{};
        std::int64_t missing = 0;
        upkeep::Unit unit = upkeep::Unit::Piece;
    };
    std::vector<Short> missing{};
    std::size_t untied = 0;  ///< needed lines that no shelf line is tied to
    [[nodiscard]] bool complete() const { return missing.empty() && untied == 0; }
};
KitState kitState(const Book& book, const upkeep::TaskVersion& task);

/// The working order for jobs on one machine. RidesSoon "job" if one of them sends something out that no
/// spare takes the place of, while the machine is entered for an event in the two weeks from the next work
/// window: nobody takes it apart before that. Other errors as weekend::planWork.
base::Result<weekend::Plan> planFor(const Book& book, MachineId machine,
                                    const std::vector<weekend::Job>& jobs);

/// One machine's share of an evening at the bench.
struct MachineWork {
    MachineId machine{};
    std::vector<weekend::Job> jobs{};
    base::Result<weekend::Plan> plan{};
    /// Tasks that were not picked and can be reached with what is off anyway, in due order; no access of its
    /// own.
    std::vector<const DueLine*> alsoOpen{};
};

/// What was picked, machine after machine, against the next work window. With several pairs of hands the
/// machines are still worked on one after the other; how to share hands is a later piece.
struct Evening {
    const weekend::WorkWindow* window = nullptr;
    std::vector<MachineWork> machines{};  ///< those with something picked, safety first, then by name
    units::Minutes work{};  ///< from the first act to the last: hands-off waits are time of the evening too
    units::Minutes elsewhere{};  ///< picked on the machines that were not asked for; the same window holds it
    std::optional<units::Minutes>
        left{};  ///< of the window by all that is picked; negative if it does not fit
};
/// For all machines, or for one of them alone.
Evening eveningOf(const Book& book, std::optional<MachineId> only);

}  // namespace wm::book

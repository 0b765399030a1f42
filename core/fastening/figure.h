// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <optional>
#include <string>

#include "core/base/ids.h"
#include "core/units/decimal.h"

namespace wm::fastening {

/// What is looked up at the stand: a torque, how much of a fluid or how many pieces a job takes, what a
/// measurement may be, and how something was last set.
enum class FigureKind : std::uint8_t { Joint, Quantity, Limit, Setting };

/// One figure of one machine, with the words under which it is looked for. A plain value: whoever knows more
/// about it (a shared joint, a tool) adds words to `alongside`, nothing else need change.
struct Figure {
    FigureKind kind = FigureKind::Joint;
    std::int64_t id = 0;  ///< of the joint, of the task (quantity, limit) or of the noted setting
    std::string code{};   ///< "rear-axle-nut", "engine-oil/engine oil": one of its kind on a machine
    MachineId machine{};
    std::string machineName{};
    std::string name{};       ///< "Rear axle nut", "engine oil", "race sag"
    std::string about{};      ///< the job of a quantity or limit, the item of a setting
    std::string thread{};     ///< "M20x1.5"
    std::string alongside{};  ///< more words that lead here: jobs, thread condition, locking, sort of fluid

    std::optional<units::Decimal> low{};   ///< the value, the low end of a range, or the least that is left
    std::optional<units::Decimal> high{};  ///< the high end of a range, or the most
    std::string unit{};                    ///< as units::convert knows it, or "pcs"
    std::string words{};                   ///< a setting that is no number: "third clip"
    std::string source{};
    std::string page{};
    bool confirmed = false;  ///< against the service manual; what is merely noted (a setting) is not
};

/// The figure as it was written, with its unit: "110 N·m", "4.0 to 4.6 N·m", "at least 1.0 mm", "12 out".
/// With `unit` (a symbol of units::convert of the same measure) converted, showing no more digits than were
/// written. Empty if nobody has entered it.
std::string figureText(const Figure& figure, char mark = '.', std::string_view unit = {});

}  // namespace wm::fastening

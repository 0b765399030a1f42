// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <span>
#include <string_view>

#include "core/upkeep/rows.h"

namespace wm::upkeep {

/// What a task measures under this name, or nullptr.
const MeasurePoint* pointNamed(const TaskVersion& task, std::string_view name);

/// True if a value is beyond a limit of its point; at the limit it is not.
bool isOutside(const MeasurePoint& point, const units::Decimal& value);

/// The limit that a value is beyond, or at although it is not good there; nothing while the value is good.
std::optional<units::Decimal> limitReached(const MeasurePoint& point, const units::Decimal& value);

/// The job that a value of the point makes due: the one it names, or the task that measures.
std::string_view jobOf(const TaskVersion& task, const MeasurePoint& point);

/// A value that somebody measured, and the limits that it is held against today.
struct MeasuredValue {
    const MeasurePoint* point = nullptr;
    const Record* record = nullptr;
    const Measured* value = nullptr;
};

/// A value that makes a job due.
struct ReachedValue {
    RecordId record{};
    calendar::Date date{};
    std::string name{};
    std::string unit{};
    units::Decimal value{};
    units::Decimal limit{};
    friend bool operator==(const ReachedValue&, const ReachedValue&) = default;
};

/// Of the values of a job's points (in any order) the one that makes it due: of each point the value measured
/// last up to the evening of `on` decides, unless the job was done later (`last`, and no look that found it
/// fine; of one part of a day the order of entry decides; a value that was written down with it does not end
/// with it). Of several the one measured first.
std::optional<ReachedValue> reachedValue(std::span<const MeasuredValue> values, const Record* last,
                                         calendar::Date on);

}  // namespace wm::upkeep

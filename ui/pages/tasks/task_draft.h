// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <map>
#include <string>
#include <vector>

#include "core/upkeep/task.h"
#include "ui/entry/entry_form.h"

namespace wm::ui {

/// What stands in the fields of one line, by the names that TaskVersion and its parts give their fields.
using DraftRow = std::map<std::string, QString>;

/// A task as it is typed, right or wrong: nothing is lost while it can't be read yet. Choices stand by the
/// name of their value, a tick as "yes" or nothing.
struct TaskDraft {
    DraftRow fields{};
    std::map<std::string, std::vector<DraftRow>> lists{};

    friend bool operator==(const TaskDraft&, const TaskDraft&) = default;
};

inline const QString kTicked = QStringLiteral("yes");

/// How a version reads in the fields. It is to hold from "today".
TaskDraft draftOf(const upkeep::TaskVersion& version);

/// The version that stands in the fields, or everything that can't be read, each fault at its field
/// ("limits[0].every"). What is no field (ids, code, machine) comes from `base`.
tl::expected<upkeep::TaskVersion, Faults> versionFrom(const TaskDraft& draft, upkeep::TaskVersion base,
                                                      calendar::Date today);

}  // namespace wm::ui

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <map>
#include <string>
#include <vector>

#include "core/upkeep/task.h"
#include "core/weekend/rows.h"
#include "ui/entry/entry_form.h"

namespace wm::ui {

/// What stands in the fields of one line, by the names that the version and its parts give their fields.
using DraftRow = std::map<std::string, QString>;

/// A definition (a task, an access step) as it is typed, right or wrong: nothing is lost while it can't be
/// read yet. Choices stand by the name of their value, a tick as "yes" or nothing.
struct Draft {
    DraftRow fields{};
    std::map<std::string, std::vector<DraftRow>> lists{};

    friend bool operator==(const Draft&, const Draft&) = default;
};

inline const QString kTicked = QStringLiteral("yes");

/// How a version (of a task, of an access step) reads in the fields. It is to hold from "today".
template <class V>
Draft draftOf(const V& version);

/// The version that stands in the fields, or everything that can't be read, each fault at its field
/// ("limits[0].every"). What is no field (ids, code, machine) comes from `base`.
template <class V>
tl::expected<V, Faults> versionFrom(const Draft& draft, V base, calendar::Date today);

}  // namespace wm::ui

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "core/store/connection.h"
#include "core/store/store.h"

/// What opening a file and taking over its facts have in common.
namespace wm::store {

OpenOutcome outcomeOf(const Failure& failure);

/// The report of a file that stays shut; the log gets it too.
OpenReport refusal(const QString& path, OpenOutcome outcome, const QString& detail);

/// What can be said without looking into it: not there, a folder, a pipe, a device, or something else in the
/// place of its journal.
std::optional<OpenReport> refusedAtSight(const QString& path);
std::optional<OpenReport> refusedForWhatStandsBeside(const QString& path);

/// True if the application id is ours. Throws Failure for a file of ours that is damaged in its first page.
bool isOurs(const Connection& connection);

}  // namespace wm::store

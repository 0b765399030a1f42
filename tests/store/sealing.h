// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <string>

namespace wm::store::sample {

/// Runs SQL on a file behind the store's back and gives each row the seal of what stands there then: for a
/// test that is about something else than seals.
void executeSealed(const QString& path, const std::string& sql);

/// Before and after a statement that changes washes: the trigger is as it was, so that nothing but the row is
/// different.
inline const std::string kFree = "PRAGMA foreign_keys = OFF; DROP TRIGGER wash_is_never_changed; ";
inline const std::string kGuarded =
    "; CREATE TRIGGER wash_is_never_changed BEFORE UPDATE ON \"wash\" BEGIN SELECT RAISE(ABORT, 'a fact is "
    "added or struck, never changed'); END";

}  // namespace wm::store::sample

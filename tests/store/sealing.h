// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <string>

namespace wm::store::sample {

/// Runs SQL on a file behind the store's back and gives each row the seal of what stands there then: for a
/// test that is about something else than seals.
void executeSealed(const QString& path, const std::string& sql);

}  // namespace wm::store::sample

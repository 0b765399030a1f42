// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ui/fields/field_spec.h"

namespace wm::ui {

/// Which act comes before which: the lines of "edges", read as sentences. `addKey` is the key with which the
/// page adds one, as it is said; may be empty.
GroupSpec orderGroup(const QString& addKey = {});

/// What is done besides, before or after: the lines of "doings".
GroupSpec doingsGroup();

}  // namespace wm::ui

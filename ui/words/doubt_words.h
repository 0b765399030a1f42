// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>

#include "core/definitions/confirming.h"
#include "core/fastening/plausible.h"
#include "core/verbs/confirm_verb.h"

namespace wm::ui {

/// What is asked about a torque that is far from its thread: what was typed, the band, what was probably
/// meant and which misreading that would be.
QString questionAbout(const QString& typed, const fastening::TorqueDoubt& doubt);
/// The same of any figure that is copied from a manual.
QString questionAbout(const verbs::FigureDoubt& doubt);
/// Why the stages can't follow a torque that was put right, and what to do.
QString stagesWords(const base::Error& error);

}  // namespace wm::ui

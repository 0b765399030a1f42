// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

// All verbs that have no header of their own beside this one (adjusting a schedule, baselines, a stated past,
// a figure confirmed).
#include "core/verbs/ahead_verbs.h"
#include "core/verbs/correct_verbs.h"
#include "core/verbs/fastening_verbs.h"
#include "core/verbs/item_verbs.h"
#include "core/verbs/move_verbs.h"
#include "core/verbs/shelf_verbs.h"
#include "core/verbs/task_verbs.h"
#include "core/verbs/upkeep_verbs.h"
#include "core/verbs/use_verbs.h"

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/id.h"

namespace wm {

using PersonId = base::Id<struct PersonTag>;
using MachineId = base::Id<struct MachineTag>;
using ItemId = base::Id<struct ItemTag>;
using MoveId = base::Id<struct MoveTag>;
using SettingId = base::Id<struct SettingTag>;
using ReadingId = base::Id<struct ReadingTag>;
using OutingId = base::Id<struct OutingTag>;
using WashId = base::Id<struct WashTag>;
using CrashId = base::Id<struct CrashTag>;
using TaskId = base::Id<struct TaskTag>;                ///< the task through all its versions
using TaskVersionId = base::Id<struct TaskVersionTag>;  ///< one version of it
using RecordId = base::Id<struct RecordTag>;
using SnagId = base::Id<struct SnagTag>;
using SnagEndId = base::Id<struct SnagEndTag>;
using DeferralId = base::Id<struct DeferralTag>;
using AnswerId = base::Id<struct AnswerTag>;
using JointId = base::Id<struct JointTag>;
using JointVersionId = base::Id<struct JointVersionTag>;
using JointMarkId = base::Id<struct JointMarkTag>;
using ToolId = base::Id<struct ToolTag>;
using CalibrationId = base::Id<struct CalibrationTag>;
using StockLineId = base::Id<struct StockLineTag>;
using LotId = base::Id<struct LotTag>;
using StockMoveId = base::Id<struct StockMoveTag>;
using StockOrderId = base::Id<struct StockOrderTag>;
using StepId = base::Id<struct StepTag>;
using StepVersionId = base::Id<struct StepVersionTag>;
using EventId = base::Id<struct EventTag>;
using WindowId = base::Id<struct WindowTag>;
using PickId = base::Id<struct PickTag>;
using SheetId = base::Id<struct SheetTag>;
using StrikeId = base::Id<struct StrikeTag>;
using GarageId = base::Id<struct GarageTag>;

}  // namespace wm

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "core/definitions/confirming.h"
#include "core/fastening/plausible.h"
#include "core/upkeep/doubtful_figure.h"
#include "core/verbs/verb.h"

namespace wm::verbs {

/// What somebody read in the manual. An empty figure, or the very one that is stored: it stands there so.
struct ReadInManual {
    std::string figure{};
    std::string source{};
    std::string page{};
};

/// A figure that looks like a misreading; words for both, and in one of the three why.
struct FigureDoubt {
    std::string read{};
    std::string meant{};
    std::optional<fastening::TorqueDoubt> torque{};  ///< with the band of its thread
    std::optional<upkeep::Misreading> misreading{};
};
/// Asked before a figure is confirmed, of one that stood there as well. Errors: those of confirmPrinted.
base::Result<std::optional<FigureDoubt>> doubtAbout(const book::Book& book,
                                                    const definitions::PrintedKey& key,
                                                    std::string_view figure, char mark = '.');

/// A new version of the joint or task, from today: the figure as read (another one than stored corrects it),
/// source and page, confirmed. Errors: Unknown (no such figure any longer), Empty ("figure" of a blank one,
/// "source", "page"), NothingToDo, those of parseInterval, parseTorqueRange, stagesAfter and of saveJoint and
/// saveTask.
base::Result<picture::Change> confirmPrinted(const VerbContext& context, const definitions::PrintedKey& key,
                                             const ReadInManual& read);

}  // namespace wm::verbs

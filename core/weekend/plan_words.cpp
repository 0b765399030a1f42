// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/weekend/plan_words.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "core/weekend/step_words.h"

namespace wm::weekend {

using base::Phrase;
using base::phrase;

namespace {

std::string listed(const std::vector<std::string>& names) {
    return fmt::format("{}", fmt::join(names, ", "));
}

Phrase andThen(Phrase said, Phrase next) {
    return phrase("Plan", "%1 %2").arg(std::move(said)).arg(std::move(next));
}

// Of a condition, in which nothing comes off, nothing goes back on.
std::string backOn(const Stop& stop) {
    std::vector<std::string> names;
    for (const std::string& step : stop.closed) {
        if (!standingOf(step).empty())
            continue;
        const std::string parts = partsOf(step);
        names.push_back(parts.empty() ? step : parts);
    }
    return listed(names);
}

// Nobody wheels it about with an axle cracked loose.
Phrase firstWords(const Stop& stop) {
    const std::string parts = backOn(stop);
    if (stop.isTight())
        return parts.empty() ? phrase("Plan", "Safe to stop here.")
                             : phrase("Plan", "Safe to stop here. Back on: %1.").arg(parts);
    return parts.empty() ? phrase("Plan", "You can stop here, on the stand only.")
                         : phrase("Plan", "You can stop here, on the stand only. Back on: %1.").arg(parts);
}

Phrase undoneWords(const Stop& stop) {
    Phrase said = firstWords(stop);
    std::vector<std::string> parts;
    for (const std::string& step : stop.off) {
        const std::string standing = standingOf(step);
        if (standing.empty())
            parts.push_back(step);
        else if (stop.isTight())
            said = andThen(std::move(said), phrase("Plan", "Still on the %1.").arg(standing));
    }
    if (!parts.empty())
        said = andThen(std::move(said),
                       phrase("Plan", "Still: %1.").arg(fmt::format("{}", fmt::join(parts, "; "))));
    for (const std::string& what : stop.cracked)
        said = andThen(std::move(said),
                       phrase("Plan", "Cracked loose, not to be ridden or wheeled: %1.").arg(what));
    if (!stop.loose.empty())
        said = andThen(std::move(said),
                       phrase("Plan", "Loose, not to be ridden or wheeled: %1.").arg(listed(stop.loose)));
    if (!stop.left.empty())
        said = andThen(
            std::move(said),
            phrase("Plan", "Not in this plan, for it waits for what is away: %1.").arg(listed(stop.left)));
    return said;
}

Phrase closedWords(const Stop& stop) {
    return stop.isElseWhole
               ? phrase("Plan", "Safe to stop here: the machine is whole")
               : phrase("Plan",
                        "Safe to stop here: all that this work opened is closed; the machine is not whole");
}

Phrase stopWords(const Stop& stop) {
    const bool isClosed = stop.isClosed();
    Phrase said = isClosed ? closedWords(stop) : undoneWords(stop);
    if (!stop.cures)
        return said;
    Phrase cures =
        phrase("Plan", "Not ridden before the thread-locker has cured: 24 h, unless its label says less");
    return isClosed ? phrase("Plan", "%1. %2").arg(std::move(said)).arg(std::move(cures))
                    : andThen(std::move(said), std::move(cures));
}

}  // namespace

Phrase actPhrase(const Act& act) {
    if (act.kind == ActKind::SafeStop)
        return stopWords(act.stop);
    if (act.kind == ActKind::Wait)
        return phrase("Plan", "Wait until the engine is cold, hands off");
    if (act.kind == ActKind::Run && act.doing.empty())
        return act.stop.isElseWhole
                   ? phrase("Plan", "Run the engine until it is warm, outside")
                   : phrase("Plan",
                            "Run the engine until it is warm, outside; not before what else is off it or "
                            "hand-tight is closed");
    return {{}, act.text};
}

}  // namespace wm::weekend

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/book/book_parts.h"
#include "core/book/round.h"

// How surely a machine gets to the flag: as it is, with all that is listed done, and with what is picked
// done.

namespace wm::book {

using outlook::StandingKind;

namespace {

/// The tasks of one machine, counted and sorted by what their chances are asked for.
struct Sorted {
    outlook::Chances counts{};
    std::vector<outlook::Watched> watched{};   ///< not yet due
    std::vector<outlook::Watched> rest{};      ///< ... and not likely before the event
    std::vector<outlook::Watched> unpicked{};  ///< ... and not picked
    bool isOverLeft = false;                   ///< something is over and not picked, allowed or not

    void add(const DueLine& line, outlook::DuePoint point) {
        counts.picked += line.picked;
        const bool isLeft = !line.picked;
        if (line.standing.kind == StandingKind::NoRecord) {
            ++counts.noRecord;
        } else if (line.standing.kind == StandingKind::Overdue ||
                   line.standing.kind == StandingKind::MayBeOver) {
            ++(line.standing.kind == StandingKind::Overdue ? counts.dueNow : counts.mayBeOver);
            counts.leftOver += isLeft;
            isOverLeft = isOverLeft || isLeft;
        } else if (line.standing.kind != StandingKind::NothingFitted) {
            const bool isListed = line.standing.kind == StandingKind::BeforeEvent;
            counts.beforeEvent += isListed;
            counts.leftBefore += isListed && isLeft;
            isOverLeft = isOverLeft || (point.isNow && isLeft);
            if (!point.isNow)
                watch({line.task->task, line.task->consequence, std::move(point)}, isListed, isLeft);
        }
    }

  private:
    void watch(outlook::Watched task, bool isListed, bool isLeft) {
        if (!isListed)
            rest.push_back(task);
        if (isLeft)
            unpicked.push_back(task);
        watched.push_back(std::move(task));
    }
};

}  // namespace

const outlook::Chances& Book::chances(MachineId machine) const {
    return parts_->chances.get(machine, [&] { return chancesOf(machine); });
}

outlook::Chances Book::chancesOf(MachineId machine) const {
    Sorted sorted;
    for (const DueLine& line : due(machine)) {
        if (line.deferral != nullptr)
            ++sorted.counts.putOff;
        else if (isOnlyOfTheRound(line))
            ++sorted.counts.round;
        else
            sorted.add(line, outlook::duePointOf(*line.task, line.countdown, ahead(machine)));
    }
    const auto drawn = [&](const std::vector<outlook::Watched>& tasks) {
        return outlook::chancesOf(tasks, odds(machine), outlook::flagOf(ahead(machine)));
    };
    const outlook::Chances all = drawn(sorted.watched);
    outlook::Chances chances = sorted.counts;
    chances.event = all.event;
    chances.until = all.until;
    chances.trust = all.trust;
    chances.clear = all.clear;
    chances.first = all.first;
    chances.firstShare = all.firstShare;
    chances.inHand = all.inHand;
    const outlook::Chances rest = sorted.rest.size() == sorted.watched.size() ? all : drawn(sorted.rest);
    chances.clearOfRest = rest.clear;
    chances.firstOfRest = rest.first;
    chances.firstShareOfRest = rest.firstShare;
    if (chances.picked > 0 && !sorted.isOverLeft)
        chances.clearOfUnpicked =
            sorted.unpicked.size() == sorted.watched.size() ? all.clear : drawn(sorted.unpicked).clear;
    return chances;
}

}  // namespace wm::book

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/machine/season_of.h"

#include <algorithm>
#include <map>
#include <set>
#include <utility>

#include "core/book/round.h"
#include "ui/drawing/mark_of.h"
#include "ui/words/figures.h"
#include "ui/words/part_words.h"
#include "ui/words/standing_words.h"
#include "ui/words/tr.h"

namespace wm::ui {

namespace {

constexpr unsigned kMostBars = 3;
constexpr unsigned kMostGroups = 5;
constexpr int kDaysBehind = 7;
constexpr int kLeastDaysAhead = 56;
constexpr int kMostDaysAhead = 140;

QString overdueWords(const QString& task, const QString& howFar) {
    return tr("%1: overdue, %2").arg(task, howFar);
}

QString mayBeOverWords(const QString& task, const QString& howFar) {
    return tr("%1: %2").arg(task, howFar);
}

QString aheadWords(const QString& task, const QString& howFar, const QString& day) {
    return tr("%1: %2, about %3").arg(task, howFar, day);
}

std::optional<SeasonBar> barOf(const book::DueLine& line, calendar::Date today) {
    const auto& standing = line.standing;
    const bool mayBeOver = standing.kind == outlook::StandingKind::MayBeOver;
    const bool isOver = mayBeOver || standing.kind == outlook::StandingKind::Overdue;
    if (standing.kind == outlook::StandingKind::NoRecord || line.deferral != nullptr ||
        (!standing.likely && !isOver))
        return std::nullopt;
    const auto likely = isOver ? today : *standing.likely;
    SeasonBar bar{text(line.task->name),
                  standing.early.value_or(likely),
                  likely,
                  standing.late.value_or(likely),
                  markOf(line),
                  {}};
    if (isOver)
        bar.early = bar.late = today;
    bar.words = mayBeOver ? mayBeOverWords(bar.label, howFar(line, today))
                : isOver  ? overdueWords(bar.label, howFar(line, today))
                          : aheadWords(bar.label, howFar(line, today), dayWords(likely, today));
    return bar;
}

void keepTheFirst(SeasonGroup& group) {
    std::stable_sort(group.bars.begin(), group.bars.end(),
                     [](const SeasonBar& a, const SeasonBar& b) { return a.likely < b.likely; });
    if (group.bars.size() > kMostBars)
        group.bars.resize(kMostBars);
}

std::vector<SeasonGroup> groupsOf(const book::Book& book, std::optional<MachineId> only) {
    std::map<QString, SeasonGroup> byName;
    for (const auto* machine : book.machines()) {
        if (only && *only != machine->id)
            continue;
        for (const auto& line : book.due(machine->id)) {
            const auto bar = barOf(line, book.today());
            if (!bar || book::isOnlyOfTheRound(line))
                continue;
            const QString name = only ? partWords(*line.task) : text(machine->name);
            auto& group = byName[name];
            group.name = name;
            group.bars.push_back(*bar);
        }
    }
    std::vector<SeasonGroup> groups;
    for (auto& [name, group] : byName) {
        keepTheFirst(group);
        groups.push_back(std::move(group));
    }
    if (only)
        std::stable_sort(groups.begin(), groups.end(), [](const SeasonGroup& a, const SeasonGroup& b) {
            return a.bars.front().likely < b.bars.front().likely;
        });
    if (groups.size() > kMostGroups)
        groups.resize(kMostGroups);
    return groups;
}

}  // namespace

Season seasonOf(const book::Book& book, std::optional<MachineId> machine) {
    const auto today = book.today();
    Season season{
        today.plusDays(-kDaysBehind), today.plusDays(kLeastDaysAhead), today, {}, groupsOf(book, machine)};
    std::set<std::int64_t> seen;
    for (const auto* each : book.machines()) {
        if (machine && *machine != each->id)
            continue;
        for (const auto& event : book.ahead(each->id).events) {
            if (event.first - today > kMostDaysAhead || !seen.insert(event.id.value()).second)
                continue;
            season.events.push_back({event.first, event.last, text(event.name)});
            season.last = std::max(season.last, event.last.plusDays(kDaysBehind));
        }
    }
    std::sort(season.events.begin(), season.events.end(),
              [](const SeasonEvent& a, const SeasonEvent& b) { return a.first < b.first; });
    return season;
}

}  // namespace wm::ui

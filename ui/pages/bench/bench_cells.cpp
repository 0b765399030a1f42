// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/bench/bench_cells.h"

#include <algorithm>
#include <map>
#include <set>
#include <utility>

#include "core/book/round.h"
#include "core/book/state.h"
#include "core/book/urgency.h"
#include "ui/drawing/mark_of.h"
#include "ui/words/chance_words.h"
#include "ui/words/figures.h"
#include "ui/words/standing_words.h"
#include "ui/words/state_words.h"
#include "ui/words/tr.h"

namespace wm::ui {

namespace {

using Kind = BenchCell::Kind;
using Ride = BenchCell::Ride;

std::vector<BenchCell>& in(BenchColumn& column, Band band) {
    return column[static_cast<std::size_t>(band)];
}

bool fallsDue(const book::DueLine& line) {
    const auto urgency = book::urgencyOf(line);
    return urgency == book::Urgency::Must || urgency == book::Urgency::Should;
}

BenchCell jobCell(const book::DueLine& line, calendar::Date today) {
    BenchCell cell;
    cell.kind = Kind::Job;
    cell.machine = line.machine;
    cell.words = text(line.task->name);
    cell.shortWords = text(line.task->shortName);
    cell.far = howFar(line, today);
    // Of what is due in any case the chance says nothing.
    if (const auto& chance = line.standing.chance; chance && *chance >= 0.01 && *chance < 1)
        cell.beside = chanceWords(*chance);
    cell.why = consequenceWords(line.task->consequence);
    cell.mark = markOf(line);
    cell.picked = line.picked;
    cell.unconfirmed = !line.task->confirmed && !line.task->limits.empty() && !line.countdown.noRecord;
    cell.task = line.task->task;
    if (line.standing.kind == outlook::StandingKind::MayBeOver)
        cell.when = narrowingWords(line, today);
    else if (line.standing.likely && line.standing.kind != outlook::StandingKind::Overdue)
        cell.when = tr("about %1").arg(dayWords(*line.standing.likely, today));
    if (line.deferral != nullptr) {
        cell.beside.clear();
        cell.far = line.deferral->untilDate ? tr("until %1").arg(dayWords(*line.deferral->untilDate, today))
                   : line.deferral->untilHours ? tr("until %1").arg(hoursWords(*line.deferral->untilHours))
                                               : tr("no end");
        cell.when = text(line.deferral->reason);
    }
    return cell;
}

Band bandOf(book::Urgency urgency) {
    switch (urgency) {
        case book::Urgency::Must:
            return Band::Must;
        case book::Urgency::Should:
            return Band::Should;
        case book::Urgency::CanWait:
            return Band::CanWait;
        case book::Urgency::NeverRecorded:
            return Band::NeverRecorded;
        case book::Urgency::PutOff:
            break;
    }
    return Band::PutOff;
}

BenchCell wordsCell(MachineId machine, const QString& words) {
    BenchCell cell;
    cell.kind = Kind::Words;
    cell.machine = machine;
    cell.words = words;
    return cell;
}

// Nothing can fall due, and that is no good sign.
BenchCell noTasksCell(MachineId machine) {
    BenchCell cell = wordsCell(machine, tr("no tasks yet: Enter chooses a schedule"));
    cell.kind = Kind::NoTasks;
    return cell;
}

std::vector<BenchCell> untilThen(const book::Book& book, MachineId machine) {
    const auto& chances = book.chances(machine);
    std::vector<BenchCell> cells;
    for (const QString& words : {countedWords(chances), restWords(chances)})
        if (!words.isEmpty())
            cells.push_back(wordsCell(machine, words));
    if (const QString picked = pickedWords(chances); !picked.isEmpty())
        cells.push_back(wordsCell(machine, picked));
    if (const QString first = firstToGoWords(book, chances); !first.isEmpty())
        cells.push_back(wordsCell(machine, first));
    if (const QString trust = trustWords(chances.trust); !trust.isEmpty())
        cells.push_back(wordsCell(machine, trust));
    return cells;
}

// A re-check that a failed tool asks for stands with what is in doubt: confirming it settles both.
std::set<std::string> jointsInDoubt(const book::Book& book, MachineId machine) {
    std::set<std::string> codes;
    for (const auto& doubt : book::stateOf(book, machine).doubts)
        for (const JointId joint : doubt.joints)
            if (const auto* version = book.joint(joint); doubt.why == book::Doubting::Wrench && version)
                codes.insert(version->code);
    return codes;
}

void addFollowUps(BenchColumn& column, const book::Book& book, MachineId machine) {
    const auto doubted = jointsInDoubt(book, machine);
    for (const auto& follow : book.followUps(machine)) {
        if (!follow.due || doubted.contains(follow.joint))
            continue;
        BenchCell cell;
        cell.kind = Kind::FollowUp;
        cell.machine = machine;
        cell.words = text(follow.rule.what);
        cell.beside = tr("since %1").arg(dayWords(follow.since, book.today()));
        cell.when = tr("after %1").arg(text(follow.because));
        cell.origin = follow.origin;
        for (const auto* task : book.tasks(machine))
            if (!follow.rule.code.empty() && task->code == follow.rule.code)
                cell.task = task->task;
        in(column, Band::CheckAgain).push_back(cell);
    }
}

BenchCell gapCell(const book::Book& book, MachineId machine, const book::Gap& gap) {
    BenchCell cell = wordsCell(machine, text(gap.position));
    cell.ride = gap.isDoubtful ? Ride::NotUnseen : Ride::No;
    cell.far = gapSinceWords(book, gap);
    cell.when = gap.isDoubtful ? tr("is it needed?") : text(gap.where).simplified();
    return cell;
}

void addOpenThings(BenchColumn& column, const book::Book& book, MachineId machine) {
    const auto today = book.today();
    const auto state = book::stateOf(book, machine);
    for (const auto& gap : state.gaps)
        in(column, Band::NotFitted).push_back(gapCell(book, machine, gap));
    for (const auto& joint : state.handTight) {
        BenchCell cell;
        cell.kind = Kind::Joint;
        cell.ride = Ride::No;
        cell.machine = machine;
        cell.words = text(joint.joint->name);
        cell.far = tr("since %1").arg(dayWords(joint.state.since, today));
        cell.joint = joint.joint->joint;
        in(column, Band::HandTight).push_back(cell);
    }
    for (const auto& doubt : state.doubts) {
        BenchCell cell = wordsCell(machine, doubtedWords(book, doubt));
        cell.far = shortDoubtWords(doubt);
        cell.ride = Ride::NotUnseen;
        if (!doubt.joints.empty()) {
            cell.kind = Kind::Joint;
            cell.joint = doubt.joints.front();
        }
        in(column, Band::InDoubt).push_back(cell);
    }
    for (const auto& open : book.snags(machine)) {
        BenchCell cell;
        cell.kind = Kind::Snag;
        cell.machine = machine;
        cell.words = text(open.snag->what);
        cell.far =
            open.snag->wish == upkeep::SnagWish::Watch ? tr("watch") : dayWords(open.snag->date, today);
        cell.picked = open.picked;
        cell.snag = open.snag->id;
        if (open.deferral != nullptr && open.deferral->untilDate)
            cell.far = tr("until %1").arg(dayWords(*open.deferral->untilDate, today));
        in(column, open.deferral != nullptr ? Band::PutOff : Band::Snags).push_back(cell);
    }
}

using Needed = std::map<StockLineId, std::int64_t>;

Needed neededBy(const book::Book& book, MachineId machine) {
    Needed needed;
    for (const auto& line : book.due(machine)) {
        if (!fallsDue(line) && !line.picked)
            continue;
        for (const auto& kit : line.task->kit)
            if (kit.line && !kit.onlyIfNeeded)
                needed[*kit.line] += kit.amount;
    }
    return needed;
}

// Lines of the shelf that this machine needs and that all machines together would run short of.
void addOrders(BenchColumn& column, const book::Book& book, MachineId machine,
               const std::vector<MachineId>& all) {
    Needed total;
    for (const auto each : all)
        for (const auto& [line, amount] : neededBy(book, each))
            total[line] += amount;
    const auto& events = book.ahead(machine).events;
    for (const auto& [id, amount] : neededBy(book, machine)) {
        const auto* hand = book.onHand(id);
        const auto* line = book.ledger().find<stock::StockLine>(id);
        const std::int64_t missing = total[id] - (hand != nullptr ? hand->usable + hand->onOrder : 0);
        if (missing <= 0 || line == nullptr)
            continue;
        BenchCell cell;
        cell.kind = Kind::Words;
        cell.machine = machine;
        cell.words = QStringLiteral("%1 %2").arg(text(line->name), amountWords(missing, line->unit));
        if (line->leadDays && !events.empty()) {
            const auto by = events.front().first.plusDays(-static_cast<std::int32_t>(*line->leadDays) - 1);
            cell.far =
                by < book.today() ? tr("too late to order") : tr("by %1").arg(dayWords(by, book.today()));
        }
        in(column, Band::ToOrder).push_back(cell);
    }
}

}  // namespace

QString bandWords(Band band) {
    static constexpr const char* words[kBands] = {
        QT_TR_NOOP("until then"),     QT_TR_NOOP("not fitted"),  QT_TR_NOOP("hand-tight"),
        QT_TR_NOOP("in doubt"),       QT_TR_NOOP("must"),        QT_TR_NOOP("check again"),
        QT_TR_NOOP("should"),         QT_TR_NOOP("each outing"), QT_TR_NOOP("can wait"),
        QT_TR_NOOP("never recorded"), QT_TR_NOOP("put off"),     QT_TR_NOOP("snags"),
        QT_TR_NOOP("to order")};
    return tr(words[static_cast<std::size_t>(band)]);
}

BenchColumn benchColumn(const book::Book& book, MachineId machine, const std::vector<MachineId>& all) {
    BenchColumn column(kBands);
    in(column, Band::UntilThen) = untilThen(book, machine);
    for (const auto& line : book.due(machine)) {
        // Neither in hand nor to be done: the place has no clock, and stands among what is not fitted.
        if (line.standing.kind == outlook::StandingKind::NothingFitted)
            continue;
        const Band band =
            fallsDue(line) && book::isOnlyOfTheRound(line) ? Band::Round : bandOf(book::urgencyOf(line));
        in(column, band).push_back(jobCell(line, book.today()));
    }
    // The book's order is by time. Where room is short the last ones are but counted, so what is over goes
    // before what is not, safety first and what was measured to be at its limit.
    const auto rank = [&book](const BenchCell& cell) {
        const auto* line = cell.task ? book.dueLine(*cell.task) : nullptr;
        const bool isSafety = line != nullptr && upkeep::isSafety(line->task->consequence);
        const bool isMeasured = line != nullptr && line->countdown.value;
        const auto is = [&](MarkState::Kind kind) { return cell.mark && cell.mark->kind == kind; };
        const bool isOver = is(MarkState::Kind::Overdue) || (isSafety && is(MarkState::Kind::MayBeOver));
        return (isOver ? 0 : 2) + (isSafety || isMeasured ? 0 : 1);
    };
    for (const Band band : {Band::Must, Band::Should})
        std::stable_sort(in(column, band).begin(), in(column, band).end(),
                         [&rank](const BenchCell& a, const BenchCell& b) { return rank(a) < rank(b); });
    if (book.tasks(machine).empty())
        in(column, Band::Must).push_back(noTasksCell(machine));
    addFollowUps(column, book, machine);
    addOpenThings(column, book, machine);
    addOrders(column, book, machine, all);
    return column;
}

}  // namespace wm::ui

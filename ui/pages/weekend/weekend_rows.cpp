// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/weekend/weekend_rows.h"

#include <QStringList>
#include <algorithm>

#include "core/book/urgency.h"
#include "core/weekend/plan_words.h"
#include "core/weekend/step_words.h"
#include "ui/drawing/mark_of.h"
#include "ui/theme/tokens.h"
#include "ui/words/error_words.h"
#include "ui/words/figures.h"
#include "ui/words/speech.h"
#include "ui/words/standing_words.h"
#include "ui/words/tr.h"

namespace wm::ui {

namespace {

using weekend::ActKind;

constexpr unsigned kHowFar = 3;

QString kitMark(const book::KitState& kit) {
    if (!kit.missing.empty())
        return tr("short");
    return kit.complete() ? tr("ok") : tr("look");
}

Cell inCell(bool picked) {
    return {.text = picked ? tr("in") : QString(), .sort = picked ? 0 : 1};
}

// Where a row stands among those that are not in yet: what is due before what was found, and last what can
// wait, is only watched or was put off.
enum Turn : int { SafetyFound, Due, Found, Later, PutOff };
constexpr int kRanks = 100'000;

Turn turnOf(const book::DueLine& line) {
    switch (book::urgencyOf(line)) {
        case book::Urgency::Must:
        case book::Urgency::Should:
            return Due;
        case book::Urgency::PutOff:
            return PutOff;
        case book::Urgency::NeverRecorded:
        case book::Urgency::CanWait:
            break;
    }
    return Later;
}

Turn turnOf(const book::OpenSnag& open) {
    if (open.deferral != nullptr)
        return PutOff;
    if (open.snag->wish == upkeep::SnagWish::Watch)
        return Later;
    return upkeep::isSafety(open.snag->consequence) ? SafetyFound : Found;
}

// A name that would need more lines than a row has is said short.
QString nameOf(const upkeep::TaskVersion& task) {
    constexpr qsizetype kMostLetters = 40;
    const QString name = text(task.name);
    return name.size() <= kMostLetters || task.shortName.empty() ? name : text(task.shortName);
}

TableRow taskRow(const book::Book& book, const book::DueLine& line, const Tokens& tokens, int rank) {
    const auto* machine = book.ledger().find<items::Machine>(line.machine);
    const auto kit = book::kitState(book, *line.task);
    return {.id = line.task->task.value(),
            .cells = {inCell(line.picked),
                      {.text = nameOf(*line.task), .icon = markIcon(markOf(line), tokens)},
                      {.text = machine == nullptr ? QString() : text(machine->name), .pencil = true},
                      {.text = howFar(line, book.today()), .sort = turnOf(line) * kRanks + rank},
                      {.text = QString::number(line.task->minutes.count()),
                       .sort = static_cast<int>(line.task->minutes.count()),
                       .figure = true},
                      {.text = kitMark(kit), .pencil = kit.missing.empty()}},
            .toolTip = consequenceWords(line.task->consequence) + QLatin1Char('\n') + kitWords(kit)};
}

TableRow snagRow(const book::Book& book, const book::OpenSnag& open) {
    const auto* machine = book.ledger().find<items::Machine>(open.snag->machine);
    return {.id = open.snag->id.value(),
            .cells = {inCell(open.picked),
                      {.text = tr("Snag: %1").arg(text(open.snag->what))},
                      {.text = machine == nullptr ? QString() : text(machine->name), .pencil = true},
                      {.text = tr("found %1").arg(dayWords(open.snag->date, book.today())),
                       .sort = turnOf(open) * kRanks},
                      {.text = QString(), .figure = true},
                      {}},
            .toolTip = consequenceWords(open.snag->consequence)};
}

// Of the line in all its machines, from 1: the same step comes off and goes on.
std::int64_t idOf(std::size_t machine, std::size_t act) {
    constexpr std::int64_t kMostActs = 100'000;
    return static_cast<std::int64_t>(machine) * kMostActs + static_cast<std::int64_t>(act) + 1;
}

TableRow actRow(const book::Book& book, MachineId machine, const weekend::Act& act, QString clock,
                std::int64_t id) {
    const bool stop = act.kind == ActKind::SafeStop;
    const QString minutes = act.minutes.count() > 0 ? QString::number(act.minutes.count()) : QString();
    return {.id = id,
            .cells = {{.text = stop ? QString() : std::move(clock), .figure = true},
                      {.text = actWords(book, machine, act), .pencil = stop},
                      {.text = minutes, .figure = true}}};
}

// The line at which the window is over: what stands below it is too much.
TableRow endRow(const weekend::WorkWindow& window) {
    return {.cells = {{.text = QString::fromStdString(units::timeOfDayText(window.endsAt)),
                       .figure = true,
                       .over = true},
                      {.text = tr("The work window ends: what follows is too much"), .over = true},
                      {}}};
}

}  // namespace

QString actWords(const book::Book& book, MachineId machine, const weekend::Act& act) {
    const auto* step = act.step.empty() ? nullptr : book.step(machine, act.step);
    const QString name = step == nullptr ? text(act.text) : text(step->name);
    switch (act.kind) {
        case ActKind::BreakLoose:
            return tr("Crack loose first: %1").arg(text(act.text));
        case ActKind::Off:
            return name;
        case ActKind::Job:
        case ActKind::Run:
        case ActKind::Wait:
        case ActKind::Do:
            return words(weekend::actPhrase(act));
        case ActKind::Crack:
            return tr("Crack loose: %1").arg(text(act.text));
        case ActKind::Torque:
            return tr("Torque: %1").arg(text(act.text));
        case ActKind::On:
            return step == nullptr ? name : words(weekend::refitPhrase(step->name));
        case ActKind::SafeStop:
            break;
    }
    return words(weekend::actPhrase(act));
}

std::vector<TableRow> wantsDoing(const book::Book& book, std::optional<MachineId> machine,
                                 const QPalette& palette) {
    const Tokens tokens = tokensFor(palette);
    std::vector<TableRow> picked;
    std::vector<TableRow> rest;
    for (const items::Machine* card : book.machines()) {
        if (machine && *machine != card->id)
            continue;
        int rank = 0;
        for (const book::DueLine& line : book.due(card->id))
            (line.picked ? picked : rest).push_back(taskRow(book, line, tokens, rank++));
        for (const book::OpenSnag& open : book.snags(card->id))
            (open.picked ? picked : rest).insert((open.picked ? picked : rest).begin(), snagRow(book, open));
    }
    std::stable_sort(rest.begin(), rest.end(), [](const TableRow& a, const TableRow& b) {
        return a.cells[kHowFar].sort.toInt() < b.cells[kHowFar].sort.toInt();
    });
    picked.insert(picked.end(), rest.begin(), rest.end());
    return picked;
}

std::vector<TableRow> workingOrder(const book::Book& book, const book::Evening& evening) {
    std::vector<TableRow> rows;
    units::Minutes at{};
    bool isOver = false;
    for (std::size_t each = 0; each < evening.machines.size(); ++each) {
        const book::MachineWork& work = evening.machines[each];
        const auto* machine = book.ledger().find<items::Machine>(work.machine);
        if (evening.machines.size() > 1 && machine != nullptr)
            rows.push_back({.cells = {{}, {.text = text(machine->name).toUpper(), .pencil = true}, {}}});
        if (!work.plan) {
            rows.push_back({.cells = {{}, {.text = wordsFor(work.plan.error())}, {}}});
            continue;
        }
        for (std::size_t line = 0; line < work.plan->acts.size(); ++line) {
            const weekend::Act& act = work.plan->acts[line];
            const units::Minutes when = at + act.starts;
            if (evening.window != nullptr && !isOver &&
                evening.window->startsAt + when + act.minutes > evening.window->endsAt) {
                rows.push_back(endRow(*evening.window));
                isOver = true;
            }
            const QString clock =
                evening.window != nullptr
                    ? QString::fromStdString(units::timeOfDayText(evening.window->startsAt + when))
                    : QLatin1Char('+') + QString::fromStdString(units::timeOfDayText(when));
            rows.push_back(actRow(book, work.machine, act, clock, idOf(each, line)));
        }
        at += work.plan->work;
    }
    return rows;
}

const weekend::StepVersion* stepAt(const book::Book& book, const book::Evening& evening, std::int64_t row) {
    for (std::size_t each = 0; each < evening.machines.size(); ++each) {
        const book::MachineWork& work = evening.machines[each];
        for (std::size_t line = 0; work.plan && line < work.plan->acts.size(); ++line)
            if (idOf(each, line) == row)
                return book.step(work.machine, work.plan->acts[line].step);
    }
    return nullptr;
}

QString kitWords(const book::KitState& kit) {
    if (kit.complete())
        return tr("kit ok");
    if (kit.missing.empty())
        return tr("kit not on the shelf list");
    const auto& first = kit.missing.front();
    QString words = tr("short: %1 %2").arg(text(first.what), amountWords(first.missing, first.unit));
    if (kit.missing.size() > 1)
        words += tr(" and %1 more").arg(kit.missing.size() - 1);
    return words;
}

QString fitWords(const book::Evening& evening) {
    const auto work = evening.work.count();
    if (evening.window == nullptr)
        return work == 0 ? QString() : tr("%1 min").arg(work);
    const auto whole = (evening.window->endsAt - evening.window->startsAt).count();
    const auto elsewhere = evening.elsewhere.count();
    const QString taken = elsewhere == 0 ? QString::number(work)
                                         : tr("%1 here, %2 on other machines,").arg(work).arg(elsewhere);
    if (evening.left->count() < 0)
        return tr("%1 of %2 min: %3 too many").arg(taken).arg(whole).arg(-evening.left->count());
    return tr("%1 of %2 min: %3 free").arg(taken).arg(whole).arg(evening.left->count());
}

QString alsoOpenWords(const book::Evening& evening) {
    QStringList words;
    for (const book::MachineWork& work : evening.machines)
        for (const book::DueLine* line : work.alsoOpen)
            if (words.size() < 4)
                words += tr("%1 (%2 min)")
                             .arg(text(line->task->name), QString::number(line->task->minutes.count()));
    return words.isEmpty()
               ? QString()
               : tr("While you are in there, nothing more to take off: %1").arg(words.join(tr(", ")));
}

}  // namespace wm::ui

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/machine/fitted.h"

#include <algorithm>

#include "core/book/state.h"
#include "ui/words/figures.h"
#include "ui/words/standing_words.h"
#include "ui/words/state_words.h"
#include "ui/words/tr.h"

namespace wm::ui {

namespace {

FittedNode* addTo(FittedNode& parent) {
    parent.children.push_back(std::make_unique<FittedNode>());
    parent.children.back()->parent = &parent;
    return parent.children.back().get();
}

// The task on this item that has used up most of its round.
const book::DueLine* governing(const book::Book& book, MachineId machine, ItemId item) {
    const book::DueLine* most = nullptr;
    for (const auto& line : book.due(machine)) {
        if (line.item != item || !line.countdown.governing || line.countdown.noRecord)
            continue;
        if (most == nullptr || line.countdown.used > most->countdown.used)
            most = &line;
    }
    return most;
}

void describe(FittedNode& node, const book::Book& book, ItemId id, std::optional<MachineId> machine) {
    const auto* item = book.ledger().find<items::Item>(id);
    node.id = id;
    node.machine = machine;
    node.item = item != nullptr ? text(item->name) : QString();
    node.life = hoursWords(book.life(id).hours);
    const auto* line = machine ? governing(book, *machine, id) : nullptr;
    if (line == nullptr)
        return;
    const auto* limit = book::decidingLimit(*line);
    node.task = line->task->task;
    node.governs = QStringLiteral("%1: %2").arg(text(line->task->name), howFar(*line, book.today()));
    node.stick = levelsOf(*limit);
}

void addChildren(FittedNode& parent, const book::Book& book, ItemId id, std::optional<MachineId> machine) {
    for (const auto& [position, child] : book.fittings().on(id, calendar::Moment{book.today()})) {
        auto* node = addTo(parent);
        node->place = text(position);
        node->isFitted = true;
        describe(*node, book, child, machine);
        addChildren(*node, book, child, machine);
    }
}

// What is off the machine stands before what is on it.
void addGaps(FittedNode& parent, const book::Book& book, MachineId machine) {
    for (const book::Gap& gap : book::stateOf(book, machine).gaps) {
        auto* node = addTo(parent);
        node->place = text(gap.position);
        node->item = tr("nothing fitted");
        node->governs = gapSinceWords(book, gap);
        node->machine = machine;
        node->id = gap.item;
        node->isGap = true;
    }
}

void addMachine(FittedNode& root, const book::Book& book, const items::Machine& machine) {
    auto* node = addTo(root);
    node->place = text(machine.name);
    node->machine = machine.id;
    node->life = hoursWords(book.life(machine.id).hours);
    addGaps(*node, book, machine.id);
    for (const auto& [position, item] : book.fittings().on(machine.id, calendar::Moment{book.today()})) {
        auto* child = addTo(*node);
        child->place = text(position);
        child->isFitted = true;
        describe(*child, book, item, machine.id);
        addChildren(*child, book, item, machine.id);
    }
}

void addShelf(FittedNode& root, const book::Book& book) {
    FittedNode* shelf = nullptr;
    for (const auto& item : book.ledger().all<items::Item>()) {
        const auto place = book.fittings().placeOf(item.id, calendar::Moment{book.today()});
        if (place && (place->kind == items::MoveKind::Fitted || place->kind == items::MoveKind::Retired))
            continue;
        if (shelf == nullptr) {
            shelf = addTo(root);
            shelf->place = tr("on the shelf");
        }
        auto* node = addTo(*shelf);
        node->place = place && place->kind == items::MoveKind::Away ? tr("at a workshop") : text(item.kind);
        describe(*node, book, item.id, std::nullopt);
        addChildren(*node, book, item.id, std::nullopt);
    }
}

}  // namespace

DipstickLevels levelsOf(const upkeep::LimitState& limit) {
    const double full = static_cast<double>(std::max<std::int64_t>(limit.amount + limit.limit.allowance, 1));
    const auto height = [full](std::int64_t behind) { return 1.0 - static_cast<double>(behind) / full; };
    DipstickLevels levels;
    // Nobody knows the high end: then nobody knows the low end of what is left.
    if (limit.unbounded || !limit.behind.high)
        return levels;
    levels.left = DipstickLevels::Left{height(*limit.behind.high),
                                       height(limit.behind.best.value_or(*limit.behind.high)),
                                       height(limit.behind.low)};
    levels.limitMark = 0.0;
    if (limit.limit.allowance > 0)
        levels.usualMark = static_cast<double>(limit.limit.allowance) / full;
    return levels;
}

std::unique_ptr<FittedNode> fittedOn(const book::Book& book, std::optional<MachineId> machine) {
    auto root = std::make_unique<FittedNode>();
    for (const auto* each : book.machines())
        if (!machine || *machine == each->id)
            addMachine(*root, book, *each);
    addShelf(*root, book);
    return root;
}

}  // namespace wm::ui

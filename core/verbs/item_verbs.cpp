// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/verbs/item_verbs.h"

#include <algorithm>
#include <tuple>

#include "core/definitions/sharing.h"
#include "core/picture/consistency.h"
#include "core/picture/facts.h"
#include "core/verbs/move_parts.h"
#include "core/verbs/names.h"

// People, machines and items, and where the items go.

namespace wm::verbs {

using definitions::fromOthers;
using items::MoveKind;
using picture::Garage;
using picture::RowsView;

namespace {

template <class Card>
void checkName(Checks& check, RowsView<Card> cards, const Card& card) {
    for (const Card& other : cards)
        check.that(!sameName(other.name, card.name) || other.id == card.id, Fault::Duplicate, "name",
                   card.name);
}

// The card that is there must be of this id, and the new words must differ from it.
template <class Card>
const Card* replaced(BookChecks& check, const Card& card) {
    if (card.id.isNothing())
        return nullptr;
    const Card* old = check.row<Card>("id", card.id);
    if (!check.failed())
        check.that(!(*old == card), Fault::NothingToDo, "id");
    return old;
}

// A day on which something of this machine or item already happened cannot come before its first day.
template <class Card>
void checkSince(BookChecks& check, const Ledger& ledger, const Card& card, calendar::Date today) {
    if (!check.failed())
        check.that(card.since <= today, Fault::InFuture, "since", card.since.iso(), today.iso());
    const auto first = firstFact(ledger, card.id);
    if (!check.failed() && first)
        check.that(card.since <= *first, Fault::OutOfOrder, "since", card.since.iso(), first->iso());
}

// What a machine or item that started new has behind it needs no bracket.
template <class Card>
void settlePast(Card& card) {
    if (!card.startedNew)
        return;
    card.pastLow = card.pastBest = units::Hours{};
    card.pastHigh = units::Hours{};
}

base::Phrase savedText(bool isNew, const std::string& name) {
    return (isNew ? phrase("Undo", "added %1") : phrase("Undo", "changed %1")).arg(name);
}

}  // namespace

Result<Change> nameGarage(const VerbContext& context, std::string name,
                          std::optional<calendar::Date> pinnedToday) {
    BookChecks check(context.book);
    Garage garage{.name = std::move(name), .pinnedToday = pinnedToday};
    garage.cool = context.book.ledger().garage().cool;
    checkShape(check, garage);
    check.name("name", garage.name);
    const auto& old = context.book.ledger().all<Garage>();
    check.that(old.empty() || old.front() != garage, Fault::NothingToDo, "name", garage.name);
    if (check.failed())
        return check.refusal();
    Entry entry(context.book.ledger(), context.newId);
    const auto text = phrase("Undo", "named the file %1").arg(garage.name);
    entry.put(std::move(garage));
    return std::move(entry).change(text);
}

Result<Change> savePerson(const VerbContext& context, items::Person person) {
    const bool isNew = person.id.isNothing();
    BookChecks check(context.book);
    checkShape(check, person);
    replaced(check, person);
    checkName(check, context.book.ledger().all<items::Person>(), person);
    if (check.failed())
        return check.refusal();
    Entry entry(context.book.ledger(), context.newId);
    const auto text = savedText(isNew, person.name);
    entry.put(std::move(person));
    return std::move(entry).change(text);
}

Result<Change> saveMachine(const VerbContext& context, items::Machine machine) {
    const bool isNew = machine.id.isNothing();
    BookChecks check(context.book);
    settlePast(machine);
    checkShape(check, machine);
    const auto* old = replaced(check, machine);
    checkName(check, context.book.ledger().all<items::Machine>(), machine);
    checkSince(check, context.book.ledger(), machine, context.book.today());
    if (check.failed())
        return check.refusal();
    Entry entry(context.book.ledger(), context.newId);
    auto text = savedText(isNew, machine.name);
    std::vector<fastening::JointVersion> joints;
    if (old == nullptr ||
        std::tie(old->maker, old->model, old->year) != std::tie(machine.maker, machine.model, machine.year))
        joints = fromOthers(context.book, machine);
    if (!joints.empty())
        text =
            phrase("Undo", "%1 with %n joint(s) of its model", nullptr, joints.size()).arg(std::move(text));
    const MachineId id = entry.put(std::move(machine));
    for (fastening::JointVersion& joint : joints) {
        joint.machine = id;
        joint.joint = entry.newId<JointId>();
        entry.add(std::move(joint));
    }
    return std::move(entry).change(text);
}

Result<Change> saveItem(const VerbContext& context, items::Item item) {
    const bool isNew = item.id.isNothing();
    BookChecks check(context.book);
    settlePast(item);
    checkShape(check, item);
    replaced(check, item);
    checkSince(check, context.book.ledger(), item, context.book.today());
    if (check.failed())
        return check.refusal();
    Entry entry(context.book.ledger(), context.newId);
    const auto text = savedText(isNew, item.name);
    entry.put(std::move(item));
    return std::move(entry).change(text);
}

Result<Change> addItemFitted(const VerbContext& context, items::Item item, items::Move move) {
    BookChecks check(context.book);
    Entry entry(context.book.ledger(), context.newId);
    settlePast(item);
    checkShape(check, item);
    item.id = entry.newId<ItemId>();
    move.item = item.id;
    move.kind = MoveKind::Fitted;
    move.entered = context.book.ledger().nextEntered();
    if (!check.failed())
        checkSince(check, context.book.ledger(), item, context.book.today());
    checkMove(check, context.book, move, &item);
    checkKind(check, move, item);
    if (!check.failed())
        check.take(context.book.fittings().check(move));
    if (check.failed())
        return check.refusal();
    const auto text = moveText(context.book.ledger(), move, item.name);
    entry.put(std::move(item));
    entry.add(std::move(move));
    return std::move(entry).change(text);
}

Result<Change> noteSetting(const VerbContext& context, items::Setting setting) {
    BookChecks check(context.book);
    const auto* machine = check.machineOn(setting.machine, setting.date);
    check.row<items::Item>("item", setting.item);
    checkShape(check, setting);
    if (check.failed())
        return check.refusal();
    Entry entry(context.book.ledger(), context.newId);
    const auto text =
        phrase("Undo", "noted %1 %2 on %3").arg(setting.name).arg(setting.value).arg(machine->name);
    entry.add(std::move(setting));
    return std::move(entry).change(text);
}

}  // namespace wm::verbs

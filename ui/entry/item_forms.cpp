// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/entry/item_forms.h"

#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QSignalBlocker>
#include <QStringList>
#include <algorithm>
#include <limits>
#include <memory>
#include <utility>

#include "core/book/expiry.h"
#include "core/book/fitting.h"
#include "core/book/state.h"
#include "core/items/positions.h"
#include "ui/entry/last_used.h"
#include "ui/words/figures.h"
#include "ui/words/tr.h"
#include "ui/workbench/workbench.h"

namespace wm::ui {

namespace {

using calendar::DayPart;
using calendar::Moment;
using items::MoveKind;

// "Sand wheel, rear (from Heron 250)"
QString nameOf(const book::Book& book, const book::Fitting& fitting) {
    const QString name = text(fitting.item->name);
    if (fitting.lies == MoveKind::Away)
        return tr("%1 (at a workshop)").arg(name);
    const auto* machine = fitting.on ? book.ledger().find<items::Machine>(*fitting.on) : nullptr;
    if (machine != nullptr)
        return tr("%1 (from %2)").arg(name, text(machine->name));
    return fitting.lies ? name : tr("%1 (from another item)").arg(name);
}

void offer(QComboBox* box, const book::Book& book, const items::Move& place) {
    for (const book::Fitting& fitting : book::whatFits(book, place))
        box->addItem(nameOf(book, fitting), asData(fitting.item->id));
}

// Where an item belongs, by where it sat last, else by its kind; empty if nobody can say.
std::string positionOf(const book::Book& book, const items::Item& item) {
    std::string position;
    for (const auto& spell : book.fittings().spells(item.id))
        if (spell.kind == MoveKind::Fitted && spell.machine)
            position = spell.position;
    if (position.empty() && items::needOf(item.kind) != items::Need::Unknown)
        position = items::codedPath(item.kind);
    return position;
}

const items::Item* sitsOn(const book::Book& book, const items::Move& place) {
    const auto there = book::sitsAt(book, place);
    return there ? book.ledger().find<items::Item>(*there) : nullptr;
}

std::vector<Choice<DayPart>> partsOfDay() {
    return {{DayPart::BeforeRiding, tr("before riding")}, {DayPart::AfterRiding, tr("after riding")}};
}

std::vector<Choice<items::Told>> toldOnFitting() {
    return {{items::Told::Work, tr("work: torque what holds it")},
            {items::Told::AsItWas, tr("no work, it sat there")}};
}

std::vector<Choice<items::Told>> toldOnTakingOff() {
    return {{items::Told::Work, tr("work: what holds it is loose")},
            {items::Told::AsItWas, tr("no work, it was off")}};
}

std::vector<Choice<MoveKind>> destinations() {
    return {{MoveKind::Removed, tr("the shelf")},
            {MoveKind::Away, tr("a workshop")},
            {MoveKind::Retired, tr("scrapped or sold")}};
}

// "engine/piston": the piston sits inside what sits at "engine" of the machine.
void placeAt(items::Move& move, const book::Book& book, MachineId machine, const std::string& path) {
    const auto slash = path.rfind('/');
    if (slash != std::string::npos)
        if (const auto parent =
                book.fittings().at(machine, path.substr(0, slash), Moment{move.date, move.part})) {
            move.parent = *parent;
            move.position = path.substr(slash + 1);
            return;
        }
    move.machine = machine;
    move.position = path;
}

QStringList positionsOf(const book::Book& book) {
    QStringList names;
    for (const auto* machine : book.machines())
        for (const auto* task : book.tasks(machine->id))
            if (!task->position.empty() && !names.contains(text(task->position)))
                names << text(task->position);
    return names;
}

// The machines that would be left without something for it.
QStringList leftWithout(const book::Book& book, const book::Book& then, std::optional<MachineId> fittedTo) {
    QStringList words;
    for (const items::Machine* machine : book.machines()) {
        if (machine->id == fittedTo)
            continue;
        const auto before = book::stateOf(book, machine->id).gaps;
        for (const book::Gap& gap : book::stateOf(then, machine->id).gaps)
            if (std::none_of(before.begin(), before.end(),
                             [&](const book::Gap& known) { return known.position == gap.position; }))
                words << tr("%1 is left without its %2.").arg(text(machine->name), text(gap.position));
    }
    return words;
}

// What an item brings along that is undone inside it.
QStringList comesUndone(const book::Book& then, const items::Move& move) {
    QStringList names;
    if (move.machine)
        for (const book::OpenJoint& open : book::stateOf(then, *move.machine).handTight)
            if (open.joint->position && !open.joint->position->empty() && open.state.since < move.date)
                names << text(open.joint->name);
    return names.isEmpty() ? names
                           : QStringList{tr("Hand-tight in it: %1.").arg(names.join(QStringLiteral(", ")))};
}

// Whom it leaves without, and what would not last through the machine's next event if the form were entered
// as it stands, on the book as it would be then; empty while it can't be entered.
QString endsWords(const tl::expected<store::Verb, Faults>& verb, const book::Book& book) {
    if (!verb)
        return {};
    std::int64_t id = std::numeric_limits<std::int64_t>::max() / 2;
    const auto change = (*verb)(verbs::VerbContext{book, [&id] { return ++id; }});
    if (!change)
        return {};
    const book::Book then(std::make_shared<const picture::Ledger>(book.ledger().with(*change)), book.today());
    QStringList words;
    for (const picture::Row& row : change->rows)
        if (const auto* move = std::get_if<items::Move>(&row);
            move != nullptr && move->kind == MoveKind::Fitted) {
            words << leftWithout(book, then, move->machine) << comesUndone(then, *move);
            for (const book::Expiry& expiry : book::expiriesOf(then, move->item)) {
                const QString of = tr("%1 of %2").arg(text(expiry.task), text(expiry.item));
                if (expiry.isOver)
                    words << tr("%1 is over already.").arg(of);
                else
                    words << tr("%1 falls due about %2, before %3 is over.")
                                 .arg(of, dayWords(expiry.likely.value_or(expiry.event->last), book.today()),
                                      text(expiry.event->name));
            }
        }
    words.removeDuplicates();
    return words.join(QLatin1Char(' '));
}

}  // namespace

FitForm::FitForm(Workbench& workbench, const EntryRequest& request) : EntryForm(workbench, tr("fit")) {
    machine_ = addMachine(request.machine ? request.machine : lastMachine(book()));
    position_ =
        addSuggested(QStringLiteral("position"), tr("where"), request.position, positionsOf(book()), 16);
    item_ = addBox(QStringLiteral("item"), tr("what"));
    date_ = addDay(QStringLiteral("date"), tr("day"), tr("today"), Lean::Past);
    part_ = addChoice(QStringLiteral("part"), tr("of that day"), partsOfDay(), DayPart::AfterRiding);
    name_ = addText(QStringLiteral("name"), tr("name"), QString(), 18);
    kind_ = addText(QStringLiteral("kind"), tr("kind"), QString(), 10);
    past_ = addChoice(QStringLiteral("startedNew"), tr("its past"),
                      {{Past::New, tr("new")}, {Past::Used, tr("used")}}, Past::New);
    best_ = addText(QStringLiteral("pastBest"), tr("likely hours"), QString(), 6);
    low_ = addText(QStringLiteral("pastLow"), tr("at least"), QString(), 6);
    high_ = addText(QStringLiteral("pastHigh"), tr("at most, if known"), QString(), 6);
    told_ = addChoice(QStringLiteral("told"), tr("that was"), toldOnFitting(), items::Told::Work);
    with_ = addBox(QStringLiteral("with"), tr("and with it"));
    followPlace();
    if (request.item)
        chooseIn(*item_, *request.item);
    startAt(request.position.isEmpty() ? static_cast<QWidget*>(position_) : static_cast<QWidget*>(item_));
    connect(item_, &QComboBox::currentIndexChanged, this, &FitForm::followItem);
    connect(past_, &QComboBox::currentIndexChanged, this, &FitForm::followItem);
    connect(machine_, &QComboBox::currentIndexChanged, this, &FitForm::followPlace);
    connect(position_, &QLineEdit::editingFinished, this, &FitForm::followPlace);
    connect(told_, &QComboBox::activated, this, [this] { toldIsTyped_ = true; });
    off_ = addNote(QString());
    off_->setObjectName(QStringLiteral("comesOff"));
    ends_ = addNote(QString());
    ends_->setObjectName(QStringLiteral("ends"));
    for (QComboBox* box : {item_, machine_, part_, past_, with_})
        connect(box, &QComboBox::currentIndexChanged, this, &FitForm::sayWhatEnds);
    for (QLineEdit* field : {position_, date_, best_, low_, high_})
        connect(field, &QLineEdit::editingFinished, this, &FitForm::sayWhatEnds);
    followItem();
    sayWhatEnds();
}

// What may go there is offered, and what may go with it.
void FitForm::followPlace() {
    const QSignalBlocker quiet(item_);
    const QSignalBlocker quietToo(with_);
    const auto item = chosenIfAny<ItemId>(*item_);
    const auto with = chosenIfAny<ItemId>(*with_);
    Answers read;
    const items::Move place = moveAsTyped(read);
    item_->clear();
    item_->addItem(tr("a new item"));
    offer(item_, book(), place);
    with_->clear();
    with_->addItem(tr("nothing more"));
    for (const book::Fitting& other : book::whatFits(book(), {.date = place.date, .part = place.part}))
        if (const auto position = positionOf(book(), *other.item);
            !position.empty() && position != place.position && (other.lies || other.on != place.machine))
            with_->addItem(tr("%1, %2").arg(nameOf(book(), other), text(position)), asData(other.item->id));
    // What sat there last most likely comes back.
    const auto left = place.machine ? book().fittings().leftFrom(*place.machine, typed(position_),
                                                                 Moment{place.date, place.part})
                                    : std::nullopt;
    if (item)
        chooseIn(*item_, *item);
    else if (left)
        chooseIn(*item_, left->item);
    if (with)
        chooseIn(*with_, *with);
    followItem();
}

void FitForm::sayWhatEnds() {
    Answers read;
    const items::Move move = moveAsTyped(read);
    const auto* old = read.isFine() ? sitsOn(book(), move) : nullptr;
    const bool comesOff = chosenIfAny<ItemId>(*item_) && old != nullptr && old->id != move.item;
    off_->setText(comesOff ? tr("%1 comes off, to the shelf.").arg(text(old->name)) : QString());
    off_->setVisible(comesOff);
    ends_->setText(endsWords(verb(), book()));
    ends_->setVisible(!ends_->text().isEmpty());
}

void FitForm::followItem() {
    const bool isNewHere = !chosenIfAny<ItemId>(*item_);
    const bool isUsed = isNewHere && chosenOf<Past>(*past_) == Past::Used;
    for (QWidget* field :
         {static_cast<QWidget*>(name_), static_cast<QWidget*>(kind_), static_cast<QWidget*>(past_)})
        field->parentWidget()->setVisible(isNewHere);
    for (auto* field : {best_, low_, high_})
        field->parentWidget()->setVisible(isUsed);
    with_->parentWidget()->setVisible(!isNewHere && with_->count() > 1);
    if (toldIsTyped_)
        return;
    // Something used that the file hears of for the first time most likely sat there already.
    Answers read;
    const items::Move move = moveAsTyped(read);
    const bool wasTracked = move.machine && book().fittings().leftFrom(*move.machine, move.position,
                                                                       Moment{move.date, move.part});
    const bool satThere = isNewHere ? isUsed && !wasTracked && sitsOn(book(), move) == nullptr
                                    : book::proposedTold(book(), move) == items::Told::AsItWas;
    chooseIn(*told_, satThere ? items::Told::AsItWas : items::Told::Work);
}

items::Move FitForm::moveAsTyped(Answers& read) const {
    items::Move move;
    const auto machine = read(needMachineIn(machine_));
    move.date = read(dayIn(date_, Lean::Past));
    move.part = chosenOf<DayPart>(*part_);
    move.kind = MoveKind::Fitted;
    move.told = chosenOf<items::Told>(*told_);
    if (typed(position_).empty())
        read.fault({base::Fault::Empty, "position", {}, {}});
    if (read.isFine())
        placeAt(move, book(), machine, typed(position_));
    if (const auto item = chosenIfAny<ItemId>(*item_))
        move.item = *item;
    return move;
}

items::Item FitForm::newItem(Answers& read) const {
    items::Item item;
    item.name = typed(name_);
    item.kind = typed(kind_);
    item.startedNew = chosenOf<Past>(*past_) == Past::New;
    if (item.startedNew) {
        item.pastHigh = units::Hours{};
        return item;
    }
    item.pastBest = read(hoursIn(best_)).value_or(units::Hours{});
    item.pastLow = read(hoursIn(low_)).value_or(units::Hours{});
    item.pastHigh = read(hoursIn(high_));
    return item;
}

tl::expected<store::Verb, Faults> FitForm::verb() {
    Answers read;
    const items::Move move = moveAsTyped(read);
    const auto draftOf = [&](const items::Move& each) {
        verbs::FitDraft draft{.move = each, .fromElsewhere = true};
        if (const auto* old = sitsOn(book(), each); old != nullptr && old->id != each.item)
            draft.oldGoesTo = MoveKind::Removed;
        return draft;
    };
    if (chosenIfAny<ItemId>(*item_)) {
        std::vector<verbs::FitDraft> drafts{draftOf(move)};
        const auto* with = book().ledger().find<items::Item>(chosenIfAny<ItemId>(*with_).value_or(ItemId{}));
        if (with != nullptr && read.isFine()) {
            items::Move other = move;
            other.item = with->id;
            other.parent.reset();
            other.machine = read(needMachineIn(machine_));
            other.position = positionOf(book(), *with);
            drafts.push_back(draftOf(other));
        }
        return std::move(read).answer(
            [drafts](const verbs::VerbContext& context) { return verbs::fitSet(context, drafts); });
    }
    auto item = newItem(read);
    item.since = move.date;
    return std::move(read).answer([item, move](const verbs::VerbContext& context) {
        return verbs::addItemFitted(context, item, move);
    });
}

TakeOffForm::TakeOffForm(Workbench& workbench, const EntryRequest& request)
    : EntryForm(workbench, tr("take off")), item_(request.item.value_or(ItemId{})) {
    to_ = addChoice(QStringLiteral("kind"), tr("goes to"), destinations(), MoveKind::Removed);
    date_ = addDay(QStringLiteral("date"), tr("day"), tr("today"), Lean::Past);
    part_ = addChoice(QStringLiteral("part"), tr("of that day"), partsOfDay(), DayPart::AfterRiding);
    told_ = addChoice(QStringLiteral("told"), tr("that was"), toldOnTakingOff(), items::Told::Work);
    note_ = addText(QStringLiteral("note"), tr("note: clickers, preload, gearing"), QString(), 36);
    back_ = addDay(QStringLiteral("back_on"), tr("back on"), QString(), Lean::Future);
    connect(to_, &QComboBox::currentIndexChanged, this, &TakeOffForm::followDestination);
    followDestination();
    if (const auto* item = book().ledger().find<items::Item>(item_))
        addNote(text(item->name));
}

void TakeOffForm::followDestination() {
    const bool isAway = chosenOf<MoveKind>(*to_) == MoveKind::Away;
    back_->parentWidget()->setVisible(isAway);
    note_->setPlaceholderText(isAway ? tr("at which workshop") : QString());
}

tl::expected<store::Verb, Faults> TakeOffForm::verb() {
    Answers read;
    items::Move move;
    move.item = item_;
    move.kind = chosenOf<MoveKind>(*to_);
    move.date = read(dayIn(date_, Lean::Past));
    move.part = chosenOf<DayPart>(*part_);
    move.note = typed(note_);
    move.told = chosenOf<items::Told>(*told_);
    if (move.kind == MoveKind::Away)
        move.backOn = read(dayOrNothingIn(back_, Lean::Future));
    return std::move(read).answer(
        [move](const verbs::VerbContext& context) { return verbs::moveItem(context, move); });
}

SwapForm::SwapForm(Workbench& workbench, const EntryRequest& request)
    : EntryForm(workbench, tr("swap")), old_(request.item.value_or(ItemId{})) {
    item_ = addBox(QStringLiteral("item"), tr("fit instead"));
    if (const auto place = book().fittings().placeOf(old_, Moment{book().today()}))
        for (const book::Fitting& fitting : book::whatFits(book(), {.date = book().today(),
                                                                   .machine = place->machine,
                                                                   .parent = place->parent,
                                                                   .position = place->position}))
            if (fitting.item->id != old_)
                item_->addItem(nameOf(book(), fitting), asData(fitting.item->id));
    to_ = addChoice(QStringLiteral("kind"), tr("the old one goes to"), destinations(), MoveKind::Removed);
    date_ = addDay(QStringLiteral("date"), tr("day"), tr("today"), Lean::Past);
    part_ = addChoice(QStringLiteral("part"), tr("of that day"), partsOfDay(), DayPart::AfterRiding);
    note_ = addText(QStringLiteral("note"), tr("note"), QString(), 24);
    const auto* item = book().ledger().find<items::Item>(old_);
    if (item == nullptr)
        return;
    addNote(item_->count() > 0
                ? tr("Instead of %1.").arg(text(item->name))
                : tr("Nothing else could take the place of %1. Take it off, then fit a new item.")
                      .arg(text(item->name)));
    ends_ = addNote(QString());
    ends_->setObjectName(QStringLiteral("ends"));
    connect(item_, &QComboBox::currentIndexChanged, this, &SwapForm::sayWhatEnds);
    connect(part_, &QComboBox::currentIndexChanged, this, &SwapForm::sayWhatEnds);
    connect(date_, &QLineEdit::editingFinished, this, &SwapForm::sayWhatEnds);
    sayWhatEnds();
}

void SwapForm::sayWhatEnds() {
    ends_->setText(endsWords(verb(), book()));
    ends_->setVisible(!ends_->text().isEmpty());
}

tl::expected<store::Verb, Faults> SwapForm::verb() {
    Answers read;
    items::Move move;
    move.kind = MoveKind::Fitted;
    move.date = read(dayIn(date_, Lean::Past));
    move.part = chosenOf<DayPart>(*part_);
    move.note = typed(note_);
    move.told = items::Told::Work;
    const auto item = chosenIfAny<ItemId>(*item_);
    if (item)
        move.item = *item;
    else
        read.fault({base::Fault::Empty, "item", {}, {}});
    if (const auto place = book().fittings().placeOf(old_, Moment{move.date, move.part})) {
        move.machine = place->machine;
        move.parent = place->parent;
        move.position = place->position;
    }
    return std::move(read).answer([move, to = chosenOf<MoveKind>(*to_)](const verbs::VerbContext& context) {
        return verbs::fitItem(context, {.move = move, .oldGoesTo = to, .fromElsewhere = true});
    });
}

}  // namespace wm::ui

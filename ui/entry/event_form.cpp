// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/entry/event_form.h"

#include <QCheckBox>
#include <QComboBox>
#include <QLineEdit>
#include <algorithm>

#include "ui/entry/last_used.h"
#include "ui/words/figures.h"
#include "ui/workbench/workbench.h"

namespace wm::ui {

using outlook::EventKind;

EventForm::EventForm(Workbench& workbench, const EntryRequest& request) : EntryForm(workbench, tr("event")) {
    if (request.event)
        if (const auto* event = book().ledger().find<outlook::Event>(*request.event))
            old_ = *event;
    const outlook::Event event = old_.value_or(outlook::Event{});
    name_ = addText(QStringLiteral("name"), tr("name"), text(event.name), 20);
    place_ = addText(QStringLiteral("place"), tr("place"), text(event.place), 16);
    kind_ = addChoice(QStringLiteral("kind"), tr("what"),
                      {{EventKind::Race, tr("race")}, {EventKind::Practice, tr("practice")}}, event.kind);
    first_ = addDay(QStringLiteral("first"), tr("first day"), old_ ? text(event.first.iso()) : QString(),
                    Lean::Future);
    last_ = addDay(QStringLiteral("last"), tr("last day, if later"),
                   old_ && event.last != event.first ? text(event.last.iso()) : QString(), Lean::Future);
    for (const auto* machine : book().machines()) {
        const auto isIt = [machine](const outlook::Entry& entry) { return entry.machine == machine->id; };
        const bool goes = old_ ? std::any_of(event.entries.begin(), event.entries.end(), isIt)
                               : !request.machine || *request.machine == machine->id;
        goes_.emplace_back(machine->id, addTick(QStringLiteral("entries"), text(machine->name), goes));
    }
    if (old_)
        calledOff_ = addTick(QStringLiteral("calledOff"), tr("called off"), event.calledOff);
}

tl::expected<store::Verb, Faults> EventForm::verb() {
    Answers read;
    outlook::Event event = old_.value_or(outlook::Event{});
    event.name = typed(name_);
    event.place = typed(place_);
    event.kind = chosenOf<EventKind>(*kind_);
    event.first = read(dayIn(first_, Lean::Future));
    event.last = read(dayOrNothingIn(last_, Lean::Future)).value_or(event.first);
    event.calledOff = calledOff_ != nullptr && calledOff_->isChecked();
    std::vector<outlook::Entry> entries;
    for (const auto& [machine, tick] : goes_) {
        if (!tick->isChecked())
            continue;
        outlook::Entry entry{machine, lastRider(book(), machine)};
        for (const auto& before : event.entries)
            if (before.machine == machine)
                entry = before;
        entries.push_back(entry);
    }
    event.entries = std::move(entries);
    return std::move(read).answer(
        [event](const verbs::VerbContext& context) { return verbs::saveEvent(context, event); });
}

}  // namespace wm::ui

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/verbs/past_verb.h"

#include <algorithm>
#include <set>

#include "core/base/text.h"
#include "core/items/fittings.h"
#include "core/verbs/names.h"

// What a used machine and its parts have behind them from before their first day here.

namespace wm::verbs {

namespace {

// Said last on the note.
bool standsLast(const std::string& note, const std::string& line) {
    return note == line || note.ends_with('\n' + line);
}

// The card with its past stated; what it rests on stands below what was noted before.
template <class Card>
Card withPastStated(Card card, const usage::HoursBracket& hours, std::string_view why) {
    card.startedNew = false;
    card.pastLow = hours.low;
    card.pastBest = hours.best;
    card.pastHigh = hours.high;
    const std::string reason(base::trimmed(why));
    if (!reason.empty() && !standsLast(card.note, reason))
        card.note += card.note.empty() ? reason : '\n' + reason;
    return card;
}

// Without the stated past, and without what a meter tells of the time before.
usage::HoursBracket riddenHere(const Book& book, const auto& card) {
    std::vector<usage::Atom> atoms = book.atoms(card.id);
    std::erase_if(atoms, [](const usage::Atom& atom) { return atom.kind == usage::AtomKind::Past; });
    const calendar::Moment first{card.since, calendar::DayPart::BeforeRiding};
    return usage::exposure(atoms, first, {book.today(), calendar::DayPart::AfterRiding}).hours;
}

void checkOrder(Checks& check, const usage::HoursBracket& hours) {
    check.that(hours.low >= units::Hours{0}, Fault::Negative, "past_low", units::hoursText(hours.low));
    check.that(hours.low <= hours.best, Fault::OutOfOrder, "past_best", units::hoursText(hours.best),
               units::hoursText(hours.low));
    if (hours.high)
        check.that(hours.best <= *hours.high, Fault::OutOfOrder, "past_high", units::hoursText(*hours.high),
                   units::hoursText(hours.best));
}

template <class Card>
void put(BookChecks& check, const Book& book, Entry& entry, const Card& old, const usage::HoursBracket& hours,
         std::string_view why) {
    checkOrder(check, hours);
    Card card = withPastStated(old, pastOf(hours, riddenHere(book, old)), why);
    checkShape(check, card);
    check.that(!(card == old), Fault::NothingToDo, "past_best", units::hoursText(hours.best));
    if (!check.failed())
        entry.put(std::move(card));
}

}  // namespace

usage::HoursBracket pastOf(const usage::HoursBracket& today, const usage::HoursBracket& here) {
    return items::without(today, here);
}

Result<Change> statePast(const VerbContext& context, PastDraft draft) {
    BookChecks check(context.book);
    Entry entry(context.book.ledger(), context.newId);
    const auto* machine = check.row<items::Machine>("machine", draft.machine);
    check.that(draft.hours || !draft.parts.empty(), Fault::NothingToDo, "past_best");
    if (!check.failed() && draft.hours)
        put(check, context.book, entry, *machine, *draft.hours, draft.why);
    std::set<ItemId> stated;
    for (std::size_t at = 0; at < draft.parts.size() && !check.failed(); ++at) {
        const PastDraft::Part& part = draft.parts[at];
        check.setPrefix(placeIn("parts", at, {}));
        const auto* item = check.row<items::Item>("item", part.item);
        if (item != nullptr)
            check.that(stated.insert(part.item).second, Fault::Duplicate, "item", item->name);
        if (!check.failed())
            put(check, context.book, entry, *item, part.hours, part.why);
        check.setPrefix({});
    }
    if (check.failed())
        return check.refusal();
    return std::move(entry).change(phrase("Undo", "stated what %1 had behind it").arg(machine->name));
}

}  // namespace wm::verbs

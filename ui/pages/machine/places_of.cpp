// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/machine/places_of.h"

#include <algorithm>
#include <map>

#include "core/items/places.h"
#include "ui/words/figures.h"
#include "ui/words/tr.h"

namespace wm::ui {

namespace {

using items::Stay;

constexpr int kMostDaysBack = 365;
constexpr std::size_t kMostRows = 12;

template <class Card, class Id>
QString nameOf(const book::Book& book, Id id) {
    const auto* card = book.ledger().find<Card>(id);
    return card == nullptr ? QString() : text(card->name);
}

QString lastPlace(const std::string& path) {
    return text(path.substr(path.rfind('/') + 1));
}

PlaceStay stayOf(const book::Book& book, const Stay& stay, const QString& label) {
    const auto today = book.today();
    const auto hours =
        usage::exposure(book.atoms(stay.item), stay.from, stay.to.value_or(calendar::Moment{today}));
    PlaceStay made{label, stay.from.date, std::nullopt, {}};
    if (stay.to)
        made.to = stay.to->date;
    const QString from = dayWords(stay.from.date, today);
    made.words = tr("%1 in %2 of %3, %4 to %5: %6")
                     .arg(nameOf<items::Item>(book, stay.item), text(stay.path),
                          nameOf<items::Machine>(book, stay.machine), from,
                          stay.to ? dayWords(stay.to->date, today) : tr("today"), hoursWords(hours.hours));
    return made;
}

// Where nothing ever changed there is the least to see.
void keepWhatChanged(std::vector<PlaceRow>& rows) {
    while (rows.size() > kMostRows) {
        const auto still = std::find_if(rows.rbegin(), rows.rend(),
                                        [](const PlaceRow& row) { return row.stays.size() < 2; });
        rows.erase(still == rows.rend() ? std::prev(rows.end()) : std::prev(still.base()));
    }
}

std::vector<PlaceRow> byPlace(const book::Book& book, const std::vector<Stay>& stays, MachineId machine) {
    std::map<std::string, PlaceRow> rows;
    for (const Stay& stay : stays) {
        if (stay.machine != machine)
            continue;
        PlaceRow& row = rows[stay.path];
        row.name = lastPlace(stay.path);
        row.depth = static_cast<int>(std::count(stay.path.begin(), stay.path.end(), '/'));
        row.stays.push_back(stayOf(book, stay, nameOf<items::Item>(book, stay.item)));
    }
    std::vector<PlaceRow> found;
    for (auto& [path, row] : rows)
        found.push_back(std::move(row));
    return found;
}

std::vector<PlaceRow> byItem(const book::Book& book, std::vector<Stay> stays) {
    std::stable_sort(stays.begin(), stays.end(),
                     [](const Stay& a, const Stay& b) { return a.from < b.from; });
    std::map<ItemId, PlaceRow> rows;
    for (const Stay& stay : stays) {
        PlaceRow& row = rows[stay.item];
        row.name = nameOf<items::Item>(book, stay.item);
        row.stays.push_back(stayOf(book, stay, nameOf<items::Machine>(book, stay.machine)));
    }
    std::vector<PlaceRow> found;
    for (auto& [item, row] : rows)
        if (row.stays.size() > 1)
            found.push_back(std::move(row));
    std::stable_sort(found.begin(), found.end(), [](const PlaceRow& a, const PlaceRow& b) {
        return a.name.localeAwareCompare(b.name) < 0;
    });
    return found;
}

}  // namespace

Places placesOf(const book::Book& book, std::optional<MachineId> machine) {
    std::vector<ItemId> items;
    for (const auto& item : book.ledger().all<items::Item>())
        items.push_back(item.id);
    const auto today = book.today();
    auto stays = items::staysOf(book.fittings(), items);
    const auto oldest = today.plusDays(-kMostDaysBack);
    std::erase_if(stays, [&](const Stay& stay) {
        return stay.from.date > today || (stay.to && stay.to->date < oldest);
    });
    Places places{today, today, {}};
    for (const Stay& stay : stays)
        if (!machine || stay.machine == *machine)
            places.first = std::min(places.first, std::max(stay.from.date, oldest));
    places.rows = machine ? byPlace(book, stays, *machine) : byItem(book, std::move(stays));
    keepWhatChanged(places.rows);
    return places;
}

}  // namespace wm::ui

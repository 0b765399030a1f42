// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/base/text.h"
#include "core/picture/shape.h"
#include "core/usage/atom.h"

// People, machines, items and how they are used.

namespace wm::picture {

using base::Fault;

namespace {

// low <= best <= high, no high end: nobody knows.
template <class Card>
void checkPast(Checks& check, const Card& card) {
    check.hours("past_low", card.pastLow);
    check.hours("past_best", card.pastBest);
    check.hours("past_high", card.pastHigh);
    check.that(card.pastLow <= card.pastBest, Fault::OutOfOrder, "past_best", units::hoursText(card.pastBest),
               units::hoursText(card.pastLow));
    if (card.pastHigh)
        check.that(card.pastBest <= *card.pastHigh, Fault::OutOfOrder, "past_high",
                   units::hoursText(*card.pastHigh), units::hoursText(card.pastBest));
}

void checkFigure(Checks& check, const base::Place& field, const std::optional<units::Hours>& hours) {
    check.hours(field, hours);
}
void checkFigure(Checks& check, const base::Place& field, const std::optional<units::Metres>& metres) {
    check.metres(field, metres);
}

template <class Unit>
void checkReadingShape(Checks& check, usage::ReadingOf<Unit>& row) {
    check.date("date", row.date);
    checkFigure(check, "shown", row.shown);
    checkFigure(check, "before", row.before);
    checkFigure(check, "rolls_at", row.rollsAt);
    if (row.event == usage::MeterEvent::RolledOver) {
        check.that(row.rollsAt.has_value(), Fault::Empty, "rolls_at");
        if (row.rollsAt)
            check.that(row.shown < *row.rollsAt, Fault::OutOfOrder, "rolls_at");
    }
    check.that(!(row.outing && row.record), Fault::Inconsistent, "outing");
    check.note("note", row.note);
}

}  // namespace

void checkShape(Checks& check, Garage& row) {
    check.that(row.id == GarageId{1}, Fault::Inconsistent, "id", std::to_string(row.id.value()), "1");
    check.word("name", row.name);
    check.date("pinned_today", row.pinnedToday);
    check.fromZero("cool_minutes", row.cool.count(), kMostCoolMinutes);
}

void checkShape(Checks& check, items::Person& row) {
    check.name("name", row.name);
}

void checkShape(Checks& check, items::Machine& row) {
    check.name("name", row.name);
    check.word("maker", row.maker);
    check.word("model", row.model);
    check.word("starter", row.starter);
    if (row.year) {
        const std::string year = std::to_string(*row.year);
        check.that(*row.year >= 1900, Fault::Implausible, "year", year, "1900");
        check.that(*row.year < 2200, Fault::TooLarge, "year", year, "2199");
    }
    check.date("since", row.since);
    if (row.goneOn)
        check.ordered("gone_on", row.since, *row.goneOn);
    checkPast(check, row);
    check.note("note", row.note);
}

void checkShape(Checks& check, items::Item& row) {
    check.name("name", row.name);
    check.word("kind", row.kind);
    check.word("maker", row.maker);
    check.word("part_number", row.partNumber);
    check.date("since", row.since);
    checkPast(check, row);
    check.note("note", row.note);
}

void checkShape(Checks& check, items::Move& row) {
    check.date("date", row.date);
    if (row.kind == items::MoveKind::Fitted) {
        oneOf(check, "machine", row.machine, row.parent);
        check.name("position", row.position);
        check.that(row.position.find('/') == std::string::npos, Fault::Malformed, "position", row.position);
        check.that(row.parent != row.item, Fault::Cycle, "parent");
    } else {
        check.that(!row.machine && !row.parent && row.position.empty(), Fault::Inconsistent, "position",
                   row.position);
    }
    check.note("note", row.note);
    if (row.backOn) {
        check.date("back_on", *row.backOn);
        check.that(row.kind == items::MoveKind::Away, Fault::Inconsistent, "back_on", row.backOn->iso());
        check.that(*row.backOn >= row.date, Fault::OutOfOrder, "back_on", row.backOn->iso(), row.date.iso());
    }
    check.that(!row.record || row.kind == items::MoveKind::Away, Fault::Inconsistent, "record");
}

void checkShape(Checks& check, items::Setting& row) {
    check.date("date", row.date);
    check.name("name", row.name);
    check.name("value", row.value);
    check.note("note", row.note);
}

void checkShape(Checks& check, usage::HourReading& row) {
    checkReadingShape(check, row);
}

void checkShape(Checks& check, usage::DistanceReading& row) {
    checkReadingShape(check, row);
}

void checkShape(Checks& check, usage::Outing& row) {
    static constexpr units::Hours kDay{2'400};
    static constexpr units::Metres kFarthest{3'000'000};
    check.date("date", row.date);
    check.hours("hours", row.hours);
    if (row.hours)
        check.that(*row.hours <= kDay, Fault::TooLarge, "hours", units::hoursText(*row.hours), "24");
    check.metres("distance", row.distance);
    if (row.distance)
        check.that(*row.distance <= kFarthest, Fault::TooLarge, "distance",
                   units::kilometresText(*row.distance), units::kilometresText(kFarthest));
    for (const usage::PieceTraits& piece : usage::kPieces)
        if (piece.noted)
            check.fromZero(std::string(piece.noted->field), row.*piece.noted->amount, kMostOfADay);
    check.note("note", row.note);
}

void checkShape(Checks& check, usage::Wash& row) {
    check.date("date", row.date);
    check.note("note", row.note);
}

void checkShape(Checks& check, usage::Crash& row) {
    check.date("date", row.date);
    check.note("note", row.note);
}

void checkShape(Checks& check, Strike& row) {
    check.date("date", row.date);
    check.words("reason", row.reason);
}

}  // namespace wm::picture

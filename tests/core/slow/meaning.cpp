// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/slow/meaning.h"

#include <algorithm>

namespace wm::tale {

using calendar::Date;
using calendar::DayPart;
using calendar::Moment;
using items::Move;
using upkeep::Record;

namespace {

const Move* lastMoveOf(const picture::Ledger& ledger, ItemId item, Moment then) {
    const Move* last = nullptr;
    for (const Move& move : ledger.all<Move>()) {
        const Moment at{move.date, move.part};
        if (move.item != item || then < at)
            continue;
        const Moment lastAt = last == nullptr ? Moment{} : Moment{last->date, last->part};
        if (last == nullptr || lastAt < at || (lastAt == at && last->entered < move.entered))
            last = &move;
    }
    return last;
}

// Where it sat last by then.
const Move* lastFitOf(const picture::Ledger& ledger, ItemId item, Moment then) {
    const Move* last = nullptr;
    for (const Move& move : ledger.all<Move>()) {
        const Moment at{move.date, move.part};
        if (move.item != item || then < at || move.kind != items::MoveKind::Fitted)
            continue;
        const Moment lastAt = last == nullptr ? Moment{} : Moment{last->date, last->part};
        if (last == nullptr || lastAt < at || (lastAt == at && last->entered < move.entered))
            last = &move;
    }
    return last;
}

bool isAt(const Move& fit, const Spot& spot) {
    return Spot{fit.machine, fit.parent, fit.position} == spot;
}

// The last one that was fitted there, if that is where it came from and it lies unfitted.
std::optional<ItemId> unfittedFrom(const PlacesThen& places, const Spot& spot, Moment then) {
    const Move* last = nullptr;
    for (const Move& move : places.ledger().all<Move>()) {
        const Moment at{move.date, move.part};
        if (move.kind != items::MoveKind::Fitted || then < at || !isAt(move, spot))
            continue;
        const Moment lastAt = last == nullptr ? Moment{} : Moment{last->date, last->part};
        if (last == nullptr || lastAt < at || (lastAt == at && last->entered < move.entered))
            last = &move;
    }
    if (last == nullptr || lastMoveOf(places.ledger(), last->item, then)->kind != items::MoveKind::Removed ||
        lastFitOf(places.ledger(), last->item, then) != last)
        return std::nullopt;
    return last->item;
}

bool isBaselineOrLook(const Record& record) {
    return record.kind != upkeep::RecordKind::Done;
}

bool wasBeforeRiding(const picture::Ledger& ledger, const Record& record) {
    if (!record.meter || isBaselineOrLook(record))
        return false;
    for (const auto& reading : ledger.all<usage::HourReading>())
        if (reading.outing && reading.machine == record.machine && reading.date == record.date &&
            *record.meter < reading.shown)
            return true;
    return false;
}

// The last evening by which the machine had run no more than up to the lowest figure.
Moment placeOf(const picture::Ledger& told, const Record& record, const MeterThen& then) {
    const auto* read = readUpTo(told, record.machine, then.toldOn);
    const PlacesThen places(told);
    const auto garage = slowGarage(told, places.firstDay(), then.toldOn);
    const Moment longAgo{Date{-20'000}, DayPart::BeforeRiding};
    const auto ranBy = [&](Moment when) {
        return slow::ofMachine(garage, record.machine, longAgo, when).best;
    };
    const auto wanted = ranBy({read->date, read->part}) - (read->shown.count() - then.low);
    Date day = read->date;
    while (places.firstDay() <= day && wanted < ranBy({day, DayPart::AfterRiding}))
        day = day.plusDays(-1);
    return {day, DayPart::AfterRiding};
}

}  // namespace

std::optional<ItemId> onBench(const PlacesThen& places, MachineId machine, const std::string& path,
                              Moment then) {
    std::optional<ItemId> host;
    for (const std::string& part : partsOf(path)) {
        const Spot spot{host ? std::nullopt : std::optional(machine), host, part};
        auto item = places.sitsAt(spot, then);
        const auto& moves = places.ledger().all<Move>();
        const bool wasTracked = std::any_of(moves.begin(), moves.end(), [&](const Move& move) {
            return move.kind == items::MoveKind::Fitted && isAt(move, spot) &&
                   Moment{move.date, move.part} <= then;
        });
        if (!item && !wasTracked)
            return host;
        if (!item)
            item = unfittedFrom(places, spot, then);
        if (!item)
            return std::nullopt;
        host = item;
    }
    return host;
}

const usage::HourReading* readUpTo(const picture::Ledger& ledger, MachineId machine, Date day) {
    const usage::HourReading* last = nullptr;
    for (const auto& reading : ledger.all<usage::HourReading>()) {
        if (reading.machine != machine || day < reading.date)
            continue;
        const Moment at{reading.date, reading.part};
        const Moment lastAt = last == nullptr ? Moment{} : Moment{last->date, last->part};
        if (last == nullptr || lastAt < at || (lastAt == at && last->entered < reading.entered))
            last = &reading;
    }
    return last;
}

picture::Ledger writtenOut(const picture::Ledger& told, const std::map<RecordId, MeterThen>& remembered) {
    auto rows = told.rows();
    for (picture::Row& row : rows) {
        const Record* record = std::get_if<Record>(&row);
        if (const auto* reading = std::get_if<usage::HourReading>(&row);
            reading != nullptr && reading->record)
            record = told.find<Record>(*reading->record);
        if (record == nullptr || !wasBeforeRiding(told, *record))
            continue;
        if (auto* reading = std::get_if<usage::HourReading>(&row))
            reading->part = DayPart::BeforeRiding;
        else
            std::get<Record>(row).part = DayPart::BeforeRiding;
    }
    for (picture::Row& row : rows)
        if (auto* record = std::get_if<Record>(&row); record != nullptr && remembered.contains(record->id)) {
            const Moment at = placeOf(told, *record, remembered.at(record->id));
            record->date = at.date;
            record->part = at.part;
        }
    const picture::Ledger timed(rows);
    const PlacesThen places(timed);
    for (picture::Row& row : rows) {
        auto* record = std::get_if<Record>(&row);
        const auto* task = record == nullptr || !record->version
                               ? nullptr
                               : timed.find<upkeep::TaskVersion>(*record->version);
        if (task == nullptr || record->item || task->position.empty())
            continue;
        const Moment then{record->date, record->part};
        if (places.holds(record->machine, task->position, then).isEmpty)
            record->item = onBench(places, record->machine, task->position, then);
    }
    return picture::Ledger(std::move(rows));
}

}  // namespace wm::tale

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/book/placed.h"

#include <algorithm>
#include <optional>

namespace wm::book {

using calendar::DayPart;
using upkeep::Record;

namespace {

std::optional<ItemId> itemOf(const picture::Ledger& ledger, const items::Fittings& fittings,
                             const Record& record, calendar::Moment when) {
    if (record.item || !record.version)
        return record.item;
    const auto* task = ledger.find<upkeep::TaskVersion>(*record.version);
    return task == nullptr || task->position.empty()
               ? std::nullopt
               : fittings.lyingFrom(record.machine, task->position, when);
}

}  // namespace

Placed::Placed(const picture::Ledger& ledger, const items::Fittings& fittings, const Placed* before) {
    for (const auto& reading : ledger.all<usage::HourReading>())
        if (reading.outing) {
            auto& most =
                meterAfter_.try_emplace({reading.machine, reading.date}, reading.shown).first->second;
            most = std::max(most, reading.shown);
        }
    Records moved;
    for (const Record& told : ledger.all<Record>()) {
        const calendar::Moment when{told.date, partOf(told)};
        const auto item = itemOf(ledger, fittings, told, when);
        if (when.part == told.part && item == told.item)
            continue;
        Record& record = moved.emplace(told.id, told).first->second;
        record.part = when.part;
        record.item = item;
    }
    moved_ = before != nullptr && *before->moved_ == moved
                 ? before->moved_
                 : std::make_shared<const Records>(std::move(moved));
}

DayPart Placed::partOf(const Record& record) const {
    if (!record.meter || record.kind != upkeep::RecordKind::Done)
        return record.part;
    const auto left = meterAfter_.find({record.machine, record.date});
    return left != meterAfter_.end() && *record.meter < left->second ? DayPart::BeforeRiding : record.part;
}

const Record& Placed::placed(const Record& record) const {
    const auto moved = moved_->find(record.id);
    return moved == moved_->end() ? record : moved->second;
}

usage::HourReading Placed::placed(const usage::HourReading& reading) const {
    const auto record = reading.record ? moved_->find(*reading.record) : moved_->end();
    usage::HourReading placed = reading;
    if (record != moved_->end() && record->second.part == DayPart::BeforeRiding)
        placed.part = DayPart::BeforeRiding;
    return placed;
}

}  // namespace wm::book

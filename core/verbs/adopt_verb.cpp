// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/verbs/correct_verbs.h"

#include <fmt/format.h>

#include <map>
#include <set>

#include "core/base/text.h"
#include "core/calendar/in_force.h"
#include "core/picture/consistency.h"
#include "core/picture/references.h"
#include "core/verbs/names.h"

// A whole file's rows at once.

namespace wm::verbs {

using picture::checkMoves;
using picture::checkNeeds;
using picture::Garage;
using picture::References;
using picture::Row;
using picture::Strike;

namespace {

// Calls `act` with every row and where it stands: "outing[3]."
template <class Act>
void eachRow(Checks& check, std::vector<Row>& rows, Act&& act) {
    std::map<std::string_view, std::size_t> count;
    for (Row& row : rows) {
        const auto table = std::visit([](const auto& r) { return r.kTable; }, row);
        check.setPrefix(placeIn(table, count[table]++, {}));
        act(row);
        if (check.failed())
            return;
    }
    check.setPrefix({});
}

// Places in the order of entry. One is shared by nothing but a fact that was struck and what came in its
// place.
struct Places {
    std::set<std::int64_t> struckFacts{};
    std::set<base::Entered> ofStruck{};
    std::set<base::Entered> taken{};
};

void noteStruck(Checks& check, Places& places, const Row& row) {
    if (const auto* strike = std::get_if<Strike>(&row))
        check.that(places.struckFacts.insert(strike->fact).second, Fault::AlreadyStruck, "fact",
                   std::to_string(strike->fact));
}

void noteStruckPlace(Places& places, const Row& row) {
    std::visit(
        [&](const auto& r) {
            if constexpr (requires { r.entered; })
                if (places.struckFacts.contains(r.id.value()))
                    places.ofStruck.insert(r.entered);
        },
        row);
}

void checkEntered(Checks& check, Places& places, const Row& row) {
    std::visit(
        [&](const auto& r) {
            if constexpr (requires { r.entered; }) {
                check.fromOne("entered", r.entered, picture::kMostEntered);
                check.that(places.taken.insert(r.entered).second || places.ofStruck.contains(r.entered),
                           Fault::Duplicate, "entered", std::to_string(r.entered));
            }
        },
        row);
}

template <class Card>
void notBefore(Checks& check, calendar::Date date, const Card* card) {
    if (card != nullptr)
        check.that(date >= card->since, Fault::BeforeItsTime, "date", date.iso(), card->since.iso());
}

// No fact before the machine or item was there, but what is known of the time before: jobs, and figures of
// the meter of a used one.
template <class R>
void checkDay(Checks& check, const Ledger& ledger, const R& row) {
    if constexpr (std::is_same_v<R, upkeep::Record>)
        if (row.kind == upkeep::RecordKind::Baseline)
            return;
    if constexpr (std::is_same_v<R, usage::HourReading>)
        if (const auto* machine = ledger.find<items::Machine>(row.machine); machine && !machine->startedNew)
            return;
    if constexpr (std::is_same_v<R, items::Move>) {
        notBefore(check, row.date, ledger.find<items::Item>(row.item));
        if (row.machine)
            notBefore(check, row.date, ledger.find<items::Machine>(*row.machine));
    } else if constexpr (R::kKind == base::RowKind::Fact && requires { row.machine.value(); }) {
        notBefore(check, row.date, ledger.find<items::Machine>(row.machine));
    }
}

template <class Card>
void checkNames(Checks& check, const Ledger& ledger) {
    std::set<std::string> names;
    for (const Card& card : ledger.all<Card>())
        check.that(names.insert(base::lowered(card.name)).second, Fault::Duplicate,
                   fmt::format("{}.name", Card::kTable), card.name);
}

// All versions of a definition are of one machine and code, and no other definition there has that code.
template <class V, class IdType>
void checkVersions(Checks& check, const Ledger& ledger, IdType V::*stable) {
    std::map<IdType, const V*> first;
    std::map<std::pair<MachineId, std::string>, IdType> codes;
    for (const V& version : ledger.all<V>()) {
        const std::string field = fmt::format("{}.code", V::kTable);
        const V* other = first.try_emplace(version.*stable, &version).first->second;
        check.that(other->machine == version.machine && other->code == version.code, Fault::Inconsistent,
                   field, version.code, other->code);
        const auto key = std::pair(version.machine, base::lowered(version.code));
        check.that(codes.try_emplace(key, version.*stable).first->second == version.*stable, Fault::Duplicate,
                   field, version.code);
    }
}

// What tasks and steps name by code must be known on their machine in some version.
template <class V>
std::set<std::pair<MachineId, std::string>> codesOf(const Ledger& ledger) {
    std::set<std::pair<MachineId, std::string>> codes;
    for (const V& version : ledger.all<V>())
        codes.emplace(version.machine, version.code);
    return codes;
}

void checkCodes(Checks& check, const Ledger& ledger) {
    const auto steps = codesOf<weekend::StepVersion>(ledger);
    const auto joints = codesOf<fastening::JointVersion>(ledger);
    const auto need = [&](const auto& known, MachineId machine, const std::string& code,
                          std::string_view field) {
        check.that(known.contains({machine, code}), Fault::Inconsistent, field, code);
    };
    for (const auto& task : ledger.all<upkeep::TaskVersion>()) {
        for (const base::Code& step : task.steps)
            need(steps, task.machine, step.code, "task_version.steps");
        for (const base::Code& joint : task.joints)
            need(joints, task.machine, joint.code, "task_version.joints");
    }
    for (const auto& step : ledger.all<weekend::StepVersion>()) {
        for (const weekend::Need& other : step.needs)
            need(steps, step.machine, other.code, "step_version.needs");
        for (const base::Code& joint : step.joints)
            need(joints, step.machine, joint.code, "step_version.joints");
    }
}

void checkCircles(Checks& check, const Ledger& ledger) {
    std::map<StepId, const weekend::StepVersion*> last;
    for (const auto& step : ledger.all<weekend::StepVersion>()) {
        const auto* known = last[step.step];
        if (known == nullptr || calendar::supersedes(step, *known))
            last[step.step] = &step;
    }
    std::map<MachineId, std::vector<const weekend::StepVersion*>> steps;
    for (const auto& [id, step] : last)
        steps[step->machine].push_back(step);
    for (const auto& [machine, own] : steps)
        check.take(checkNeeds(own));
}

void checkLots(Checks& check, const Ledger& ledger) {
    const auto same = [&](const std::optional<LotId>& lot, StockLineId line, std::string_view field) {
        const auto* card = lot ? ledger.find<stock::Lot>(*lot) : nullptr;
        check.that(card == nullptr || card->line == line, Fault::Inconsistent, field,
                   card == nullptr ? std::string{} : card->label);
    };
    for (const auto& move : ledger.all<stock::StockMove>())
        same(move.lot, move.line, "stock_move.lot");
    for (const auto& record : ledger.all<upkeep::Record>())
        for (const upkeep::Use& use : record.uses)
            same(use.lot, use.line, "record.uses");
}

void checkBetweenRows(Checks& check, std::vector<Row>& rows) {
    const Ledger ledger(rows);
    eachRow(check, rows,
            [&](const Row& row) { std::visit([&](const auto& r) { checkDay(check, ledger, r); }, row); });
    checkNames<items::Person>(check, ledger);
    checkNames<items::Machine>(check, ledger);
    checkVersions(check, ledger, &upkeep::TaskVersion::task);
    checkVersions(check, ledger, &weekend::StepVersion::step);
    checkVersions(check, ledger, &fastening::JointVersion::joint);
    checkCodes(check, ledger);
    checkCircles(check, ledger);
    checkLots(check, ledger);
    check.take(checkMoves(ledger.all<items::Move>()));
}

bool holdsOnlyItsCard(const Ledger& ledger) {
    bool empty = true;
    for (const Row& row : ledger.rows())
        empty = empty && std::holds_alternative<Garage>(row);
    return empty;
}

}  // namespace

Result<Change> adoptAll(const VerbContext& context, std::vector<Row> rows) {
    BookChecks check(context.book);
    check.that(holdsOnlyItsCard(context.book.ledger()), Fault::NotEmpty, "file");
    check.that(!rows.empty(), Fault::NothingToDo, "file");
    References references;
    Places places;
    if (!check.failed())
        eachRow(check, rows, [&](const Row& row) { noteStruck(check, places, row); });
    for (const Row& row : rows)
        noteStruckPlace(places, row);
    if (!check.failed())
        eachRow(check, rows, [&](const Row& row) {
            references.define(check, row);
            checkEntered(check, places, row);
        });
    references.close();
    if (!check.failed())
        eachRow(check, rows, [&](Row& row) {
            std::visit(
                [&](auto& r) {
                    references.check(check, r);
                    checkShape(check, r);
                },
                row);
        });
    if (!check.failed())
        checkBetweenRows(check, rows);
    if (check.failed())
        return check.refusal();
    return Change{base::stored(phrase("Undo", "took in a whole file")), std::move(rows)};
}

}  // namespace wm::verbs

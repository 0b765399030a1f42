// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later

#include "core/definitions/definitions.h"

#include <algorithm>

#include "core/base/text.h"
#include "core/book/book_checks.h"
#include "core/calendar/in_force.h"
#include "core/picture/shape.h"
#include "core/upkeep/sources.h"

namespace wm::definitions {

using base::Fault;
using base::phrase;
using book::Book;
using book::BookChecks;
using picture::Entry;
using picture::placeIn;
using picture::sameName;

namespace {

// A doing that was given no code gets one from its words, as a definition does.
template <class V>
void nameDoings(V& version) {
    if constexpr (requires { version.doings; })
        for (upkeep::Doing& doing : version.doings)
            if (doing.code.empty())
                doing.code = base::codeFromName(doing.what);
}

}  // namespace

template <class V>
Definitions::Kind<V>& Definitions::kindOf() {
    if constexpr (std::is_same_v<V, upkeep::TaskVersion>)
        return tasks_;
    else if constexpr (std::is_same_v<V, weekend::StepVersion>)
        return steps_;
    else
        return joints_;
}

Definitions::Definitions(BookChecks& check, const Book& book, Entry& entry, MachineId machine)
    : check_(check), book_(book), entry_(entry), machine_(check.row<items::Machine>("machine", machine)) {
    gather<upkeep::TaskVersion>();
    gather<weekend::StepVersion>();
    gather<fastening::JointVersion>();
}

template <class V>
void Definitions::gather() {
    if (machine_ == nullptr)
        return;
    auto& last = kindOf<V>().last;
    for (V version : book_.ledger().all<V>()) {
        if (version.machine != machine_->id)
            continue;
        const auto same = std::find_if(last.begin(), last.end(),
                                       [&](V& other) { return stableId(other) == stableId(version); });
        if (same == last.end())
            last.push_back(std::move(version));
        else if (calendar::supersedes(version, *same))
            *same = std::move(version);
    }
}

// A new definition gets its stable id, a known one must be of this machine and keeps its code, by which the
// records of an item find their task on whatever machine it sits.
template <class V>
const V* Definitions::settleId(V& version) {
    auto& last = kindOf<V>().last;
    const V* old = nullptr;
    if (stableId(version).value() != 0) {
        const auto same = std::find_if(last.begin(), last.end(),
                                       [&](V& other) { return stableId(other) == stableId(version); });
        old = same == last.end() ? nullptr : &*same;
        check_.that(old != nullptr, Fault::Unknown, "id", std::to_string(stableId(version).value()));
    }
    if (version.code.empty())
        version.code = old != nullptr ? old->code : base::codeFromName(version.name);
    if (old != nullptr) {
        check_.that(old->code == version.code, Fault::Inconsistent, "code", version.code, old->code);
        check_.that(!sameWords(version, *old), Fault::NothingToDo, "name", version.name);
    }
    return old;
}

template <class V>
void Definitions::add(V version, calendar::Date from, base::Place prefix, Words words) {
    if (check_.failed())
        return;
    check_.setPrefix(prefix);
    version.machine = machine_->id;
    version.fromStarter = words == Words::OfStarter;
    if (version.validFrom == calendar::Date{})
        version.validFrom = from;
    check_.name("name", version.name);
    const V* old = check_.failed() ? nullptr : settleId(version);
    if constexpr (std::is_same_v<V, upkeep::TaskVersion>)
        if (old != nullptr)
            upkeep::keepSources(*old, version);
    nameDoings(version);
    if constexpr (requires { version.doings; })
        checkTyped(version);
    checkShape(check_, version);
    if (!check_.failed()) {
        const std::string day = version.validFrom.iso();
        check_.that(version.validFrom <= book_.today(), Fault::InFuture, "valid_from", day,
                    book_.today().iso());
        check_.that(version.validFrom >= machine_->since, Fault::BeforeItsTime, "valid_from", day,
                    machine_->since.iso());
    }
    auto& kind = kindOf<V>();
    for (V& other : kind.last)
        check_.that(
            (old != nullptr && stableId(other) == stableId(version)) || !sameName(other.code, version.code),
            Fault::Duplicate, "code", version.code, other.name);
    if (check_.failed())
        return;
    if constexpr (requires { version.doings; })
        if (old != nullptr)
            for (const upkeep::Doing& doing : old->doings)
                gone_.push_back({doing, prefix});
    became_ = old == nullptr                   ? Became::Added
              : !version.active && old->active ? Became::Retired
                                               : Became::Changed;
    name_ = version.name;
    if (old == nullptr) {
        stableId(version) = entry_.newId<std::decay_t<decltype(stableId(version))>>();
        kind.last.push_back(version);
    } else {
        *std::find_if(kind.last.begin(), kind.last.end(),
                      [&](V& other) { return stableId(other) == stableId(version); }) = version;
    }
    kind.added.push_back({std::move(version), std::move(prefix)});
    check_.setPrefix({});
}

void Definitions::checkSteps(std::string_view field, const std::vector<base::Code>& codes) {
    for (std::size_t at = 0; at < codes.size(); ++at)
        checkStep(placeIn(field, at, "code"), codes[at].code);
}

void Definitions::checkJoints(const std::vector<base::Code>& codes) {
    for (std::size_t at = 0; at < codes.size(); ++at)
        check_.that(joints_.has(codes[at].code), Fault::Unknown, placeIn("joints", at, "code"),
                    codes[at].code, nearest({upkeep::Deed::Torque, codes[at].code}));
}

void Definitions::checkFollowUps(const std::vector<upkeep::FollowUpRule>& rules) {
    for (std::size_t at = 0; at < rules.size(); ++at)
        check_.that(rules[at].code.empty() || tasks_.has(rules[at].code), Fault::Unknown,
                    placeIn("follow_ups", at, "code"), rules[at].code);
}

void Definitions::checkKit(const upkeep::TaskVersion& version) {
    for (std::size_t at = 0; at < version.kit.size(); ++at) {
        const auto* line = check_.row<stock::StockLine>(placeIn("kit", at, "line"), version.kit[at].line);
        if (line != nullptr)
            check_.that(line->unit == version.kit[at].unit, Fault::WrongUnit, placeIn("kit", at, "unit"),
                        std::string(base::nameOf(version.kit[at].unit)),
                        std::string(base::nameOf(line->unit)));
    }
}

void Definitions::checkNames(upkeep::TaskVersion& version) {
    checkSteps("steps", version.steps);
    checkJoints(version.joints);
    checkEdges(version.edges);
    checkFollowUps(version.followUps);
    checkKit(version);
    check_.that(version.nthOf.empty() || tasks_.has(version.nthOf), Fault::Unknown, "nth_of", version.nthOf);
    for (std::size_t at = 0; at < version.triggers.size(); ++at) {
        const std::string& code = version.triggers[at].code;
        check_.that(code.empty() || tasks_.has(code), Fault::Unknown, placeIn("triggers", at, "code"), code);
    }
    for (std::size_t at = 0; at < version.measures.size(); ++at) {
        const std::string& job = version.measures[at].job;
        check_.that(job.empty() || tasks_.has(job), Fault::Unknown, placeIn("measures", at, "job"), job);
    }
}

void Definitions::checkNames(weekend::StepVersion& version) {
    for (std::size_t at = 0; at < version.needs.size(); ++at)
        checkStep(placeIn("needs", at, "code"), version.needs[at].code);
    checkSteps("loose_before", version.looseBefore);
    checkJoints(version.joints);
    checkFollowUps(version.followUps);
    checkEdges(version.edges);
    if (!version.active)
        checkUnused(version);
}

template <class V>
void Definitions::writeKind() {
    for (New<V>& each : kindOf<V>().added) {
        check_.setPrefix(each.prefix);
        checkNames(each.version);
        check_.setPrefix({});
        if (!check_.failed())
            entry_.add(std::move(each.version));
    }
}

void Definitions::write() {
    if (!check_.failed())
        checkGone();
    if (!check_.failed())
        checkNeeds();
    if (!check_.failed())
        checkOrder();
    writeKind<weekend::StepVersion>();
    writeKind<fastening::JointVersion>();
    writeKind<upkeep::TaskVersion>();
}

base::Phrase Definitions::taskText() const {
    auto text = became_ == Became::Added     ? phrase("Undo", "added the task \"%1\" on %2")
                : became_ == Became::Retired ? phrase("Undo", "retired the task \"%1\" on %2")
                                             : phrase("Undo", "changed the task \"%1\" on %2");
    return std::move(text).arg(name_).arg(machine_->name);
}

base::Phrase Definitions::stepText() const {
    auto text = became_ == Became::Added     ? phrase("Undo", "added the access step \"%1\" on %2")
                : became_ == Became::Retired ? phrase("Undo", "retired the access step \"%1\" on %2")
                                             : phrase("Undo", "changed the access step \"%1\" on %2");
    return std::move(text).arg(name_).arg(machine_->name);
}

base::Phrase Definitions::jointText() const {
    auto text = became_ == Became::Added     ? phrase("Undo", "added the joint \"%1\" on %2")
                : became_ == Became::Retired ? phrase("Undo", "retired the joint \"%1\" on %2")
                                             : phrase("Undo", "changed the joint \"%1\" on %2");
    return std::move(text).arg(name_).arg(machine_->name);
}

template void Definitions::add(upkeep::TaskVersion, calendar::Date, base::Place, Words);
template void Definitions::add(weekend::StepVersion, calendar::Date, base::Place, Words);
template void Definitions::add(fastening::JointVersion, calendar::Date, base::Place, Words);

}  // namespace wm::definitions

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later

#include "core/definitions/sharing.h"

#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "core/base/text.h"
#include "core/calendar/in_force.h"
#include "core/picture/checks.h"

namespace wm::definitions {

using book::Book;
using fastening::JointVersion;
using picture::Ledger;
using picture::sameName;

namespace {

bool isOfModel(const items::Machine& a, const items::Machine& b) {
    return !a.model.empty() && sameName(a.model, b.model) && sameName(a.maker, b.maker);
}

const JointVersion* lastOf(const Ledger& ledger, MachineId machine, std::string_view code) {
    const JointVersion* last = nullptr;
    for (const JointVersion& version : ledger.all<JointVersion>())
        if (version.machine == machine && sameName(version.code, code) &&
            (last == nullptr || calendar::supersedes(version, *last)))
            last = &version;
    return last;
}

bool saysTheSame(JointVersion a, const JointVersion& b) {
    a.id = b.id;
    a.entered = b.entered;
    a.validFrom = b.validFrom;
    return a == b;
}

std::string codeOf(const Book& book, const JointVersion& version) {
    if (!version.code.empty())
        return version.code;
    const auto* known = book.joint(version.joint);
    return known != nullptr ? known->code : base::codeFromName(version.name);
}

}  // namespace

bool isFor(const JointVersion& version, const items::Machine& typedOn, const items::Machine& machine) {
    return version.sharedFrom && version.sharedTo && machine.year && *machine.year >= *version.sharedFrom &&
           *machine.year <= *version.sharedTo && isOfModel(typedOn, machine);
}

std::map<MachineId, std::vector<JointVersion>> forOthers(const Book& book,
                                                         const std::vector<JointVersion>& versions) {
    std::map<MachineId, std::vector<JointVersion>> result;
    for (const JointVersion& version : versions) {
        const auto* typedOn = book.ledger().find<items::Machine>(version.machine);
        for (const items::Machine* other : book.machines()) {
            if (typedOn == nullptr || other->id == version.machine || !isFor(version, *typedOn, *other))
                continue;
            JointVersion same = version;
            same.machine = other->id;
            same.code = codeOf(book, version);
            same.joint = JointId{};
            if (same.validFrom == calendar::Date{})
                same.validFrom = book.today();
            same.validFrom = std::max(same.validFrom, other->since);
            const JointVersion* last = lastOf(book.ledger(), other->id, same.code);
            if (last != nullptr && !last->sharedFrom)
                continue;
            if (last != nullptr)
                same.joint = last->joint;
            if (last == nullptr || !saysTheSame(same, *last))
                result[other->id].push_back(std::move(same));
        }
    }
    return result;
}

std::vector<JointVersion> forThisOneOnly(std::vector<JointVersion> versions) {
    for (JointVersion& version : versions)
        version.sharedFrom = version.sharedTo = std::nullopt;
    return versions;
}

std::optional<ModelYears> sharedYears(const Book& book, const JointVersion& joint) {
    if (joint.sharedFrom && joint.sharedTo)
        return ModelYears{*joint.sharedFrom, *joint.sharedTo};
    const auto* machine = book.ledger().find<items::Machine>(joint.machine);
    for (const items::Machine* other : book.machines()) {
        if (machine == nullptr || other->id == joint.machine)
            continue;
        const JointVersion* last = lastOf(book.ledger(), other->id, joint.code);
        if (last != nullptr && isFor(*last, *other, *machine))
            return ModelYears{*last->sharedFrom, *last->sharedTo};
    }
    return std::nullopt;
}

std::string sharedText(const items::Machine& machine, const ModelYears& years) {
    std::string text = machine.maker;
    text += (text.empty() || machine.model.empty() ? "" : " ") + machine.model;
    return text + (years.from == years.to ? fmt::format(" {}", years.from)
                                          : fmt::format(" {}–{}", years.from, years.to));
}

std::vector<JointVersion> fromOthers(const Book& book, const items::Machine& machine) {
    std::vector<JointVersion> result;
    std::set<std::string> codes;
    for (const items::Machine* other : book.machines()) {
        if (other->id == machine.id)
            continue;
        for (const JointVersion* version : book.joints(other->id)) {
            if (!isFor(*version, *other, machine) ||
                lastOf(book.ledger(), machine.id, version->code) != nullptr ||
                !codes.insert(base::lowered(version->code)).second)
                continue;
            JointVersion same = *version;
            same.machine = machine.id;
            same.joint = JointId{};
            same.validFrom = machine.since;
            result.push_back(std::move(same));
        }
    }
    return result;
}

}  // namespace wm::definitions

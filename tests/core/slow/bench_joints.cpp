// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/slow/bench_joints.h"

#include <algorithm>

#include "tests/core/slow/places_then.h"

namespace wm::tale {

std::optional<std::string> BenchJoints::emptiedOnTheWay(const std::string& machine,
                                                        const std::string& path) const {
    std::string host = machine;
    std::string way;
    for (const std::string& part : partsOf(path)) {
        way += (way.empty() ? "" : "/") + part;
        const auto item = sitting_.sitsAt({host, part});
        if (!item)
            return sitting_.emptiedOn.contains({host, part}) ? std::optional(way) : std::nullopt;
        host = *item;
    }
    return std::nullopt;
}

std::optional<std::string> BenchJoints::goneWith(const std::string& machine, const std::string& code) const {
    const auto card = cards_.joints.find({machine, code});
    if (card == cards_.joints.end())
        return std::nullopt;
    if (!card->second.in.empty())
        if (auto gone = emptiedOnTheWay(machine, card->second.in))
            return gone;
    for (const auto& [key, step] : cards_.steps) {
        const Json& joints = step.at("joints");
        if (key.first != machine || !step.contains("frees") ||
            std::find(joints.begin(), joints.end(), code) == joints.end())
            continue;
        if (auto gone = emptiedOnTheWay(machine, step.at("frees").get<std::string>()))
            return gone;
    }
    return std::nullopt;
}

// What left the place last, if it lies unfitted since.
std::optional<std::string> BenchJoints::unfittedFrom(const HostAndPlace& place) const {
    const std::string& item = sitting_.lastIn.at(place);
    const Json& last = sitting_.lastMove.at(item);
    if (sitting_.at.contains(item) || last.contains("retire") || last.contains("away") ||
        sitting_.cameFrom.at(item) != place)
        return std::nullopt;
    return item;
}

std::vector<std::string> BenchJoints::wholesOf(const std::string& item) const {
    std::vector<std::string> wholes{item};
    for (auto place = sitting_.at.find(item); place != sitting_.at.end();
         place = sitting_.at.find(wholes.back()))
        wholes.push_back(place->second.first);
    return wholes;
}

// Is the freed position empty, even with what lies on the bench put in on the way to where the joint sits?
bool BenchJoints::isEmptyOnBench(const std::string& machine, const std::string& freed,
                                 const std::string& in) const {
    std::string host = machine;
    std::string way;
    for (const std::string& part : partsOf(freed)) {
        way += (way.empty() ? "" : "/") + part;
        auto item = sitting_.sitsAt({host, part});
        if (!item && !sitting_.emptiedOn.contains({host, part}))
            return false;
        if (!item && (in + "/").starts_with(way + "/"))
            item = unfittedFrom({host, part});
        if (!item)
            return true;
        host = *item;
    }
    return false;
}

std::optional<JointOf> BenchJoints::onBench(const std::string& machine, const std::string& code) const {
    const auto card = cards_.joints.find({machine, code});
    if (card == cards_.joints.end() || card->second.in.empty() || !emptiedOnTheWay(machine, card->second.in))
        return std::nullopt;
    for (const auto& [key, step] : cards_.steps) {
        const Json& joints = step.at("joints");
        if (key.first == machine && step.contains("frees") &&
            std::find(joints.begin(), joints.end(), code) != joints.end() &&
            isEmptyOnBench(machine, step.at("frees").get<std::string>(), card->second.in))
            return std::nullopt;
    }
    return jointOf(machine, code);
}

std::optional<std::string> BenchJoints::outByWork(const JointOf& joint, const std::string& machine) const {
    const auto known = all.find(joint);
    if (known == all.end() || !known->second.isLoose || !known->second.outBy)
        return std::nullopt;
    const EmptiedBy& by = *known->second.outBy;
    const auto place = by.goesAlong ? sitting_.rootOf(by.spot, cards_) : std::optional(by.place);
    if (!place || place->first != machine)
        return std::nullopt;
    auto empty = emptiedOnTheWay(machine, place->second);
    const auto position = empty ? cards_.positions.find({machine, *empty}) : cards_.positions.end();
    // A machine that is ridden without the item needs all its other joints.
    if (position != cards_.positions.end() && !position->second.at("must_be_filled").get<bool>())
        return std::nullopt;
    return empty;
}

void BenchJoints::goOut(const std::set<JointOf>& loosened, const std::string& item, const EmptiedBy& by) {
    const auto around = wholesOf(by.spot.first);
    for (const JointOf& joint : loosened) {
        const auto wholes = wholesOf(joint.first);
        JointThen& then = all.at(joint);
        if (!then.isLoose || std::find(wholes.begin(), wholes.end(), item) != wholes.end())
            continue;
        then.outBy = by;
        then.outBy->goesAlong = std::any_of(wholes.begin(), wholes.end(), [&](const std::string& whole) {
            return !cards_.machines.contains(whole) &&
                   std::find(around.begin(), around.end(), whole) != around.end();
        });
    }
}

void BenchJoints::comeBack() {
    for (auto& [joint, then] : all) {
        if (!then.outBy)
            continue;
        const bool isEmpty =
            then.outBy->goesAlong
                ? sitting_.emptiedOn.contains(then.outBy->spot)
                : emptiedOnTheWay(then.outBy->place.first, then.outBy->place.second).has_value();
        if (!isEmpty)
            then.outBy.reset();
    }
}

std::optional<JointOf> BenchJoints::jointOf(const std::string& machine, const std::string& code) const {
    const auto card = cards_.joints.find({machine, code});
    if (card == cards_.joints.end()) {
        for (const auto& [joint, then] : all)
            if (joint.second == code && isOn(joint, machine))
                return joint;
        return std::nullopt;
    }
    std::string owner = machine;
    if (card->second.in.empty())
        return JointOf{owner, code};
    for (const std::string& part : partsOf(card->second.in)) {
        const HostAndPlace place{owner, part};
        auto item = sitting_.sitsAt(place);
        if (!item && sitting_.emptiedOn.contains(place)) {
            item = unfittedFrom(place);
            if (!item)
                return std::nullopt;
        }
        if (!item)
            break;
        owner = *item;
    }
    return JointOf{owner, code};
}

JointThen BenchJoints::then(const std::string& machine, const std::string& code) const {
    const auto joint = jointOf(machine, code);
    const auto found = joint ? all.find(*joint) : all.end();
    return found == all.end() ? JointThen{} : found->second;
}

bool BenchJoints::isOn(const JointOf& joint, const std::string& machine) const {
    if (cards_.machines.contains(joint.first))
        return joint.first == machine;
    const auto root = sitting_.root(joint.first, cards_);
    return root && root->first == machine;
}

std::map<JointOf, std::size_t> BenchJoints::looseOn(const std::string& machine) const {
    std::map<JointOf, std::size_t> loose;
    for (const auto& [joint, then] : all)
        if (then.isLoose && isOn(joint, machine) && !goneWith(machine, joint.second) &&
            !outByWork(joint, machine))
            loose[joint] = then.loosened;
    return loose;
}

std::optional<HostAndPlace> BenchJoints::cameOutOf(const std::string& owner) const {
    if (cards_.machines.contains(owner))
        return std::nullopt;
    std::string outermost = owner;
    for (auto place = sitting_.at.find(outermost); place != sitting_.at.end();
         place = sitting_.at.find(outermost)) {
        outermost = place->second.first;
        if (cards_.machines.contains(outermost))
            return std::nullopt;
    }
    const auto from = sitting_.cameFrom.find(outermost);
    if (from == sitting_.cameFrom.end() || !sitting_.emptiedOn.contains(from->second) ||
        sitting_.lastIn.at(from->second) != outermost || sitting_.lastMove.at(outermost).contains("retire"))
        return std::nullopt;
    return sitting_.rootOf(from->second, cards_);
}

std::string BenchJoints::words(const JointOf& joint, const std::string& machine, bool withTorque) const {
    auto card = cards_.joints.find({machine, joint.second});
    if (card == cards_.joints.end())
        card = cards_.joints.find({all.at(joint).saidOn, joint.second});
    const auto& [name, torque, in, isUnsaid] = card->second;
    if (!withTorque)
        return name;
    return torque.empty() ? name + ", torque blank" : name + " " + torque;
}

void BenchJoints::touch(const JointOf& joint, const std::string& machine, std::size_t number) {
    JointThen& then = all[joint];
    then.touched = number;
    const auto card = cards_.joints.find({machine, joint.second});
    if (card == cards_.joints.end())
        return;
    then.saidOn = machine;
    then.within.clear();
    std::string owner = machine;
    auto rest = card->second.in.empty() ? std::vector<std::string>{} : partsOf(card->second.in);
    while (owner != joint.first && !rest.empty()) {
        const HostAndPlace place{owner, rest.front()};
        const auto item = sitting_.sitsAt(place);
        if (!item && !sitting_.lastIn.contains(place))
            return;
        owner = item ? *item : sitting_.lastIn.at(place);
        rest.erase(rest.begin());
    }
    for (const std::string& part : rest)
        then.within += (then.within.empty() ? "" : "/") + part;
}

std::optional<JointOf> BenchJoints::loosen(const std::string& machine, const std::string& code,
                                           const std::string& day, std::size_t number) {
    const auto joint = jointOf(machine, code);
    if (!joint)
        return joint;
    touch(*joint, machine, number);
    JointThen& then = all.at(*joint);
    if (!then.isLoose)
        then.loosened = number;
    then.isLoose = true;
    then.openedOn = day;
    then.ridesThen = then.rides;
    then.tightenings.clear();
    then.outBy.reset();
    return joint;
}

std::optional<JointOf> BenchJoints::open(const std::string& machine, const std::string& code,
                                         const std::string& day, std::size_t number) {
    const JointThen was = then(machine, code);
    if (!was.isLoose && was.torqued && was.openedOn == day && was.ridesThen == was.rides)
        return std::nullopt;
    return loosen(machine, code, day, number);
}

bool BenchJoints::confirm(const std::string& machine, const std::string& code, const Json& fact,
                          std::size_t number) {
    const bool isGone = goneWith(machine, code).has_value();
    const auto bench = isGone ? onBench(machine, code) : std::nullopt;
    if (isGone && !bench)
        return false;
    std::set<JointOf> which;
    for (const auto& [joint, then] : all)
        if (!isGone && joint.second == code && isOn(joint, machine))
            which.insert(joint);
    if (const auto joint = isGone ? bench : jointOf(machine, code))
        which.insert(*joint);
    const auto card = cards_.joints.find({machine, code});
    for (const JointOf& joint : which) {
        touch(joint, machine, number);
        JointThen& then = all.at(joint);
        then.isLoose = false;
        then.torqued = number;
        then.outBy.reset();
        const auto known = card != cards_.joints.end() ? card : cards_.joints.find({then.saidOn, code});
        then.tightenings.push_back({number, fact.value("with", ""), known->second.torque});
    }
    return true;
}

void BenchJoints::ride(const std::string& machine) {
    for (auto& [joint, then] : all)
        then.rides += isOn(joint, machine) ? 1 : 0;
}

void BenchJoints::trackFirst(const HostAndPlace& place, const std::string& item, bool hadAnotherPlace) {
    std::map<JointOf, JointThen> kept;
    for (const auto& [joint, then] : all) {
        if (joint.first != place.first || !(then.within + "/").starts_with(place.second + "/")) {
            kept[joint] = then;
            continue;
        }
        if (hadAnotherPlace)
            continue;
        JointThen& taken = kept[{item, joint.second}];
        taken = then;
        taken.within.erase(0, std::min(then.within.size(), place.second.size() + 1));
    }
    all = std::move(kept);
}

}  // namespace wm::tale

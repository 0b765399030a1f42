// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/slow/bench_walk.h"

#include <algorithm>
#include <utility>

namespace wm::tale {

using calendar::Date;
using calendar::DayPart;
using calendar::Moment;

namespace {

// What the meter ran beyond what was noted between two readings, and whether notes may be as wrong as that.
bool ranUnnoted(const std::vector<Json>& facts, const std::string& machine, const Json& from,
                const Json& to) {
    double noted = 0;
    double outings = 0;
    for (const Json& fact : facts) {
        if (fact.value("ride", "") != machine)
            continue;
        const Moment ridden{dayOf(fact.at("day")), DayPart::Riding};
        if (momentOf(from) < ridden && ridden <= momentOf(to)) {
            noted += static_cast<double>(hundredths(fact.value("hours", "0")));
            ++outings;
        }
    }
    const auto ran = static_cast<double>(hundredths(to.at("shows").get<std::string>()) -
                                         hundredths(from.at("shows").get<std::string>()));
    return ran > noted + 10 * outings + 0.05 * noted;
}

}  // namespace

BenchWalk::BenchWalk(const std::vector<Json>& all, std::string machine, Date on)
    : facts(inOrder(all, on)), cards_(all), machine_(std::move(machine)) {
    for (const auto& [key, torque] : cards_.torqueOf)
        if (key.first == machine_)
            joints[key.second] = {};
    for (const Json& fact : facts) {
        ++number_;
        take(fact);
    }
}

void BenchWalk::take(const Json& fact) {
    const bool isHere = fact.value("on", machine_) == machine_;
    if (isMove(fact))
        move(fact);
    else if (fact.value("ride", "") == machine_)
        ride("ridden open on " + fact.at("day").get<std::string>());
    else if (fact.value("reading", "") == machine_)
        reading(fact);
    else if (!isHere || fact.contains("baseline"))
        return;
    else if (fact.contains("job"))
        job(fact);
    else if (fact.contains("confirm"))
        for (const Json& joint : fact.at("confirm"))
            confirm(joint.get<std::string>(), fact);
    else if (fact.contains("found") && fact.at("found") != "fine")
        loosen(fact.at("joint").get<std::string>(), fact.at("day").get<std::string>());
    else if (fact.contains("ridden_open"))
        ridden.clear();
}

void BenchWalk::loosen(const std::string& joint, const std::string& day) {
    JointThen& then = joints.at(joint);
    if (!then.isLoose)
        then.loosened = number_;
    then.isLoose = true;
    then.touched = number_;
    then.openedOn = day;
    then.ridesThen = rides_;
}

// What was opened and torqued that day, and not ridden since, is one opening.
void BenchWalk::open(const std::set<std::string>& which, const std::string& day) {
    for (const std::string& joint : which) {
        const JointThen& then = joints.at(joint);
        if (!then.isLoose && then.torqued && then.openedOn == day && then.ridesThen == rides_)
            continue;
        loosen(joint, day);
    }
}

void BenchWalk::confirm(const std::string& joint, const Json& fact) {
    JointThen& then = joints.at(joint);
    then.isLoose = false;
    then.touched = number_;
    then.torqued = number_;
    then.torquedWith = fact.value("with", "");
}

void BenchWalk::job(const Json& fact) {
    const std::string day = fact.at("day").get<std::string>();
    const auto opened = cards_.jointsOf(machine_, fact.at("off"));
    open(opened, day);
    for (const Json& each : fact.value("torqued", Json::array())) {
        const std::string joint = each.get<std::string>();
        confirm(joint, fact);
        if (!opened.empty() && !opened.contains(joint))
            neverTouched.push_back(joint + ": the job never touches it");
    }
    if (!fact.contains("sends"))
        return;
    const std::string item = fact.at("sends").get<std::string>();
    const auto root = sitting.root(item, cards_);
    if (root && root->first == machine_)
        sentFrom[root->second] = fact;
    Json away = fact;
    away["away"] = item;
    sitting.move(away);
}

// Off and on again on one day, with nobody else in between.
bool BenchWalk::isOutAndBack(const Json& fact) const {
    const std::string item = movedItem(fact);
    std::optional<HostAndPlace> was;
    if (const auto known = sitting.at.find(item); known != sitting.at.end())
        was = known->second;
    else if (sitting.lastMove.contains(item) && sitting.lastMove.at(item).at("day") == fact.at("day"))
        if (const auto from = sitting.cameFrom.find(item); from != sitting.cameFrom.end())
            was = from->second;
    if (!was)
        return false;
    bool wasOut = false;
    bool isBack = false;
    for (const Json& other : facts) {
        if (!isMove(other) || other.at("day") != fact.at("day"))
            continue;
        const bool isThere =
            other.contains("fit") && other.at("to") == was->first && other.at("at") == was->second;
        if (movedItem(other) != item) {
            if (isThere)
                return false;
            continue;
        }
        wasOut = wasOut || !other.contains("fit");
        isBack = isThere;
    }
    return wasOut && isBack;
}

// The first place of something that has a past, where nobody had tracked anything: it was there.
bool BenchWalk::isOnlyTracking(const Json& fact) const {
    const std::string item = movedItem(fact);
    const HostAndPlace to{fact.at("to").get<std::string>(), fact.at("at").get<std::string>()};
    return !sitting.lastMove.contains(item) && !sitting.lastIn.contains(to) && !cards_.isNew.contains(item);
}

void BenchWalk::moveAt(const std::string& path, const Json& fact) {
    const std::string day = fact.at("day").get<std::string>();
    const auto held = cards_.jointsOf(machine_, cards_.freeing(machine_, path));
    if (fact.contains("loosens")) {
        if (!fact.at("loosens").get<bool>())
            return;
        if (!isOutAndBack(fact))
            open(held, day);
        else if (fact.contains("fit"))
            outAndBack.push_back({path, day, number_});
    } else if (fact.contains("fit") && !isOnlyTracking(fact)) {
        unasked.push_back({path, day, number_});
    }
}

void BenchWalk::move(const Json& fact) {
    const auto from = sitting.root(movedItem(fact), cards_);
    if (from && from->first == machine_)
        moveAt(from->second, fact);
    if (fact.contains("fit")) {
        const auto to =
            sitting.rootOf({fact.at("to").get<std::string>(), fact.at("at").get<std::string>()}, cards_);
        if (to && to->first == machine_) {
            moveAt(to->second, fact);
            sentFrom.erase(to->second);
        }
    }
    sitting.move(fact);
}

std::map<std::string, std::size_t> BenchWalk::looseNow() const {
    std::map<std::string, std::size_t> loose;
    for (const auto& [name, then] : joints)
        if (then.isLoose)
            loose[name] = then.loosened;
    return loose;
}

void BenchWalk::ride(const std::string& words) {
    ++rides_;
    if (const auto loose = looseNow(); !loose.empty())
        ridden.push_back({words, loose});
}

void BenchWalk::reading(const Json& fact) {
    const Json* before = nullptr;
    for (std::size_t i = 0; i + 1 < number_; ++i)
        if (facts[i].value("reading", "") == machine_)
            before = &facts[i];
    if (before == nullptr || !ranUnnoted(facts, machine_, *before, fact))
        return;
    // Only what was loose at a time of riding before this reading can have been ridden open.
    std::map<std::string, std::size_t> loose;
    for (const auto& [name, since] : looseNow()) {
        const Moment opened = momentOf(facts[since - 1]);
        const Date next = opened.part == DayPart::BeforeRiding ? opened.date : opened.date.plusDays(1);
        if (Moment{next, DayPart::Riding} <= momentOf(fact))
            loose[name] = since;
    }
    if (!loose.empty())
        ridden.push_back({"ridden open up to " + fact.at("day").get<std::string>(), loose});
}

}  // namespace wm::tale

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

BenchWalk::BenchWalk(const Cards& cards, const std::vector<Json>& all, Date on)
    : joints(cards, sitting), facts(inOrder(all, on)), cards_(cards) {
    for (const Json& fact : facts) {
        ++number_;
        take(fact);
        joints.comeBack();
    }
}

void BenchWalk::take(const Json& fact) {
    const std::string on = fact.value("on", "");
    if (isMove(fact))
        move(fact);
    else if (fact.contains("ride"))
        ride(fact.at("ride").get<std::string>(), "ridden open on " + fact.at("day").get<std::string>());
    else if (fact.contains("reading"))
        reading(fact);
    else if (fact.contains("baseline"))
        return;
    else if (fact.contains("job"))
        job(fact);
    else if (fact.contains("confirm"))
        for (const Json& joint : fact.at("confirm"))
            confirm(on, joint.get<std::string>(), fact);
    else if (fact.contains("found") && fact.at("found") != "fine")
        joints.loosen(on, fact.at("joint").get<std::string>(), fact.at("day").get<std::string>(), number_);
    else if (fact.contains("ridden_open"))
        std::erase_if(ridden, [&](const RiddenOpen& each) { return each.machine == on; });
}

// It answers for what came from elsewhere too, on the machine where it came from and where it is now.
void BenchWalk::confirm(const std::string& machine, const std::string& code, const Json& fact) {
    const auto bench = joints.goneWith(machine, code) ? joints.onBench(machine, code) : std::nullopt;
    if (!joints.confirm(machine, code, fact, number_))
        return;
    for (auto& [itemAndFrom, loose] : cameWith) {
        const auto root = sitting.root(itemAndFrom.first, cards_);
        if (itemAndFrom.second == machine || (root && root->first == machine) ||
            (bench && bench->first == itemAndFrom.first))
            loose.erase(code);
    }
}

void BenchWalk::job(const Json& fact) {
    const std::string machine = fact.at("on").get<std::string>();
    const auto opened = cards_.jointsOf(machine, fact.at("off"));
    std::set<JointOf> loosened;
    for (const std::string& joint : opened)
        if (const auto loose = joints.open(machine, joint, fact.at("day").get<std::string>(), number_))
            loosened.insert(*loose);
    for (const Json& each : fact.value("torqued", Json::array())) {
        const std::string joint = each.get<std::string>();
        confirm(machine, joint, fact);
        if (!opened.empty() && !opened.contains(joint))
            neverTouched.emplace_back(machine, joint + ": the job never touches it");
    }
    if (!fact.contains("sends"))
        return;
    const std::string item = fact.at("sends").get<std::string>();
    const auto root = sitting.root(item, cards_);
    if (root)
        leave(*root, fact);
    if (root && root->first == machine)
        sentFrom[*root] = fact;
    const auto spot = sitting.at.find(item);
    const std::optional<HostAndPlace> from =
        spot == sitting.at.end() ? std::nullopt : std::optional(spot->second);
    Json away = fact;
    away["away"] = item;
    sitting.move(away);
    if (root && root->first == machine)
        joints.goOut(loosened, item, {*from, *root});
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

// What it takes along from a machine whose joints never said where they sit: those that are loose, but for
// those that hold it.
void BenchWalk::leave(const HostAndPlace& from, const Json& fact) {
    const std::string item = fact.contains("sends") ? fact.at("sends").get<std::string>() : movedItem(fact);
    const auto held = cards_.jointsOf(from.first, cards_.freeing(from.first, from.second));
    auto& loose = cameWith[{item, from.first}];
    loose.clear();
    for (const auto& [key, card] : cards_.joints)
        if (key.first == from.first && card.isUnsaid && !held.contains(key.second) &&
            joints.then(key.first, key.second).isLoose)
            loose.insert(key.second);
}

std::set<JointOf> BenchWalk::moveAt(const HostAndPlace& place, const Json& fact, bool isOneQuestion) {
    const auto& [machine, path] = place;
    const std::string day = fact.at("day").get<std::string>();
    std::set<JointOf> loosened;
    if (fact.contains("loosens") && !fact.at("loosens").get<bool>())
        return loosened;
    if (!fact.contains("loosens")) {
        if (fact.contains("fit") && !isOneQuestion)
            unasked.push_back({machine, path, day, number_});
        return loosened;
    }
    if (!isOneQuestion)
        for (const std::string& joint : cards_.jointsOf(machine, cards_.opening(machine, path)))
            if (const auto loose = joints.open(machine, joint, day, number_))
                loosened.insert(*loose);
    if (isOneQuestion && fact.contains("fit"))
        outAndBack.push_back({machine, path, day, number_});
    return loosened;
}

void BenchWalk::move(const Json& fact) {
    const std::string item = movedItem(fact);
    const bool isTracking = fact.contains("fit") && isOnlyTracking(fact);
    const bool isOneQuestion = fact.contains("loosens") ? isOutAndBack(fact) : isTracking;
    const auto from = sitting.root(item, cards_);
    const HostAndPlace spot = from ? sitting.at.at(item) : HostAndPlace{};
    std::set<JointOf> loosened;
    if (from) {
        leave(*from, fact);
        loosened = moveAt(*from, fact, isOneQuestion);
    }
    const bool hadAnotherPlace = sitting.cameFrom.contains(item) || sitting.at.contains(item);
    std::optional<HostAndPlace> to;
    if (fact.contains("fit"))
        to = HostAndPlace{fact.at("to").get<std::string>(), fact.at("at").get<std::string>()};
    const bool isFirst = to && !sitting.lastIn.contains(*to);
    sitting.move(fact);
    if (from)
        joints.goOut(loosened, item, {spot, *from});
    if (!to)
        return;
    if (isFirst)
        joints.trackFirst(*to, item, hadAnotherPlace);
    if (const auto root = sitting.rootOf(*to, cards_)) {
        moveAt(*root, fact, isOneQuestion);
        sentFrom.erase(*root);
    }
}

void BenchWalk::ride(const std::string& machine, const std::string& words) {
    joints.ride(machine);
    if (const auto loose = joints.looseOn(machine); !loose.empty())
        ridden.push_back({machine, words, loose});
}

void BenchWalk::reading(const Json& fact) {
    const std::string machine = fact.at("reading").get<std::string>();
    const Json* before = nullptr;
    for (std::size_t i = 0; i + 1 < number_; ++i)
        if (facts[i].value("reading", "") == machine)
            before = &facts[i];
    if (before == nullptr || !ranUnnoted(facts, machine, *before, fact))
        return;
    // Only what was loose at a time of riding before this reading can have been ridden open.
    std::map<JointOf, std::size_t> loose;
    for (const auto& [joint, since] : joints.looseOn(machine)) {
        const Moment opened = momentOf(facts[since - 1]);
        const Date next = opened.part == DayPart::BeforeRiding ? opened.date : opened.date.plusDays(1);
        if (Moment{next, DayPart::Riding} <= momentOf(fact))
            loose[joint] = since;
    }
    if (!loose.empty())
        ridden.push_back({machine, "ridden open up to " + fact.at("day").get<std::string>(), loose});
}

}  // namespace wm::tale

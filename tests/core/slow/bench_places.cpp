// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/slow/bench_places.h"

#include <algorithm>
#include <array>

namespace wm::tale {

namespace {

constexpr std::array kMoves{"fit", "remove", "away", "retire"};

// 0 = before riding, 1 = the riding, 2 = what came in the middle of it, 3 = after it or untold.
int phaseOf(const Json& fact) {
    const std::string part = fact.value("part", "");
    if (part == "before")
        return 0;
    if (fact.contains("ride"))
        return 1;
    return part == "riding" ? 2 : 3;
}

bool isStruck(const Json& fact, const std::set<std::string>& struck) {
    return fact.contains("name") && struck.contains(fact.at("name").get<std::string>());
}

// The highest figure that an outing of that day left on the meter of the machine.
std::optional<std::int64_t> leftOn(const std::vector<std::pair<std::size_t, Json>>& placed,
                                   const std::set<std::string>& struck, const std::string& machine,
                                   const Json& day) {
    std::optional<std::int64_t> left;
    for (const auto& [place, fact] : placed)
        if (fact.value("ride", "") == machine && fact.contains("meter") && fact.at("day") == day &&
            !isStruck(fact, struck))
            left = std::max(left.value_or(0), hundredths(fact.at("meter").get<std::string>()));
    return left;
}

// What was noted with a job or an outing.
Json readingWith(const Json& fact) {
    Json reading{{"day", fact.at("day")},
                 {"reading", fact.contains("ride") ? fact.at("ride") : fact.at("on")},
                 {"shows", fact.at("meter")}};
    if (fact.contains("part") && !fact.contains("ride"))
        reading["part"] = fact.at("part");
    return reading;
}

}  // namespace

bool isMove(const Json& fact) {
    return std::any_of(kMoves.begin(), kMoves.end(), [&](const char* kind) { return fact.contains(kind); });
}

std::string movedItem(const Json& fact) {
    for (const char* kind : kMoves)
        if (fact.contains(kind))
            return fact.at(kind).get<std::string>();
    return {};
}

std::vector<Json> inOrder(const std::vector<Json>& facts, calendar::Date on) {
    std::set<std::string> struck;
    for (const Json& fact : facts)
        if (fact.contains("strike"))
            struck.insert(fact.at("strike").get<std::string>());
    std::map<std::string, std::size_t> placeOf;
    std::vector<std::pair<std::size_t, Json>> placed;
    for (const Json& fact : facts) {
        const std::size_t place =
            fact.contains("instead") ? placeOf.at(fact.at("instead").get<std::string>()) : placed.size();
        if (fact.contains("name"))
            placeOf[fact.at("name").get<std::string>()] = place;
        placed.emplace_back(place, fact);
    }
    std::stable_sort(placed.begin(), placed.end(),
                     [](const auto& a, const auto& b) { return a.first < b.first; });
    std::vector<Json> found;
    for (auto& [place, fact] : placed) {
        if (!fact.contains("day") || fact.contains("strike") || on < dayOf(fact.at("day")) ||
            isStruck(fact, struck))
            continue;
        if (fact.contains("job") && fact.contains("meter")) {
            const auto left = leftOn(placed, struck, fact.at("on").get<std::string>(), fact.at("day"));
            if (left && hundredths(fact.at("meter").get<std::string>()) < *left)
                fact["part"] = "before";
        }
        if (fact.contains("meter"))
            found.push_back(readingWith(fact));
        found.push_back(fact);
    }
    std::stable_sort(found.begin(), found.end(), [](const Json& a, const Json& b) {
        const auto dayA = dayOf(a.at("day"));
        const auto dayB = dayOf(b.at("day"));
        return dayA < dayB || (dayA == dayB && phaseOf(a) < phaseOf(b));
    });
    return found;
}

Cards::Cards(const std::vector<Json>& facts) {
    for (const Json& fact : facts) {
        if (fact.contains("day"))
            continue;
        const auto key = [&](const char* what) {
            return HostAndPlace{fact.at("of").get<std::string>(), fact.at(what).get<std::string>()};
        };
        if (fact.contains("machine"))
            machines.insert(fact.at("machine").get<std::string>());
        else if (fact.contains("position"))
            positions[key("position")] = fact;
        else if (fact.contains("joint"))
            joints[key("joint")] = {fact.value("called", fact.at("joint").get<std::string>()),
                                    fact.value("torque", ""), fact.value("in", ""),
                                    fact.value("in_unsaid", false)};
        else if (fact.contains("step"))
            steps[key("step")] = fact;
        else if (fact.contains("tool") && fact.contains("range")) {
            const std::string range = fact.at("range").get<std::string>();
            ranges[fact.at("tool").get<std::string>()] = {hundredths(range.substr(0, range.find(".."))),
                                                          hundredths(range.substr(range.find("..") + 2))};
        } else if (fact.contains("item")) {
            const std::string name = fact.at("item").get<std::string>();
            kindOf[name] = fact.value("kind", "");
            if (fact.contains("new"))
                isNew.insert(name);
        }
    }
}

std::set<std::string> Cards::jointsOf(const std::string& machine, const Json& stepCodes) const {
    std::set<std::string> codes;
    for (const Json& step : stepCodes)
        for (const Json& joint : steps.at({machine, step.get<std::string>()}).at("joints"))
            codes.insert(joint.get<std::string>());
    return codes;
}

Json Cards::freeing(const std::string& machine, const std::string& path) const {
    Json codes = Json::array();
    for (const auto& [key, step] : steps)
        if (key.first == machine && step.value("frees", "") == path)
            codes.push_back(key.second);
    return codes;
}

Json Cards::opening(const std::string& machine, const std::string& path) const {
    Json codes = freeing(machine, path);
    for (std::size_t next = 0; next < codes.size(); ++next)
        for (const Json& needed :
             steps.at({machine, codes[next].get<std::string>()}).value("needs", Json::array()))
            if (std::find(codes.begin(), codes.end(), needed) == codes.end())
                codes.push_back(needed);
    return codes;
}

void Sitting::move(const Json& fact) {
    const std::string item = movedItem(fact);
    const auto from = at.find(item);
    if (from != at.end()) {
        emptiedOn[from->second] = fact.at("day").get<std::string>();
        lastIn[from->second] = item;
        cameFrom[item] = from->second;
        at.erase(from);
    }
    lastMove[item] = fact;
    if (!fact.contains("fit"))
        return;
    const HostAndPlace to{fact.at("to").get<std::string>(), fact.at("at").get<std::string>()};
    at[item] = to;
    lastIn[to] = item;
    emptiedOn.erase(to);
}

std::optional<HostAndPlace> Sitting::root(const std::string& item, const Cards& cards) const {
    const auto place = at.find(item);
    return place == at.end() ? std::nullopt : rootOf(place->second, cards);
}

std::optional<HostAndPlace> Sitting::rootOf(const HostAndPlace& place, const Cards& cards) const {
    if (cards.machines.contains(place.first))
        return place;
    auto whole = root(place.first, cards);
    if (whole)
        whole->second += "/" + place.second;
    return whole;
}

std::optional<std::string> Sitting::sitsAt(const HostAndPlace& place) const {
    for (const auto& [item, where] : at)
        if (where == place)
            return item;
    return std::nullopt;
}

}  // namespace wm::tale

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/slow/random_tale.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <functional>
#include <map>
#include <random>

namespace wm::tale {

namespace {

constexpr std::array kMachines{"Heron", "Kite"};
constexpr std::array kParts{"before", "riding", "after"};

struct Thing {
    const char* name;
    const char* kind;     ///< where it goes, too
    bool isPart = false;  ///< goes into an engine
};
constexpr std::array kThings{Thing{"E1", "engine"},       Thing{"E2", "engine"},
                             Thing{"E3", "engine"},       Thing{"P1", "piston", true},
                             Thing{"P2", "piston", true}, Thing{"W1", "rear wheel"},
                             Thing{"W2", "rear wheel"},   Thing{"W3", "rear wheel"}};

Json taskOn(const std::string& machine, const char* text) {
    Json task = Json::parse(text);
    task["of"] = machine;
    return task;
}

constexpr std::array kTasks{
    R"({"task": "oil", "at": "engine", "every": "5 h", "uses": "oil"})",
    R"({"task": "filter", "at": "engine", "nth_of": "oil", "nth": 2, "uses": "filter"})",
    R"({"task": "piston-kit", "at": "engine/piston", "every": "20 h", "renews": true,
        "brings": ["head nuts: heat, next outing", "oil again: oil, after 2.00 h"]})",
    R"({"task": "heat", "at": "engine", "triggers": ["piston-kit", "bottom-end"]})",
    R"({"task": "bottom-end", "at": "engine", "every": "60 h", "uses": "kit"})",
    R"({"task": "pin", "at": "engine/piston", "triggers": ["bottom-end"]})",
    R"({"task": "tyre", "at": "rear wheel", "every": "10 h", "renews": true,
        "brings": ["spokes: spokes, next outing", "axle: axles, next outing", "chain slack: chain-care, at once"]})",
    R"({"task": "spokes", "at": "rear wheel", "every": "3 outings"})",
    R"({"task": "bearings", "at": "rear wheel", "every": "10 washes", "uses": "bearings"})",
    R"({"task": "axles", "every": "4 outings", "joints": ["axle nut"]})",
    R"({"task": "chain-care", "every": "2 outings"})",
    R"({"task": "jets", "every": "15 h", "uses": "gasket", "every_nth": 3, "extra": "needle"})",
    R"({"task": "plug", "at": "engine", "triggers": ["jets"]})",
    R"({"task": "nuts", "every": "6 outings", "joints": ["head nuts", "axle nut"]})",
    R"({"task": "valve-check", "at": "engine", "every": "8 h",
        "measures": [{"name": "clearance", "least": "0.10", "job": "shims"}, {"name": "cam lobe", "least": "0.10"}]})",
    R"({"task": "shims", "at": "engine", "uses": "shims"})",
    R"({"task": "lube", "happenings": ["wash", "mud day"], "triggers": ["bar-look", "chain-care", "hub-grease"]})",
    R"({"task": "bar-look", "happenings": ["crash"]})",
    R"({"task": "hub-grease", "at": "rear wheel", "happenings": ["wash"], "uses": "grease"})"};

constexpr int kTyre = 6;  ///< of kTasks

class RandomTeller {
  public:
    RandomTeller(std::uint64_t seed, int days) : chance_(seed), days_(days), isMetered_(seed % 4 == 0) {}

    std::vector<Json> write() {
        for (const char* machine : kMachines) {
            put({{"machine", machine}, {"new", dayAt(0)}});
            put({{"joint", "axle nut"}, {"of", machine}});
            put({{"step", "wheel"},
                 {"of", machine},
                 {"joints", Json::array({"axle nut"})},
                 {"frees", "rear wheel"}});
            put({{"joint", "head nuts"}, {"of", machine}, {"in", "engine"}});
            for (const char* task : kTasks)
                put(taskOn(machine, task));
        }
        for (const Thing& thing : kThings)
            describe(thing);
        for (int day = 0; day < days_; ++day)
            for (const char* part : kParts)
                live(day, part);
        tellLate();
        const auto told = named_;
        for (const Json& fact : told)
            takeBack(fact);
        return std::move(facts_);
    }

  private:
    [[nodiscard]] int upTo(int most) { return static_cast<int>(chance_() % static_cast<unsigned>(most + 1)); }
    [[nodiscard]] bool oneIn(int n) { return upTo(n - 1) == 0; }
    [[nodiscard]] const char* machine() { return kMachines.at(static_cast<std::size_t>(upTo(1))); }
    [[nodiscard]] static std::string dayAt(int day) {
        return calendar::parseDate("", "2026-01-01").value().plusDays(day).iso();
    }
    void put(Json fact) { facts_.push_back(std::move(fact)); }

    // E3 and W3 come late; the rest is there from the first morning, fitted or not.
    void describe(const Thing& thing) {
        const std::string name = thing.name;
        const bool isLate = name == "E3" || name == "W3";
        const int from = isLate ? upTo(days_ - 1) : 0;
        comes_[name] = from;
        Json card{{"item", name}, {"kind", thing.kind}};
        const bool isNew = isMetered_ || !oneIn(3);
        card[isNew ? "new" : "used"] = dayAt(from);
        if (!isNew)
            card["past"] = "10.00..15.00..20.00";
        put(card);
        if (!isLate && !oneIn(thing.isPart ? 2 : 4))
            fit(thing, thing.isPart ? (name == "P1" ? "E1" : "E2") : kMachines.at(name.back() == '1' ? 0 : 1),
                0, "before");
    }
    void fit(const Thing& thing, const std::string& to, int day, const std::string& part) {
        const std::string place = to + "/" + thing.kind;
        for (const auto& [other, at] : at_)
            if (at == place)
                return;
        at_[thing.name] = place;
        put({{"day", dayAt(day)}, {"part", part}, {"fit", thing.name}, {"to", to}, {"at", thing.kind}});
    }
    // What there is to be told of a part of a day is told in any order.
    void live(int day, const std::string& part) {
        std::vector<std::function<void()>> all;
        if (part == "riding")
            for (const char* machine : kMachines)
                all.emplace_back([=, this] { ride(machine, day); });
        while (oneIn(3))
            all.emplace_back([=, this] { move(day, part); });
        while (oneIn(3))
            all.emplace_back([=, this] { record(day, part); });
        if (part == "riding" && oneIn(10))
            all.emplace_back([=, this] { putNamed({{"day", dayAt(day)}, {"crash", machine()}}); });
        if (part == "after" && oneIn(2))
            all.emplace_back([=, this] { putNamed({{"day", dayAt(day)}, {"wash", machine()}}); });
        if (part == "after" && isMetered_ && oneIn(5))
            all.emplace_back([=, this] {
                const std::string which = machine();
                put({{"day", dayAt(day)}, {"reading", which}, {"shows", hours(shown_[which])}});
            });
        for (; !all.empty(); all.pop_back()) {
            std::swap(all.at(static_cast<std::size_t>(upTo(static_cast<int>(all.size()) - 1))), all.back());
            all.back()();
        }
    }
    std::string putNamed(Json fact) {
        fact["name"] = fmt::format("n{}", ++lastName_);
        named_.push_back(fact);
        put(fact);
        return fact.at("name");
    }
    // Struck, or put right, or left as it was; what was put right may be wrong again.
    void takeBack(Json fact) {
        while (oneIn(8)) {
            put({{"day", dayAt(days_ - 1)}, {"strike", fact.at("name")}});
            if (oneIn(2))
                return;
            fact["instead"] = fact.at("name");
            fact.erase("name");
            if (fact.contains("part") && oneIn(3))
                fact["part"] = kParts.at(static_cast<std::size_t>(upTo(2)));
            if (fact.contains("measured"))
                fact["measured"] = values();
            fact["name"] = putNamed(fact);
        }
    }
    [[nodiscard]] Json values() {
        Json all = Json::object();
        for (const char* name : {"clearance", "cam lobe"})
            if (oneIn(2))
                all[name] = fmt::format("0.{:02}", 8 + upTo(4));
        return all;
    }
    [[nodiscard]] static std::string hours(int hundredths) {
        return fmt::format("{}.{:02}", hundredths / 100, hundredths % 100);
    }
    void ride(const std::string& machine, int day) {
        if (!oneIn(3))
            return;
        const int ran = 20 + upTo(200);
        shown_[machine] += ran;
        if (isMetered_ && oneIn(4))
            return;
        Json fact{{"day", dayAt(day)}, {"ride", machine}, {"hours", hours(ran)}};
        if (oneIn(5))
            fact["ground"] = "mud";
        put(fact);
    }
    void move(int day, const std::string& part) {
        const Thing& thing = kThings.at(static_cast<std::size_t>(upTo(static_cast<int>(kThings.size()) - 1)));
        const std::string name = thing.name;
        if (day < comes_[name] || retired_[name])
            return;
        if (!at_.contains(name)) {
            const std::string to =
                thing.isPart ? kThings.at(static_cast<std::size_t>(upTo(2))).name : std::string(machine());
            if (!retired_[to] && day >= comes_[to])
                fit(thing, to, day, part);
            return;
        }
        const char* how = oneIn(20) ? "retire" : oneIn(4) ? "away" : "remove";
        retired_[name] = how == std::string("retire");
        at_.erase(name);
        put({{"day", dayAt(day)}, {"part", part}, {how, name}});
    }
    // What sits at a path of a machine by what was told so far.
    [[nodiscard]] std::string sitsAt(const std::string& machine, const std::string& path) const {
        std::string host = machine;
        for (const std::string& part :
             {path.substr(0, path.find('/')),
              path.find('/') == std::string::npos ? "" : path.substr(path.find('/') + 1)}) {
            if (part.empty())
                return host;
            const auto found = std::find_if(
                at_.begin(), at_.end(), [&](const auto& each) { return each.second == host + "/" + part; });
            if (found == at_.end())
                return {};
            host = found->first;
        }
        return host;
    }
    void record(int day, const std::string& part) {
        // Oil and tyres are changed more often than the rest; in the evening often two jobs of which one asks
        // for the other.
        const int last = static_cast<int>(kTasks.size()) - 1;
        const int which = oneIn(4)                     ? 0
                          : oneIn(10)                  ? kTyre
                          : part[0] == 'a' && oneIn(3) ? last - upTo(2)
                                                       : upTo(last);
        const Json task = Json::parse(kTasks.at(static_cast<std::size_t>(which)));
        const std::string on = machine();
        const char* how = oneIn(6) ? "looked" : oneIn(8) ? "baseline" : "done";
        Json fact{{"day", dayAt(day)}, {"part", part}, {how, task.at("task")}, {"on", on}};
        if (task.contains("at")) {
            const std::string sits = sitsAt(on, task.at("at").get<std::string>());
            if (!sits.empty() && !oneIn(8))
                fact["item"] = oneIn(6) ? spareFor(sits) : sits;
        }
        if (task.contains("every_nth") && oneIn(3))
            fact["extra"] = true;
        if (task.contains("measures"))
            fact["measured"] = values();
        putNamed(fact);
    }
    // Another one of the kind that lies on the shelf, or the thing itself.
    [[nodiscard]] std::string spareFor(const std::string& item) {
        for (const Thing& thing : kThings)
            if (thing.name[0] == item[0] && !at_.contains(thing.name) && !retired_[thing.name] &&
                comes_[thing.name] == 0)
                return thing.name;
        return item;
    }
    // A spare that was on a machine all the time, which nobody had told: if its place stayed free.
    void tellLate() {
        const bool isFree = std::none_of(facts_.begin(), facts_.end(), [](const Json& fact) {
            return fact.value("to", "") == "Kite" && fact.value("at", "") == "engine";
        });
        if (!isFree || !oneIn(2))
            return;
        const std::string from = dayAt(oneIn(2) ? 0 : days_ / 2);
        put({{"item", "E4"}, {"kind", "engine"}, {"used", from}, {"past", "5.00..5.00..5.00"}});
        put({{"day", from}, {"part", "before"}, {"fit", "E4"}, {"to", "Kite"}, {"at", "engine"}});
    }

    std::mt19937_64 chance_;
    int days_;
    bool isMetered_;
    std::vector<Json> facts_;
    std::vector<Json> named_;  ///< records, washes and crashes
    int lastName_ = 0;
    std::map<std::string, std::string> at_;  ///< "Heron/engine"
    std::map<std::string, int> comes_;
    std::map<std::string, bool> retired_;
    std::map<std::string, int> shown_;
};

}  // namespace

std::vector<Json> randomTale(std::uint64_t seed, int days) {
    return RandomTeller(seed, days).write();
}

const std::vector<std::string>& randomTasks() {
    static const std::vector<std::string> codes = [] {
        std::vector<std::string> all;
        for (const char* task : kTasks)
            all.push_back(Json::parse(task).at("task").get<std::string>());
        return all;
    }();
    return codes;
}

}  // namespace wm::tale

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/slow/random_bench.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <map>
#include <random>

namespace wm::tale {

namespace {

constexpr std::array kWrenches{"Big wrench", "Small wrench"};
constexpr std::array kOnBench{"Heron", "Kite", "Plover"};
constexpr std::array kEngines{"E1", "E2", "E3", "E4"};

/// Things that come off and go on again, and where they go: on one of `machines` of kOnBench, none: in an
/// engine.
struct Loose {
    const char* item;
    const char* at;
    int machines;
};
constexpr std::array kLoose{
    Loose{"W1", "rear wheel", 3},  Loose{"W2", "rear wheel", 3}, Loose{"W3", "rear wheel", 3},
    Loose{"F1", "front wheel", 2}, Loose{"E1", "engine", 3},     Loose{"E1", "engine", 3},
    Loose{"E2", "engine", 3},      Loose{"E3", "engine", 3},     Loose{"E4", "engine", 3},
    Loose{"C1", "clutch", 0},      Loose{"C2", "clutch", 0},     Loose{"H1", "hand guards", 1}};

const std::vector<Json>& garage() {
    static const std::vector<Json> facts = [] {
        for (const Case& one : casesIn("state"))
            if (one.name == "NothingIsLooseInside")
                return one.facts;
        return std::vector<Json>{};
    }();
    return facts;
}

class BenchTeller {
  public:
    // In every third bench nobody ever said where a joint sits.
    BenchTeller(std::uint64_t seed, int days) : chance_(seed), days_(days), facts_(garage()) {
        for (Json& fact : facts_) {
            if (seed % 3 == 0 && fact.contains("joint")) {
                fact.erase("in");
                fact["in_unsaid"] = true;
            }
            const std::string of = fact.value("of", "");
            if (fact.contains("step"))
                sayNeeds(fact);
            if (fact.value("tool", "") == "Small wrench")
                fact["range"] = "5..50";
            if (fact.contains("step"))
                steps_[of].push_back(fact);
            if (fact.contains("joint"))
                joints_[of].push_back(fact.at("joint").get<std::string>());
            if (fact.contains("fit"))
                at_[fact.at("fit").get<std::string>()] =
                    fact.at("to").get<std::string>() + "/" + fact.at("at").get<std::string>();
        }
    }

    std::vector<Json> tell() {
        for (int day = 0; day < days_; ++day)
            while (!oneIn(3))
                something(day);
        const auto told = named_;
        for (const Json& fact : told)
            takeBack(fact);
        return std::move(facts_);
    }

  private:
    [[nodiscard]] int upTo(int most) { return static_cast<int>(chance_() % static_cast<unsigned>(most + 1)); }
    [[nodiscard]] bool oneIn(int n) { return upTo(n - 1) == 0; }
    // What has to be off for some of them.
    static void sayNeeds(Json& step) {
        const std::string code = step.at("step").get<std::string>();
        if (code == "engine" && step.at("of") != "Kite")
            step["needs"] = Json::array({"seat"});
        else if (code == "engine")
            step["needs"] = Json::array({"sprocket"});
        else if (code == "clutch")
            step["needs"] = Json::array({"cam-cover"});
        else if (code == "cam-cover" && step.at("of") == "Heron")
            step["needs"] = Json::array({"top-cover"});
    }
    template <class List>
    [[nodiscard]] auto anyOf(const List& list) {
        return list.at(static_cast<std::size_t>(upTo(static_cast<int>(list.size()) - 1)));
    }
    [[nodiscard]] Json dated(int day) {
        Json fact{{"day", benchDay(day).iso()}};
        if (oneIn(3))
            fact["part"] = oneIn(2) ? "before" : "after";
        return fact;
    }
    void putNamed(Json fact) {
        fact["name"] = fmt::format("n{}", ++lastName_);
        named_.push_back(fact);
        facts_.push_back(std::move(fact));
    }
    // Struck or put right. A move is put right alone: taken back it could leave two wheels in one place.
    void takeBack(Json fact) {
        if (!oneIn(8))
            return;
        const bool isMove = fact.contains("fit") || fact.contains("remove") || fact.contains("away") ||
                            fact.contains("sends");
        facts_.push_back({{"day", benchDay(days_ - 1).iso()}, {"strike", fact.at("name")}});
        if (!isMove && oneIn(2))
            return;
        fact["instead"] = fact.at("name");
        if (isMove && !fact.contains("sends"))
            fact["loosens"] = !oneIn(3);
        if (fact.contains("torqued") && oneIn(2))
            fact.erase("torqued");
        if (fact.contains("found"))
            fact["found"] = oneIn(2) ? "moved" : "fine";
        const std::size_t last = named_.size();
        putNamed(fact);
        takeBack(Json(named_.at(last)));
    }
    void something(int day) {
        const std::string machine = oneIn(3) ? "Heron" : anyOf(kOnBench);
        switch (upTo(9)) {
            case 0:
            case 1:
                return job(machine, day);
            case 2:
                return confirm(machine, day);
            case 3:
                return putNamed({{"day", benchDay(day).iso()},
                                 {"found", oneIn(2)   ? "moved"
                                           : oneIn(2) ? "mark broken"
                                                      : "fine"},
                                 {"joint", anyOf(joints_.at(machine))},
                                 {"on", machine}});
            case 4:
                return ride(machine, day);
            case 5:
                readOn_[machine] = day;
                return facts_.push_back(
                    {{"day", benchDay(day).iso()}, {"reading", machine}, {"shows", hours(shown_[machine])}});
            case 6:
                if (!oneIn(3))
                    putNamed(
                        {{"day", benchDay(day).iso()}, {"check", anyOf(kWrenches)}, {"passed", oneIn(2)}});
                return;
            default:
                return move(day);
        }
    }
    [[nodiscard]] static std::string hours(int hundredths) {
        return fmt::format("{}.{:02}", hundredths / 100, hundredths % 100);
    }
    void ride(const std::string& machine, int day) {
        const int ran = 20 + upTo(200);
        shown_[machine] += ran;
        if (oneIn(4))
            return;
        Json fact{{"day", benchDay(day).iso()}, {"ride", machine}, {"hours", hours(ran)}};
        noteMeter(fact, machine, day);
        putNamed(fact);
    }
    // A figure written down with it; none on a day on which the meter was read by itself, of which nobody
    // knows what came first.
    void noteMeter(Json& fact, const std::string& machine, int day) {
        if (oneIn(3) && !(readOn_.contains(machine) && readOn_.at(machine) == day))
            fact["meter"] = hours(shown_[machine]);
    }
    void confirm(const std::string& machine, int day) {
        Json fact = dated(day);
        fact["confirm"] = Json::array({anyOf(joints_.at(machine))});
        fact["on"] = machine;
        if (oneIn(2))
            fact["with"] = anyOf(kWrenches);
        putNamed(fact);
    }
    void job(const std::string& machine, int day) {
        Json fact = dated(day);
        fact["job"] = "work";
        fact["on"] = machine;
        fact["off"] = Json::array();
        Json torqued = Json::array();
        for (const Json& step : steps_.at(machine))
            if (oneIn(step.at("step") == "top-cover" ? 2 : 4)) {
                fact["off"].push_back(step.at("step"));
                if (oneIn(2))
                    torqued.push_back(step.at("joints").at(0));
            }
        if (!torqued.empty()) {
            fact["torqued"] = torqued;
            if (oneIn(2))
                fact["with"] = anyOf(kWrenches);
        }
        if (oneIn(4) && sends(fact))
            fact.erase("part");
        else
            noteMeter(fact, machine, day);
        putNamed(fact);
    }
    // Something that sits on the machine goes to a workshop with the job.
    bool sends(Json& fact) {
        for (const Loose& thing : kLoose) {
            const auto sits = at_.find(thing.item);
            if (sits == at_.end() || sits->second.rfind(fact.at("on").get<std::string>() + "/", 0) != 0 ||
                !oneIn(3))
                continue;
            fact["sends"] = thing.item;
            at_.erase(sits);
            return true;
        }
        return false;
    }
    // In the order of telling; the parts of a day only go forwards for moves.
    void move(int day) {
        const Loose thing = anyOf(kLoose);
        const std::string item = thing.item;
        const auto sits = at_.find(item);
        if (sits != at_.end()) {
            Json fact{{"day", benchDay(day).iso()}};
            if (!oneIn(4))
                fact["loosens"] = true;
            const std::string place = sits->second;
            at_.erase(sits);
            fact[oneIn(4) ? "away" : "remove"] = item;
            putNamed(fact);
            if (oneIn(3))
                return fit(thing, place, day);
            if (oneIn(3))
                return;
        }
        const std::string host =
            thing.machines == 0
                ? std::string(anyOf(kEngines))
                : std::string(kOnBench.at(static_cast<std::size_t>(upTo(thing.machines - 1))));
        fit(thing, host + "/" + thing.at, day);
    }
    void fit(const Loose& thing, const std::string& place, int day) {
        const auto there =
            std::find_if(at_.begin(), at_.end(), [&](const auto& each) { return each.second == place; });
        if (there != at_.end()) {
            if (oneIn(3))
                return;
            putNamed({{"day", benchDay(day).iso()}, {"remove", there->first}, {"loosens", true}});
            at_.erase(there);
        }
        at_[thing.item] = place;
        Json fact{{"day", benchDay(day).iso()},
                  {"fit", thing.item},
                  {"to", place.substr(0, place.find('/'))},
                  {"at", thing.at}};
        if (!oneIn(4))
            fact["loosens"] = true;
        putNamed(fact);
    }

    std::mt19937_64 chance_;
    int days_;
    std::vector<Json> facts_;
    std::vector<Json> named_;
    int lastName_ = 0;
    std::map<std::string, std::vector<Json>> steps_;          ///< by machine
    std::map<std::string, std::vector<std::string>> joints_;  ///< by machine
    std::map<std::string, std::string> at_;
    std::map<std::string, int> shown_;
    std::map<std::string, int> readOn_;  ///< the day of the last reading by itself
};

}  // namespace

std::vector<Json> randomBench(std::uint64_t seed, int days) {
    return BenchTeller(seed, days).tell();
}

calendar::Date benchDay(int day) {
    return calendar::parseDate("", "2026-03-01").value().plusDays(day);
}

}  // namespace wm::tale

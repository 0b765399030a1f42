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

constexpr std::array kJoints{"rear axle nut", "front axle nut", "linkage bolt", "engine mount"};
constexpr std::array kSteps{"rear-wheel", "front-wheel", "linkage", "engine"};
constexpr std::array kWrenches{"Big wrench", "Small wrench"};

struct Loose {
    const char* item;
    const char* to;
    const char* at;
};
constexpr std::array kLoose{Loose{"W1", "Heron", "rear wheel"},  Loose{"W2", "Heron", "rear wheel"},
                            Loose{"F1", "Heron", "front wheel"}, Loose{"E1", "Heron", "engine"},
                            Loose{"P1", "E1", "piston"},         Loose{"H1", "Heron", "hand guards"},
                            Loose{"W2", "Kite", "rear wheel"},   Loose{"T1", "W1", "tyre"}};

const std::vector<Json>& garage() {
    static const std::vector<Json> facts = [] {
        for (const Case& one : casesIn("state"))
            if (one.name == "TrackingIsNoWork")
                return one.facts;
        return std::vector<Json>{};
    }();
    return facts;
}

class BenchTeller {
  public:
    BenchTeller(std::uint64_t seed, int days) : chance_(seed), days_(days), facts_(garage()) {
        at_ = {{"W1", "Heron/rear wheel"}, {"E1", "Heron/engine"}};
        for (const char* wrench : kWrenches)
            facts_.push_back({{"tool", wrench}});
    }

    std::vector<Json> tell() {
        for (int day = 0; day < days_; ++day)
            while (!oneIn(3))
                something(day);
        for (const std::string& name : names_)
            if (oneIn(12))
                facts_.push_back({{"day", benchDay(days_ - 1).iso()}, {"strike", name}});
        return std::move(facts_);
    }

  private:
    [[nodiscard]] int upTo(int most) { return static_cast<int>(chance_() % static_cast<unsigned>(most + 1)); }
    [[nodiscard]] bool oneIn(int n) { return upTo(n - 1) == 0; }
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
    // Only what moves nothing may be struck: a move taken back could leave two wheels in one place.
    void putNamed(Json fact) {
        names_.push_back(fmt::format("n{}", names_.size() + 1));
        fact["name"] = names_.back();
        facts_.push_back(std::move(fact));
    }
    void something(int day) {
        switch (upTo(9)) {
            case 0:
            case 1:
                return job(day);
            case 2:
                return confirm(day);
            case 3:
                return putNamed({{"day", benchDay(day).iso()},
                                 {"found", oneIn(2)   ? "moved"
                                           : oneIn(2) ? "mark broken"
                                                      : "fine"},
                                 {"joint", anyOf(kJoints)},
                                 {"on", "Heron"}});
            case 4:
                return ride(day);
            case 5:
                return facts_.push_back(
                    {{"day", benchDay(day).iso()}, {"reading", "Heron"}, {"shows", hours(shown_)}});
            case 6:
                if (oneIn(3))
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
    void ride(int day) {
        const int ran = 20 + upTo(200);
        shown_ += ran;
        if (!oneIn(4))
            putNamed({{"day", benchDay(day).iso()}, {"ride", "Heron"}, {"hours", hours(ran)}});
    }
    void confirm(int day) {
        Json fact = dated(day);
        fact["confirm"] = Json::array({anyOf(kJoints)});
        fact["on"] = "Heron";
        if (oneIn(2))
            fact["with"] = anyOf(kWrenches);
        putNamed(fact);
    }
    void job(int day) {
        Json fact = dated(day);
        fact["job"] = "work";
        fact["on"] = "Heron";
        fact["off"] = Json::array();
        Json torqued = Json::array();
        for (std::size_t i = 0; i < kSteps.size(); ++i)
            if (oneIn(3)) {
                fact["off"].push_back(kSteps.at(i));
                if (oneIn(2))
                    torqued.push_back(kJoints.at(i));
            }
        if (!torqued.empty()) {
            fact["torqued"] = torqued;
            if (oneIn(2))
                fact["with"] = anyOf(kWrenches);
        }
        putNamed(fact);
    }
    // In the order of telling; the parts of a day only go forwards for moves.
    void move(int day) {
        const Loose loose = anyOf(kLoose);
        const std::string item = loose.item;
        Json fact{{"day", benchDay(day).iso()}};
        if (!oneIn(4))
            fact["loosens"] = true;
        const auto sits = at_.find(item);
        if (sits != at_.end()) {
            const std::string place = sits->second;
            at_.erase(sits);
            fact[oneIn(4) ? "away" : "remove"] = item;
            facts_.push_back(fact);
            if (oneIn(3))
                fit(loose, item, place, day);
            return;
        }
        fit(loose, item, std::string(loose.to) + "/" + loose.at, day);
    }
    void fit(const Loose& loose, const std::string& item, const std::string& place, int day) {
        if (std::any_of(at_.begin(), at_.end(), [&](const auto& each) { return each.second == place; }))
            return;
        at_[item] = place;
        Json fact{{"day", benchDay(day).iso()},
                  {"fit", item},
                  {"to", place.substr(0, place.find('/'))},
                  {"at", loose.at}};
        if (!oneIn(4))
            fact["loosens"] = true;
        facts_.push_back(fact);
    }

    std::mt19937_64 chance_;
    int days_;
    std::vector<Json> facts_;
    std::vector<std::string> names_;
    std::map<std::string, std::string> at_;
    int shown_ = 0;
};

}  // namespace

std::vector<Json> randomBench(std::uint64_t seed, int days) {
    return BenchTeller(seed, days).tell();
}

calendar::Date benchDay(int day) {
    return calendar::parseDate("", "2026-03-01").value().plusDays(day);
}

}  // namespace wm::tale

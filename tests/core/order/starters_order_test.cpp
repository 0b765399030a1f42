// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// The plans of all starters against the truths of order: a ratchet. tests/data/order/failing.txt says in how
// many plans each truth is broken or cannot be said; it may only get less, and says so when it has.
#include <fmt/format.h>
#include <gtest/gtest.h>

#include <array>
#include <fstream>
#include <iostream>

#include "tests/core/exchange/shipped.h"
#include "tests/core/order/order_files.h"
#include "tests/core/order/starter_plan.h"
#include "tests/repository.h"

namespace wm::order {
namespace {

const Json& bindings() {
    static const Json kBindings = fileOf("bindings.json");
    return kBindings;
}

std::string nameOf(const std::string& file) {
    return file.substr(0, file.rfind(".json"));
}

struct Count {
    int broken = 0;
    int cannot = 0;
    int held = 0;
    int notConcerned = 0;
    bool hasWords = true;   ///< for any of the acts that the truth is about
    std::string example{};  ///< of the worst

    void add(const Finding& finding, const std::string& plan) {
        if (finding.verdict == Verdict::Broken && broken == 0)
            example = plan + ": " + finding.first + " > " + finding.second;
        broken += finding.verdict == Verdict::Broken ? 1 : 0;
        cannot += finding.verdict == Verdict::CannotBeSaid ? 1 : 0;
        held += finding.verdict == Verdict::Held ? 1 : 0;
        notConcerned += finding.verdict == Verdict::NotConcerned ? 1 : 0;
    }
    /// As in failing.txt: plans that break it, plans that cannot say it, or that there are no words for it.
    [[nodiscard]] std::string cell() const {
        return hasWords ? fmt::format("{}/{}", broken, cannot) : "no words";
    }
    [[nodiscard]] bool isClean() const { return hasWords && broken == 0 && cannot == 0; }
};

/// The row of plans, each counted once by the worst that any truth finds in it.
constexpr const char* kAny = "any";

using Row = std::array<Count, test::kShippedStarters.size()>;

/// Starter by truth.
class Table {
  public:
    Table() {
        for (std::size_t at = 0; at < test::kShippedStarters.size(); ++at) {
            const std::string file = test::kShippedStarters.at(at);
            plans_.emplace_back(test::shippedStarter(file), bindings());
            sayable_.emplace_back(plans_.back().sayable());
            kinds_.push_back(bindings().at("starters").at(nameOf(file)).get<std::vector<std::string>>());
        }
        for (const Truth& truth : truths().all())
            for (std::size_t at = 0; at < plans_.size(); ++at)
                rows_[truth.name].at(at).hasWords =
                    !applies(truth, at) || Truths::canConcern(truth, sayable_.at(at));
    }

    [[nodiscard]] const StarterPlan& plan(std::size_t starter) const { return plans_.at(starter); }

    void add(std::size_t starter, const StarterPlan::Tasks& tasks) {
        const Acts acts = plans_.at(starter).actsOf(tasks);
        std::string name;
        for (const upkeep::TaskVersion* task : tasks)
            name += (name.empty() ? "" : "+") + task->code;
        Finding worst;
        for (const Truth& truth : truths().all()) {
            if (!applies(truth, starter))
                continue;
            const Finding finding = truths().judge(truth, acts, sayable_.at(starter));
            rows_[truth.name].at(starter).add(finding, name);
            if (finding.verdict > worst.verdict)
                worst = finding;
        }
        rows_[kAny].at(starter).add(worst, name);
    }

    void print() const {
        std::cout << "truth | starter | broken | cannot be said | held | not concerned | first broken\n";
        for (const auto& [name, row] : rows_)
            for (std::size_t at = 0; at < plans_.size(); ++at) {
                const Count& count = row.at(at);
                std::cout << fmt::format("{} | {} | {} | {} | {} | {} | {}\n", name,
                                         nameOf(test::kShippedStarters.at(at)), count.broken,
                                         count.hasWords ? std::to_string(count.cannot) : "no words",
                                         count.held, count.notConcerned, count.example);
            }
    }

    /// One line a truth that is not held everywhere, its cells by starter.
    [[nodiscard]] std::map<std::string, std::vector<std::string>> cells() const {
        std::map<std::string, std::vector<std::string>> all;
        for (const auto& [name, row] : rows_) {
            if (std::all_of(row.begin(), row.end(), [](const Count& count) { return count.isClean(); }))
                continue;
            for (const Count& count : row)
                all[name].push_back(count.cell());
        }
        return all;
    }

    [[nodiscard]] int answersOf(std::size_t starter) const {
        int sum = 0;
        for (const auto& [name, row] : rows_)
            sum += row.at(starter).held + row.at(starter).broken;
        return sum;
    }

  private:
    [[nodiscard]] bool applies(const Truth& truth, std::size_t starter) const {
        const auto& kinds = kinds_.at(starter);
        return truth.kinds.empty() || std::any_of(truth.kinds.begin(), truth.kinds.end(), [&](const auto& k) {
                   return std::find(kinds.begin(), kinds.end(), k) != kinds.end();
               });
    }

    std::vector<StarterPlan> plans_;
    std::vector<Sayable> sayable_;
    std::vector<std::vector<std::string>> kinds_;
    std::map<std::string, Row> rows_;
};

// "alone 4c | 2/0 | 2/0 | no words | 2/0"
std::map<std::string, std::vector<std::string>> allowed(const std::string& section) {
    std::ifstream in(test::repositoryPath("tests/data/order/failing.txt"));
    std::map<std::string, std::vector<std::string>> all;
    for (std::string line; std::getline(in, line);) {
        if (!line.starts_with(section + " "))
            continue;
        std::vector<std::string> cells;
        for (std::size_t from = section.size() + 1; from < line.size();) {
            const std::size_t end = std::min(line.find(" | ", from), line.size());
            cells.push_back(line.substr(from, end - from));
            from = end + 3;
        }
        const std::string name = cells.front();
        cells.erase(cells.begin());
        all[name] = std::move(cells);
    }
    return all;
}

void expectAsSaid(const Table& table, const std::string& section) {
    table.print();
    const auto said = allowed(section);
    const auto found = table.cells();
    for (const auto& [name, cells] : found)
        if (const auto known = said.find(name); known == said.end() || known->second != cells)
            ADD_FAILURE()
                << "tests/data/order/failing.txt says otherwise (more: mend it; less: put it down):\n"
                << section << " " << name << " | " << fmt::format("{}", fmt::join(cells, " | ")) << "\n  "
                << (name == kAny ? "plans" : truths().named(name).says);
    for (const auto& [name, cells] : said)
        EXPECT_TRUE(found.contains(name)) << section << " " << name << " holds now: take its line out";
    for (std::size_t at = 0; at < test::kShippedStarters.size(); ++at)
        EXPECT_GT(table.answersOf(at), 0) << "nothing was asked of " << test::kShippedStarters.at(at);
}

TEST(StartersOrderTest, EachCodeAndTextIsBound) {
    for (const char* file : test::kShippedStarters) {
        const StarterPlan plan(test::shippedStarter(file), bindings());
        for (const std::string& unknown : plan.unbound())
            ADD_FAILURE() << file << ": tests/data/order/bindings.json does not know " << unknown;
    }
}

TEST(StartersOrderTest, PlansOfSingleTasksBreakNoMoreThanIsSaid) {
    Table table;
    for (std::size_t at = 0; at < test::kShippedStarters.size(); ++at)
        for (const upkeep::TaskVersion& task : table.plan(at).starter().tasks)
            table.add(at, {&task});
    expectAsSaid(table, "alone");
}

// The same on every machine: no distribution of the library, whose draws differ from one to the next.
class Draws {
  public:
    explicit Draws(std::uint64_t seed) : state_(seed) {}
    std::size_t below(std::size_t end) {
        state_ = state_ * 6364136223846793005U + 1442695040888963407U;
        return static_cast<std::size_t>(state_ >> 33U) % end;
    }

  private:
    std::uint64_t state_;
};

StarterPlan::Tasks pick(const exchange::Starter& starter, Draws& draws) {
    StarterPlan::Tasks open;
    for (const upkeep::TaskVersion& task : starter.tasks)
        if (task.active)
            open.push_back(&task);
    StarterPlan::Tasks picked;
    for (std::size_t count = 2 + draws.below(5); count > 0; --count) {
        const std::size_t at = draws.below(open.size());
        picked.push_back(open[at]);
        open.erase(open.begin() + static_cast<std::ptrdiff_t>(at));
    }
    return picked;
}

TEST(StartersOrderTest, PlansOfRandomPicksBreakNoMoreThanIsSaid) {
    Table table;
    for (std::size_t at = 0; at < test::kShippedStarters.size(); ++at) {
        Draws draws(20'260'000 + at);
        for (int count = 0; count < 500; ++count)
            table.add(at, pick(table.plan(at).starter(), draws));
    }
    expectAsSaid(table, "picks");
}

}  // namespace
}  // namespace wm::order

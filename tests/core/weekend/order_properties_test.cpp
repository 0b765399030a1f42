// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// Plans over small random machines with random edges, held against all that binds them, gathered anew here
// and by looking again and again; and a cycle is said where there is one, and only there.
#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <algorithm>
#include <map>
#include <set>

#include "core/weekend/plan.h"
#include "tests/core/weekend/act_words.h"
#include "tests/core/weekend/generic_machine.h"

namespace wm::weekend {
namespace {

using upkeep::Comes;
using upkeep::Deed;

struct OrderCase {
    std::vector<StepVersion> steps;
    std::vector<upkeep::TaskVersion> tasks;

    [[nodiscard]] std::vector<Job> jobs() const {
        std::vector<Job> all;
        for (const upkeep::TaskVersion& task : tasks) {
            Job job{.name = task.code, .definition = &task};
            for (const base::Code& code : task.steps)
                job.steps.push_back(code.code);
            all.push_back(std::move(job));
        }
        return all;
    }
};

std::string coded(char kind, std::size_t number) {
    return kind + std::to_string(number);
}

upkeep::ActRef anAct(std::size_t steps, std::size_t tasks) {
    const auto deed = static_cast<Deed>(*rc::gen::inRange(0, 6));
    const char kind = deed == Deed::Job                       ? 't'
                      : deed == Deed::Do                      ? 'd'
                      : deed == Deed::Off || deed == Deed::On ? 's'
                                                              : 'j';
    return {deed, coded(kind, *rc::gen::inRange<std::size_t>(0, deed == Deed::Job ? tasks : steps))};
}

rc::Gen<OrderCase> anOrderCase() {
    return rc::gen::exec([] {
        OrderCase c;
        const auto count = *rc::gen::inRange<std::size_t>(1, 6);
        const auto tasks = *rc::gen::inRange<std::size_t>(1, 4);
        for (std::size_t s = 0; s < count; ++s) {
            StepVersion step;
            step.code = coded('s', s);
            step.name = step.code;
            for (std::size_t need = 0; need < s; ++need)
                if (*rc::gen::inRange(0, 3) == 0)
                    step.needs.push_back({coded('s', need)});
            step.joints = {{coded('j', s)}};
            if (*rc::gen::inRange(0, 2) == 0)
                step.doings = {{.code = coded('d', s),
                                .what = "do",
                                .comes = static_cast<Comes>(*rc::gen::inRange(0, 3))}};
            for (int edges = *rc::gen::inRange(0, 3); edges > 0; --edges)
                step.edges.push_back({anAct(count, tasks), anAct(count, tasks)});
            c.steps.push_back(std::move(step));
        }
        for (std::size_t t = 0; t < tasks; ++t) {
            upkeep::TaskVersion task;
            task.code = coded('t', t);
            for (std::size_t s = 0; s < count; ++s)
                if (*rc::gen::inRange(0, 3) == 0)
                    task.steps.push_back({coded('s', s)});
            c.tasks.push_back(std::move(task));
        }
        return c;
    });
}

using Names = std::set<std::string>;

Names opened(const OrderCase& c, const std::vector<base::Code>& codes) {
    Names all;
    for (const base::Code& code : codes)
        all.insert(code.code);
    for (bool grew = true; grew;) {
        grew = false;
        for (const StepVersion& step : c.steps)
            if (all.contains(step.code))
                for (const Need& need : step.needs)
                    grew = all.insert(need.code).second || grew;
    }
    return all;
}

std::string wordOf(const upkeep::ActRef& ref) {
    switch (ref.deed) {
        case Deed::Off:
            return "-" + ref.code;
        case Deed::On:
            return "+" + ref.code;
        case Deed::Job:
            return ref.code;
        case Deed::Crack:
        case Deed::Do:
        case Deed::Torque:
            break;
    }
    return std::string(base::nameOf(ref.deed)) + " " + ref.code;
}

// All acts that there must be, and which of them comes before which.
struct Bound {
    Names acts;
    std::set<std::pair<std::string, std::string>> pairs;

    explicit Bound(const OrderCase& c) {
        Names open;
        for (const upkeep::TaskVersion& task : c.tasks) {
            acts.insert(task.code);
            for (const std::string& step : opened(c, task.steps)) {
                open.insert(step);
                pairs.emplace("-" + step, task.code);
                pairs.emplace(task.code, "+" + step);
            }
        }
        std::vector<upkeep::Edge> edges;
        for (const StepVersion& step : c.steps)
            if (open.contains(step.code)) {
                takeStep(step);
                edges.insert(edges.end(), step.edges.begin(), step.edges.end());
            }
        for (const upkeep::Edge& edge : edges) {
            takeJoint(edge.earlier, open);
            takeJoint(edge.later, open);
        }
        for (const upkeep::Edge& edge : edges)
            pairs.emplace(wordOf(edge.earlier), wordOf(edge.later));
        std::erase_if(pairs, [&](const auto& pair) {
            return !acts.contains(pair.first) || !acts.contains(pair.second);
        });
    }

    void takeStep(const StepVersion& step) {
        const std::string off = "-" + step.code;
        const std::string on = "+" + step.code;
        acts.insert(off);
        acts.insert(on);
        pairs.emplace(off, on);
        for (const Need& need : step.needs) {
            pairs.emplace("-" + need.code, off);
            pairs.emplace(on, "+" + need.code);
        }
        for (const upkeep::Doing& doing : step.doings) {
            const std::string word = "do " + doing.code;
            acts.insert(word);
            if (doing.comes == Comes::Before)
                pairs.emplace(word, off);
            if (doing.comes == Comes::Between) {
                pairs.emplace(off, word);
                pairs.emplace(word, on);
            }
            if (doing.comes == Comes::After)
                pairs.emplace(on, word);
        }
    }

    void takeJoint(const upkeep::ActRef& ref, const Names& open) {
        const std::string number = ref.code.substr(1);
        if ((ref.deed != Deed::Crack && ref.deed != Deed::Torque) || !open.contains("s" + number))
            return;
        acts.insert(wordOf(ref));
        if (ref.deed == Deed::Crack)
            pairs.emplace(wordOf(ref), "-s" + number);
        else
            pairs.emplace("+s" + number, wordOf(ref));
    }

    // By taking away what waits for nothing, until nothing is left or nothing can be taken.
    [[nodiscard]] bool hasCycle() const {
        Names left = acts;
        const auto waits = [&](const std::string& act) {
            return std::any_of(pairs.begin(), pairs.end(), [&](const auto& pair) {
                return pair.second == act && left.contains(pair.first);
            });
        };
        for (bool taken = true; taken;) {
            const auto free =
                std::find_if(left.begin(), left.end(), [&](const auto& act) { return !waits(act); });
            taken = free != left.end();
            if (taken)
                left.erase(free);
        }
        return !left.empty();
    }
};

TEST(OrderPropertyTest, KeepsAllThatBindsOrSaysThatItCannot) {
    int cycles = 0;
    int plans = 0;
    const bool holds = rc::check([&] {
        const OrderCase c = *anOrderCase();
        const Bound bound(c);
        const auto plan = planWork(pointersTo(c.steps), c.jobs());
        RC_ASSERT(plan.has_value() != bound.hasCycle());
        ++(plan ? plans : cycles);
        if (!plan) {
            RC_ASSERT(plan.error().fault == base::Fault::Cycle);
            RC_ASSERT(plan.error().given.find(", ") != std::string::npos);
            return;
        }
        auto words = actWords(*plan);
        std::erase(words, "stop");
        std::map<std::string, std::size_t> at;
        for (std::size_t place = 0; place < words.size(); ++place)
            RC_ASSERT(at.emplace(words[place], place).second);
        RC_ASSERT(at.size() == bound.acts.size());
        for (const std::string& act : bound.acts)
            RC_ASSERT(at.contains(act));
        for (const auto& [earlier, later] : bound.pairs)
            RC_ASSERT(at.at(earlier) < at.at(later));
        const auto again = planWork(pointersTo(c.steps), c.jobs());
        RC_ASSERT(actWords(*again) == actWords(*plan));
    });
    EXPECT_TRUE(holds);
    EXPECT_GT(cycles, 5);
    EXPECT_GT(plans, 20);
}

}  // namespace
}  // namespace wm::weekend

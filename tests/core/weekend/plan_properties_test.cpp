// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <algorithm>
#include <random>
#include <set>

#include "core/weekend/plan.h"
#include "tests/core/weekend/generic_machine.h"

// A plan over small random graphs is replayed on a machine that knows nothing of how it was made.

namespace wm::weekend {
namespace {

struct Case {
    std::vector<StepVersion> steps;
    std::vector<Job> jobs;
};

std::ostream& operator<<(std::ostream& out, const Case& c) {
    for (const StepVersion& step : c.steps) {
        out << step.code << " needs";
        for (const Need& need : step.needs)
            out << ' ' << need.code << (need.applies ? "" : "?");
        if (!step.breakLoose.empty())
            out << ", cracked before";
        for (const base::Code& kept : step.looseBefore)
            out << ' ' << kept.code;
        out << ", " << step.off.count() << " off, " << step.on.count() << " on\n";
    }
    for (const Job& job : c.jobs) {
        out << job.name << ", body state " << static_cast<int>(job.bodyState) << ':';
        for (const std::string& step : job.steps)
            out << ' ' << step;
        out << '\n';
    }
    return out;
}

std::string codeOf(std::size_t number) {
    return "S" + std::to_string(number);
}

rc::Gen<Case> aCase() {
    return rc::gen::exec([] {
        Case c;
        const auto count = *rc::gen::inRange<std::size_t>(1, 9);
        for (std::size_t s = 0; s < count; ++s) {
            StepVersion step;
            step.code = codeOf(s);
            step.name = step.code;
            step.off = units::Minutes{*rc::gen::inRange(0, 20)};
            step.on = units::Minutes{*rc::gen::inRange(0, 20)};
            for (std::size_t need = 0; need < s; ++need)
                if (*rc::gen::inRange(0, 3) == 0)
                    step.needs.push_back({codeOf(need), false, *rc::gen::inRange(0, 5) != 0});
            if (*rc::gen::inRange(0, 2) == 0) {
                step.breakLoose = "nut of " + step.code;
                for (std::size_t kept = 0; kept < count; ++kept)
                    if (*rc::gen::inRange(0, 4) == 0)
                        step.looseBefore.push_back({codeOf(kept)});
            }
            c.steps.push_back(std::move(step));
        }
        std::shuffle(c.steps.begin(), c.steps.end(), std::minstd_rand(*rc::gen::arbitrary<unsigned>()));
        const auto jobs = *rc::gen::inRange<std::size_t>(1, 6);
        for (std::size_t j = 0; j < jobs; ++j) {
            std::vector<std::string> steps;
            for (std::size_t s = 0; s < count; ++s)
                if (*rc::gen::inRange(0, 4) == 0)
                    steps.push_back(codeOf(s));
            c.jobs.push_back(makeJob("job " + std::to_string(j), *rc::gen::inRange(0, 60), steps,
                                     static_cast<upkeep::BodyState>(*rc::gen::inRange(0, 3))));
        }
        return c;
    });
}

using Codes = std::set<std::string>;

// By repeated looking, not by walking: everything that must be off for `codes`.
Codes closure(const Case& c, Codes codes) {
    for (bool grew = true; grew;) {
        grew = false;
        for (const StepVersion& step : c.steps)
            if (codes.contains(step.code))
                for (const Need& need : step.needs)
                    if (need.applies)
                        grew = codes.insert(need.code).second || grew;
    }
    return codes;
}

Codes codesOf(const Job& job) {
    return {job.steps.begin(), job.steps.end()};
}

std::int64_t minutesOf(const Case& c, const Codes& codes) {
    std::int64_t sum = 0;
    for (const StepVersion& step : c.steps)
        if (codes.contains(step.code))
            sum += (step.off + step.on).count();
    return sum;
}

const StepVersion& stepOf(const Case& c, const std::string& code) {
    return *std::find_if(c.steps.begin(), c.steps.end(), [&](const auto& step) { return step.code == code; });
}

TEST(PlanPropertyTest, TakesTheUnionOfAllThatTheJobsNeed) {
    const bool holds = rc::check([] {
        const Case c = *aCase();
        const auto plan = planWork(pointersTo(c.steps), c.jobs);
        if (!plan)
            RC_FAIL(plan.error().given);
        Codes all;
        Codes warm;
        Codes rest;
        bool isRun = false;
        std::int64_t work = 0;
        std::int64_t alone = 0;
        for (const Job& job : c.jobs) {
            const Codes own = closure(c, codesOf(job));
            const bool isWarm = job.bodyState == upkeep::BodyState::Warm;
            isRun = isRun || isWarm;
            (isWarm ? warm : rest).insert(own.begin(), own.end());
            all.insert(own.begin(), own.end());
            work += job.minutes.count();
            alone += job.minutes.count() + minutesOf(c, own);
            alone += isWarm ? EngineTimes{}.toWarm.count() : 0;
        }
        work += isRun ? EngineTimes{}.toWarm.count() : 0;
        RC_ASSERT(plan->work.count() == work + minutesOf(c, warm) + minutesOf(c, rest));
        RC_ASSERT(plan->alone.count() == alone);
        RC_ASSERT(Codes(plan->opened.begin(), plan->opened.end()) == all);
        RC_ASSERT(plan->opened.size() == all.size());
    });
    EXPECT_TRUE(holds);
}

TEST(PlanPropertyTest, CanBeDoneOnTheMachineInThatOrder) {
    const bool holds = rc::check([] {
        const Case c = *aCase();
        const auto plan = planWork(pointersTo(c.steps), c.jobs);
        RC_ASSERT(plan.has_value());
        Codes off;
        Codes everOff;
        Codes loose;
        bool isWarm = false;
        std::set<std::size_t> done;
        std::int64_t clock = 0;
        for (const Act& act : plan->acts) {
            RC_ASSERT(act.starts.count() == clock);
            clock += act.minutes.count();
            switch (act.kind) {
                case ActKind::BreakLoose:
                    RC_ASSERT(!off.contains(act.step));
                    for (const base::Code& kept : stepOf(c, act.step).looseBefore)
                        RC_ASSERT(!off.contains(kept.code));
                    RC_ASSERT(loose.insert(act.step).second);
                    break;
                case ActKind::Off:
                    RC_ASSERT(everOff.insert(act.step).second);
                    RC_ASSERT(loose.contains(act.step) == !stepOf(c, act.step).breakLoose.empty());
                    for (const Need& need : stepOf(c, act.step).needs)
                        RC_ASSERT(!need.applies || off.contains(need.code));
                    off.insert(act.step);
                    loose.erase(act.step);
                    break;
                case ActKind::On:
                    RC_ASSERT(off.erase(act.step) == 1U);
                    for (const std::string& other : off)
                        for (const Need& need : stepOf(c, other).needs)
                            RC_ASSERT(!need.applies || need.code != act.step);
                    break;
                case ActKind::Job:
                    RC_ASSERT(act.job.has_value());
                    RC_ASSERT(done.insert(*act.job).second);
                    RC_ASSERT(isWarm || c.jobs[*act.job].bodyState != upkeep::BodyState::Warm);
                    RC_ASSERT(!isWarm || c.jobs[*act.job].bodyState != upkeep::BodyState::Cold);
                    for (const std::string& code : closure(c, codesOf(c.jobs[*act.job])))
                        RC_ASSERT(off.contains(code));
                    break;
                case ActKind::SafeStop:
                    RC_ASSERT(act.minutes.count() == 0);
                    break;
                case ActKind::Run:
                    RC_ASSERT(off.empty());
                    RC_ASSERT(loose.empty());
                    isWarm = true;
                    everOff.clear();
                    break;
                case ActKind::Wait:
                    isWarm = false;
                    break;
                case ActKind::Crack:
                case ActKind::Do:
                case ActKind::Torque:
                    RC_FAIL("nothing asks for it");
                    break;
            }
        }
        RC_ASSERT(off.empty());
        RC_ASSERT(done.size() == c.jobs.size());
        RC_ASSERT(plan->acts.back().kind == ActKind::SafeStop);
    });
    EXPECT_TRUE(holds);
}

TEST(PlanPropertyTest, StopsOnlyWhereNothingIsOffThatTheRestDoesNotStandOn) {
    const bool holds = rc::check([] {
        const Case c = *aCase();
        const auto plan = planWork(pointersTo(c.steps), c.jobs);
        RC_ASSERT(plan.has_value());
        for (std::size_t at = 0; at < plan->acts.size(); ++at) {
            if (plan->acts[at].kind != ActKind::SafeStop)
                continue;
            Codes off;
            for (std::size_t before = 0; before < at; ++before) {
                if (plan->acts[before].kind == ActKind::Off)
                    off.insert(plan->acts[before].step);
                if (plan->acts[before].kind == ActKind::On)
                    off.erase(plan->acts[before].step);
            }
            for (std::size_t after = at; after < plan->acts.size() && plan->acts[after].kind != ActKind::Run;
                 ++after)
                if (plan->acts[after].kind == ActKind::Off)
                    for (const std::string& code : off)
                        RC_ASSERT(closure(c, {plan->acts[after].step}).contains(code));
        }
    });
    EXPECT_TRUE(holds);
}

}  // namespace
}  // namespace wm::weekend

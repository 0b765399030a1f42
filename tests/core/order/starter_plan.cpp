// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/order/starter_plan.h"

#include <algorithm>
#include <stdexcept>

#include "core/fastening/danger.h"
#include "core/weekend/left_off.h"
#include "core/weekend/loaded.h"

namespace wm::order {

namespace {

using weekend::Act;
using weekend::ActKind;

std::string lowered(std::string text) {
    for (char& letter : text)
        if (letter >= 'A' && letter <= 'Z')
            letter = static_cast<char>(letter - 'A' + 'a');
    return text;
}

const Json& at(const Json& table, const std::string& key) {
    static const Json kNothing = Json::object();
    const auto found = table.find(key);
    return found == table.end() ? kNothing : *found;
}

/// The acts that the words of a text stand for, in the order in which it says them.
Acts saidIn(const std::string& text, const Json& words) {
    const std::string low = lowered(text);
    std::map<std::size_t, Acts> byPlace;
    for (const auto& [word, acts] : words.items())
        if (const std::size_t place = low.find(word); place != std::string::npos)
            byPlace[place] = acts.get<Acts>();
    Acts all;
    for (const auto& [place, acts] : byPlace)
        all.insert(all.end(), acts.begin(), acts.end());
    return all;
}

template <class T>
const T* withCode(const std::vector<T>& list, const std::string& code) {
    const auto found =
        std::find_if(list.begin(), list.end(), [&](const T& each) { return each.code == code; });
    return found == list.end() ? nullptr : &*found;
}

weekend::Job jobOf(const upkeep::TaskVersion& task) {
    weekend::Job job{.name = task.name,
                     .minutes = task.minutes,
                     .bodyState = task.bodyState,
                     .safety = upkeep::isSafety(task.consequence),
                     .sendsOut = task.sendsOut,
                     .definition = &task};
    for (const base::Code& code : task.steps)
        job.steps.push_back(code.code);
    return job;
}

}  // namespace

/// Tells one plan.
class StarterPlan::Teller {
  public:
    Teller(const StarterPlan& of, const Tasks& tasks, const std::vector<Act>& plan)
        : of_(of), tasks_(tasks), plan_(plan) {}

    Acts tell() {
        for (const Act& act : plan_)
            tell(act);
        say(atOnce_);
        say(later_);
        return std::move(acts_);
    }

  private:
    void say(const Acts& acts) {
        for (const std::string& act : acts)
            say(act);
    }

    // What is loose or off by an earlier line (a tensioner that was cracked loose early) is not so twice.
    void say(const std::string& act) {
        if (act.starts_with("crack ") && !loose_.insert(act.substr(6)).second)
            return;
        if (act.starts_with("torque "))
            loose_.erase(act.substr(7));
        if (act.starts_with("off ") && !off_.insert(act.substr(4)).second)
            return;
        if (act.starts_with("on "))
            off_.erase(act.substr(3));
        isUp_ = act == "stand up" || (isUp_ && act != "stand down");
        acts_.push_back(act);
    }

    void torque(const Act& act) {
        for (const std::string& code : act.torques) {
            const auto* joint = withCode(of_.starter_.joints, code);
            for (const auto& [word, locks] : of_.bindings_.at("locking").items())
                if (joint != nullptr && joint->locking.find(word) != std::string::npos)
                    say(locks.get<std::string>());
            say("torque " + of_.jointName(code));
        }
    }

    // A joint by itself, held as its card says; with the machine on the ground its weight is on.
    void tellJoint(const Act& act) {
        const auto* joint = withCode(of_.starter_.joints, act.joint);
        const Acts held = joint == nullptr ? Acts{} : saidIn(joint->held, at(of_.bindings_, "held"));
        const Json& weightOn = at(of_.bindings_, "weight_on");
        const bool isWeightOn = !isUp_;
        if (isWeightOn)
            say(textsAt(weightOn, "before"));
        for (const std::string& thing : held)
            say("hold " + thing);
        if (act.kind == ActKind::Crack)
            say("crack " + of_.jointName(act.joint));
        else
            torque(act);
        for (const std::string& thing : held)
            say("release " + thing);
        if (isWeightOn)
            say(textsAt(weightOn, "after"));
    }

    void crack(const std::vector<base::Code>& codes) {
        for (const base::Code& code : codes)
            say("crack " + of_.jointName(code.code));
    }

    [[nodiscard]] const weekend::StepVersion& stepOf(const Act& act) const {
        return *withCode(of_.starter_.steps, act.step);
    }

    // As the job sheet warns of it.
    void warnOfLoads(const Act& act) {
        for (const upkeep::TaskVersion* task : tasks_)
            for (const upkeep::Hazard hazard : weekend::loadsAt(act, *task))
                say("caution " + std::string(base::nameOf(hazard)));
    }

    void tell(const Act& act) {
        warnOfLoads(act);
        switch (act.kind) {
            case ActKind::BreakLoose:
                tellBreakLoose(act);
                break;
            case ActKind::Off:
                tellOff(stepOf(act));
                break;
            case ActKind::Job:
                tellJob(*tasks_[*act.job], act);
                break;
            case ActKind::On:
                tellOn(stepOf(act), act);
                break;
            case ActKind::SafeStop:
                say(saidIn(act.text, at(of_.bindings_, "stop_words")));
                break;
            case ActKind::Run:
                say(of_.bindings_.at("run").get<Acts>());
                break;
            case ActKind::Wait:
                say(of_.bindings_.at("wait").get<Acts>());
                break;
            case ActKind::Crack:
            case ActKind::Torque:
                tellJoint(act);
                break;
            case ActKind::Do:
                say(textsAt(of_.bindings_.at("doings"), act.doing.c_str()));
                break;
        }
    }

    [[nodiscard]] const Json& bound(const std::string& step) const {
        return at(of_.bindings_.at("steps"), step);
    }

    void tellBreakLoose(const Act& act) {
        const Json& step = bound(act.step);
        const std::string low = lowered(act.text);
        Acts held;
        for (const auto& [word, thing] : at(step, "break_loose_held").items())
            if (low.find(word) != std::string::npos)
                held.push_back(thing.get<std::string>());
        for (const std::string& thing : held)
            say("hold " + thing);
        say(saidIn(act.text, at(step, "break_loose")));
        for (const std::string& thing : held)
            say("release " + thing);
    }

    void warn(const std::vector<upkeep::Caution>& cautions) {
        for (const upkeep::Caution& caution : cautions)
            say("caution " + std::string(base::nameOf(caution.hazard)));
    }

    [[nodiscard]] static std::vector<std::string> textsAt(const Json& step, const char* key) {
        return step.value(key, std::vector<std::string>{});
    }

    void tellOff(const weekend::StepVersion& step) {
        const Json& table = bound(step.code);
        warn(step.cautions);
        crack(step.joints);
        say(textsAt(table, "off"));
        for (const std::string& place : textsAt(table, "places"))
            say("off " + place);
    }

    void tellOn(const weekend::StepVersion& step, const Act& act) {
        const Json& table = bound(step.code);
        auto places = textsAt(table, "places");
        std::reverse(places.begin(), places.end());
        say(textsAt(table, "on"));
        for (const std::string& place : places)
            say("on " + place);
        say(saidIn(step.refit, at(table, "refit_first")));
        torque(act);
        say(saidIn(step.refit, at(table, "refit_last")));
        bring(step.followUps, {});
    }

    void tellJob(const upkeep::TaskVersion& task, const Act& act) {
        warn(task.cautions);
        const auto& looks = of_.bindings_.at("looks");
        if (std::find(looks.begin(), looks.end(), Json(task.code)) == looks.end())
            crack(task.joints);
        const Json& job = at(of_.bindings_.at("jobs"), task.code);
        say(textsAt(job, "do"));
        say(saidIn(task.howTo, at(job, "how_to")));
        say(saidIn(task.howTo, at(of_.bindings_, "how_to_words")));
        if (task.sendsOut)
            say("send out " + job.value("sends", task.position));
        torque(act);
        bring(task.followUps, task.code);
    }

    void bring(const std::vector<upkeep::FollowUpRule>& rules, const std::string& job) {
        for (const upkeep::FollowUpRule& rule : rules) {
            const bool isAtOnce = rule.when == upkeep::When::AtOnce;
            const std::string once = isAtOnce && waits(rule) ? "once whole: " : "";
            Acts acts = saidIn(rule.what, of_.bindings_.at(isAtOnce ? "at_once" : "later"));
            const Acts own = saidIn(rule.what, at(of_.bindings_.at("at_once_of_a_job"), job));
            acts.insert(acts.end(), own.begin(), own.end());
            Acts& list = isAtOnce ? atOnce_ : later_;
            for (const std::string& act : acts)
                if (std::find(list.begin(), list.end(), once + act) == list.end())
                    list.push_back(once + act);
        }
    }

    // What waits for a part that this plan leaves off is not done when the plan is.
    [[nodiscard]] bool waits(const upkeep::FollowUpRule& rule) const {
        const auto& all = of_.starter_.tasks;
        return std::any_of(all.begin(), all.end(), [&](const upkeep::TaskVersion& task) {
            return task.code == rule.code && !weekend::waitsFor(plan_, task).empty();
        });
    }

    const StarterPlan& of_;
    const Tasks& tasks_;
    const std::vector<Act>& plan_;
    std::set<std::string> loose_;
    std::set<std::string> off_;
    bool isUp_ = false;  ///< on the stand
    Acts acts_;
    Acts atOnce_;
    Acts later_;
};

StarterPlan::StarterPlan(exchange::Starter starter, const Json& bindings)
    : starter_(std::move(starter)), bindings_(bindings) {}

std::string StarterPlan::jointName(const std::string& code) const {
    return bindings_.at("joints").value(code, code);
}

Acts StarterPlan::actsOf(const Tasks& tasks) const {
    std::vector<const weekend::StepVersion*> steps;
    for (const weekend::StepVersion& step : starter_.steps)
        if (step.active)
            steps.push_back(&step);
    std::vector<weekend::Job> jobs;
    for (const upkeep::TaskVersion* task : tasks)
        jobs.push_back(jobOf(*task));
    weekend::PlanTerms terms;
    for (const fastening::JointVersion& joint : starter_.joints)
        terms.joints.push_back({joint.code, joint.name, joint.held, fastening::cures(joint)});
    const auto plan = weekend::planWork(steps, jobs, terms);
    if (!plan)
        throw std::runtime_error(starter_.name +
                                 ": no plan, these wait for each other: " + plan.error().given);
    return Teller(*this, tasks, plan->acts).tell();
}

std::set<std::string> StarterPlan::sayable() const {
    std::set<std::string> all;
    for (const upkeep::TaskVersion& task : starter_.tasks) {
        const Acts acts = actsOf({&task});
        all.insert(acts.begin(), acts.end());
    }
    return all;
}

std::vector<std::string> StarterPlan::unbound() const {
    std::vector<std::string> unknown;
    const auto isIn = [&](const char* list, const std::string& code) {
        const Json& codes = bindings_.at(list);
        return codes.is_object() ? codes.contains(code)
                                 : std::find(codes.begin(), codes.end(), Json(code)) != codes.end();
    };
    for (const fastening::JointVersion& joint : starter_.joints)
        if (!isIn("joints", joint.code) && !isIn("joints_by_their_code", joint.code))
            unknown.push_back("joint " + joint.code);
    for (const upkeep::TaskVersion& task : starter_.tasks) {
        if (!isIn("jobs", task.code) && !isIn("jobs_without_a_truth", task.code))
            unknown.push_back("task " + task.code);
        // A how-to that no longer says it would leave the act out, and with it what the truths ask of it.
        for (const auto& [word, acts] : at(at(bindings_.at("jobs"), task.code), "how_to").items())
            if (lowered(task.howTo).find(word) == std::string::npos)
                unknown.push_back("how " + task.code + " is done, which no longer says: " + word);
    }
    const auto checkDoings = [&](const std::vector<upkeep::Doing>& doings) {
        for (const upkeep::Doing& doing : doings)
            if (!doing.runs && !isIn("doings", doing.code))
                unknown.push_back("doing " + doing.code);
    };
    for (const upkeep::TaskVersion& task : starter_.tasks)
        checkDoings(task.doings);
    for (const fastening::JointVersion& joint : starter_.joints)
        if (!joint.held.empty() && saidIn(joint.held, bindings_.at("held")).empty())
            unknown.push_back("what holds " + joint.code + ": " + joint.held);
    for (const weekend::StepVersion& step : starter_.steps) {
        checkDoings(step.doings);
        if (!isIn("steps", step.code)) {
            unknown.push_back("step " + step.code);
            continue;
        }
        const Json& bound = bindings_.at("steps").at(step.code);
        if (!step.breakLoose.empty() && saidIn(step.breakLoose, at(bound, "break_loose")).empty())
            unknown.push_back("what is cracked at " + step.code + ": " + step.breakLoose);
    }
    return unknown;
}

}  // namespace wm::order

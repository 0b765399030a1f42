// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include <algorithm>

#include "core/fastening/danger.h"
#include "core/sheet/sheet_parts.h"
#include "core/sheet/sheet_words.h"
#include "core/upkeep/sources.h"
#include "core/weekend/left_off.h"
#include "core/weekend/loaded.h"
#include "core/weekend/plan_words.h"
#include "core/weekend/step_words.h"

namespace wm::sheet {

using base::phrase;
using upkeep::BodyState;
using upkeep::Hazard;
using weekend::ActKind;

namespace {

// What is to be minded when it goes back; the other cautions belong to the teardown.
bool isOfRefit(Hazard hazard) {
    return hazard == Hazard::Brakes || hazard == Hazard::Steering || hazard == Hazard::Wheels ||
           hazard == Hazard::FirstRide;
}

void addLine(std::string& text, const std::string& more) {
    if (more.empty())
        return;
    if (!text.empty())
        text += text.back() == '.' ? " " : ". ";
    text += more;
}

void addBefore(std::string& text, const std::string& words) {
    text = text.empty() ? words : words + " " + text;
}

class LineBuilder {
  public:
    explicit LineBuilder(const SheetSource& from) : from_(from) {}

    std::vector<SheetLine> build() {
        std::vector<SheetLine> lines;
        for (const weekend::Act& act : from_.plan.acts) {
            lines.push_back(lineOf(act));
            if (act.job)
                takeBodyState(lines.back(), from_.jobs[*act.job].bodyState);
        }
        number(lines);
        return lines;
    }

  private:
    SheetLine lineOf(const weekend::Act& act) {
        SheetLine line;
        line.step = act.step;
        line.text = from_.speech(weekend::actPhrase(act));
        const bool isOfAnother = act.kind == ActKind::BreakLoose || act.kind == ActKind::Crack ||
                                 act.kind == ActKind::Torque || act.kind == ActKind::SafeStop;
        if (!isOfAnother || act.minutes.count() > 0)
            line.minutes = from_.speech(phrase("Sheet", "%1 min").arg(std::to_string(act.minutes.count())));
        const weekend::StepVersion* step =
            act.step.empty() ? nullptr : from_.book.step(from_.machine, act.step);
        switch (act.kind) {
            case ActKind::BreakLoose:
                line.kind = LineKind::BreakLoose;
                line.text = from_.speech(phrase("Sheet", "Crack loose: %1").arg(act.text));
                break;
            case ActKind::Off:
                line.kind = LineKind::Off;
                takeHazards(line, step->cautions, false);
                break;
            case ActKind::On:
                line.kind = LineKind::On;
                line.text = from_.speech(weekend::refitPhrase(act.text));
                line.howTo = step->refit;
                takeHazards(line, step->cautions, true);
                break;
            case ActKind::Job:
                line.kind = LineKind::Job;
                takeJob(line, from_.jobs[*act.job]);
                break;
            case ActKind::SafeStop:
                line.kind = LineKind::SafeStop;
                break;
            case ActKind::Run:
                line.kind = LineKind::Run;
                line.hazards = {Hazard::Exhaust, Hazard::HotParts};
                break;
            case ActKind::Wait:
                line.kind = LineKind::Wait;
                break;
            case ActKind::Crack:
                line.kind = LineKind::BreakLoose;
                line.text = from_.speech(phrase("Sheet", "Crack loose: %1").arg(act.text));
                takeLoads(line, act);
                break;
            case ActKind::Do:
                line.kind = LineKind::Do;
                takeLoads(line, act);
                break;
            case ActKind::Torque:
                line.kind = LineKind::Torque;
                line.text = from_.speech(phrase("Sheet", "Torque: %1").arg(act.text));
                break;
        }
        takeJoints(line, act.torques);
        return line;
    }

    void takeLoads(SheetLine& line, const weekend::Act& act) const {
        for (const weekend::Job& job : from_.jobs)
            if (const upkeep::TaskVersion* task = from_.taskOf(job))
                for (const Hazard hazard : weekend::loadsAt(act, *task))
                    addHazard(line, hazard);
    }

    void takeJob(SheetLine& line, const weekend::Job& job) {
        line.task = job.task;
        line.snag = job.snag;
        line.safety = job.safety;
        const upkeep::TaskVersion* task = from_.taskOf(job);
        if (task == nullptr)
            return;
        if (job.snag)
            addLine(line.howTo, task->name);
        addLine(line.howTo, task->howTo);
        const book::DueLine* due = from_.book.dueLine(task->task);
        if (due != nullptr && due->countdown.value)
            addBefore(line.howTo, reachedText(*due->countdown.value));
        if (due != nullptr && due->countdown.extraDue() && !task->extra.empty())
            addLine(line.howTo, from_.speech(phrase("Sheet", "This time as well: %1").arg(task->extra)));
        for (const upkeep::Caution& caution : task->cautions)
            addHazard(line, caution.hazard);
        for (const upkeep::MeasurePoint& point : task->measures)
            line.measures.push_back(measureOf(*task, point));
        for (const upkeep::KitLine& kit : task->kit)
            if (kit.unit != upkeep::Unit::Piece)
                line.quantities.push_back(
                    {.text = quantityText(kit),
                     .source = sourceText(upkeep::sourceOf(*task, kit), kit.page, from_.speech),
                     .confirmed = kit.confirmed});
    }

    // The value that made it due.
    [[nodiscard]] std::string reachedText(const upkeep::ReachedValue& reached) const {
        const std::string unit = reached.unit.empty() ? std::string{} : " " + reached.unit;
        return from_.speech(phrase("Sheet", "Measured %1: %2 %3, limit %4.")
                                .arg(dateText(reached.date, from_.speech))
                                .arg(reached.name)
                                .arg(reached.value.text(from_.speech.mark) + unit)
                                .arg(reached.limit.text(from_.speech.mark)));
    }

    [[nodiscard]] std::string quantityText(const upkeep::KitLine& kit) const {
        const std::string text = kit.what + " " + amountText(kit.amount, kit.unit);
        return kit.onlyIfNeeded ? from_.speech(phrase("Sheet", "%1, if needed").arg(text)) : text;
    }

    // Before what wants it warm the engine is run, a line of its own.
    void takeBodyState(SheetLine& job, BodyState state) const {
        if (state == BodyState::Cold)
            addBefore(job.howTo, from_.speech(phrase("Sheet", "Engine cold.")));
        if (state == BodyState::Warm) {
            addBefore(job.howTo, from_.speech(phrase("Sheet", "Engine warm.")));
            addHazard(job, Hazard::HotParts);
        }
    }

    static void addHazard(SheetLine& line, Hazard hazard) {
        if (std::find(line.hazards.begin(), line.hazards.end(), hazard) == line.hazards.end())
            line.hazards.push_back(hazard);
    }

    static void takeHazards(SheetLine& line, const std::vector<upkeep::Caution>& cautions, bool refit) {
        for (const upkeep::Caution& caution : cautions)
            if (isOfRefit(caution.hazard) == refit)
                addHazard(line, caution.hazard);
    }

    // A code that no joint answers to still gets its blank: something there has to be tightened.
    void takeJoints(SheetLine& line, const std::vector<std::string>& codes) {
        for (const std::string& code : codes) {
            const auto* joint = from_.book.joint(from_.machine, code);
            if (joint == nullptr) {
                TorqueLine blank;
                blank.joint = code;
                line.torques.push_back(std::move(blank));
                continue;
            }
            line.safety = line.safety || fastening::dangerousKind(joint->kind);
            line.torques.push_back(torqueOf(*joint));
        }
    }

    [[nodiscard]] TorqueLine torqueOf(const fastening::JointVersion& joint) const {
        TorqueLine line;
        line.jointId = joint.joint;
        line.joint = joint.name;
        line.thread = joint.thread;
        line.count = joint.count;
        line.figure = {torqueText(joint, from_.speech), inNewtonMetresText(joint, from_.speech),
                       sourceText(joint.source, joint.page, from_.speech), joint.confirmed};
        line.stages = joint.stages;
        line.condition = joint.condition;
        line.locking = joint.locking;
        line.renew = joint.renew;
        line.leftHand = joint.leftHand;
        line.sequence = joint.sequence;
        line.sequenceStep = joint.sequenceStep;
        line.order = orderText(joint, from_.speech);
        return line;
    }

    [[nodiscard]] MeasureLine measureOf(const upkeep::TaskVersion& task,
                                        const upkeep::MeasurePoint& point) const {
        MeasureLine line;
        line.task = task.task;
        line.name = point.name;
        line.unit = point.unit;
        line.limit = limitText(point, from_.speech);
        line.limitConfirmed = point.confirmed;
        const auto last = from_.book.lastMeasured(task.task, point.name, 1);
        if (last.empty())
            return line;
        const auto& [record, measured] = last.front();
        std::string value = measured->value.text(from_.speech.mark);
        if (!measured->unit.empty())
            value += " " + measured->unit;
        const std::string day = dateText(record->date, from_.speech);
        const auto hours = record->meter ? record->meter : record->statedBest;
        line.last = hours ? from_.speech(phrase("Sheet", "%1 at %2, %3")
                                             .arg(value)
                                             .arg(hoursWithUnit(*hours, from_.speech.mark))
                                             .arg(day))
                          : value + ", " + day;
        return line;
    }

    static void number(std::vector<SheetLine>& lines) {
        FieldIds lineIds('L');
        FieldIds torqueIds('T');
        FieldIds measureIds('M');
        for (SheetLine& line : lines) {
            if (line.kind != LineKind::SafeStop)
                line.field = lineIds.next();
            for (TorqueLine& torque : line.torques)
                torque.field = torqueIds.next();
            for (MeasureLine& measure : line.measures)
                measure.field = measureIds.next();
        }
    }

    const SheetSource& from_;
};

}  // namespace

std::vector<SheetLine> linesOf(const SheetSource& from) {
    return LineBuilder(from).build();
}

namespace {

// What a tool asks to be checked again is known by its joint; everything else was worded by somebody.
std::string wordsOf(const SheetSource& from, const upkeep::FollowUp& open) {
    const auto* joint = open.joint.empty() ? nullptr : from.book.joint(from.machine, open.joint);
    return joint == nullptr ? open.rule.what
                            : from.speech(base::phrase("Sheet", "re-check %1").arg(joint->name));
}

const upkeep::TaskVersion* taskOf(const SheetSource& from, const upkeep::FollowUpRule& rule) {
    for (const upkeep::TaskVersion* task : from.book.tasks(from.machine))
        if (task->code == rule.code)
            return task;
    return nullptr;
}

std::string partsOf(const weekend::StepVersion& step) {
    const std::string parts = weekend::partsOf(step.name);
    return parts.empty() ? step.name : parts;
}

// With what is left off it has to wait: nobody pumps a brake whose wheel is out.
std::string whenOf(const SheetSource& from, const upkeep::FollowUpRule& rule,
                   const upkeep::TaskVersion* task) {
    std::string back;
    if (task != nullptr && rule.when == upkeep::When::AtOnce)
        for (const std::string& code : weekend::waitsFor(from.plan.acts, *task))
            if (const auto* step = from.book.step(from.machine, code))
                back += (back.empty() ? "" : ", ") + partsOf(*step);
    return back.empty()
               ? whenText(rule, from.speech)
               : from.speech(base::phrase("Sheet", "once back on: %1; before it is ridden").arg(back));
}

}  // namespace

std::vector<FollowUpLine> followUpsOf(const SheetSource& from) {
    FieldIds ids('V');
    std::vector<FollowUpLine> lines;
    const auto add = [&](const upkeep::FollowUpRule& rule, const std::string& because) {
        const upkeep::TaskVersion* task = taskOf(from, rule);
        const std::string what = rule.what.empty() && task != nullptr ? task->name : rule.what;
        const std::string when = whenOf(from, rule, task);
        const bool isThere = std::any_of(lines.begin(), lines.end(), [&](const FollowUpLine& line) {
            return line.what == what && line.when == when;
        });
        if (!what.empty() && !isThere)
            lines.push_back({what, because, when, rule.when == upkeep::When::AtOnce, ""});
    };
    for (auto code = from.plan.opened.rbegin(); code != from.plan.opened.rend(); ++code)
        if (const auto* step = from.book.step(from.machine, *code))
            for (const upkeep::FollowUpRule& rule : step->followUps)
                add(rule, partsOf(*step));
    for (const weekend::Job& job : from.jobs)
        if (const auto* task = from.taskOf(job))
            for (const upkeep::FollowUpRule& rule : task->followUps)
                add(rule, task->name);
    const auto comesAnyway = [&](const std::string& what) {
        return std::any_of(lines.begin(), lines.end(),
                           [&](const FollowUpLine& line) { return line.what == what; });
    };
    for (const upkeep::FollowUp& open : from.book.followUps(from.machine))
        if (open.due && !comesAnyway(open.rule.what))
            add({wordsOf(from, open), open.rule.code, upkeep::When::AtOnce, 0},
                fmt::format("{}, {}", open.because, dateText(open.since, from.speech)));
    std::stable_sort(lines.begin(), lines.end(),
                     [](const FollowUpLine& a, const FollowUpLine& b) { return a.atOnce && !b.atOnce; });
    for (FollowUpLine& line : lines)
        line.field = ids.next();
    return lines;
}

}  // namespace wm::sheet

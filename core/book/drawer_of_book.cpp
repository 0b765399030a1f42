// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later

#include "core/book/drawer_of_book.h"

#include <fmt/format.h>

#include <algorithm>
#include <tuple>

#include "core/book/joint_owners.h"
#include "core/book/joints_then.h"
#include "core/fastening/stages.h"
#include "core/picture/facts.h"

namespace wm::book {

using fastening::Choice;
using fastening::JointMark;
using fastening::JointVersion;
using fastening::MarkKind;
using fastening::Tool;
using picture::Ledger;

namespace {

std::int64_t torquesIn(const JointVersion& joint) {
    const auto stages = fastening::parseStages(joint.stages);
    if (!stages)
        return 1;
    return std::max<std::int64_t>(1, std::count_if(stages->begin(), stages->end(), [](const auto& stage) {
                                      return stage.kind == fastening::StageKind::Torque ||
                                             stage.kind == fastening::StageKind::Half ||
                                             stage.kind == fastening::StageKind::Full;
                                  }));
}

units::Hours riddenBetween(const Book& book, JointId joint, calendar::Date after, calendar::Date to) {
    const auto* version = book.joint(joint);
    if (version == nullptr)
        return {};
    const calendar::Moment from{after, calendar::DayPart::AfterRiding};
    const calendar::Moment until{to, calendar::DayPart::AfterRiding};
    return usage::exposure(book.atoms(version->machine), from, until).hours.best;
}

}  // namespace

std::int64_t cyclesOf(const Book& book, const JointMark& mark) {
    const auto* joint = book.joint(mark.joint);
    if (joint == nullptr)
        return 1;
    return mark.kind == MarkKind::Confirmed ? joint->count * torquesIn(*joint) : joint->count;
}

std::vector<Choice> drawerOf(const Book& book) {
    const Ledger& ledger = book.ledger();
    const auto cycles = [&](const JointMark& mark) { return cyclesOf(book, mark); };
    std::vector<Choice> drawer;
    for (const Tool& tool : ledger.all<Tool>())
        drawer.push_back({&tool,
                          fastening::standingOf(tool, ledger.all<fastening::Calibration>(),
                                                ledger.all<JointMark>(), cycles, book.today()),
                          {}});
    std::sort(drawer.begin(), drawer.end(), [](const Choice& a, const Choice& b) {
        return std::tuple(!a.tool->active, a.tool->name, a.tool->id) <
               std::tuple(!b.tool->active, b.tool->name, b.tool->id);
    });
    return drawer;
}

std::vector<Choice> toolsFor(const Book& book, const JointVersion& joint) {
    if (!joint.torque)
        return {};
    const auto drawer = drawerOf(book);
    return fastening::toolsFor(fastening::aimOf(*joint.torque, joint.torqueHigh), joint.unit, drawer);
}

const Tool* usualTool(const Book& book, const JointVersion& joint) {
    const auto drawer = drawerOf(book);
    const auto* last = fastening::lastTightened(book.ledger().all<JointMark>(), joint.joint, book.today());
    if (last != nullptr && last->tool)
        for (const Choice& choice : drawer)
            if (choice.tool->id == *last->tool && choice.tool->active &&
                choice.standing.state != fastening::ToolState::Out)
                return choice.tool;
    if (!joint.torque)
        return nullptr;
    const auto choices =
        fastening::toolsFor(fastening::aimOf(*joint.torque, joint.torqueHigh), joint.unit, drawer);
    const bool reaches = !choices.empty() && choices.front().fit.reach != fastening::Reach::Outside;
    return reaches ? choices.front().tool : nullptr;
}

std::vector<ToolRecall> recallsOf(const Book& book) {
    const Ledger& ledger = book.ledger();
    std::vector<ToolRecall> result;
    for (const Tool& tool : ledger.all<Tool>())
        for (auto& recall : fastening::recallsOf(tool.id, ledger.all<fastening::Calibration>(),
                                                 ledger.all<JointMark>(), book.today()))
            result.push_back({&tool, std::move(recall)});
    std::stable_sort(result.begin(), result.end(), [](const ToolRecall& a, const ToolRecall& b) {
        return std::tuple(b.recall.failed->date, b.recall.failed->entered) <
               std::tuple(a.recall.failed->date, a.recall.failed->entered);
    });
    return result;
}

std::string recheckText(const JointVersion& joint) {
    return fmt::format("re-check {}", joint.name);
}

namespace {

bool reaches(const Ledger& ledger, ToolId id, const JointVersion& joint) {
    const auto* tool = ledger.find<Tool>(id);
    if (tool == nullptr || !joint.torque || tool->high.digits() == 0)
        return tool != nullptr;  // no torque, or no range known
    const double least = fastening::inNewtonMetres(*joint.torque, joint.unit);
    const double most = fastening::inNewtonMetres(joint.torqueHigh.value_or(*joint.torque), joint.unit);
    return fastening::inNewtonMetres(tool->low, tool->unit) <= most &&
           least <= fastening::inNewtonMetres(tool->high, tool->unit);
}

// With no tool named, with one that nobody checked or that does not reach, nothing is said of what was
// before. What goes along with an item was torqued by the figure of the machine on which that was done.
std::optional<DoubtedJoint> doubted(const Book& book, const JointVersion& joint,
                                    std::span<const fastening::Touch> tightenings) {
    const Ledger& ledger = book.ledger();
    const calendar::Date on = book.today();
    const auto checks = ledger.all<fastening::Calibration>();
    const auto aimedAt = [&](const fastening::Touch& touch) -> const JointVersion& {
        const auto* there = touch.toldOf ? book.joint(*touch.toldOf) : nullptr;
        return there == nullptr ? joint : *there;
    };
    std::optional<DoubtedJoint> doubt;
    for (const fastening::Touch& touch : tightenings) {
        if (const auto* failed = touch.tool ? fastening::doubtedBy(touch, checks, on) : nullptr)
            doubt = DoubtedJoint{.joint = joint.joint, .failed = failed, .tightened = touch};
        else if (fastening::isVouched(touch, checks, on) && reaches(ledger, *touch.tool, aimedAt(touch)))
            doubt.reset();
    }
    return doubt;
}

}  // namespace

std::vector<DoubtedJoint> doubtedByTools(const Book& book, MachineId machine) {
    std::vector<DoubtedJoint> all;
    for (const auto& [id, now] : book.jointsThen(machine).joints) {
        const auto* joint = book.joint(id);
        if (joint == nullptr || now.isLoose)
            continue;
        auto doubt = doubted(book, *joint, now.tightenings);
        if (!doubt || outWith(book, *joint, {book.today(), calendar::DayPart::AfterRiding}))
            continue;
        doubt->machine = machine;
        all.push_back(*doubt);
    }
    return all;
}

std::optional<DoubtedJoint> stillDoubted(const Book& book, const ToolRecall& recall,
                                         const fastening::RecallLine& line) {
    for (const items::Machine* machine : book.machines())
        for (const DoubtedJoint& doubt : doubtedByTools(book, machine->id))
            if (doubt.failed == recall.recall.failed && doubt.tightened.entered == line.tightened->entered &&
                !isAnswered(book.ledger(), doubt.failed->id.value(), recheckText(*book.joint(doubt.joint))))
                return doubt;
    return std::nullopt;
}

// Of the joints that the machine has now: what sits inside an item was perhaps tightened on another one.
std::vector<upkeep::FollowUp> recheckDemands(const Book& book, MachineId machine) {
    const Ledger& ledger = book.ledger();
    std::vector<upkeep::FollowUp> demands;
    for (const DoubtedJoint& doubt : doubtedByTools(book, machine)) {
        const auto* joint = book.joint(doubt.joint);
        const fastening::Calibration* failed = doubt.failed;
        const auto* tool = ledger.find<Tool>(failed->tool);
        if (tool == nullptr)
            continue;
        demands.push_back({.machine = machine,
                           .origin = failed->id.value(),
                           .since = failed->date,
                           .rule = {.what = recheckText(*joint), .when = upkeep::When::AtOnce},
                           .because = fmt::format("tool {} found out of tolerance", tool->name),
                           .due = true,
                           .joint = joint->code});
    }
    std::stable_sort(demands.begin(), demands.end(), [](const auto& a, const auto& b) {
        return std::tie(b.since, b.origin, a.rule.what) < std::tie(a.since, a.origin, b.rule.what);
    });
    return demands;
}

std::vector<CameLoose> cameLoose(const Book& book, std::optional<MachineId> machine) {
    const auto ridden = [&](JointId joint, calendar::Date after, calendar::Date to) {
        return riddenBetween(book, joint, after, to);
    };
    const auto kindOf = [&](JointId joint) {
        const auto* version = book.joint(joint);
        return version == nullptr ? fastening::JointKind::Other : version->kind;
    };
    const auto lines = fastening::looseningsOf(book.ledger().all<JointMark>(), ridden, book.today());
    std::vector<CameLoose> result;
    for (const fastening::Loosening& line : lines) {
        const auto* joint = book.joint(line.joint);
        if (joint == nullptr || (machine && joint->machine != *machine))
            continue;
        // "Other" is no kind: nothing can be said of what is like it.
        auto comparison = joint->kind == fastening::JointKind::Other
                              ? std::nullopt
                              : fastening::comparedWithKind(line, lines, kindOf);
        result.push_back({joint, line, comparison});
    }
    return result;
}

}  // namespace wm::book

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <iterator>
#include <map>

#include "core/base/text.h"
#include "core/book/drawer_of_book.h"
#include "core/fastening/drawer.h"
#include "core/sheet/sheet_parts.h"
#include "core/sheet/sheet_words.h"

namespace wm::sheet {

using base::phrase;

namespace {

bool sameThing(const upkeep::KitLine& a, const upkeep::KitLine& b) {
    if (a.unit != b.unit || a.onlyIfNeeded != b.onlyIfNeeded)
        return false;
    return a.line || b.line ? a.line == b.line : base::lowered(a.what) == base::lowered(b.what);
}

std::vector<upkeep::KitLine> wantedBy(const SheetSource& from) {
    std::vector<upkeep::KitLine> wanted;
    for (const weekend::Job& job : from.jobs) {
        const upkeep::TaskVersion* task = from.taskOf(job);
        if (task == nullptr)
            continue;
        for (const upkeep::KitLine& kit : task->kit) {
            const auto same = std::find_if(wanted.begin(), wanted.end(), [&](const upkeep::KitLine& other) {
                return sameThing(kit, other);
            });
            if (same == wanted.end())
                wanted.push_back(kit);
            else
                same->amount += kit.amount;
        }
    }
    std::stable_sort(wanted.begin(), wanted.end(), [](const upkeep::KitLine& a, const upkeep::KitLine& b) {
        return !a.onlyIfNeeded && b.onlyIfNeeded;
    });
    return wanted;
}

// Every joint that is opened, once: by a job or by a refitted step.
std::vector<const fastening::JointVersion*> jointsOf(const SheetSource& from) {
    std::vector<const fastening::JointVersion*> joints;
    const auto add = [&](const std::vector<base::Code>& codes) {
        for (const base::Code& code : codes)
            if (const auto* joint = from.book.joint(from.machine, code.code))
                if (std::find(joints.begin(), joints.end(), joint) == joints.end())
                    joints.push_back(joint);
    };
    for (const std::string& code : from.plan.opened)
        if (const auto* step = from.book.step(from.machine, code))
            add(step->joints);
    for (const weekend::Job& job : from.jobs)
        if (const auto* task = from.taskOf(job))
            add(task->joints);
    return joints;
}

struct Range {
    double low;
    double high;
};

std::string newtonMetresText(double value, bool up) {
    const double scale = value < 10.0 ? 10.0 : 1.0;
    const double edge = 1e-9;
    const auto whole =
        static_cast<std::int64_t>(up ? std::ceil(value * scale - edge) : std::floor(value * scale + edge));
    return scale > 1.0 && whole % 10 != 0 ? units::Decimal{whole, 1}.text()
                                          : std::to_string(whole / (scale > 1.0 ? 10 : 1));
}

Range rangeOf(const fastening::JointVersion& joint) {
    const auto newtonMetres = [&](const units::Decimal& value) {
        return fastening::inNewtonMetres(value, joint.unit);
    };
    const double low = newtonMetres(*joint.torque);
    return {low, joint.torqueHigh ? newtonMetres(*joint.torqueHigh) : low};
}

std::string rangeText(const Range& range, const Speech& speech) {
    const std::string low = newtonMetresText(range.low, false);
    const std::string high = newtonMetresText(range.high, true);
    return low == high ? low + " N·m" : speech(phrase("Sheet", "%1 to %2 %3").arg(low).arg(high).arg("N·m"));
}

// One wrench does from a fifth of its capacity up to the whole of it (common practice), so ranges that lie
// within a factor of five share one.
std::vector<std::string> wrenchesFor(std::vector<Range> ranges, const Speech& speech) {
    constexpr double kSpan = 5.0;
    std::sort(ranges.begin(), ranges.end(), [](const Range& a, const Range& b) { return a.low < b.low; });
    std::vector<Range> wrenches;
    for (const Range& range : ranges) {
        if (!wrenches.empty() && range.high <= wrenches.back().low * kSpan)
            wrenches.back().high = std::max(wrenches.back().high, range.high);
        else
            wrenches.push_back(range);
    }
    std::vector<std::string> words;
    for (const Range& wrench : wrenches)
        words.push_back(speech(phrase("Sheet", "torque wrench for %1").arg(rangeText(wrench, speech))));
    return words;
}

// A wrench of the drawer and what it is taken for.
struct Taken {
    fastening::Choice choice;
    std::vector<const fastening::JointVersion*> joints{};
};

bool servesAsWell(const Taken& other, const fastening::JointVersion& joint) {
    const auto aim = fastening::aimOf(*joint.torque, joint.torqueHigh);
    return fastening::fitOf(*other.choice.tool, aim, joint.unit).reach == fastening::Reach::Serves;
}

// Fewer wrenches to carry: one whose joints another one on the list serves just as well stays in the drawer.
void dropNeedless(std::vector<Taken>& taken) {
    for (std::size_t at = taken.size(); at-- > 0;) {
        const auto other = std::find_if(taken.begin(), taken.end(), [&](const Taken& each) {
            return &each != &taken[at] && each.choice.standing.state == fastening::ToolState::InHand &&
                   std::all_of(taken[at].joints.begin(), taken[at].joints.end(),
                               [&](const auto* joint) { return servesAsWell(each, *joint); });
        });
        if (other == taken.end())
            continue;
        other->joints.insert(other->joints.end(), taken[at].joints.begin(), taken[at].joints.end());
        taken.erase(taken.begin() + static_cast<std::ptrdiff_t>(at));
    }
}

std::string takenText(const Taken& taken, const Speech& speech) {
    Range all = rangeOf(*taken.joints.front());
    std::string edge;
    for (const auto* joint : taken.joints) {
        const Range range = rangeOf(*joint);
        all = {std::min(all.low, range.low), std::max(all.high, range.high)};
        if (!servesAsWell(taken, *joint))
            edge += (edge.empty() ? "" : ", ") + joint->name;
    }
    std::string text = taken.choice.tool->name + ": " + rangeText(all, speech);
    if (!edge.empty())
        text += speech(phrase("Sheet", "; at the edge of its range for %1").arg(edge));
    if (taken.choice.standing.state == fastening::ToolState::Unknown)
        text += speech(phrase("Sheet", "; never checked"));
    else if (taken.choice.standing.state != fastening::ToolState::InHand)
        text += speech(phrase("Sheet", "; due for its check"));
    return text;
}

// The drawer's own wrenches by name, and what none of them reaches; without a drawer, what is needed.
std::vector<std::string> wrenchesOf(const SheetSource& from,
                                    const std::vector<const fastening::JointVersion*>& joints) {
    const auto drawer = book::drawerOf(from.book);
    const bool any = std::any_of(drawer.begin(), drawer.end(), [](const auto& c) { return c.tool->active; });
    if (!any) {
        std::vector<Range> ranges;
        std::transform(joints.begin(), joints.end(), std::back_inserter(ranges),
                       [](const auto* joint) { return rangeOf(*joint); });
        return wrenchesFor(std::move(ranges), from.speech);
    }
    std::vector<Taken> taken;
    std::vector<std::string> missing;
    for (const auto* joint : joints) {
        const auto choices =
            fastening::toolsFor(fastening::aimOf(*joint->torque, joint->torqueHigh), joint->unit, drawer);
        if (choices.empty() || choices.front().fit.reach == fastening::Reach::Outside) {
            missing.push_back(from.speech(phrase("Sheet", "no wrench of the drawer reaches %1 (%2)")
                                              .arg(rangeText(rangeOf(*joint), from.speech))
                                              .arg(joint->name)));
            continue;
        }
        const auto same = std::find_if(taken.begin(), taken.end(), [&](const Taken& each) {
            return each.choice.tool == choices.front().tool;
        });
        if (same != taken.end())
            same->joints.push_back(joint);
        else
            taken.push_back({choices.front(), {joint}});
    }
    dropNeedless(taken);
    std::vector<std::string> words;
    std::transform(taken.begin(), taken.end(), std::back_inserter(words),
                   [&](const Taken& each) { return takenText(each, from.speech); });
    words.insert(words.end(), missing.begin(), missing.end());
    return words;
}

}  // namespace

std::vector<PullLine> pullListOf(const SheetSource& from) {
    FieldIds ids('P');
    std::vector<PullLine> lines;
    std::map<StockLineId, std::int64_t> taken;
    for (const upkeep::KitLine& kit : wantedBy(from)) {
        PullLine line;
        line.what = kit.what;
        line.amount = amountText(kit.amount, kit.unit);
        line.onlyIfNeeded = kit.onlyIfNeeded;
        const auto* shelf = kit.line ? from.book.ledger().find<stock::StockLine>(*kit.line) : nullptr;
        line.onShelfList = shelf != nullptr;
        if (shelf != nullptr) {
            line.line = shelf->id;
            line.what = shelf->name;
            line.partNumber = shelf->partNumber;
            line.place = shelf->place;
            const auto* there = from.book.onHand(shelf->id);
            auto& before = taken[shelf->id];
            const std::int64_t left =
                std::max<std::int64_t>(0, (there == nullptr ? 0 : there->usable) - before);
            before += kit.amount;
            line.enough = left >= kit.amount;
            if (!line.enough)
                line.shortBy =
                    from.speech(phrase("Sheet", "short %1").arg(amountText(kit.amount - left, kit.unit)));
        }
        line.field = ids.next();
        lines.push_back(std::move(line));
    }
    for (const fastening::JointVersion* joint : jointsOf(from)) {
        if (joint->renew.empty())
            continue;
        PullLine line;
        line.what = fmt::format("{}: {}", joint->name, joint->renew);
        line.onShelfList = false;
        line.field = ids.next();
        lines.push_back(std::move(line));
    }
    return lines;
}

std::vector<std::string> toolsOf(const SheetSource& from) {
    std::vector<std::string> tools;
    for (const weekend::Job& job : from.jobs) {
        const upkeep::TaskVersion* task = from.taskOf(job);
        if (task == nullptr)
            continue;
        std::string list = task->tools;
        std::replace_if(
            list.begin(), list.end(), [](char c) { return c == ';' || c == '\n'; }, ',');
        for (const std::string& part : base::split(list, ',')) {
            const std::string tool(base::trimmed(part));
            const auto isSame = [&](const std::string& other) {
                return base::lowered(other) == base::lowered(tool);
            };
            if (!tool.empty() && std::none_of(tools.begin(), tools.end(), isSame))
                tools.push_back(tool);
        }
    }
    const auto joints = jointsOf(from);
    std::vector<const fastening::JointVersion*> typed;
    std::copy_if(joints.begin(), joints.end(), std::back_inserter(typed),
                 [](const auto* joint) { return joint->torque.has_value(); });
    for (std::string& wrench : wrenchesOf(from, typed))
        tools.push_back(std::move(wrench));
    const std::size_t blanks = joints.size() - typed.size();
    if (blanks > 0)
        tools.push_back(from.speech(
            phrase("Sheet", "service manual: %n joint(s) has/have no torque here yet", nullptr, blanks)));
    return tools;
}

}  // namespace wm::sheet

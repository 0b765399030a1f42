// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/slow/state.h"

#include <algorithm>

#include "tests/core/slow/bench_walk.h"

namespace wm::tale {

using calendar::Date;

namespace {

bool accepts(const Cards& cards, const HostAndPlace& place, const std::string& kind) {
    const auto position = cards.positions.find(place);
    if (position == cards.positions.end() || kind.empty())
        return true;
    const Json& kinds = position->second.at("accepts");
    return std::find(kinds.begin(), kinds.end(), kind) != kinds.end();
}

std::string awayWords(const std::string& path, const std::string& item, const Json& move) {
    std::string words = path + ": " + item;
    if (move.contains("where"))
        words += " at " + move.at("where").get<std::string>();
    words += " since " + move.at("day").get<std::string>();
    if (move.contains("back"))
        words += ", back " + move.at("back").get<std::string>();
    return words;
}

void sayEmptied(const BenchWalk& walk, const Cards& cards, const std::string& machine, State& state) {
    std::set<std::string> open;
    for (const auto& [place, day] : walk.sitting.emptiedOn) {
        const auto root = walk.sitting.rootOf(place, cards);
        if (!root || root->first != machine)
            continue;
        const std::string& path = root->second;
        const auto known = cards.positions.find(*root);
        if (known != cards.positions.end() && !known->second.at("must_be_filled").get<bool>())
            continue;
        Json off = cards.freeing(machine, path);
        if (walk.sentFrom.contains(*root))
            for (const Json& code : walk.sentFrom.at(*root).at("off"))
                off.push_back(code);
        for (const Json& code : off)
            open.insert(code.get<std::string>());
        const std::string& item = walk.sitting.lastIn.at(place);
        const Json& last = walk.sitting.lastMove.at(item);
        if (known == cards.positions.end())
            state.inDoubt.push_back(path + ": emptied on " + day);
        else if (last.contains("away"))
            state.away.push_back(awayWords(path, item, last));
        else
            state.missing.push_back(path);
    }
    state.open.assign(open.begin(), open.end());
}

// Nobody loosened or confirmed one of the joints that hold it since the move; what is out holds nothing.
bool isStillAsked(const BenchWalk& walk, const Cards& cards, const MovedAt& moved) {
    const auto held = cards.jointsOf(moved.machine, cards.opening(moved.machine, moved.path));
    return std::any_of(held.begin(), held.end(), [&](const std::string& joint) {
        const JointThen then = walk.joints.then(moved.machine, joint);
        const bool sameDay = then.torqued && walk.facts[*then.torqued - 1].at("day") == moved.day;
        return !then.isLoose && then.touched < moved.number && !sameDay &&
               !walk.joints.goneWith(moved.machine, joint);
    });
}

void sayMoves(const BenchWalk& walk, const Cards& cards, const std::string& machine, State& state) {
    for (const MovedAt& moved : walk.outAndBack)
        if (moved.machine == machine && isStillAsked(walk, cards, moved))
            state.inDoubt.push_back(moved.path + ": out and back on " + moved.day);
    std::set<std::string> older;
    for (const MovedAt& moved : walk.unasked)
        if (moved.machine == machine && isStillAsked(walk, cards, moved))
            older.insert(moved.path);
    std::string words;
    for (const std::string& path : older)
        words += (words.empty() ? "older moves: " : ", ") + path;
    if (!words.empty())
        state.inDoubt.push_back(words);
}

// The last check of a tool before a fact, or the first one after it.
const Json* checkOf(const BenchWalk& walk, const std::string& tool, std::size_t number, bool isAfter) {
    const Json* last = nullptr;
    for (std::size_t i = 0; i < walk.facts.size() && !tool.empty(); ++i) {
        if (walk.facts[i].value("check", "") != tool)
            continue;
        if (i + 1 > number)
            return isAfter ? &walk.facts[i] : last;
        last = &walk.facts[i];
    }
    return isAfter ? nullptr : last;
}

// The next check after it was tightened says whether the wrench was right, without one the last before it.
bool isDoubted(const BenchWalk& walk, const Tightening& one) {
    const Json* says = checkOf(walk, one.with, one.number, true);
    if (says == nullptr)
        says = checkOf(walk, one.with, one.number, false);
    return says != nullptr && !says->at("passed").get<bool>();
}

// With a tool that had passed its last check by then, and whose range has the torque, if both are known.
bool settles(const BenchWalk& walk, const Cards& cards, const Tightening& one) {
    const Json* last = checkOf(walk, one.with, one.number, false);
    if (last == nullptr || !last->at("passed").get<bool>())
        return false;
    const auto range = cards.ranges.find(one.with);
    if (range == cards.ranges.end() || one.torque.empty())
        return true;
    const auto torque = hundredths(one.torque);
    return range->second.first <= torque && torque <= range->second.second;
}

// A doubt stays until it is settled by a later tightening; a loosening ended it, and all before it.
std::string doubtedTool(const BenchWalk& walk, const Cards& cards, const JointThen& then) {
    std::string tool;
    for (const Tightening& one : then.tightenings)
        if (isDoubted(walk, one))
            tool = one.with;
        else if (settles(walk, cards, one))
            tool.clear();
    return tool;
}

// A line once, whoever says it: two joints of one name can be one.
void sayJoints(const BenchWalk& walk, const Cards& cards, const std::string& machine, State& state) {
    std::set<std::string> handTight;
    std::set<std::string> out;
    std::set<std::string> inDoubt;
    for (const auto& [joint, then] : walk.joints.all) {
        const bool isHere = walk.joints.isOn(joint, machine);
        const auto from = isHere ? std::nullopt : walk.joints.cameOutOf(joint.first);
        const bool cameFromHere = from && from->first == machine;
        if (!isHere && !cameFromHere)
            continue;
        auto gone = cameFromHere ? std::optional(from->second) : walk.joints.goneWith(machine, joint.second);
        if (!gone)
            gone = walk.joints.outByWork(joint, machine);
        const std::string doubted = doubtedTool(walk, cards, then);
        if (then.isLoose)
            (gone ? out : handTight)
                .insert(walk.joints.words(joint, machine, true) + (gone ? " with " + *gone : ""));
        else if (!gone && !doubted.empty())
            inDoubt.insert(walk.joints.words(joint, machine, false) + ": tightened with " + doubted);
    }
    state.handTight.assign(handTight.begin(), handTight.end());
    state.out.assign(out.begin(), out.end());
    state.inDoubt.insert(state.inDoubt.end(), inDoubt.begin(), inDoubt.end());
}

void sayCameWith(const BenchWalk& walk, const Cards& cards, const std::string& machine, State& state) {
    for (const auto& [itemAndFrom, loose] : walk.cameWith) {
        const auto root = walk.sitting.root(itemAndFrom.first, cards);
        if (root && root->first == machine && itemAndFrom.second != machine && !loose.empty())
            state.inDoubt.push_back(root->second + ": came with joints loosened on " + itemAndFrom.second);
    }
}

void sayImpossible(const BenchWalk& walk, const Cards& cards, const std::string& machine, State& state) {
    for (const auto& [item, place] : walk.sitting.at) {
        const auto root = walk.sitting.rootOf(place, cards);
        if (root && root->first == machine && !accepts(cards, *root, cards.kindOf.at(item)))
            state.inDoubt.push_back(root->second + ": " + item + " is a " + cards.kindOf.at(item));
    }
}

void sayRiddenOpen(const BenchWalk& walk, const std::string& machine, State& state) {
    for (const RiddenOpen& ridden : walk.ridden)
        if (ridden.machine == machine &&
            std::any_of(ridden.loosened.begin(), ridden.loosened.end(), [&](const auto& joint) {
                const auto now = walk.joints.all.find(joint.first);
                return now != walk.joints.all.end() && now->second.isLoose &&
                       now->second.loosened == joint.second;
            }))
            state.questions.push_back(ridden.words);
    for (const auto& [where, question] : walk.neverTouched)
        if (where == machine)
            state.questions.push_back(question);
}

}  // namespace

State slowState(const std::vector<Json>& facts, const std::string& machine, Date on) {
    const Cards cards(facts);
    const BenchWalk walk(cards, facts, on);
    State state;
    sayEmptied(walk, cards, machine, state);
    sayMoves(walk, cards, machine, state);
    sayJoints(walk, cards, machine, state);
    sayCameWith(walk, cards, machine, state);
    sayImpossible(walk, cards, machine, state);
    sayRiddenOpen(walk, machine, state);
    for (auto* list : {&state.open, &state.handTight, &state.out, &state.missing, &state.away, &state.inDoubt,
                       &state.questions})
        std::sort(list->begin(), list->end());
    return state;
}

std::string slowMayConfirm(const std::vector<Json>& facts, const std::string& machine,
                           const std::string& joint, Date on) {
    const Cards cards(facts);
    const BenchWalk walk(cards, facts, on);
    const bool isRefused = walk.joints.goneWith(machine, joint) && !walk.joints.onBench(machine, joint);
    return isRefused ? "no: nothing fitted there" : "yes";
}

std::string slowMayFit(const std::vector<Json>& facts, const std::string& item, const std::string& to,
                       const std::string& at, Date on) {
    const Cards cards(facts);
    Sitting sitting;
    for (const Json& fact : inOrder(facts, on))
        if (isMove(fact))
            sitting.move(fact);
    if (!accepts(cards, {to, at}, cards.kindOf.at(item)))
        return "no: kind";
    if (sitting.lastMove.contains(item) && sitting.lastMove.at(item).contains("retire"))
        return "no: retired";
    if (const auto there = sitting.sitsAt({to, at}); there && *there != item)
        return "no: taken";
    const auto root = sitting.root(item, cards);
    return root && root->first != to ? "yes, from " + root->first : "yes";
}

}  // namespace wm::tale

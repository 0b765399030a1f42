// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/book/state.h"

#include <algorithm>
#include <set>
#include <tuple>

#include "core/book/drawer_of_book.h"
#include "core/book/joint_owners.h"
#include "core/book/joints_then.h"
#include "core/fastening/recall.h"
#include "core/items/positions.h"
#include "core/picture/facts.h"
#include "core/weekend/looks.h"

namespace wm::book {

using calendar::DayPart;
using calendar::Moment;
using fastening::JointNow;
using items::Move;

namespace {

const Move* moveOf(const Book& book, std::int64_t move) {
    return book.ledger().find<Move>(MoveId{move});
}

std::vector<Gap> gapsAt(const Book& book, MachineId machine, Moment when) {
    std::vector<Gap> gaps;
    for (const auto& left : book.fittings().emptied(machine, when)) {
        const auto need = items::needOf(left.position);
        if (need == items::Need::MayBeOff)
            continue;
        Gap gap{.position = left.position, .item = left.item, .since = left.since.date};
        gap.isDoubtful = need == items::Need::Unknown;
        const auto place = book.fittings().placeOf(left.item, when);
        gap.isAway = place && place->kind == items::MoveKind::Away;
        if (const Move* away = gap.isAway ? moveOf(book, place->move) : nullptr) {
            gap.awaySince = away->date;
            gap.where = away->note;
            gap.backOn = away->backOn;
        }
        gaps.push_back(std::move(gap));
    }
    return gaps;
}

// The job that sent out what sat last in an emptied position, if one did.
const upkeep::Record* sentBy(const Book& book, const items::Fittings::Left& left) {
    const upkeep::Record* record = nullptr;
    for (const auto& spell : book.fittings().spells(left.item)) {
        if (spell.from > left.since)
            break;
        const Move* move = spell.from == left.since ? moveOf(book, spell.move) : nullptr;
        if (move != nullptr && move->record)
            record = book.ledger().find<upkeep::Record>(*move->record);
    }
    return record;
}

std::vector<const weekend::StepVersion*> openSteps(const Book& book, MachineId machine) {
    const auto& ledger = book.ledger();
    std::set<std::string> codes;
    for (const auto& left : book.fittings().emptied(machine, {book.today(), DayPart::AfterRiding})) {
        if (items::needOf(left.position) == items::Need::MayBeOff)
            continue;
        for (const auto* step : stepsFreeing(ledger, machine, left.position, book.today()))
            codes.insert(step->code);
        if (const auto* record = sentBy(book, left))
            for (const base::Code& step : record->steps)
                codes.insert(step.code);
    }
    std::vector<const weekend::StepVersion*> open;
    for (const auto* step : stepsOn(ledger, machine, book.today()))
        if (codes.contains(step->code))
            open.push_back(step);
    std::sort(open.begin(), open.end(), [](const auto* a, const auto* b) {
        return std::tie(a->name, a->id) < std::tie(b->name, b->id);
    });
    return open;
}

bool isOutNow(const Book& book, const fastening::JointVersion& joint) {
    return outWith(book, joint, {book.today(), DayPart::AfterRiding}).has_value();
}

// The joints that hold what was moved there, if one of them was not seen to since. One that is loose is said
// as such; one that was tightened on the day of the move was tightened after it.
std::vector<JointId> stillAsked(const Book& book, const JointsThen& then, const items::MovedAt& moved) {
    const Move& move = *moved.move;
    const fastening::Touch at{.when = {move.date, move.part}, .entered = move.entered};
    std::vector<JointId> asked;
    for (const JointId joint : jointsHolding(book, moved)) {
        if (const auto* version = book.joint(joint); version == nullptr || isOutNow(book, *version))
            continue;
        const auto known = then.joints.find(joint);
        if (known == then.joints.end()) {
            asked.push_back(joint);
            continue;
        }
        const JointNow& now = known->second;
        const bool sameDay = now.tightened && now.tightened->when.date == move.date;
        if (!now.isLoose && comesBefore(now.last, at) && !sameDay)
            asked.push_back(joint);
    }
    return asked;
}

void addAll(std::vector<JointId>& into, const std::vector<JointId>& joints) {
    for (const JointId joint : joints)
        if (std::find(into.begin(), into.end(), joint) == into.end())
            into.push_back(joint);
}

void addMoves(const Book& book, const JointsThen& then, std::vector<Doubt>& doubts) {
    for (const items::MovedAt& moved : then.outAndBack)
        if (auto asked = stillAsked(book, then, moved); !asked.empty())
            doubts.push_back({.why = Doubting::OutAndBack,
                              .positions = {moved.path},
                              .since = moved.move->date,
                              .joints = std::move(asked)});
    Doubt older{.why = Doubting::OlderMoves};
    std::set<std::string> positions;
    for (const items::MovedAt& moved : then.unasked) {
        const auto asked = stillAsked(book, then, moved);
        if (asked.empty())
            continue;
        older.since = positions.empty() ? moved.move->date : std::min(older.since, moved.move->date);
        positions.insert(moved.path);
        addAll(older.joints, asked);
    }
    older.positions.assign(positions.begin(), positions.end());
    if (!positions.empty())
        doubts.push_back(std::move(older));
}

/// Something that came from another machine: by which move it left there, and by which it came here.
struct Came {
    ItemId item{};
    std::string position{};
    MachineId from{};
    std::string path{};  ///< where it sat there
    const Move* left = nullptr;
    const Move* came = nullptr;
};

fastening::Touch momentOf(const Move& move) {
    return {.when = {move.date, move.part}, .entered = move.entered};
}

std::optional<Came> cameFrom(const Book& book, ItemId item, const std::string& position, MachineId machine) {
    const auto carriages = items::carriagesOf(item, book.fittings());
    if (carriages.size() < 2 || carriages.back().machine != machine || carriages.back().to)
        return std::nullopt;
    const auto& before = carriages[carriages.size() - 2];
    Came came{.item = item, .position = position, .from = before.machine, .path = before.spells.back().path};
    for (const auto& spell : book.fittings().spells(item)) {
        if (spell.from == before.to && came.left == nullptr)
            came.left = moveOf(book, spell.move);
        came.came = moveOf(book, spell.move);
    }
    return before.machine == machine || came.left == nullptr || came.came == nullptr ? std::nullopt
                                                                                     : std::optional(came);
}

// The joints of the other machine that were loose when it left, are loose there still, and of which nobody
// said where they sit: they may have come along. One of that code that was tightened here since did not, nor
// what held it there.
std::vector<JointId> mayHaveCome(const Book& book, MachineId machine, const Came& came) {
    std::set<std::string> holding;
    for (const auto* step : stepsFreeing(book.ledger(), came.from, came.path, came.left->date))
        for (const base::Code& opened : step->joints)
            holding.insert(opened.code);
    std::vector<JointId> joints;
    const JointsThen& here = book.jointsThen(machine);
    for (const auto& [joint, now] : book.jointsThen(came.from).joints) {
        const auto* version = book.joint(joint);
        if (!now.isLoose || version == nullptr || version->machine != came.from || version->position ||
            !comesBefore(now.since, momentOf(*came.left)) || holding.contains(version->code))
            continue;
        const auto* own = book.joint(machine, version->code);
        const auto known = own == nullptr ? here.joints.end() : here.joints.find(own->joint);
        const bool isTightHere = known != here.joints.end() && known->second.tightened &&
                                 comesBefore(momentOf(*came.came), *known->second.tightened);
        if (!isTightHere)
            joints.push_back(own == nullptr ? joint : own->joint);
    }
    return joints;
}

void addCameWith(const Book& book, MachineId machine, std::vector<Doubt>& doubts) {
    for (const auto& [position, item] : book.fittings().on(machine, {book.today(), DayPart::AfterRiding})) {
        const auto came = cameFrom(book, item, position, machine);
        auto joints = came ? mayHaveCome(book, machine, *came) : std::vector<JointId>{};
        if (!joints.empty())
            doubts.push_back({.why = Doubting::CameWith,
                              .positions = {position},
                              .since = came->came->date,
                              .joints = std::move(joints),
                              .item = item,
                              .from = came->from});
    }
}

void addWrenches(const Book& book, MachineId machine, std::vector<Doubt>& doubts) {
    for (const DoubtedJoint& each : doubtedByTools(book, machine))
        if (!picture::isAnswered(book.ledger(), each.failed->id.value(),
                                 recheckText(*book.joint(each.joint))))
            doubts.push_back({.why = Doubting::Wrench,
                              .since = each.tightened.when.date,
                              .joints = {each.joint},
                              .tool = each.tightened.tool});
}

void addImpossible(const Book& book, MachineId machine, std::vector<Doubt>& doubts) {
    const Moment now{book.today(), DayPart::AfterRiding};
    for (const auto& item : book.ledger().all<items::Item>())
        for (const auto& spell : book.fittings().machineSpells(item.id))
            if (spell.machine == machine && spell.from <= now && (!spell.to || now < *spell.to) &&
                !items::accepts(spell.path, item.kind))
                doubts.push_back({.why = Doubting::Impossible,
                                  .positions = {spell.path},
                                  .since = spell.from.date,
                                  .item = item.id});
}

OpenJoint openJointOf(const Book& book, const fastening::HandTight& state) {
    return {book.joint(state.joint), state};
}

// What was loosened on a day was loosened after its riding, unless it was told to be before it.
calendar::Date firstRiddenAfter(const fastening::Touch& since) {
    return since.when.part == DayPart::BeforeRiding ? since.when.date : since.when.date.plusDays(1);
}

bool wasOpenOn(const fastening::Touch& since, calendar::Date day) {
    return firstRiddenAfter(since) <= day;
}

}  // namespace

std::vector<Gap> gapsOn(const Book& book, MachineId machine, calendar::Date day) {
    return gapsAt(book, machine, {day, DayPart::Riding});
}

State stateOf(const Book& book, MachineId machine) {
    const JointsThen& then = book.jointsThen(machine);
    State state{.open = openSteps(book, machine),
                .gaps = gapsAt(book, machine, {book.today(), DayPart::AfterRiding})};
    for (const auto& loose : handTight(then))
        state.handTight.push_back(openJointOf(book, loose));
    for (const auto& [joint, position] : then.out)
        state.out.push_back({book.joint(joint), position});
    std::sort(state.out.begin(), state.out.end(), [](const JointOut& a, const JointOut& b) {
        return std::tie(a.position, a.joint->name) < std::tie(b.position, b.joint->name);
    });
    addCameWith(book, machine, state.doubts);
    addMoves(book, then, state.doubts);
    addWrenches(book, machine, state.doubts);
    addImpossible(book, machine, state.doubts);
    return state;
}

std::vector<JointId> toConfirm(const Book& book, MachineId machine) {
    const State state = stateOf(book, machine);
    std::vector<JointId> joints;
    for (const OpenJoint& open : state.handTight)
        addAll(joints, {open.state.joint});
    for (const Doubt& doubt : state.doubts)
        addAll(joints, doubt.joints);
    return joints;
}

bool isWholeAfter(const Book& book, MachineId machine, const std::vector<weekend::Job>& jobs) {
    const State state = stateOf(book, machine);
    if (std::any_of(jobs.begin(), jobs.end(), [](const weekend::Job& job) { return job.sendsOut; }))
        return false;
    if (state.isWhole() || !state.gaps.empty())
        return state.isWhole();
    std::set<JointId> torqued;
    std::set<JointId> opened;
    for (const weekend::Job& job : jobs) {
        const auto* task = job.task ? book.task(*job.task) : nullptr;
        const auto steps = weekend::opening(book.steps(machine), job.steps);
        if (task == nullptr || !steps)
            continue;
        std::vector<std::string> codes;
        for (const weekend::StepVersion* step : *steps)
            codes.push_back(step->code);
        for (const auto* joint : book.jointsOpened(*task, codes)) {
            torqued.insert(joint->joint);
            if (!weekend::looksAt(*task, joint->code, book.steps(machine), codes))
                opened.insert(joint->joint);
        }
    }
    const auto isOpened = [&](JointId joint) { return opened.contains(joint); };
    return std::all_of(state.handTight.begin(), state.handTight.end(),
                       [&](const OpenJoint& open) { return torqued.contains(open.joint->joint); }) &&
           std::all_of(state.doubts.begin(), state.doubts.end(), [&](const Doubt& doubt) {
               return doubt.why != Doubting::Impossible &&
                      std::all_of(doubt.joints.begin(), doubt.joints.end(), isOpened);
           });
}

std::vector<OpenJoint> openWhenRidden(const Book& book, MachineId machine, calendar::Date day) {
    std::vector<OpenJoint> open;
    for (const auto& loose : handTight(book.jointsThen(machine)))
        if (wasOpenOn({.when = {loose.since, loose.part}}, day))
            open.push_back(openJointOf(book, loose));
    return open;
}

namespace {

/// Asks after the days on which one machine was ridden with a joint open.
class RiddenQuestions {
  public:
    RiddenQuestions(const Book& book, MachineId machine) : book_(book), machine_(machine) {}

    // While the item in which it sits was with this machine; the machine's own all the time.
    void ask(JointId joint, const JointNow& now, std::optional<ItemId> inside) {
        // Riding up to here he knew of.
        calendar::Date known = firstRiddenAfter(now.since).plusDays(-1);
        for (const auto& mark : book_.ledger().all<fastening::JointMark>())
            if (mark.joint == joint && mark.kind == fastening::MarkKind::RiddenOpen &&
                mark.date <= book_.today())
                known = std::max(known, mark.date);
        const auto stays =
            inside ? book_.fittings().machineSpells(*inside) : std::vector<items::MachineSpell>{};
        const auto wasHere = [&](Moment when) {
            return !inside || std::any_of(stays.begin(), stays.end(), [&](const items::MachineSpell& stay) {
                return stay.machine == machine_ && stay.from < when && (!stay.to || when <= *stay.to);
            });
        };
        for (const auto& outing : book_.ledger().all<usage::Outing>())
            if (outing.machine == machine_ && outing.date > known && outing.date <= book_.today() &&
                wasHere({outing.date, DayPart::Riding}))
                note(outing.date, false, joint);
        for (const auto& atom : book_.atoms(machine_))
            if (atom.kind == usage::AtomKind::Unlogged && atom.to.date <= book_.today() &&
                Moment{known.plusDays(1), DayPart::Riding} <= atom.to && wasHere(atom.to))
                note(atom.to.date, true, joint);
    }
    std::vector<RiddenOpen> all() {
        std::vector<RiddenOpen> result;
        for (auto& [key, ridden] : found_)
            result.push_back(std::move(ridden));
        return result;
    }

  private:
    void note(calendar::Date day, bool isByMeter, JointId joint) {
        auto& ridden = found_[{day, isByMeter}];
        ridden.day = day;
        ridden.isByMeter = isByMeter;
        addAll(ridden.joints, {joint});
    }

    const Book& book_;
    MachineId machine_;
    std::map<std::pair<calendar::Date, bool>, RiddenOpen> found_;
};

}  // namespace

std::vector<RiddenOpen> riddenOpen(const Book& book, MachineId machine) {
    RiddenQuestions questions(book, machine);
    for (const items::Machine& card : book.ledger().all<items::Machine>()) {
        const JointsThen& then = book.jointsThen(card.id);
        for (const auto& [joint, now] : then.joints) {
            const auto inside = then.inside.find(joint);
            const bool goesAlong = inside != then.inside.end();
            if (now.isLoose && !then.out.contains(joint) && (goesAlong || card.id == machine))
                questions.ask(joint, now, goesAlong ? std::optional(inside->second) : std::nullopt);
        }
    }
    return questions.all();
}

}  // namespace wm::book

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/book/joints_then.h"

#include <algorithm>
#include <utility>

#include "core/book/joint_owners.h"
#include "core/calendar/in_force.h"
#include "core/items/positions.h"
#include "core/weekend/looks.h"
#include "core/weekend/teardown.h"

namespace wm::book {

using calendar::DayPart;
using calendar::Moment;
using fastening::JointMark;
using fastening::JointVersion;
using fastening::MarkKind;
using fastening::Touch;
using fastening::Touching;
using weekend::StepVersion;

namespace {

using Codes = std::set<std::string, std::less<>>;

Codes jointCodesOf(const std::vector<const StepVersion*>& steps) {
    Codes codes;
    for (const StepVersion* step : steps)
        for (const base::Code& joint : step->joints)
            codes.insert(joint.code);
    return codes;
}

std::set<JointId> jointsCoded(const Book& book, MachineId machine, const Codes& codes) {
    std::set<JointId> joints;
    for (const std::string& code : codes)
        if (const auto* joint = book.joint(machine, code))
            joints.insert(joint->joint);
    return joints;
}

// Marks of a job stand in its part of the day, those of an outing after its riding.
Moment momentOf(const JointMark& mark, const upkeep::Record* record) {
    if (record != nullptr)
        return {mark.date, record->part};
    return {mark.date, mark.outing ? DayPart::Riding : DayPart::AfterRiding};
}

// The touches of what belongs to a machine now: its own joints, and those inside what it carries, wherever
// they were touched. What went with an item is no longer here.
class TouchGathering {
  public:
    TouchGathering(const Book& book, MachineId machine) : book_(book), machine_(machine), owners_(book) {}

    JointsThen all() {
        noteOwners();
        noteOpenings();
        const auto checks = book_.ledger().all<fastening::Calibration>();
        hasFailedTools_ = std::any_of(checks.begin(), checks.end(), [](const auto& check) {
            return !check.foundWithin || !check.leftWithin;
        });
        for (const JointMark& mark : book_.ledger().all<JointMark>())
            if (mark.date <= book_.today())
                takeMark(mark);
        const auto& ledger = book_.ledger();
        for (auto& moved :
             items::movedAt(ledger.all<items::Move>(), ledger.all<items::Item>(), book_.today()))
            takeMove(std::move(moved));
        then_.joints = fastening::jointsNow(
            std::move(touches_), [&](calendar::Date day) { return book::rodeOn(book_, machine_, day); });
        noteOut();
        return std::move(then_);
    }

  private:
    void noteOwners() {
        std::set<JointId> seen;
        for (const JointVersion& row : book_.ledger().all<JointVersion>()) {
            const auto* version = row.machine == machine_ ? book_.joint(row.joint) : nullptr;
            if (version != nullptr && seen.insert(row.joint).second)
                if (const auto owner = owners_.now(*version))
                    shown_.emplace(*owner, row.joint);
        }
        const auto whereabouts = book_.whereabouts();
        for (const items::Item& item : book_.ledger().all<items::Item>())
            if (const auto place = whereabouts.of(item.id, {book_.today(), DayPart::AfterRiding});
                place && place->machine == machine_)
                carried_.insert(item.id);
    }

    // Under which joint of this machine it stands what was done to one; nothing if that is not here. A joint
    // that came inside an item and is not in this machine's schedule stands under its own.
    [[nodiscard]] std::optional<JointId> shownAs(JointId joint, Moment when, base::Entered entered,
                                                 const upkeep::Record* record) {
        const auto* version = book_.joint(joint);
        if (version == nullptr || (version->machine != machine_ && !sitsInside(*version)))
            return std::nullopt;
        return shownAs(*version, owners_.then(*version, when, entered, record));
    }
    [[nodiscard]] std::optional<JointId> shownAs(const JointVersion& joint,
                                                 const std::optional<JointOwner>& owner) {
        if (!owner)
            return std::nullopt;
        auto known = shown_.find(*owner);
        if (known == shown_.end()) {
            if (!owner->item || !carried_.contains(*owner->item))
                return std::nullopt;
            const auto* own = book_.joint(machine_, joint.code);
            known = shown_.emplace(*owner, own != nullptr && !own->position ? own->joint : joint.joint).first;
        }
        if (owner->item)
            then_.inside.emplace(known->second, *owner->item);
        return known->second;
    }

    // What is not there can't be torqued, whatever an older file says; a job on a spare had that in the vice.
    [[nodiscard]] bool wasNotThere(const JointMark& mark, Moment when, const upkeep::Record* record) const {
        const auto* joint = book_.joint(mark.joint);
        const auto owner = owners_.then(*joint, when, mark.entered, record);
        const bool onASpare = mark.item || (record != nullptr && record->item && owner && owner->item) ||
                              owners_.liesBeside(*joint, when, mark.entered);
        return !onASpare && owners_.outThen(*joint, when, mark.entered).has_value();
    }

    static bool sitsInside(const JointVersion& joint) { return joint.position && !joint.position->empty(); }

    void noteOut() {
        for (const auto& [joint, now] : then_.joints) {
            const auto* version = now.isLoose ? book_.joint(joint) : nullptr;
            if (version == nullptr || version->machine != machine_)
                continue;
            auto position = outWith(book_, *version, {book_.today(), DayPart::AfterRiding});
            if (!position)
                position = stillEmptiedBy(now.last);
            if (position)
                then_.out.emplace(joint, *std::move(position));
        }
    }

    // What else was undone by the work that emptied a position goes back on with what goes in there.
    [[nodiscard]] std::optional<std::string> stillEmptiedBy(const Touch& last) const {
        auto emptied = emptiedAt_.find({last.when, last.entered});
        if (emptied == emptiedAt_.end() && last.record)
            if (const auto by = emptiedBy_.find(*last.record); by != emptiedBy_.end())
                return isEmptySince(by->second.first, by->second.second);
        return emptied == emptiedAt_.end() ? std::nullopt : isEmptySince(emptied->second, last.when);
    }
    [[nodiscard]] std::optional<std::string> isEmptySince(const std::string& path, Moment since) const {
        // What may be off is ridden without; then the rest has to be tight.
        if (items::needOf(path) == items::Need::MayBeOff)
            return std::nullopt;
        const Moment now{book_.today(), DayPart::AfterRiding};
        const auto empty = book_.fittings().leftFrom(machine_, path, now);
        if (!empty || empty->since != since)
            return std::nullopt;
        for (const auto& left : book_.fittings().emptied(machine_, now))
            if (upkeep::isAtOrIn(items::codedPath(path), items::codedPath(left.position)))
                return left.position;
        return std::nullopt;
    }

    void noteOpenings() {
        const auto& ledger = book_.ledger();
        for (const JointMark& mark : ledger.all<JointMark>())
            if (mark.kind == MarkKind::Loosened && mark.record)
                openedOn_.insert({mark.joint, mark.date});
        for (const items::Move& move : ledger.all<items::Move>())
            if (move.told == items::Told::Work)
                movedOn_.insert(move.date);
    }

    // What a job opened and tightened is stored as tightened alone. It matters only on a day on which
    // something else opened the joint.
    [[nodiscard]] bool wasOpenedToo(const JointMark& mark) {
        return mark.record && (openedOn_.contains({mark.joint, mark.date}) || movedOn_.contains(mark.date)) &&
               wasOpened(mark);
    }
    [[nodiscard]] bool wasOpened(const JointMark& mark) {
        const auto known = openedBy_.find(*mark.record);
        if (known != openedBy_.end())
            return known->second.contains(mark.joint);
        const auto* record = book_.ledger().find<upkeep::Record>(*mark.record);
        auto opened = record == nullptr ? std::set<JointId>{} : jointsOpenedBy(book_, *record);
        return openedBy_.emplace(*mark.record, std::move(opened)).first->second.contains(mark.joint);
    }

    void takeMark(const JointMark& mark) {
        const auto* told = mark.record ? book_.ledger().find<upkeep::Record>(*mark.record) : nullptr;
        const auto* record = told != nullptr ? &book_.placed(*told) : nullptr;
        const Moment when = momentOf(mark, record);
        const auto* joint = mark.item ? book_.joint(mark.joint) : nullptr;
        const auto shown = joint != nullptr
                               ? shownAs(*joint, JointOwner{.item = mark.item, .code = joint->code})
                               : shownAs(mark.joint, when, mark.entered, record);
        if (!shown || (mark.kind == MarkKind::Confirmed && wasNotThere(mark, when, record)))
            return;
        Touch touch{.joint = *shown,
                    .toldOf = *shown == mark.joint ? std::nullopt : std::optional(mark.joint),
                    .when = when,
                    .entered = mark.entered,
                    .why = mark.kind,
                    .record = mark.record,
                    .tool = mark.tool};
        switch (mark.kind) {
            case MarkKind::Loosened:
                touch.how = mark.record ? Touching::Opened : Touching::Loosened;
                break;
            case MarkKind::Confirmed:
                if (wasOpenedToo(mark)) {
                    touch.why = MarkKind::Loosened;
                    touches_.push_back(touch);
                }
                touch.how = Touching::Tightened;
                touch.isAnew = hasFailedTools_ && mark.record && wasOpened(mark);
                break;
            case MarkKind::FoundMoved:
            case MarkKind::MarkBroken:
                touch.how = Touching::Loosened;
                break;
            case MarkKind::FoundFine:
            case MarkKind::RiddenOpen:
                return;
        }
        touches_.push_back(touch);
    }

    void takeMove(items::MovedAt moved) {
        const items::Move& move = *moved.move;
        const Moment when{move.date, move.part};
        // A job that sent something out opened what it opened by itself.
        if (!moved.came && moved.machine == machine_ && move.record)
            emptiedBy_.emplace(*move.record, std::pair(moved.path, when));
        switch (move.told) {
            case items::Told::AsItWas:
                return;
            case items::Told::Unasked:
                if (moved.came && !moved.isTracking && moved.machine == machine_)
                    then_.unasked.push_back(std::move(moved));
                return;
            case items::Told::Work:
                break;
        }
        if (moved.isOutAndBack) {
            if (moved.came && moved.machine == machine_)
                then_.outAndBack.push_back(std::move(moved));
            return;
        }
        if (!moved.came && moved.machine == machine_)
            emptiedAt_.emplace(std::pair(when, move.entered), moved.path);
        for (const JointId joint : jointsHolding(book_, moved))
            if (const auto shown = shownAs(joint, when, move.entered, nullptr))
                touches_.push_back({.joint = *shown,
                                    .when = when,
                                    .entered = move.entered,
                                    .how = Touching::Opened,
                                    .record = move.record});
    }

    const Book& book_;
    MachineId machine_;
    JointOwners owners_;
    std::map<JointOwner, JointId> shown_;
    std::set<ItemId> carried_;
    std::vector<Touch> touches_;
    std::map<RecordId, std::set<JointId>> openedBy_;
    std::set<std::pair<JointId, calendar::Date>> openedOn_;
    std::set<calendar::Date> movedOn_;
    std::map<std::pair<Moment, base::Entered>, std::string> emptiedAt_;  ///< by a move of this machine
    std::map<RecordId, std::pair<std::string, Moment>> emptiedBy_;       ///< by a job that sent it out
    bool hasFailedTools_ = false;
    JointsThen then_;
};

}  // namespace

bool rodeOn(const Book& book, MachineId machine, calendar::Date day) {
    const auto outings = book.ledger().all<usage::Outing>();
    return std::any_of(outings.begin(), outings.end(), [&](const usage::Outing& outing) {
        return outing.machine == machine && outing.date == day;
    });
}

namespace {

// Of two versions the one that is meant on a day: the later one that holds by then, else the first to come.
bool isRather(const StepVersion& version, const StepVersion& known, calendar::Date on) {
    const bool holds = version.validFrom <= on;
    if (holds != (known.validFrom <= on))
        return holds;
    return holds ? calendar::supersedes(version, known) : version.validFrom < known.validFrom;
}

}  // namespace

std::vector<const StepVersion*> stepsOn(const picture::Ledger& ledger, MachineId machine, calendar::Date on) {
    std::map<StepId, const StepVersion*> best;
    for (const StepVersion& version : ledger.all<StepVersion>()) {
        if (version.machine != machine)
            continue;
        const StepVersion*& known = best[version.step];
        if (known == nullptr || isRather(version, *known, on))
            known = &version;
    }
    std::vector<const StepVersion*> steps;
    for (const auto& [id, version] : best)
        if (version->active)
            steps.push_back(version);
    return steps;
}

std::vector<const StepVersion*> stepsFreeing(const picture::Ledger& ledger, MachineId machine,
                                             std::string_view path, calendar::Date on) {
    const std::string wanted = items::codedPath(path);
    std::vector<const StepVersion*> steps;
    for (const StepVersion* step : stepsOn(ledger, machine, on))
        if (std::any_of(step->frees.begin(), step->frees.end(),
                        [&](const base::Code& freed) { return items::codedPath(freed.code) == wanted; }))
            steps.push_back(step);
    return steps;
}

std::set<JointId> jointsOpenedBy(const Book& book, const upkeep::Record& record) {
    const auto& ledger = book.ledger();
    const auto steps = stepsOn(ledger, record.machine, record.date);
    std::vector<std::string> off;
    std::vector<const StepVersion*> opened;
    for (const StepVersion* step : steps)
        if (std::any_of(record.steps.begin(), record.steps.end(),
                        [&](const base::Code& code) { return code.code == step->code; })) {
            off.push_back(step->code);
            opened.push_back(step);
        }
    Codes codes = jointCodesOf(opened);
    if (const auto* task = record.version ? ledger.find<upkeep::TaskVersion>(*record.version) : nullptr)
        for (const base::Code& joint : task->joints)
            if (!weekend::looksAt(*task, joint.code, steps, off))
                codes.insert(joint.code);
    return jointsCoded(book, record.machine, codes);
}

std::set<JointId> jointsHolding(const Book& book, const items::MovedAt& moved) {
    const auto& ledger = book.ledger();
    std::vector<std::string> codes;
    for (const StepVersion* step : stepsFreeing(ledger, moved.machine, moved.path, moved.move->date))
        codes.push_back(step->code);
    // What the step itself needs off is opened with it.
    const auto opened = weekend::opening(stepsOn(ledger, moved.machine, moved.move->date), codes);
    return opened ? jointsCoded(book, moved.machine, jointCodesOf(*opened)) : std::set<JointId>{};
}

JointsThen gatherJoints(const Book& book, MachineId machine) {
    return TouchGathering(book, machine).all();
}

std::vector<fastening::HandTight> handTight(const JointsThen& then) {
    auto loose = fastening::handTight(then.joints);
    std::erase_if(loose, [&](const fastening::HandTight& each) { return then.out.contains(each.joint); });
    return loose;
}

}  // namespace wm::book

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/book/joints_then.h"

#include <algorithm>
#include <utility>

#include "core/calendar/in_force.h"
#include "core/items/positions.h"
#include "core/weekend/teardown.h"

namespace wm::book {

using calendar::DayPart;
using calendar::Moment;
using fastening::JointMark;
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
Moment momentOf(const picture::Ledger& ledger, const JointMark& mark) {
    const auto* record = mark.record ? ledger.find<upkeep::Record>(*mark.record) : nullptr;
    if (record != nullptr)
        return {mark.date, record->part};
    return {mark.date, mark.outing ? DayPart::Riding : DayPart::AfterRiding};
}

class TouchGathering {
  public:
    TouchGathering(const Book& book, MachineId machine) : book_(book), machine_(machine) {}

    JointsThen all() {
        noteOpenings();
        for (const JointMark& mark : book_.ledger().all<JointMark>())
            if (mark.date <= book_.today() && isOurs(mark.joint))
                takeMark(mark);
        const auto& ledger = book_.ledger();
        for (auto& moved :
             items::movedAt(ledger.all<items::Move>(), ledger.all<items::Item>(), book_.today()))
            if (moved.machine == machine_)
                takeMove(std::move(moved));
        then_.joints = fastening::jointsNow(
            std::move(touches_), [&](calendar::Date day) { return book::rodeOn(book_, machine_, day); });
        return std::move(then_);
    }

  private:
    [[nodiscard]] bool isOurs(JointId joint) const {
        const auto* version = book_.joint(joint);
        return version != nullptr && version->machine == machine_;
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
        if (!mark.record || (!openedOn_.contains({mark.joint, mark.date}) && !movedOn_.contains(mark.date)))
            return false;
        const auto known = openedBy_.find(*mark.record);
        if (known != openedBy_.end())
            return known->second.contains(mark.joint);
        const auto* record = book_.ledger().find<upkeep::Record>(*mark.record);
        auto opened = record == nullptr ? std::set<JointId>{} : jointsOpenedBy(book_, *record);
        return openedBy_.emplace(*mark.record, std::move(opened)).first->second.contains(mark.joint);
    }

    void takeMark(const JointMark& mark) {
        Touch touch{.joint = mark.joint,
                    .when = momentOf(book_.ledger(), mark),
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
        switch (move.told) {
            case items::Told::AsItWas:
                return;
            case items::Told::Unasked:
                if (moved.came && !moved.isTracking)
                    then_.unasked.push_back(std::move(moved));
                return;
            case items::Told::Work:
                break;
        }
        if (moved.isOutAndBack) {
            if (moved.came)
                then_.outAndBack.push_back(std::move(moved));
            return;
        }
        for (const JointId joint : jointsHolding(book_, moved))
            touches_.push_back({.joint = joint,
                                .when = {move.date, move.part},
                                .entered = move.entered,
                                .how = Touching::Opened,
                                .record = move.record});
    }

    const Book& book_;
    MachineId machine_;
    std::vector<Touch> touches_;
    std::map<RecordId, std::set<JointId>> openedBy_;
    std::set<std::pair<JointId, calendar::Date>> openedOn_;
    std::set<calendar::Date> movedOn_;
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
    Codes codes;
    if (const auto* task = record.version ? ledger.find<upkeep::TaskVersion>(*record.version) : nullptr)
        for (const base::Code& joint : task->joints)
            codes.insert(joint.code);
    std::vector<const StepVersion*> opened;
    for (const StepVersion* step : stepsOn(ledger, record.machine, record.date))
        if (std::any_of(record.steps.begin(), record.steps.end(),
                        [&](const base::Code& code) { return code.code == step->code; }))
            opened.push_back(step);
    codes.merge(jointCodesOf(opened));
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

}  // namespace wm::book

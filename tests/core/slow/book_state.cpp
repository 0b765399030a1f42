// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/slow/book_state.h"

#include <algorithm>
#include <memory>

#include "core/book/fitting.h"
#include "core/book/joints_then.h"
#include "core/book/state.h"
#include "core/verbs/fastening_verbs.h"

namespace wm::tale {

namespace {

std::string jointWords(const book::Book& book, JointId joint) {
    const auto* version = book.joint(joint);
    return version->torque ? version->name + " " + version->torque->text() + " N·m"
                           : version->name + ", torque blank";
}

std::string awayWords(const Tale& tale, const book::Gap& gap) {
    std::string words = gap.position + ": " + tale.nameOf(gap.item.value());
    if (!gap.where.empty())
        words += " at " + gap.where;
    words += " since " + gap.awaySince.iso();
    return gap.backOn ? words + ", back " + gap.backOn->iso() : words;
}

std::string doubtWords(const Tale& tale, const book::Book& book, const book::Doubt& doubt) {
    std::string positions;
    for (const std::string& position : doubt.positions)
        positions += (positions.empty() ? "" : ", ") + position;
    switch (doubt.why) {
        case book::Doubting::OutAndBack:
            return positions + ": out and back on " + doubt.since.iso();
        case book::Doubting::OlderMoves:
            return "older moves: " + positions;
        case book::Doubting::Wrench:
            return book.joint(doubt.joints.front())->name + ": tightened with " +
                   tale.nameOf(doubt.tool->value());
        case book::Doubting::CameWith:
            return positions + ": came with joints loosened on " +
                   book.ledger().find<items::Machine>(*doubt.from)->name;
        case book::Doubting::Impossible:
            break;
    }
    const auto* item = book.ledger().find<items::Item>(*doubt.item);
    return positions + ": " + item->name + " is a " + item->kind;
}

void sayGaps(const Tale& tale, const std::vector<book::Gap>& gaps, State& state) {
    for (const book::Gap& gap : gaps)
        if (gap.isDoubtful)
            state.inDoubt.push_back(gap.position + ": emptied on " + gap.since.iso());
        else if (gap.isAway)
            state.away.push_back(awayWords(tale, gap));
        else
            state.missing.push_back(gap.position);
}

void sayQuestions(const book::Book& book, MachineId machine, State& state) {
    for (const book::RiddenOpen& ridden : book::riddenOpen(book, machine))
        state.questions.push_back((ridden.isByMeter ? "ridden open up to " : "ridden open on ") +
                                  ridden.day.iso());
    for (const auto& mark : book.ledger().all<fastening::JointMark>()) {
        const auto* joint = book.joint(mark.joint);
        const auto* record = mark.record ? book.ledger().find<upkeep::Record>(*mark.record) : nullptr;
        if (record == nullptr || joint->machine != machine || mark.date > book.today() ||
            mark.kind != fastening::MarkKind::Confirmed)
            continue;
        const auto opened = book::jointsOpenedBy(book, *record);
        if (!opened.empty() && !opened.contains(mark.joint))
            state.questions.push_back(joint->name + ": the job never touches it");
    }
}

}  // namespace

State stateByBook(const Tale& tale, const std::string& machine, calendar::Date on) {
    const book::Book book(std::make_shared<const picture::Ledger>(tale.ledger), on);
    const MachineId id = tale.machine(machine);
    const book::State said = book::stateOf(book, id);
    State state;
    for (const auto* step : said.open)
        state.open.push_back(step->code);
    for (const auto& open : said.handTight)
        state.handTight.push_back(jointWords(book, open.joint->joint));
    for (const book::JointOut& each : said.out)
        state.out.push_back(jointWords(book, each.joint->joint) + " with " + each.position);
    sayGaps(tale, said.gaps, state);
    for (const book::Doubt& doubt : said.doubts)
        state.inDoubt.push_back(doubtWords(tale, book, doubt));
    sayQuestions(book, id, state);
    for (auto* list : {&state.open, &state.handTight, &state.out, &state.missing, &state.away, &state.inDoubt,
                       &state.questions})
        std::sort(list->begin(), list->end());
    return state;
}

std::string mayConfirmByBook(const Tale& tale, const std::string& machine, const std::string& joint,
                             calendar::Date on) {
    const book::Book book(std::make_shared<const picture::Ledger>(tale.ledger), on);
    const auto* version = book.joint(tale.machine(machine), joint);
    if (version == nullptr)
        return "no such joint";
    std::int64_t last = 1'000'000;
    const auto change =
        verbs::markJoints({book, [&last] { return ++last; }},
                          {{.joint = version->joint, .date = on, .kind = fastening::MarkKind::Confirmed}});
    if (change)
        return "yes";
    return change.error().fault == base::Fault::IsOut ? "no: nothing fitted there"
                                                      : "no: refused, " + change.error().field.text();
}

std::string mayFitByBook(const Tale& tale, const std::string& item, const std::string& to,
                         const std::string& at, calendar::Date on) {
    const book::Book book(std::make_shared<const picture::Ledger>(tale.ledger), on);
    const auto* card = book.ledger().find<items::Item>(tale.item(item));
    const items::Move place{
        .date = on, .kind = items::MoveKind::Fitted, .machine = tale.machine(to), .position = at};
    const book::Fit fit = book::mayFit(book, *card, place);
    switch (fit.may) {
        case book::MayFit::WrongKind:
            return "no: kind";
        case book::MayFit::Retired:
            return "no: retired";
        case book::MayFit::Taken:
            return "no: taken";
        case book::MayFit::Yes:
            break;
    }
    return fit.from ? "yes, from " + tale.nameOf(fit.from->value()) : "yes";
}

}  // namespace wm::tale

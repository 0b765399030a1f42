// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/state_of_machine.h"

#include <QStringList>
#include <nlohmann/json.hpp>

#include "app/console.h"
#include "core/book/state.h"
#include "core/definitions/printed_words.h"
#include "ui/words/figures.h"
#include "ui/words/state_words.h"

namespace wm::app {

using nlohmann::ordered_json;

namespace {

ordered_json gapJson(const book::Gap& gap) {
    return {{"position", gap.position},
            {"since", gap.since.iso()},
            {"away", gap.isAway},
            {"where", gap.where},
            {"back", gap.backOn ? ordered_json(gap.backOn->iso()) : ordered_json(nullptr)}};
}

ordered_json looseJson(const book::OpenJoint& open) {
    const auto& joint = *open.joint;
    return {{"joint", joint.name},
            {"torque",
             joint.torque ? ordered_json(definitions::printedTorque(joint, '.')) : ordered_json(nullptr)},
            {"confirmed", joint.confirmed},
            {"since", open.state.since.iso()}};
}

}  // namespace

void printState(QTextStream& out, const book::Book& book, MachineId machine) {
    const book::State state = book::stateOf(book, machine);
    out << (state.isWhole() ? "  whole, as far as it is recorded\n" : "  NOT WHOLE\n");
    for (const book::Gap& gap : state.gaps)
        out << "  not fitted: " << ui::gapWords(book, gap) << '\n';
    if (!state.out.empty())
        out << "  " << ui::outWords(state.out) << '\n';
    for (const book::OpenJoint& open : state.handTight)
        out << "  hand-tight: " << fromUtf8(open.joint->name) << ", since "
            << fromUtf8(open.state.since.iso()) << '\n';
    for (const book::Doubt& doubt : state.doubts)
        out << "  in doubt: " << ui::inDoubtWords(book, doubt) << '\n';
    for (const book::RiddenOpen& ridden : book::riddenOpen(book, machine)) {
        QStringList joints;
        for (const JointId joint : ridden.joints)
            joints << fromUtf8(book.joint(joint)->name);
        out << (ridden.isByMeter ? "  ridden open at some time up to " : "  ridden open on ")
            << fromUtf8(ridden.day.iso()) << ": " << joints.join(", ") << "?\n";
    }
}

ordered_json stateJson(const book::Book& book, MachineId machine) {
    const book::State state = book::stateOf(book, machine);
    ordered_json gaps = ordered_json::array();
    for (const book::Gap& gap : state.gaps)
        gaps.push_back(gapJson(gap));
    ordered_json out = ordered_json::array();
    for (const book::JointOut& each : state.out)
        out.push_back({{"joint", each.joint->name}, {"with", each.position}});
    ordered_json loose = ordered_json::array();
    for (const book::OpenJoint& open : state.handTight)
        loose.push_back(looseJson(open));
    ordered_json doubts = ordered_json::array();
    for (const book::Doubt& doubt : state.doubts)
        doubts.push_back(ui::inDoubtWords(book, doubt).toStdString());
    return {{"whole", state.isWhole()},
            {"not_fitted", gaps},
            {"out", out},
            {"hand_tight", loose},
            {"in_doubt", doubts}};
}

}  // namespace wm::app

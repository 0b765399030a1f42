// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sheet/torque_card.h"

#include <fmt/format.h>

#include <array>

#include "core/book/drawer_of_book.h"
#include "core/fastening/stages.h"
#include "core/sheet/sheet_words.h"

namespace wm::sheet {

using base::phrase;
using fastening::JointKind;
using fastening::JointVersion;

namespace {

constexpr std::size_t kGroups = 6;

std::string titleOf(std::size_t group, const Speech& speech) {
    switch (group) {
        case 0:
            return speech(phrase("Sheet", "Wheels and axles"));
        case 1:
            return speech(phrase("Sheet", "Brakes"));
        case 2:
            return speech(phrase("Sheet", "Steering and fork"));
        case 3:
            return speech(phrase("Sheet", "Swingarm and shock"));
        case 4:
            return speech(phrase("Sheet", "Engine"));
        default:
            return speech(phrase("Sheet", "The rest"));
    }
}

std::size_t groupOf(JointKind kind) {
    switch (kind) {
        case JointKind::Axle:
        case JointKind::Wheel:
        case JointKind::Spoke:
        case JointKind::Sprocket:
            return 0;
        case JointKind::Brake:
            return 1;
        case JointKind::Pinch:
        case JointKind::Steering:
        case JointKind::Suspension:
            return 2;
        case JointKind::Pivot:
        case JointKind::Linkage:
        case JointKind::Shock:
        case JointKind::Swingarm:
            return 3;
        case JointKind::Engine:
        case JointKind::EngineMount:
        case JointKind::Cover:
            return 4;
        case JointKind::Peg:
        case JointKind::Other:
            break;
    }
    return 5;
}

void append(std::string& text, const std::string& part) {
    if (!part.empty())
        text += (text.empty() ? "" : " · ") + part;
}

std::string howText(const JointVersion& joint, const Speech& speech) {
    std::string how;
    append(how, joint.stages);
    append(how, joint.condition);
    append(how, joint.locking);
    append(how, renewText(joint.renew, speech));
    append(how, joint.leftHand ? speech(phrase("Sheet", "LEFT-HAND THREAD")) : "");
    append(how, orderText(joint, speech));
    return how;
}

std::string threadText(const JointVersion& joint, const Speech& speech) {
    if (joint.count == 1)
        return joint.thread;
    return joint.thread.empty() ? speech(phrase("Sheet", "%n piece(s)", nullptr, joint.count))
                                : fmt::format("{} x {}", joint.count, joint.thread);
}

CardLine lineOf(const book::Book& book, const JointVersion& joint, const Speech& speech) {
    CardLine line{.joint = joint.name,
                  .thread = threadText(joint, speech),
                  .torque = torqueText(joint, speech),
                  .metric = inNewtonMetresText(joint, speech),
                  .confirmed = joint.confirmed,
                  .how = howText(joint, speech)};
    const auto choices = book::toolsFor(book, joint);
    if (!choices.empty() && choices.front().fit.reach != fastening::Reach::Outside)
        line.tool = choices.front().tool->name;
    return line;
}

std::string modelText(const items::Machine& machine) {
    std::string text = machine.maker;
    text += (text.empty() || machine.model.empty() ? "" : " ") + machine.model;
    if (machine.year)
        text += fmt::format("{}{}", text.empty() ? "" : ", ", *machine.year);
    return text;
}

}  // namespace

base::Result<TorqueCard> torqueCard(const book::Book& book, MachineId machine, const Speech& speech) {
    const auto* card = book.ledger().find<items::Machine>(machine);
    if (card == nullptr)
        return base::refuse(base::Fault::Unknown, "machine", std::to_string(machine.value()));
    TorqueCard result{
        .machine = card->name, .model = modelText(*card), .date = dateText(book.today(), speech)};
    for (const auto& tool : book.ledger().all<fastening::Tool>())
        result.hasDrawer = result.hasDrawer || tool.active;
    std::array<std::vector<CardLine>, kGroups> groups;
    for (const JointVersion* joint : book.joints(machine)) {
        if (!joint->torque) {
            ++result.blank;
            continue;
        }
        result.unconfirmed += joint->confirmed ? 0 : 1;
        groups.at(groupOf(joint->kind)).push_back(lineOf(book, *joint, speech));
    }
    for (std::size_t at = 0; at < groups.size(); ++at)
        if (!groups.at(at).empty())
            result.groups.push_back({titleOf(at, speech), std::move(groups.at(at))});
    if (result.groups.empty())
        return base::refuse(base::Fault::NothingToDo, "torque", card->name);
    return result;
}

}  // namespace wm::sheet

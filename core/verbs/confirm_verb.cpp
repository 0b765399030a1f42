// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/verbs/confirm_verb.h"

#include <fmt/format.h>

#include <cmath>
#include <variant>

#include "core/base/text.h"
#include "core/definitions/confirming.h"
#include "core/definitions/printed_words.h"
#include "core/fastening/drawer.h"
#include "core/picture/checks.h"
#include "core/upkeep/typed_interval.h"
#include "core/verbs/fastening_verbs.h"
#include "core/verbs/names.h"
#include "core/verbs/task_verbs.h"

// A figure that somebody found in the manual: as it stood, or put right; and what to ask before.

namespace wm::verbs {

using base::refuse;
using definitions::printedAmount;
using definitions::printedInterval;
using definitions::PrintedKey;
using definitions::PrintedKind;
using definitions::printedLimit;
using definitions::printedTorque;
using definitions::putAmount;
using definitions::putInterval;
using definitions::putLimit;
using definitions::putTorque;
using fastening::JointVersion;
using upkeep::TaskVersion;

namespace {

constexpr std::string_view kRead = "figure";
constexpr double kOffByTen = 0.08;  // how near to ten times counts as that
constexpr double kOffByTwelve = 0.04;

using Version = std::variant<JointVersion, TaskVersion>;

// The version of today that holds the figure.
Result<Version> versionOf(const Book& book, const PrintedKey& key) {
    const auto unknown = [&] { return refuse(Fault::Unknown, std::string(kRead), std::to_string(key.of)); };
    if (key.kind == PrintedKind::Torque) {
        const auto* joint = book.joint(JointId{key.of});
        return joint == nullptr || !joint->active ? Result<Version>(unknown()) : Version(*joint);
    }
    const auto* task = book.task(TaskId{key.of});
    if (task == nullptr || !task->active)
        return unknown();
    const bool isThere = key.kind == PrintedKind::Interval   ? !task->limits.empty() || task->nth > 0
                         : key.kind == PrintedKind::Quantity ? key.at < task->kit.size()
                                                             : key.at < task->measures.size();
    return isThere ? Result<Version>(Version(*task)) : Result<Version>(unknown());
}

std::string storedText(const Version& version, const PrintedKey& key, char mark) {
    if (const auto* joint = std::get_if<JointVersion>(&version))
        return printedTorque(*joint, mark);
    const auto& task = std::get<TaskVersion>(version);
    switch (key.kind) {
        case PrintedKind::Quantity:
            return printedAmount(task.kit[key.at]);
        case PrintedKind::Limit:
            return printedLimit(task.measures[key.at], mark);
        case PrintedKind::Interval:
        case PrintedKind::Torque:
            break;
    }
    return printedInterval(task, mark);
}

// A torque in stages alone has its figure in them.
bool isTyped(const Version& version, const PrintedKey& key) {
    const auto* joint = std::get_if<JointVersion>(&version);
    return (joint != nullptr && !joint->stages.empty()) || !storedText(version, key, '.').empty();
}

Result<void> putFigure(Version& version, const PrintedKey& key, std::string_view read) {
    const std::string_view text = base::trimmed(read);
    if (text.empty())
        return isTyped(version, key) ? Result<void>{} : refuse(Fault::Empty, std::string(kRead));
    if (text == storedText(version, key, '.') || text == storedText(version, key, ','))
        return {};
    if (auto* joint = std::get_if<JointVersion>(&version))
        return putTorque(*joint, text);
    auto& task = std::get<TaskVersion>(version);
    switch (key.kind) {
        case PrintedKind::Quantity:
            return putAmount(task.kit[key.at], text);
        case PrintedKind::Limit:
            return putLimit(task.measures[key.at], text);
        case PrintedKind::Interval:
        case PrintedKind::Torque:
            break;
    }
    return putInterval(task, text);
}

// Where the source, page and confirmation of the figure stand.
struct Said {
    std::string& source;
    std::string& page;
    bool& confirmed;
};

Said saidOf(Version& version, const PrintedKey& key) {
    if (auto* joint = std::get_if<JointVersion>(&version))
        return {joint->source, joint->page, joint->confirmed};
    auto& task = std::get<TaskVersion>(version);
    if (key.kind == PrintedKind::Quantity)
        return {task.kit[key.at].source, task.kit[key.at].page, task.kit[key.at].confirmed};
    if (key.kind == PrintedKind::Limit)
        return {task.measures[key.at].source, task.measures[key.at].page, task.measures[key.at].confirmed};
    return {task.source, task.page, task.confirmed};
}

// Stages that were put right with the torque are said as well: nobody typed them.
std::string stagesText(const JointVersion& read, const JointVersion& stood) {
    return read.stages == stood.stages ? std::string{} : read.stages;
}

std::string nameOfFigure(const Version& version, const PrintedKey& key) {
    if (const auto* joint = std::get_if<JointVersion>(&version))
        return joint->name;
    const auto& task = std::get<TaskVersion>(version);
    if (key.kind == PrintedKind::Quantity)
        return fmt::format("{}: {}", task.name, task.kit[key.at].what);
    if (key.kind == PrintedKind::Limit)
        return fmt::format("{}: {}", task.name, task.measures[key.at].name);
    return task.name;
}

std::string unitText(const units::Decimal& value, std::string_view unit, char mark) {
    return value.text(mark) + ' ' + std::string(unit);
}

// Ten or twelve times what stood there; only where the thread says nothing.
bool isFarFrom(const JointVersion& read, const JointVersion& stood) {
    if (!read.torque || !stood.torque || fastening::plausibleBand(read.kind, read.thread))
        return false;
    const double ratio = fastening::inNewtonMetres(*read.torque, read.unit) /
                         fastening::inNewtonMetres(*stood.torque, stood.unit);
    const auto isNear = [&](double factor, double by) {
        return std::abs(ratio / factor - 1) <= by || std::abs(ratio * factor - 1) <= by;
    };
    return isNear(10, kOffByTen) || isNear(12, kOffByTwelve);
}

bool isSameInOtherUnit(const JointVersion& read, const JointVersion& stood) {
    return read.torque && stood.torque && read.unit != stood.unit && *read.torque == *stood.torque;
}

std::optional<FigureDoubt> doubtOfTorque(const JointVersion& read, const JointVersion& stood, char mark) {
    const auto unit = [](units::TorqueUnit each) { return base::nameOf(each); };
    for (const auto& end : {read.torque, read.torqueHigh}) {
        if (!end)
            continue;
        if (const auto doubt = fastening::doubtAbout(*end, read.unit, read.kind, read.thread))
            return FigureDoubt{unitText(*end, unit(read.unit), mark),
                               unitText(doubt->meant, unit(doubt->meantUnit), mark), doubt, std::nullopt};
    }
    if (isSameInOtherUnit(read, stood))
        return FigureDoubt{printedTorque(read, mark), printedTorque(stood, mark), std::nullopt,
                           upkeep::Misreading::OtherUnit};
    if (isFarFrom(read, stood))
        return FigureDoubt{printedTorque(read, mark), printedTorque(stood, mark), std::nullopt,
                           upkeep::Misreading::DecimalPoint};
    return std::nullopt;
}

std::optional<FigureDoubt> doubtOfTask(const TaskVersion& read, const TaskVersion& stood,
                                       const PrintedKey& key, char mark) {
    if (key.kind == PrintedKind::Quantity) {
        upkeep::KitLine line = read.kit[key.at];
        const auto doubt = upkeep::doubtAbout(line.amount, stood.kit[key.at].amount, line.unit);
        if (!doubt)
            return std::nullopt;
        const std::string typed = printedAmount(line);
        line.amount = doubt->meant;
        return FigureDoubt{typed, printedAmount(line), std::nullopt, doubt->misreading};
    }
    if (key.kind == PrintedKind::Limit) {
        const upkeep::MeasurePoint& point = read.measures[key.at];
        const auto doubt = upkeep::doubtAbout(point, stood.measures[key.at]);
        if (!doubt)
            return std::nullopt;
        return FigureDoubt{unitText(doubt->typed, point.unit, mark), unitText(doubt->meant, point.unit, mark),
                           std::nullopt, doubt->misreading};
    }
    const auto doubt = upkeep::doubtAbout(read.limits, stood.limits);
    if (!doubt)
        return std::nullopt;
    return FigureDoubt{upkeep::countText(doubt->typed.every, doubt->typed.counter, mark),
                       upkeep::countText(doubt->meant.every, doubt->meant.counter, mark), std::nullopt,
                       doubt->misreading};
}

}  // namespace

Result<std::optional<FigureDoubt>> doubtAbout(const Book& book, const PrintedKey& key,
                                              std::string_view figure, char mark) {
    auto stood = versionOf(book, key);
    if (!stood)
        return tl::unexpected(stood.error());
    Version read = *stood;
    if (const auto put = putFigure(read, key, figure); !put)
        return tl::unexpected(put.error());
    if (const auto* joint = std::get_if<JointVersion>(&read))
        return doubtOfTorque(*joint, std::get<JointVersion>(*stood), mark);
    return doubtOfTask(std::get<TaskVersion>(read), std::get<TaskVersion>(*stood), key, mark);
}

Result<Change> confirmPrinted(const VerbContext& context, const PrintedKey& key, const ReadInManual& read) {
    auto stood = versionOf(context.book, key);
    if (!stood)
        return tl::unexpected(stood.error());
    Version version = *stood;
    if (const auto put = putFigure(version, key, read.figure); !put)
        return tl::unexpected(put.error());
    const Said said = saidOf(version, key);
    said.source = base::trimmed(read.source);
    said.page = base::trimmed(read.page);
    said.confirmed = true;
    for (const auto& [field, text] : {std::pair("source", &said.source), std::pair("page", &said.page)})
        if (text->empty())
            return refuse(Fault::Empty, field);
    const std::string name = nameOfFigure(version, key);
    const std::string figure = storedText(version, key, '.');
    const bool isNew = figure != storedText(*stood, key, '.');
    std::visit([&](auto& each) { each.validFrom = context.book.today(); }, version);
    const auto* joint = std::get_if<JointVersion>(&version);
    const std::string stages =
        joint == nullptr ? std::string{} : stagesText(*joint, std::get<JointVersion>(*stood));
    auto change =
        joint != nullptr ? saveJoint(context, *joint) : saveTask(context, std::get<TaskVersion>(version));
    if (change)
        change->text =
            base::stored(!isNew           ? phrase("Undo", "confirmed \"%1\" against the manual").arg(name)
                         : stages.empty() ? phrase("Undo", "\"%1\" is %2 by the manual").arg(name).arg(figure)
                                          : phrase("Undo", "\"%1\" is %2 (stages: %3) by the manual")
                                                .arg(name)
                                                .arg(figure)
                                                .arg(stages));
    return change;
}

}  // namespace wm::verbs

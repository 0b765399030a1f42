// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>

#include "app/by_name.h"
#include "app/open_garage.h"
#include "app/verb.h"
#include "core/picture/checks.h"
#include "core/weekend/plan.h"

namespace wm::app {

namespace {

constexpr std::int64_t kLongestJob = 10'000;

struct Pair {
    QString name;
    std::string value;
};

// "engine oil=850" at the last equals sign.
Answer<Pair> parsePair(const char* option, const QString& text) {
    const qsizetype at = text.lastIndexOf('=');
    if (at <= 0 || at + 1 == text.size())
        return fail(base::Error{base::Fault::Malformed, option, text.toStdString(), "name=figure"});
    return Pair{text.left(at).trimmed(), text.mid(at + 1).trimmed().toStdString()};
}

Answer<void> readUses(const Call& call, const book::Book& book, const upkeep::TaskVersion* task,
                      upkeep::Record& record) {
    if (call.has("kit") && task != nullptr)
        for (const upkeep::KitLine& kit : task->kit)
            if (kit.line && !kit.onlyIfNeeded)
                record.uses.push_back({*kit.line, std::nullopt, kit.amount});
    for (const QString& text : call.values("used")) {
        const auto pair = parsePair("used", text);
        if (!pair)
            return tl::unexpected(pair.error());
        const auto line = findStockLine(book, pair->name);
        if (!line)
            return tl::unexpected(line.error());
        const auto amount = units::parseCount("used", pair->value, picture::kMostUsed);
        if (!amount)
            return fail(amount.error());
        record.uses.push_back({(*line)->id, std::nullopt, *amount});
    }
    return {};
}

Answer<void> readMeasured(const Call& call, const upkeep::TaskVersion* task, upkeep::Record& record) {
    for (const QString& text : call.values("measured")) {
        const auto pair = parsePair("measured", text);
        if (!pair)
            return tl::unexpected(pair.error());
        const auto value = units::parseDecimal("measured", pair->value);
        if (!value)
            return fail(value.error());
        std::string known;
        const upkeep::MeasurePoint* point = nullptr;
        if (task != nullptr)
            for (const upkeep::MeasurePoint& one : task->measures) {
                known += (known.empty() ? "" : ", ") + one.name;
                if (fromUtf8(one.name).compare(pair->name, Qt::CaseInsensitive) == 0)
                    point = &one;
            }
        if (point == nullptr)
            return fail(base::Error{base::Fault::Unknown, "measurement", pair->name.toStdString(), known});
        record.measured.push_back({point->name, point->unit, *value});
    }
    return {};
}

// Access steps that had to be off: those of the task with all that they need, or those that were said.
Answer<void> readSteps(const Call& call, const book::Book& book, const upkeep::TaskVersion* task,
                       upkeep::Record& record) {
    std::vector<std::string> codes;
    if (call.has("steps")) {
        for (const QString& word : call.value("steps").split(',', Qt::SkipEmptyParts))
            if (word.trimmed() != "none")
                codes.push_back(word.trimmed().toStdString());
    } else if (task != nullptr) {
        for (const base::Code& step : task->steps)
            codes.push_back(step.code);
    }
    const auto opening = weekend::opening(book.steps(record.machine), codes);
    if (!opening)
        return fail(opening.error());
    for (const weekend::StepVersion* step : *opening)
        record.steps.push_back({step->code});
    return {};
}

Answer<void> readMeter(const Call& call, const book::Book& book, upkeep::Record& record) {
    const auto meter = call.hours("meter");
    if (!meter)
        return tl::unexpected(meter.error());
    record.meter = *meter;
    if (call.has("minutes")) {
        const auto minutes = call.count("minutes", kLongestJob);
        if (!minutes)
            return tl::unexpected(minutes.error());
        record.minutes = units::Minutes{*minutes};
    }
    if (call.has("by")) {
        const auto person = findPerson(book, call.value("by"));
        if (!person)
            return tl::unexpected(person.error());
        record.by = (*person)->id;
    }
    record.data = call.text("data");
    record.note = call.text("note");
    record.extraDone = call.has("extra");
    record.kind = call.has("baseline")      ? upkeep::RecordKind::Baseline
                  : call.has("looked-fine") ? upkeep::RecordKind::LookedFine
                                            : upkeep::RecordKind::Done;
    return {};
}

Answer<void> readJoints(const Call& call, const book::Book& book, verbs::JobDraft& draft) {
    for (const QString& words : call.values("torqued")) {
        const auto joint = findJoint(book, draft.record.machine, words);
        if (!joint)
            return tl::unexpected(joint.error());
        draft.confirmed.push_back((*joint)->joint);
    }
    draft.confirmsOthers = call.has("others-too");
    if (call.has("tool")) {
        const auto tool = findTool(book, call.value("tool"));
        if (!tool)
            return tl::unexpected(tool.error());
        draft.tool = (*tool)->id;
    }
    return {};
}

// Where what the job was on went, and until when.
Answer<void> readSending(const Call& call, verbs::JobDraft& draft) {
    if (!call.has("sent-to") && call.has("back-on"))
        return fail(Exit::Usage, "Say with --sent-to where it went that is to be back on that day.");
    if (!call.has("sent-to"))
        return {};
    const auto back = call.day("back-on");
    if (!back)
        return tl::unexpected(back.error());
    draft.sends = verbs::Sending{.where = call.text("sent-to"), .backOn = *back};
    return {};
}

Answer<verbs::JobDraft> readJob(const Call& call, const book::Book& book, MachineId machine,
                                calendar::Date date) {
    verbs::JobDraft draft;
    upkeep::Record& record = draft.record;
    record.machine = machine;
    record.date = date;
    const upkeep::TaskVersion* task = nullptr;
    if (call.has("task")) {
        const auto found = findTask(book, machine, call.value("task"));
        if (!found)
            return tl::unexpected(found.error());
        task = *found;
        record.task = task->task;
    } else {
        const auto found = findSnag(book, machine, call.value("snag"));
        if (!found)
            return tl::unexpected(found.error());
        record.snag = (*found)->id;
        record.what = (*found)->what;
    }
    auto read = readMeter(call, book, record)
                    .and_then([&] { return readUses(call, book, task, record); })
                    .and_then([&] { return readMeasured(call, task, record); })
                    .and_then([&] { return readJoints(call, book, draft); })
                    .and_then([&] { return readSending(call, draft); });
    if (!read)
        return tl::unexpected(read.error());
    draft.opensJoints = record.kind == upkeep::RecordKind::Done;
    if (draft.opensJoints)
        if (auto steps = readSteps(call, book, task, record); !steps)
            return tl::unexpected(steps.error());
    // What an earlier job asked to have done again is settled by doing it.
    if (task != nullptr)
        for (const upkeep::FollowUp& followUp : book.followUps(machine))
            if (!followUp.rule.code.empty() && followUp.rule.code == task->code)
                draft.answers.emplace_back(followUp.origin, followUp.rule.what);
    return draft;
}

Answer<void> runRecord(const Call& call) {
    if (call.has("task") == call.has("snag"))
        return fail(Exit::Usage,
                    "Say what was done, with --task or with --snag; see witnessmark record --help.");
    const auto day = call.day("on");
    if (!day)
        return tl::unexpected(day.error());
    auto garage = Garage::open(call, store::OpenFor::Writing);
    if (!garage)
        return tl::unexpected(garage.error());
    const auto machine = findMachine(garage->book(), call.value("machine"));
    if (!machine)
        return tl::unexpected(machine.error());
    const auto draft = readJob(call, garage->book(), (*machine)->id, day->value_or(garage->today()));
    if (!draft)
        return tl::unexpected(draft.error());
    const MachineId id = (*machine)->id;
    const auto change = garage->apply(
        [&draft](const verbs::VerbContext& context) { return verbs::recordJob(context, *draft); });
    if (!change)
        return tl::unexpected(change.error());
    reportWritten(call, *change);
    if (!call.has("json"))
        for (const book::OpenJoint& open : garage->book().handTight(id))
            if (open.joint != nullptr)
                call.console().out << "Hand-tight: " << fromUtf8(open.joint->name) << ".\n";
    return {};
}

}  // namespace

VerbSpec recordVerb() {
    return {"record",
            "Record a job done.",
            {{"FILE", "The file."}},
            {machineOption(),
             onOption("The day of it, 2026-05-16; otherwise today."),
             {"task", "The task, by its name or code or a part of it.", "name"},
             {"snag", "Or the open snag that was put right, by its words or a part of them.", "words"},
             {"looked-fine", "It was only looked at and found fine; nothing was taken apart."},
             {"baseline", "It was done before this file knew the machine, by somebody's word."},
             {"meter", "What the hour meter showed.", "hours"},
             {"used",
              "A line of the shelf and how much of it, in its own unit: \"engine oil=850\". Again for more.",
              "line=amount"},
             {"kit", "The parts and fluids that the task lists were used."},
             {"measured", "A measurement of the task: \"ring gap=0.52\". Again for more.", "name=figure"},
             {"torqued",
              "A joint that was torqued and marked; the others that were opened go on the hand-tight "
              "list. Again for more.",
              "joint"},
             {"others-too", "Joints that the job never touches were torqued too; that is meant."},
             {"sent-to", "What the job is on went to this workshop with it.", "name"},
             {"back-on", "The day that it is promised back, 2026-06-17.", "day"},
             {"tool", "The torque tool that they were torqued with, by its name in the drawer.", "name"},
             {"steps",
              "Access steps that were off, by code, with commas, or \"none\"; otherwise those of the task.",
              "codes"},
             {"extra", "The work of every n-th time was done as well."},
             {"minutes", "How long it took.", "minutes"},
             {"by", "Who did it.", "name"},
             {"data", "By what data: \"service manual p. 2-31\".", "text"},
             {"note", "A note.", "text"},
             jsonOption()},
            "  witnessmark record garage.witnessmark --machine \"Heron 250\" --task engine-oil --meter 62,5 "
            "--used \"engine oil=850\"\n"
            "  witnessmark record garage.witnessmark --machine Heron --task \"rear wheel bearings\" "
            "--torqued \"rear axle nut\" "
            "--minutes 25\n",
            runRecord};
}

}  // namespace wm::app

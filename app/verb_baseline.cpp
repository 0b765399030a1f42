// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/by_name.h"
#include "app/open_garage.h"
#include "app/verb.h"
#include "core/upkeep/typed_bracket.h"
#include "core/verbs/baseline_verb.h"

namespace wm::app {

namespace {

using upkeep::Counter;
using verbs::BaselineAnswer;
using verbs::BaselineLine;

Answer<std::optional<verbs::Remembered>> rememberedOf(const Call& call, const char* option, Counter counter) {
    if (!call.has(option))
        return std::nullopt;
    const auto bracket = upkeep::parseBracket(option, call.text(option), counter);
    if (!bracket)
        return fail(bracket.error());
    return verbs::Remembered{bracket->low, bracket->best, bracket->high};
}

// "2025-03-01..2025-05-15..2025-08-01", or its ends alone.
Answer<std::optional<verbs::RememberedDay>> dayOf(const Call& call, const char* option) {
    if (!call.has(option))
        return std::nullopt;
    std::vector<calendar::Date> days;
    for (const QString& word : call.value(option).split(QStringLiteral(".."))) {
        const auto day = calendar::parseDate(option, word.trimmed().toStdString());
        if (!day)
            return fail(day.error());
        days.push_back(*day);
    }
    if (days.size() < 2 || days.size() > 3)
        return fail(base::Error{base::Fault::Malformed, option, call.text(option), "DAY..DAY..DAY"});
    return verbs::RememberedDay{days.front(), days.size() == 3 ? std::optional(days[1]) : std::nullopt,
                                days.back()};
}

std::optional<Counter> pieceNamed(const std::string& words) {
    for (const auto& counter : upkeep::kCounters)
        if (counter.piece && (words == counter.stored || words == counter.one))
            return counter.of;
    return std::nullopt;
}

// "washes=0", "mud days=1..2..3"
Answer<std::vector<verbs::PiecesSince>> sinceOf(const Call& call) {
    std::vector<verbs::PiecesSince> pieces;
    for (const QString& text : call.values("since")) {
        const auto at = text.indexOf('=');
        const auto counter = pieceNamed(text.left(at).trimmed().toStdString());
        if (at < 0 || !counter)
            return fail(base::Error{base::Fault::Malformed, "since", text.toStdString(), "washes=0..2..5"});
        const auto bracket = upkeep::parseBracket("since", text.mid(at + 1).toStdString(), *counter);
        if (!bracket)
            return fail(bracket.error());
        pieces.push_back({*counter, {bracket->low, bracket->best, bracket->high}});
    }
    return pieces;
}

Answer<BaselineLine> lineOf(const Call& call, const book::Book& book, MachineId machine) {
    const auto task = findTask(book, machine, call.value("task"));
    if (!task)
        return tl::unexpected(task.error());
    BaselineLine line{.task = (*task)->task};
    line.answer = call.has("never-done")    ? BaselineAnswer::NeverDone
                  : call.has("looked-fine") ? BaselineAnswer::LookedFine
                  : call.has("new")         ? BaselineAnswer::NewOn
                                            : BaselineAnswer::Serviced;
    const auto date = call.day("day");
    const auto meter = call.hours("meter");
    const auto ago = rememberedOf(call, "hours-ago", Counter::Hours);
    const auto then = rememberedOf(call, "meter-about", Counter::Hours);
    const auto between = dayOf(call, "day-about");
    auto since = sinceOf(call);
    const auto read = [](const auto& answer) -> Answer<void> {
        return answer ? Answer<void>{} : tl::unexpected(answer.error());
    };
    auto all = read(date).and_then([&] { return read(meter); }).and_then([&] { return read(ago); });
    all = all.and_then([&] { return read(then); }).and_then([&] { return read(between); });
    all = all.and_then([&] { return read(since); });
    if (!all)
        return tl::unexpected(all.error());
    line.date = *date;
    line.meter = *meter;
    line.hoursAgo = *ago;
    line.meterThen = *then;
    line.day = *between;
    line.since = std::move(*since);
    return line;
}

Answer<verbs::SinceThen> ofAllJobs(const Call& call) {
    auto since = sinceOf(call);
    if (!since)
        return tl::unexpected(since.error());
    const auto from = call.day("day");
    if (!from)
        return tl::unexpected(from.error());
    return verbs::SinceThen{std::move(*since), *from};
}

Answer<void> runBaseline(const Call& call) {
    if (!call.has("task") && !call.has("since"))
        return fail(Exit::Usage,
                    "Say what is known, of one job with --task, or of all with --since; see witnessmark "
                    "baseline --help.");
    auto garage = Garage::open(call, store::OpenFor::Writing);
    if (!garage)
        return tl::unexpected(garage.error());
    const auto machine = findMachine(garage->book(), call.value("machine"));
    if (!machine)
        return tl::unexpected(machine.error());
    const MachineId id = (*machine)->id;
    std::vector<BaselineLine> lines;
    verbs::SinceThen all;
    if (call.has("task")) {
        auto line = lineOf(call, garage->book(), id);
        if (!line)
            return tl::unexpected(line.error());
        lines.push_back(std::move(*line));
    } else {
        auto said = ofAllJobs(call);
        if (!said)
            return tl::unexpected(said.error());
        all = std::move(*said);
    }
    const auto change = garage->apply(
        [&](const verbs::VerbContext& context) { return verbs::recordBaseline(context, id, lines, all); });
    if (!change)
        return tl::unexpected(change.error());
    reportWritten(call, *change);
    return {};
}

}  // namespace

VerbSpec baselineVerb() {
    return {
        "baseline",
        "Say what is known of a job from before the file.",
        {{"FILE", "The file."}},
        {machineOption(),
         {"task", "The task, by its name or code or a part of it.", "name"},
         {"day", "The day of it, as it was written down; of --since without --task: since when.", "date"},
         {"meter", "What the hour meter showed, as it was written down; with --day it becomes a reading.",
          "hours"},
         {"hours-ago", "Remembered: so many hours ago, at least..likely..at most, or the ends alone.",
          "10..15..25"},
         {"meter-about", "Remembered: what the hour meter showed then, in the same way.", "33..36"},
         {"day-about", "Remembered: between which days, likely on which.", "DAY..DAY..DAY"},
         {"never-done", "It is the first one: what is on it came with the machine."},
         {"new", "It was as new on that day."},
         {"looked-fine", "It was looked at and found fine."},
         {"since",
          "How many there were since then: \"washes=0\", \"mud days=1..2..3\". Again for more. Without "
          "--task it is said of all jobs at once.",
          "what=count"},
         jsonOption()},
        "  witnessmark baseline garage.witnessmark --machine Heron --task piston --day 2026-04-12 --meter "
        "33\n"
        "  witnessmark baseline garage.witnessmark --machine Heron --task clutch --hours-ago 15..22..35\n"
        "  witnessmark baseline garage.witnessmark --machine Heron --since washes=0 --since \"mud "
        "days=0\"\n",
        runBaseline};
}

}  // namespace wm::app

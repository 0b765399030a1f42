// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/core/slow/day_one_garage.h"

#include "tests/core/exchange/shipped.h"

namespace wm::tale {

namespace {

using units::Hours;
using verbs::BaselineAnswer;
using verbs::BaselineLine;
using verbs::Remembered;
using verbs::VerbContext;

std::vector<std::string> endsOfText(const std::string& text) {
    std::vector<std::string> found;
    std::string::size_type from = 0;
    for (;;) {
        const auto dots = text.find("..", from);
        found.push_back(text.substr(from, dots - from));
        if (dots == std::string::npos)
            return found;
        from = dots + 2;
    }
}

Remembered rememberedIn(const std::string& text, bool inHundredths) {
    const KnownEnds ends = endsIn(text, inHundredths);
    return {ends.low.value_or(0), ends.best, ends.high};
}

verbs::RememberedDay daysIn(const std::string& text) {
    const auto parts = endsOfText(text);
    return {dayOf(parts.front()), dayOf(parts.at(1)), dayOf(parts.back())};
}

upkeep::Counter pieceOf(const std::string& words) {
    for (const auto& counter : upkeep::kCounters)
        if (counter.stored == words)
            return counter.of;
    ADD_FAILURE() << words;
    return upkeep::Counter::Washes;
}

void takeRemembered(BaselineLine& line, const Json& said) {
    if (said.contains("hours_ago"))
        line.hoursAgo = rememberedIn(said.at("hours_ago").get<std::string>(), true);
    if (said.contains("meter"))
        line.meterThen = rememberedIn(said.at("meter").get<std::string>(), true);
    if (said.contains("day"))
        line.day = daysIn(said.at("day").get<std::string>());
}

BaselineLine baselineOf(TaskId task, const Json& says) {
    BaselineLine line{.task = task, .answer = BaselineAnswer::Serviced};
    if (says.contains("first_one"))
        line.answer = BaselineAnswer::NeverDone;
    if (says.contains("looked_fine"))
        line.answer = BaselineAnswer::LookedFine;
    if (says.contains("written")) {
        const Json& written = says.at("written");
        line.date = dayOf(written.at("day"));
        if (written.contains("meter"))
            line.meter = Hours{hundredths(written.at("meter").get<std::string>())};
    }
    for (const char* said : {"remembered", "between"})
        if (says.contains(said))
            takeRemembered(line, says.at(said));
    if (says.contains("since"))
        for (const auto& [counter, count] : says.at("since").items())
            line.since.push_back({pieceOf(counter), rememberedIn(count.get<std::string>(), false)});
    return line;
}

}  // namespace

KnownEnds endsIn(const std::string& text, bool inHundredths) {
    const auto end = [&](const std::string& part) -> std::optional<std::int64_t> {
        if (part == "?")
            return std::nullopt;
        return inHundredths ? hundredths(part) : std::stoll(part);
    };
    const auto parts = endsOfText(text);
    if (parts.size() == 2)
        return {end(parts.front()), std::nullopt, end(parts.back())};
    return parts.size() == 1 ? KnownEnds{end(text), end(text), end(text)}
                             : KnownEnds{end(parts.at(0)), end(parts.at(1)), end(parts.at(2))};
}

KnownEnds agesIn(const std::string& text, calendar::Date today) {
    const auto age = [&](const std::string& part) -> std::optional<std::int64_t> {
        return part == "?" ? std::nullopt : std::optional<std::int64_t>(today - dayOf(part));
    };
    const auto parts = endsOfText(text);
    return parts.size() == 1 ? KnownEnds{age(text), age(text), age(text)}
                             : KnownEnds{age(parts.at(2)), age(parts.at(1)), age(parts.at(0))};
}

DayOne::DayOne(const std::string& starter, const Json& machine, Jobs jobs) {
    today = dayOf(machine.at("day"));
    const KnownEnds past = endsIn(machine.at("past").get<std::string>(), true);
    items::Machine card{.name = machine.at("name").get<std::string>(),
                        .starter = starter,
                        .since = today,
                        .pastLow = Hours{past.low.value()},
                        .pastBest = Hours{past.best.value()},
                        .pastHigh = past.high ? std::optional(Hours{*past.high}) : std::nullopt};
    must([&](const VerbContext& context) { return verbs::saveMachine(context, card); });
    machine_ = last<items::Machine>();
    if (machine.contains("meter"))
        must(verbs::saying(verbs::logReading,
                           {.machine = machine_,
                            .date = today,
                            .part = calendar::DayPart::BeforeRiding,
                            .shown = Hours{hundredths(machine.at("meter").get<std::string>())}}));
    exchange::Starter schedule = test::shippedStarter(starter + ".json");
    for (auto& each : schedule.tasks)
        each.active = each.active || jobs == Jobs::AllOn;
    must([&](const VerbContext& context) {
        return verbs::adoptSchedule(context, machine_, schedule.name, schedule.steps, schedule.joints,
                                    schedule.tasks);
    });
    const auto race = dayOf(machine.at("race"));
    must([&](const VerbContext& context) {
        return verbs::saveEvent(context, {.name = "Birch Hollow",
                                          .kind = outlook::EventKind::Race,
                                          .first = race,
                                          .last = race,
                                          .entries = {{machine_}}});
    });
}

TaskId DayOne::task(const std::string& code) const {
    for (const auto& version : ledger().all<upkeep::TaskVersion>())
        if (version.code == code)
            return version.task;
    ADD_FAILURE() << "no task " << code;
    return {};
}

void DayOne::answer(const Json& answer) {
    const Json& says = answer.at("says");
    if (says.contains("nobody_knows"))
        return;
    const auto line = baselineOf(task(answer.at("task").get<std::string>()), says);
    must([&](const VerbContext& context) { return verbs::recordBaseline(context, machine_, {line}); });
}

}  // namespace wm::tale

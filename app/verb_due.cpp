// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>

#include "app/by_name.h"
#include "app/open_garage.h"
#include "app/state_of_machine.h"
#include "app/verb.h"
#include "core/book/due_change.h"
#include "core/book/narrowing.h"
#include "core/book/round.h"
#include "core/book/unrecorded.h"
#include "core/explain/why.h"
#include "core/units/decimal.h"
#include "core/units/quantity.h"
#include "ui/words/chance_words.h"
#include "ui/words/figures.h"
#include "ui/words/standing_words.h"
#include "ui/words/why_words.h"

namespace wm::app {

namespace {

using book::DueLine;
using nlohmann::ordered_json;
using outlook::StandingKind;

ordered_json dayJson(const std::optional<calendar::Date>& day) {
    return day ? ordered_json(day->iso()) : ordered_json(nullptr);
}

std::string itemName(const book::Book& book, const DueLine& line) {
    const auto* item = line.item ? book.ledger().find<items::Item>(*line.item) : nullptr;
    return item != nullptr ? item->name : std::string{};
}

ordered_json countJson(const std::optional<std::int64_t>& count) {
    return count ? ordered_json(*count) : ordered_json(nullptr);
}

ordered_json bracketJson(const std::optional<upkeep::CountBracket>& count) {
    if (!count)
        return nullptr;
    return {{"least", count->low}, {"likely", countJson(count->best)}, {"most", countJson(count->high)}};
}

// The answer that would narrow it.
ordered_json measuredJson(const std::optional<upkeep::ReachedValue>& reached) {
    if (!reached)
        return nullptr;
    return {{"name", reached->name},
            {"value", reached->value.text()},
            {"limit", reached->limit.text()},
            {"unit", reached->unit},
            {"on", reached->date.iso()}};
}

ordered_json askedJson(const DueLine& line) {
    const auto asked = book::narrowingOf(line);
    if (!asked)
        return nullptr;
    return {{"for", base::nameOf(asked->by)},
            {"counter", base::nameOf(asked->counter)},
            {"since", dayJson(asked->since)}};
}

// What every n-th completion brings as well, and with the how manieth from now.
ordered_json extraJson(const DueLine& line) {
    if (line.countdown.extraIn == 0)
        return nullptr;
    return {{"what", line.task->extra}, {"every", line.task->everyNth}, {"in", line.countdown.extraIn}};
}

ordered_json limitJson(const upkeep::LimitState& state) {
    return {{"counter", base::nameOf(state.limit.counter)},
            {"amount", state.amount},
            {"behind", bracketJson(state.behind)},
            {"reached", base::nameOf(state.reached)},
            {"left", state.left},
            {"due_on", dayJson(state.dueOn)}};
}

ordered_json chanceJson(const std::optional<double>& chance) {
    return chance ? ordered_json(std::round(1000 * *chance) / 1000) : ordered_json(nullptr);
}

bool isQuiet(const DueLine& line) {
    return line.standing.kind == StandingKind::InHand || line.standing.kind == StandingKind::NoRecord ||
           line.standing.kind == StandingKind::NothingFitted;
}

ordered_json lineJson(const book::Book& book, const items::Machine& machine, const DueLine& line,
                      const ordered_json& state) {
    const outlook::Chances& chances = book.chances(machine.id);
    const std::string item = itemName(book, line);
    auto limits = ordered_json::array();
    for (const upkeep::LimitState& limit : line.countdown.limits)
        limits.push_back(limitJson(limit));
    const auto& event = line.standing.event;
    const bool before = line.standing.kind == StandingKind::BeforeEvent && event.has_value();
    return {{"machine", machine.name},
            {"item", item.empty() ? ordered_json(nullptr) : ordered_json(item)},
            {"task", line.task->name},
            {"code", line.task->code},
            {"consequence", base::nameOf(line.task->consequence)},
            {"standing", base::nameOf(line.standing.kind)},
            {"window",
             {{"early", dayJson(line.standing.early)},
              {"likely", dayJson(line.standing.likely)},
              {"late", dayJson(line.standing.late)}}},
            {"event", before ? ordered_json{{"name", event->name}, {"first_day", event->first.iso()}}
                             : ordered_json(nullptr)},
            {"chance", chanceJson(line.standing.chance)},
            {"first_to_go", chances.first == line.task->task},
            {"machine_clear", chanceJson(chances.clear)},
            {"machine_clear_then", chanceJson(chances.clearOfRest)},
            {"habit", base::nameOf(chances.trust)},
            {"limits", limits},
            {"measured", measuredJson(line.countdown.value)},
            {"asked", askedJson(line)},
            {"extra", extraJson(line)},
            {"each_outing", !isQuiet(line) && book::isOnlyOfTheRound(line)},
            {"last_done", line.last != nullptr ? ordered_json(line.last->date.iso()) : ordered_json(nullptr)},
            {"put_off_until",
             line.deferral != nullptr ? dayJson(line.deferral->untilDate) : ordered_json(nullptr)},
            {"machine_whole", state.at("whole")},
            {"machine_state", state},
            {"waits_for", line.waitsFor ? ordered_json(*line.waitsFor) : ordered_json(nullptr)},
            {"picked", line.picked},
            {"confirmed", line.task->confirmed}};
}

ordered_json valueJson(const std::optional<units::Decimal>& value) {
    return value ? ordered_json(value->text()) : ordered_json(nullptr);
}

ordered_json stepJson(const explain::Step& step) {
    auto children = ordered_json::array();
    for (const explain::Step& child : step.children)
        children.push_back(stepJson(child));
    return {{"kind", base::nameOf(step.kind)},
            {"name", step.name},
            {"detail", step.detail},
            {"from", dayJson(step.from)},
            {"to", dayJson(step.to)},
            {"counter", step.counter ? ordered_json(base::nameOf(*step.counter)) : ordered_json(nullptr)},
            {"figure", bracketJson(step.figure)},
            {"in_thousandths", step.fine},
            {"as_ridden", bracketJson(step.raw)},
            {"permille", step.permille},
            {"count", step.count},
            {"known", step.known ? ordered_json(base::nameOf(*step.known)) : ordered_json(nullptr)},
            {"fact", step.fact},
            {"value", valueJson(step.value)},
            {"value_limit", valueJson(step.valueLimit)},
            {"governs", step.governs},
            {"makes", base::nameOf(step.makes)},
            {"children", children}};
}

// "6.4 h"; of what is counted in pieces the bare number: its name stands once, behind the limit.
QString figureWords(upkeep::Counter counter, std::int64_t count) {
    using upkeep::Counter;
    if (counter == Counter::Hours)
        return fromUtf8(units::hoursText(units::Hours{count})) + " h";
    if (counter == Counter::Metres)
        return fromUtf8(units::kilometresText(units::Metres{count})) + " km";
    return QString::number(count);
}

// "6.0 h", "1 outing"
QString amountWords(upkeep::Counter counter, std::int64_t count) {
    using upkeep::Counter;
    if (counter == Counter::Hours || counter == Counter::Metres)
        return figureWords(counter, count);
    // Months are counted out in days.
    return ui::countWords(count, counter == Counter::Months ? Counter::Days : counter);
}

const char* happeningWords(upkeep::Happening happening) {
    using upkeep::Happening;
    switch (happening) {
        case Happening::Wash:
            return "after a wash";
        case Happening::PressureWash:
            return "after a pressure wash";
        case Happening::MudDay:
            return "after a mud day";
        case Happening::Crash:
            return "after a crash";
        case Happening::BeforeRace:
            return "before a race";
        case Happening::Job:
            return "after another job";
    }
    return "";
}

// "6.4 h", "3", "12.0 h to 31.0 h", "40.0 h or more", "12.0 h or more, likely 45.0 h"; the likely figure
// alone where it decides and somebody knows the most.
QString spanWords(const upkeep::LimitState& state) {
    using upkeep::Reached;
    const auto words = [&](std::int64_t count) { return figureWords(state.limit.counter, count); };
    const bool isOpen = state.reached == Reached::MayBe || state.reached == Reached::NobodyKnows;
    const QString orMore = words(state.behind.low) + " or more";
    const bool isExact = !state.behind.best || *state.behind.best == state.behind.low;
    if (!state.behind.high)
        return isOpen || isExact ? orMore : orMore + ", likely " + words(*state.behind.best);
    const QString span = words(state.behind.low) + " to " + words(*state.behind.high);
    if (!state.behind.best)
        return span;
    // What the meter leaves open is not worth a word.
    const bool isWide = 20 * (*state.behind.high - state.behind.low) > state.amount;
    if (isOpen)
        return span + ", likely " + words(*state.behind.best);
    return isWide ? words(*state.behind.best) + " (" + span + ")" : words(*state.behind.best);
}

// "6.4 h of 6.0 h, likely 2026-05-12, 60 %", "15.0 h to 35.0 h of 30.0 h. How many hours ago, more closely?"
QString why(const DueLine& line, calendar::Date today) {
    QStringList words;
    const auto& countdown = line.countdown;
    if (countdown.value) {
        words << ui::howFar(line, today).replace(QChar(0x00A0), QChar(' '));
    } else if (countdown.triggered) {
        words << happeningWords(*countdown.triggered);
    } else if (const upkeep::LimitState* state = book::decidingLimit(line)) {
        words << spanWords(*state) + " of " + amountWords(state->limit.counter, state->amount);
        if (state->behind.best > state->amount && state->leftWithAllowance >= 0)
            words << "over, allowed";
    }
    if (line.empty)
        words << fromUtf8(line.empty->position) + " off since " + fromUtf8(line.empty->since.date.iso());
    else if (line.waitsFor)
        words << "waits, the " + fromUtf8(*line.waitsFor) + " is off";
    const auto& standing = line.standing;
    QString question;
    if (standing.kind == StandingKind::MayBeOver || standing.kind == StandingKind::NoRecord) {
        question = ui::narrowingWords(line, today);
    } else if (standing.kind != StandingKind::Overdue && standing.likely) {
        words << "likely " + fromUtf8(standing.likely->iso());
        if (standing.chance && *standing.chance < 1)
            words << ui::chanceWords(*standing.chance);
    }
    if (words.isEmpty() && standing.kind == StandingKind::Overdue)
        words << ui::howFar(line, today);
    if (line.deferral != nullptr && line.deferral->untilDate)
        words << "put off until " + fromUtf8(line.deferral->untilDate->iso());
    if (countdown.extraDue())
        words << "this time as well: " + fromUtf8(line.task->extra);
    const QString said = words.join(", ");
    return question.isEmpty() || said.isEmpty() ? said + question : said + ". " + question;
}

void printHead(QTextStream& out, const book::Book& book, const items::Machine& machine) {
    out << fromUtf8(machine.name);
    if (const auto meter = book.meterNow(machine.id))
        out << ", meter " << fromUtf8(units::hoursText(*meter)) << " h";
    const auto& events = book.ahead(machine.id).events;
    if (!events.empty())
        out << ", next " << fromUtf8(events.front().name) << " on " << fromUtf8(events.front().first.iso())
            << " (" << (events.front().first - book.today()) << " days)";
    out << '\n';
}

// "  4 due now, 6 before the flag; with that done nothing else falls due before the flag: 71 %; first to go:
// Linkage"
void printChances(QTextStream& out, const book::Book& book, MachineId machine) {
    const outlook::Chances& chances = book.chances(machine);
    const QString counted = ui::countedWords(chances);
    out << "  " << counted << (counted.isEmpty() ? "" : "; ");
    if (!chances.clearOfRest) {
        out << "nobody can say what comes: too few outings are known\n";
        return;
    }
    out << (counted.isEmpty() ? "nothing falls due " : "with that done nothing else falls due ")
        << (chances.event ? "before the flag" : "within 14 days") << ": "
        << ui::chanceWords(*chances.clearOfRest);
    if (const auto* first = chances.firstOfRest ? book.task(*chances.firstOfRest) : nullptr)
        out << "; first to go: " << fromUtf8(first->name);
    if (chances.trust == outlook::Trust::Changed)
        out << " (ridden otherwise of late: it may be further off)";
    if (chances.trust == outlook::Trust::Resting)
        out << " (as if riding went on today)";
    out << '\n';
    if (const QString picked = ui::pickedWords(chances); !picked.isEmpty())
        out << "  " << picked << '\n';
}

void printTask(QTextStream& out, const book::Book& book, const DueLine& line, qsizetype widest) {
    out << "  " << ui::standingWords(line).leftJustified(widest) << "  " << fromUtf8(line.task->name);
    if (const std::string item = itemName(book, line); !item.empty())
        out << " (" << fromUtf8(item) << ')';
    if (const QString words = why(line, book.today()); !words.isEmpty())
        out << ": " << words;
    out << '\n';
}

void printGroup(QTextStream& out, const book::Book& book, const char* name,
                const std::vector<const DueLine*>& lines, qsizetype widest) {
    if (!lines.empty())
        out << "  " << name << ", " << lines.size() << ":\n";
    for (const DueLine* line : lines)
        printTask(out << "  ", book, *line, widest);
}

// First what the head counts, then what is looked at with each outing anyway and what was put off.
void printTasks(QTextStream& out, const book::Book& book, const std::vector<DueLine>& lines, bool all) {
    std::vector<const DueLine*> counted;
    std::vector<const DueLine*> eachOuting;
    std::vector<const DueLine*> putOff;
    qsizetype widest = 0;
    std::map<StandingKind, qsizetype> quiet;
    for (const DueLine& line : lines) {
        if (isQuiet(line))
            ++quiet[line.standing.kind];
        if (isQuiet(line) && !all)
            continue;
        widest = std::max(widest, ui::standingWords(line).size());
        (isQuiet(line)                  ? counted
         : line.deferral != nullptr     ? putOff
         : book::isOnlyOfTheRound(line) ? eachOuting
                                        : counted)
            .push_back(&line);
    }
    for (const DueLine* line : counted)
        printTask(out, book, *line, widest);
    printGroup(out, book, "to look at with each outing", eachOuting, widest);
    printGroup(out, book, "put off", putOff, widest);
    if (all || quiet.empty())
        return;
    out << "  and " << quiet[StandingKind::InHand] << " in hand, " << quiet[StandingKind::NoRecord]
        << " with no record";
    if (const qsizetype nothingFitted = quiet[StandingKind::NothingFitted]; nothingFitted > 0)
        out << ", " << nothingFitted << " with nothing fitted";
    out << " (--all lists them)\n";
}

// Of a used machine: what to look at first, the worst harm first.
void printUnknown(QTextStream& out, const book::Book& book, const items::Machine& machine) {
    static constexpr std::size_t kFirst = 3;
    const auto unknown = book::unknownOf(book, machine.id);
    if (machine.startedNew || unknown.empty())
        return;
    QStringList names;
    for (std::size_t at = 0; at < std::min(kFirst, unknown.size()); ++at)
        names << fromUtf8(unknown[at]->task->name);
    out << "  treat as dry and old, check first: " << names.join(", ");
    if (unknown.size() > kFirst)
        out << " and " << (unknown.size() - kFirst) << " more";
    out << '\n';
}

void printRest(QTextStream& out, const book::Book& book, MachineId machine) {
    for (const upkeep::FollowUp& followUp : book.followUps(machine))
        if (followUp.due)
            out << "  to follow up: " << fromUtf8(followUp.rule.what) << " (" << fromUtf8(followUp.because)
                << ")\n";
    for (const book::OpenSnag& open : book.snags(machine))
        out << "  snag: " << fromUtf8(open.snag->what).simplified() << '\n';
}

void printNode(QTextStream& out, const ui::WhyNode& node, int depth) {
    out << QString(2 * depth, ' ') << node.what;
    if (!node.much.isEmpty())
        out << ": " << node.much;
    out << '\n';
    for (const ui::WhyNode& child : node.children)
        printNode(out, child, depth + 1);
}

Answer<void> sayWhy(const Call& call, const book::Book& book) {
    const auto machine = findMachine(book, call.value("machine"));
    if (!machine)
        return tl::unexpected(machine.error());
    const auto task = findTask(book, (*machine)->id, call.value("why"));
    if (!task)
        return tl::unexpected(task.error());
    const explain::Step root = explain::why(book, *book.dueLine((*task)->task));
    if (call.has("json"))
        print(call.console(), stepJson(root));
    else
        printNode(call.console().out, ui::whyTree(root, book.today()), 0);
    return {};
}

// What the words after --if- ask for; nothing if there are none.
Answer<std::optional<outlook::Supposing>> supposingOf(const Call& call, const book::Book& book) {
    using base::Fault;
    outlook::Supposing what;
    if (call.has("if-ridden")) {
        const auto times = units::parseDecimal("if-ridden", call.text("if-ridden"));
        if (!times)
            return fail(times.error());
        if (*times <= units::Decimal{})
            return fail(base::Error{Fault::NotPositive, "if-ridden", call.text("if-ridden"), {}});
        if (*times > units::Decimal{10, 0})
            return fail(base::Error{Fault::TooLarge, "if-ridden", call.text("if-ridden"), "10"});
        what.timesAsOften = times->toDouble();
    }
    const auto ground = call.oneOf("if-ground", usage::Ground::Unstated);
    if (!ground)
        return tl::unexpected(ground.error());
    if (call.has("if-ground"))
        what.ground = *ground;
    const auto day = call.day("if-event");
    if (!day)
        return tl::unexpected(day.error());
    if (*day && **day <= book.today())
        return fail(
            base::Error{Fault::BeforeItsTime, "if-event", (*day)->iso(), book.today().plusDays(1).iso()});
    if (*day)
        what.event = outlook::EventAhead{
            .name = "one race more", .kind = outlook::EventKind::Race, .first = **day, .last = **day};
    const bool asked = call.has("if-ridden") || what.ground || what.event;
    return asked ? std::optional(what) : std::nullopt;
}

// "as it is" and "if so" under each other: the chance of the machine, then each task that reads otherwise.
void printSupposed(QTextStream& out, const book::Book& book, const book::Book& supposed,
                   const items::Machine& machine) {
    printHead(out, book, machine);
    out << "  as it is:\n";
    printChances(out, book, machine.id);
    out << "  if so:\n";
    printChances(out, supposed, machine.id);
    for (const book::DueMove& move : book::dueChange(book, supposed, machine.id)) {
        if (book::isOnlyOfTheRound(*move.before) && book::isOnlyOfTheRound(*move.after))
            continue;
        out << "  " << fromUtf8(move.before->task->name) << ": " << ui::standingWords(*move.before);
        if (const QString words = why(*move.before, book.today()); !words.isEmpty())
            out << ", " << words;
        out << " -> " << ui::standingWords(*move.after);
        if (const QString words = why(*move.after, book.today()); !words.isEmpty())
            out << ", " << words;
        out << '\n';
    }
}

void listDue(const Call& call, const book::Book& book, const std::vector<const items::Machine*>& machines) {
    QTextStream& out = call.console().out;
    for (const items::Machine* machine : machines) {
        printHead(out, book, *machine);
        printState(out, book, machine->id);
        printChances(out, book, machine->id);
        printTasks(out, book, book.due(machine->id), call.has("all"));
        printUnknown(out, book, *machine);
        printRest(out, book, machine->id);
    }
}

ordered_json linesJson(const book::Book& book, const items::Machine& machine) {
    const ordered_json state = stateJson(book, machine.id);
    auto list = ordered_json::array();
    for (const DueLine& line : book.due(machine.id))
        list.push_back(lineJson(book, machine, line, state));
    return list;
}

void sayDue(const Call& call, const book::Book& book, const std::vector<const items::Machine*>& machines,
            const std::optional<outlook::Supposing>& what) {
    auto list = ordered_json::array();
    if (machines.empty() && !call.has("json"))
        call.console().out << "There is no machine in this file.\n";
    for (const items::Machine* machine : machines) {
        const auto supposed = what ? std::optional(book.supposing(machine->id, *what)) : std::nullopt;
        if (supposed && !call.has("json"))
            printSupposed(call.console().out, book, *supposed, *machine);
        else if (call.has("json"))
            for (auto& line : linesJson(supposed ? *supposed : book, *machine))
                list.push_back(std::move(line));
    }
    if (call.has("json"))
        print(call.console(), list);
    else if (!what)
        listDue(call, book, machines);
}

// A figure of today rests on what was done and ridden, whatever is supposed of the days ahead.
Answer<void> checkWhyAlone(const Call& call) {
    for (const char* option : {"if-ridden", "if-ground", "if-event"})
        if (call.has("why") && call.has(option))
            return fail(
                Exit::Usage,
                QString("--why says where a figure of today comes from: leave --%1 out.").arg(option));
    return {};
}

Answer<void> runDue(const Call& call) {
    if (const auto alone = checkWhyAlone(call); !alone)
        return alone;
    const auto day = call.day("on");
    if (!day)
        return tl::unexpected(day.error());
    auto garage = Garage::open(call, store::OpenFor::ReadingOnly);
    if (!garage)
        return tl::unexpected(garage.error());
    garage->lookOn(day->value_or(garage->today()));
    const book::Book& book = garage->book();
    if (call.has("why"))
        return sayWhy(call, book);
    std::vector<const items::Machine*> machines = book.machines();
    if (call.has("machine")) {
        const auto machine = findMachine(book, call.value("machine"));
        if (!machine)
            return tl::unexpected(machine.error());
        machines = {*machine};
    }
    const auto what = supposingOf(call, book);
    if (!what)
        return tl::unexpected(what.error());
    sayDue(call, book, machines, *what);
    return {};
}

}  // namespace

VerbSpec dueVerb() {
    return {"due",
            "Say what is due, and what stands in the way of the next event.",
            {{"FILE", "The file."}},
            {machineOption(), onOption("How it stands on this day, 2026-05-16; otherwise today."),
             QCommandLineOption("why", "Say where the figure of one task comes from, step by step.", "TASK"),
             QCommandLineOption("all", "List what is in hand and what has no record as well."),
             QCommandLineOption("if-ridden", "What if it were ridden so many times as often?", "TIMES"),
             QCommandLineOption("if-ground", "What if all of it were on this ground?", "GROUND"),
             QCommandLineOption("if-event", "What if there were one race more, on this day?", "DAY"),
             jsonOption()},
            "  witnessmark due garage.witnessmark\n"
            "  witnessmark due garage.witnessmark --machine Heron --on 2026-05-16 --json\n"
            "  witnessmark due garage.witnessmark --machine Heron --why piston\n"
            "  witnessmark due garage.witnessmark --machine Heron --if-ridden 2 --if-ground sand\n",
            runDue};
}

}  // namespace wm::app

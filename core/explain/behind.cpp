// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/explain/behind.h"

#include <algorithm>
#include <map>
#include <set>

#include "core/picture/facts.h"
#include "core/upkeep/limits.h"
#include "core/usage/meter_doubts.h"

namespace wm::explain {

using calendar::DayPart;
using calendar::Moment;
using upkeep::bracketOf;
using upkeep::CountBracket;
using upkeep::Counter;
using usage::Atom;
using usage::AtomKind;

namespace {

// What one limit counts, and how.
struct Measure {
    Counter counter = Counter::Hours;
    std::span<const usage::HourWeight> weights;
    [[nodiscard]] bool isWeighted() const { return counter == Counter::Hours && !weights.empty(); }
};

void addTo(CountBracket& sum, const CountBracket& more) {
    const auto both = [](const auto& a, const auto& b) {
        return a && b ? std::optional(*a + *b) : std::nullopt;
    };
    sum = {sum.low + more.low, both(sum.best, more.best), both(sum.high, more.high)};
}

CountBracket times(const CountBracket& count, std::int64_t by) {
    const auto each = [by](const auto& end) { return end ? std::optional(*end * by) : std::nullopt; };
    return {count.low * by, each(count.best), each(count.high)};
}

struct Kinds {
    StepKind group;
    StepKind one;
};

Kinds kindsOf(const Atom& atom, Counter counter) {
    if (counter == Counter::MudDays)
        return {StepKind::MudDays, StepKind::MudDay};
    switch (atom.kind) {
        case AtomKind::Unlogged:
            return {StepKind::Gaps, StepKind::Gap};
        case AtomKind::Wash:
            return {StepKind::Washes, StepKind::Wash};
        case AtomKind::Crash:
            return {StepKind::Crashes, StepKind::Crash};
        case AtomKind::Outing:
        case AtomKind::Past:
            break;
    }
    return {StepKind::Outings, StepKind::Outing};
}

void setFigure(Step& step, const CountBracket& raw, const Measure& measure, std::int64_t permille) {
    step.counter = measure.counter;
    step.figure = raw;
    if (!measure.isWeighted())
        return;
    step.fine = true;
    step.raw = raw;
    step.permille = permille;
    step.figure = times(raw, permille);
}

void addFigure(Step& sum, const Step& more) {
    if (!sum.figure)
        sum.figure = CountBracket{};
    addTo(*sum.figure, *more.figure);
    sum.counter = more.counter;
    sum.fine = more.fine;
    if (more.raw && !sum.raw)
        sum.raw = CountBracket{};
    if (more.raw)
        addTo(*sum.raw, *more.raw);
}

// The facts that are counted, grouped by kind and, if hours are weighted, by weight; a mud day once.
std::vector<Step> groupsOf(std::span<const Atom> parts, const Measure& measure) {
    std::map<std::pair<StepKind, std::int64_t>, Step> groups;
    std::set<calendar::Date> mud;
    for (const Atom& atom : parts) {
        const CountBracket raw = bracketOf(atom, measure.counter);
        const bool counts = raw.best != 0 || raw.high != 0;
        if (!counts || (measure.counter == Counter::MudDays && !mud.insert(atom.to.date).second))
            continue;
        const std::int64_t permille =
            measure.isWeighted() ? usage::permilleOf(measure.weights, atom) : std::int64_t{1000};
        const Kinds kinds = kindsOf(atom, measure.counter);
        Step one{.kind = kinds.one, .from = atom.from.date, .to = atom.to.date};
        one.known = atom.known;
        one.fact = atom.source;
        setFigure(one, raw, measure, permille);
        Step& group = groups[{kinds.group, permille}];
        group.kind = kinds.group;
        group.permille = permille;
        group.makes = Makes::Sum;
        ++group.count;
        addFigure(group, one);
        group.children.push_back(std::move(one));
    }
    std::vector<Step> all;
    for (auto& [key, group] : groups)
        all.push_back(std::move(group));
    return all;
}

std::vector<Atom> withoutPast(const std::vector<Atom>& atoms) {
    std::vector<Atom> own;
    std::copy_if(atoms.begin(), atoms.end(), std::back_inserter(own),
                 [](const Atom& atom) { return atom.kind != AtomKind::Past; });
    return own;
}

// "Engine A", "Engine A in Frame 2": what an item sits in, from the inside out.
std::string hostsOf(const book::Book& book, ItemId item, Moment when) {
    std::string hosts;
    for (auto place = book.fittings().placeOf(item, when); place && place->parent;
         place = book.fittings().placeOf(*place->parent, when)) {
        const auto* host = book.ledger().find<items::Item>(*place->parent);
        hosts += (hosts.empty() ? "" : " in ") + (host == nullptr ? std::string("?") : host->name);
    }
    return hosts;
}

std::string machineName(const book::Book& book, MachineId id) {
    const auto* machine = book.ledger().find<items::Machine>(id);
    return machine == nullptr ? std::string("?") : machine->name;
}

std::vector<Step> placesOf(const book::Book& book, ItemId item, const items::Carriage& carriage) {
    std::vector<Step> places;
    for (const items::MachineSpell& spell : carriage.spells) {
        const std::string hosts = hostsOf(book, item, spell.from);
        if (hosts.empty() && carriage.spells.size() == 1)
            continue;
        places.push_back({.kind = StepKind::Place,
                          .name = hosts,
                          .detail = spell.path,
                          .from = spell.from.date,
                          .to = spell.to ? std::optional(spell.to->date) : std::nullopt});
    }
    return places;
}

// An unlogged stretch of which an item has several parts: each of them alone may be up to the whole, together
// they are no more than the whole, and no less once they make it up.
class SharedGaps {
  public:
    void note(std::span<const Atom> parts) {
        for (const Atom& part : parts)
            if (part.kind == AtomKind::Unlogged && part.cutFrom)
                parts_[part.source].push_back(part);
    }
    [[nodiscard]] std::vector<Step> corrections(const Measure& measure) const {
        std::vector<Step> all;
        for (const auto& [source, parts] : parts_) {
            const auto whole = bracketOf(parts.front(), measure.counter).high.value_or(0);
            if (parts.size() < 2 || whole == 0)
                continue;
            std::int64_t times = 0;
            for (const Atom& part : parts)
                times += usage::ridingTimes(part.from, part.to);
            const auto& cut = *parts.front().cutFrom;
            const bool complete = times == usage::ridingTimes(cut.from, cut.to);
            Step step{.kind = StepKind::SharedGap, .from = cut.from.date, .to = cut.to.date};
            step.fact = source;
            step.count = static_cast<std::int64_t>(parts.size());
            setFigure(step, {complete ? whole : 0, 0, -(step.count - 1) * whole}, measure,
                      measure.isWeighted() ? usage::permilleOf(measure.weights, parts.front()) : 1000);
            all.push_back(std::move(step));
        }
        return all;
    }

  private:
    std::map<std::int64_t, std::vector<Atom>> parts_;
};

struct Window {
    std::optional<Moment> after;
    Moment upTo{};
};

// Where the meter of a machine said nothing, or more than can be, because of a reading that is odd.
void addOddReadings(std::vector<Step>& steps, const book::Book& book, MachineId machine, const Window& window,
                    Counter counter) {
    const auto& use = book.use(machine);
    const auto odd = counter == Counter::Hours    ? usage::oddReadings(use.hourReadings)
                     : counter == Counter::Metres ? usage::oddReadings(use.distanceReadings)
                                                  : std::vector<usage::OddReading>{};
    for (const usage::OddReading& reading : odd) {
        const bool isJump = reading.error.fault == base::Fault::MeterJumps;
        const bool isWithin =
            reading.from && *reading.from < window.upTo && (!window.after || *window.after < reading.at);
        if (!isWithin || (!isJump && !reading.isUnmetered))
            continue;
        Step step{.kind = isJump ? StepKind::Jump : StepKind::Unmetered,
                  .name = reading.error.given,
                  .detail = reading.error.wanted,
                  .from = reading.from->date,
                  .to = reading.at.date};
        step.counter = counter;
        step.fact = reading.reading;
        steps.push_back(std::move(step));
    }
}

std::vector<Step> carriedOf(const book::Book& book, const book::DueLine& line, const Window& window,
                            const Measure& measure) {
    std::vector<Step> steps;
    SharedGaps shared;
    for (const items::Carriage& carriage : book.carriagesOf(line)) {
        const Moment from = window.after ? std::max(*window.after, carriage.from) : carriage.from;
        const Moment to = carriage.to ? std::min(window.upTo, *carriage.to) : window.upTo;
        if (to <= from)
            continue;
        const auto parts = usage::partsOf(withoutPast(book.atoms(carriage.machine)), from, to);
        shared.note(parts);
        Step step{.kind = StepKind::Carried,
                  .name = machineName(book, carriage.machine),
                  .detail = carriage.spells.front().path,
                  .from = from.date,
                  .to = carriage.to && *carriage.to <= window.upTo ? std::optional(to.date) : std::nullopt};
        step.counter = measure.counter;
        step.fine = measure.isWeighted();
        step.figure = CountBracket{};
        step.makes = Makes::Sum;
        step.children = placesOf(book, *line.item, carriage);
        for (Step& group : groupsOf(parts, measure)) {
            addFigure(step, group);
            step.children.push_back(std::move(group));
        }
        addOddReadings(step.children, book, carriage.machine, {from, to}, measure.counter);
        steps.push_back(std::move(step));
    }
    std::stable_sort(steps.begin(), steps.end(),
                     [](const Step& a, const Step& b) { return a.from < b.from; });
    for (Step& correction : shared.corrections(measure))
        steps.push_back(std::move(correction));
    return steps;
}

// What was told of the time since the last completion; else of the stated past what may lie after it. Nobody
// counted the outings of then.
std::optional<Step> pastOf(std::span<const Atom> atoms, const Window& window, const upkeep::Record* last,
                           const upkeep::LimitState& state, const Measure& measure) {
    Step step{.kind = StepKind::Past};
    step.known = usage::Known::Past;
    if (state.stated) {
        step.kind = StepKind::Told;
        step.to = state.stated->upTo;
        setFigure(step, state.stated->bracket, measure, 1000);
        return step;
    }
    const auto past = std::find_if(atoms.begin(), atoms.end(), [&](const Atom& atom) {
        return atom.kind == AtomKind::Past && (!window.after || *window.after < atom.to);
    });
    if (past == atoms.end() && !state.isOpen)
        return std::nullopt;
    CountBracket count = past == atoms.end() ? CountBracket{} : bracketOf(*past, measure.counter);
    if (past != atoms.end())
        step.to = past->to.date;
    const bool isHours = measure.counter == Counter::Hours;
    if (isHours && window.after && last->statedBest)
        count = bracketOf(upkeep::restOfPast(past->hours, *last));
    else if (window.after)
        count.low = 0;
    if (state.isOpen)
        count.best.reset();
    if (state.isOpen && !isHours)
        count.high.reset();
    setFigure(step, count, measure, 1000);
    return step;
}

// What the stated past of a task's subject rests on.
std::string noteOf(const book::Book& book, const book::DueLine& line) {
    if (const auto* item = line.item ? book.ledger().find<items::Item>(*line.item) : nullptr)
        return item->note;
    const auto* machine = book.ledger().find<items::Machine>(line.machine);
    return machine == nullptr ? std::string{} : machine->note;
}

}  // namespace

std::vector<Step> behindOf(const book::Book& book, const book::DueLine& line,
                           const upkeep::LimitState& state) {
    const Measure measure{state.limit.counter, line.task->weights};
    Window window{std::nullopt, {book.today(), DayPart::AfterRiding}};
    if (line.last != nullptr && !upkeep::wasNeverDone(*line.last))
        window.after = Moment{line.last->date, line.last->part};
    std::vector<Step> steps;
    const auto atoms = book.atomsOf(line);
    if (auto past = pastOf(atoms, window, line.last, state, measure)) {
        past->detail = noteOf(book, line);
        steps.push_back(std::move(*past));
    }
    if (state.stated)
        window.after = Moment{state.stated->upTo, DayPart::AfterRiding};
    auto used = line.item ? carriedOf(book, line, window, measure)
                          : groupsOf(usage::partsOf(withoutPast(atoms), window.after, window.upTo), measure);
    for (Step& step : used)
        steps.push_back(std::move(step));
    if (!line.item)
        addOddReadings(steps, book, line.machine, window, measure.counter);
    return steps;
}

}  // namespace wm::explain

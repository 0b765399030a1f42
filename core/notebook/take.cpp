// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/notebook/take.h"

#include <algorithm>
#include <iterator>
#include <set>
#include <tuple>

#include "core/base/text.h"
#include "core/notebook/beginning.h"
#include "core/notebook/shelf.h"
#include "core/picture/checks.h"
#include "core/picture/entry.h"
#include "core/picture/facts.h"
#include "core/picture/shape.h"
#include "core/verbs/job_parts.h"
#include "core/words/folding.h"

namespace wm::notebook {

using base::Fault;
using base::Result;

namespace {

using picture::Change;
using picture::Entry;
using picture::Ledger;
using verbs::VerbContext;

using ShownOn = std::tuple<MachineId, calendar::Date, std::int64_t>;

constexpr std::size_t kLinesBetweenWords = 2'000;

// Rows of one notebook while they are put together; the first fault is kept.
class Taking {
  public:
    Taking(const VerbContext& context, const Notebook& notebook, std::vector<const Line*> lines,
           const std::set<MachineId>& newcomers, const Progress& progress)
        : context_(context),
          notebook_(notebook),
          lines_(std::move(lines)),
          newcomers_(newcomers),
          progress_(progress),
          entry_(context.book.ledger(), context.newId) {
        const Ledger& ledger = context.book.ledger();
        for (const auto& reading : ledger.all<usage::HourReading>()) {
            shownOn_.insert({reading.machine, reading.date, reading.shown.count()});
            readOn_.insert({reading.machine, reading.date});
            if (reading.event != usage::MeterEvent::Plain)
                renewed_.insert({reading.machine, reading.date});
        }
        for (const auto& person : ledger.all<items::Person>())
            persons_.emplace(words::folded(person.name), person.id);
    }

    Result<Taken> take(std::string_view name) {
        putMachines();
        findWaiting();
        for (std::size_t at = 0; at < lines_.size() && goesOn(); ++at)
            if (lines_[at]->facts.sort != FactSort::Job)
                putUse(at);
        const auto text = base::phrase("Undo", "took over %n line(s) of %1", nullptr, lines_.size())
                              .arg(picture::shortened(base::onOneLine(name)));
        Change change = std::move(entry_).change(text);
        if (!check_.failed())
            putJobs(change);
        if (check_.failed())
            return check_.refusal();
        return Taken{std::move(change), lines_.size(), waiting_.size()};
    }

  private:
    // False once a row had a fault or the mechanic stopped it. Every line is passed twice.
    bool goesOn() {
        ++passed_;
        if (progress_ && passed_ % kLinesBetweenWords == 0 && !progress_(passed_, 2 * lines_.size())) {
            check_.setPrefix({});
            check_.that(false, Fault::Stopped, "notebook");
        }
        return !check_.failed();
    }

    template <class R>
    R shaped(R row, std::size_t line) {
        check_.setPrefix("line " + std::to_string(line));
        picture::checkShape(check_, row);
        return row;
    }

    void putMachines() {
        machines_.resize(notebook_.machines.size());
        std::set<std::size_t> spokenOf;
        for (const Line* line : lines_)
            spokenOf.insert(line->facts.machines.begin(), line->facts.machines.end());
        for (const std::size_t at : spokenOf) {
            const NamedMachine& named = notebook_.machines[at];
            const auto* known = named.id ? context_.book.ledger().find<items::Machine>(*named.id) : nullptr;
            items::Machine card =
                known != nullptr ? *known : items::Machine{.name = named.name, .pastHigh = {}};
            const bool begins = known == nullptr || newcomers_.contains(known->id);
            const bool moves = dateBack(card, begins, beginningOf(lines_, at));
            machines_[at] = named.id.value_or(MachineId{});
            if (moves)
                machines_[at] = entry_.put(shaped(std::move(card), 1));
        }
    }

    // True if the file knows of a meter that began anew after one day and up to another.
    [[nodiscard]] bool renewedBetween(MachineId machine, calendar::Date after, calendar::Date upTo) const {
        const auto next = renewed_.upper_bound({machine, after});
        return next != renewed_.end() && next->first == machine && next->second <= upTo;
    }

    // Readings that run back because a renewed meter in between was not agreed to.
    void findWaiting() {
        std::map<std::size_t, std::pair<calendar::Date, std::int64_t>> shown;
        for (const Line* line : lines_) {
            const Facts& facts = line->facts;
            if (!facts.meter || facts.machines.size() != 1)
                continue;
            auto& [date, last] = shown[facts.machines.front()];
            if (renewedBetween(machines_[facts.machines.front()], date, facts.date))
                last = 0;
            date = facts.date;
            if (facts.event == usage::MeterEvent::Plain && facts.meter->count() < last)
                waiting_.insert(line);
            else
                last = facts.meter->count();
        }
    }

    std::optional<PersonId> personNamed(const std::string& name, std::size_t line) {
        if (name.empty())
            return std::nullopt;
        const auto [at, isNew] = persons_.try_emplace(words::folded(name));
        if (isNew)
            at->second = entry_.put(shaped(items::Person{.name = name}, line));
        return at->second;
    }

    void putReading(const Line& line, MachineId machine, std::optional<OutingId> outing,
                    calendar::DayPart part) {
        const Facts& facts = line.facts;
        if (!facts.meter || waiting_.contains(&line))
            return;
        usage::HourReading reading{.machine = machine,
                                   .date = facts.date,
                                   .part = part,
                                   .shown = *facts.meter,
                                   .event = facts.event,
                                   .before = facts.before,
                                   .outing = outing};
        if (!outing)
            reading.note = facts.note;
        if (outing && readOn_.contains({machine, facts.date}))
            reading = picture::placed(context_.book.ledger(), reading);
        shownOn_.insert({machine, facts.date, reading.shown.count()});
        entry_.add(shaped(std::move(reading), line.line));
    }

    void putOuting(const Line& line, MachineId machine) {
        const Facts& facts = line.facts;
        usage::Outing outing{.machine = machine,
                             .date = facts.date,
                             .rider = personNamed(facts.rider, line.line),
                             .kind = facts.kind,
                             .hours = facts.hours,
                             .distance = facts.distance,
                             .starts = facts.starts,
                             .ground = facts.ground,
                             .note = facts.note};
        const OutingId id = entry_.add(shaped(std::move(outing), line.line));
        putReading(line, machine, id, calendar::DayPart::AfterRiding);
        putWashAndCrash(line, machine, id);
    }

    void putWashAndCrash(const Line& line, MachineId machine, std::optional<OutingId> outing) {
        const Facts& facts = line.facts;
        const std::string note = outing ? std::string{} : facts.note;
        if (facts.washed || facts.pressure || facts.sort == FactSort::Wash)
            entry_.add(shaped(usage::Wash{.machine = machine,
                                          .date = facts.date,
                                          .pressure = facts.pressure,
                                          .outing = outing,
                                          .note = note},
                              line.line));
        if (facts.crashed || facts.sort == FactSort::Crash)
            entry_.add(
                shaped(usage::Crash{.machine = machine, .date = facts.date, .outing = outing, .note = note},
                       line.line));
    }

    // A meter renewed on a day on which the machine was ridden afterwards counted that riding.
    [[nodiscard]] calendar::DayPart partOf(std::size_t at, std::size_t machine) const {
        const calendar::Date date = lines_[at]->facts.date;
        for (std::size_t later = at + 1; later < lines_.size() && lines_[later]->facts.date == date; ++later)
            if (lines_[later]->facts.sort == FactSort::Outing &&
                lines_[later]->facts.machines.front() == machine)
                return calendar::DayPart::BeforeRiding;
        return calendar::DayPart::AfterRiding;
    }

    void putUse(std::size_t at) {
        const Line& line = *lines_[at];
        for (const std::size_t machine : line.facts.machines) {
            const MachineId id = machines_[machine];
            if (line.facts.sort == FactSort::Outing) {
                putOuting(line, id);
                continue;
            }
            if (line.facts.sort == FactSort::Reading)
                putReading(line, id, std::nullopt, partOf(at, machine));
            putWashAndCrash(line, id, std::nullopt);
        }
    }

    // Jobs state the total time of the day, so they are put on a book that holds the use already.
    void putJobs(Change& change) {
        if (std::none_of(lines_.begin(), lines_.end(),
                         [](const Line* line) { return line->facts.sort == FactSort::Job; }))
            return;
        const book::Book book(std::make_shared<const Ledger>(context_.book.ledger().with(change)),
                              context_.book.today());
        const VerbContext context{book, context_.newId};
        Entry entry(context.book.ledger(), context.newId);
        ShelfOfNotebook shelf(book);
        for (const Line* line : lines_) {
            if (!goesOn())
                return;
            if (line->facts.sort == FactSort::Job)
                for (const std::size_t machine : line->facts.machines)
                    putJob(entry, book, shelf, *line, machines_[machine]);
        }
        Change jobs = std::move(entry).change(std::string{});
        std::move(jobs.rows.begin(), jobs.rows.end(), std::back_inserter(change.rows));
    }

    void putJob(Entry& entry, const book::Book& book, ShelfOfNotebook& shelf, const Line& line,
                MachineId machine) {
        const Facts& facts = line.facts;
        const std::size_t records = std::max<std::size_t>(facts.tasks.size(), 1);
        for (std::size_t at = 0; at < records; ++at) {
            upkeep::Record record{.machine = machine,
                                  .date = facts.date,
                                  .meter = facts.meter,
                                  .what = std::string(base::trimmed(facts.job)),
                                  .data = "notebook",
                                  .note = facts.note};
            if (at < facts.tasks.size())
                fillTask(book, record, facts.tasks[at]);
            fillStated(book, record);
            if (at == 0) {
                record.minutes = facts.minutes;
                check_.setPrefix("line " + std::to_string(line.line));
                record.uses = shelf.uses(check_, entry, facts.used, record.note);
            }
            const auto uses = record.uses;
            const RecordId id = entry.add(shaped(std::move(record), line.line));
            for (const upkeep::Use& use : uses)
                if (shelf.countsOn(use.line, facts.date))
                    entry.add(stock::StockMove{
                        .line = use.line, .date = facts.date, .amount = -use.amount, .record = id});
            if (at == 0)
                putJobReading(entry, line, machine, id);
        }
    }

    static void fillTask(const book::Book& book, upkeep::Record& record, TaskId id) {
        const upkeep::TaskVersion* task = picture::versionOn(book.ledger(), id, record.date);
        if (task == nullptr)
            return;
        record.task = task->task;
        record.version = task->id;
        record.code = task->code;
        if (!task->position.empty())
            record.item = book.fittings().at(record.machine, task->position,
                                             {record.date, calendar::DayPart::AfterRiding});
    }

    void fillStated(const book::Book& book, upkeep::Record& record) {
        const auto [at, isNew] = stated_.try_emplace({record.machine, record.item, record.date});
        const calendar::Moment when{record.date, record.part};
        if (isNew)
            at->second =
                (record.item ? book.lifeAt(*record.item, when) : book.lifeAt(record.machine, when)).hours;
        record.statedLow = at->second.low;
        record.statedBest = at->second.best;
        record.statedHigh = at->second.high;
    }

    void putJobReading(Entry& entry, const Line& line, MachineId machine, RecordId record) {
        const Facts& facts = line.facts;
        if (!facts.meter || waiting_.contains(&line) ||
            !shownOn_.insert({machine, facts.date, facts.meter->count()}).second)
            return;
        entry.add(shaped(usage::HourReading{.machine = machine,
                                            .date = facts.date,
                                            .shown = *facts.meter,
                                            .event = facts.event,
                                            .before = facts.before,
                                            .record = record},
                         line.line));
    }

    const VerbContext& context_;
    const Notebook& notebook_;
    std::vector<const Line*> lines_;
    const std::set<MachineId>& newcomers_;
    const Progress& progress_;
    std::size_t passed_ = 0;
    Entry entry_;
    picture::Checks check_{};
    std::vector<MachineId> machines_{};
    std::map<std::string, PersonId> persons_{};
    std::set<ShownOn> shownOn_{};
    std::set<std::pair<MachineId, calendar::Date>> readOn_{};
    std::set<std::pair<MachineId, calendar::Date>> renewed_{};
    std::set<const Line*> waiting_{};
    std::map<std::tuple<MachineId, std::optional<ItemId>, calendar::Date>, usage::HoursBracket> stated_{};
};

std::vector<const Line*> agreedLines(const Notebook& notebook, const Agreement& agreement) {
    std::vector<const Line*> lines;
    std::int64_t falls = 0;
    for (const Line& line : notebook.lines)
        if (isAgreed(line, agreement)) {
            if (!lines.empty())
                falls += lines.back()->facts.date > line.facts.date   ? 1
                         : lines.back()->facts.date < line.facts.date ? -1
                                                                      : 0;
            lines.push_back(&line);
        }
    if (falls > 0)
        std::reverse(lines.begin(), lines.end());
    std::stable_sort(lines.begin(), lines.end(),
                     [](const Line* a, const Line* b) { return a->facts.date < b->facts.date; });
    return lines;
}

}  // namespace

bool isAgreed(const Line& line, const Agreement& agreement) {
    if (line.inFile || !line.readable())
        return false;
    const auto at = agreement.lines.find(line.line);
    if (line.verdict == Verdict::Taken)
        return at == agreement.lines.end() || at->second != Choice::LeftOut;
    const bool cured = at == agreement.lines.end() || at->second == Choice::Open
                           ? agreement.allCures
                           : at->second == Choice::Cured;
    return cured && line.cure == Cure::AsLikely;
}

Result<Taken> takeNotebook(const VerbContext& context, const Notebook& notebook, const Agreement& agreement,
                           std::string_view name, const Progress& progress) {
    std::vector<const Line*> lines = agreedLines(notebook, agreement);
    if (lines.empty())
        return base::refuse(Fault::NothingNew, "notebook");
    return Taking(context, notebook, std::move(lines), agreement.newcomers, progress).take(name);
}

}  // namespace wm::notebook

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/verbs/baseline_verb.h"

#include <algorithm>
#include <set>

#include "core/book/unrecorded.h"
#include "core/picture/facts.h"
#include "core/upkeep/unknown.h"
#include "core/verbs/baseline_meter.h"
#include "core/verbs/job_parts.h"
#include "core/verbs/names.h"

// What is known of the tasks that nobody has recorded here, for a whole machine at once.

namespace wm::verbs {

using base::refuse;
using calendar::Date;
using calendar::DayPart;
using calendar::Moment;
using units::Hours;
using upkeep::Counter;
using upkeep::Stated;

namespace {

// At most is no less than likely, likely no less than at least.
Result<void> checkBracket(const Remembered& said, const base::Place& field) {
    const std::int64_t likely = said.best.value_or(said.low);
    if (said.low < 0)
        return refuse(Fault::Negative, field, std::to_string(said.low));
    if (likely < said.low || (said.high && *said.high < likely))
        return refuse(Fault::OutOfOrder, field, std::to_string(said.high.value_or(likely)));
    return {};
}

Result<std::vector<Stated>> statedOf(const std::vector<PiecesSince>& pieces, std::string_view list,
                                     Date upTo) {
    std::vector<Stated> stated;
    for (std::size_t at = 0; at < pieces.size(); ++at) {
        const Counter counter = pieces[at].counter;
        const Remembered& count = pieces[at].count;
        const auto isSame = [&](const Stated& other) { return other.counter == counter; };
        if (!upkeep::traitsOf(counter).piece || std::any_of(stated.begin(), stated.end(), isSame))
            return refuse(Fault::Inconsistent, placeIn(list, at, "counter"),
                          std::string(upkeep::traitsOf(counter).stored));
        if (const auto right = checkBracket(count, placeIn(list, at, "count")); !right)
            return tl::unexpected(right.error());
        stated.push_back({counter, count.low, count.best, count.high, upTo});
    }
    return stated;
}

// Who answers and then logs today's ride means the time before it. What is logged of today already was in his
// mind.
Date lastDayTold(const Book& book, const items::Machine& machine) {
    const auto isOfToday = [&](const auto& fact) {
        return fact.machine == machine.id && fact.date == book.today();
    };
    const auto& ledger = book.ledger();
    const auto any = [&](const auto& facts) { return std::any_of(facts.begin(), facts.end(), isOfToday); };
    const bool isLogged = any(ledger.all<usage::Outing>()) || any(ledger.all<usage::HourReading>()) ||
                          any(ledger.all<usage::Wash>()) || any(ledger.all<usage::Crash>());
    return isLogged || machine.since == book.today() ? book.today() : book.today().plusDays(-1);
}

/// One line on its way to a record.
class Baseline {
  public:
    Baseline(const VerbContext& context, const items::Machine& machine, const BaselineLine& line)
        : context_(context), book_(context.book), machine_(machine), line_(line) {}

    Result<ReadyJob> job() {
        const auto* task = book_.task(line_.task);
        if (task == nullptr || task->machine != machine_.id)
            return refuse(Fault::Unknown, "task", std::to_string(line_.task.value()));
        task_ = task;
        draft_.opensJoints = false;
        draft_.record.machine = machine_.id;
        draft_.record.task = task->task;
        if (const auto* due = book_.dueLine(task->task))
            draft_.record.item = item_ = due->item;
        auto placed = place();
        if (placed)
            placed = statePieces();
        if (!placed)
            return tl::unexpected(placed.error());
        auto ready = checkJob(context_, std::move(draft_));
        if (!ready)
            return ready;
        upkeep::Record& record = ready->draft.record;
        if (item_ && record.item != item_)
            return refuse(Fault::BeforeItsTime, "date", record.date.iso());
        if (line_.answer == BaselineAnswer::NeverDone)
            record.statedLow = record.statedBest = record.statedHigh = Hours{0};
        if (!line_.date)
            record.meter = line_.meter;
        return ready;
    }

  private:
    // Kind, day and part of the day.
    Result<void> place() {
        upkeep::Record& record = draft_.record;
        const Moment first = firstRidden(book_, machine_, item_);
        record.kind = upkeep::RecordKind::Baseline;
        switch (line_.answer) {
            case BaselineAnswer::LookedFine:
                if (!upkeep::isALook(*task_))
                    return refuse(Fault::Inconsistent, "answer", task_->name);
                record.kind = upkeep::RecordKind::LookedFine;
                record.date = line_.date.value_or(book_.today());
                return {};
            case BaselineAnswer::NewOn:
                record.date = line_.date.value_or(first.date);
                record.part = line_.date ? DayPart::BeforeRiding : first.part;
                record.note = "new";
                return {};
            case BaselineAnswer::NeverDone:
                record.date = line_.date.value_or(first.date);
                record.part = DayPart::BeforeRiding;
                record.note = "never done";
                if (!line_.date)
                    stateAge(first.date);
                return {};
            case BaselineAnswer::Serviced:
                break;
        }
        return placeServiced();
    }

    Result<void> placeServiced() {
        upkeep::Record& record = draft_.record;
        if (const auto right = stateHours(); !right)
            return right;
        if (const auto right = stateDay(); !right)
            return right;
        if (line_.date) {
            record.date = *line_.date;
            record.meter = line_.meter;
            return {};
        }
        if (line_.day)
            return {};
        if (!line_.meter && !ago_)
            return refuse(Fault::Empty, "date");
        return line_.meter ? placeByMeter() : placeByHours();
    }

    Result<void> placeByMeter() {
        if (!upkeep::countsOnlyHours(*task_))
            return refuse(Fault::Empty, "date");
        const auto then = whenShown(book_, machine_.id, *line_.meter);
        if (!then)
            return tl::unexpected(then.error());
        const Hours ranSince = bestLife(book_, machine_.id, firstDay()) - then->life;
        if (ranSince > Hours{0}) {
            if (isMoreThanThePast(ranSince))
                return refuse(Fault::Inconsistent, "meter", units::hoursText(*line_.meter));
            const std::int64_t ran = ranSince.count();
            state({Counter::Hours, ran, ran, ran, machine_.since.plusDays(-1)});
        }
        draft_.record.note = "dated by the meter";
        // Of a meter that counts the van too nobody knows how much of what it ran was riding: from the
        // reading before on, none of it may have been, or all.
        placeAt(machine_.meterCountsTransport && then->readBefore
                    ? then->readBefore
                    : lastMomentWith(book_, machine_, then->life));
        return {};
    }

    // What is remembered has hours and no day: it stands where they likely lead, and is that old at least.
    Result<void> placeByHours() {
        const Hours since{ago_->best.value_or(ago_->high.value_or(ago_->low))};
        draft_.record.note = "remembered";
        placeAt(lastMomentWith(book_, machine_,
                               bestLife(book_, machine_.id, {toldOf_, DayPart::AfterRiding}) - since));
        const bool countsDays =
            std::any_of(task_->limits.begin(), task_->limits.end(),
                        [](const upkeep::Limit& limit) { return upkeep::isCalendar(limit.counter); });
        if (countsDays)
            state({Counter::Days, 0, std::nullopt, std::nullopt, book_.today()});
        return {};
    }

    void placeAt(const std::optional<Moment>& moment) {
        draft_.record.date = moment ? moment->date : machine_.since.plusDays(-1);
        draft_.record.part = moment ? moment->part : DayPart::AfterRiding;
    }

    // Hours since then: as they are remembered, or from what the meter is remembered to have shown. Nothing
    // on a machine is older than the machine.
    Result<void> stateHours() {
        ago_ = line_.hoursAgo;
        const base::Place field = line_.hoursAgo ? "hours_ago" : "meter_then";
        if (line_.meterThen) {
            if (line_.hoursAgo || line_.meter)
                return refuse(Fault::Inconsistent, field);
            if (const auto right = checkBracket(*line_.meterThen, field); !right)
                return right;
            // What was ridden since the meter was last read comes on top.
            toldOf_ = lastReadOn();
            auto since = sinceShown(*line_.meterThen);
            if (!since)
                return tl::unexpected(since.error());
            ago_ = *since;
        }
        if (!ago_)
            return {};
        if (const auto right = checkBracket(*ago_, field); !right)
            return right;
        const auto life = item_ ? book_.life(*item_).hours : book_.life(machine_.id).hours;
        const auto within = [&](std::int64_t hours) {
            return life.high ? std::min(hours, life.high->count()) : hours;
        };
        const auto withinIf = [&](const std::optional<std::int64_t>& hours) {
            return hours ? std::optional(within(*hours)) : std::nullopt;
        };
        state({Counter::Hours, within(ago_->low), withinIf(ago_->best), withinIf(ago_->high), toldOf_});
        return {};
    }

    [[nodiscard]] Date lastReadOn() const {
        std::optional<Date> last;
        for (const auto& reading : book_.ledger().all<usage::HourReading>())
            if (reading.machine == machine_.id && reading.date <= book_.today() &&
                (!last || *last < reading.date))
                last = reading.date;
        return last.value_or(book_.today());
    }

    // The more it showed, the less was ridden since.
    Result<Remembered> sinceShown(const Remembered& shown) const {
        const Hours now = bestLife(book_, machine_.id, {toldOf_, DayPart::AfterRiding});
        const auto since = [&](std::int64_t figure) -> Result<std::int64_t> {
            const auto then = whenShown(book_, machine_.id, Hours{figure});
            if (!then)
                return tl::unexpected(then.error());
            return std::max((now - then->life).count(), std::int64_t{0});
        };
        Remembered ago;
        const auto most = since(shown.low);
        const auto likely = shown.best ? since(*shown.best) : most;
        const auto least = shown.high ? since(*shown.high) : most;
        for (const auto* each : {&most, &likely, &least})
            if (!*each)
                return tl::unexpected(each->error());
        ago.low = shown.high ? *least : 0;
        ago.best = shown.best ? std::optional(*likely) : std::nullopt;
        ago.high = *most;
        return ago;
    }

    Result<void> stateDay() {
        if (!line_.day)
            return {};
        const auto& [first, likely, last] = *line_.day;
        if (line_.date)
            return refuse(Fault::Inconsistent, "day", first.iso());
        if (last < first || (likely && (*likely < first || last < *likely)))
            return refuse(Fault::OutOfOrder, "day", last.iso(), first.iso());
        if (last > book_.today())
            return refuse(Fault::InFuture, "day", last.iso(), book_.today().iso());
        const auto age = [&](Date day) { return std::int64_t{book_.today() - day}; };
        state({Counter::Days, age(last), likely ? std::optional(age(*likely)) : std::nullopt, age(first),
               book_.today()});
        draft_.record.date = likely.value_or(last);
        draft_.record.note = "remembered";
        return {};
    }

    // What came with the machine is as old as it is known here, and at most as old as its year allows.
    void stateAge(Date here) {
        const auto* due = book_.dueLine(task_->task);
        const auto oldest = due == nullptr ? std::nullopt : book::oldestSince(book_, *due);
        const auto age = [&](Date day) { return std::int64_t{book_.today() - day}; };
        state({Counter::Days, age(here), std::nullopt, oldest ? std::optional(age(*oldest)) : std::nullopt,
               book_.today()});
    }

    Result<void> statePieces() {
        if (line_.since.empty())
            return {};
        if (draft_.record.kind != upkeep::RecordKind::Baseline)
            return refuse(Fault::Inconsistent, "answer", task_->name);
        auto pieces = statedOf(line_.since, "since", lastDayTold(book_, machine_));
        if (!pieces)
            return tl::unexpected(pieces.error());
        for (const Stated& each : *pieces)
            state(each);
        return {};
    }

    void state(const Stated& said) { draft_.record.stated.push_back(said); }
    [[nodiscard]] Moment firstDay() const { return {machine_.since, DayPart::BeforeRiding}; }
    [[nodiscard]] bool isMoreThanThePast(Hours ran) const {
        return machine_.startedNew || (machine_.pastHigh && ran > *machine_.pastHigh);
    }

    const VerbContext& context_;
    const Book& book_;
    const items::Machine& machine_;
    const BaselineLine& line_;
    const upkeep::TaskVersion* task_ = nullptr;
    std::optional<ItemId> item_;
    std::optional<Remembered> ago_;                       ///< hours, however they were said
    Date toldOf_ = lastDayTold(context_.book, machine_);  ///< up to whose evening they reach
    JobDraft draft_;
};

/// The figures that were written down, on their way to readings.
class WrittenFigures {
  public:
    WrittenFigures(const Book& book, const items::Machine& machine)
        : machine_(machine),
          facts_(readingsOf(book.ledger(), machine.id)),
          next_(book.ledger().nextEntered()) {}

    /// Nothing if it is known already.
    Result<std::optional<usage::HourReading>> take(const upkeep::Record& record) {
        const auto isSame = [&](const usage::HourReading& other) {
            return other.date == record.date && other.shown == record.meter;
        };
        auto& readings = facts_.hourReadings;
        if (std::any_of(readings.begin(), readings.end(), isSame))
            return std::nullopt;
        // One of its own, so that two lines are held against each other; the entry gives the real one.
        const usage::HourReading reading{.id = decltype(usage::HourReading::id){-next_},
                                         .entered = next_++,
                                         .machine = machine_.id,
                                         .date = record.date,
                                         .part = record.part,
                                         .shown = *record.meter};
        if (const auto fits = usage::checkReading(facts_, reading); !fits) {
            base::Error error = fits.error();
            error.field = "meter";
            return tl::unexpected(std::move(error));
        }
        readings.push_back(reading);
        if (isMoreThanThePast())
            return refuse(Fault::Inconsistent, "meter", units::hoursText(*record.meter));
        return reading;
    }

  private:
    // What the meter ran before the first day here is no more than the whole past.
    [[nodiscard]] bool isMoreThanThePast() const {
        const Moment first{machine_.since, DayPart::BeforeRiding};
        const auto ran = usage::exposure(usage::atomsOf(facts_), std::nullopt, first).hours;
        return ran.low > (machine_.startedNew ? Hours{0} : machine_.pastHigh.value_or(ran.low));
    }

    const items::Machine& machine_;
    usage::UseFacts facts_;
    base::Entered next_;
};

// Since when: as it is said, or since the earliest job from before the file, of these and of those there are.
std::optional<Date> sinceWhen(const Book& book, const items::Machine& machine, const SinceThen& all,
                              const std::vector<ReadyJob>& jobs) {
    std::optional<Date> first = all.from;
    if (first)
        return first;
    const auto note = [&](const upkeep::Record& record) {
        if (isBeforeTheFile(record, machine) && record.task && (!first || record.date < *first))
            first = record.date;
    };
    for (const upkeep::Record* record : book.records(machine.id, false))
        note(*record);
    for (const ReadyJob& job : jobs)
        note(job.draft.record);
    return first;
}

// The record of no task that holds what is said of all.
Result<std::optional<upkeep::Record>> ofAll(const Book& book, const items::Machine& machine,
                                            const SinceThen& all, const std::vector<ReadyJob>& jobs) {
    if (all.pieces.empty())
        return std::nullopt;
    auto stated = statedOf(all.pieces, "all", lastDayTold(book, machine));
    if (!stated)
        return tl::unexpected(stated.error());
    const auto from = sinceWhen(book, machine, all, jobs);
    if (!from)
        return refuse(Fault::Empty, "from");
    if (*from > book.today())
        return refuse(Fault::InFuture, "from", from->iso(), book.today().iso());
    return upkeep::Record{.machine = machine.id,
                          .kind = upkeep::RecordKind::Baseline,
                          .date = *from,
                          .what = "what came since, for all jobs",
                          .stated = std::move(*stated)};
}

// Said again, it takes the place of what was said of the same job before.
void strikeSaidBefore(Entry& entry, const Book& book, TaskId task) {
    const auto* due = book.dueLine(task);
    if (due != nullptr && due->last != nullptr && due->last->kind == upkeep::RecordKind::Baseline &&
        due->last->task == task)
        entry.add(picture::Strike{
            .fact = due->last->id.value(), .date = book.today(), .reason = "said again, more closely"});
}

Result<std::vector<ReadyJob>> jobsOf(const VerbContext& context, const items::Machine& machine,
                                     const std::vector<BaselineLine>& lines, Entry& entry) {
    std::vector<ReadyJob> jobs;
    std::set<TaskId> answered;
    WrittenFigures figures(context.book, machine);
    for (std::size_t at = 0; at < lines.size(); ++at) {
        auto job = Baseline(context, machine, lines[at]).job();
        if (job && !answered.insert(lines[at].task).second)
            job = refuse(Fault::Duplicate, "task", job->draft.record.what);
        if (job && lines[at].date && lines[at].meter) {
            auto reading = figures.take(job->draft.record);
            if (!reading)
                job = tl::unexpected(reading.error());
            else if (*reading)
                entry.add(**reading);
        }
        if (!job) {
            base::Error error = job.error();
            error.field = error.field.within("lines", at);
            return tl::unexpected(std::move(error));
        }
        strikeSaidBefore(entry, context.book, lines[at].task);
        addJob(entry, context.book, *job);
        jobs.push_back(std::move(*job));
    }
    return jobs;
}

}  // namespace

Moment firstRidden(const Book& book, const items::Machine& machine, std::optional<ItemId> item) {
    const auto* card = item ? book.ledger().find<items::Item>(*item) : nullptr;
    if (card == nullptr)
        return {machine.since, DayPart::BeforeRiding};
    const Moment since{card->since, DayPart::BeforeRiding};
    const auto carried = book.fittings().machineSpells(*item);
    return carried.empty() ? since : std::max(since, carried.front().from);
}

Result<Change> recordBaseline(const VerbContext& context, MachineId machine,
                              const std::vector<BaselineLine>& lines, const SinceThen& all) {
    BookChecks check(context.book);
    const auto* card = check.row<items::Machine>("machine", machine);
    check.that(!lines.empty() || !all.pieces.empty(), Fault::NothingToDo, "lines");
    if (check.failed())
        return check.refusal();
    Entry entry(context.book.ledger(), context.newId);
    const auto jobs = jobsOf(context, *card, lines, entry);
    if (!jobs)
        return tl::unexpected(jobs.error());
    auto said = ofAll(context.book, *card, all, *jobs);
    if (!said)
        return tl::unexpected(said.error());
    if (*said)
        entry.add(std::move(**said));
    if (lines.empty())
        return std::move(entry).change(
            phrase("Undo", "noted what came since the jobs on %1").arg(card->name));
    return std::move(entry).change(
        phrase("Undo", "noted what is known of %n task(s) on %1", nullptr, lines.size()).arg(card->name));
}

}  // namespace wm::verbs

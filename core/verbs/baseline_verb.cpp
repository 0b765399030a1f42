// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/verbs/baseline_verb.h"

#include <algorithm>
#include <set>

#include "core/picture/facts.h"
#include "core/upkeep/unknown.h"
#include "core/verbs/job_parts.h"
#include "core/verbs/names.h"

// What is known of the tasks that nobody has recorded here, for a whole machine at once.

namespace wm::verbs {

using base::refuse;
using calendar::DayPart;
using calendar::Moment;
using units::Hours;

namespace {

Hours bestLife(const Book& book, MachineId machine, Moment when) {
    return book.lifeAt(machine, when).hours.best;
}

/// When a meter showed a figure: what the machine had behind it then, by the best end (it may be less than
/// what it had on its first day here), and the last reading before; none if it was before all of them.
struct Shown {
    Hours life{};
    std::optional<Moment> readBefore{};
};

Result<Shown> whenShown(const Book& book, MachineId machine, Hours shown) {
    auto readings = readingsOf(book.ledger(), machine).hourReadings;
    if (readings.empty())
        return refuse(Fault::Inconsistent, "meter", units::hoursText(shown));
    std::sort(readings.begin(), readings.end(),
              [](const auto& a, const auto& b) { return usage::comesBefore(a, b); });
    const auto lifeAtReading = [&](const usage::HourReading& reading) {
        return bestLife(book, machine, {reading.date, reading.part});
    };
    // From the newest stretch backwards: a meter that was replaced may have shown a figure twice.
    for (std::size_t at = readings.size(); at-- > 0;) {
        const bool isLast = at + 1 == readings.size();
        const auto& next = readings[isLast ? at : at + 1];
        const bool countedOn = next.event == usage::MeterEvent::Plain ||
                               next.event == usage::MeterEvent::Stopped ||
                               next.event == usage::MeterEvent::Resumed;
        const Hours end = isLast || countedOn ? next.shown : next.before.value_or(readings[at].shown);
        if (readings[at].shown <= shown && shown <= end)
            return Shown{lifeAtReading(readings[at]) + (shown - readings[at].shown),
                         Moment{readings[at].date, readings[at].part}};
    }
    if (shown > readings.front().shown)
        return refuse(Fault::TooLarge, "meter", units::hoursText(shown),
                      units::hoursText(readings.back().shown));
    return Shown{lifeAtReading(readings.front()) - (readings.front().shown - shown), std::nullopt};
}

/// The last day on whose evening the machine had no more than `life` behind it: what was ridden since is then
/// rather too much than too little. Nothing: it was before the first day.
std::optional<Moment> lastMomentWith(const Book& book, const items::Machine& machine, Hours life) {
    const Moment first{machine.since, DayPart::BeforeRiding};
    if (life < bestLife(book, machine.id, first))
        return std::nullopt;
    const auto evening = [&](std::int32_t days) {
        return Moment{machine.since.plusDays(days), DayPart::AfterRiding};
    };
    std::int32_t holds = -1;
    std::int32_t fails = book.today() - machine.since + 1;
    while (fails - holds > 1) {
        const std::int32_t middle = holds + (fails - holds) / 2;
        (bestLife(book, machine.id, evening(middle)) <= life ? holds : fails) = middle;
    }
    return holds < 0 ? first : evening(holds);
}

/// Total time before the file: the stated past of the subject less what it ran since. False if the stated
/// past is less than that: one of the two is wrong, and what is behind the job would look too little.
bool stateTimeBefore(upkeep::Record& record, const Ledger& ledger, const items::Machine& machine,
                     Hours sinceThen) {
    const auto state = [&](const auto& card) {
        if (card.pastBest < sinceThen)
            return false;
        const auto before = [&](Hours past) { return std::max(past - sinceThen, Hours{0}); };
        record.statedLow = before(card.pastLow);
        record.statedBest = before(card.pastBest);
        record.statedHigh = card.pastHigh ? std::optional(before(*card.pastHigh)) : std::nullopt;
        return true;
    };
    const auto* item = record.item ? ledger.find<items::Item>(*record.item) : nullptr;
    return item != nullptr ? state(*item) : state(machine);
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
        if (!placed)
            return tl::unexpected(placed.error());
        auto ready = checkJob(context_, std::move(draft_));
        if (!ready)
            return ready;
        upkeep::Record& record = ready->draft.record;
        if (item_ && record.item != item_)
            return refuse(Fault::BeforeItsTime, "date", record.date.iso());
        if (isBeforeTheFile(record, machine_) && sinceThen_ && *sinceThen_ > Hours{0} &&
            !stateTimeBefore(record, book_.ledger(), machine_, *sinceThen_))
            return refuse(Fault::Inconsistent, "meter", units::hoursText(*line_.meter));
        if (!line_.date)
            record.meter = line_.meter;
        return ready;
    }

  private:
    // Kind, day and part of the day.
    Result<void> place() {
        upkeep::Record& record = draft_.record;
        switch (line_.answer) {
            case BaselineAnswer::LookedFine:
                if (!upkeep::isALook(*task_))
                    return refuse(Fault::Inconsistent, "answer", task_->name);
                record.kind = upkeep::RecordKind::LookedFine;
                record.date = line_.date.value_or(book_.today());
                return {};
            case BaselineAnswer::NewOn: {
                const Moment first = firstRidden(book_, machine_, item_);
                record.kind = upkeep::RecordKind::Baseline;
                record.date = line_.date.value_or(first.date);
                record.part = line_.date ? DayPart::BeforeRiding : first.part;
                record.note = "new";
                return {};
            }
            case BaselineAnswer::Serviced:
                break;
        }
        record.kind = upkeep::RecordKind::Baseline;
        return placeServiced();
    }

    Result<void> placeServiced() {
        upkeep::Record& record = draft_.record;
        if (!line_.date && (!line_.meter || !upkeep::countsOnlyHours(*task_)))
            return refuse(Fault::Empty, "date");
        std::optional<Shown> then;
        if (line_.meter) {
            const auto shown = whenShown(book_, machine_.id, *line_.meter);
            if (!shown)
                return tl::unexpected(shown.error());
            then = *shown;
            sinceThen_ = bestLife(book_, machine_.id, {machine_.since, DayPart::BeforeRiding}) - then->life;
        }
        if (line_.date) {
            record.date = *line_.date;
            record.meter = line_.meter;
            return {};
        }
        record.note = "dated by the meter";
        // Of a meter that counts the van too nobody knows how much of what it ran was riding: from the
        // reading before on, none of it may have been, or all.
        const auto moment = machine_.meterCountsTransport && then->readBefore
                                ? then->readBefore
                                : lastMomentWith(book_, machine_, then->life);
        record.date = moment ? moment->date : machine_.since.plusDays(-1);
        record.part = moment ? moment->part : DayPart::AfterRiding;
        return {};
    }

    const VerbContext& context_;
    const Book& book_;
    const items::Machine& machine_;
    const BaselineLine& line_;
    const upkeep::TaskVersion* task_ = nullptr;
    std::optional<ItemId> item_;
    std::optional<Hours> sinceThen_;  ///< from then to the machine's first day here
    JobDraft draft_;
};

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
                              std::vector<BaselineLine> lines) {
    BookChecks check(context.book);
    const auto* card = check.row<items::Machine>("machine", machine);
    check.that(!lines.empty(), Fault::NothingToDo, "lines");
    if (check.failed())
        return check.refusal();
    Entry entry(context.book.ledger(), context.newId);
    std::set<TaskId> answered;
    for (std::size_t at = 0; at < lines.size(); ++at) {
        auto job = Baseline(context, *card, lines[at]).job();
        if (job && !answered.insert(lines[at].task).second)
            job = refuse(Fault::Duplicate, "task", job->draft.record.what);
        if (!job) {
            base::Error error = job.error();
            error.field = error.field.within("lines", at);
            return tl::unexpected(std::move(error));
        }
        addJob(entry, context.book, *job);
    }
    return std::move(entry).change(
        phrase("Undo", "noted what is known of %n task(s) on %1", nullptr, lines.size()).arg(card->name));
}

}  // namespace wm::verbs

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <map>
#include <set>
#include <tuple>

#include "core/notebook/judging.h"
#include "core/words/folding.h"

namespace wm::notebook {

namespace {

using Figure = std::optional<std::int64_t>;

template <class Quantity>
Figure amountOf(const std::optional<Quantity>& quantity) {
    return quantity ? Figure(quantity->count()) : std::nullopt;
}

// What makes two facts the same to somebody who reads them: not the note, which may have been written later,
// and of a job not its minutes.
using Same =
    std::tuple<FactSort, std::size_t, calendar::Date, Figure, Figure, usage::OutingKind, std::string>;

struct Stored {
    std::size_t live = 0;
    std::size_t struck = 0;
};

class Known {
  public:
    Known(const Notebook& notebook, const picture::Ledger& ledger) {
        for (std::size_t at = 0; at < notebook.machines.size(); ++at)
            if (notebook.machines[at].id)
                machines_[*notebook.machines[at].id] = at;
        for (const bool struck : {false, true}) {
            for (const auto& outing : rows<usage::Outing>(ledger, struck)) {
                add({FactSort::Outing,
                     at(outing.machine),
                     outing.date,
                     amountOf(outing.hours),
                     amountOf(outing.distance),
                     outing.kind,
                     {}},
                    struck);
                if (!struck)
                    ++outings_[{at(outing.machine), outing.date}];
            }
            for (const auto& reading : rows<usage::HourReading>(ledger, struck))
                if (!reading.outing && !reading.record)
                    add({FactSort::Reading,
                         at(reading.machine),
                         reading.date,
                         reading.shown.count(),
                         {},
                         {},
                         {}},
                        struck);
            for (const auto& wash : rows<usage::Wash>(ledger, struck))
                if (!wash.outing)
                    add({FactSort::Wash, at(wash.machine), wash.date, {}, {}, {}, {}}, struck);
            for (const auto& crash : rows<usage::Crash>(ledger, struck))
                if (!crash.outing)
                    add({FactSort::Crash, at(crash.machine), crash.date, {}, {}, {}, {}}, struck);
            std::set<Same> jobs;  // one line may have become several records
            for (const auto& record : rows<upkeep::Record>(ledger, struck))
                jobs.insert(
                    {FactSort::Job, at(record.machine), record.date, {}, {}, {}, words::folded(record.what)});
            for (const Same& job : jobs)
                add(job, struck);
        }
    }

    static Same sameAs(const Facts& facts, std::size_t machine) {
        switch (facts.sort) {
            case FactSort::Outing:
                return {facts.sort, machine, facts.date, amountOf(facts.hours), amountOf(facts.distance),
                        facts.kind, {}};
            case FactSort::Reading:
                return {facts.sort, machine, facts.date, amountOf(facts.meter), {}, {}, {}};
            case FactSort::Job:
                return {facts.sort, machine, facts.date, {}, {}, {}, words::folded(facts.job)};
            case FactSort::Wash:
            case FactSort::Crash:
                break;
        }
        return {facts.sort, machine, facts.date, {}, {}, {}, {}};
    }

    /// Takes one such fact out of what is left, and says whether there was one.
    std::optional<Defect> take(const Facts& facts) {
        std::optional<Defect> defect;
        for (const std::size_t machine : facts.machines) {
            const auto found = stored_.find(sameAs(facts, machine));
            if (found == stored_.end() || found->second.live + found->second.struck == 0)
                return std::nullopt;
            defect = found->second.live > 0 ? Defect::InFile : Defect::StruckInFile;
        }
        for (const std::size_t machine : facts.machines) {
            Stored& stored = stored_[sameAs(facts, machine)];
            --(stored.live > 0 ? stored.live : stored.struck);
            if (facts.sort == FactSort::Outing && defect == Defect::InFile)
                --outings_[{machine, facts.date}];
        }
        return defect;
    }
    /// An outing of that machine and day that no line has answered for.
    [[nodiscard]] bool hasOther(const Facts& facts) const {
        const auto found = outings_.find({facts.machines.front(), facts.date});
        return found != outings_.end() && found->second > 0;
    }

  private:
    template <class R>
    static picture::RowsView<R> rows(const picture::Ledger& ledger, bool struck) {
        return struck ? ledger.struck<R>() : ledger.all<R>();
    }
    // Machines that the notebook does not speak of are all the same to it.
    std::size_t at(MachineId machine) const {
        const auto found = machines_.find(machine);
        return found == machines_.end() ? static_cast<std::size_t>(-1) : found->second;
    }
    void add(const Same& same, bool struck) {
        Stored& stored = stored_[same];
        ++(struck ? stored.struck : stored.live);
    }

    std::map<MachineId, std::size_t> machines_{};
    std::map<Same, Stored> stored_{};
    std::map<DayKey, std::int64_t> outings_{};
};

// The same line again: every figure the same, and the note too unless the meter says that nothing was ridden
// in between.
class Repeats {
  public:
    bool again(const Facts& facts) {
        bool again = false;
        const std::string note = facts.meter ? std::string{} : words::folded(facts.note);
        for (const std::size_t machine : facts.machines) {
            auto [at, isNew] =
                seen_.insert({Known::sameAs(facts, machine), amountOf(facts.meter), facts.starts, note});
            again = again || !isNew;
        }
        return again;
    }

  private:
    std::set<std::tuple<Same, Figure, std::int64_t, std::string>> seen_{};
};

}  // namespace

void judgeKnown(Notebook& notebook, const picture::Ledger& ledger) {
    Known known(notebook, ledger);
    Repeats repeats;
    for (Line& line : notebook.lines) {
        if (!line.readable())
            continue;
        const bool again = repeats.again(line.facts);
        if (const auto defect = known.take(line.facts)) {
            // What the file holds raises no question, however the notebook spells it.
            line.inFile = true;
            line.verdict = Verdict::Taken;
            line.remark(*defect);
        } else if (again) {
            line.remark(Defect::Twice);
        }
    }
    for (Line& line : notebook.lines)
        if (line.readable() && !line.inFile && line.facts.sort == FactSort::Outing &&
            known.hasOther(line.facts))
            line.remark(Defect::OtherwiseInFile);
}

}  // namespace wm::notebook

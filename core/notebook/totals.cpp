// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/notebook/totals.h"

namespace wm::notebook {

Totals& Totals::operator+=(const Totals& more) {
    lines += more.lines;
    outings += more.outings;
    hours = units::Hours{hours.count() + more.hours.count()};
    readings += more.readings;
    washes += more.washes;
    crashes += more.crashes;
    jobs += more.jobs;
    minutes = units::Minutes{minutes.count() + more.minutes.count()};
    return *this;
}

Totals totalsOf(const Line& line) {
    const Facts& facts = line.facts;
    Totals totals{.lines = 1};
    if (facts.sort == FactSort::Job) {
        totals.jobs = 1;
        totals.minutes = facts.minutes.value_or(units::Minutes{});
        totals.readings = facts.meter ? 1U : 0U;
        return totals;
    }
    if (facts.sort == FactSort::Outing) {
        totals.outings = 1;
        totals.hours = facts.hours.value_or(units::Hours{});
    }
    totals.readings = facts.meter ? 1U : 0U;
    totals.washes = facts.washed || facts.pressure || facts.sort == FactSort::Wash ? 1U : 0U;
    totals.crashes = facts.crashed || facts.sort == FactSort::Crash ? 1U : 0U;
    return totals;
}

std::vector<Totals> totalsOf(const Notebook& notebook, const Agreement& agreement) {
    std::vector<Totals> totals(notebook.machines.size());
    for (const Line& line : notebook.lines)
        if (isAgreed(line, agreement))
            for (const std::size_t machine : line.facts.machines)
                totals[machine] += totalsOf(line);
    return totals;
}

}  // namespace wm::notebook

// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/verbs/keep_order.h"

#include <iterator>
#include <map>
#include <set>
#include <utility>

#include "core/picture/entry.h"

namespace wm::verbs {

using fastening::JointMark;
using picture::Strike;

namespace {

using JointDay = std::pair<JointId, calendar::Date>;

JointDay dayOf(const JointMark& mark) {
    return {mark.joint, mark.date};
}

template <class R, class Act>
void each(const picture::Change& change, const Act& act) {
    for (const picture::Row& row : change.rows)
        if (const R* one = std::get_if<R>(&row))
            act(*one);
}

}  // namespace

void keepMarksInOrder(const picture::Ledger& before, const base::IdSource& newId, const Strike& because,
                      picture::Change& change) {
    std::set<std::int64_t> struck;
    each<Strike>(change, [&](const Strike& strike) { struck.insert(strike.fact); });
    std::set<JointDay> again;
    each<JointMark>(change, [&](const JointMark& mark) { again.insert(dayOf(mark)); });
    if (struck.empty() || again.empty())
        return;
    const picture::Ledger after = before.with(change);
    picture::Entry entry(after, newId);
    std::set<JointDay> passed;  // the marks of these come after one that is entered again
    for (const JointMark& mark : before.all<JointMark>()) {
        if (!again.contains(dayOf(mark)))
            continue;
        if (struck.contains(mark.id.value())) {
            passed.insert(dayOf(mark));
        } else if (passed.contains(dayOf(mark))) {
            Strike strike = because;
            strike.fact = mark.id.value();
            entry.add(strike);
            entry.add(mark);
        }
    }
    auto rows = std::move(entry).change(std::string{}).rows;
    std::move(rows.begin(), rows.end(), std::back_inserter(change.rows));
}

}  // namespace wm::verbs
